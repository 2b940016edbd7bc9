//! A reader over one TOML table that remembers where everything stood and what was asked for.
//!
//! Each question (`number`, `text`, `choice`, ...) either gives a value with its place or records
//! a [`Fault`] and gives nothing, so reading goes on and finds every fault. Leaving a table, keys
//! nobody asked for are reported as unknown, with the nearest known one. What was asked is kept as
//! an [`Outline`], from which the published schema is made. The meaning of the values, and how they
//! agree with each other, is checked by the callers.

use std::cell::RefCell;
use std::ops::{Range, RangeInclusive};

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::error::{Fault, is_hidden};
use super::names::looks_empty;
use super::near_words::{LONGEST_TEXT, is_same_word, nearest, quoted};
use super::outline::{Content, Entry, Outline};
use super::syntax::syntax_fault;
use super::trade_words;
use super::unit_hints::unit_hint;
use crate::base::geometry::Hand;

/// A value and where it was written.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct At<T> {
    /// What was written.
    pub(super) value: T,
    /// The field, such as `pitch[2].speed_mph`.
    pub(super) field: String,
    /// The bytes it stands at.
    pub(super) span: Range<usize>,
}

impl<T> At<T> {
    /// A fault of this value; `found` completes "is" and `allowed` completes "must be".
    pub(super) fn fault(&self, found: impl Into<String>, allowed: impl Into<String>) -> Fault {
        Fault {
            span: self.span.clone(),
            field: self.field.clone(),
            found: found.into(),
            allowed: allowed.into(),
            hint: None,
        }
    }

    fn with<U>(&self, value: U) -> At<U> {
        At { value, field: self.field.clone(), span: self.span.clone() }
    }
}

/// Every fault found so far, in the order of finding.
#[derive(Debug, Default)]
pub(super) struct Faults(RefCell<Vec<Fault>>);

impl Faults {
    /// Records one more.
    pub(super) fn add(&self, fault: Fault) {
        self.0.borrow_mut().push(fault);
    }

    /// Whether one was found in a field that `is_meant`.
    pub(super) fn concern(&self, is_meant: impl Fn(&str) -> bool) -> bool {
        self.0.borrow().iter().any(|fault| is_meant(&fault.field))
    }
}

/// Reads a TOML document with `read`; the value comes out only if no fault was recorded.
/// Otherwise every fault does, in file order.
pub(super) fn read_document<T>(text: &str, read: impl FnOnce(&mut Fields) -> Option<T>) -> Result<T, Vec<Fault>> {
    let document = DeTable::parse(text).map_err(|error| vec![syntax_fault(text, &error)])?;
    let faults = Faults::default();
    let end = text.trim_end().len();
    let root = At { value: Some(document.get_ref()), field: String::new(), span: end..end };
    let (made, _) = Fields::new(text, &faults, root).read_with(read);
    let mut faults = faults.0.into_inner();
    faults.sort_by_key(|fault| fault.span.start);
    made.filter(|_| faults.is_empty()).ok_or(faults)
}

/// What `read` asks of a document.
pub(super) fn outline_of<T>(read: impl FnOnce(&mut Fields) -> T) -> Outline {
    let nowhere = At { value: None, field: String::new(), span: 0..0 };
    Fields::new("", &Faults::default(), nowhere).read_with(read).1
}

/// One table being read; an absent one answers nothing to every question.
#[derive(Debug)]
pub(super) struct Fields<'a> {
    text: &'a str,
    faults: &'a Faults,
    table: At<Option<&'a DeTable<'a>>>,
    needed: &'static [&'static str],
    asked: Outline,
    takes_any_key: bool,
}

impl<'a> Fields<'a> {
    fn new(text: &'a str, faults: &'a Faults, table: At<Option<&'a DeTable<'a>>>) -> Self {
        Self { text, faults, table, needed: &[], asked: Outline::default(), takes_any_key: false }
    }

    /// Where faults found by comparing values are recorded.
    pub(super) fn faults(&self) -> &'a Faults {
        self.faults
    }

    /// The table's own name and place: its header, or its braces.
    pub(super) fn place(&self) -> At<()> {
        self.table.with(())
    }

    /// From here on, the absence of these keys is a fault.
    pub(super) fn needs(&mut self, keys: &'static [&'static str]) {
        self.needed = keys;
    }

    /// A number in `range`.
    pub(super) fn number(&mut self, key: &'static str, range: RangeInclusive<f64>) -> Option<At<f64>> {
        self.note(key, Content::Number(range.clone()));
        let allowed = format!("a number from {} to {}", range.start(), range.end());
        let found = self.ask(key, &allowed)?;
        let Some(number) = as_number(found.value) else {
            return self.refuse(&found, &allowed, kind_hint(found.value, "numbers stand without quotes"));
        };
        if range.contains(&number) {
            return Some(found.with(number));
        }
        self.refuse(&found, &allowed, unit_hint(key, number, &range))
    }

    /// A whole number in `range`.
    pub(super) fn whole(&mut self, key: &'static str, range: RangeInclusive<u32>) -> Option<At<u32>> {
        self.note(key, Content::Whole(range.clone()));
        let allowed = format!("a whole number from {} to {}", range.start(), range.end());
        let found = self.ask(key, &allowed)?;
        let whole = found.value.as_integer().and_then(|int| u32::from_str_radix(int.as_str(), int.radix()).ok());
        match whole.filter(|whole| range.contains(whole)) {
            Some(whole) => Some(found.with(whole)),
            None => self.refuse(&found, &allowed, kind_hint(found.value, "numbers stand without quotes")),
        }
    }

    /// `true` or `false`.
    pub(super) fn flag(&mut self, key: &'static str) -> Option<At<bool>> {
        self.note(key, Content::Flag);
        let allowed = "true or false";
        let found = self.ask(key, allowed)?;
        match found.value.as_bool() {
            Some(flag) => Some(found.with(flag)),
            None => self.refuse(&found, allowed, kind_hint(found.value, "true and false stand without quotes")),
        }
    }

    /// Printable text on one line, without spaces around it.
    pub(super) fn text(&mut self, key: &'static str) -> Option<At<String>> {
        let allowed = format!("text of 1 to {LONGEST_TEXT} printable characters");
        let is_good =
            |text: &str| text.chars().count() <= LONGEST_TEXT && !text.contains(is_hidden) && !looks_empty(text);
        let parse = |text: &str| Some(text.trim()).filter(|text| is_good(text)).map(str::to_owned);
        let hint = "any short name on one line will do; spaces around it do not count";
        self.parsed(key, Content::Text { most: LONGEST_TEXT }, &allowed, parse, |_| Some(hint.to_owned()))
    }

    /// One of `all`, by name.
    pub(super) fn choice<T: Copy>(
        &mut self,
        key: &'static str,
        all: &[T],
        name: impl Fn(T) -> &'static str,
    ) -> Option<At<T>> {
        let names: Vec<_> = all.iter().map(|&item| name(item)).collect();
        let allowed = format!("one of {}", names.join(", "));
        let nearest = |text: &str| nearest(text, &names).map(|name| format!("did you mean \"{name}\"?"));
        let find = |text: &str| all.iter().copied().find(|&item| is_same_word(name(item), text));
        self.parsed(key, Content::Word(names.clone()), &allowed, find, nearest)
    }

    /// A throwing hand, by any of the trade's words.
    pub(super) fn hand(&mut self, key: &'static str) -> Option<At<Hand>> {
        let names = Hand::ALL.map(Hand::name);
        let allowed = format!("one of {}", names.join(", "));
        let nearest = |text: &str| nearest(text, &names).map(|name| format!("did you mean \"{name}\"?"));
        self.parsed(key, Content::Word(names.to_vec()), &allowed, trade_words::hand, nearest)
    }

    /// One of `all`, by name, under each key of this table, whatever the keys are.
    pub(super) fn choices<T: Copy>(&mut self, all: &[T], name: impl Fn(T) -> &'static str) -> Vec<(String, T)> {
        self.takes_any_key = true;
        let names: Vec<_> = all.iter().map(|&item| name(item)).collect();
        let allowed = format!("one of {}", names.join(", "));
        let mut chosen = Vec::new();
        for (key, value) in self.table.value.into_iter().flatten() {
            let field = self.path_of(&quoted(key.get_ref()));
            let found = At { value: value.get_ref(), field, span: value.span() };
            let word = found.value.as_str().unwrap_or_default();
            if let Some(item) = all.iter().copied().find(|&item| is_same_word(name(item), word)) {
                chosen.push((key.get_ref().to_string(), item));
            } else {
                let hint = nearest(word, &names).map(|name| format!("did you mean \"{name}\"?"));
                self.refuse::<()>(&found, &allowed, hint);
            }
        }
        chosen
    }

    /// Whatever `parse` makes of a text; `hint` says how to mend one it refuses.
    pub(super) fn parsed<T>(
        &mut self,
        key: &'static str,
        content: Content,
        allowed: &str,
        parse: impl Fn(&str) -> Option<T>,
        hint: impl Fn(&str) -> Option<String>,
    ) -> Option<At<T>> {
        self.note(key, content);
        let found = self.ask(key, allowed)?;
        let Some(text) = found.value.as_str() else {
            return self.refuse(&found, allowed, Some("text stands in double quotes".into()));
        };
        match parse(text) {
            Some(value) => Some(found.with(value)),
            None => self.refuse(&found, allowed, hint(text)),
        }
    }

    /// The section under `key`, read with `read` whether it is there or not.
    pub(super) fn section<T>(&mut self, key: &'static str, read: impl FnOnce(&mut Fields) -> T) -> T {
        let allowed = if self.is_root() { format!("a section with the header [{key}]") } else { "a table".into() };
        let found = self.ask(key, &allowed);
        let table = match &found {
            Some(At { value: DeValue::Table(table), .. }) => Some(table),
            Some(other) => self.refuse(other, &allowed, Some(format!("a table is written {key} = {{ ... }}"))),
            None => None,
        };
        let place = found.as_ref().map_or_else(|| self.place(), |found| found.with(()));
        let (value, asked) = Fields::new(self.text, self.faults, place.with(table)).read_with(read);
        self.note(key, Content::Section(asked));
        value
    }

    /// Every section of the list under `key`, each read with `read`; those beyond `most` are a
    /// fault and are left unread.
    pub(super) fn sections<T>(&mut self, key: &'static str, most: usize, read: impl Fn(&mut Fields) -> T) -> Vec<T> {
        let (_, each) = Fields::new(self.text, self.faults, self.table.with(None)).read_with(&read);
        self.note(key, Content::Sections { most, each });
        let allowed = format!("1 to {most} sections, each with the header [[{key}]]");
        let Some(found) = self.ask(key, &allowed) else {
            return Vec::new();
        };
        let entries: Vec<_> = found.value.as_array().into_iter().flat_map(|array| array.iter()).collect();
        if entries.is_empty() {
            let hint = format!("write the header as [[{key}]], with two brackets on each side");
            self.refuse::<()>(&found, &allowed, Some(hint));
        }
        if let Some(extra) = entries.get(most) {
            let extra = At { span: extra.span(), ..found.with(()) };
            let fault = extra.fault(format!("given {} times", entries.len()), format!("given at most {most} times"));
            self.faults.add(fault.with_hint(format!("leave out the {key} sections that matter least")));
        }
        let numbered = entries.into_iter().take(most).zip(1..);
        numbered.map(|(entry, number)| self.entry(key, number, entry).read_with(&read).0).collect()
    }

    fn entry(&self, key: &str, number: usize, entry: &'a Spanned<DeValue<'a>>) -> Fields<'a> {
        let place = At { value: entry.get_ref(), field: format!("{key}[{number}]"), span: entry.span() };
        let table = place.value.as_table();
        if table.is_none() {
            self.refuse::<()>(&place, "a table", Some(format!("write each as a section with the header [[{key}]]")));
        }
        Fields::new(self.text, self.faults, place.with(table))
    }

    /// Reads the whole table, then reports the keys that `read` did not ask for. With the value
    /// comes what it did ask for.
    fn read_with<T>(mut self, read: impl FnOnce(&mut Self) -> T) -> (T, Outline) {
        let value = read(&mut self);
        let known = self.asked.keys();
        for (key, _) in self.table.value.into_iter().flatten() {
            if !self.takes_any_key && !known.contains(&key.get_ref().as_ref()) {
                self.faults.add(self.unknown_key(key.get_ref(), &known, key.span()));
            }
        }
        (value, self.asked)
    }

    fn unknown_key(&self, key: &str, known: &[&str], span: Range<usize>) -> Fault {
        let (kind, allowed) = if self.is_root() {
            ("section", "a section known here".to_owned())
        } else {
            ("key", format!("a key of {}", self.table.field))
        };
        let hint = match nearest(key, known) {
            Some(likely) => format!("did you mean `{likely}`?"),
            None => format!("the {kind}s known here are {}", known.join(", ")),
        };
        let shown = if key.is_empty() { "\"\"".to_owned() } else { quoted(key) };
        let unknown = At { value: (), field: self.path_of(&shown), span };
        unknown.fault(format!("not a known {kind}"), allowed).with_hint(hint)
    }

    /// Notes that `key` is asked for, and what may stand there.
    fn note(&mut self, key: &'static str, content: Content) {
        self.asked.entries.push(Entry { key, is_needed: self.needed.contains(&key), content });
    }

    /// The value under `key`. Its absence is a fault only if the key is needed.
    fn ask(&self, key: &'static str, allowed: &str) -> Option<At<&'a DeValue<'a>>> {
        let table = self.table.value?;
        let field = self.path_of(key);
        if let Some(value) = table.get(key) {
            return Some(At { value: value.get_ref(), field, span: value.span() });
        }
        if self.needed.contains(&key) {
            let fault = At { value: (), field, span: self.table.span.clone() }.fault("missing", allowed);
            self.faults.add(if self.is_root() { fault } else { fault.with_hint(format!("add `{key} = ...` here")) });
        }
        None
    }

    /// Records that `found` is not what is allowed, and gives nothing.
    fn refuse<T>(&self, found: &At<&DeValue>, allowed: &str, hint: Option<String>) -> Option<T> {
        let fault = found.fault(self.shown(found), allowed);
        self.faults.add(Fault { hint, ..fault });
        None
    }

    /// A value as a message repeats it: plain values as written, the rest by kind.
    fn shown(&self, found: &At<&DeValue>) -> String {
        match found.value {
            DeValue::String(text) => format!("\"{}\"", quoted(text)),
            DeValue::Array(items) if items.is_empty() => "an empty list".into(),
            DeValue::Array(_) => "a list".into(),
            DeValue::Table(_) => "a table".into(),
            _ => quoted(self.text.get(found.span.clone()).unwrap_or_default()),
        }
    }

    fn path_of(&self, key: &str) -> String {
        if self.is_root() { key.to_owned() } else { format!("{}.{key}", self.table.field) }
    }

    fn is_root(&self) -> bool {
        self.table.field.is_empty()
    }
}

fn as_number(value: &DeValue) -> Option<f64> {
    match value {
        DeValue::Integer(int) if int.radix() == 10 => int.as_str().parse().ok(),
        DeValue::Integer(int) => u32::from_str_radix(int.as_str(), int.radix()).ok().map(f64::from),
        DeValue::Float(float) => float.as_str().parse().ok(),
        _ => None,
    }
}

/// `hint` for a value in quotes that should have none.
fn kind_hint(value: &DeValue, hint: &str) -> Option<String> {
    value.is_str().then(|| hint.to_owned())
}

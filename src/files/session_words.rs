//! Words met in the throws: labels, grips and pitchers by number, and those that are not known here.

use std::collections::{BTreeMap, HashMap};

use super::error::visible;
use super::quantity::Quantity;
use super::session_error::{SessionError, excerpt};
use crate::athlete::session::{Outcome, Place};

/// Different words and their numbers, in the order met. Capitals and needless spaces make no other word:
/// a grip is one however it was typed.
#[derive(Default)]
pub(super) struct Words {
    pub(super) met: Vec<String>,
    bytes: usize,
    /// Words as written.
    index: HashMap<Vec<u8>, u16>,
    /// The same, plain.
    plain: HashMap<String, u16>,
    latest: u16,
}

impl Words {
    pub(super) fn index(&mut self, word: &[u8]) -> u16 {
        let is_latest = self.met.get(usize::from(self.latest)).is_some_and(|latest| latest.as_bytes() == word);
        if !is_latest {
            self.latest = self.index.get(word).copied().unwrap_or_else(|| self.learn(word));
        }
        self.latest
    }

    fn learn(&mut self, word: &[u8]) -> u16 {
        let text = String::from_utf8_lossy(word);
        let next = u16::try_from(self.met.len()).unwrap_or(u16::MAX);
        let number = *self.plain.entry(plain(&text)).or_insert(next);
        if number == next {
            self.met.push(visible(&text));
        }
        self.index.insert(word.to_vec(), number);
        self.bytes += word.len();
        number
    }

    /// How many different ones there are, and their bytes.
    pub(super) fn size(&self) -> (usize, usize) {
        (self.index.len(), self.bytes)
    }
}

/// Words that say nothing here, by their column, each with its rows.
#[derive(Default)]
pub(super) struct Unread {
    words: BTreeMap<(Quantity, String), usize>,
    /// Rows that tell the hitter's hand when the pitcher's is not known.
    pub(super) hands: usize,
}

/// Different unknown words that are kept of a column; more would say no more.
const MOST_KEPT: usize = 20;

impl Unread {
    pub(super) fn count(&mut self, quantity: Quantity, word: &[u8]) {
        let key = (quantity, excerpt(word));
        let kept = self.words.keys().filter(|(other, _)| *other == quantity).count();
        if kept < MOST_KEPT || self.words.contains_key(&key) {
            *self.words.entry(key).or_default() += 1;
        }
    }

    /// One sentence for each column with such words; `header` is the file's own name of a column.
    pub(super) fn notes(&self, header: impl Fn(Quantity) -> String) -> Vec<String> {
        let columns = [(Quantity::BatterSide, SIDES), (Quantity::Outcome, ""), (Quantity::Wobble, "yes, no")];
        let note = |(quantity, known): (Quantity, &str)| {
            let words: Vec<String> = (self.words.iter())
                .filter(|((other, _), _)| *other == quantity)
                .map(|((_, word), rows)| format!("\"{word}\" ({})", rows_of(*rows)))
                .collect();
            let outcomes = Outcome::ALL.map(Outcome::name).join(", ");
            let known = if quantity == Quantity::Outcome { &outcomes } else { known };
            (!words.is_empty()).then(|| {
                let words = words.join(", ");
                format!(
                    "{} is not understood where it is {words}, and is not used there; known are {known}",
                    header(quantity)
                )
            })
        };
        let hands = (self.hands > 0).then(|| {
            format!(
                "{} tells the hitter's hand in {}, which says nothing while the pitcher's is not known: add --hand",
                header(Quantity::BatterSide),
                rows_of(self.hands)
            )
        });
        columns.into_iter().filter_map(note).chain(hands).collect()
    }
}

const SIDES: &str = "same side, opposite side, and (with the throwing hand known) right, left, R, L";

/// "1 row", "12 rows".
pub(super) fn rows_of(count: usize) -> String {
    if count == 1 { "1 row".into() } else { format!("{count} rows") }
}

/// Whose throws these are: one pitcher's, or else somebody has to choose.
#[derive(Default)]
pub(super) struct Pitchers {
    wanted: Option<String>,
    /// Name as written, rows, and where first.
    met: Vec<(String, usize, Place)>,
    index: HashMap<String, usize>,
}

/// Names shown of a file with many pitchers.
const MOST_SHOWN: usize = 12;

impl Pitchers {
    pub(super) fn new(wanted: Option<&str>) -> Self {
        Self { wanted: wanted.map(plain), ..Self::default() }
    }

    /// Whether a row by this pitcher is one to read; a row may name nobody.
    pub(super) fn takes(&mut self, name: Option<&[u8]>, place: Place) -> bool {
        let written = String::from_utf8_lossy(name.unwrap_or_default());
        let key = plain(&written);
        let is_taken = self.wanted.as_ref().is_none_or(|wanted| *wanted == key);
        let at = *self.index.entry(key).or_insert_with(|| {
            self.met.push((visible(written.trim()), 0, place));
            self.met.len() - 1
        });
        self.met[at].1 += 1;
        is_taken
    }

    /// How many there are, so that they stay countable.
    pub(super) fn count(&self) -> usize {
        self.met.len()
    }

    /// What there is to tell when all rows are read; throws of two pitchers are never one athlete's.
    pub(super) fn settle(&self, files: &[String]) -> Result<Option<String>, SessionError> {
        let refused = |place: Place, found: String, hint: &str| {
            let file = files.get(usize::from(place.file)).map_or("", String::as_str);
            Err(SessionError::of_file(file, found, "throws of one pitcher", hint).at_row(place.row))
        };
        let Some(wanted) = &self.wanted else {
            return match &self.met[..] {
                [] | [_] => Ok(None),
                [_, (_, _, second), ..] => {
                    let found = format!("the throws are by {}", self.listed());
                    refused(
                        *second,
                        found,
                        "choose one with --pitcher NAME, or with pitcher = \"NAME\" in the column map",
                    )
                }
            };
        };
        let Some((_, _, first)) = self.met.first() else {
            return Ok(Some("no file names its pitcher, so all throws are taken as by the one asked for".into()));
        };
        if !self.index.contains_key(wanted) {
            let found = format!("no throw is by \"{wanted}\"; the throws are by {}", self.listed());
            return refused(*first, found, "write the name as it stands in the file");
        }
        let others: usize =
            self.met.iter().filter(|(name, _, _)| plain(name) != *wanted).map(|(_, rows, _)| rows).sum();
        Ok((others > 0).then(|| format!("{} of other pitchers are left out", rows_of(others))))
    }

    fn listed(&self) -> String {
        let name = |(name, rows, _): &(String, usize, Place)| {
            let shown = if name.is_empty() { "nobody named".to_owned() } else { format!("\"{name}\"") };
            format!("{shown} ({})", rows_of(*rows))
        };
        let shown: Vec<String> = self.met.iter().take(MOST_SHOWN).map(name).collect();
        let more = self.met.len().saturating_sub(MOST_SHOWN);
        let rest = if more > 0 { format!(" and {more} more") } else { String::new() };
        shown.join(", ") + &rest
    }
}

/// A word without capitals and needless spaces.
fn plain(name: &str) -> String {
    name.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

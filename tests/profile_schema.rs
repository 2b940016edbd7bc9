//! The schema and the reader of profiles know the same keys, ranges and words.
//!
//! The schema is made from what the reader asks for; here the two are held to each other from
//! outside, through the program's own reader. `tests/data/check_schema.py` (Python's `jsonschema`)
//! reads it as others will.

use std::collections::BTreeSet;
use std::fs;

use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::{Clock, Hand};
use arsenalfit::files::{Fault, InputError, Starter, profile_from_toml, profile_outline};
use arsenalfit::report;
use regex::Regex;
use serde_json::Value as Json;
use toml::{Table, Value};

/// Everything a profile can hold is in this one.
const FULL: &str = "profiles/three-quarter-right.toml";

fn schema() -> Json {
    serde_json::from_str(&report::schema(&profile_outline())).expect("JSON")
}

/// That profile with its first pitch alone, so that no other asks for anything.
fn full() -> Table {
    let mut profile: Table = fs::read_to_string(FULL).expect("a shipped profile").parse().expect("TOML");
    profile["pitch"].as_array_mut().expect("a list").truncate(1);
    profile
}

/// Where a key stands: the keys on the way to it. In a list the first entry is meant.
type Place = Vec<String>;

/// Every key of the schema with what it says of it.
fn leaves(schema: &Json) -> Vec<(Place, Json)> {
    let inner = if schema["type"] == "array" { &schema["items"] } else { schema };
    let Some(properties) = inner["properties"].as_object() else {
        return vec![(Vec::new(), schema.clone())];
    };
    let below = properties.iter().flat_map(|(key, inside)| {
        leaves(inside).into_iter().map(move |(place, leaf)| ([vec![key.clone()], place].concat(), leaf))
    });
    below.collect()
}

/// Every key of the tables, by place; several entries of a list count as one.
fn places(value: &Value) -> BTreeSet<Place> {
    match value {
        Value::Table(table) => table
            .iter()
            .flat_map(|(key, inside)| places(inside).into_iter().map(move |place| [vec![key.clone()], place].concat()))
            .collect(),
        Value::Array(entries) => entries.iter().flat_map(places).collect(),
        _ => BTreeSet::from([Vec::new()]),
    }
}

/// The full profile with another value at a place, or with none.
fn with(place: &[String], value: impl Into<Option<Value>>) -> Table {
    let mut profile = full();
    let (last, way) = place.split_last().expect("no empty place");
    let mut table = &mut profile;
    for key in way {
        let inside = table.entry(key).or_insert_with(|| Table::new().into());
        table = match inside {
            Value::Array(entries) => entries[0].as_table_mut(),
            other => other.as_table_mut(),
        }
        .expect("tables on the way");
    }
    match value.into() {
        Some(value) => table.insert(last.clone(), value),
        None => table.remove(last),
    };
    profile
}

/// What the reader calls the place.
fn field(place: &[String]) -> String {
    place.join(".").replace("pitch.", "pitch[1].")
}

/// The reader's fault at this very place, if it finds one.
fn fault_at(place: &[String], profile: &Table) -> Option<Fault> {
    match profile_from_toml(&profile.to_string(), "changed.toml") {
        Err(InputError::Faulty { faults, .. }) => faults.into_iter().find(|fault| fault.field == field(place)),
        _ => None,
    }
}

/// That `bad` is refused as what it is, and that whatever else the reader may have against one of
/// the `good` (it may contradict another value), it is not that.
fn assert_divides(place: &[String], bad: &[Value], good: &[Value]) {
    for wrong in bad {
        let refused = fault_at(place, &with(place, wrong.clone())).unwrap_or_else(|| panic!("{place:?} = {wrong}"));
        for right in good {
            if let Some(fault) = fault_at(place, &with(place, right.clone())) {
                assert_ne!(fault.allowed, refused.allowed, "{place:?} = {right}");
            }
        }
    }
}

#[test]
fn the_profiles_that_show_every_key_show_just_the_keys_of_the_schema() {
    let known: BTreeSet<Place> = leaves(&schema()).into_iter().map(|(place, _)| place).collect();
    assert_eq!(places(&full().into()), known, "{FULL}");
    assert_eq!(places(&opened_starter().into()), known, "a starter with every comment opened");
}

/// What `new` writes, with the # taken away before every key.
fn opened_starter() -> Table {
    let shape = Shape { speed_mph: 91.0, vertical_break_in: 16.0, glove_side_break_in: -7.0 };
    let pitches = vec![(Family::FourSeam, shape)];
    let starter = Starter { name: "Invented".into(), throws: Hand::Right, age: None, pitches };
    let text = starter.to_toml("new.toml").unwrap_or_else(|error| panic!("{error}"));
    let opened = text.lines().map(|line| match line.strip_prefix("# ") {
        Some(rest) if rest.contains(" = ") || rest.starts_with('[') => rest,
        _ => line,
    });
    opened.collect::<Vec<&str>>().join("\n").parse().expect("TOML")
}

#[test]
fn the_reader_refuses_what_lies_outside_a_range_and_nothing_at_its_ends_for_that() {
    let mut checked = 0;
    for (place, leaf) in leaves(&schema()) {
        let (Some(low), Some(high)) = (leaf["minimum"].as_f64(), leaf["maximum"].as_f64()) else { continue };
        #[expect(clippy::cast_possible_truncation, reason = "whole numbers far below 2^53")]
        let value = |number: f64| match leaf["type"].as_str() {
            Some("integer") => Value::Integer(number as i64),
            _ => Value::Float(number),
        };
        let beyond = if leaf["type"] == "integer" { 1.0 } else { 1e-6 };
        assert_divides(&place, &[low - beyond, high + beyond].map(value), &[low, high].map(value));
        checked += 1;
    }
    assert!(checked >= 30, "only {checked} ranges");
}

#[test]
fn the_reader_knows_the_words_of_the_schema_and_no_other() {
    let mut checked = 0;
    for (place, leaf) in leaves(&schema()) {
        let Some(words) = leaf["enum"].as_array() else { continue };
        let good: Vec<Value> = words.iter().map(|word| Value::from(word.as_str().expect("a word"))).collect();
        assert_divides(&place, &["zzz".into(), "".into(), 1.into()], &good);
        checked += 1;
    }
    assert_eq!(
        checked, 8,
        "throws, level, supination, family, the aim on two sides and twice what movement counts against"
    );
}

/// The tables of the schema: their places and what they are.
fn tables(schema: &Json) -> Vec<(Place, Json)> {
    let inner = if schema["type"] == "array" { &schema["items"] } else { schema };
    let Some(properties) = inner["properties"].as_object() else { return Vec::new() };
    let mut found = vec![(Vec::new(), inner.clone())];
    for (key, inside) in properties {
        found.extend(tables(inside).into_iter().map(|(place, table)| ([vec![key.clone()], place].concat(), table)));
    }
    found
}

#[test]
fn unknown_and_missing_keys_are_faults_where_the_schema_says_so() {
    let mut needed_keys = 0;
    for (place, table) in tables(&schema()) {
        assert_eq!(table["additionalProperties"], false, "{place:?}");
        let unknown = [place.clone(), vec!["zzz".to_owned()]].concat();
        assert!(fault_at(&unknown, &with(&unknown, Value::from(1))).is_some(), "{unknown:?}");
        let needed: Vec<&str> = table["required"].as_array().into_iter().flatten().filter_map(Json::as_str).collect();
        for key in table["properties"].as_object().expect("keys").keys() {
            let missing = [place.clone(), vec![key.clone()]].concat();
            let is_needed = needed.contains(&key.as_str());
            needed_keys += usize::from(is_needed);
            assert_eq!(is_missed(&missing), is_needed, "{missing:?}");
        }
    }
    assert_eq!(needed_keys, 15, "two sections, two of the athlete, five of a pitch, three of results on two sides");
}

/// Whether the reader calls a key of the full profile missing once it is taken out.
fn is_missed(place: &[String]) -> bool {
    fault_at(place, &with(place, None)).is_some_and(|fault| fault.found == "missing")
}

fn pattern(place: &[&str]) -> Regex {
    let place: Place = place.iter().map(|key| (*key).to_owned()).collect();
    let (_, leaf) = leaves(&schema()).into_iter().find(|(other, _)| *other == place).expect("a key");
    Regex::new(leaf["pattern"].as_str().expect("a pattern")).expect("a regular expression")
}

#[test]
fn the_pattern_of_a_clock_takes_what_the_reader_takes() {
    let pattern = pattern(&["pitch", "spin_clock"]);
    let hours = (0..=30).map(|hour| hour.to_string()).chain((0..=13).map(|hour| format!("{hour:02}")));
    let mut taken = 0;
    for hour in hours.chain(["", "+3", " 3", "-1", "x"].map(str::to_owned)) {
        let minutes = (0..=61).map(|minute| format!("{minute:02}"));
        for minute in minutes.chain(["", "5", "005", "+5", " 5", "x0"].map(str::to_owned)) {
            let text = format!("{hour}:{minute}");
            let is_clock = text.parse::<Clock>().is_ok();
            assert_eq!(pattern.is_match(&text), is_clock, "{text:?}");
            taken += usize::from(is_clock);
        }
    }
    assert_eq!(taken, 24 * 60, "twelve hours of sixty minutes, plain and with two digits, where 10 to 12 come twice");
    assert!(!pattern.is_match("12.30") && !pattern.is_match(""));
}

#[test]
fn the_pattern_of_a_name_takes_what_the_reader_takes() {
    let pattern = pattern(&["athlete", "name"]);
    let place = ["athlete".to_owned(), "name".to_owned()];
    let agree = |text: &str| {
        let is_good = fault_at(&place, &with(&place, Value::from(text))).is_none();
        assert_eq!(pattern.is_match(text), is_good, "{text:?}");
        is_good
    };
    // Every character that is hidden, white or next to one, and a sample of all the others.
    let odd =
        ('\u{0}'..='\u{ff}').chain('\u{600}'..='\u{620}').chain('\u{1fff}'..='\u{2070}').chain('\u{fe00}'..='\u{ff00}');
    let taken = odd.chain(['é', '漢', '\u{10ffff}']).filter(|letter| agree(&format!("a{letter}b"))).count();
    assert!(taken > 300, "{taken}");
    for text in ["", " ", "a", " a ", "a b", "\ta", "a\n", "\u{3000}a", "\u{200b}"] {
        agree(text);
    }
    let (longest, longer) = ("x".repeat(60), "x".repeat(61));
    assert!(agree(&longest) && agree(&format!("   {longest}  ")) && !agree(&longer));
}

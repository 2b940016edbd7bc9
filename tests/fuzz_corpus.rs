//! The fuzz targets on stable: every stored input and thousands of changes of them, read as cargo-fuzz reads them.
//!
//! What must hold stands in `tests/common/fuzz_bodies.rs`, for both. The inputs in `tests/fuzz/corpus` are invented or
//! were found by fuzzing.
#![expect(clippy::print_stdout, reason = "a test that is skipped says so")]

#[path = "common/fuzz_bodies.rs"]
mod bodies;

use std::fs;
use std::panic::catch_unwind;
use std::path::Path;

use bodies::{Target, run};
use proptest::prelude::*;
use proptest::sample::Index;

/// Changed inputs of each target.
const CHANGED: u32 = 2500;
/// The longest input tried, as with cargo-fuzz.
const LONGEST: usize = 8192;

/// Whether the stored inputs are here: what is packed for publishing holds this test and leaves them behind.
fn are_here() -> bool {
    let are_here = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fuzz").is_dir();
    if !are_here {
        println!("skipped: the stored inputs are in the repository only");
    }
    are_here
}

/// The stored inputs of a target, by name.
fn corpus(target: Target) -> Vec<(String, Vec<u8>)> {
    files_in(&format!("tests/fuzz/corpus/{}", target.name()))
}

/// What a target starts from: its stored inputs, and for profiles the shipped and the bad ones.
fn inputs_of(target: Target) -> Vec<(String, Vec<u8>)> {
    let also: &[&str] = if target == Target::Profile { &["profiles", "tests/bad_profiles"] } else { &[] };
    corpus(target).into_iter().chain(also.iter().copied().flat_map(files_in)).collect()
}

/// The files of a folder of this repository, by name.
fn files_in(folder: &str) -> Vec<(String, Vec<u8>)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let entries = fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let mut inputs: Vec<_> = entries
        .map(|entry| {
            let path = entry.expect("a readable entry").path();
            (path.display().to_string(), fs::read(&path).expect("a readable file"))
        })
        .collect();
    inputs.sort();
    inputs
}

/// One change of an input, by byte or by line.
#[derive(Debug, Clone)]
enum Change {
    Byte(Index, u8),
    Insert(Index, u8),
    Remove(Index),
    Bit(Index, u8),
    Number(Index, &'static str),
    DropLine(Index),
    DoubleLine(Index),
    SwapLines(Index, Index),
    LineOfAnother(Index, Index, Index),
    CutShort(Index),
}

/// Values at which readers stumble.
const ODD: [&str; 16] = [
    "0",
    "-0",
    "1e308",
    "-1e308",
    "1e-308",
    "nan",
    "inf",
    "-80",
    "110",
    "25",
    "4500",
    "99999999999999999999",
    "0x10",
    "\u{1b}[2J",
    "\"",
    "é",
];

fn any_change() -> impl Strategy<Value = Change> {
    let at = any::<Index>;
    prop_oneof![
        (at(), any::<u8>()).prop_map(|(place, byte)| Change::Byte(place, byte)),
        (at(), any::<u8>()).prop_map(|(place, byte)| Change::Insert(place, byte)),
        at().prop_map(Change::Remove),
        (at(), 0..8_u8).prop_map(|(place, bit)| Change::Bit(place, bit)),
        (at(), prop::sample::select(&ODD[..])).prop_map(|(place, odd)| Change::Number(place, odd)),
        at().prop_map(Change::DropLine),
        at().prop_map(Change::DoubleLine),
        (at(), at()).prop_map(|(one, other)| Change::SwapLines(one, other)),
        (at(), at(), at()).prop_map(|(place, file, line)| Change::LineOfAnother(place, file, line)),
        at().prop_map(Change::CutShort),
    ]
}

impl Change {
    fn make(&self, bytes: &mut Vec<u8>, inputs: &[(String, Vec<u8>)]) {
        let size = bytes.len();
        match self {
            Self::Insert(place, byte) => bytes.insert(place.index(size + 1), *byte),
            _ if size == 0 => {}
            Self::Byte(place, byte) => bytes[place.index(size)] = *byte,
            Self::Remove(place) => drop(bytes.remove(place.index(size))),
            Self::Bit(place, bit) => bytes[place.index(size)] ^= 1 << bit,
            Self::CutShort(place) => bytes.truncate(place.index(size)),
            Self::Number(place, odd) => replace_number(bytes, *place, odd),
            Self::DropLine(place) => by_line(bytes, |lines| drop(lines.remove(place.index(lines.len())))),
            Self::DoubleLine(place) => by_line(bytes, |lines| {
                let at = place.index(lines.len());
                lines.insert(at, lines[at].clone());
            }),
            Self::SwapLines(one, other) => by_line(bytes, |lines| {
                let count = lines.len();
                lines.swap(one.index(count), other.index(count));
            }),
            Self::LineOfAnother(place, file, line) => by_line(bytes, |lines| {
                let others: Vec<&[u8]> = inputs[file.index(inputs.len())].1.split(|&byte| byte == b'\n').collect();
                lines.insert(place.index(lines.len() + 1), others[line.index(others.len())].to_vec());
            }),
        }
    }
}

/// Changes the lines of an input.
fn by_line(bytes: &mut Vec<u8>, change: impl FnOnce(&mut Vec<Vec<u8>>)) {
    let mut lines: Vec<Vec<u8>> = bytes.split(|&byte| byte == b'\n').map(<[u8]>::to_vec).collect();
    change(&mut lines);
    *bytes = lines.join(&b'\n');
}

/// Puts `odd` in place of one of the numbers written in an input.
fn replace_number(bytes: &mut Vec<u8>, place: Index, odd: &str) {
    let is_part = |at: usize| bytes.get(at).is_some_and(|byte| byte.is_ascii_digit() || *byte == b'.');
    let starts: Vec<usize> = (0..bytes.len()).filter(|&at| is_part(at) && (at == 0 || !is_part(at - 1))).collect();
    if let Some(&start) = starts.get(place.index(starts.len().max(1))) {
        let length = (start..bytes.len()).take_while(|&at| is_part(at)).count();
        bytes.splice(start..start + length, odd.bytes());
    }
}

#[test]
fn every_stored_input_is_read_as_it_must_be() {
    for target in Target::ALL.into_iter().filter(|_| are_here()) {
        let inputs = inputs_of(target);
        assert!(inputs.len() >= 8, "only {} inputs for {}", inputs.len(), target.name());
        for (name, bytes) in inputs {
            assert!(bytes.len() <= LONGEST, "{name} has {} bytes", bytes.len());
            assert!(catch_unwind(|| run(target, &bytes)).is_ok(), "{name}: see the message above");
        }
    }
}

#[test]
fn the_stored_inputs_stay_few_and_small() {
    let all: Vec<_> = Target::ALL.into_iter().filter(|_| are_here()).flat_map(corpus).collect();
    let bytes: usize = all.iter().map(|(_, bytes)| bytes.len()).sum();
    assert!(all.len() < 200 && bytes < 300_000, "{} inputs of {bytes} bytes", all.len());
}

fn check_changed(target: Target) {
    if !are_here() {
        return;
    }
    let inputs = inputs_of(target);
    let config = ProptestConfig { cases: CHANGED, failure_persistence: None, ..ProptestConfig::default() };
    let changes = prop::collection::vec(any_change(), 1..12);
    proptest!(config, |(which in any::<Index>(), changes in changes)| {
        let mut bytes = inputs[which.index(inputs.len())].1.clone();
        for change in &changes {
            change.make(&mut bytes, &inputs);
        }
        bytes.truncate(LONGEST);
        prop_assert!(catch_unwind(|| run(target, &bytes)).is_ok(), "{}", String::from_utf8_lossy(&bytes));
    });
}

#[test]
fn changed_profiles_are_read_as_they_must_be() {
    check_changed(Target::Profile);
}

#[test]
fn changed_column_maps_are_read_as_they_must_be() {
    check_changed(Target::Columns);
}

#[test]
fn changed_sessions_are_read_as_they_must_be() {
    check_changed(Target::Session);
}

#[test]
fn changed_trials_are_read_as_they_must_be() {
    check_changed(Target::Trial);
}

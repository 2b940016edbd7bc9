//! Sorting real pitches with their labels unseen.
//!
//! Data: 1,818 pitches of one left-hander, 17 games, from the teaching data of the R package
//! `Stat2Data` (companion of *STAT2: Modeling with Regression and ANOVA*), names removed.
#![expect(clippy::print_stdout, reason = "figures for the notes, shown with --nocapture")]

use arsenalfit::input::{ColumnMap, ReadOptions, session_from_bytes};
use arsenalfit::pitch::Family;
use arsenalfit::session::Session;
use arsenalfit::sorting::{Cause, Options, Sorted, Treatment, sort};

const DATA: &[u8] = include_bytes!("data/sort_reference.csv");
const COLUMNS: &str = include_str!("data/sort_reference_columns.toml");

fn read() -> Session {
    let map = ColumnMap::from_toml(COLUMNS, "columns.toml").expect("the map is sound");
    session_from_bytes("reference", DATA, ReadOptions { map, hand: None, progress: &mut |_| {} }).expect("it is read")
}

fn sorted() -> Sorted {
    sort(&read(), Options::default())
}

#[test]
fn every_row_is_read_and_kept() {
    let session = read();
    assert_eq!((session.throws.len(), session.set_aside.len(), session.days.len()), (1818, 0, 17));
}

#[test]
fn four_pitches_are_found_and_agree_with_the_labels() {
    let sorted = sorted();
    let families: Vec<Family> = sorted.groups.iter().map(|group| group.naming.family).collect();
    assert_eq!(families, [Family::FourSeam, Family::Changeup, Family::Slider, Family::Curveball]);
    let agreement = sorted.agreement.expect("the file has labels");
    println!("adjusted Rand {:.4} on {} throws, {:?}", agreement.adjusted_rand, agreement.throws, agreement.table);
    assert!(agreement.adjusted_rand >= 0.985, "{}", agreement.adjusted_rand);
    assert!(agreement.throws >= 1810, "hardly anything is left unsorted: {}", agreement.throws);
    assert!((40..=60).contains(&sorted.groups[1].throws), "the small changeup group: {}", sorted.groups[1].throws);
    assert!(!agreement.disagreements.is_empty() && agreement.disagreements.len() < 20);
}

#[test]
fn the_two_days_with_another_zero_are_found_without_being_told() {
    let elsewhere: Vec<(String, Option<Cause>)> = sorted()
        .days
        .into_iter()
        .filter(|day| day.treatment != Treatment::AsMeasured)
        .map(|day| (day.day, day.cause))
        .collect();
    assert_eq!(elsewhere, [("7".into(), Some(Cause::Sensor)), ("12".into(), Some(Cause::Sensor))]);
}

#[test]
fn the_same_seed_gives_the_same_answer_and_another_seed_the_same_pitches() {
    let session = read();
    let one = sort(&session, Options::default());
    assert_eq!(one, sort(&session, Options::default()));
    let other = sort(&session, Options { seed: 99, ..Options::default() });
    assert_eq!(other.groups.len(), one.groups.len());
    let same = one.assignments.iter().zip(&other.assignments).filter(|(a, b)| kind(a) == kind(b)).count();
    assert!(same * 200 > 199 * one.assignments.len(), "{same} of {}", one.assignments.len());
}

fn kind(assignment: &arsenalfit::sorting::Assignment) -> Option<usize> {
    match assignment {
        arsenalfit::sorting::Assignment::Group { index, .. } => Some(*index),
        _ => None,
    }
}

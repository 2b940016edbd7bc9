//! Sorting the throws of real arms, their labels unseen, against their labels.
//!
//! Data: `tests/data/league_day.csv` (R package abdwr3edata, CC0), see `tests/data/README.md`; its movement against
//! the throw without drag. The labels are a program's of its own and not the truth, so agreement, not truth, is held.

use std::collections::BTreeMap;

use arsenalfit::ball::Family;
use arsenalfit::files::{ColumnMap, ReadOptions, session_from_bytes};
use arsenalfit::throws::{Assignment, Options, sort};
use rayon::prelude::*;

const DAY: &str = include_str!("data/league_day.csv");
/// Throws from which a pitcher is sorted, and from which a group's name is asked.
const ENOUGH: usize = 40;
const FEWEST: usize = 5;
/// What the project's first version reached, by the same count.
const AGREEMENT: f64 = 0.97;
/// A name is right more often than by the commonest family's share of the day, 0.33.
const NAMES: f64 = 0.75;

/// One file for each pitcher with enough throws, with the header of the day.
fn pitchers() -> Vec<String> {
    let mut lines = DAY.lines();
    let header = lines.next().expect("a header");
    let mut by_pitcher: BTreeMap<&str, String> = BTreeMap::new();
    for line in lines {
        let pitcher = line.split(',').nth(1).expect("a pitcher");
        let text = by_pitcher.entry(pitcher).or_insert_with(|| format!("{header}\n"));
        text.push_str(line);
        text.push('\n');
    }
    by_pitcher.into_values().filter(|text| text.lines().count() > ENOUGH).collect()
}

/// The adjusted Rand index, and of the throws in groups large enough how many bear the family's name, of how many.
fn sorted(text: &str) -> (f64, usize, usize) {
    let options = ReadOptions { map: ColumnMap::default(), hand: None, progress: &mut |_| {} };
    let session = session_from_bytes("day.csv", text.as_bytes(), options).expect("it is read");
    let sorted = sort(&session, Options::default());
    let named = session.throws.iter().zip(&sorted.assignments).filter_map(|(throw, assignment)| {
        let Assignment::Group { index, .. } = assignment else { return None };
        let group = &sorted.groups[*index];
        let label = &session.labels[usize::from(throw.label?)];
        (group.throws >= FEWEST)
            .then(|| Family::from_name(label).map(Family::one_name) == Some(group.naming.family.one_name()))
    });
    let (right, all) = named.fold((0, 0), |(right, all), is_right| (right + usize::from(is_right), all + 1));
    (sorted.agreement.expect("the day has labels").adjusted_rand, right, all)
}

#[test]
fn the_throws_of_most_arms_are_sorted_as_they_are_labelled() {
    let found: Vec<(f64, usize, usize)> = pitchers().par_iter().map(|text| sorted(text)).collect();
    assert!(found.len() >= 30, "{} pitchers", found.len());
    let agreement = found.iter().map(|(rand, ..)| rand).sum::<f64>() / found.len() as f64;
    assert!(agreement >= AGREEMENT, "mean adjusted Rand {agreement:.4} over {} pitchers", found.len());
    let (right, all) = found.iter().fold((0, 0), |sum, (_, right, all)| (sum.0 + right, sum.1 + all));
    let share = right as f64 / all as f64;
    assert!(share >= NAMES, "{share:.3} of {all} throws bear their family's name");
}

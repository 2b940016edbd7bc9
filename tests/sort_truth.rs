//! Sorting invented sessions whose truth is known.

#![expect(clippy::print_stdout, reason = "figures for the notes, shown with --nocapture")]

#[path = "common/demo/mod.rs"]
mod demo;

use arsenalfit::ball::Family;
use arsenalfit::throws::{Group, Options, Sorted, Treatment, sort};
use demo::{Scenario, session};
use rayon::prelude::*;

const SESSIONS: u64 = 100;

struct Result {
    right_count: bool,
    adjusted_rand: f64,
    covered: usize,
    intervals: usize,
    zero_found: bool,
    names: usize,
    groups: usize,
}

fn run(seed: u64) -> Result {
    let scenario = Scenario::random(seed);
    let sorted = sort(&session(&scenario), Options::default());
    let (covered, intervals) = coverage(&scenario, &sorted);
    let last = sorted.days.last().expect("there are days");
    let is_elsewhere = scenario.days[3].zero_in[0].abs() > 7.0;
    Result {
        right_count: sorted.groups.len() == scenario.pitches.len(),
        adjusted_rand: sorted.agreement.as_ref().map_or(0.0, |agreement| agreement.adjusted_rand),
        names: rightly_named(&sorted),
        groups: sorted.groups.len(),
        covered,
        intervals,
        zero_found: (last.treatment == Treatment::Rezeroed) == is_elsewhere,
    }
}

/// Groups with the name of the family they were made as; a sinker may be called a two-seam.
fn rightly_named(sorted: &Sorted) -> usize {
    let same = |found: Family, made: &str| found.name() == made || (found == Family::TwoSeam && made == "sinker");
    let is_right = |group: &&Group| group.usual_label.as_deref().is_some_and(|made| same(group.naming.family, made));
    sorted.groups.iter().filter(is_right).count()
}

fn coverage(scenario: &Scenario, sorted: &Sorted) -> (usize, usize) {
    let (mut covered, mut all) = (0, 0);
    for pitch in &scenario.pitches {
        let Some(group) = sorted.groups.iter().find(|g| g.usual_label.as_deref() == Some(pitch.family.name())) else {
            continue;
        };
        let truth = pitch.shape;
        for (estimate, value) in [
            (group.speed_mph, truth.speed_mph),
            (group.vertical_break_in, truth.vertical_break_in),
            (group.glove_side_break_in, truth.glove_side_break_in),
        ] {
            covered += usize::from((estimate.low..=estimate.high).contains(&value));
            all += 1;
        }
    }
    (covered, all)
}

#[test]
fn the_right_pitches_are_found_and_their_intervals_hold_the_truth() {
    let results: Vec<Result> = (0..SESSIONS).into_par_iter().map(run).collect();
    let share = |of: fn(&Result) -> bool| results.iter().filter(|r| of(r)).count() as f64 / results.len() as f64;
    let sum = |of: fn(&Result) -> usize| results.iter().map(of).sum::<usize>() as f64;
    let (right, zero) = (share(|r| r.right_count), share(|r| r.zero_found));
    let rand = results.iter().map(|r| r.adjusted_rand).sum::<f64>() / results.len() as f64;
    let coverage = sum(|r| r.covered) / sum(|r| r.intervals);
    let named = sum(|r| r.names) / sum(|r| r.groups);
    println!("right count {right}, adjusted Rand {rand:.4}, zero {zero}, coverage {coverage:.3}, named {named:.3}");
    assert!(right >= 0.95, "right number of pitches in {right}");
    assert!(rand >= 0.97, "mean adjusted Rand {rand}");
    assert!(zero >= 0.95, "days elsewhere judged rightly in {zero}");
    assert!((0.90..=0.99).contains(&coverage), "nominal 90 % intervals hold the truth in {coverage}");
    assert!(named >= 0.95, "families named rightly in {named}");
}

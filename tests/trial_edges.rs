//! The grip trial at its edges: too few throws, no grips, equal grips, the other hand, many throws.
//!
//! All throws are invented.

use std::num::NonZeroUsize;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::athlete::session::{ReleaseReading, SpinReading};
use arsenalfit::ball::spin::Spin;
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::Clock;
use arsenalfit::decide::model::Model;
use arsenalfit::files::profile_from_toml;
use arsenalfit::learn::target::Target;
use arsenalfit::learn::trial::{Attempt, Caution, DotFault, Trial, Verdict, trial};

const WANTED: Shape = Shape { speed_mph: 82.0, vertical_break_in: 0.5, glove_side_break_in: 15.0 };

fn load(text: &str) -> Profile {
    profile_from_toml(text, "profile.toml").unwrap_or_else(|error| panic!("{error}"))
}

fn athlete() -> Profile {
    load(include_str!("../profiles/three-quarter-right.toml"))
}

fn target(profile: &Profile) -> Target {
    let spin = Spin { rpm: 2600.0, active_fraction: 0.7, clock: Clock::from_hours(8.75) };
    Target::about(&Model::new(profile, NonZeroUsize::MIN, 1), Family::Sweeper, WANTED).with_spin(spin)
}

/// Throws that step evenly about a shape, with a spin and a release.
fn throws(grip: usize, count: usize, off_in: f64, active: f64, hours: f64, drop_ft: f64) -> Vec<Attempt> {
    (0..count)
        .map(|i| {
            let step = (i % 5) as f64 - 2.0;
            let shape = Shape {
                speed_mph: 82.0 + 0.6 * step,
                vertical_break_in: 0.5 + 0.9 * step,
                glove_side_break_in: 15.0 - off_in - 0.8 * step,
            };
            let clock = Some(Clock::from_hours(hours + 0.05 * step));
            let spin = SpinReading { rpm: Some(2600.0), active_fraction: Some(active + 0.01 * step), clock };
            let height_ft = Some(5.7 - drop_ft + 0.05 * step);
            let release = ReleaseReading { height_ft, side_ft: Some(2.1), extension_ft: Some(6.2) };
            Attempt { grip, shape, spin, release, wobble: Some(i % 5 == 0) }
        })
        .collect()
}

fn judge(attempts: &[Attempt]) -> Trial {
    let profile = athlete();
    let names = ["one".to_owned(), "two".to_owned(), "three".to_owned()];
    trial(&names, attempts, &profile, &target(&profile), 1)
}

fn two_grips(each: usize) -> Vec<Attempt> {
    [throws(0, each, 0.0, 0.7, 8.75, 0.0), throws(1, each, 6.0, 0.45, 8.75, 0.3)].concat()
}

#[test]
fn three_throws_a_grip_work_and_are_too_early() {
    let trial = judge(&[throws(0, 3, 0.0, 0.7, 8.75, 0.0), throws(1, 3, 2.0, 0.6, 8.75, 0.0)].concat());
    assert_eq!(trial.verdict, Verdict::TooEarly { needed: 5 });
    let next = trial.next.expect("more throws are wanted");
    assert!(next.more_throws.value > 0.0 && next.more_throws.low <= next.more_throws.high);
    assert!(trial.grips.iter().all(|grip| grip.chance_next.low <= grip.chance_next.high));
    let single = judge(&[throws(0, 1, 0.0, 0.7, 8.75, 0.0), throws(1, 1, 2.0, 0.6, 8.75, 0.0)].concat());
    assert_eq!(single.verdict, Verdict::TooEarly { needed: 5 });
    assert_eq!(single.grips[0].clean.active_fraction_spread, None, "one throw has no spread");
}

#[test]
fn nothing_thrown_and_one_grip_are_said_and_not_decided() {
    assert_eq!(judge(&[]).verdict, Verdict::Empty);
    let one = judge(&throws(2, 9, 0.0, 0.7, 8.75, 0.0));
    assert_eq!((one.verdict, one.grips.len(), one.next), (Verdict::OneGrip, 1, None));
    assert_eq!(one.grips[0].name, "three");
    let stray = judge(&throws(7, 5, 0.0, 0.7, 8.75, 0.0));
    assert_eq!(stray.verdict, Verdict::Empty, "a grip without a name is not thrown with");
}

#[test]
fn a_clear_winner_settles_and_the_loser_says_why() {
    let trial = judge(&two_grips(15));
    assert_eq!((trial.verdict, trial.next), (Verdict::Settled, None));
    let (best, other) = (&trial.grips[0], &trial.grips[1]);
    assert_eq!((best.name.as_str(), other.name.as_str()), ("one", "two"));
    assert!(best.chance_best > 0.95 && best.in_window.hits > other.in_window.hits);
    let cost = other.slot_cost_deg.expect("release was measured");
    assert!(cost.low > 3.0 && cost.value < 12.0, "the slot fell by 0.3 ft: {cost:?}");
    let dot = other.dot.expect("spin was measured");
    assert_eq!(dot.faults(), [DotFault::TooCentral]);
    assert_eq!(best.dot.map(|dot| dot.faults()), Some(vec![]), "it is where it should be");
    assert!(best.clean.wobble.is_some_and(|share| (share.value - 0.2).abs() < 1e-9));
}

#[test]
fn identical_throws_and_equal_grips_give_no_false_certainty() {
    let same: Vec<Attempt> = (0..2).flat_map(|grip| vec![throws(grip, 1, 0.0, 0.7, 8.75, 0.0)[0]; 12]).collect();
    let trial = judge(&same);
    assert_eq!(trial.verdict, Verdict::Open);
    assert!(trial.grips.iter().all(|grip| grip.chance_next.value.is_finite() && grip.chance_best < 0.8));
}

#[test]
fn a_turned_dot_is_turned_by_the_difference_of_the_clocks() {
    let trial = judge(&throws(0, 10, 0.0, 0.7, 7.5, 0.0));
    let dot = trial.grips[0].dot.expect("spin was measured");
    assert_eq!(dot.faults(), [DotFault::Turned]);
    assert!((dot.turn_hours.value + 1.25).abs() < 0.01, "{dot:?}");
}

#[test]
fn a_mirrored_left_hander_gets_the_mirrored_trial() {
    let right_text = include_str!("../profiles/three-quarter-right.toml");
    let left_text = right_text
        .replace("throws = \"right\"", "throws = \"left\"")
        .replace("spin_clock = \"12:52\"", "spin_clock = \"11:08\"")
        .replace("spin_clock = \"2:25\"", "spin_clock = \"9:35\"")
        .replace("spin_clock = \"9:55\"", "spin_clock = \"2:05\"");
    let (right, left) = (load(right_text), load(&left_text));
    let names = ["one".to_owned(), "two".to_owned()];
    let run = |profile: &Profile| trial(&names, &two_grips(8), profile, &target(profile), 3);
    assert_eq!(run(&right), run(&left));
}

#[test]
fn far_from_the_window_the_nearer_grip_leads_and_the_distance_is_said() {
    let trial = judge(&[throws(0, 10, 16.0, 0.7, 8.75, 0.0), throws(1, 10, 12.0, 0.7, 8.75, 0.0)].concat());
    assert_eq!(trial.grips[0].name, "two");
    assert!(trial.cautions.contains(&Caution::BestIsFar));
}

#[test]
fn the_same_seed_gives_the_same_trial() {
    assert_eq!(judge(&two_grips(6)), judge(&two_grips(6)));
}

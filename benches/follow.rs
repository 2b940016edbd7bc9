//! How long the follow-through takes: `cargo bench --bench follow`.
//!
//! A trial of six grips and a season of 40 outings, 5,000 throws each. Both should stay below
//! 0.3 s. Throws are invented.

use std::num::NonZeroUsize;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::athlete::session::{PlateReading, ReleaseReading, SpinReading, Throw};
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::Clock;
use arsenalfit::decide::model::Model;
use arsenalfit::files::profile_from_toml;
use arsenalfit::learn::progress::{Outing, Progress, progress};
use arsenalfit::learn::target::Target;
use arsenalfit::learn::trial::{Attempt, Trial, trial};
use divan::Bencher;

const THROWS: usize = 5000;
const GRIPS: usize = 6;
const OUTINGS: usize = 40;

fn main() {
    divan::main();
}

fn ground() -> (Profile, Target) {
    let text = include_str!("../profiles/three-quarter-right.toml");
    let profile = profile_from_toml(text, "profile.toml").expect("the shipped profile is valid");
    let shape = Shape { speed_mph: 82.0, vertical_break_in: 0.5, glove_side_break_in: 15.0 };
    let target = Target::about(&Model::new(&profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape);
    (profile, target)
}

/// A number that goes evenly from -1.5 to 1.5.
fn step(place: usize, factor: usize) -> f64 {
    (place * factor % 101) as f64 * 0.03 - 1.5
}

fn throw(place: usize, middle: [f64; 3]) -> Throw {
    let shape = Shape {
        speed_mph: middle[0] + step(place, 7),
        vertical_break_in: middle[1] + 2.0 * step(place, 11),
        glove_side_break_in: middle[2] + 2.0 * step(place, 13),
    };
    let clock = Some(Clock::from_hours(8.8 + 0.2 * step(place, 17)));
    Throw {
        place: arsenalfit::athlete::session::Place::default(),
        day: 0,
        shape,
        spin: SpinReading { rpm: Some(2400.0), active_fraction: Some(0.6 + 0.03 * step(place, 19)), clock },
        release: ReleaseReading {
            height_ft: Some(5.7 + 0.1 * step(place, 23)),
            side_ft: Some(2.1 + 0.1 * step(place, 29)),
            extension_ft: Some(6.3),
        },
        plate: PlateReading { side_in: Some(8.0 * step(place, 31)), height_in: Some(26.0 + 8.0 * step(place, 37)) },
        label: None,
        grip: None,
        batter_side: None,
        outcome: None,
        wobble: Some(place.is_multiple_of(9)),
    }
}

#[divan::bench]
fn trial_of_5000_throws(bencher: Bencher) {
    let (profile, target) = ground();
    let names: Vec<String> = (0..GRIPS).map(|grip| format!("grip {grip}")).collect();
    let attempts: Vec<Attempt> = (0..THROWS)
        .map(|place| {
            let thrown = throw(place, [82.0, 0.5 + (place % GRIPS) as f64, 13.0]);
            let (shape, spin, release) = (thrown.shape, thrown.spin, thrown.release);
            Attempt { grip: place % GRIPS, shape, spin, release, wobble: thrown.wobble }
        })
        .collect();
    bencher.bench_local(|| -> Trial { trial(&names, &attempts, &profile, &target, 1) });
}

#[divan::bench]
fn progress_over_5000_throws(bencher: Bencher) {
    let (profile, target) = ground();
    let half = THROWS / OUTINGS / 2;
    let outings: Vec<Outing> = (0..OUTINGS)
        .map(|day| Outing {
            day: format!("day {day}"),
            fastballs: (0..half).map(|place| throw(place + day, [93.0, 16.8, -8.1])).collect(),
            new_pitches: (0..half).map(|place| throw(place + day, [82.0, 0.5, 14.0])).collect(),
            others: 0,
        })
        .collect();
    bencher.bench_local(|| -> Progress { progress(&outings, &profile, &target) });
}

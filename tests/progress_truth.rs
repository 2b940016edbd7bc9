//! The watch over outings against simulated truth: false alarms, detection, coverage, arrival.
//!
//! Athletes and throws are invented. A season is simulated as the model sees it: the profile is
//! one noisy look at the truth, every day has its own offset, every throw scatters. Seeds are
//! fixed, so the figures are the same every time.

#![expect(clippy::print_stdout, reason = "figures for the notes, shown with --nocapture")]

use std::num::NonZeroUsize;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::athlete::session::{PlateReading, ReleaseReading, SpinReading, Throw};
use arsenalfit::ball::{Family, Shape};
use arsenalfit::decide::model::Model;
use arsenalfit::files::profile_from_toml;
use arsenalfit::learn::progress::{Kind, Outing, Progress, Quantity, Severity, ShapeState, progress};
use arsenalfit::learn::target::Target;
use rand::{Rng, SeedableRng};
use rand_distr::StandardNormal;
use rand_xoshiro::Xoshiro256PlusPlus;

const WANTED: Shape = Shape { speed_mph: 82.0, vertical_break_in: 0.5, glove_side_break_in: 15.0 };
const ARM_FT: f64 = 2.0;

fn ground() -> (Profile, Target) {
    let text = include_str!("../profiles/three-quarter-right.toml");
    let profile = profile_from_toml(text, "profile.toml").unwrap_or_else(|error| panic!("{error}"));
    let target = Target::about(&Model::new(&profile, NonZeroUsize::MIN, 1), Family::Sweeper, WANTED);
    (profile, target)
}

/// What truly happens in an outing, against the athlete's true self.
#[derive(Clone, Copy, Default)]
struct Truth {
    fastball_mph: f64,
    slot_deg: f64,
    new_pitch_slot_deg: f64,
    new_pitch_off: [f64; 3],
    command_in: f64,
}

struct Season {
    chance: Xoshiro256PlusPlus,
    profile: Profile,
    target: Target,
    /// The athlete's true self against his profile: speed, breaks, slot.
    off: [f64; 4],
}

impl Season {
    fn new(seed: u64) -> Self {
        let (profile, target) = ground();
        let mut season = Self { chance: Xoshiro256PlusPlus::seed_from_u64(seed), profile, target, off: [0.0; 4] };
        season.off = [season.normal() * 0.5, season.normal() * 0.7, season.normal() * 0.7, season.normal() * 1.2];
        season
    }

    fn normal(&mut self) -> f64 {
        self.chance.sample(StandardNormal)
    }

    fn release(&mut self, slot_deg: f64) -> ReleaseReading {
        let usual = self.profile.release;
        let turned = |degrees: f64| (degrees.to_radians().sin(), degrees.to_radians().cos());
        let ((sin, cos), (sin0, cos0)) = (turned(slot_deg), turned(usual.slot_deg));
        ReleaseReading {
            height_ft: Some(usual.height_ft + ARM_FT * (sin - sin0) + 0.11 * self.normal()),
            side_ft: Some(usual.side_ft + ARM_FT * (cos - cos0) + 0.11 * self.normal()),
            extension_ft: Some(usual.extension_ft + 0.12 * self.normal()),
        }
    }

    fn throw(&mut self, day: u16, mean: [f64; 3], sd: [f64; 3], slot_deg: f64, command_in: f64) -> Throw {
        let [speed_mph, vertical_break_in, glove_side_break_in] =
            [0, 1, 2].map(|axis: usize| mean[axis] + sd[axis] * self.normal());
        let plate = PlateReading {
            side_in: Some(command_in * self.normal()),
            height_in: Some(24.0 + command_in * self.normal()),
        };
        Throw {
            place: arsenalfit::athlete::session::Place::default(),
            day,
            shape: Shape { speed_mph, vertical_break_in, glove_side_break_in },
            spin: SpinReading::default(),
            release: self.release(slot_deg),
            plate,
            label: None,
            grip: None,
            batter_side: None,
            outcome: None,
            wobble: None,
        }
    }

    fn outing(&mut self, day: u16, truth: Truth, count: usize) -> Outing {
        let today = [self.normal() * 0.5, self.normal() * 0.7, self.normal() * 0.7, self.normal() * 1.0];
        let fastball = self.profile.pitches[0].shape;
        let mean = [
            fastball.speed_mph + self.off[0] + today[0] + truth.fastball_mph,
            fastball.vertical_break_in + self.off[1] + today[1],
            fastball.glove_side_break_in + self.off[2] + today[2],
        ];
        let new = [WANTED.speed_mph, WANTED.vertical_break_in, WANTED.glove_side_break_in];
        let new = [0, 1, 2].map(|axis: usize| new[axis] + truth.new_pitch_off[axis] + 0.7 * today[axis]);
        let slot = self.profile.release.slot_deg + self.off[3] + today[3] + truth.slot_deg;
        let fastballs = (0..count).map(|_| self.throw(day, mean, [0.9, 1.7, 1.9], slot, 8.0)).collect();
        let lower = slot + truth.new_pitch_slot_deg;
        let new_pitches = (0..count).map(|_| self.throw(day, new, [1.2, 2.2, 2.4], lower, truth.command_in)).collect();
        Outing { day: format!("day {day}"), fastballs, new_pitches, others: 0 }
    }

    fn run(mut self, outings: u16, truth: impl Fn(u16) -> Truth) -> Progress {
        let outings: Vec<Outing> = (0..outings).map(|day| self.outing(day, truth(day), 12)).collect();
        progress(&outings, &self.profile, &self.target)
    }
}

fn still(_: u16) -> Truth {
    Truth { command_in: 8.0, ..Truth::default() }
}

fn stops(progress: &Progress) -> Vec<Kind> {
    let stop = |finding: &&arsenalfit::learn::progress::Finding| finding.severity == Severity::Stop;
    progress.findings.iter().filter(stop).map(|finding| finding.kind).collect()
}

#[test]
fn in_seasons_without_a_change_fewer_than_one_in_twenty_rings_and_hardly_any_stops() {
    const SEASONS: u64 = 400;
    let (mut rang, mut stopped) = (0, 0);
    for seed in 0..SEASONS {
        let season = Season::new(seed).run(30, still);
        rang += u32::from(season.watches.iter().any(|watch| watch.change.is_some()));
        stopped += u32::from(season.must_stop());
    }
    println!("{rang} of {SEASONS} quiet seasons rang, {stopped} said stop");
    assert!(rang <= 20, "{rang} of {SEASONS}");
    assert!(stopped <= 8, "{stopped} of {SEASONS}");
}

/// Of a hundred seasons whose fastball loses `mph` from the seventh of 18 outings: in how many it
/// is found, and in how many the start is right to two outings.
fn speed_loss_found(mph: f64) -> (u32, u32) {
    let (mut found, mut near) = (0, 0);
    for seed in 0..100 {
        let truth = |day| Truth { fastball_mph: if day < 6 { 0.0 } else { -mph }, ..still(day) };
        let season = Season::new(1000 + seed).run(18, truth);
        found += u32::from(stops(&season).contains(&Kind::FastballSlower));
        let change = season.watch(Quantity::FastballSpeed).and_then(|watch| watch.change);
        near += u32::from(change.is_some_and(|change| change.since.abs_diff(6) <= 2));
    }
    (found, near)
}

#[test]
fn a_fastball_that_loses_speed_from_the_seventh_outing_is_found_within_the_season() {
    let ((small, _), (large, near)) = (speed_loss_found(1.5), speed_loss_found(2.0));
    println!("1.5 mph found in {small}, 2 mph in {large}, start within two outings in {near} of 100");
    assert!(small >= 78 && large >= 95 && near >= 85, "{small} {large} {near}");
}

#[test]
fn a_slot_that_drops_five_degrees_is_found_and_comes_first() {
    let mut found = 0;
    for seed in 0..100 {
        let truth = |day| Truth { slot_deg: if day < 6 { 0.0 } else { -5.0 }, ..still(day) };
        let season = Season::new(2000 + seed).run(18, truth);
        found += u32::from(season.findings.first().is_some_and(|finding| finding.kind == Kind::SlotDropping));
    }
    println!("dropping slot found first in {found} of 100");
    assert!(found >= 90, "{found}");
}

#[test]
fn an_arm_that_drops_only_for_the_new_pitch_is_found_too() {
    let mut found = 0;
    for seed in 0..100 {
        let truth = |day| Truth { new_pitch_slot_deg: if day < 5 { 0.0 } else { -7.0 }, ..still(day) };
        let season = Season::new(3000 + seed).run(18, truth);
        found += u32::from(stops(&season) == [Kind::NewPitchSlotLower]);
    }
    println!("new pitch's slot found in {found} of 100");
    assert!(found >= 85, "{found}");
}

#[test]
fn nine_in_ten_intervals_hold_the_true_difference_from_the_profile() {
    let mut held = 0;
    for seed in 0..300 {
        let season = Season::new(4000 + seed);
        let season = season.run(5, |day| Truth { fastball_mph: -0.7, ..still(day) });
        let now = season.watch(Quantity::FastballSpeed).and_then(|watch| watch.now).expect("fastballs were thrown");
        // The profile's own error is part of what the interval covers.
        held += u32::from((now.low..=now.high).contains(&-0.7));
    }
    println!("coverage {:.3}", f64::from(held) / 300.0);
    assert!((258..=288).contains(&held), "{held} of 300");
}

#[test]
fn a_shape_that_comes_in_is_said_to_have_arrived_and_one_that_leaves_to_have_drifted() {
    let (mut early, mut arrived, mut drifted) = (0, 0, 0);
    for seed in 0..60 {
        let sweep = |day: u16| [0.0, 0.0, -(9.0 - 1.5 * f64::from(day)).max(0.0)];
        let coming = |day| Truth { new_pitch_off: sweep(day), ..still(day) };
        early += u32::from(matches!(Season::new(seed).run(3, coming).new_pitch.state, ShapeState::Arrived { .. }));
        arrived += u32::from(matches!(Season::new(seed).run(12, coming).new_pitch.state, ShapeState::Arrived { .. }));
        let leaving = |day: u16| match day {
            0..10 => coming(day),
            _ => Truth { new_pitch_off: [0.0, -6.0, 0.0], ..still(day) },
        };
        let state = Season::new(seed).run(13, leaving).new_pitch.state;
        drifted += u32::from(state == ShapeState::Drifted { axis: 1, above: false });
    }
    println!("early {early}, arrived {arrived}, drifted {drifted} of 60");
    assert!(early == 0 && arrived >= 48 && drifted >= 50, "{early} {arrived} {drifted}");
}

#[test]
fn command_that_stays_wide_is_said_and_command_that_comes_is_not() {
    let (mut wide, mut coming) = (0, 0);
    for seed in 0..60 {
        let said = |season: &Progress| season.findings.iter().any(|finding| finding.kind == Kind::CommandNotComing);
        wide += u32::from(said(&Season::new(seed).run(12, |day| Truth { command_in: 15.0, ..still(day) })));
        let better = |day: u16| Truth { command_in: 15.0 - 0.5 * f64::from(day), ..still(day) };
        coming += u32::from(said(&Season::new(seed).run(12, better)));
    }
    println!("wide {wide}, coming {coming} of 60");
    assert!(wide >= 48 && coming <= 6, "{wide} {coming}");
}

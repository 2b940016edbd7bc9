//! Whatever a valid profile says, every answer about it is a finite one.
//!
//! Profiles are made as text, each key over the whole range the reader documents, ends included, and read back;
//! what the reader refuses is left out, and a test holds that it seldom refuses one. Whether the answers are good
//! is for other tests.

#[path = "common/finite.rs"]
mod finite;

use std::fmt::Write as _;
use std::num::NonZeroUsize;
use std::time::{Duration, Instant};

use arsenalfit::athlete::profile::{Aim, Level, PerSide, Profile};
use arsenalfit::ball::Family;
use arsenalfit::ball::Supination;
use arsenalfit::base::geometry::{Clock, Hand, Side};
use arsenalfit::decide::advice::Advice;
use arsenalfit::decide::apart::{pairs, partings};
use arsenalfit::decide::inspect::spin_of;
use arsenalfit::decide::model::Model;
use arsenalfit::decide::new_pitch::Command;
use arsenalfit::decide::usage::Usage;
use arsenalfit::files::profile_from_toml;
use arsenalfit::report::answers::{self, Advised, Spun};
use finite::{assert_finite, has_odd_number};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, TestError, TestRunner};

/// Ways the world might be, for each answer.
const DRAWS: NonZeroUsize = NonZeroUsize::new(16).expect("not zero");
/// A run that takes this long hangs, however busy the machine.
const PATIENCE: Duration = Duration::from_mins(20);
/// Dials of the sections, and of each pitch.
const HEAD: usize = 60;
const EACH: usize = 60;

/// Numbers from 0 to 1 that say what a profile holds; at 0 a key is left out or at its low end.
struct Dials<'a>(std::slice::Iter<'a, f64>);

impl<'a> Dials<'a> {
    fn new(dials: &'a [f64]) -> Self {
        Self(dials.iter())
    }

    fn next(&mut self) -> f64 {
        *self.0.next().expect("enough dials for every key")
    }

    fn is_given(&mut self) -> bool {
        self.next() > 0.5
    }

    fn number(&mut self, low: f64, high: f64) -> f64 {
        (low + (high - low) * self.next()).clamp(low, high)
    }

    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "dials are from 0 to 1")]
    fn whole(&mut self, low: u32, high: u32) -> u32 {
        low + (f64::from(high - low) * self.next()).round() as u32
    }

    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "dials are from 0 to 1")]
    fn pick<T: Copy>(&mut self, all: &[T]) -> T {
        all[((all.len() as f64 * self.next()) as usize).min(all.len() - 1)]
    }
}

/// A section being written: each key with a value, or not.
struct Section(String);

impl Section {
    fn new(header: &str) -> Self {
        Self(format!("{header}\n"))
    }

    fn set(&mut self, key: &str, value: impl std::fmt::Display) {
        writeln!(self.0, "{key} = {value}").expect("a string takes any text");
    }

    fn maybe(&mut self, key: &str, value: impl std::fmt::Display, dials: &mut Dials) {
        if dials.is_given() {
            self.set(key, value);
        }
    }

    fn number(&mut self, key: &str, low: f64, high: f64, dials: &mut Dials) {
        let value = dials.number(low, high);
        self.maybe(key, value, dials);
    }
}

fn quoted(text: &str) -> String {
    format!("\"{text}\"")
}

/// The sections that do not hang on the pitches, and the throwing hand.
fn sections(dials: &mut Dials) -> (String, Hand) {
    let hand = dials.pick(&[Hand::Right, Hand::Left]);
    let mut athlete = Section::new("[athlete]\nname = \"Any One\"");
    athlete.set("throws", quoted(&hand.to_string()));
    let (age, has_age) = (dials.whole(5, 60), dials.is_given());
    if has_age {
        athlete.set("age", age);
    }
    let fits = |level: &Level| match level {
        _ if !has_age => true,
        Level::Youth => age <= 16,
        Level::HighSchool => (13..=20).contains(&age),
        Level::College | Level::Professional => age >= 16,
    };
    let levels: Vec<Level> = Level::ALL.into_iter().filter(fits).collect();
    let level = dials.pick(&levels);
    athlete.maybe("level", quoted(level.name()), dials);

    let mut release = Section::new("[release]");
    for (key, low, high) in
        [("slot_deg", 0.0, 90.0), ("height_ft", 1.0, 8.0), ("side_ft", -1.0, 5.0), ("extension_ft", 3.0, 8.5)]
    {
        release.number(key, low, high, dials);
    }
    let supination = dials.pick(&Supination::ALL);
    release.maybe("supination", quoted(supination.name()), dials);

    let mut health = Section::new("[health]");
    for key in ["pain", "recent_injury", "no_new_breaking_ball"] {
        let is_so = dials.is_given();
        health.maybe(key, is_so, dials);
    }
    let months = dials.whole(0, 12);
    health.maybe("months_off", months, dials);

    let mut faces = Section::new("[faces]");
    faces.number("opposite_share", 0.0, 1.0, dials);
    (athlete.0 + &release.0 + &air(dials) + &health.0 + &faces.0, hand)
}

/// Air whose pressure is one of its elevation.
fn air(dials: &mut Dials) -> String {
    let mut air = Section::new("[air]");
    let (elevation_ft, has_elevation) = (dials.number(-1500.0, 15_000.0), dials.is_given());
    if has_elevation {
        air.set("elevation_ft", elevation_ft);
        let usual = 29.921 * (1.0 - elevation_ft * 0.3048 / 44_329.0).powf(5.255_876);
        let pressure = (usual + dials.number(-1.99, 1.99)).clamp(18.0, 32.0);
        air.maybe("pressure_inhg", pressure, dials);
    } else {
        air.number("pressure_inhg", 18.0, 32.0, dials);
    }
    let temperature_f = dials.number(-20.0, 130.0);
    if dials.is_given() {
        air.set("temperature_f", temperature_f);
        air.number("humidity_percent", 0.0, 100.0, dials);
    }
    air.0
}

/// The limits, as far as these families can keep them.
fn limits(families: &[Family], dials: &mut Dials) -> String {
    let mut limits = Section::new("[limits]");
    let has_fastball = families.iter().any(|family| family.is_fastball());
    let has_other = families.iter().any(|family| !family.is_breaking());
    limits.number("fastball_floor", 0.0, if has_fastball { 1.0 } else { 0.0 }, dials);
    limits.number("breaking_cap", if has_other { 0.0 } else { 1.0 }, 1.0, dials);
    limits.number("new_pitch_cap", 0.0, 1.0, dials);
    limits.number("seam_shift_in", 0.0, 10.0, dials);
    limits.0
}

/// A pitch of this family and number; `usage` is its share against each side.
fn pitch(number: usize, family: Family, hand: Hand, usage: PerSide<Option<f64>>, dials: &mut Dials) -> String {
    let mut pitch = Section::new("[[pitch]]");
    pitch.set("name", quoted(&format!("{family} {number}")));
    pitch.set("family", quoted(family.name()));
    let speed_mph = dials.number(40.0, 110.0);
    pitch.set("speed_mph", speed_mph);
    // Break in any direction a family allows, up to the most that the reader believes.
    let (length, hours) = (dials.number(0.0, 41.0), dials.number(0.0, 12.0));
    let push = Clock::from_hours(hours).push();
    let [mut glove_side, mut vertical] = [push.0, push.1].map(|part| (length * part).clamp(-40.0, 40.0));
    if family == Family::FourSeam {
        vertical = vertical.abs();
    }
    if family.is_fastball() && glove_side > 2.0 {
        glove_side = -glove_side;
    }
    pitch.set("vertical_break_in", vertical);
    pitch.set("glove_side_break_in", glove_side);
    spin(&mut pitch, family, hand, (speed_mph, glove_side, vertical), dials);
    pitch.number("release_height_ft", 1.0, 8.0, dials);
    pitch.number("release_side_ft", -1.0, 5.0, dials);
    let throws = if dials.is_given() { dials.whole(1, 200) } else { dials.whole(1, 100_000) };
    pitch.maybe("throws", throws, dials);
    for (key, low, high) in [
        ("spread.speed_mph", 0.1, 8.0),
        ("spread.vertical_break_in", 0.1, 15.0),
        ("spread.glove_side_break_in", 0.1, 15.0),
        ("spread.command_side_in", 0.5, 40.0),
        ("spread.command_height_in", 0.5, 40.0),
        ("spread.release_in", 0.1, 12.0),
    ] {
        pitch.number(key, low, high, dials);
    }
    for (side, key) in [(Side::Same, "same_side"), (Side::Opposite, "opposite_side")] {
        if let Some(share) = usage.on(side) {
            pitch.set(&format!("usage.{key}"), share);
        }
        let aim = dials.pick(&Aim::ALL);
        pitch.maybe(&format!("aim.{key}"), quoted(aim.name()), dials);
        let pitches = if dials.is_given() { dials.whole(0, 400) } else { dials.whole(0, 100_000) };
        let swings = dials.whole(0, pitches);
        let misses = dials.whole(0, swings);
        let weak = dials.whole(0, swings - misses);
        let weak = if dials.is_given() { format!(", weak = {weak}") } else { String::new() };
        let counts = format!("{{ pitches = {pitches}, swings = {swings}, misses = {misses}{weak} }}");
        pitch.maybe(&format!("results.{key}"), counts, dials);
    }
    pitch.0
}

/// Spin that may give this break: total, active share and clock, each or none of them.
fn spin(pitch: &mut Section, family: Family, hand: Hand, shape: (f64, f64, f64), dials: &mut Dials) {
    let (speed_mph, glove_side, vertical) = shape;
    let total = glove_side.hypot(vertical);
    let least = if family == Family::Knuckleball { 0.0 } else { least_spin_rpm(total, speed_mph) };
    let (rpm, has_rpm) = (dials.number(least.min(4500.0), 4500.0), dials.is_given() && least <= 4500.0);
    let (active, has_active) = (dials.number(0.0, 1.0), dials.is_given());
    let (apart, has_clock) = (dials.number(-3.9, 3.9), dials.is_given());
    if has_rpm {
        pitch.set("spin_rpm", rpm);
    }
    if has_rpm && rpm <= 0.0 {
        return;
    }
    if has_active {
        pitch.set("active_fraction", active);
    }
    if has_clock && !(has_active && active <= 0.0) {
        let pushed = Clock::from_push(glove_side, vertical).for_hand(hand);
        pitch.set("spin_clock", quoted(&Clock::from_hours(pushed.hours() + apart).to_string()));
    }
}

/// A little more than the reader's least spin for a break, by its two lift laws.
fn least_spin_rpm(break_in: f64, speed_mph: f64) -> f64 {
    let lift = (break_in * 0.01 / 0.98 - 0.06).max(0.0) / 1.15;
    let by_rational_law = 0.4 * lift / (1.0 - 2.32 * lift);
    let by_bilinear_law = if lift <= 0.15 { lift / 1.5 } else { (lift - 0.09) / 0.6 };
    // A ball of 9.125 in around turns so often at that speed with a spin parameter of 1.
    let turns_rpm = speed_mph * 0.447_04 * 60.0 / (9.125 * 0.0254);
    by_rational_law.min(by_bilinear_law) * turns_rpm * 1.0001
}

/// Shares that sum to one, some of them nothing; none at all when nobody is thrown.
fn shares(weights: &[f64]) -> Vec<Option<f64>> {
    let kept: Vec<f64> = weights.iter().map(|&weight| if weight < 0.2 { 0.0 } else { weight }).collect();
    let total: f64 = kept.iter().sum();
    kept.iter().map(|weight| (total > 0.0).then(|| weight / total)).collect()
}

/// A profile as text, and the question to ask about it.
#[derive(Debug, Clone)]
struct Made {
    text: String,
    question: Question,
}

/// What dials of the sections and of each pitch make.
fn made_of(head: &[f64], pitches: &[Vec<f64>]) -> Made {
    let mut dials = Dials::new(head);
    let question =
        Question { family: dials.pick(&Family::ALL), command: dials.pick(&[Command::Mastered, Command::Now]), seed: 1 };
    let has_usage = PerSide::from_fn(|_| dials.is_given());
    let (mut text, hand) = sections(&mut dials);
    let mut each: Vec<Dials> = pitches.iter().map(|dials| Dials::new(dials)).collect();
    let families: Vec<Family> = each.iter_mut().map(|dials| dials.pick(&Family::ALL)).collect();
    text += &limits(&families, &mut dials);
    let usage = PerSide::from_fn(|side| {
        let weights: Vec<f64> = each.iter_mut().map(Dials::next).collect();
        if *has_usage.on(side) { shares(&weights) } else { vec![None; weights.len()] }
    });
    for (index, mut dials) in each.into_iter().enumerate() {
        let usage = PerSide::from_fn(|side| usage.on(side)[index]);
        text += &pitch(index + 1, families[index], hand, usage, &mut dials);
    }
    Made { text, question }
}

/// A profile of one to twelve pitches, its numbers often at their ends.
fn any_profile() -> impl Strategy<Value = Made> {
    let dial = || prop_oneof![8 => 0.0..=1.0_f64, 1 => Just(0.0), 1 => Just(1.0)];
    let some = |count: usize| prop::collection::vec(dial(), count);
    (some(HEAD), prop::collection::vec(some(EACH), 1..=12)).prop_map(|(head, pitches)| made_of(&head, &pitches))
}

/// What is asked about a profile.
#[derive(Debug, Clone, Copy)]
struct Question {
    family: Family,
    command: Command,
    seed: u64,
}

impl Question {
    const DEFAULT: Self = Self { family: Family::Sweeper, command: Command::Mastered, seed: 1 };
}

/// Asks everything about a profile; fails when a number anywhere is none.
fn ask_everything(profile: &Profile, question: Question) {
    let started = Instant::now();
    let model = Model::new(profile, DRAWS, question.seed);
    let advice = Advice::of(&model, question.family, question.command);
    assert_finite(&advice);
    let usage = Usage::of(&model);
    assert_finite(&usage);
    let (apart, partings) = (pairs(&model), PerSide::from_fn(|side| partings(&model, side)));
    assert_finite(&(&apart, &partings));
    let spun: Vec<Spun> = profile
        .pitches
        .iter()
        .map(|pitch| (pitch.name.as_str(), spin_of(profile, pitch).0, pitch.is_spin_measured()))
        .collect();
    let shown = [
        answers::advise(&Advised { profile, advice: &advice, leaning: None, file: None }),
        answers::usage(profile, &usage, "any.toml"),
        answers::apart(profile, &apart, &partings, "any.toml"),
        answers::dots(profile, &spun),
    ];
    for text in shown.iter().flat_map(|answer| [answer.text(80), answer.json(), answer.page()]) {
        assert!(!text.trim().is_empty() && !has_odd_number(&text), "{text}");
        assert!(!has_minus_zero(&text), "a zero has a sign: {text}");
    }
    assert!(started.elapsed() < PATIENCE, "{:?} for one profile", started.elapsed());
}

/// Whether a zero below none is shown somewhere, such as `-0.0`; `2031-01` and `-0.5` are none.
fn has_minus_zero(text: &str) -> bool {
    let is_one = |(at, _): (usize, &str)| {
        let number: String = text[at + 1..].chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
        let follows_a_word = text[..at].ends_with(char::is_alphanumeric);
        !follows_a_word && number.starts_with('0') && number.chars().all(|c| matches!(c, '0' | '.'))
    };
    text.match_indices('-').any(is_one)
}

/// Reads what `profiles` gives until `cases` were accepted and asked about.
fn ask_about(cases: u32) {
    let config = Config { cases, max_shrink_iters: 40, failure_persistence: None, ..Config::default() };
    let asked = TestRunner::new(config).run(&any_profile(), |Made { text, question }| {
        let read = profile_from_toml(&text, "any.toml");
        prop_assume!(read.is_ok());
        let profile = read.map_err(|error| TestCaseError::fail(error.to_string()))?;
        let answered = std::panic::catch_unwind(|| ask_everything(&profile, question));
        prop_assert!(answered.is_ok(), "asked {question:?} about\n{text}");
        Ok(())
    });
    asked.unwrap_or_else(|error| match error {
        TestError::Fail(why, _) | TestError::Abort(why) => panic!("{why}"),
    });
}

/// Cases of a run in CI.
const CASES: u32 = 6;
/// Cases of the long run, when `ARSENALFIT_CASES` does not say.
const MANY: u32 = 10_000;

#[test]
fn any_valid_profile_gives_finite_answers() {
    ask_about(CASES);
}

#[test]
#[ignore = "takes hours: `cargo test --release --test any_profile -- --ignored`, ARSENALFIT_CASES says how many"]
fn any_valid_profile_of_very_many_gives_finite_answers() {
    let said = std::env::var("ARSENALFIT_CASES").ok().and_then(|text| text.parse().ok());
    ask_about(said.unwrap_or(MANY));
}

/// The slowest pitches, known from one wild throw each, once drew and searched pitches that never reach the plate.
#[test]
fn the_slowest_pitches_are_answered_about_too() {
    for family in [Family::Sinker, Family::Knuckleball] {
        let text = format!(
            "[athlete]\nname = \"Any One\"\nthrows = \"left\"\n[[pitch]]\nname = \"slow\"\nfamily = \"{family}\"\n\
             speed_mph = 40\nvertical_break_in = 0\nglove_side_break_in = -40\nthrows = 1\nspread.speed_mph = 8\n"
        );
        let profile = profile_from_toml(&text, "slow.toml").unwrap_or_else(|error| panic!("{error}"));
        for asked in [Family::Knuckleball, Family::FourSeam, Family::Curveball] {
            ask_everything(&profile, Question { family: asked, ..Question::DEFAULT });
        }
    }
}

/// A fastball measured without any spin, its break the seams' alone, once made shares of nothing.
#[test]
fn a_fastball_without_spin_is_answered_about_too() {
    let text = "[athlete]\nname = \"Any One\"\nthrows = \"right\"\n[[pitch]]\nname = \"dead\"\nfamily = \"sinker\"\n\
                speed_mph = 90\nvertical_break_in = 2\nglove_side_break_in = -3\nspin_rpm = 0\n";
    let profile = profile_from_toml(text, "dead.toml").unwrap_or_else(|error| panic!("{error}"));
    for asked in [Family::Slider, Family::Knuckleball, Family::Splitter] {
        ask_everything(&profile, Question { family: asked, ..Question::DEFAULT });
    }
}

/// Otherwise the tests above would say little: at least nine in ten made-up profiles are valid.
#[test]
fn most_made_up_profiles_are_valid() {
    let mut runner = TestRunner::new(Config { failure_persistence: None, ..Config::default() });
    let profiles = any_profile();
    let (mut refused, made) = (Vec::new(), 1000);
    for _ in 0..made {
        let Made { text, .. } = profiles.new_tree(&mut runner).expect("a profile").current();
        refused.extend(profile_from_toml(&text, "any.toml").err().map(|error| error.to_string()));
    }
    assert!(refused.len() * 10 < made, "{} of {made} refused, the first:\n{}", refused.len(), refused[0]);
}

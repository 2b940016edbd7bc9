//! What must come out of the model without being tuned, on sixty invented arsenals (`tests/arsenals`) and on the league's
//! mean shapes: when a pitch is worth adding and when it is not, twins, mirrors, and what speed, carry and command do.
//!
//! The laws are common practice of the trade; the league's mean shapes are those of a league day of 2023 (R package
//! abdwr3edata, CC0; counted).

use std::num::NonZeroUsize;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::Movement;
use arsenalfit::base::geometry::Side;
use arsenalfit::decide::advice::{Candidate, FAMILIES};
use arsenalfit::decide::chase::{Work, given};
use arsenalfit::decide::levers::{What, levers};
use arsenalfit::decide::model::Model;
use arsenalfit::decide::new_pitch::Command;
use arsenalfit::decide::verdict::{TRY, Verdict};
use arsenalfit::decide::worth::{Change, Worth};
use arsenalfit::files::{profile_from_toml, read_profile};

/// Mean shapes of the league's families.
const LEAGUE: [(Family, f64, f64, f64); 8] = [
    (Family::FourSeam, 94.3, 14.6, -7.5),
    (Family::Sinker, 93.9, 5.5, -15.7),
    (Family::Cutter, 89.5, 5.5, 3.5),
    (Family::Slider, 85.0, 0.5, 5.3),
    (Family::Sweeper, 82.9, -0.4, 15.3),
    (Family::Curveball, 80.8, -11.8, 8.9),
    (Family::Changeup, 86.9, 4.6, -14.3),
    (Family::Splitter, 86.1, 1.9, -9.5),
];

const DRAWS: NonZeroUsize = NonZeroUsize::new(32).expect("not zero");
/// The slowest four-seams that the hitters were fitted to leave the hand about so fast.
const SLOWEST_KNOWN_MPH: f64 = 84.0;
/// A best guess needs no draws.
const NONE: NonZeroUsize = NonZeroUsize::MIN;

fn league_shape(family: Family) -> Shape {
    let (_, speed_mph, vertical_break_in, glove_side_break_in) =
        LEAGUE.into_iter().find(|row| row.0 == family).expect("a family of the league");
    Shape { speed_mph, vertical_break_in, glove_side_break_in }
}

fn arsenal(pitches: &[(Family, Shape)]) -> Profile {
    let mut text =
        "[athlete]\nname = \"Invented\"\nthrows = \"right\"\nage = 25\nlevel = \"professional\"\n".to_owned();
    for (number, (family, shape)) in pitches.iter().enumerate() {
        let pitch = format!(
            "[[pitch]]\nname = \"pitch {number}\"\nfamily = \"{family}\"\nspeed_mph = {}\nvertical_break_in = {}\n\
             glove_side_break_in = {}\n",
            shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in
        );
        text.push_str(&pitch);
    }
    profile_from_toml(&text, "invented").unwrap_or_else(|error| panic!("{error}"))
}

fn of_league(families: &[Family]) -> Profile {
    arsenal(&families.iter().map(|&family| (family, league_shape(family))).collect::<Vec<_>>())
}

fn invented() -> Vec<Profile> {
    (1..=60)
        .map(|n| read_profile(format!("tests/arsenals/invented-{n:02}.toml").as_ref()).expect("a profile"))
        .collect()
}

/// Runs saved per 100 pitches on the best guess by adding a pitch of the league's mean shape.
fn gain(profile: &Profile, family: Family) -> f64 {
    gain_of(profile, family, league_shape(family))
}

fn gain_of(profile: &Profile, family: Family, shape: Shape) -> f64 {
    let model = Model::new(profile, NONE, 1);
    given(&model, family, Work::Learn, shape).expect("a known family").change.best_guess(&model)
}

#[test]
fn a_sweeper_is_worth_more_where_sideways_movement_is_missing_than_beside_a_sweeping_slider() {
    let fastball = (Family::FourSeam, league_shape(Family::FourSeam));
    let changeup = (Family::Changeup, league_shape(Family::Changeup));
    let sweeping = Shape { speed_mph: 84.0, vertical_break_in: 0.0, glove_side_break_in: 13.0 };
    let missing = gain(&arsenal(&[fastball, changeup]), Family::Sweeper);
    let owned = gain(&arsenal(&[fastball, changeup, (Family::Slider, sweeping)]), Family::Sweeper);
    assert!(missing > 0.03 && missing > owned + 0.02, "missing {missing:.3}, owned {owned:.3}");
}

#[test]
fn a_twin_under_any_familys_name_is_worth_nothing() {
    let profile = of_league(&[Family::FourSeam, Family::Slider, Family::Changeup]);
    for owned in [Family::FourSeam, Family::Slider, Family::Changeup] {
        for name in FAMILIES.into_iter().chain([Family::Sinker]) {
            let worth = gain_of(&profile, name, league_shape(owned));
            assert!(worth.abs() < 0.002, "{owned} again, called {name}: {worth:.4}");
        }
    }
}

#[test]
fn the_first_added_pitch_gains_most_and_later_ones_do_not_gain_more() {
    let steps: [&[Family]; 4] = [
        &[Family::FourSeam],
        &[Family::FourSeam, Family::Slider],
        &[Family::FourSeam, Family::Slider, Family::Changeup],
        &[Family::FourSeam, Family::Slider, Family::Changeup, Family::Curveball],
    ];
    let mean = |owned: &&[Family]| {
        let profile = of_league(owned);
        let new: Vec<f64> = FAMILIES.into_iter().filter(|f| !owned.contains(f)).map(|f| gain(&profile, f)).collect();
        new.iter().sum::<f64>() / new.len() as f64
    };
    let means: Vec<f64> = steps.iter().map(mean).collect();
    assert!(means[0] > 2.0 * means[1], "{means:.3?}");
    assert!(means.windows(2).all(|pair| pair[1] <= pair[0] + 0.01), "{means:.3?}");
}

#[test]
fn the_more_good_pitches_are_owned_the_less_often_the_answer_is_add() {
    let mut added = [[0_u32; 2]; 7];
    for profile in invented() {
        let model = Model::new(&profile, DRAWS, 1);
        let new: Vec<Family> =
            FAMILIES.into_iter().filter(|f| profile.pitches.iter().all(|pitch| pitch.family != *f)).collect();
        let owned = profile.pitches.len().min(6);
        for candidate in Candidate::all_of(&model, &new, Command::Mastered) {
            added[owned][0] += u32::from(candidate.worth.verdict() == Verdict::Add);
            added[owned][1] += 1;
            assert!(candidate.worth.chance <= 0.985, "over 99 in 100 for {}", profile.athlete.name);
        }
    }
    let share = |from: usize, to: usize| {
        let (yes, all) = added[from..=to].iter().fold((0, 0), |(yes, all), [a, n]| (yes + a, all + n));
        f64::from(yes) / f64::from(all.max(1))
    };
    let (few, many) = (share(1, 3), share(4, 6));
    assert!(few > many && many < 0.25, "few {few:.2}, many {many:.2}: {added:?}");
}

#[test]
fn a_mile_more_tighter_command_and_leaning_use_do_not_cost_runs_that_matter() {
    for profile in invented().iter().step_by(3) {
        let model = Model::new(profile, NONE, 1);
        for lever in levers(&model) {
            let gain = lever.worth.overall.value;
            if matches!(lever.what, What::Faster | What::TighterCommand | What::UseAlone) {
                assert!(gain > -TRY / 2.0, "{}: {:?} {gain:.3}", profile.athlete.name, lever.what);
            }
        }
    }
}

#[test]
fn more_carry_on_a_four_seam_does_not_cost_runs_that_matter() {
    for profile in invented() {
        let Some(pitch) = profile.pitches.iter().position(|pitch| pitch.family == Family::FourSeam) else { continue };
        let model = Model::new(&profile, NONE, 1);
        let up = |inches| profile.pitches[pitch].shape.moved(0.0, Movement { glove_side_in: 0.0, up_in: inches });
        let gain = Change::reshaping(&model, pitch, up(2.0)).best_guess(&model);
        // No throw of the data is as slow as a boy's: there the model reaches beyond what it was fitted to.
        if profile.pitches[pitch].shape.speed_mph >= SLOWEST_KNOWN_MPH {
            assert!(gain > -TRY, "{}: {gain:.3}", profile.athlete.name);
        }
    }
}

#[test]
fn breaking_balls_are_used_more_against_the_same_side_and_changeups_against_the_other() {
    let profile = of_league(&[Family::FourSeam, Family::Sweeper, Family::Slider, Family::Changeup]);
    let model = Model::new(&profile, NONE, 1);
    let [same, opposite] = Side::BOTH.map(|side| model.shares.mix(side));
    assert!(same[1] > opposite[1] && same[2] > opposite[2] && same[3] < opposite[3], "{same:.2?} {opposite:.2?}");
}

#[test]
fn mirrored_athletes_get_mirrored_answers() {
    let right = include_str!("../profiles/three-quarter-right.toml");
    let left = right.replace("throws = \"right\"", "throws = \"left\"");
    let clocks = regex::Regex::new("spin_clock = \"(\\d+):(\\d+)\"").expect("a pattern");
    let left = clocks.replace_all(&left, |found: &regex::Captures| {
        let minutes =
            720 - (found[1].parse::<u32>().expect("hours") % 12 * 60 + found[2].parse::<u32>().expect("minutes"));
        format!("spin_clock = \"{}:{:02}\"", if minutes % 720 < 60 { 12 } else { minutes % 720 / 60 }, minutes % 60)
    });
    let [right, left] = [right, &left].map(|text| profile_from_toml(text, "mirror").expect("a profile"));
    let worth = |profile: &Profile| {
        let model = Model::new(profile, DRAWS, 1);
        let target = given(&model, Family::Sweeper, Work::Learn, league_shape(Family::Sweeper)).expect("known");
        Worth::of(&model, &target.change).by_draw
    };
    assert_eq!(worth(&right), worth(&left));
}

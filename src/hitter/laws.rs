//! Laws that the fitted hitter must keep, on pitches about the means of a league: what every coach knows to be so.
//!
//! The pitches and where they are aimed are the means of a league day of 2023 (tests of the R package abdwr3edata,
//! companion of *Analyzing Baseball Data with R*, 3rd edition; CC0), by family.

use super::*;
use crate::athlete::profile::Level;
use crate::ball::Shape;
use crate::ball::flight::Air;
use crate::base::Location;
use crate::base::geometry::{Side, Vec3};

const RELEASE: Vec3 = Vec3::new(-0.55, 16.5, 1.78);
const SCATTER: Scatter = Scatter { side_in: 8.8, height_in: 10.0 };
const GROUPS: [CountGroup; 3] = [CountGroup::First, CountGroup::Other, CountGroup::TwoStrikes];

const FOUR_SEAM: Pitch = Pitch { speed: 94.3, up: 14.7, side: -7.4, aim: (1.4, 2.9) };
const SLIDER: Pitch = Pitch { speed: 85.1, up: -0.2, side: 4.8, aim: (2.8, -6.8) };
const SWEEPER: Pitch = Pitch { speed: 82.6, up: -0.7, side: 16.0, aim: (3.2, -6.1) };
const CURVEBALL: Pitch = Pitch { speed: 79.3, up: -12.4, side: 9.6, aim: (1.0, -7.1) };
const CHANGEUP: Pitch = Pitch { speed: 85.9, up: 4.0, side: -14.5, aim: (-4.0, -7.7) };

/// A pitch: speed, movement up and to the glove side, and its aim across and from the middle of the zone.
#[derive(Clone, Copy)]
struct Pitch {
    speed: f64,
    up: f64,
    side: f64,
    aim: (f64, f64),
}

impl Pitch {
    fn delivery(self) -> Delivery {
        let shape = Shape { speed_mph: self.speed, vertical_break_in: self.up, glove_side_break_in: self.side };
        let aim = Location { glove_side_in: self.aim.0, height_in: Zone::TYPICAL.middle_in + self.aim.1 };
        Delivery::of(shape, RELEASE, Air::SEA_LEVEL, aim)
    }
}

/// The first pitch of an arsenal met by a hitter who knows all of it.
fn row(hitter: &Hitter, arsenal: &[Pitch], side: Side, group: CountGroup) -> Row {
    let deliveries: Vec<Delivery> = arsenal.iter().map(|pitch| pitch.delivery()).collect();
    let beliefs: Vec<Belief> = deliveries.iter().map(Delivery::belief).collect();
    let fastest_s = beliefs.iter().map(|belief| belief.flight_s).fold(f64::INFINITY, f64::min);
    Row::of(hitter, &deliveries[0], SCATTER, &beliefs, fastest_s, side, group)
}

fn miss_per_swing(chances: &Chances) -> f64 {
    chances.miss() / chances.swing
}

fn professional(reading: Reading) -> Hitter {
    Hitter::best(Level::Professional, reading)
}

fn everywhere(mut law: impl FnMut(&Hitter, Side, CountGroup)) {
    for reading in Reading::ALL {
        for side in Side::BOTH {
            for group in GROUPS {
                law(&professional(reading), side, group);
            }
        }
    }
}

/// Misses per swing at the first pitch of each arsenal rise from one arsenal to the next.
fn assert_rising(hitter: &Hitter, arsenals: &[[Pitch; 2]], mix: [f64; 2], side: Side, group: CountGroup) {
    let misses: Vec<f64> =
        arsenals.iter().map(|arsenal| miss_per_swing(&row(hitter, arsenal, side, group).chances(&mix))).collect();
    assert!(misses.is_sorted_by(|a, b| a < b), "{:?} {side} {group:?}: {misses:.3?}", hitter.reading);
}

#[test]
fn a_faster_fastball_is_missed_more() {
    let arsenals = [85.0, 88.0, 91.0, 94.0, 97.0, 100.0]
        .map(|speed| [Pitch { speed, ..FOUR_SEAM }, Pitch { speed: speed - 8.4, ..CHANGEUP }]);
    everywhere(|hitter, side, group| assert_rising(hitter, &arsenals, [0.65, 0.35], side, group));
}

#[test]
fn carry_at_the_top_of_the_zone_is_missed_more() {
    let arsenals = [8.0, 12.0, 16.0, 20.0, 22.0].map(|up| [Pitch { up, aim: (1.4, 8.0), ..FOUR_SEAM }, SLIDER]);
    everywhere(|hitter, side, group| assert_rising(hitter, &arsenals, [0.6, 0.4], side, group));
}

#[test]
fn a_changeup_is_missed_more_the_slower_it_is_up_to_ten_mph() {
    let arsenals =
        [2.0, 4.0, 6.0, 8.0, 10.0].map(|gap| [Pitch { speed: FOUR_SEAM.speed - gap, ..CHANGEUP }, FOUR_SEAM]);
    everywhere(|hitter, side, group| assert_rising(hitter, &arsenals, [0.35, 0.65], side, group));
}

/// Only where shares matter to the hitter: the other reading loses up to 0.03 of misses per swing here.
#[test]
fn movement_away_from_the_fastball_wins_misses_same_side_and_loses_none_opposite() {
    let toward_slider = |part: f64| {
        let between = |from: f64, to: f64| from + part * (to - from);
        [
            Pitch { up: between(FOUR_SEAM.up, SLIDER.up), side: between(FOUR_SEAM.side, SLIDER.side), ..SLIDER },
            FOUR_SEAM,
        ]
    };
    for group in GROUPS {
        let hitter = professional(Reading::Shares);
        assert_rising(&hitter, &[0.0, 0.25, 0.5, 0.75].map(toward_slider), [0.4, 0.6], Side::Same, group);
        let opposite = [0.0, 0.25, 0.5, 0.75, 1.0].map(|part| {
            miss_per_swing(&row(&hitter, &toward_slider(part), Side::Opposite, group).chances(&[0.4, 0.6]))
        });
        assert!(opposite.iter().all(|misses| *misses > opposite[0] - 0.01), "{group:?}: {opposite:.3?}");
    }
}

#[test]
fn breaking_balls_and_fastballs_are_missed_more_same_side_and_changeups_opposite() {
    for (pitch, more_same_side) in
        [(FOUR_SEAM, true), (SLIDER, true), (SWEEPER, true), (CURVEBALL, true), (CHANGEUP, false)]
    {
        for (reading, group) in Reading::ALL.into_iter().flat_map(|reading| GROUPS.map(|group| (reading, group))) {
            let hitter = professional(reading);
            let [same, opposite] = Side::BOTH
                .map(|side| miss_per_swing(&row(&hitter, &[pitch, FOUR_SEAM], side, group).chances(&[0.4, 0.6])));
            assert_eq!(same > opposite, more_same_side, "{:?} {group:?}: {same:.3} {opposite:.3}", pitch.speed);
        }
    }
}

#[test]
fn coarser_eyes_or_hands_never_help_the_hitter() {
    let factors = [0.8, 1.0, 1.1, 1.3, 1.65, 2.0];
    everywhere(|hitter, side, group| {
        for arsenal in [[FOUR_SEAM, SLIDER], [SLIDER, FOUR_SEAM], [CHANGEUP, FOUR_SEAM], [CURVEBALL, FOUR_SEAM]] {
            let coarser =
                factors.map(|factor| [Hitter { eyes: factor, ..*hitter }, Hitter { hands: factor, ..*hitter }]);
            for part in [0, 1] {
                let all = coarser.map(|hitters| row(&hitters[part], &arsenal, side, group).chances(&[0.5, 0.5]));
                assert!(all.is_sorted_by(|a, b| miss_per_swing(a) < miss_per_swing(b)), "{side} {group:?} {all:.3?}");
                assert!(
                    all.is_sorted_by(|a, b| a.solid / a.contact > b.solid / b.contact),
                    "{side} {group:?} {all:.3?}"
                );
                assert!(all.is_sorted_by(|a, b| a.swing_outside <= b.swing_outside), "{side} {group:?} {all:.3?}");
            }
        }
    });
}

/// Only where shares matter to the hitter: in the other reading two pitches weigh more than one thrown as often.
#[test]
fn a_twin_changes_nothing() {
    for (side, group) in Side::BOTH.into_iter().flat_map(|side| GROUPS.map(|group| (side, group))) {
        let mut row = row(&professional(Reading::Shares), &[SLIDER, FOUR_SEAM], side, group);
        let alone = row.chances(&[0.4, 0.6]);
        row.push(&SLIDER.delivery().belief());
        let twins = row.chances(&[0.3, 0.6, 0.1]);
        assert!((alone.swing - twins.swing).abs() < 1e-12 && (alone.solid - twins.solid).abs() < 1e-12);
    }
}

#[test]
fn the_called_zone_of_one_side_is_the_mirror_of_the_other() {
    for group in CountGroup::ALL {
        for x in [-14.0, -9.5, -3.0, 0.0, 6.0, 11.0] {
            let at = |glove_side_in, side| {
                called_strike(Location { glove_side_in, height_in: 22.0 }, Zone::TYPICAL, side, group)
            };
            assert!((at(x, Side::Same) - at(-x, Side::Opposite)).abs() < 1e-15);
        }
    }
}

/// Runs by outcome and state of the count on the same league day: ball, called strike, miss, foul; a ball in play hit
/// hard on a good line +0.370, another -0.069; 0.484 of contact is foul.
fn runs(chances: &Chances, group: CountGroup) -> f64 {
    let [ball, called, miss, foul] = match group {
        CountGroup::Other => [0.046, -0.064, -0.066, -0.065],
        CountGroup::First => [0.035, -0.042, -0.045, -0.047],
        CountGroup::HitterAhead | CountGroup::ThreeNothing => [0.081, -0.052, -0.049, -0.051],
        CountGroup::TwoStrikes => [0.067, -0.192, -0.234, 0.0],
    };
    let taken = chances.ball() * ball + chances.called_strike * called;
    let in_play = 0.370 * chances.solid - 0.069 * (0.516 * chances.contact - chances.solid);
    taken + chances.miss() * miss + 0.484 * chances.contact * foul + in_play
}

/// Runs per 100 pitches of an ordinary arsenal whose fastball has this speed, over sides and counts as often as they
/// came on that day.
fn ordinary_runs(level: Level, reading: Reading, fastball: f64) -> f64 {
    let hitter = Hitter::best(level, reading);
    let arsenal = [(FOUR_SEAM, 0.5), (SLIDER, 0.2), (CURVEBALL, 0.1), (CHANGEUP, 0.2)]
        .map(|(pitch, share)| (Pitch { speed: pitch.speed * fastball / FOUR_SEAM.speed, ..pitch }, share));
    let beliefs = arsenal.map(|(pitch, _)| pitch.delivery().belief());
    let mix = arsenal.map(|(_, share)| share);
    let mut sum = 0.0;
    for (group, often) in CountGroup::ALL.into_iter().zip([0.305, 0.258, 0.138, 0.012, 0.287]) {
        for (side, (pitch, share)) in Side::BOTH.into_iter().flat_map(|side| arsenal.map(|pitch| (side, pitch))) {
            let row = Row::of(&hitter, &pitch.delivery(), SCATTER, &beliefs, beliefs[0].flight_s, side, group);
            sum += 100.0 * often * 0.5 * share * runs(&row.chances(&mix), group);
        }
    }
    sum
}

/// Ordinary fastballs by level: 94 mph of the league day; the others common practice, no published source.
#[test]
fn an_ordinary_arsenal_of_each_level_costs_its_hitters_about_the_same() {
    for reading in Reading::ALL {
        let professional = ordinary_runs(Level::Professional, reading, 94.3);
        for (level, fastball) in [(Level::College, 90.0), (Level::HighSchool, 82.0), (Level::Youth, 68.0)] {
            let found = ordinary_runs(level, reading, fastball);
            assert!((found - professional).abs() < 0.5, "{} {reading:?}: {found:.2} {professional:.2}", level.name());
        }
    }
}

//! Chances over places: the lattice against 41 nodes an axis, one lattice for many aims, slopes in the mix.

use arsenalfit::athlete::profile::Level;
use arsenalfit::ball::Shape;
use arsenalfit::ball::flight::Air;
use arsenalfit::base::Location;
use arsenalfit::base::geometry::{Side, Vec3};
use arsenalfit::hitter::{
    AIM_ALLOWANCE_IN, Belief, Chances, CountGroup, Delivery, Hitter, Reading, Row, Scatter, called_strike, outcome,
};

const RELEASE: Vec3 = Vec3::new(-0.55, 16.5, 1.78);
const MIX: [f64; 4] = [0.4, 0.3, 0.15, 0.15];

/// About the league's four-seam, slider, curveball and changeup, all with this aim.
fn arsenal(aim: Location) -> [Delivery; 4] {
    [(94.3, 14.7, -7.4), (85.1, -0.2, 4.8), (79.3, -12.4, 9.6), (85.9, 4.0, -14.5)].map(
        |(speed_mph, vertical_break_in, glove_side_break_in)| {
            let shape = Shape { speed_mph, vertical_break_in, glove_side_break_in };
            Delivery::of(shape, RELEASE, Air::SEA_LEVEL, aim)
        },
    )
}

const fn at(glove_side_in: f64, height_in: f64) -> Location {
    Location { glove_side_in, height_in }
}

/// One of these pitches, where it is aimed and how it scatters.
#[derive(Clone, Copy)]
struct Case {
    pitch: usize,
    aim: Location,
    scatter: Scatter,
}

const fn case(pitch: usize, aim: (f64, f64), sd: (f64, f64)) -> Case {
    Case { pitch, aim: at(aim.0, aim.1), scatter: Scatter { side_in: sd.0, height_in: sd.1 } }
}

const CASES: [Case; 6] = [
    case(0, (1.0, 32.5), (8.4, 9.7)),
    case(0, (2.0, 38.0), (6.5, 6.5)),
    case(1, (4.0, 23.0), (8.8, 10.3)),
    case(1, (-3.0, 18.0), (10.0, 12.0)),
    case(2, (2.0, 22.0), (9.3, 10.4)),
    case(3, (-4.0, 21.0), (5.0, 5.0)),
];

fn everywhere(mut check: impl FnMut(Reading, Side, CountGroup)) {
    for reading in Reading::ALL {
        for side in Side::BOTH {
            for group in CountGroup::ALL {
                check(reading, side, group);
            }
        }
    }
}

fn parts(chances: &Chances) -> [f64; 6] {
    let Chances { swing, contact, solid, called_strike, outside, swing_outside } = *chances;
    [swing, contact, solid, called_strike, outside, swing_outside]
}

fn row(case: Case, hitter: &Hitter, side: Side, group: CountGroup) -> (Row, [Delivery; 4]) {
    let pitches = arsenal(case.aim);
    let beliefs = pitches.map(|pitch| pitch.belief());
    (Row::of(hitter, &pitches[case.pitch], case.scatter, &beliefs, beliefs[0].flight_s, side, group), pitches)
}

/// The same by the normal density on 41 x 41 places out to four and a half standard deviations; swing, contact, solid,
/// called strike.
fn plainly(case: Case, pitches: &[Delivery; 4], hitter: &Hitter, side: Side, group: CountGroup) -> [f64; 4] {
    let beliefs: Vec<Belief> = pitches.iter().map(Delivery::belief).collect();
    let Case { pitch, aim, scatter } = case;
    let nodes = (-20..=20).map(|node| f64::from(node) * 4.5 / 20.0);
    let (mut sum, mut total) = ([0.0; 4], 0.0);
    for (across, up) in nodes.clone().flat_map(|across| nodes.clone().map(move |up| (across, up))) {
        let weight = (-0.5 * (across * across + up * up)).exp();
        let place = at(aim.glove_side_in + scatter.side_in * across, aim.height_in + scatter.height_in * up);
        let struck = outcome(hitter, &pitches[pitch].ball_at(place), &beliefs, &MIX, side, group);
        let called = (1.0 - struck.swing) * called_strike(place, hitter.zone, side, group);
        for (sum, part) in sum.iter_mut().zip([struck.swing, struck.contact, struck.solid, called]) {
            *sum += weight * part;
        }
        total += weight;
    }
    sum.map(|sum| sum / total)
}

/// To two thousandths, a hundredth of the run that a swing or a called strike is worth.
#[test]
fn the_lattice_is_as_good_as_forty_one_nodes_an_axis() {
    let mut worst = [0.0_f64; 4];
    for case in CASES {
        everywhere(|reading, side, group| {
            let hitter = Hitter::best(Level::Professional, reading);
            let (row, pitches) = row(case, &hitter, side, group);
            let (found, plain) = (parts(&row.chances(&MIX)), plainly(case, &pitches, &hitter, side, group));
            worst = std::array::from_fn(|k| worst[k].max((found[k] - plain[k]).abs()));
        });
    }
    assert!(worst.iter().all(|off| *off < 2e-3), "{worst:?}");
}

#[test]
fn one_lattice_values_an_aim_four_inches_off_as_a_flight_there_would_be() {
    let case = CASES[2];
    let there = at(case.aim.glove_side_in + AIM_ALLOWANCE_IN, case.aim.height_in - AIM_ALLOWANCE_IN);
    everywhere(|reading, side, group| {
        let hitter = Hitter::best(Level::Professional, reading);
        let (row, pitches) = row(case, &hitter, side, group);
        let beliefs = pitches.map(|pitch| pitch.belief());
        let flown = &arsenal(there)[case.pitch];
        let flown = Row::of(&hitter, flown, case.scatter, &beliefs, beliefs[0].flight_s, side, group).chances(&MIX);
        let moved = row.mixed(&MIX).chances(&row.spread(there, case.scatter));
        for (moved, flown) in parts(&moved).into_iter().zip(parts(&flown)) {
            assert!((moved - flown).abs() < 4e-3, "{moved} {flown}");
        }
    });
}

#[test]
fn slopes_in_the_mix_are_those_of_small_differences() {
    const STEP: f64 = 1e-5;
    everywhere(|reading, side, group| {
        let hitter = Hitter::best(Level::Professional, reading);
        let (row, _) = row(CASES[1], &hitter, side, group);
        let (_, slopes) = row.chances_and_slopes(&MIX);
        for (pitch, slope) in slopes.iter().enumerate() {
            let shifted = |by: f64| {
                let mut mix = MIX;
                mix[pitch] += by;
                parts(&row.chances(&mix))
            };
            let (up, down) = (shifted(STEP), shifted(-STEP));
            for (k, slope) in parts(slope).into_iter().enumerate() {
                let difference = (up[k] - down[k]) / (2.0 * STEP);
                assert!((slope - difference).abs() < 1e-7, "{pitch} {k}: {slope} {difference}");
            }
        }
    });
}

#[test]
fn a_belief_pushed_later_is_one_known_from_the_start() {
    let hitter = Hitter::best(Level::College, Reading::Crowd);
    let (known, pitches) = row(CASES[0], &hitter, Side::Opposite, CountGroup::First);
    let beliefs = pitches.map(|pitch| pitch.belief());
    let mut later = Row::of(
        &hitter,
        &pitches[0],
        CASES[0].scatter,
        &beliefs[..3],
        beliefs[0].flight_s,
        Side::Opposite,
        CountGroup::First,
    );
    later.push(&beliefs[3]);
    assert_eq!(known.chances(&MIX), later.chances(&MIX));
}

/// The share of places off the zone is that of two independent normal laws.
#[test]
fn the_share_off_the_zone_is_that_of_the_normal_law() {
    use statrs::distribution::{ContinuousCDF, Normal};
    let hitter = Hitter::best(Level::Professional, Reading::Shares);
    for case in CASES {
        let found = row(case, &hitter, Side::Same, CountGroup::Other).0.chances(&MIX).outside;
        let within = |aim: f64, sd: f64, middle: f64, half: f64| {
            let law = Normal::new(aim, sd).expect("a normal law");
            law.cdf(middle + half) - law.cdf(middle - half)
        };
        let radius = 9.125 / std::f64::consts::TAU;
        let across = within(case.aim.glove_side_in, case.scatter.side_in, 0.0, 8.5 + radius);
        let up =
            within(case.aim.height_in, case.scatter.height_in, hitter.zone.middle_in, hitter.zone.half_in + radius);
        assert!((found - (1.0 - across * up)).abs() < 2e-3, "{found} {}", 1.0 - across * up);
    }
}

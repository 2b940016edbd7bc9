//! The hitter against an independent implementation: twenty-five pitches of a real league day, met by a few lines of
//! Python that do the same sums with another language's error function (`tests/data/hitter_cases.json`).

use arsenalfit::base::Movement;
use arsenalfit::base::geometry::Side;
use arsenalfit::hitter::{
    Along, Arrival, Ball, Belief, CountGroup, Course, Hand, Hitter, Parameters, Reading, Zone, meet, outcome,
};
use serde_json::Value;

const TOLERANCE: f64 = 1e-9;

fn number(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or_else(|| panic!("{key} is a number"))
}

fn movement(value: &Value) -> Movement {
    Movement { glove_side_in: number(value, "gb"), up_in: number(value, "vb") }
}

fn hand(value: &Value) -> Hand {
    Hand { height_in: number(value, "rh"), arm_side_in: number(value, "rs") }
}

fn ball(value: &Value) -> Ball {
    let at = |key| number(value, key);
    let along = |place, velocity, acceleration| Along {
        place_in: at(place),
        velocity_in_s: at(velocity),
        acceleration_in_s2: at(acceleration),
    };
    Ball {
        course: Course {
            flight_s: at("T"),
            speed_mph: at("v"),
            approach_in_s: -at("vy"),
            movement: movement(value),
            hand: hand(value),
        },
        arrival: Arrival { across: along("x", "vx", "ax"), height: along("z", "vz", "az") },
    }
}

fn belief(value: &Value) -> Belief {
    Belief { flight_s: number(value, "T"), speed_mph: number(value, "v"), movement: movement(value), hand: hand(value) }
}

fn cases() -> Value {
    serde_json::from_str(include_str!("data/hitter_cases.json")).expect("cases")
}

fn hitter_of(cases: &Value) -> Hitter {
    let values = Parameters::NAMES.map(|name| number(&cases["parameters"], name));
    Hitter::new(Parameters::from_values(values), Reading::Shares)
}

fn group(case: &Value) -> CountGroup {
    let place = case["group"].as_u64().expect("a group");
    CountGroup::ALL[usize::try_from(place).expect("a small number")]
}

#[test]
fn every_case_has_the_answers_of_the_other_implementation() {
    let cases = cases();
    let all = cases["cases"].as_array().expect("a list");
    assert_eq!(all.len(), 25);
    for case in all {
        let zone = Zone { middle_in: number(case, "zone_mid"), half_in: number(case, "zone_half") };
        let hitter = hitter_of(&cases).with_zone(zone);
        let side = if number(case, "side") > 0.0 { Side::Same } else { Side::Opposite };
        let arsenal = case["arsenal"].as_array().expect("a list");
        let beliefs: Vec<Belief> = arsenal.iter().map(belief).collect();
        let mix: Vec<f64> = arsenal.iter().map(|pitch| number(pitch, "mix")).collect();
        let found = outcome(&hitter, &ball(&case["ball"]), &beliefs, &mix, side, group(case));
        for (found, key) in [(found.swing, "swing"), (found.contact, "contact"), (found.solid, "solid")] {
            let expected = number(case, key);
            assert!((found - expected).abs() < TOLERANCE, "{key}: {found} against {expected}");
        }
    }
}

#[test]
fn shares_move_a_crowd_less_and_a_lone_belief_alone_decides() {
    let cases = cases();
    let case = &cases["cases"][0];
    let beliefs: Vec<Belief> = case["arsenal"].as_array().expect("a list").iter().map(belief).collect();
    let ball = ball(&case["ball"]);
    let of = |reading, mix: &[f64]| {
        let hitter = Hitter { reading, ..hitter_of(&cases) };
        outcome(&hitter, &ball, &beliefs, mix, Side::Opposite, CountGroup::Other).swing
    };
    let moved = |reading| (of(reading, &[0.9, 0.1]) - of(reading, &[0.5, 0.5])).abs();
    assert!(moved(Reading::Crowd) < moved(Reading::Shares));
    let hitter = hitter_of(&cases);
    let fastest_s = beliefs[0].flight_s.min(beliefs[1].flight_s);
    let alone = meet(&hitter, &ball, &beliefs[0], fastest_s, Side::Opposite, CountGroup::Other).struck.swing;
    assert!((of(Reading::Shares, &[1.0, 0.0]) - alone).abs() < TOLERANCE);
}

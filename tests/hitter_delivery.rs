//! A pitch flown once and turned to its places, against flights really aimed there and against tracked throws.

use arsenalfit::athlete::profile::Level;
use arsenalfit::ball::Shape;
use arsenalfit::ball::flight::Air;
use arsenalfit::base::Location;
use arsenalfit::base::geometry::{PLATE_FRONT_Y, RUBBER_Y, Side, Vec3};
use arsenalfit::base::units::FOOT;
use arsenalfit::hitter::{Ball, CountGroup, Delivery, Hitter, Met, Reading, meet};

const RELEASE: Vec3 = Vec3::new(-0.55, 16.5, 1.78);
const MIDDLE: Location = Location { glove_side_in: 1.0, height_in: 29.0 };

fn shapes() -> [Shape; 4] {
    [(94.3, 14.7, -7.4), (82.6, -0.7, 16.0), (79.3, -12.4, 9.6), (68.0, 4.0, -14.5)].map(
        |(speed_mph, vertical_break_in, glove_side_break_in)| Shape {
            speed_mph,
            vertical_break_in,
            glove_side_break_in,
        },
    )
}

fn aimed(shape: Shape, aim: Location) -> Delivery {
    Delivery::of(shape, RELEASE, Air::SEA_LEVEL, aim)
}

fn places() -> impl Iterator<Item = Location> {
    let off = [-16.0, -8.0, 8.0, 16.0];
    off.into_iter().flat_map(move |across| {
        off.map(|up| Location { glove_side_in: MIDDLE.glove_side_in + across, height_in: MIDDLE.height_in + up })
    })
}

/// Two standard deviations off the aim either way (16 in), within a fifth of what the eyes tell: 7 ms in time, 3 in at
/// the plate, of which the velocity there moves the ball for the fifth of a second it is not seen.
#[test]
fn a_turned_pitch_is_nearly_the_one_really_aimed_there() {
    const PART: f64 = 0.2;
    for shape in shapes() {
        let pitch = aimed(shape, MIDDLE);
        for place in places() {
            let (turned, real): (Ball, Ball) = (pitch.ball_at(place), aimed(shape, place).aimed);
            let seconds = real.course.flight_s;
            assert!((turned.course.flight_s - seconds).abs() < PART * 7e-3);
            let (here, there) = (turned.arrival, real.arrival);
            for (turned, real) in [(here.across, there.across), (here.height, there.height)] {
                assert!((turned.place_in - real.place_in).abs() < 1e-2);
                assert!((turned.velocity_in_s - real.velocity_in_s).abs() * 0.2 < PART * 3.0);
                let movement = 0.5 * seconds * seconds * (turned.acceleration_in_s2 - real.acceleration_in_s2);
                assert!(movement.abs() < PART * 3.0, "{movement}");
            }
        }
    }
}

/// To a hundredth; where a pitch lands is averaged over places on both sides of its aim, where the differences cancel.
#[test]
fn a_hitter_does_the_same_with_a_turned_pitch() {
    let hitter = Hitter::best(Level::Professional, Reading::Shares);
    let mut off = [0.0_f64; 2];
    for shape in shapes() {
        let (pitch, fastball) = (aimed(shape, MIDDLE), aimed(shapes()[0], MIDDLE).belief());
        for place in places() {
            for belief in [pitch.belief(), fastball] {
                let met = |ball: Ball| -> Met {
                    meet(&hitter, &ball, &belief, fastball.flight_s, Side::Same, CountGroup::TwoStrikes)
                };
                let (turned, real) = (met(pitch.ball_at(place)).struck, met(aimed(shape, place).aimed).struck);
                off[0] = off[0].max((turned.swing - real.swing).abs());
                off[1] = off[1].max((turned.contact - real.contact).abs());
            }
        }
    }
    assert!(off[0] < 0.01 && off[1] < 0.01, "{off:?}");
}

/// Sixty-four throws of a league day (`tests/data/README.md`). The drag and the air of each are not known, so that a
/// flight may be some milliseconds off; movement against gravity alone holds drag's share and must come out by itself.
#[test]
fn flights_of_tracked_throws_have_their_time_movement_and_acceleration() {
    let text = include_str!("data/league_day_flights.csv");
    let mut off = Vec::new();
    for line in text.lines().skip(1) {
        let numbers: Vec<f64> = line.split(',').skip(1).map(|cell| cell.parse().expect("a number")).collect();
        off.push(differences(&numbers));
    }
    assert_eq!(off.len(), 64);
    let mean = |k: usize| off.iter().map(|row| row[k]).sum::<f64>() / 64.0;
    let largest = |k: usize| off.iter().map(|row| row[k].abs()).fold(0.0, f64::max);
    let [time_ms, up_in, side_in, across_in_s2, up_in_s2] = [0, 1, 2, 3, 4].map(largest);
    assert!(mean(0).abs() < 3.0 && time_ms < 8.0);
    assert!(mean(1).abs() < 0.3 && up_in < 1.0 && mean(2).abs() < 0.3 && side_in < 0.6);
    assert!(across_in_s2 < 8.0 && up_in_s2 < 10.0);
}

/// Flight less tracked throw: time in ms, movement up and to the glove side in inches, acceleration in in/s².
fn differences(numbers: &[f64]) -> [f64; 5] {
    let [speed_mph, height, side, extension, up, glove, up_gravity, glove_gravity, rest @ ..] = numbers else {
        panic!("a row has its columns")
    };
    let [_, vy, _, ax, ay, az, glove_side_in, height_in] = *rest else { panic!("a row has its columns") };
    let release = Vec3::new(-side * FOOT, RUBBER_Y - extension * FOOT, height * FOOT);
    let shape = Shape { speed_mph: *speed_mph, vertical_break_in: *up, glove_side_break_in: *glove };
    let ball = Delivery::of(shape, release, Air::SEA_LEVEL, Location { glove_side_in, height_in }).aimed;
    // Time from 50 ft to a plane under the constant acceleration of the tracked throw.
    let time = |y: f64| (-vy - (vy * vy - 2.0 * ay * (50.0 - y / FOOT)).sqrt()) / ay;
    [
        1e3 * (ball.course.flight_s - (time(PLATE_FRONT_Y) - time(release.y))),
        ball.course.movement.up_in - up_gravity,
        ball.course.movement.glove_side_in - glove_gravity,
        ball.arrival.across.acceleration_in_s2 - 12.0 * ax,
        ball.arrival.height.acceleration_in_s2 - 12.0 * az,
    ]
}

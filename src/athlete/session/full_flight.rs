//! From what a unit measured part of the way to what the throw did over the whole flight.
//!
//! Some units give speed at a fixed distance, or movement over the last feet only. A steady side
//! force bends a path by the square of the time it acts, and drag stretches that time; so the
//! factor from part to whole is read off the flight model, once per speed, and interpolated. It
//! is a property of distance and speed alone: nothing here knows the pitch.

use crate::ball::flight::{Air, Forces, State, integrate};
use crate::base::geometry::{PLATE_FRONT_Y, RUBBER_Y, Vec3};
use crate::base::units::{FOOT, MPH};

/// Where along the flight a unit measured, in feet from the rear point of the plate.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Measured {
    /// Speed was taken here; at release when not given.
    pub speed_at_ft: Option<f64>,
    /// Vertical movement counts from here to the plate; the full flight when not given.
    pub vertical_from_ft: Option<f64>,
    /// Sideways movement counts from here to the plate; the full flight when not given.
    pub glove_side_from_ft: Option<f64>,
}

/// Distance in front of the rubber that is assumed for the release (common practice, no published
/// source). A foot more or less changes the movement factor by about 3 %.
const EXTENSION_FT: f64 = 6.0;
/// Release speeds of the table, mph: from the first, in equal steps.
const FIRST_MPH: f64 = 20.0;
const STEP_MPH: f64 = 5.0;
const NODES: usize = 20;
/// Integration steps for each leg; half an ordinary flight's length needs no more.
const LEG_STEPS: usize = 6;

/// Factors from measured to full-flight numbers, tabulated over the measured speed.
#[derive(Debug, Clone, PartialEq)]
pub struct FullFlight {
    nodes: Vec<Node>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Node {
    measured_mph: f64,
    release_mph: f64,
    vertical: f64,
    glove_side: f64,
}

impl FullFlight {
    /// The table for one way of measuring.
    pub fn new(measured: Measured) -> Self {
        let nodes = (0..NODES).map(|i| node(measured, FIRST_MPH + STEP_MPH * i as f64)).collect();
        Self { nodes }
    }

    /// Release speed (mph) and full-flight movement (vertical, glove side) from measured ones.
    pub fn restore(&self, speed_mph: f64, vertical: f64, glove_side: f64) -> (f64, f64, f64) {
        let after = self.nodes.partition_point(|n| n.measured_mph < speed_mph).clamp(1, NODES - 1);
        let (a, b) = (self.nodes[after - 1], self.nodes[after]);
        let t = (speed_mph - a.measured_mph) / (b.measured_mph - a.measured_mph);
        let mix = |x: f64, y: f64| x + (y - x) * t;
        (
            mix(a.release_mph, b.release_mph),
            vertical * mix(a.vertical, b.vertical),
            glove_side * mix(a.glove_side, b.glove_side),
        )
    }
}

fn node(measured: Measured, release_mph: f64) -> Node {
    let whole = side_movement(release_mph, None);
    let factor = |from_ft: Option<f64>| from_ft.map_or(1.0, |_| whole / side_movement(release_mph, from_ft));
    Node {
        measured_mph: measured.speed_at_ft.map_or(release_mph, |ft| forward_mph(leg(release_mph, ft * FOOT))),
        release_mph,
        vertical: factor(measured.vertical_from_ft),
        glove_side: factor(measured.glove_side_from_ft),
    }
}

/// The speed toward the plate. A slow ball's fall would make the whole of it grow along the way, and then no single
/// release speed would belong to what was measured.
fn forward_mph(state: State) -> f64 {
    -state.velocity.y / MPH
}

fn release_y() -> f64 {
    RUBBER_Y - EXTENSION_FT * FOOT
}

/// A level throw with drag only, from release to the plane at `y`.
fn leg(release_mph: f64, y: f64) -> State {
    let start = State {
        time: 0.0,
        position: Vec3::new(0.0, release_y(), 0.0),
        velocity: Vec3::new(0.0, -release_mph * MPH, 0.0),
    };
    fly(start, y.min(release_y()), 0.0)
}

/// Sideways movement (m) at the plate of a unit side force that begins to act at `from_ft`.
fn side_movement(release_mph: f64, from_ft: Option<f64>) -> f64 {
    let start = leg(release_mph, from_ft.map_or(release_y(), |ft| ft * FOOT));
    fly(start, PLATE_FRONT_Y, 0.1).position.x - fly(start, PLATE_FRONT_Y, 0.0).position.x
}

fn fly(start: State, end_y: f64, side: f64) -> State {
    let forces = Forces::sideways(Air::SEA_LEVEL, [side, 0.0]);
    let mut last = start;
    integrate(start, end_y, LEG_STEPS, |velocity| forces.acceleration(velocity), |_, state| last = state);
    last
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_of_the_full_flight_stay_as_they_are() {
        let (speed, up, side) = FullFlight::new(Measured::default()).restore(91.3, 15.0, -7.0);
        assert!((speed - 91.3).abs() < 1e-9 && (up - 15.0).abs() < 1e-9 && (side + 7.0).abs() < 1e-9);
    }

    /// The square of the times is the rule for a steady acceleration; a push that falls with the
    /// square of the speed acts more strongly early, which adds two or three per cent.
    #[test]
    fn movement_over_the_last_forty_feet_grows_by_the_square_of_the_times() {
        let measured = Measured { vertical_from_ft: Some(40.0), ..Measured::default() };
        let (_, up, _) = FullFlight::new(measured).restore(90.0, 10.0, 0.0);
        let end = leg(90.0, PLATE_FRONT_Y).time;
        let late = end - leg(90.0, 40.0 * FOOT).time;
        let over_rule = up / 10.0 / (end / late).powi(2);
        assert!((1.0..1.04).contains(&over_rule), "{over_rule}");
        assert!((1.6..2.1).contains(&(up / 10.0)), "{up}");
    }

    #[test]
    fn a_ball_only_loses_speed_wherever_and_however_slow_it_is_measured() {
        for speed_at_ft in [5.0, 20.0, 40.0, 54.0] {
            let restoring = FullFlight::new(Measured { speed_at_ft: Some(speed_at_ft), ..Measured::default() });
            let mut before = 0.0;
            for mph in [25.0, 30.0, 40.0, 60.0, 90.0, 110.0] {
                let (release_mph, _, _) = restoring.restore(mph, 0.0, 0.0);
                assert!(release_mph > mph && release_mph > before, "{mph} mph at {speed_at_ft} ft: {release_mph}");
                before = release_mph;
            }
        }
    }

    #[test]
    fn speed_at_fifty_feet_is_a_little_less_than_at_release() {
        let measured = Measured { speed_at_ft: Some(50.0), ..Measured::default() };
        let (speed, _, _) = FullFlight::new(measured).restore(90.0, 0.0, 0.0);
        assert!((0.5..1.5).contains(&(speed - 90.0)), "{speed}");
    }
}

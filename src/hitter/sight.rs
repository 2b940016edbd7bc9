//! What the hitter sees and expects of a pitch when he takes it for a certain one, wherever it is aimed.
//!
//! He sees the ball until he must decide, [`Parameters::commit_s`] before he expects it at the plate. The arrival he
//! expects is part seen and part believed, and before two strikes leans to the fastest pitch. From there he carries
//! the ball forward with the movement he expects: part the pitch's own, part an anchor that all pitches share.

use crate::base::geometry::Side;
use crate::base::units::MILLISECOND;

use super::axis::{Axis, Setting};
use super::{Belief, CountGroup, Course, Hitter, Parameters};

/// Shortest time of viewing, s: nobody decides on less.
const LEAST_VIEW_S: f64 = 0.08;
/// Time of viewing (s) and approach (in/s) at which the errors of the eyes are stated.
const REFERENCE_VIEW_S: f64 = 0.23;
const REFERENCE_APPROACH_IN_S: f64 = 121.0 * 12.0;
/// Gravity as it stood in the fit, 32.174 ft/s², in in/s².
pub(super) const GRAVITY_IN_S2: f64 = 32.174 * 12.0;
/// Swings fall with lateness in units of this (s), and no further than so many of them.
const RESTRAINT_UNIT_S: f64 = 0.05;
const RESTRAINT_MOST: f64 = 2.0;

/// A pitch met under a belief, before its place is known.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sight {
    /// Logarithm of the weight of the belief, without share and place.
    pub log_weight: f64,
    /// Most swings there are.
    pub ceiling: f64,
    /// How much later than expected the ball arrives, s.
    pub late_s: f64,
    /// Inches that an acceleration of 1 in/s² moves the ball unseen, s².
    pub unseen_s2: f64,
    /// Factor on the errors of the eyes.
    pub coarse: f64,
    /// The height.
    pub height: Axis,
    /// The place across.
    pub across: Axis,
}

impl Sight {
    #[inline]
    pub(super) fn of(
        hitter: &Hitter,
        course: &Course,
        belief: &Belief,
        fastest_s: f64,
        side: Side,
        group: CountGroup,
    ) -> Self {
        let p = &hitter.parameters;
        let later_s = belief.flight_s - fastest_s;
        let sits = if group == CountGroup::TwoStrikes { 0.0 } else { 1.0 };
        let believed_s = belief.flight_s - sits * p.fastball_sit * later_s;
        let arrival_s = course.flight_s + p.arrival_believed * (believed_s - course.flight_s);
        let view_s = (arrival_s - p.commit_s).max(LEAST_VIEW_S);
        let ahead_s = arrival_s - view_s;
        let unseen_s2 = ahead_s * (0.5 * ahead_s + p.lag_s);
        let late_s = course.flight_s - arrival_s;
        let coarse = coarseness(hitter, course, view_s, side);
        let lean = p.fastball_lean * (later_s / p.fastball_lean_full_s).min(1.0);
        let restraint = p.slow_restraint * (later_s / RESTRAINT_UNIT_S).min(RESTRAINT_MOST);
        let (ceiling, zone) = eagerness(p, group);
        let (glove_side_in_s2, up_in_s2) = expected_acceleration(p, belief);
        let axis = |expected_in_s2: f64, eyes: f64, half: f64, favourite: f64| {
            Axis::of(&Setting {
                late_s,
                unseen_s2,
                expected_in_s2,
                eyes: eyes * coarse,
                arrival_s: hitter.eyes * p.eyes_arrival_ms * MILLISECOND,
                hittable_sd: p.hittable_sd_in,
                half: half * zone,
                edge: p.zone_edge_in,
                favourite,
            })
        };
        let half_height = hitter.zone.half_in * p.zone_height_factor;
        let middle = hitter.zone.middle_in + p.zone_up_in;
        let away = p.zone_away_in * side.away_sign();
        Self {
            log_weight: log_likeness(p, course, belief, view_s) / (coarse * coarse) - sits * lean,
            ceiling: ceiling * (-sits * restraint).exp(),
            late_s,
            unseen_s2,
            coarse,
            height: axis(up_in_s2, p.eyes_height_in, half_height, middle),
            across: axis(glove_side_in_s2, p.eyes_side_in, p.zone_half_width_in, away),
        }
    }
}

/// Errors of the eyes grow with speed and against a pitcher of the hitter's own side, and fall with the square root of the
/// time to look, as those of a mean of independent looks do.
#[inline]
fn coarseness(hitter: &Hitter, course: &Course, view_s: f64, side: Side) -> f64 {
    let p = &hitter.parameters;
    let same_side = if side == Side::Same { p.same_side_eyes } else { 1.0 };
    let speed = course.approach_in_s / REFERENCE_APPROACH_IN_S;
    hitter.eyes * same_side * speed * (REFERENCE_VIEW_S / view_s).sqrt()
}

/// Logarithm of how like the ball looks to the believed pitch when he must decide: speed (by Weber's law, so in
/// logarithms), movement so far (it grows with the square of time), and release, each with a normal error.
#[inline]
fn log_likeness(p: &Parameters, course: &Course, belief: &Belief, view_s: f64) -> f64 {
    let speed = (course.speed_mph / belief.speed_mph).ln() / p.speed_sd;
    let so_far = (view_s / course.flight_s).powi(2) / p.movement_sd_in;
    let up = (course.movement.up_in - belief.movement.up_in) * so_far;
    let glove_side = (course.movement.glove_side_in - belief.movement.glove_side_in) * so_far;
    let height = (course.hand.height_in - belief.hand.height_in) / p.release_sd_in;
    let arm_side = (course.hand.arm_side_in - belief.hand.arm_side_in) / p.release_sd_in;
    -0.5 * (speed * speed + up * up + glove_side * glove_side + height * height + arm_side * arm_side)
}

/// The constant acceleration he expects of a pitch (glove side, up), in/s²: what gives the movement he expects over
/// the flight he knows.
#[inline]
fn expected_acceleration(p: &Parameters, belief: &Belief) -> (f64, f64) {
    let per_inch = 2.0 / (belief.flight_s * belief.flight_s);
    let expected = |own: f64, anchor: f64| own + p.anchor_share * (anchor - own);
    let glove_side = expected(belief.movement.glove_side_in, p.anchor_glove_side_in);
    let up = expected(belief.movement.up_in, p.anchor_up_in);
    (glove_side * per_inch, up * per_inch - GRAVITY_IN_S2)
}

/// Most swings at a perfect place, and the factor on the extent of the places worth a swing.
#[inline]
fn eagerness(p: &Parameters, group: CountGroup) -> (f64, f64) {
    match group {
        CountGroup::Other => (p.ceiling_other, 1.0),
        CountGroup::First => (p.ceiling_first, p.first_pitch_zone),
        CountGroup::HitterAhead => (p.ceiling_ahead, p.ahead_zone),
        CountGroup::ThreeNothing => (p.ceiling_three_nothing, 1.0),
        CountGroup::TwoStrikes => (p.ceiling_two_strikes, p.two_strike_zone),
    }
}

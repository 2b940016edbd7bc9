//! What the hitter hits: the errors left at contact in height, along the bat and in time, and how well that meets the
//! ball.
//!
//! After the decision the aim is repaired but for a share of its error. Errors of the hands, normal, come on top; they
//! grow away from where he is at ease and with late movement unlike the usual. Contact: all three errors within the
//! reach of the bat. Solid: each error weighed by a bell of given width, and the place by how hard a ball there can
//! be hit. What depends on one axis only is worked out for that axis alone, so that places on a lattice share it.

use crate::base::geometry::Side;
use crate::base::stats::NormalTable;
use crate::base::units::MILLISECOND;

use super::axis::Seen;
use super::sight::{GRAVITY_IN_S2, Sight};
use super::{Along, CountGroup, Course, Hitter};

/// Error in height (in) over which the repair of the aim goes from that above to that below.
const REPAIR_SOFTNESS_IN: f64 = 3.0;
/// Solid contact is at most this share of contact.
const SOLID_OF_CONTACT: f64 = 0.95;

/// A pitch at the bat under a belief, before its place is known.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bat {
    /// Variance of the hands in height and along the bat where he is at ease, in².
    height_variance: f64,
    side_variance: f64,
    /// Hands' error from an acceleration of 1 in/s² unlike the usual, s².
    odd_s2: f64,
    /// The usual acceleration up and to the glove side, in/s².
    usual_up_in_s2: f64,
    usual_glove_side_in_s2: f64,
    /// Standard deviation of the timing, ms.
    timing_ms: f64,
    /// The ball later than expected, ms.
    late_ms: f64,
    /// Slope of the bat's path.
    attack: f64,
    /// Approach of the ball, in/s.
    approach_in_s: f64,
    /// The direction away from him.
    away: f64,
    /// Middle of his zone, in.
    zone_middle_in: f64,
}

/// A normal error (mean, variance) and what the place adds to it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Miss {
    error: f64,
    variance: f64,
    /// Variance of both errors, in height and along the bat, from late movement unlike the usual, in².
    odd: f64,
    /// Squared distance from where he is at ease, in units of it.
    unease: f64,
    /// Logarithm of how hard a ball at such a place can be hit.
    power: f64,
}

/// What the error in time leaves of contact and of solid contact: it depends on the place across only.
#[derive(Debug, Clone, Copy)]
pub(super) struct Timing {
    contact: f64,
    solid: f64,
    /// Logarithm of a further factor of solid contact.
    solid_log: f64,
}

impl Bat {
    #[inline]
    pub(super) fn of(hitter: &Hitter, course: &Course, sight: &Sight, side: Side, group: CountGroup) -> Self {
        let p = &hitter.parameters;
        let (hands, timing) = match group {
            CountGroup::TwoStrikes => (p.two_strike_hands, p.two_strike_hands),
            CountGroup::First => (p.first_pitch_hands, 1.0),
            _ => (1.0, 1.0),
        };
        let hands = (hands * hitter.hands).powi(2);
        let per_inch = 2.0 / (course.flight_s * course.flight_s);
        Self {
            height_variance: p.hands_height_in.powi(2) * hands,
            side_variance: p.hands_side_in.powi(2) * hands,
            odd_s2: p.odd_movement * sight.unseen_s2,
            usual_up_in_s2: p.usual_up_in * per_inch - GRAVITY_IN_S2,
            usual_glove_side_in_s2: p.usual_glove_side_in * per_inch,
            timing_ms: p.timing_ms * sight.coarse * timing,
            late_ms: sight.late_s / MILLISECOND,
            attack: p.attack_slope,
            approach_in_s: course.approach_in_s,
            away: side.away_sign(),
            zone_middle_in: hitter.zone.middle_in,
        }
    }

    /// The error in height of a ball that ends so in height.
    #[inline]
    pub(super) fn height(&self, hitter: &Hitter, seen: &Seen, ball: Along) -> Miss {
        let p = &hitter.parameters;
        let repair = -p.low_aim_repair * tanh(seen.error / REPAIR_SOFTNESS_IN);
        // Bat and ball do not travel on one line, so that an error in time is one in height.
        let crossing = self.attack + ball.velocity_in_s / self.approach_in_s;
        let from_timing = self.timing_ms * MILLISECOND * self.approach_in_s * crossing;
        let above = ball.place_in - self.zone_middle_in;
        Miss {
            error: p.aim_error_height * seen.error * repair.exp(),
            variance: from_timing * from_timing + seen.variance * p.aim_error_height.powi(2),
            odd: (self.odd_s2 * (ball.acceleration_in_s2 - self.usual_up_in_s2)).powi(2),
            unease: (above / p.comfort_height_in).powi(2),
            power: -0.5 * ((above - p.power_up_in) / p.power_height_in).powi(2),
        }
    }

    /// The error along the bat of a ball that ends so across, and the error in time that comes with it.
    #[inline]
    pub(super) fn across(&self, hitter: &Hitter, seen: &Seen, ball: Along) -> (Miss, Timing) {
        let p = &hitter.parameters;
        let error = p.aim_error_side * seen.error * self.away;
        let from_eyes = seen.variance * p.aim_error_side.powi(2);
        let late = self.late_ms + p.turn_ms_per_in * error;
        let variance = self.timing_ms * self.timing_ms + p.turn_ms_per_in * p.turn_ms_per_in * from_eyes;
        let miss = Miss {
            error,
            variance: from_eyes,
            odd: (self.odd_s2 * (ball.acceleration_in_s2 - self.usual_glove_side_in_s2)).powi(2),
            unease: ((ball.place_in * self.away - p.comfort_away_in) / p.comfort_side_in).powi(2),
            power: -0.5 * (ball.place_in / p.power_side_in).powi(2),
        };
        let total = p.solid_timing_ms * p.solid_timing_ms + variance;
        let timing = Timing {
            contact: within(-p.contact_timing_ms, p.contact_timing_ms, late, 1.0 / variance.sqrt()),
            solid: p.solid_timing_ms / total.sqrt(),
            solid_log: -0.5 * late * late / total,
        };
        (miss, timing)
    }

    /// Chances of contact and of solid contact given a swing.
    #[inline]
    pub(super) fn meet(&self, hitter: &Hitter, height: &Miss, across: &Miss, timing: &Timing) -> (f64, f64) {
        let p = &hitter.parameters;
        let unease = 1.0 + height.unease + across.unease;
        let odd = height.odd + across.odd;
        let up_variance = self.height_variance * unease + odd + height.variance;
        let side_variance = self.side_variance * unease + odd + across.variance;
        let up = within(-p.contact_height_in, p.contact_height_in, height.error, 1.0 / up_variance.sqrt());
        let along = within(-p.contact_handle_in, p.contact_end_in, across.error, 1.0 / side_variance.sqrt());
        let contact = p.contact_ceiling * up * along * timing.contact;
        let (up_total, side_total) = (p.solid_height_in.powi(2) + up_variance, p.solid_side_in.powi(2) + side_variance);
        let bells = height.error * height.error / up_total + across.error * across.error / side_total;
        let widths = p.solid_height_in * p.solid_side_in / (up_total * side_total).sqrt();
        let log = height.power + across.power + timing.solid_log - 0.5 * bells;
        let solid = p.solid_ceiling * timing.solid * widths * log.exp();
        (contact, solid.min(SOLID_OF_CONTACT * contact))
    }
}

/// Hyperbolic tangent, right to 1e-15: three times as fast as the library's, which is right near nought to the last digit.
#[inline]
fn tanh(x: f64) -> f64 {
    1.0 - 2.0 / ((2.0 * x).exp() + 1.0)
}

/// Chance that a normal error with this mean and precision lies between two ends.
#[inline]
fn within(low: f64, high: f64, mean: f64, per_sd: f64) -> f64 {
    NormalTable::shared().mass_and_slope(low, high, mean, per_sd).0
}

//! Swing or take, and what becomes of a swing.

use crate::ball::spin::BALL_RADIUS;
use crate::base::geometry::PLATE_HALF_WIDTH;
use crate::base::stats::NormalTable;
use crate::base::units::{INCH, MILLISECOND};

/// The strike zone for the ball's centre, m. Any part of the ball counts (Official Baseball Rules,
/// definition of a strike), so every edge lies a ball's radius outside the rule's own line; bottom
/// and top are those of a hitter of middling height (hollow of the knee about 18.5 in, midpoint of
/// the trunk about 41 in; common practice, no published source).
pub const ZONE: Zone = Zone {
    half_width: PLATE_HALF_WIDTH + BALL_RADIUS,
    bottom: 18.5 * INCH - BALL_RADIUS,
    top: 41.0 * INCH + BALL_RADIUS,
};

/// A strike zone for the centre of the ball.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zone {
    /// Half the width.
    pub half_width: f64,
    /// Lower edge.
    pub bottom: f64,
    /// Upper edge.
    pub top: f64,
}

impl Zone {
    /// Chance that a ball with independent normal place errors is in the zone; `per_sd` is one over
    /// the standard deviation of each place, 1/m.
    pub fn chance(&self, [x, z]: [f64; 2], per_sd: [f64; 2]) -> f64 {
        let table = NormalTable::shared();
        table.mass_and_slope(-self.half_width, self.half_width, x, per_sd[0]).0
            * table.mass_and_slope(self.bottom, self.top, z, per_sd[1]).0
    }
}

/// When he swings: a logistic in the predicted chance of a strike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SwingChoice {
    /// Steepness.
    pub slope: f64,
    /// Chance of a strike at which he swings half as often as he ever does.
    pub midpoint: f64,
    /// The most he ever swings.
    pub ceiling: f64,
}

impl SwingChoice {
    /// Start values after a first look at the teaching data (DEVELOPERS.md tells how).
    pub const START: Self = Self { slope: 6.0, midpoint: 0.32, ceiling: 0.76 };

    /// Chance of a swing and its derivative in the predicted chance of a strike.
    #[inline]
    pub fn chance_and_slope(&self, strike: f64) -> (f64, f64) {
        let logistic = 1.0 / (1.0 + (-self.slope * (strike - self.midpoint)).exp());
        (self.ceiling * logistic, self.ceiling * self.slope * logistic * (1.0 - logistic))
    }
}

/// The bat and the hands that swing it. Lengths in m, times in s.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bat {
    /// Hands' own error in height.
    pub height_sd: f64,
    /// Hands' own error along the bat.
    pub along_sd: f64,
    /// Hands' own error in time: about 7 ms (Brenner et al., Front. Hum. Neurosci. 8 (2014) 342).
    pub timing_sd: f64,
    /// Distance from the middle of the zone at which the hands' errors in height and along the bat
    /// have doubled: a swing is grooved for the middle. See `Bat::hands_at`.
    pub comfort: f64,
    /// How much later a ball one metre farther away wants to be met.
    pub turn: f64,
    /// Misses beyond this height: ball radius + barrel radius of 1.305 in (Official Baseball Rules 3.02).
    pub reach_height: f64,
    /// Misses beyond this distance outside the sweet region (the bat's end).
    pub reach_end: f64,
    /// Misses beyond this distance inside it (the hands).
    pub reach_hands: f64,
    /// Misses beyond this arrival error.
    pub reach_timing: f64,
    /// Solid within this height.
    pub solid_height: f64,
    /// Solid within this distance along the bat.
    pub solid_along: f64,
    /// Solid within this arrival error: the window of a fair ball is about 9 ms (Summers, Natural
    /// History).
    pub solid_timing: f64,
}

/// Angular speed of the barrel at contact, rad/s (start value).
const BARREL_TURN: f64 = 41.0;
/// Distance of the barrel from the axis it turns about, m (start value).
const BARREL_ARM: f64 = 0.9;
/// Speed of an ordinary pitch at the plate, m/s.
const PLATE_SPEED: f64 = 38.0;

/// Seconds per metre that a ball farther away from the hitter wants to be met later.
///
/// A bat of arm R turned by θ past square meets a ball at distance d = R cos θ from the axis, a
/// distance R sin θ in front of it. A ball nearer by one metre needs the bat turned further by
/// 1 / (R sin θ), which takes 1 / (R ω sin θ) longer, and is met cot θ farther in front, where it is
/// cot θ / v sooner. Both ask for an earlier swing; at θ = 45 degrees the sum is 1.6 ms per inch.
const BAT_TURN: f64 = std::f64::consts::SQRT_2 / (BARREL_ARM * BARREL_TURN) + 1.0 / PLATE_SPEED;

impl Bat {
    /// Start values after a first look at the teaching data (DEVELOPERS.md tells how).
    pub const START: Self = Self {
        height_sd: 0.5 * INCH,
        along_sd: 1.4 * INCH,
        timing_sd: 6.5 * MILLISECOND,
        comfort: 9.0 * INCH,
        turn: BAT_TURN,
        reach_height: BALL_RADIUS + 1.305 * INCH,
        reach_end: 8.0 * INCH,
        reach_hands: 20.0 * INCH,
        reach_timing: 30.0 * MILLISECOND,
        solid_height: 0.9 * INCH,
        solid_along: 3.0 * INCH,
        solid_timing: 9.0 * MILLISECOND,
    };
}

/// Chances that a swing touches the ball and that it hits it well, with their derivatives in the
/// mean errors (height, away, arrival).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Contact {
    pub(super) any: f64,
    pub(super) solid: f64,
    pub(super) any_slope: [f64; 3],
    pub(super) solid_slope: [f64; 3],
}

/// Precision of the three contact errors of one pitch once seen, hands included: one over each
/// standard deviation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Precision {
    pub(super) height: f64,
    pub(super) away: f64,
    pub(super) arrival: f64,
}

impl Bat {
    /// Factor on the hands' place errors for a ball at (x, z): 1 + (d / comfort)², d its distance from
    /// the middle of the zone. That balls over the middle are hit best is common practice, no
    /// published source; the form and its start value are this project's. Without it every target
    /// would be the middle of the plate.
    pub(super) fn hands_at(&self, x: f64, z: f64) -> f64 {
        let off = x.hypot(z - f64::midpoint(ZONE.bottom, ZONE.top)) / self.comfort;
        1.0 + off * off
    }

    /// Contact chances for mean errors `height` (ball above the bat), `away` (ball nearer the bat's
    /// end) and `arrival` (ball later than the bat, the bat's turn included).
    #[expect(clippy::inline_always, reason = "callers that need no slopes must not pay for them")]
    #[inline(always)]
    pub(super) fn contact(&self, height: f64, away: f64, arrival: f64, precision: &Precision) -> Contact {
        let table = NormalTable::shared();
        let mass = |low, high, mean, per_sd| table.mass_and_slope(low, high, mean, per_sd);
        let product = |z: (f64, f64), x: (f64, f64), t: (f64, f64)| {
            (z.0 * x.0 * t.0, [z.1 * x.0 * t.0, z.0 * x.1 * t.0, z.0 * x.0 * t.1])
        };
        let (any, any_slope) = product(
            mass(-self.reach_height, self.reach_height, height, precision.height),
            mass(-self.reach_hands, self.reach_end, away, precision.away),
            mass(-self.reach_timing, self.reach_timing, arrival, precision.arrival),
        );
        let (solid, solid_slope) = product(
            mass(-self.solid_height, self.solid_height, height, precision.height),
            mass(-self.solid_along, self.solid_along, away, precision.away),
            mass(-self.solid_timing, self.solid_timing, arrival, precision.arrival),
        );
        Contact { any, solid, any_slope, solid_slope }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_clean_miss_is_at_the_rules_dimensions() {
        assert!((Bat::START.reach_height / INCH - 2.757).abs() < 0.01, "2.76 in by rule");
        assert!((1.5..2.0).contains(&(BAT_TURN * INCH / MILLISECOND)), "ms per inch");
        assert!((ZONE.half_width / INCH - 9.95).abs() < 0.01, "9.95 in by rule");
    }
}

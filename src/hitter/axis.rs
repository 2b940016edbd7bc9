//! One axis of the place at the plate, height or across: where the hitter believes the ball will be and whether
//! such a place is worth a swing.
//!
//! He sees the place with a normal error, the greater the faster the ball falls or crosses, and believes it nearer to where he likes pitches than he saw it (the mean of a
//! normal posterior with the prior [`Setting::hittable_sd`] about his favourite place). He swings where the believed place lies
//! in a window with soft edges; averaged over his errors the chance is the difference of two normal distribution
//! functions, and the mean and variance of his error given that he swung are exact (derivatives of its logarithm,
//! the identity of Tweedie: Robbins 1956, Efron 2011, J. Am. Stat. Assoc. 106, 1602).

use crate::base::stats::NormalTable;

use super::Along;

/// Least chance of a window, so that far outside nothing is divided by zero.
const LEAST_CHANCE: f64 = 1e-12;
/// The variance left given a swing is at least this share of what it was: far outside rounding would break it.
const LEAST_VARIANCE: f64 = 0.05;

/// What one axis is like for all balls of a pitch met under a belief.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axis {
    /// How much later than expected the ball arrives, s.
    late_s: f64,
    /// How far an acceleration of 1 in/s² takes the place at the plate off the place where he expects it, s².
    curve_s2: f64,
    /// The movement he expects unseen, less his favourite place, in.
    offset: f64,
    /// Variance of the seen place of a ball that does not move along this axis, in².
    eyes_variance: f64,
    /// Error of the seen arrival, s.
    arrival_s: f64,
    /// Variance of the places worth a bet, in².
    hittable_variance: f64,
    /// Half the extent of the window, in.
    half: f64,
    /// Variance of its soft edges, in².
    edge_variance: f64,
    /// His favourite place, in.
    favourite: f64,
}

/// Numbers that make an axis.
pub(super) struct Setting {
    /// How much later than expected the ball arrives, s.
    pub late_s: f64,
    /// How far an acceleration of 1 in/s² moves the ball unseen, s².
    pub unseen_s2: f64,
    /// The acceleration he expects, in/s².
    pub expected_in_s2: f64,
    /// Standard deviation of the seen place of a ball that does not move along this axis, in.
    pub eyes: f64,
    /// Standard deviation of the seen arrival, s.
    pub arrival_s: f64,
    /// Spread of the places worth a bet, in.
    pub hittable_sd: f64,
    /// Half the extent of the window, in.
    pub half: f64,
    /// Softness of the window's edge, in.
    pub edge: f64,
    /// His favourite place, in.
    pub favourite: f64,
}

/// What one axis of one ball comes to.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen {
    /// Logarithm of how likely he thinks such a place worth a bet.
    pub log_weight: f64,
    /// Chance that the believed place lies in the window.
    pub chance: f64,
    /// The ball beyond where he believes it, given that he swings, in.
    pub error: f64,
    /// Variance of that error, in².
    pub variance: f64,
}

impl Axis {
    #[inline]
    pub(super) fn of(setting: &Setting) -> Self {
        let Setting { late_s, unseen_s2, expected_in_s2, eyes, arrival_s, hittable_sd, half, edge, favourite } =
            *setting;
        Self {
            late_s,
            curve_s2: 0.5 * late_s * late_s - unseen_s2,
            offset: unseen_s2 * expected_in_s2 - favourite,
            eyes_variance: eyes * eyes,
            arrival_s,
            hittable_variance: hittable_sd * hittable_sd,
            half,
            edge_variance: edge * edge,
            favourite,
        }
    }

    /// For a ball that ends so along this axis.
    #[inline]
    pub(super) fn see(&self, ball: Along) -> Seen {
        let Along { place_in, velocity_in_s, acceleration_in_s2 } = ball;
        let expected = place_in - velocity_in_s * self.late_s + acceleration_in_s2 * self.curve_s2 + self.offset;
        // Not knowing when it arrives, he knows the less where, the faster it falls or crosses.
        let unsure_in = self.arrival_s * velocity_in_s;
        let eyes_variance = self.eyes_variance + unsure_in * unsure_in;
        let seen_variance = eyes_variance + self.hittable_variance;
        let kept = self.hittable_variance / seen_variance;
        let believed = kept * expected;
        let (chance, mean, variance) = self.window(believed, kept * kept * eyes_variance);
        Seen {
            log_weight: -0.5 * expected * expected / seen_variance,
            chance,
            error: place_in - self.favourite - believed - mean,
            variance,
        }
    }

    /// Chance of a swing at a place `believed` off his favourite one with this variance of `noise`; mean and variance
    /// of the noise given a swing.
    #[inline]
    fn window(&self, believed: f64, noise: f64) -> (f64, f64, f64) {
        let per_edge = (self.edge_variance + noise).sqrt().recip();
        let (upper, lower) = ((self.half - believed) * per_edge, (-self.half - believed) * per_edge);
        let table = NormalTable::shared();
        let ((above, upper_density), (below, lower_density)) =
            (table.cdf_and_density(upper), table.cdf_and_density(lower));
        let chance = (above - below).max(LEAST_CHANCE);
        let scale = per_edge / chance;
        let slope = (lower_density - upper_density) * scale;
        let bend = (lower * lower_density - upper * upper_density) * per_edge * scale - slope * slope;
        (chance, noise * slope, (noise + noise * noise * bend).max(LEAST_VARIANCE * noise))
    }
}

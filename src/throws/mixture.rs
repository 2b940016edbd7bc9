//! A mixture of normal groups over speed and the two breaks, with room for what fits none.
//!
//! Densities are summed in logarithms, so a throw far from everything gets a clear answer instead
//! of an underflow. Fitting beyond a first start and the zero of each day are in
//! [`mod@super::polish`]; how many groups there are is decided in [`super::choice`].

use crate::ball::Shape;
use crate::base::stats::{Cholesky, Matrix};

/// The most groups ever looked for.
pub(super) const MOST_GROUPS: usize = 8;

/// What the sort looks at: speed (mph), vertical break (in), glove-side break (in).
pub(super) type Look = [f64; 3];

/// The three numbers of a shape.
pub(super) fn look_of(shape: Shape) -> Look {
    [shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in]
}

/// Imagined throws, each as spread as a practised pitch, that keep the covariance of a small group
/// from collapsing.
const PRIOR_THROWS: f64 = 6.0;
/// Their spread: the profile's defaults for a practised pitch (common practice, no published source).
const PRIOR_SD: Look = [1.2, 2.2, 2.2];
/// Share of throws expected to fit no group.
const NOISE_SHARE: f64 = 0.01;
/// The region over which such throws are thought evenly spread, mph in in.
const NOISE_VOLUME: f64 = 50.0 * 60.0 * 60.0;

/// One group.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part {
    pub(super) weight: f64,
    pub(super) mean: Look,
    pub(super) covariance: Matrix<3, 3>,
    factor: Cholesky<3>,
}

impl Part {
    pub(super) fn new(weight: f64, mean: Look, covariance: Matrix<3, 3>) -> Self {
        Self { weight, mean, covariance, factor: Cholesky::of(&covariance) }
    }

    /// Squared Mahalanobis distance.
    #[inline]
    pub(super) fn distance_squared(&self, look: &Look) -> f64 {
        let away = self.factor.forward(&std::array::from_fn(|d| look[d] - self.mean[d]));
        away.iter().map(|a| a * a).sum()
    }

    #[inline]
    fn log_density(&self, look: &Look) -> f64 {
        const LOG_NORMAL: f64 = 1.5 * 1.837_877_066_409_345_3; // 3/2 ln 2π
        -0.5 * self.distance_squared(look) - self.factor.half_log_det - LOG_NORMAL
    }
}

/// Chances of each group for one throw; entries beyond the last group are zero.
#[derive(Debug, Clone, Copy)]
pub(super) struct Membership {
    pub(super) chances: [f64; MOST_GROUPS],
    /// Logarithm of the throw's density under the whole mixture.
    pub(super) log_density: f64,
}

impl Membership {
    /// The likeliest group and its chance.
    pub(super) fn best(&self) -> (usize, f64) {
        let best = (0..MOST_GROUPS).fold(0, |best, k| if self.chances[k] > self.chances[best] { k } else { best });
        (best, self.chances[best])
    }
}

/// The groups together.
#[derive(Debug, Clone)]
pub(super) struct Mixture {
    pub(super) parts: Vec<Part>,
}

impl Mixture {
    /// Chances with the possibility of fitting none: they may sum to less than one.
    #[inline]
    pub(super) fn membership(&self, look: &Look) -> Membership {
        self.membership_with(look, (NOISE_SHARE / NOISE_VOLUME).ln())
    }

    /// Chances among the groups alone; they sum to one.
    #[inline]
    pub(super) fn membership_for_sure(&self, look: &Look) -> Membership {
        self.membership_with(look, f64::NEG_INFINITY)
    }

    #[inline]
    fn membership_with(&self, look: &Look, log_none: f64) -> Membership {
        let mut logs = [f64::NEG_INFINITY; MOST_GROUPS];
        for (log, part) in logs.iter_mut().zip(&self.parts) {
            *log = part.weight.ln() + part.log_density(look);
        }
        let highest = logs.iter().copied().fold(log_none, f64::max);
        let chances = logs.map(|log| (log - highest).exp());
        let sum = chances.iter().sum::<f64>() + (log_none - highest).exp();
        Membership { chances: chances.map(|c| c / sum), log_density: highest + sum.ln() }
    }

    /// The same groups, hardest first.
    pub(super) fn hardest_first(mut self) -> Self {
        self.parts.sort_by(|a, b| b.mean[0].total_cmp(&a.mean[0]));
        self
    }
}

/// Sums from which one group is fitted anew.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Moments {
    pub(super) weight: f64,
    first: Look,
    second: Matrix<3, 3>,
}

impl Moments {
    /// Adds a throw, `away` from a fixed point near the group, with its chance of belonging.
    #[inline]
    pub(super) fn add(&mut self, away: &Look, chance: f64) {
        self.weight += chance;
        for row in 0..3 {
            self.first[row] += chance * away[row];
            for column in 0..=row {
                self.second[row][column] += chance * away[row] * away[column];
            }
        }
    }

    /// The group these sums describe, about the point they were taken from.
    pub(super) fn part(&self, about: &Look, total: f64) -> Part {
        let weight = self.weight.max(1e-9);
        let shift = self.first.map(|f| f / weight);
        let covariance = std::array::from_fn(|row: usize| {
            std::array::from_fn(|column: usize| {
                let (low, high) = (row.min(column), row.max(column));
                let prior = if row == column { PRIOR_THROWS * PRIOR_SD[row] * PRIOR_SD[row] } else { 0.0 };
                let scatter = self.second[high][low] - weight * shift[high] * shift[low];
                (scatter + prior) / (weight + PRIOR_THROWS)
            })
        });
        Part::new(weight / total, std::array::from_fn(|d| about[d] + shift[d]), covariance)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn two() -> Mixture {
        let round = [[1.0, 0.0, 0.0], [0.0, 4.0, 0.0], [0.0, 0.0, 4.0]];
        Mixture { parts: vec![Part::new(0.5, [80.0, 0.0, 0.0], round), Part::new(0.5, [92.0, 16.0, -6.0], round)] }
    }

    #[test]
    fn a_throw_halfway_belongs_to_both_and_one_far_away_to_none() {
        let mixture = two();
        let half = mixture.membership([86.0, 8.0, -3.0].as_ref().try_into().expect("three numbers"));
        assert!((half.chances[0] - half.chances[1]).abs() < 1e-9);
        let far = mixture.membership(&[60.0, 40.0, 40.0]);
        assert!(far.chances.iter().sum::<f64>() < 1e-6, "{far:?}");
        let sure = mixture.membership_for_sure(&[-1e6, 1e6, 1e6]);
        assert!((sure.chances.iter().sum::<f64>() - 1.0).abs() < 1e-9, "log-sum-exp never underflows");
    }

    #[test]
    fn moments_give_back_mean_and_weight() {
        let mut moments = Moments::default();
        for step in -50..=50 {
            moments.add(&[f64::from(step) / 50.0, 0.0, 1.0], 1.0);
        }
        let part = moments.part(&[90.0, 10.0, 0.0], 202.0);
        assert!((part.mean[0] - 90.0).abs() < 1e-12 && (part.mean[2] - 1.0).abs() < 1e-12);
        assert!((part.weight - 0.5).abs() < 1e-12);
    }
}

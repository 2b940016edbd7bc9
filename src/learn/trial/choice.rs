//! Which grip is best, which to throw next, and how many more throws until that is firm.
//!
//! In every draw of the posterior the best grip is the one most likely to land in the window; the
//! share of draws a grip wins is its chance to be the best. Next comes the less certain of the two
//! likeliest grips (top-two allocation: D. Russo, "Simple Bayesian algorithms for best-arm
//! identification", 2016, from memory), which saves the throws that a clear loser would get.

use crate::base::stats::Estimate;
use crate::learn::target::Target;

use super::model::{AXES, GripDraw};

/// Chance of being the best at which a trial is over.
pub const SURE: f64 = 0.9;
/// More throws than this are not counted: the grips are then as good as equal.
pub const MOST_MORE: f64 = 150.0;

/// Every draw's quality of every grip.
pub(super) struct Qualities {
    /// By grip, then by draw.
    by_grip: Vec<Vec<f64>>,
    draws: usize,
}

impl Qualities {
    pub(super) fn of(draws: &[Vec<GripDraw>], target: &Target) -> Self {
        let grips = draws.first().map_or(0, Vec::len);
        let by_grip = (0..grips).map(|grip| draws.iter().map(|draw| quality(&draw[grip], target)).collect()).collect();
        Self { by_grip, draws: draws.len() }
    }

    /// Chance that each grip is the best.
    pub(super) fn chance_best(&self) -> Vec<f64> {
        let mut wins = vec![0_u32; self.by_grip.len()];
        for best in (0..self.draws).filter_map(|draw| self.best_in(draw)) {
            wins[best] += 1;
        }
        wins.into_iter().map(|wins| f64::from(wins) / self.draws as f64).collect()
    }

    /// Chance that the next throw with `grip` lands in the window.
    pub(super) fn chance_next(&self, grip: usize) -> Estimate {
        let draws = &self.by_grip[grip];
        Estimate::from_draws(draws.iter().sum::<f64>() / draws.len().max(1) as f64, draws)
            .map(|chance| chance.clamp(0.0, 1.0))
    }

    fn best_in(&self, draw: usize) -> Option<usize> {
        (0..self.by_grip.len()).max_by(|&a, &b| self.by_grip[a][draw].total_cmp(&self.by_grip[b][draw]))
    }

    /// The grip to throw next: of the two likeliest to be best, the one known less well.
    pub(super) fn next(&self, chance_best: &[f64], throws: &[u32]) -> Option<usize> {
        let mut order: Vec<usize> = (0..chance_best.len()).collect();
        order.sort_by(|&a, &b| chance_best[b].total_cmp(&chance_best[a]).then(throws[a].cmp(&throws[b])));
        let doubt = |grip: usize| self.variance(grip);
        order.into_iter().take(2).max_by(|&a, &b| doubt(a).total_cmp(&doubt(b)))
    }

    fn variance(&self, grip: usize) -> f64 {
        crate::base::stats::Sample::of(self.by_grip[grip].iter().copied()).sd().map_or(0.0, |sd| sd * sd)
    }

    /// Throws still needed until the best grip is [`SURE`] to be the best.
    ///
    /// In one draw of the truth the best grip b and a rival j differ by d. A chance estimated
    /// from n throws has variance V/n, where V (and V' for the rival) is today's variance times today's throws. The two
    /// are told apart when d is z standard deviations, z the normal quantile of [`SURE`]: at
    /// n = (V + V') (z/d)^2 throws each. Summed over rivals, over the throws already made, and
    /// taken over all draws; capped at [`MOST_MORE`].
    pub(super) fn more_throws(&self, throws: &[u32]) -> Estimate {
        let z = crate::base::stats::normal_quantile(SURE);
        let unit: Vec<f64> =
            throws.iter().enumerate().map(|(grip, &n)| self.variance(grip) * f64::from(n.max(1))).collect();
        let mut needed: Vec<f64> = (0..self.draws).map(|draw| self.more_in(draw, throws, &unit, z)).collect();
        needed.sort_by(f64::total_cmp);
        let median = needed.get(needed.len() / 2).copied().unwrap_or(0.0);
        Estimate::from_draws(median, &needed)
    }

    fn more_in(&self, draw: usize, throws: &[u32], unit: &[f64], z: f64) -> f64 {
        let Some(best) = self.best_in(draw) else { return 0.0 };
        let (mut rivals, mut own) = (0.0, 0.0_f64);
        for rival in (0..throws.len()).filter(|&grip| grip != best) {
            let apart = (self.by_grip[best][draw] - self.by_grip[rival][draw]).max(1e-3);
            let each = (unit[best] + unit[rival]) * (z / apart).powi(2);
            rivals += (each - f64::from(throws[rival])).max(0.0);
            own = own.max(each - f64::from(throws[best]));
        }
        (rivals + own).ceil().clamp(1.0, MOST_MORE)
    }
}

/// Chance of the window; where that is next to nothing, nearness to the target decides.
fn quality(draw: &GripDraw, target: &Target) -> f64 {
    let middle = target.shape.numbers();
    let far: f64 = (0..AXES).map(|axis| ((draw.mean[axis] - middle[axis]) / draw.sd[axis]).powi(2)).sum();
    target.window.chance(draw.mean, draw.sd) - 1e-6 * far.sqrt()
}

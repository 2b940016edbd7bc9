//! What throws with several grips say about each grip's shape: a hierarchical normal model.
//!
//! For each of speed, vertical and glove-side break by itself: a throw is normal about
//! the grip's mean with the grip's spread; the means are normal about a common mean, the
//! spreads scatter about a common spread. So a grip thrown three times borrows from the others
//! what it lacks, and less the more it is thrown. The posterior is drawn by Gibbs sampling (every
//! conditional is normal, gamma or inverse gamma: Gelman et al., Bayesian Data Analysis, chapter
//! 11, from memory), seeded. The three numbers are taken as independent given the grip, which
//! is bad only when speed and break trade off strongly within a grip.

use rand::{Rng, SeedableRng};
use rand_distr::{Distribution, Gamma, StandardNormal};
use rand_xoshiro::Xoshiro256PlusPlus;

use crate::base::stats::Sample;
use crate::learn::target::Target;

/// Speed, vertical break, glove-side break.
pub(super) const AXES: usize = 3;

/// How far grips are expected to differ: mph, in, in. Weighs as two grips. This project's assumption.
const GRIP_SD: [f64; AXES] = [1.5, 4.0, 4.0];
const GRIP_SD_WEIGHT: f64 = 2.0;
/// How far the common mean may lie from the target: mph, in, in. Wide on purpose.
const COMMON_SD: [f64; AXES] = [6.0, 12.0, 12.0];
/// A grip not yet mastered scatters more than the others. Common practice, no published source.
const NEW_SCATTER: f64 = 1.25;
/// How alike the grips' spreads are: the weight, in throws, of the common spread on each.
const SPREAD_WEIGHT: f64 = 8.0;
/// Weight, in grips, of the expected scatter on the common one.
const SCATTER_WEIGHT: f64 = 2.0;
/// Sweeps thrown away before drawing begins; the chain starts at the data and mixes within a few.
const BURN_IN: usize = 100;

/// One grip's throws, boiled down: speed, vertical break, glove-side break.
pub(super) type GripData = [Sample; AXES];

/// A mean and a spread for every axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct GripDraw {
    pub(super) mean: [f64; AXES],
    pub(super) sd: [f64; AXES],
}

/// `count` draws from the posterior; each has one entry for every grip.
pub(super) fn posterior(grips: &[GripData], target: &Target, count: usize, seed: u64) -> Vec<Vec<GripDraw>> {
    let mut chance = Xoshiro256PlusPlus::seed_from_u64(seed);
    let mut axes: Vec<Axis> = (0..AXES).map(|axis| Axis::start(grips, axis, target)).collect();
    let mut draws = Vec::with_capacity(count);
    for sweep in 0..BURN_IN + count {
        for axis in &mut axes {
            axis.sweep(&mut chance);
        }
        if sweep >= BURN_IN {
            draws.push((0..grips.len()).map(|grip| draw_of(&axes, grip)).collect());
        }
    }
    draws
}

fn draw_of(axes: &[Axis], grip: usize) -> GripDraw {
    GripDraw {
        mean: std::array::from_fn(|axis| axes[axis].means[grip]),
        sd: std::array::from_fn(|axis| axes[axis].variances[grip].sqrt()),
    }
}

/// The state of the chain for one axis.
struct Axis {
    data: Vec<Sample>,
    means: Vec<f64>,
    variances: Vec<f64>,
    common_mean: f64,
    common_variance: f64,
    between: f64,
    expected: Expected,
}

/// What is expected before any throw.
#[derive(Clone, Copy)]
struct Expected {
    mean: f64,
    mean_variance: f64,
    scatter_variance: f64,
    between: f64,
}

impl Axis {
    fn start(grips: &[GripData], axis: usize, target: &Target) -> Self {
        let scatter = NEW_SCATTER * target.scatter()[axis];
        let middle = target.shape.numbers()[axis];
        let data: Vec<Sample> = grips.iter().map(|grip| grip[axis]).collect();
        let expected = Expected {
            mean: middle,
            mean_variance: COMMON_SD[axis].powi(2),
            scatter_variance: scatter * scatter,
            between: GRIP_SD[axis].powi(2),
        };
        let means: Vec<f64> = data.iter().map(|seen| if seen.count > 0 { seen.mean } else { middle }).collect();
        Self {
            common_mean: means.iter().sum::<f64>() / means.len().max(1) as f64,
            variances: vec![expected.scatter_variance; data.len()],
            common_variance: expected.scatter_variance,
            between: expected.between,
            data,
            means,
            expected,
        }
    }

    fn sweep(&mut self, chance: &mut impl Rng) {
        for grip in 0..self.data.len() {
            self.means[grip] = self.grip_mean(grip, chance);
            self.variances[grip] = self.grip_variance(grip, chance);
        }
        self.common_mean = self.draw_common_mean(chance);
        self.between = self.draw_between(chance);
        self.common_variance = self.draw_common_variance(chance);
    }

    fn grip_mean(&self, grip: usize, chance: &mut impl Rng) -> f64 {
        let seen = self.data[grip];
        let own = f64::from(seen.count) / self.variances[grip];
        normal(own, seen.mean, 1.0 / self.between, self.common_mean, chance)
    }

    fn grip_variance(&self, grip: usize, chance: &mut impl Rng) -> f64 {
        let seen = self.data[grip];
        let off = seen.mean - self.means[grip];
        let squares = seen.squares + f64::from(seen.count) * off * off;
        let weight = SPREAD_WEIGHT + f64::from(seen.count);
        inverse_gamma(weight, SPREAD_WEIGHT * self.common_variance + squares, chance)
    }

    fn draw_common_mean(&self, chance: &mut impl Rng) -> f64 {
        let count = self.means.len() as f64;
        let mean = self.means.iter().sum::<f64>() / count.max(1.0);
        normal(count / self.between, mean, 1.0 / self.expected.mean_variance, self.expected.mean, chance)
    }

    fn draw_between(&self, chance: &mut impl Rng) -> f64 {
        let squares: f64 = self.means.iter().map(|mean| (mean - self.common_mean).powi(2)).sum();
        let weight = GRIP_SD_WEIGHT + self.means.len() as f64;
        inverse_gamma(weight, GRIP_SD_WEIGHT * self.expected.between + squares, chance)
    }

    fn draw_common_variance(&self, chance: &mut impl Rng) -> f64 {
        let inverse: f64 = self.variances.iter().map(|variance| 1.0 / variance).sum();
        let shape = SCATTER_WEIGHT + SPREAD_WEIGHT / 2.0 * self.variances.len() as f64;
        let rate = SCATTER_WEIGHT / self.expected.scatter_variance + SPREAD_WEIGHT / 2.0 * inverse;
        gamma(shape, chance) / rate
    }
}

/// A normal draw that joins two beliefs, each a precision and a mean.
fn normal(precision: f64, mean: f64, prior_precision: f64, prior_mean: f64, chance: &mut impl Rng) -> f64 {
    let total = precision + prior_precision;
    let deviate: f64 = StandardNormal.sample(chance);
    (precision * mean + prior_precision * prior_mean) / total + deviate / total.sqrt()
}

/// A variance from its scaled inverse chi-squared law: `squares` over `weight` degrees of freedom.
fn inverse_gamma(weight: f64, squares: f64, chance: &mut impl Rng) -> f64 {
    (squares / 2.0 / gamma(weight / 2.0, chance)).max(1e-6)
}

/// A gamma draw of scale one; the mean when the law cannot be made (shapes here are always positive).
fn gamma(shape: f64, chance: &mut impl Rng) -> f64 {
    Gamma::new(shape, 1.0).map_or(shape, |law| law.sample(chance)).max(1e-9)
}

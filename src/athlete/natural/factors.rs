//! What is believed of an arm's latent factors, and what follows for a family.
//!
//! Model (a factor analysis by blocks; K. G. Jöreskog, Psychometrika 34 (1969) 183, from memory, for the idea): a block
//! of measurements, in units of its scale, is `y = mean + L z + e` with factors z ~ N(0, 1) of the arm and e ~
//! N(0, residual) of the pitch; a mean over n throws adds `scatter² / n`. With d = y - mean over what is known,
//!
//! V = (1 + Σ Lᵀ C⁻¹ L)⁻¹, z = V Σ Lᵀ C⁻¹ d, C = residual + noise
//!
//! and a family not yet known is mean + L z with covariance L V Lᵀ + residual.

use super::table::{AXES, Block, FACTORS, SCALE};
use crate::base::stats::{Cholesky, Matrix};

/// Variance of what is not known at all, in squared units of scale.
const UNKNOWN: f64 = 1e9;

/// Sums over what is known: precision and pull of the factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Belief {
    precision: Matrix<FACTORS, FACTORS>,
    pull: [f64; FACTORS],
}

/// A pitch in the units of the axes; what is not known is none.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Speed in % of the fastball's, vertical and glove-side break in inches, spin in hundreds of rpm.
    pub axes: [Option<f64>; AXES],
    /// Throws that it is the mean of.
    pub throws: f64,
}

/// Mean and covariance of a family, in units of [`SCALE`], the mean about zero.
#[derive(Debug, Clone, Copy)]
pub(super) struct Prediction {
    pub(super) mean: [f64; AXES],
    pub(super) covariance: Matrix<AXES, AXES>,
}

impl Belief {
    /// What is believed of an arm of which nothing is known.
    pub const PRIOR: Self =
        Self { precision: [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]], pull: [0.0; FACTORS] };

    /// What a block of measurements adds: `away` from its mean in units of scale; what is not known has no value.
    pub fn evidence<const N: usize>(
        loads: &Matrix<N, FACTORS>,
        covariance: &Matrix<N, N>,
        away: &[Option<f64>; N],
    ) -> Self {
        let mut covariance = *covariance;
        for (i, row) in covariance.iter_mut().enumerate() {
            row[i] += if away[i].is_some() { 0.0 } else { UNKNOWN };
        }
        let factor = Cholesky::of(&covariance);
        let away = factor.forward(&away.map(Option::unwrap_or_default));
        let loads: [[f64; N]; FACTORS] = std::array::from_fn(|k| factor.forward(&std::array::from_fn(|i| loads[i][k])));
        let dot = |a: &[f64; N], b: &[f64; N]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        Self {
            precision: std::array::from_fn(|k| std::array::from_fn(|l| dot(&loads[k], &loads[l]))),
            pull: std::array::from_fn(|k| dot(&loads[k], &away)),
        }
    }

    /// What a pitch of a family adds.
    pub fn pitch(block: &Block, reading: &Reading) -> Self {
        Self::evidence(&block.loads, &with_noise(block, &block.residual, reading), &away(block, reading))
    }

    /// Mean and covariance of the factors.
    pub fn factors(&self) -> ([f64; FACTORS], Matrix<FACTORS, FACTORS>) {
        let factor = Cholesky::of(&self.precision);
        let inverse = factor.inverse();
        let covariance =
            std::array::from_fn(|k| std::array::from_fn(|l| (0..FACTORS).map(|i| inverse[i][k] * inverse[i][l]).sum()));
        (factor.solve(&self.pull), covariance)
    }

    /// What is to be expected of a family.
    pub(super) fn predict(&self, block: &Block) -> Prediction {
        let (z, v) = self.factors();
        let spread: Matrix<AXES, FACTORS> =
            std::array::from_fn(|i| std::array::from_fn(|l| (0..FACTORS).map(|k| block.loads[i][k] * v[k][l]).sum()));
        let shared = |i: usize, j: usize| (0..FACTORS).map(|l| spread[i][l] * block.loads[j][l]).sum::<f64>();
        Prediction {
            mean: std::array::from_fn(|i| (0..FACTORS).map(|k| block.loads[i][k] * z[k]).sum()),
            covariance: std::array::from_fn(|i| std::array::from_fn(|j| shared(i, j) + block.residual[i][j])),
        }
    }
}

impl Prediction {
    /// Logarithm of the density of a reading of this family, but for what all families share.
    pub(super) fn log_density(&self, block: &Block, reading: &Reading) -> f64 {
        let away = away(block, reading);
        let mut covariance = with_noise(block, &self.covariance, reading);
        for (i, row) in covariance.iter_mut().enumerate().filter(|(i, _)| away[*i].is_none()) {
            row[i] += UNKNOWN;
        }
        let factor = Cholesky::of(&covariance);
        let y = factor.forward(&std::array::from_fn(|i| away[i].map_or(0.0, |away| away - self.mean[i])));
        -0.5 * y.iter().map(|y| y * y).sum::<f64>() - factor.half_log_det
    }
}

/// Both together.
impl std::ops::Add for Belief {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            precision: std::array::from_fn(|k| std::array::from_fn(|l| self.precision[k][l] + other.precision[k][l])),
            pull: std::array::from_fn(|k| self.pull[k] + other.pull[k]),
        }
    }
}

/// The first without what the second added.
impl std::ops::Sub for Belief {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        let less = |i: usize, j: usize| self.precision[i][j] - other.precision[i][j];
        Self {
            precision: std::array::from_fn(|i| std::array::from_fn(|j| less(i, j))),
            pull: std::array::from_fn(|i| self.pull[i] - other.pull[i]),
        }
    }
}

/// How far a reading lies from the family's mean, in units of scale.
fn away(block: &Block, reading: &Reading) -> [Option<f64>; AXES] {
    std::array::from_fn(|i| reading.axes[i].map(|y| (y - block.mean[i]) / SCALE[i]))
}

/// A covariance between arms with the noise of a mean over so many throws.
fn with_noise(block: &Block, covariance: &Matrix<AXES, AXES>, reading: &Reading) -> Matrix<AXES, AXES> {
    let mut noisy = *covariance;
    for (i, row) in noisy.iter_mut().enumerate() {
        let scatter = block.scatter[i] / SCALE[i];
        row[i] += scatter * scatter / reading.throws.max(1.0);
    }
    noisy
}

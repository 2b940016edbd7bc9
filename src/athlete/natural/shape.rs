//! The natural shape of one family for one arm: where such arms throw it, how far a shape lies from there.

use statrs::distribution::{ChiSquared, ContinuousCDF};

use super::table::{AXES, SCALE};
use crate::ball::{Family, Shape};
use crate::base::stats::{Cholesky, Matrix, normal_quantile};
use crate::base::{Movement, Range};

/// Share of such arms below and above a range that is shown.
const TAIL: f64 = 0.10;

/// Where arms like this one throw a family.
#[derive(Debug, Clone, Copy)]
pub struct NaturalShape {
    /// What it is; a two-seam is a sinker here.
    pub family: Family,
    /// Speed in % of the fastball's, vertical break (in), glove-side break (in), spin (hundreds of rpm).
    pub mean: [f64; AXES],
    /// Covariance between such arms, in the same units.
    pub covariance: Matrix<AXES, AXES>,
    /// The athlete's fastball.
    pub fastball_mph: f64,
    ease: f64,
    factor: Cholesky<AXES>,
    spin_sd: f64,
}

impl NaturalShape {
    pub(super) fn new(
        family: Family,
        mean: [f64; AXES],
        covariance: Matrix<AXES, AXES>,
        fastball_mph: f64,
        ease: f64,
    ) -> Self {
        let factor = Cholesky::of(&covariance);
        let spin_sd = 1.0 / factor.forward(&[0.0, 0.0, 0.0, 1.0])[3];
        Self { family, mean, covariance, fastball_mph, ease, factor, spin_sd }
    }

    /// The mean shape.
    pub fn shape(&self) -> Shape {
        Shape {
            speed_mph: self.mean[0] / 100.0 * self.fastball_mph,
            vertical_break_in: self.mean[1],
            glove_side_break_in: self.mean[2],
        }
    }

    /// The mean spin, rpm.
    pub fn spin_rpm(&self) -> f64 {
        100.0 * self.mean[3]
    }

    /// How far `shape` lies from the natural one, in standard deviations between such arms (Mahalanobis distance over
    /// speed, vertical and glove-side break), moved by how easily the hand turns: 0 or more.
    pub fn effort(&self, shape: Shape) -> f64 {
        (self.distance_squared(shape).sqrt() + self.ease).max(0.0)
    }

    /// Share of such arms whose pitch of this family lies at least as far from the natural shape (upper tail of a
    /// chi-squared with three degrees of freedom; statrs).
    pub fn share_as_far(effort: f64) -> f64 {
        ChiSquared::new(3.0).map_or(1.0, |law| law.sf(effort.max(0.0).powi(2)))
    }

    /// Covariance between such arms of speed (mph), vertical and glove-side break (in).
    pub fn shape_covariance(&self) -> Matrix<3, 3> {
        let unit = [self.fastball_mph / 100.0, 1.0, 1.0];
        std::array::from_fn(|i| std::array::from_fn(|j| self.covariance[i][j] * unit[i] * unit[j]))
    }

    /// From the 10th to the 90th of a hundred such arms: speed, mph.
    pub fn speed_mph(&self) -> Range {
        let percent = self.range(0);
        Range::new(percent.low * self.fastball_mph / 100.0, percent.high * self.fastball_mph / 100.0)
    }

    /// The same: vertical break, inches.
    pub fn vertical_break_in(&self) -> Range {
        self.range(1)
    }

    /// The same: glove-side break, inches.
    pub fn glove_side_break_in(&self) -> Range {
        self.range(2)
    }

    /// The same: spin, rpm.
    pub fn spin_range_rpm(&self) -> Range {
        let hundreds = self.range(3);
        Range::new(100.0 * hundreds.low.max(0.0), 100.0 * hundreds.high)
    }

    /// `points` of the ellipse of movement that holds `share` of such arms, whatever their speed, in order around it.
    pub fn contour(&self, share: f64, points: usize) -> Vec<Movement> {
        let [_, [_, up, across, _], [_, _, side, _], _] = self.covariance;
        let factor = Cholesky::of(&[[up, across], [across, side]]);
        let reach = (-2.0 * (1.0 - share.clamp(0.0, 0.999)).ln()).sqrt();
        let at = |index: usize| {
            let (sin, cos) = (std::f64::consts::TAU * index as f64 / points as f64).sin_cos();
            let [up, side] = factor.spread(&[reach * sin, reach * cos]);
            Movement { glove_side_in: self.mean[2] + side, up_in: self.mean[1] + up }
        };
        (0..points).map(at).collect()
    }

    fn range(&self, axis: usize) -> Range {
        Range::about(self.mean[axis], self.covariance[axis][axis].sqrt() * normal_quantile(1.0 - TAIL))
    }

    fn away(&self, shape: Shape, spin_rpm: f64) -> [f64; AXES] {
        let percent = 100.0 * shape.speed_mph / self.fastball_mph;
        let axes = [percent, shape.vertical_break_in, shape.glove_side_break_in, spin_rpm / 100.0];
        self.factor.forward(&std::array::from_fn(|i| axes[i] - self.mean[i]))
    }

    fn distance_squared(&self, shape: Shape) -> f64 {
        let [speed, up, side, _] = self.away(shape, 0.0);
        speed * speed + up * up + side * side
    }

    /// Logarithm of the density at a shape, and its spin when known, but for what all families share.
    pub(super) fn log_density(&self, shape: Shape, spin_rpm: Option<f64>) -> f64 {
        let spin = |rpm: f64| {
            let away = self.away(shape, rpm)[3];
            -0.5 * away * away - (self.spin_sd / SCALE[3]).ln()
        };
        let movement = -0.5 * self.distance_squared(shape) - self.factor.half_log_det + self.spin_sd.ln();
        movement + spin_rpm.map_or(0.0, spin)
    }
}

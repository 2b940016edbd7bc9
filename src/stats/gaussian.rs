//! The standard normal distribution, exact and tabulated.

use std::sync::LazyLock;

use statrs::distribution::{ContinuousCDF, Normal};

/// Quantile of the standard normal distribution (statrs).
pub fn normal_quantile(p: f64) -> f64 {
    Normal::standard().inverse_cdf(p)
}

const REACH: f64 = 8.0;
const STEPS_PER_UNIT: usize = 64;
const NODES: usize = 2 * 8 * STEPS_PER_UNIT + 1;

/// The standard normal distribution function and its density, by cubic Hermite interpolation.
///
/// Nodes stand 1/64 apart from -8 to 8, so the distribution function is right to about 2e-10
/// (h^4 / 384 times the largest fourth derivative) and the density returned is the exact slope of
/// the interpolant, which keeps gradients consistent with values.
pub struct NormalTable {
    nodes: Vec<(f64, f64)>,
}

static TABLE: LazyLock<NormalTable> = LazyLock::new(|| {
    let exact = Normal::standard();
    let nodes = (0..NODES)
        .map(|i| i as f64 / STEPS_PER_UNIT as f64 - REACH)
        .map(|z| (exact.cdf(z), (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt()))
        .collect();
    NormalTable { nodes }
});

impl NormalTable {
    /// The one table, built at first use.
    pub fn shared() -> &'static Self {
        &TABLE
    }

    /// Distribution function and density at `z`.
    #[inline]
    pub fn cdf_and_density(&self, z: f64) -> (f64, f64) {
        let place = (z.clamp(-REACH, REACH) + REACH) * STEPS_PER_UNIT as f64;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped above")]
        let cell = (place as usize).min(NODES - 2);
        let t = place - cell as f64;
        let h = 1.0 / STEPS_PER_UNIT as f64;
        let (f0, d0) = self.nodes[cell];
        let (f1, d1) = self.nodes[cell + 1];
        let rise = f1 - f0;
        let c2 = 3.0 * rise - h * (2.0 * d0 + d1);
        let c3 = h * (d0 + d1) - 2.0 * rise;
        let cdf = f0 + t * (h * d0 + t * (c2 + t * c3));
        let density = d0 + t * (2.0 * c2 + 3.0 * t * c3) * STEPS_PER_UNIT as f64;
        (cdf, density)
    }

    /// Chance that a normal value with `mean` and `sd` falls in `low..high`, and the derivative of
    /// that chance in `mean`.
    #[inline]
    pub fn mass_and_slope(&self, low: f64, high: f64, mean: f64, sd: f64) -> (f64, f64) {
        let (upper, upper_density) = self.cdf_and_density((high - mean) / sd);
        let (lower, lower_density) = self.cdf_and_density((low - mean) / sd);
        (upper - lower, (lower_density - upper_density) / sd)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reference: statrs' own distribution function.
    #[test]
    fn the_table_agrees_with_the_library_everywhere() {
        let exact = Normal::standard();
        for i in -900..=900 {
            let z = f64::from(i) * 0.009_7;
            let (cdf, density) = NormalTable::shared().cdf_and_density(z);
            assert!((cdf - exact.cdf(z)).abs() < 1e-9, "{z}");
            let true_density = (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt();
            assert!((density - true_density).abs() < 1e-6, "{z}");
        }
    }

    #[test]
    fn the_slope_of_a_mass_is_its_derivative() {
        let table = NormalTable::shared();
        let at = |mean| table.mass_and_slope(-1.0, 2.0, mean, 0.7).0;
        let numeric = (at(0.301) - at(0.299)) / 0.002;
        assert!((table.mass_and_slope(-1.0, 2.0, 0.3, 0.7).1 - numeric).abs() < 1e-5);
    }
}

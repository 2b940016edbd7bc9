//! The standard normal distribution, exact and tabulated.

use std::sync::LazyLock;

use statrs::distribution::{ContinuousCDF, Normal};

/// Quantile of the standard normal distribution (statrs).
pub fn normal_quantile(p: f64) -> f64 {
    Normal::standard().inverse_cdf(p)
}

const REACH: f64 = 8.0;
const CELLS_PER_UNIT: f64 = 32.0;
const CELLS: usize = 512;

/// The standard normal distribution function and its density, by cubic Hermite interpolation.
///
/// Cells are 1/32 wide and centred on multiples of 1/32 from -8 up to 8, so the distribution function is right to about 4e-9
/// (h^4 / 384 times the largest fourth derivative) and the density returned is the exact slope of
/// the interpolant, which keeps gradients consistent with values.
pub struct NormalTable {
    /// Coefficients of the cubic in each cell, constant term first, in cell widths from its middle.
    cells: [[f64; 4]; CELLS],
}

/// Added to a number from 0 to 2^31, it rounds it to a whole number and leaves that in the low bits.
const ROUNDER: f64 = (1_u64 << 52) as f64;

static TABLE: LazyLock<NormalTable> = LazyLock::new(|| {
    let exact = Normal::standard();
    let node = |place: f64| {
        let z = place / CELLS_PER_UNIT - REACH;
        (exact.cdf(z), (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt() / CELLS_PER_UNIT)
    };
    // The cubic with these values and slopes half a cell to the left and to the right of the middle.
    let cubic = |((f0, d0), (f1, d1)): ((f64, f64), (f64, f64))| {
        let rise = f1 - f0;
        [f64::midpoint(f0, f1) - (d1 - d0) / 8.0, 1.5 * rise - (d0 + d1) / 4.0, (d1 - d0) / 2.0, d0 + d1 - 2.0 * rise]
    };
    let cell = |i: usize| cubic((node(i as f64 - 0.5), node(i as f64 + 0.5)));
    NormalTable { cells: std::array::from_fn(cell) }
});

impl NormalTable {
    /// The one table, built at first use.
    pub fn shared() -> &'static Self {
        &TABLE
    }

    /// Distribution function and density at `z`.
    #[inline]
    pub fn cdf_and_density(&self, z: f64) -> (f64, f64) {
        let place = (z * CELLS_PER_UNIT + REACH * CELLS_PER_UNIT).clamp(0.0, (CELLS - 1) as f64);
        let rounded = place + ROUNDER;
        let t = place - (rounded - ROUNDER);
        #[expect(clippy::cast_possible_truncation, reason = "the low bits are the cell's number")]
        let [c0, c1, c2, c3] = self.cells[rounded.to_bits() as usize % CELLS];
        let cdf = c0 + t * (c1 + t * (c2 + t * c3));
        let density = (c1 + t * (2.0 * c2 + 3.0 * t * c3)) * CELLS_PER_UNIT;
        (cdf, density)
    }

    /// Chance that a normal value with `mean` and precision `per_sd` (one over its standard
    /// deviation) falls in `low..high`, and the derivative of that chance in `mean`.
    #[inline]
    pub fn mass_and_slope(&self, low: f64, high: f64, mean: f64, per_sd: f64) -> (f64, f64) {
        let (upper, upper_density) = self.cdf_and_density((high - mean) * per_sd);
        let (lower, lower_density) = self.cdf_and_density((low - mean) * per_sd);
        (upper - lower, (lower_density - upper_density) * per_sd)
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
            assert!((cdf - exact.cdf(z)).abs() < 5e-9, "{z}");
            let true_density = (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt();
            assert!((density - true_density).abs() < 2e-6, "{z}");
        }
    }

    #[test]
    fn the_slope_of_a_mass_is_its_derivative() {
        let table = NormalTable::shared();
        let at = |mean| table.mass_and_slope(-1.0, 2.0, mean, 1.0 / 0.7).0;
        let numeric = (at(0.301) - at(0.299)) / 0.002;
        assert!((table.mass_and_slope(-1.0, 2.0, 0.3, 1.0 / 0.7).1 - numeric).abs() < 1e-5);
    }
}

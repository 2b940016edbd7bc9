//! The standard normal distribution, exact and tabulated.

use std::sync::LazyLock;

use statrs::distribution::{ContinuousCDF, Normal};

/// Quantile of the standard normal distribution (statrs).
pub fn normal_quantile(p: f64) -> f64 {
    Normal::standard().inverse_cdf(p)
}

const REACH: f64 = 8.0;
const CELLS_PER_UNIT: f64 = 16.0;
const CELLS: usize = 256;
/// Terms of the Taylor series in each cell.
const TERMS: usize = 7;

/// The standard normal distribution function and its density, by Taylor series about tabulated places.
///
/// Cells are 1/16 wide and centred on multiples of 1/16 from -8 up to 8. With terms to the sixth power the
/// distribution function is right to about 1e-13 (the seventh derivative is below 40, times (1/32)^7 / 7!) and the
/// density, the exact slope of the series, to about 3e-11.
pub struct NormalTable {
    /// Coefficients in each cell, constant term first, in cell widths from its middle.
    cells: [[f64; TERMS]; CELLS],
}

/// Added to a number from 0 to 2^31, it rounds it to a whole number and leaves that in the low bits.
const ROUNDER: f64 = (1_u64 << 52) as f64;

static TABLE: LazyLock<NormalTable> =
    LazyLock::new(|| NormalTable { cells: std::array::from_fn(|cell| series(cell as f64 / CELLS_PER_UNIT - REACH)) });

/// The Taylor series about `z`, in cell widths: the k-th derivative of the density is `(-1)^k He_k(z)` times it,
/// with Hermite polynomials `He_(k+1) = z He_k - k He_(k-1)` (Abramowitz and Stegun 26.2.31 and 22.7.14).
fn series(z: f64) -> [f64; TERMS] {
    let mut terms = [distribution(z); TERMS];
    let (mut hermite, mut before) = (1.0, 0.0);
    let mut scale = (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt();
    for (k, term) in (1..).zip(&mut terms[1..]) {
        scale /= f64::from(k) * CELLS_PER_UNIT;
        *term = scale * hermite;
        (hermite, before) = (z * hermite - f64::from(k - 1) * before, hermite);
        scale = -scale;
    }
    terms
}

/// Distribution function to the last digits: 1/2 + density (z + z³/3 + z⁵/(3·5) + ...) (Marsaglia 2004, J. Stat.
/// Software 11, 4); the library's is right to 1e-10 only.
fn distribution(z: f64) -> f64 {
    let (mut sum, mut term, mut odd) = (0.0_f64, z, 1.0);
    while term.abs() > f64::EPSILON / 8.0 * sum.abs() {
        sum += term;
        odd += 2.0;
        term *= z * z / odd;
    }
    0.5 + sum * (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt()
}

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
        let [c0, c1, c2, c3, c4, c5, c6] = self.cells[rounded.to_bits() as usize % CELLS];
        let cdf = c0 + t * (c1 + t * (c2 + t * (c3 + t * (c4 + t * (c5 + t * c6)))));
        let slope = c1 + t * (2.0 * c2 + t * (3.0 * c3 + t * (4.0 * c4 + t * (5.0 * c5 + t * 6.0 * c6))));
        (cdf, slope * CELLS_PER_UNIT)
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

    /// Reference: statrs' own distribution function, right to 1e-10.
    #[test]
    fn the_table_agrees_with_the_library_everywhere() {
        let exact = Normal::standard();
        for i in -900..=900 {
            let z = f64::from(i) * 0.009_7;
            let (cdf, density) = NormalTable::shared().cdf_and_density(z);
            assert!((cdf - exact.cdf(z)).abs() < 1e-10, "{z}");
            let true_density = (-0.5 * z * z).exp() / std::f64::consts::TAU.sqrt();
            assert!((density - true_density).abs() < 5e-11, "{z}");
        }
    }

    /// scipy 1.17, stats.norm.cdf.
    #[test]
    fn the_table_is_right_to_the_last_digits_but_two() {
        let cases = [
            (-7.31, 1.335_711_927_020_464_4e-13),
            (-4.21, 1.276_853_441_373_493_3e-5),
            (-1.775_1, 0.037_940_688_500_200_22),
            (-0.404_3, 0.342_996_062_742_589_2),
            (0.031_1, 0.512_405_105_164_629_1),
            (0.9, 0.815_939_874_653_240_5),
            (2.218_7, 0.986_746_429_482_289_5),
            (3.333_3, 0.999_570_888_254_647_1),
        ];
        for (z, expected) in cases {
            let (cdf, _) = NormalTable::shared().cdf_and_density(z);
            assert!((cdf - expected).abs() < 1e-13, "{z}: {cdf}");
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

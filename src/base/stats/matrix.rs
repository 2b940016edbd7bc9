//! Small symmetric positive matrices of fixed size: just what a joint normal needs.
//!
//! Sizes are known at compile time and at most seven, so plain arrays beat a general library both
//! in speed and in the number of concepts.

/// A dense `R x C` matrix, rows first.
pub type Matrix<const R: usize, const C: usize> = [[f64; C]; R];

/// The lower Cholesky factor of a symmetric positive matrix, diagonal kept as reciprocals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cholesky<const N: usize> {
    lower: Matrix<N, N>,
    inverse_diagonal: [f64; N],
    /// Half the logarithm of the determinant.
    pub half_log_det: f64,
}

impl<const N: usize> Cholesky<N> {
    /// Factors `matrix`, reading its lower triangle.
    ///
    /// A pivot that rounding has made non-positive is raised to a tiny positive number: every
    /// matrix factored here is a covariance plus measurement noise, positive by construction.
    pub fn of(matrix: &Matrix<N, N>) -> Self {
        let mut lower = [[0.0; N]; N];
        let mut inverse_diagonal = [0.0; N];
        let mut half_log_det = 0.0;
        for row in 0..N {
            for column in 0..=row {
                let dot: f64 = (0..column).map(|k| lower[row][k] * lower[column][k]).sum();
                let rest = matrix[row][column] - dot;
                if row == column {
                    let pivot = rest.max(f64::MIN_POSITIVE.sqrt()).sqrt();
                    lower[row][row] = pivot;
                    inverse_diagonal[row] = 1.0 / pivot;
                    half_log_det += pivot.ln();
                } else {
                    lower[row][column] = rest * inverse_diagonal[column];
                }
            }
        }
        Self { lower, inverse_diagonal, half_log_det }
    }

    /// Solves `L y = b`.
    #[inline]
    pub fn forward(&self, b: &[f64; N]) -> [f64; N] {
        let mut y = *b;
        for row in 0..N {
            let dot: f64 = (0..row).map(|k| self.lower[row][k] * y[k]).sum();
            y[row] = (y[row] - dot) * self.inverse_diagonal[row];
        }
        y
    }

    /// Solves `L Lᵀ x = b`.
    pub fn solve(&self, b: &[f64; N]) -> [f64; N] {
        let mut x = self.forward(b);
        for row in (0..N).rev() {
            let dot: f64 = (row + 1..N).map(|k| self.lower[k][row] * x[k]).sum();
            x[row] = (x[row] - dot) * self.inverse_diagonal[row];
        }
        x
    }

    /// The inverse of `L`, lower triangular.
    pub fn inverse(&self) -> Matrix<N, N> {
        let mut columns = [[0.0; N]; N];
        for (k, column) in columns.iter_mut().enumerate() {
            let mut axis = [0.0; N];
            axis[k] = 1.0;
            *column = self.forward(&axis);
        }
        std::array::from_fn(|row| std::array::from_fn(|k| columns[k][row]))
    }

    /// `L z`: turns independent standard normals into a draw with this covariance.
    pub fn spread(&self, z: &[f64; N]) -> [f64; N] {
        std::array::from_fn(|row| (0..=row).map(|k| self.lower[row][k] * z[k]).sum())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hand_worked_factor_solves_and_spreads() {
        // [[4, 2], [2, 5]] = L Lᵀ with L = [[2, 0], [1, 2]]; its determinant is 16.
        let factor = Cholesky::of(&[[4.0, 2.0], [2.0, 5.0]]);
        assert!((factor.half_log_det - 4.0_f64.ln()).abs() < 1e-15);
        let close = |found: [f64; 2], expected: [f64; 2]| (0..2).all(|i| (found[i] - expected[i]).abs() < 1e-14);
        assert!(close(factor.spread(&[1.0, 1.0]), [2.0, 3.0]));
        assert!(close(factor.solve(&[8.0, 12.0]), [1.0, 2.0]));
        let inverse = factor.inverse();
        assert!(close(inverse[0], [0.5, 0.0]) && close(inverse[1], [-0.25, 0.5]));
    }
}

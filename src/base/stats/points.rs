//! A fixed set of evenly spread points, so that two candidates are compared on the same chances.

use super::{Cholesky, Matrix, normal_quantile};

/// `count` points in `N` dimensions, each a standard normal vector, evenly spread. Another `shift`
/// (0 to 1) gives another such set, for telling how much of a result is the set's.
///
/// 1. Additive recurrence on the generalised golden ratio: with g the positive root of
///    g^(N+1) = g + 1, point k has coordinate d equal to the fractional part of
///    1/2 + shift + k / g^(d+1); each coordinate goes through the normal quantile.
///    (M. Roberts, "The unreasonable effectiveness of quasirandom sequences", 2018, from memory.)
/// 2. Points come in pairs z, -z, so the mean of every odd function is exactly zero.
/// 3. The set is whitened, so that its second moments are exactly those of the normal law:
///    linear and quadratic functions are integrated without error, which 7 dimensions and some
///    dozens of points would not give by evenness alone.
///
/// Needs at least `2 N` points for step 3; with fewer the set is left unwhitened.
pub fn normal_points<const N: usize>(count: usize, shift: f64) -> Vec<[f64; N]> {
    let root = generalised_golden_ratio(N);
    let points: Vec<[f64; N]> = (0..count)
        .map(|index| {
            let pair = (index / 2 + 1) as f64;
            let sign = if index % 2 == 0 { 1.0 } else { -1.0 };
            std::array::from_fn(|dimension| {
                let uniform = (0.5 + shift + pair * root.powf(-(dimension as f64 + 1.0))).fract();
                sign * normal_quantile(uniform.clamp(1e-9, 1.0 - 1e-9))
            })
        })
        .collect();
    if count < 2 * N { points } else { whitened(&points) }
}

fn whitened<const N: usize>(points: &[[f64; N]]) -> Vec<[f64; N]> {
    let count = points.len() as f64;
    let second_moments: Matrix<N, N> = std::array::from_fn(|row| {
        std::array::from_fn(|column| points.iter().map(|p| p[row] * p[column]).sum::<f64>() / count)
    });
    let factor = Cholesky::of(&second_moments);
    points.iter().map(|point| factor.forward(point)).collect()
}

/// The positive root of g^(n+1) = g + 1, by fixed-point iteration (a contraction for g > 1).
fn generalised_golden_ratio(dimensions: usize) -> f64 {
    let exponent = 1.0 / (dimensions as f64 + 1.0);
    (0..64).fold(2.0_f64, |root, _| (1.0 + root).powf(exponent))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn first_and_second_moments_are_exact_and_the_fourth_is_close() {
        for count in [64, 128] {
            let points = normal_points::<7>(count, 0.0);
            let mean = |f: &dyn Fn(&[f64; 7]) -> f64| points.iter().map(f).sum::<f64>() / count as f64;
            for d in 0..7 {
                assert!(mean(&|p| p[d]).abs() < 1e-12);
                assert!((mean(&|p| p[d] * p[d]) - 1.0).abs() < 1e-12);
                assert!((mean(&|p| p[d].powi(4)) - 3.0).abs() < 1.2, "{}", mean(&|p| p[d].powi(4)));
                for e in 0..d {
                    assert!(mean(&|p| p[d] * p[e]).abs() < 1e-12);
                }
            }
        }
    }

    #[test]
    fn the_ratio_in_one_dimension_is_the_golden_one() {
        assert!((generalised_golden_ratio(1) - f64::midpoint(1.0, 5.0_f64.sqrt())).abs() < 1e-12);
    }
}

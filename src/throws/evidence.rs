//! How well a division of throws into groups explains them, in closed form.
//!
//! The **exact integrated completed likelihood** (C. Biernacki, G. Celeux and G. Govaert, J. Stat.
//! Plan. Inference 140 (2010) 2991, from memory): the probability of the throws *and* of who
//! belongs where, with means, spreads and shares integrated out. Each group is normal with a
//! normal-inverse-Wishart prior (A. Gelman et al., *Bayesian Data Analysis*, 3rd ed., section 3.6):
//!
//! log p(x) = -(3n/2) ln π + ln Γ₃(ν'/2) - ln Γ₃(ν/2) + (ν/2) ln|Ψ| - (ν'/2) ln|Ψ'| + (3/2) ln(κ/κ')
//!
//! with ν' = ν + n, κ' = κ + n and Ψ' = Ψ + scatter + (κ n / κ')(mean - m)(mean - m)ᵀ; shares have
//! a Dirichlet prior of one half. The prior knows how spread a practised pitch is, so a handful of
//! throws far from the rest is a pitch of its own, and one pitch cut in half is worth less than the
//! whole: the halves' smaller spread never pays for having to say which half.

use statrs::function::gamma::ln_gamma;

use super::mixture::Look;
use crate::base::stats::{Cholesky, Matrix};

/// Spread of a practised pitch (common practice, no published source), and how firmly it is
/// believed, as degrees of freedom.
const USUAL_SD: Look = [1.2, 2.2, 2.2];
const FREEDOM: f64 = 10.0;
/// Throws the belief about a group's mean is worth: so few that means may lie anywhere within
/// about 7 mph and 13 in of the middle of all throws.
const MEAN_THROWS: f64 = 0.03;
/// The Dirichlet prior of the shares.
const SHARE: f64 = 0.5;

/// Log of the integrated completed likelihood of throws divided as `groups` says (index of each).
pub(super) fn log_evidence(looks: &[Look], group_of: &[usize], groups: usize) -> f64 {
    let n = looks.len().max(1) as f64;
    let middle: Look = std::array::from_fn(|d| looks.iter().map(|look| look[d]).sum::<f64>() / n);
    let mut sums = vec![Sums::default(); groups];
    for (look, &group) in looks.iter().zip(group_of) {
        sums[group].add(&std::array::from_fn(|d| look[d] - middle[d]));
    }
    let counts: Vec<f64> = sums.iter().map(|sums| sums.n).collect();
    sums.iter().map(Sums::log_marginal).sum::<f64>() + log_shares(&counts)
}

/// Log probability of the membership counts' order under the Dirichlet prior.
fn log_shares(counts: &[f64]) -> f64 {
    let groups = counts.len() as f64;
    let all: f64 = counts.iter().sum();
    let each: f64 = counts.iter().map(|n| ln_gamma(n + SHARE) - ln_gamma(SHARE)).sum();
    ln_gamma(groups * SHARE) - ln_gamma(all + groups * SHARE) + each
}

/// Sums over one group, about the middle of all throws.
#[derive(Debug, Clone, Copy, Default)]
struct Sums {
    n: f64,
    first: Look,
    second: Matrix<3, 3>,
}

impl Sums {
    fn add(&mut self, away: &Look) {
        self.n += 1.0;
        for row in 0..3 {
            self.first[row] += away[row];
            for column in 0..=row {
                self.second[row][column] += away[row] * away[column];
            }
        }
    }

    /// Log marginal likelihood of the group.
    fn log_marginal(&self) -> f64 {
        let n = self.n;
        if n == 0.0 {
            return 0.0;
        }
        let prior = USUAL_SD.map(|sd| (FREEDOM - 4.0) * sd * sd);
        // Scatter about the group's own mean plus the pull of that mean toward the middle, in one:
        // second - first firstᵀ / n + κ/(κ + n) first firstᵀ / n.
        let held = 1.0 / (MEAN_THROWS + n);
        let posterior: Matrix<3, 3> = std::array::from_fn(|row| {
            std::array::from_fn(|column| {
                let prior = if row == column { prior[row] } else { 0.0 };
                prior + self.second[row.max(column)][row.min(column)] - held * self.first[row] * self.first[column]
            })
        });
        let log_prior: f64 = prior.iter().map(|p| p.ln()).sum();
        -1.5 * n * std::f64::consts::PI.ln() + log_gamma_3(f64::midpoint(FREEDOM, n)) - log_gamma_3(FREEDOM / 2.0)
            + FREEDOM / 2.0 * log_prior
            - (FREEDOM + n) * Cholesky::of(&posterior).half_log_det
            + 1.5 * (MEAN_THROWS / (MEAN_THROWS + n)).ln()
    }
}

/// Log of the multivariate gamma function in three dimensions.
fn log_gamma_3(a: f64) -> f64 {
    1.5 * std::f64::consts::PI.ln() + ln_gamma(a) + ln_gamma(a - 0.5) + ln_gamma(a - 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::stats::normal_points;

    /// A normal pitch of ordinary spread.
    fn cloud(n: usize, mean: Look) -> Vec<Look> {
        let normal = normal_points::<3>(n, 0.0);
        normal.iter().map(|z| [mean[0] + 1.2 * z[0], mean[1] + 2.2 * z[1], mean[2] + 2.2 * z[2]]).collect()
    }

    #[test]
    fn one_pitch_cut_in_half_is_worth_less_than_the_whole() {
        let looks = cloud(400, [92.0, 16.0, -7.0]);
        for axis in 0..3 {
            let middle = [92.0, 16.0, -7.0][axis];
            let halves: Vec<usize> = looks.iter().map(|look| usize::from(look[axis] > middle)).collect();
            assert!(log_evidence(&looks, &vec![0; 400], 1) > log_evidence(&looks, &halves, 2) + 10.0, "{axis}");
        }
    }

    #[test]
    fn five_throws_far_away_are_a_pitch_of_their_own() {
        let mut looks = cloud(40, [92.0, 16.0, -7.0]);
        looks.extend(cloud(5, [84.0, 8.0, -14.0]));
        let apart: Vec<usize> = (0..45).map(|i| usize::from(i >= 40)).collect();
        assert!(log_evidence(&looks, &apart, 2) > log_evidence(&looks, &[0; 45], 1));
    }

    /// With one throw the marginal is a Student t; its log density at the middle, worked by hand
    /// from Gelman's formula (three dimensions, 8 degrees of freedom).
    #[test]
    fn one_throw_has_the_students_density() {
        let scale = (FREEDOM - 4.0) * (MEAN_THROWS + 1.0) / (MEAN_THROWS * 8.0);
        let log_scale: f64 = USUAL_SD.iter().map(|sd| 0.5 * (scale * sd * sd).ln()).sum();
        let expected = ln_gamma(5.5) - ln_gamma(4.0) - 1.5 * (8.0 * std::f64::consts::PI).ln() - log_scale;
        let mut one = Sums::default();
        one.add(&[0.0; 3]);
        let found = one.log_marginal();
        assert!((found - expected).abs() < 1e-9, "{found} against {expected}");
    }
}

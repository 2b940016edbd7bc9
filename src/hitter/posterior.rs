//! What is known of the hitter after the fit: the likeliest values, how sure they are, and draws of them.
//!
//! The posterior is normal on the scales of the fit; its mean and covariance are shipped, one file for each
//! reading, and the draws are made from them with a fixed seed.

use std::sync::LazyLock;

use rand::SeedableRng;
use rand_distr::{Distribution, StandardNormal};
use rand_xoshiro::Xoshiro256PlusPlus;

use crate::base::stats::{Cholesky, Estimate, Matrix};

use super::parameters::{PARAMETERS, place_of};
use super::table::{number, rows_of};
use super::{Parameters, Reading, free, known};

/// How many draws stand for the doubt about the hitter.
pub const DRAWS: usize = 64;
/// Seed of the draws; any number would do.
const SEED: u64 = 20_230_615;

/// Mean and covariance of the transformed parameters after the fit; what is pinned has no variance.
#[derive(Debug)]
pub struct Posterior {
    reading: Reading,
    mean: [f64; PARAMETERS],
    covariance: Box<Matrix<PARAMETERS, PARAMETERS>>,
    draws: Vec<Parameters>,
}

static SHARES: LazyLock<Posterior> =
    LazyLock::new(|| Posterior::read(Reading::Shares, include_str!("posterior-shares.csv")));
static CROWD: LazyLock<Posterior> =
    LazyLock::new(|| Posterior::read(Reading::Crowd, include_str!("posterior-crowd.csv")));

impl Posterior {
    /// The one under `reading`.
    pub fn under(reading: Reading) -> &'static Self {
        match reading {
            Reading::Shares => &SHARES,
            Reading::Crowd => &CROWD,
        }
    }

    /// The likeliest hitter.
    pub fn best(&self) -> Parameters {
        self.at(&[0.0; PARAMETERS])
    }

    /// Hitters that the throws like about equally: [`DRAWS`] of them, in pairs about the likeliest.
    pub fn draws(&self) -> &[Parameters] {
        &self.draws
    }

    /// Value and 90 % interval of each free parameter, in the order of [`free`].
    pub fn estimates(&self) -> Vec<(&'static str, Estimate)> {
        let estimate = |place: usize| {
            let sd = self.covariance[place][place].sqrt();
            Estimate::from_sd(self.mean[place], sd).map(|value| known()[place].transform.back(value))
        };
        free(self.reading).map(|place| (known()[place].name, estimate(place))).collect()
    }

    /// Reads a shipped file: name, mean, and the covariance with this row and all before it.
    fn read(reading: Reading, text: &'static str) -> Self {
        let mut mean = known().map(|known| known.transform.forward(known.pinned.unwrap_or(known.prior)));
        let mut covariance = vec![[0.0; PARAMETERS]; PARAMETERS].into_boxed_slice();
        let mut places = Vec::new();
        for row in rows_of(text) {
            let place = place_of(row[0]).unwrap_or_else(|| panic!("{} is no parameter", row[0]));
            places.push(place);
            mean[place] = number(row[1]);
            for (other, cell) in places.iter().zip(&row[2..]) {
                covariance[place][*other] = number(cell);
                covariance[*other][place] = number(cell);
            }
        }
        assert!(places.iter().copied().eq(free(reading)), "a posterior has a row for each free parameter, in order");
        let covariance = covariance.try_into().expect("as many rows as columns");
        let mut posterior = Self { reading, mean, covariance, draws: Vec::new() };
        posterior.draws = posterior.drawn();
        posterior
    }

    /// Pairs z and -z, so that on the scales of the fit their mean is the likeliest hitter.
    fn drawn(&self) -> Vec<Parameters> {
        let factor = Cholesky::of(&self.covariance);
        let mut chance = Xoshiro256PlusPlus::seed_from_u64(SEED);
        let pair = |_| {
            let shift = factor.spread(&std::array::from_fn(|_| StandardNormal.sample(&mut chance)));
            [self.at(&shift), self.at(&shift.map(|by| -by))]
        };
        (0..DRAWS / 2).flat_map(pair).collect()
    }

    /// The hitter this far from the likeliest, on the scales of the fit.
    fn at(&self, shift: &[f64; PARAMETERS]) -> Parameters {
        let transformed: Vec<f64> = free(self.reading).map(|place| self.mean[place] + shift[place]).collect();
        Parameters::from_transformed(self.reading, &transformed)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_draws_have_the_mean_and_about_the_spread_of_the_posterior() {
        for reading in Reading::ALL {
            let posterior = Posterior::under(reading);
            let best = posterior.best().to_transformed(reading);
            let draws: Vec<Vec<f64>> = posterior.draws().iter().map(|draw| draw.to_transformed(reading)).collect();
            assert_eq!(draws.len(), DRAWS);
            let mut ratios = Vec::new();
            for (index, place) in free(reading).enumerate() {
                let mean = draws.iter().map(|draw| draw[index]).sum::<f64>() / DRAWS as f64;
                assert!((mean - best[index]).abs() < 1e-9, "{}", known()[place].name);
                let variance = draws.iter().map(|draw| (draw[index] - mean).powi(2)).sum::<f64>() / DRAWS as f64;
                ratios.push(variance / posterior.covariance[place][place]);
            }
            let mean_ratio = ratios.iter().sum::<f64>() / ratios.len() as f64;
            assert!((mean_ratio - 1.0).abs() < 0.1, "{reading:?}: {mean_ratio}");
        }
    }

    #[test]
    fn every_value_lies_in_its_interval() {
        for reading in Reading::ALL {
            let estimates = Posterior::under(reading).estimates();
            assert!(
                estimates.iter().all(|(_, estimate)| estimate.low < estimate.value && estimate.value < estimate.high)
            );
        }
    }
}

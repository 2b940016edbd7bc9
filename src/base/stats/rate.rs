//! A success rate seen a few times, blended with what a model expects.

use statrs::distribution::{Beta, ContinuousCDF};

use super::{Estimate, INTERVAL_MASS};

/// `hits` out of `tries`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Count {
    /// How often it happened.
    pub hits: u32,
    /// How often it could have happened.
    pub tries: u32,
}

/// A rate after the data, with the share of the data in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blend {
    /// Posterior mean and central interval.
    pub rate: Estimate,
    /// Weight of the data in the posterior mean, from 0 (model only) to 1.
    pub data_weight: f64,
    /// Standard deviation of the posterior.
    pub sd: f64,
}

impl Blend {
    /// Beta posterior of a rate whose prior has mean `expected` and the weight of `prior_tries`
    /// imagined tries: Beta(expected·n0 + hits, (1 - expected)·n0 + misses). The conjugate update
    /// of a binomial; quantiles from statrs.
    pub fn of(expected: f64, prior_tries: f64, seen: Count) -> Self {
        let expected = expected.clamp(1e-4, 1.0 - 1e-4);
        let hits = f64::from(seen.hits.min(seen.tries));
        let tries = f64::from(seen.tries);
        let alpha = expected * prior_tries + hits;
        let beta = (1.0 - expected) * prior_tries + tries - hits;
        let mean = alpha / (alpha + beta);
        let tail = (1.0 - INTERVAL_MASS) / 2.0;
        let (low, high) = Beta::new(alpha, beta)
            .map_or((0.0, 1.0), |posterior| (posterior.inverse_cdf(tail), posterior.inverse_cdf(1.0 - tail)));
        Self {
            rate: Estimate { value: mean, low: low.min(mean), high: high.max(mean) },
            data_weight: tries / (tries + prior_tries),
            sd: (mean * (1.0 - mean) / (alpha + beta + 1.0)).sqrt(),
        }
    }

    /// The rate `z` standard deviations from the posterior mean, held between 0 and 1.
    pub fn at(&self, z: f64) -> f64 {
        (self.rate.value + z * self.sd).clamp(0.0, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Beta(2 + 7, 2 + 3) has mean 9/14; its 5 % and 95 % points are 0.4274 and 0.8343
    /// (scipy.stats.beta.ppf).
    #[test]
    fn the_posterior_is_the_textbook_one() {
        let blend = Blend::of(0.5, 4.0, Count { hits: 7, tries: 10 });
        assert!((blend.rate.value - 9.0 / 14.0).abs() < 1e-12);
        assert!((blend.data_weight - 10.0 / 14.0).abs() < 1e-12);
        assert!((blend.rate.low - 0.427_4).abs() < 2e-4, "{}", blend.rate.low);
        assert!((blend.rate.high - 0.834_3).abs() < 2e-4, "{}", blend.rate.high);
    }
}

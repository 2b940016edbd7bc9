//! What a handful of repeated measurements says about their mean and their spread.

use statrs::distribution::{Beta, ChiSquared, ContinuousCDF, StudentsT};

use super::{Count, Estimate, INTERVAL_MASS};

/// Count, mean and sum of squares about the mean of some numbers.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Sample {
    /// How many.
    pub count: u32,
    /// Their mean; 0 when there are none.
    pub mean: f64,
    /// Sum of their squared distances from the mean.
    pub squares: f64,
}

impl Sample {
    /// The sample of `values`, one pass (Welford).
    pub fn of(values: impl IntoIterator<Item = f64>) -> Self {
        let mut sample = Self::default();
        for value in values {
            sample.add(value);
        }
        sample
    }

    /// One more value.
    pub fn add(&mut self, value: f64) {
        self.count += 1;
        let off = value - self.mean;
        self.mean += off / f64::from(self.count);
        self.squares += off * (value - self.mean);
    }

    /// Standard deviation; nothing from fewer than two.
    pub fn sd(&self) -> Option<f64> {
        (self.count >= 2).then(|| (self.squares / f64::from(self.count - 1)).sqrt())
    }

    /// The mean with Student's interval; nothing from fewer than two.
    pub fn mean_estimate(&self) -> Option<Estimate> {
        let sd = self.sd()?;
        let t = StudentsT::new(0.0, 1.0, f64::from(self.count - 1)).ok()?.inverse_cdf(0.5 + INTERVAL_MASS / 2.0);
        let reach = t * sd / f64::from(self.count).sqrt();
        Some(Estimate { value: self.mean, low: self.mean - reach, high: self.mean + reach })
    }

    /// The standard deviation with the chi-squared interval; nothing from fewer than three.
    pub fn sd_estimate(&self) -> Option<Estimate> {
        (self.count >= 3).then(|| sd_estimate(self.squares, f64::from(self.count - 1))).flatten()
    }
}

/// A standard deviation from a sum of squares with `freedom` degrees of freedom.
pub fn sd_estimate(squares: f64, freedom: f64) -> Option<Estimate> {
    let law = ChiSquared::new(freedom).ok()?;
    let tail = (1.0 - INTERVAL_MASS) / 2.0;
    let at = |p: f64| (squares / law.inverse_cdf(p)).sqrt();
    let value = (squares / freedom).sqrt();
    Some(Estimate { value, low: at(1.0 - tail).min(value), high: at(tail).max(value) })
}

/// A share with the interval of Jeffreys' beta posterior; nothing when nothing was tried.
pub fn share_estimate(seen: Count) -> Option<Estimate> {
    let (hits, tries) = (f64::from(seen.hits.min(seen.tries)), f64::from(seen.tries));
    let posterior = (seen.tries > 0).then(|| Beta::new(hits + 0.5, tries - hits + 0.5).ok()).flatten()?;
    let tail = (1.0 - INTERVAL_MASS) / 2.0;
    let value = hits / tries;
    Some(Estimate {
        value,
        low: posterior.inverse_cdf(tail).min(value),
        high: posterior.inverse_cdf(1.0 - tail).max(value),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values worked out with scipy.stats: t.interval and chi2.ppf for 2, 4, 4, 5, 7.
    #[test]
    fn mean_and_spread_have_the_textbook_intervals() {
        let sample = Sample::of([2.0, 4.0, 4.0, 5.0, 7.0]);
        assert!((sample.mean - 4.4).abs() < 1e-12);
        let mean = sample.mean_estimate().unwrap();
        assert!((mean.low - 2.668_1).abs() < 1e-3 && (mean.high - 6.131_9).abs() < 1e-3, "{mean:?}");
        let sd = sample.sd_estimate().unwrap();
        assert!((sd.value - 1.816_6).abs() < 1e-3, "{sd:?}");
        assert!((sd.low - 1.179_6).abs() < 1e-3 && (sd.high - 4.309_6).abs() < 1e-3, "{sd:?}");
    }

    #[test]
    fn too_few_numbers_give_no_interval() {
        assert_eq!(Sample::of([1.0]).mean_estimate(), None);
        assert_eq!(Sample::of([1.0, 2.0]).sd_estimate(), None);
        assert_eq!(share_estimate(Count { hits: 0, tries: 0 }), None);
        assert_eq!(share_estimate(Count { hits: 0, tries: 5 }).map(|share| share.low), Some(0.0));
    }
}

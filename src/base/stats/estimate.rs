//! A number that never travels without its interval.

/// Probability mass of every interval the tool shows.
pub const INTERVAL_MASS: f64 = 0.90;

/// A value with the ends of its 90 % interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate {
    /// The best single value.
    pub value: f64,
    /// Lower end of the interval.
    pub low: f64,
    /// Upper end of the interval.
    pub high: f64,
}

impl Estimate {
    /// A normal estimate from its standard deviation.
    pub fn from_sd(value: f64, sd: f64) -> Self {
        let reach = sd * super::normal_quantile(0.5 + INTERVAL_MASS / 2.0);
        Self { value, low: value - reach, high: value + reach }
    }

    /// `value` with the central interval of `draws`, widened where needed to hold `value`.
    /// With no draws the interval is the value itself.
    pub fn from_draws(value: f64, draws: &[f64]) -> Self {
        let mut sorted = draws.to_vec();
        sorted.sort_by(f64::total_cmp);
        let tail = (1.0 - INTERVAL_MASS) / 2.0;
        let low = quantile_of_sorted(&sorted, tail).unwrap_or(value);
        let high = quantile_of_sorted(&sorted, 1.0 - tail).unwrap_or(value);
        Self { value, low: low.min(value), high: high.max(value) }
    }

    /// The same estimate with every number changed by `change`, which must not decrease.
    #[must_use]
    pub fn map(self, change: impl Fn(f64) -> f64) -> Self {
        Self { value: change(self.value), low: change(self.low), high: change(self.high) }
    }

    /// Half the width of the interval.
    pub fn half_width(self) -> f64 {
        (self.high - self.low) / 2.0
    }
}

/// Linear interpolation between order statistics (Hyndman and Fan 1996, type 7).
fn quantile_of_sorted(sorted: &[f64], p: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let place = p.clamp(0.0, 1.0) * last as f64;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 <= place <= last")]
    let below = place.floor() as usize;
    let above = (below + 1).min(last);
    Some(sorted[below] + (sorted[above] - sorted[below]) * place.fract())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_agree_with_a_hand_worked_case() {
        let sorted = [1.0, 2.0, 3.0, 4.0];
        assert_eq!(quantile_of_sorted(&sorted, 0.5), Some(2.5));
        assert_eq!(quantile_of_sorted(&sorted, 0.25), Some(1.75));
        assert_eq!(quantile_of_sorted(&[], 0.5), None);
    }

    #[test]
    fn an_interval_always_holds_its_value() {
        let estimate = Estimate::from_draws(9.0, &[1.0, 2.0, 3.0]);
        assert!(estimate.low <= estimate.value && estimate.value <= estimate.high);
    }
}

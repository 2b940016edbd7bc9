//! Mean and spread of a stream of numbers, and a mean on the clock face.
//!
//! Spreads of few numbers are held toward what practised pitches show; intervals of means count
//! both the throws and the days, for ten throws of one afternoon are not ten independent ones.

use statrs::distribution::{ContinuousCDF, StudentsT};

use crate::base::geometry::Clock;
use crate::base::stats::{Estimate, INTERVAL_MASS};

/// Imagined throws behind a spread before any is seen.
const PRIOR_THROWS: f64 = 6.0;

/// Running mean and sum of squares (B. P. Welford, Technometrics 4 (1962) 419).
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Tally {
    pub(super) n: f64,
    pub(super) mean: f64,
    squares: f64,
}

impl Tally {
    #[inline]
    pub(super) fn add(&mut self, x: f64) {
        self.n += 1.0;
        let away = x - self.mean;
        self.mean += away / self.n;
        self.squares += away * (x - self.mean);
    }

    #[inline]
    pub(super) fn add_some(&mut self, x: Option<f64>) {
        if let Some(x) = x {
            self.add(x);
        }
    }

    /// The spread, held toward `usual` when there are few throws.
    pub(super) fn sd_toward(&self, usual: f64) -> f64 {
        let freedom = (self.n - 1.0).max(0.0);
        ((self.squares + PRIOR_THROWS * usual * usual) / (freedom + PRIOR_THROWS)).sqrt()
    }

    /// The mean with its interval: throws spread by `sd_toward(usual)`, days by `days`.
    pub(super) fn estimate(&self, usual: f64, days: DayToDay) -> Option<Estimate> {
        if self.n < 1.0 {
            return None;
        }
        let sd = self.sd_toward(usual);
        let error = (sd * sd / self.n + days.sd * days.sd / days.effective).sqrt();
        let reach = error * student_quantile(days.freedom);
        Some(Estimate { value: self.mean, low: self.mean - reach, high: self.mean + reach })
    }
}

/// How a mean wanders from day to day, and how many days stand behind it.
#[derive(Debug, Clone, Copy)]
pub(super) struct DayToDay {
    pub(super) sd: f64,
    /// Days, each weighed by its throws: `n² / Σ n_d²`.
    pub(super) effective: f64,
    /// Degrees of freedom of `sd`.
    pub(super) freedom: f64,
}

/// Upper quantile of Student's t that leaves the shown interval's tail (statrs).
fn student_quantile(freedom: f64) -> f64 {
    let p = 0.5 + INTERVAL_MASS / 2.0;
    StudentsT::new(0.0, 1.0, freedom.max(1.0)).map_or(2.0, |t| t.inverse_cdf(p))
}

/// Running mean direction on the clock face.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct ClockTally {
    glove_side: f64,
    up: f64,
    n: f64,
}

impl ClockTally {
    pub(super) fn add_some(&mut self, clock: Option<Clock>) {
        if let Some(clock) = clock {
            let (glove_side, up) = clock.push();
            self.glove_side += glove_side;
            self.up += up;
            self.n += 1.0;
        }
    }

    /// The mean direction; nothing without readings or when they point everywhere.
    pub(super) fn mean(&self) -> Option<Clock> {
        (self.glove_side.hypot(self.up) > 0.1 * self.n).then(|| Clock::from_push(self.glove_side, self.up))
    }
}

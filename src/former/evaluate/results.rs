//! Own results shrink the model: counted swings, misses and weak contacts update its rates.

use crate::athlete::profile::Results;
use crate::base::stats::Blend;
use crate::former::hitter::Rates;

/// How many tries the model's rate is worth. Start value: with a hundred swings counted, data and
/// model weigh the same.
pub const PRIOR_TRIES: f64 = 100.0;

/// The rates that own results can inform, blended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BlendedRates {
    /// Takes per pitch.
    pub take: Blend,
    /// Misses per swing.
    pub miss: Blend,
    /// Weak contacts per contact.
    pub weak: Blend,
}

impl BlendedRates {
    /// The model's `rates` after `results`.
    pub fn of(rates: &Rates, results: &Results) -> Self {
        let contact = rates.weak_contact + rates.solid_contact;
        let weak_share = if contact > 0.0 { rates.weak_contact / contact } else { 0.5 };
        Self {
            take: Blend::of(rates.take(), PRIOR_TRIES, results.takes()),
            miss: Blend::of(rates.miss_per_swing(), PRIOR_TRIES, results.misses()),
            weak: Blend::of(weak_share, PRIOR_TRIES, results.weak().unwrap_or_default()),
        }
    }

    /// The outcome chances these rates mean. Balls and called strikes keep the model's ratio.
    pub fn rates(&self, model: &Rates) -> Rates {
        self.rates_at(model, [0.0; 3])
    }

    /// The same with (take, miss, weak) each so many posterior standard deviations off.
    pub fn rates_at(&self, model: &Rates, off: [f64; 3]) -> Rates {
        let take = self.take.at(off[0]);
        let swing = 1.0 - take;
        let miss = swing * self.miss.at(off[1]);
        let weak = (swing - miss) * self.weak.at(off[2]);
        let taken = take / model.take().max(f64::MIN_POSITIVE);
        Rates {
            ball: model.ball * taken,
            called_strike: model.called_strike * taken,
            swing_and_miss: miss,
            weak_contact: weak,
            solid_contact: swing - miss - weak,
        }
    }
}

/// What own results say of each pitch against one side.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OwnResults {
    /// The blend, for pitches with results.
    pub blends: Vec<Option<BlendedRates>>,
    /// Runs per pitch to add to the model's, for every pitch.
    pub corrections: Vec<f64>,
}

impl OwnResults {
    /// Runs per pitch that own results add to the model's under `shares` (pitches beyond those with
    /// results add nothing).
    pub fn runs(&self, shares: &[f64]) -> f64 {
        shares.iter().zip(&self.corrections).map(|(share, correction)| share * correction).sum()
    }
}

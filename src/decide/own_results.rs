//! Own results shrink the model: counted swings, misses and weak contacts of a pitch update what is expected of it.

use crate::athlete::profile::Results;
use crate::base::stats::Blend;
use crate::hitter::Chances;

/// How many tries the model's rate is worth: with so many pitches, swings or hits counted, data and model weigh the
/// same. This project's choice.
pub const PRIOR_TRIES: f64 = 100.0;

/// What an athlete's own results say of one pitch against one side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnResults {
    /// Takes of all pitches.
    pub take: Blend,
    /// Misses of swings.
    pub miss: Blend,
    /// Weak contacts of contacts.
    pub weak: Blend,
    /// What the model says on average.
    model: Three,
}

/// The three rates that results inform.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Three {
    swing: f64,
    contact_per_swing: f64,
    solid_per_contact: f64,
}

impl Three {
    fn of(chances: &Chances) -> Self {
        let per = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
        Self {
            swing: chances.swing,
            contact_per_swing: per(chances.contact, chances.swing),
            solid_per_contact: per(chances.solid, chances.contact),
        }
    }
}

impl OwnResults {
    /// `results` with what the model expects on average over the counts the pitch is thrown in.
    pub fn of(expected: &Chances, results: &Results) -> Self {
        let model = Three::of(expected);
        Self {
            take: Blend::of(1.0 - model.swing, PRIOR_TRIES, results.takes()),
            miss: Blend::of(1.0 - model.contact_per_swing, PRIOR_TRIES, results.misses()),
            weak: Blend::of(1.0 - model.solid_per_contact, PRIOR_TRIES, results.weak().unwrap_or_default()),
            model,
        }
    }

    /// `chances` of the model, in any state of the count, changed in the proportions that the results say; `luck` is how
    /// far take, miss and weak contact lie from their best values, in standard deviations.
    pub fn applied(&self, chances: &Chances, luck: [f64; 3]) -> Chances {
        let ratio = |blend: &Blend, luck: f64, model: f64| (1.0 - blend.at(luck)) / model.max(1e-9);
        let here = Three::of(chances);
        let rate = |rate: f64, ratio: f64| (rate * ratio).clamp(0.0, 1.0);
        let swing = rate(here.swing, ratio(&self.take, luck[0], self.model.swing));
        let contact = swing * rate(here.contact_per_swing, ratio(&self.miss, luck[1], self.model.contact_per_swing));
        let solid = contact * rate(here.solid_per_contact, ratio(&self.weak, luck[2], self.model.solid_per_contact));
        let taken = (1.0 - swing) / (1.0 - chances.swing).max(1e-9);
        let swing_outside = chances.swing_outside * swing / chances.swing.max(1e-9);
        Chances {
            swing,
            contact,
            solid,
            called_strike: chances.called_strike * taken,
            outside: chances.outside,
            swing_outside: swing_outside.min(chances.outside),
        }
    }
}

//! How often a new pitch would be thrown: a share of what is customary for it, in each state of the count against each
//! side. A coach does not have a pitch thrown where it does not help.

use crate::athlete::profile::PerSide;
use crate::base::geometry::Side;

use super::counts::Count;
use super::draws::Terms;
use super::facing::Placed;
use super::model::Model;
use super::new_pitch::NewPitch;
use super::shares::{Shares, Twin};
use super::worth::Brought;

/// Shares of a new pitch by side and state of the count.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Wanted(PerSide<[f64; 4]>);

/// Parts of the customary share that are looked at.
const PARTS: [f64; 6] = [0.0, 0.12, 0.25, 0.5, 0.75, 1.0];
/// The part that a search for shapes goes by where none helps.
const LEAST_PART: f64 = 0.25;

impl Wanted {
    /// Thrown in no state of the count.
    pub const NONE: Self = Self(PerSide { same: [0.0; 4], opposite: [0.0; 4] });

    /// Today's shares with the new pitch thrown so.
    pub fn shares(&self, model: &Model, twin: Twin) -> Shares {
        model.shares.with_new(|side, count| self.0.on(side)[count as usize], twin)
    }

    /// The same, or a part of the customary shares of `new` where it is thrown nowhere: the shape that would help first is
    /// still to be found.
    #[must_use]
    pub fn or_least(self, model: &Model, new: &NewPitch) -> Self {
        if Side::BOTH.into_iter().any(|side| self.0.on(side).iter().any(|share| *share > 0.0)) {
            return self;
        }
        let custom = model.customary_share_of(new);
        Self(PerSide::from_fn(|side| custom.on(side).map(|share| LEAST_PART * share)))
    }
}

/// What helps most of the customary shares of `new`, on the best guess.
pub fn chosen(model: &Model, new: &NewPitch) -> Wanted {
    let custom = model.customary_share_of(new);
    let facings = model.with_new(new);
    let placed: Vec<Placed> = model.arsenal.iter().chain([&new.placed]).cloned().collect();
    Wanted(PerSide::from_fn(|side| {
        let saved = |wanted: &[f64; 4]| {
            let shares = model.shares.with_new(|_, count| wanted[count as usize], new.twin);
            let runs = |facing| Brought { placed: &placed, facing, terms: Terms::LIKELIEST }.runs(&shares, side);
            -facings.iter().map(runs).sum::<f64>()
        };
        best_parts(custom.on(side), saved)
    }))
}

/// One state of the count after the other, twice over: what helps in one hardly depends on the others.
fn best_parts(custom: &[f64; 4], saved: impl Fn(&[f64; 4]) -> f64) -> [f64; 4] {
    let mut best = [0.0; 4];
    let mut most = saved(&best);
    for _ in 0..2 {
        for count in Count::ALL {
            for part in PARTS {
                let mut tried = best;
                tried[count as usize] = part * custom[count as usize];
                let gain = saved(&tried);
                if gain > most {
                    (best, most) = (tried, gain);
                }
            }
        }
    }
    best
}

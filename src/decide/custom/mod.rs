//! Custom: what pitchers with such an arsenal throw, by side of hitter and state of the count, with the athlete's own
//! throws on top. What the hitter model thinks of it is not asked here; [`super::leaning`] does.
//!
//! # Formula
//! 1. Custom: share in proportion to part x sum over families of likeness x exp(u), u by family, side and state of the
//!    count (`table`), part from the look-alikes (`crowd`).
//! 2. Own throws: share in proportion to custom x r, r = (K e + n) / ((K + N) e), e the custom over all counts of this
//!    side, n the throws against this side, N their sum.
//! 3. Band: the side's shares follow a Dirichlet law with K e, so each share a beta law.
//!
//! K = [`CUSTOM_THROWS`] says how many throws custom is worth.

mod crowd;
mod own;
mod table;

pub use own::OwnUse;

use statrs::distribution::{Beta, ContinuousCDF};

use crate::athlete::natural::Likeness;
use crate::athlete::profile::PerSide;
use crate::ball::Shape;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;

use super::shares::Shares;
use crowd::Crowd;

/// How many throws against a side custom is worth against the athlete's own, and how firmly real pitchers keep to it: the
/// number with which half of a real pitcher's throws best foretell the other half (league day, computed).
pub const CUSTOM_THROWS: f64 = 14.0;
/// Chance that a band holds the share.
pub const BAND_MASS: f64 = 0.80;

/// A pitch, as far as custom asks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Owned {
    /// What it does.
    pub shape: Shape,
    /// Which families it is like.
    pub likeness: Likeness,
}

/// What is customary with an arsenal, and what its owner throws.
#[derive(Debug, Clone, PartialEq)]
pub struct Custom {
    arsenal: Vec<Owned>,
    crowd: Crowd,
    customary: Shares,
    shares: Shares,
    /// Logarithm of how much more often than customary each pitch is thrown; 0 where it is not known.
    habits: PerSide<Vec<f64>>,
}

impl Custom {
    /// For an arsenal and what is known of its owner's use.
    pub fn of(arsenal: Vec<Owned>, own: &OwnUse) -> Self {
        let crowd = Crowd::of(arsenal.iter().map(|pitch| pitch.shape).collect());
        let customary = customary(&arsenal, &crowd);
        let habits = PerSide::from_fn(|side| habits(&customary.mix(side), own.on(side)));
        let shares = by_habit(&customary, &habits);
        Self { arsenal, crowd, customary, shares, habits }
    }

    /// The customary shares with the athlete's own throws counted in; without any, the customary shares.
    pub fn shares(&self) -> &Shares {
        &self.shares
    }

    /// The customary share of a pitch against a side, with the ends between which [`BAND_MASS`] of pitchers with such an
    /// arsenal have theirs.
    pub fn band(&self, side: Side, pitch: usize) -> Estimate {
        let shares = self.customary.mix(side);
        let (own, tail) = (shares[pitch], (1.0 - BAND_MASS) / 2.0);
        match Beta::new(CUSTOM_THROWS * own, CUSTOM_THROWS * (1.0 - own)) {
            Ok(law) => Estimate { value: own, low: law.inverse_cdf(tail), high: law.inverse_cdf(1.0 - tail) },
            // The only pitch of an arsenal is thrown always.
            Err(_) => Estimate { value: own, low: own, high: own },
        }
    }

    /// The shares when one more pitch is fully the athlete's: custom of the larger arsenal with the habits there are. The
    /// new pitch stands last; it has the habit of a pitch it resembles.
    pub fn shares_with(&self, new: Owned) -> Shares {
        let arsenal = [self.arsenal.as_slice(), &[new]].concat();
        let crowd = Crowd::of(arsenal.iter().map(|pitch| pitch.shape).collect());
        let habits = PerSide::from_fn(|side| {
            let known = self.habits.on(side);
            [known.as_slice(), &[self.crowd.carried_to(new.shape, known)]].concat()
        });
        by_habit(&customary(&arsenal, &crowd), &habits)
    }
}

fn customary(arsenal: &[Owned], crowd: &Crowd) -> Shares {
    let parts = crowd.parts();
    Shares::of_weights(|side, count| {
        arsenal.iter().zip(&parts).map(|(pitch, part)| part * table::weight(&pitch.likeness, side, count)).collect()
    })
}

fn habits(customary: &[f64], own: Option<&[f64]>) -> Vec<f64> {
    let own = own.unwrap_or_default();
    let all = CUSTOM_THROWS + own.iter().sum::<f64>();
    let habit = |(share, thrown): (&f64, &f64)| ((CUSTOM_THROWS * share + thrown) / (all * share)).ln();
    customary.iter().zip(own.iter().chain(std::iter::repeat(&0.0))).map(habit).collect()
}

fn by_habit(custom: &Shares, habits: &PerSide<Vec<f64>>) -> Shares {
    Shares::of_weights(|side, count| {
        custom.at(side, count).iter().zip(habits.on(side)).map(|(share, habit)| share * habit.exp()).collect()
    })
}

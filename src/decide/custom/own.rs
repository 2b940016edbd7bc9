//! How often the athlete has thrown each pitch, as far as it is known.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;

/// Throws of each pitch against each side of hitter, in the order of the arsenal; nothing where it is not known. They
/// need not be whole: shares of an effective number of throws do as well.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct OwnUse {
    throws: PerSide<Option<Vec<f64>>>,
}

impl OwnUse {
    /// From counted throws; a side with none is not known.
    pub fn from_counts(counts: &PerSide<Option<Vec<f64>>>) -> Self {
        let known = |side: Side| counts.on(side).clone().filter(|throws| throws.iter().sum::<f64>() > 0.0);
        Self { throws: PerSide::from_fn(known) }
    }

    /// From shares that stand for `effective` throws on each side.
    pub fn from_shares(shares: &PerSide<Option<Vec<f64>>>, effective: PerSide<f64>) -> Self {
        let counts = |side: Side| {
            let total: f64 = shares.on(side).as_ref()?.iter().sum();
            let each = effective.on(side) / total;
            shares.on(side).as_ref().map(|shares| shares.iter().map(|share| share * each).collect())
        };
        Self::from_counts(&PerSide::from_fn(counts))
    }

    /// As a profile tells it: the shares of each side, for as many throws as stand behind its pitches, shared out by
    /// how often each side is faced.
    pub fn of(profile: &Profile) -> Self {
        let throws: f64 = profile.pitches.iter().map(|pitch| f64::from(pitch.throws)).sum();
        let faced = PerSide { same: 1.0 - profile.opposite_share, opposite: profile.opposite_share };
        let shares = |side: Side| profile.pitches.iter().map(|pitch| *pitch.usage.on(side)).collect();
        Self::from_shares(&PerSide::from_fn(shares), PerSide::from_fn(|side| throws * faced.on(side)))
    }

    /// Throws of each pitch against this side, when known.
    pub fn on(&self, side: Side) -> Option<&[f64]> {
        self.throws.on(side).as_deref()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_stand_for_their_effective_throws_and_nothing_stays_nothing() {
        let shares = PerSide { same: Some(vec![60.0, 40.0]), opposite: None };
        let own = OwnUse::from_shares(&shares, PerSide { same: 30.0, opposite: 30.0 });
        assert_eq!(own.on(Side::Same), Some(&[18.0, 12.0][..]));
        assert_eq!(own.on(Side::Opposite), None);
        let none = PerSide { same: Some(vec![0.0, 0.0]), opposite: Some(vec![]) };
        assert_eq!(OwnUse::from_counts(&none), OwnUse::default());
    }
}

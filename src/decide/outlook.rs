//! What an arsenal in use brings, pitch by pitch: the rates coaches speak of, each with its doubt.
//!
//! Rates are means over the states of the count a pitch is thrown in. The model spreads pitches too far apart, so what is
//! shown lies between the model's rate and the league's for such a pitch (the same shrinking as for runs); counted results
//! of the athlete's own are blended in.

use rayon::prelude::*;

use crate::athlete::profile::PerSide;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::hitter::{Chances, CountGroup};

use super::counts::Count;
use super::draws::{Draw, Terms};
use super::facing::{Facing, Placed};
use super::league::LeagueRates;
use super::model::Model;
use super::own_results::OwnResults;
use super::shares::{Outcomes, Shares};
use super::worth::Change;

/// What an arsenal brings against one side.
#[derive(Debug, Clone, PartialEq)]
pub struct SideOutlook {
    /// Which side.
    pub side: Side,
    /// By pitch, in the order of the arsenal.
    pub pitches: Vec<PitchOutlook>,
}

/// What one pitch brings against one side; chances of a pitch thrown unless told otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct PitchOutlook {
    /// Its share over all counts.
    pub share: f64,
    /// Its share in each state of the count.
    pub by_count: [f64; 4],
    /// Its rates.
    pub rates: Rates<Estimate>,
}

/// Rates of one pitch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates<T> {
    /// Swung at and missed.
    pub swing_and_miss: T,
    /// Hit, but not hard on a good line.
    pub weak_contact: T,
    /// Hit hard on a good line.
    pub solid_contact: T,
    /// Not swung at.
    pub take: T,
    /// A strike: called, missed or hit.
    pub strike: T,
    /// Swings at pitches off the zone, of those pitches.
    pub chase: T,
    /// Misses of swings.
    pub miss_per_swing: T,
}

impl<T> Rates<T> {
    /// Every rate made by asking `make` for its place.
    pub fn from_fn(mut make: impl FnMut(fn(&Rates<f64>) -> f64) -> T) -> Self {
        Self {
            swing_and_miss: make(|r| r.swing_and_miss),
            weak_contact: make(|r| r.weak_contact),
            solid_contact: make(|r| r.solid_contact),
            take: make(|r| r.take),
            strike: make(|r| r.strike),
            chase: make(|r| r.chase),
            miss_per_swing: make(|r| r.miss_per_swing),
        }
    }
}

impl Rates<f64> {
    /// Of a pitch thrown as often in each state of the count as `by_count` says.
    pub fn of(chances: &[Chances; 5], by_count: &[f64; 4]) -> Self {
        let thrown = |count: Count| count.weight() * by_count[count as usize];
        let total: f64 = Count::ALL.into_iter().map(thrown).sum();
        let mean = |read: fn(&Chances) -> f64| {
            let in_count = |count: Count| {
                let groups = count.groups().iter();
                thrown(count) * groups.map(|&(group, weight)| weight * read(&chances[group as usize])).sum::<f64>()
            };
            if total > 0.0 {
                Count::ALL.into_iter().map(in_count).sum::<f64>() / total
            } else {
                read(&chances[CountGroup::Other as usize])
            }
        };
        let (swing, contact, solid) = (mean(|c| c.swing), mean(|c| c.contact), mean(|c| c.solid));
        Self {
            swing_and_miss: swing - contact,
            weak_contact: contact - solid,
            solid_contact: solid,
            take: 1.0 - swing,
            strike: swing + mean(|c| c.called_strike),
            chase: mean(|c| c.swing_outside) / mean(|c| c.outside),
            miss_per_swing: (swing - contact) / swing,
        }
    }
}

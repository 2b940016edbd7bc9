//! What an arsenal in use brings, pitch by pitch: the rates coaches speak of, each with its doubt.
//!
//! Rates are means over the states of the count a pitch is thrown in, over both readings of the hitter, with counted
//! results of the athlete's own blended in.

use rayon::prelude::*;

use crate::athlete::profile::PerSide;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::hitter::Chances;

use super::counts::Count;
use super::draws::{Draw, Terms};
use super::facing::{Facing, Placed, Spots};
use super::model::Model;
use super::shares::{Shares, on_average, runs_of_pitch};
use super::worth::{Brought, Change};

/// What an arsenal brings against one side, by pitch, in the order of the arsenal.
#[derive(Debug, Clone, PartialEq)]
pub struct SideOutlook {
    /// By pitch.
    pub pitches: Vec<PitchOutlook>,
    /// Runs the hitters gain per 100 pitches, thrown in these shares.
    pub runs_per_100: Estimate,
}

/// What one pitch brings against one side.
#[derive(Debug, Clone, PartialEq)]
pub struct PitchOutlook {
    /// Its share over all counts.
    pub share: f64,
    /// Its share in each state of the count.
    pub by_count: [f64; 4],
    /// Where it goes.
    pub spots: Spots,
    /// Its rates; chances of a pitch thrown unless told otherwise.
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
    /// Runs the hitters gain per 100 of it.
    pub runs_per_100: T,
}

impl Rates<f64> {
    fn of(chances: &[Chances; 5], shares: &Shares, side: Side, pitch: usize) -> Self {
        let all = on_average(chances, shares, side, pitch);
        let per = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
        Self {
            swing_and_miss: all.miss(),
            weak_contact: all.contact - all.solid,
            solid_contact: all.solid,
            take: 1.0 - all.swing,
            strike: 1.0 - all.ball(),
            chase: per(all.swing_outside, all.outside),
            miss_per_swing: per(all.miss(), all.swing),
            runs_per_100: mean_runs(chances, shares, side, pitch),
        }
    }

    fn midpoint(one: &Self, other: &Self) -> Self {
        let middle = |read: fn(&Self) -> f64| f64::midpoint(read(one), read(other));
        Self {
            swing_and_miss: middle(|r| r.swing_and_miss),
            weak_contact: middle(|r| r.weak_contact),
            solid_contact: middle(|r| r.solid_contact),
            take: middle(|r| r.take),
            strike: middle(|r| r.strike),
            chase: middle(|r| r.chase),
            miss_per_swing: middle(|r| r.miss_per_swing),
            runs_per_100: middle(|r| r.runs_per_100),
        }
    }
}

fn mean_runs(chances: &[Chances; 5], shares: &Shares, side: Side, pitch: usize) -> f64 {
    let thrown = |count: Count| count.weight() * shares.at(side, count)[pitch];
    let total: f64 = Count::ALL.into_iter().map(thrown).sum();
    let weight = |count: Count| if total > 0.0 { thrown(count) / total } else { count.weight() };
    Count::ALL.into_iter().map(|count| weight(count) * runs_of_pitch(chances, count)).sum()
}

impl Rates<Estimate> {
    fn from_draws(best: &Rates<f64>, drawn: &[&Rates<f64>]) -> Self {
        let estimate = |read: fn(&Rates<f64>) -> f64| {
            Estimate::from_draws(read(best), &drawn.iter().map(|rates| read(rates)).collect::<Vec<f64>>())
        };
        Self {
            swing_and_miss: estimate(|r| r.swing_and_miss),
            weak_contact: estimate(|r| r.weak_contact),
            solid_contact: estimate(|r| r.solid_contact),
            take: estimate(|r| r.take),
            strike: estimate(|r| r.strike),
            chase: estimate(|r| r.chase),
            miss_per_swing: estimate(|r| r.miss_per_swing),
            runs_per_100: estimate(|r| r.runs_per_100),
        }
    }
}

/// What today's arsenal brings in `shares`.
pub fn of_today(model: &Model, shares: &Shares) -> PerSide<SideOutlook> {
    let owned = super::worth::owned(model);
    of_change(model, &Change { pitches: owned, shares: shares.clone(), novelty: 0.0 })
}

/// What a changed arsenal brings in its shares.
pub fn of_change(model: &Model, change: &Change) -> PerSide<SideOutlook> {
    let placed = change.placed(model);
    let facings = change.facings(model, &placed);
    let best = [0, 1].map(|reading: usize| rates(&placed, &facings[reading], &change.shares, &[]));
    let drawn: Vec<PerSide<Vec<Rates<f64>>>> =
        model.draws.par_iter().map(|draw| rates_in(draw, model, change)).collect();
    PerSide::from_fn(|side| {
        let mix = change.shares.mix(side);
        let both = best[0].on(side).iter().zip(best[1].on(side));
        let middle: Vec<Rates<f64>> = both.map(|(one, other)| Rates::midpoint(one, other)).collect();
        let pitch = |(pitch, placed): (usize, &Placed)| {
            let drawn: Vec<&Rates<f64>> = drawn.iter().map(|drawn| &drawn.on(side)[pitch]).collect();
            PitchOutlook {
                share: mix[pitch],
                by_count: Count::ALL.map(|count| change.shares.at(side, count)[pitch]),
                spots: *placed.spots.on(side),
                rates: Rates::from_draws(&middle[pitch], &drawn),
            }
        };
        let in_draws: Vec<f64> = drawn.iter().map(|drawn| runs_of_mix(drawn.on(side), &mix)).collect();
        SideOutlook {
            pitches: placed.iter().enumerate().map(pitch).collect(),
            runs_per_100: Estimate::from_draws(runs_of_mix(&middle, &mix), &in_draws),
        }
    })
}

fn runs_of_mix(pitches: &[Rates<f64>], mix: &[f64]) -> f64 {
    pitches.iter().zip(mix).map(|(rates, share)| share * rates.runs_per_100).sum()
}

fn rates_in(draw: &Draw, model: &Model, change: &Change) -> PerSide<Vec<Rates<f64>>> {
    let placed = change.placed_in(draw, model);
    let facing = Facing::new(&draw.hitter, &placed, model.air);
    rates(&placed, &facing, &change.shares, &draw.luck)
}

fn rates(placed: &[Placed], facing: &Facing, shares: &Shares, luck: &[PerSide<[f64; 3]>]) -> PerSide<Vec<Rates<f64>>> {
    let brought = Brought { placed, facing, terms: Terms::LIKELIEST };
    PerSide::from_fn(|side| {
        let outcomes = brought.outcomes(side, &shares.mix(side), luck);
        outcomes.iter().enumerate().map(|(pitch, chances)| Rates::of(chances, shares, side, pitch)).collect()
    })
}

//! How often each pitch is thrown, by side and state of the count, and what an arsenal used so brings.

use crate::athlete::profile::PerSide;
use crate::base::geometry::Side;
use crate::hitter::{Chances, CountGroup};

use super::counts::Count;
use super::runs::runs;

/// Shares of every pitch in every state of the count, against both sides. Each list sums to one.
#[derive(Debug, Clone, PartialEq)]
pub struct Shares(PerSide<[Vec<f64>; 4]>);

impl Shares {
    /// From the shares in each state of the count.
    pub fn from_fn(mut at: impl FnMut(Side, Count) -> Vec<f64>) -> Self {
        Self(PerSide::from_fn(|side| Count::ALL.map(|count| at(side, count))))
    }

    /// From positive weights, which need not sum to one.
    pub fn of_weights(mut weights: impl FnMut(Side, Count) -> Vec<f64>) -> Self {
        Self::from_fn(|side, count| {
            let weights = weights(side, count);
            let total: f64 = weights.iter().sum();
            weights.iter().map(|weight| weight / total).collect()
        })
    }

    /// Shares in one state of the count.
    pub fn at(&self, side: Side, count: Count) -> &[f64] {
        &self.0.on(side)[count as usize]
    }

    /// Shares over all counts, each as often as it comes up: what hitters know.
    pub fn mix(&self, side: Side) -> Vec<f64> {
        let pitches = self.0.on(side)[0].len();
        let share = |pitch: usize| Count::ALL.iter().map(|count| count.weight() * self.at(side, *count)[pitch]).sum();
        (0..pitches).map(share).collect()
    }

    /// How many pitches there are.
    pub fn pitches(&self) -> usize {
        self.0.same[0].len()
    }

    /// The same shares with a new pitch, last, thrown `wanted` of the time. What it takes comes first from the pitch it is
    /// most like, by `likeness` (1: only from that one, which is a twin), the rest from all in proportion.
    #[must_use]
    pub fn with_new(&self, wanted: impl Fn(Side, Count) -> f64, twin: Twin) -> Self {
        Self::from_fn(|side, count| with_share(self.at(side, count), wanted(side, count), twin))
    }

    /// `factor` of the way from these shares to `changed`, which may hold one pitch more, last.
    #[must_use]
    pub fn toward(&self, changed: &Self, factor: f64) -> Self {
        if self.pitches() > changed.pitches() {
            return changed.clone();
        }
        Self::from_fn(|side, count| {
            let from = self.at(side, count).iter().chain(&[0.0]);
            let moved = from.zip(changed.at(side, count)).map(|(a, b)| (a + factor * (b - a)).max(0.0));
            let moved: Vec<f64> = moved.collect();
            let total: f64 = moved.iter().sum();
            moved.iter().map(|share| share / total).collect()
        })
    }

    /// The same shares without one pitch, the others in proportion.
    #[must_use]
    pub fn without(&self, pitch: usize) -> Self {
        Self::from_fn(|side, count| {
            let mut shares = self.at(side, count).to_vec();
            let left = 1.0 - shares.remove(pitch);
            let even = 1.0 / shares.len().max(1) as f64;
            for share in &mut shares {
                *share = if left > 0.0 { *share / left } else { even };
            }
            shares
        })
    }
}

/// The owned pitch that a new one is most like.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Twin {
    /// Which of the owned pitches.
    pub pitch: usize,
    /// How alike, 0 to 1: 1 is the same pitch.
    pub likeness: f64,
}

fn with_share(shares: &[f64], wanted: f64, twin: Twin) -> Vec<f64> {
    let mut left = shares.to_vec();
    let from_twin = (twin.likeness * wanted).min(left[twin.pitch]);
    left[twin.pitch] -= from_twin;
    let total: f64 = left.iter().sum();
    let kept = if total > 0.0 { 1.0 - (wanted - from_twin) / total } else { 0.0 };
    for share in &mut left {
        *share *= kept;
    }
    left.push(wanted);
    left
}

/// What comes of every pitch against one side, by the hitter's state of the count.
pub type Outcomes = Vec<[Chances; 5]>;

/// Runs per 100 pitches thrown in `count` that one pitch brings the hitters.
pub fn runs_of_pitch(chances: &[Chances; 5], count: Count) -> f64 {
    let in_group = |(group, weight): (CountGroup, f64)| weight * runs(&chances[group as usize], group);
    100.0 * count.groups().iter().copied().map(in_group).sum::<f64>()
}

/// What comes of one pitch on average, thrown as often in each state of the count as `shares` says.
pub fn on_average(chances: &[Chances; 5], shares: &Shares, side: Side, pitch: usize) -> Chances {
    let thrown = |count: Count| count.weight() * shares.at(side, count)[pitch];
    let total: f64 = Count::ALL.into_iter().map(thrown).sum();
    let weight = |count: Count| if total > 0.0 { thrown(count) / total } else { count.weight() };
    let in_groups = Count::ALL.into_iter().flat_map(|count| {
        count.groups().iter().map(move |&(group, share)| (weight(count) * share, &chances[group as usize]))
    });
    Chances::mean(in_groups)
}

/// Runs per 100 pitches that an arsenal thrown in these shares brings hitters on `side`.
pub fn runs_of_arsenal(outcomes: &Outcomes, shares: &Shares, side: Side) -> f64 {
    let in_count = |count: Count| {
        let each = outcomes.iter().zip(shares.at(side, count));
        count.weight() * each.map(|(chances, share)| share * runs_of_pitch(chances, count)).sum::<f64>()
    };
    Count::ALL.into_iter().map(in_count).sum()
}

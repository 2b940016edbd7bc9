//! A Metropolis walk through the box of hitters.
//!
//! The likelihood of the evidence is multinomial in the five classes of every cell. The model is
//! known to be wrong in detail, so the likelihood is tempered: its logarithm is divided by the
//! dispersion, the deviance at the best point per degree of freedom (P. `McCullagh` and J. A. Nelder,
//! *Generalized Linear Models* (1989), section 4.5, from memory). One athlete's pitches are little to
//! go by, so the published values are the prior (`Parameter::prior`), inside the box.

use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256PlusPlus;

use crate::base::stats::normal_quantile;
use crate::former::hitter::{FreeParameters, PARAMETERS};

use super::Evidence;
use super::evidence::{CLASSES, class_chances};

/// The outcome of a walk.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// The likeliest point met, prior and tempered evidence together.
    pub best: FreeParameters,
    /// Points that the evidence likes about equally, evenly thinned from the walk.
    pub ensemble: Vec<FreeParameters>,
    /// Deviance per degree of freedom at the best point; 1 would be a model without fault.
    pub dispersion: f64,
    /// Share of proposals taken.
    pub accepted: f64,
}

/// Steps looked at for the best point before the ensemble is gathered, and while it is.
const SEARCH: usize = 4000;
const GATHER: usize = 9000;
/// Step, as a share of a parameter's range: wide while searching, narrower while gathering.
const WIDE: f64 = 0.10;
const NARROW: f64 = 0.14;

/// Walks through the box; `keep` says which games count. The same seed walks the same way.
pub fn fit(evidence: &Evidence, keep: impl Fn(usize) -> bool + Copy, members: usize, seed: u64) -> Fit {
    let mut chance = Xoshiro256PlusPlus::seed_from_u64(seed);
    let likelihood = |point: &FreeParameters| log_likelihood(evidence, point, keep);
    let start = FreeParameters::start();
    // Twice: the first walk tells the dispersion, the second looks for the best point under it.
    let rough = search(start, 1.0, &mut chance, likelihood);
    let dispersion = dispersion(evidence, rough.best_value, keep).max(1.0);
    let found = search(rough.best, dispersion, &mut chance, likelihood);
    let mut walk = Walk { here: found.best, value: found.best_value, ..found };
    let mut taken = 0;
    let every = GATHER / members.max(1);
    let mut ensemble = Vec::with_capacity(members);
    for step in 0..every * members {
        taken += usize::from(walk.step(&mut chance, NARROW, dispersion, likelihood));
        if step % every == every - 1 {
            ensemble.push(walk.here);
        }
    }
    Fit { best: walk.best, ensemble, dispersion, accepted: taken as f64 / (every * members).max(1) as f64 }
}

/// A walk that keeps an eye on the best point.
fn search(
    start: FreeParameters,
    temperature: f64,
    chance: &mut Xoshiro256PlusPlus,
    likelihood: impl Fn(&FreeParameters) -> f64 + Copy,
) -> Walk {
    let value = likelihood(&start);
    let belief = value / temperature + start.log_prior();
    let mut walk = Walk { here: start, value, best: start, best_value: value, best_belief: belief };
    for _ in 0..SEARCH {
        walk.step(chance, WIDE, temperature, likelihood);
    }
    walk
}

struct Walk {
    here: FreeParameters,
    /// Log likelihood here.
    value: f64,
    best: FreeParameters,
    /// Log likelihood and tempered log posterior of the best point.
    best_value: f64,
    best_belief: f64,
}

impl Walk {
    /// Proposes a change of about three parameters and takes it or not.
    fn step(
        &mut self,
        chance: &mut Xoshiro256PlusPlus,
        size: f64,
        temperature: f64,
        likelihood: impl Fn(&FreeParameters) -> f64,
    ) -> bool {
        let mut proposal = self.here;
        for (value, parameter) in proposal.0.iter_mut().zip(PARAMETERS) {
            if chance.gen_bool(0.3) {
                let normal = normal_quantile(chance.gen_range(1e-9..1.0 - 1e-9));
                *value += size * (parameter.range.1 - parameter.range.0) * normal;
            }
        }
        let dice: f64 = chance.gen_range(1e-12..1.0);
        if !proposal.is_inside() {
            return false;
        }
        let value = likelihood(&proposal);
        let belief = value / temperature + proposal.log_prior();
        let taken = dice.ln() < belief - (self.value / temperature + self.here.log_prior());
        if taken {
            self.here = proposal;
            self.value = value;
            self.remember(belief);
        }
        taken
    }

    fn remember(&mut self, belief: f64) {
        if belief > self.best_belief {
            self.best = self.here;
            self.best_value = self.value;
            self.best_belief = belief;
        }
    }
}

/// Multinomial log likelihood of the kept games, up to a constant.
fn log_likelihood(evidence: &Evidence, point: &FreeParameters, keep: impl Fn(usize) -> bool + Copy) -> f64 {
    let expected = evidence.expected(&point.hitter());
    evidence
        .cells
        .iter()
        .zip(expected)
        .map(|(cell, rates)| {
            let chances = class_chances(&rates);
            let counts = cell.counts(keep);
            (0..CLASSES).map(|class| f64::from(counts.0[class]) * chances[class].max(1e-6).ln()).sum::<f64>()
        })
        .sum()
}

/// Deviance against the saturated model, per degree of freedom.
fn dispersion(evidence: &Evidence, best_value: f64, keep: impl Fn(usize) -> bool + Copy) -> f64 {
    let saturated: f64 = evidence
        .cells
        .iter()
        .map(|cell| {
            let counts = cell.counts(keep);
            let total = f64::from(counts.pitches()).max(1.0);
            let term = |count: u32| if count == 0 { 0.0 } else { f64::from(count) * (f64::from(count) / total).ln() };
            counts.0.into_iter().map(term).sum::<f64>()
        })
        .sum();
    let observations = evidence.cells.len() * (CLASSES - 1);
    2.0 * (saturated - best_value) / (observations as f64 - PARAMETERS.len() as f64).max(1.0)
}

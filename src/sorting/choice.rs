//! How many pitches there are.
//!
//! For each count from one to eight, linfa fits a mixture of normal groups on standardised numbers
//! from several seeds, and the best by our own likelihood is kept. The count is chosen by the
//! **integrated completed likelihood** (C. Biernacki, G. Celeux and G. Govaert, IEEE Trans. Pattern
//! Anal. Mach. Intell. 22 (2000) 719, from memory): the Bayesian criterion plus twice the entropy
//! of the memberships. Cutting one pitch in half leaves every throw undecided between the halves,
//! so it costs entropy; the Bayesian criterion alone does not mind. The price: two true pitches that
//! overlap so far that most throws could be either are counted as one, which is what a hitter sees too.

use linfa::prelude::*;
use linfa_clustering::GaussianMixtureModel;
use ndarray::Array2;
use rand::SeedableRng;
use rand_xoshiro::Xoshiro256Plus;
use rayon::prelude::*;

use super::mixture::{Look, MOST_GROUPS, Mixture, Part};

/// Starts for each count.
const SEEDS: u64 = 10;
/// Starts that must have found the same best place for the search to end early, and the difference
/// in log-likelihood within which places are the same.
const AGREEING: usize = 3;
const SAME_PLACE: f64 = 1.0;
/// Throws a group must have.
const SMALLEST_GROUP: f64 = 6.0;
/// As linfa needs it: tight, with room to get there.
const TOLERANCE: f64 = 1e-4;
const MOST_ITERATIONS: u64 = 300;
/// Parameters of one group: weight, three means, six covariances.
const PARAMETERS: f64 = 10.0;

/// Counts beyond the best that are tried before giving up.
const PATIENCE: usize = 2;

type Standardised = DatasetBase<Array2<f64>, ndarray::Array1<()>>;

/// One count of groups and how well it does; lower is better.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Candidate {
    /// Groups.
    pub groups: usize,
    /// Bayesian information criterion.
    pub bic: f64,
    /// Integrated completed likelihood, as a criterion: BIC plus twice the entropy.
    pub icl: f64,
}

/// The best mixture for the count with the lowest integrated completed likelihood, and every
/// candidate; no mixture when there are too few throws for one group.
pub(super) fn choose(looks: &[Look], most_groups: usize, seed: u64) -> (Option<Mixture>, Vec<Candidate>) {
    let Some(scale) = Scale::of(looks) else {
        return (None, Vec::new());
    };
    let data = scale.standardised(looks);
    let mut best: Vec<Scored> = Vec::new();
    for count in 1..=most_groups.min(MOST_GROUPS) {
        let Some(next) = best_of_seeds(&data, count, seed, &scale, looks) else { break };
        best.push(next);
        if has_turned(&best) {
            break;
        }
    }
    let candidates = best.iter().map(|scored| scored.candidate).collect();
    let chosen = best.into_iter().min_by(|a, b| a.candidate.icl.total_cmp(&b.candidate.icl));
    (chosen.map(|scored| scored.mixture), candidates)
}

/// Whether the last [`PATIENCE`] counts all did worse than one before them.
fn has_turned(best: &[Scored]) -> bool {
    let lowest = (0..best.len()).min_by(|&a, &b| best[a].candidate.icl.total_cmp(&best[b].candidate.icl));
    lowest.is_some_and(|at| at + PATIENCE < best.len())
}

/// The best fit of one count over the seeds; nothing when no seed gives groups of fair size.
/// Seeds go in pairs of rounds: when half of them have found the same best place, the rest would too.
fn best_of_seeds(data: &Standardised, count: usize, seed: u64, scale: &Scale, looks: &[Look]) -> Option<Scored> {
    let mut fits: Vec<Scored> = Vec::new();
    for round in [0..SEEDS / 2, SEEDS / 2..SEEDS] {
        let more: Vec<Mixture> =
            round.into_par_iter().filter_map(|s| fit(data, count, seed.wrapping_add(s), scale)).collect();
        fits.extend(more.into_iter().map(|mixture| scored(mixture, looks)));
        let best = fits.iter().map(|fit| fit.log_likelihood).fold(f64::NEG_INFINITY, f64::max);
        let agreeing = fits.iter().filter(|fit| best - fit.log_likelihood < SAME_PLACE).count();
        if count == 1 || agreeing >= AGREEING {
            break;
        }
    }
    fits.into_iter().max_by(|a, b| a.log_likelihood.total_cmp(&b.log_likelihood))
}

#[derive(Debug, Clone)]
struct Scored {
    mixture: Mixture,
    log_likelihood: f64,
    candidate: Candidate,
}

fn scored(mixture: Mixture, looks: &[Look]) -> Scored {
    let (mut log_likelihood, mut entropy) = (0.0, 0.0);
    for look in looks {
        let membership = mixture.membership_for_sure(look);
        log_likelihood += membership.log_density;
        entropy -= membership.chances.iter().filter(|c| **c > 0.0).map(|c| c * c.ln()).sum::<f64>();
    }
    let groups = mixture.parts.len();
    let bic = (PARAMETERS * groups as f64 - 1.0) * (looks.len() as f64).ln() - 2.0 * log_likelihood;
    Scored { mixture, log_likelihood, candidate: Candidate { groups, bic, icl: bic + 2.0 * entropy } }
}

/// One linfa fit, brought back to mph and inches; nothing when it failed or made a tiny group.
fn fit(data: &Standardised, groups: usize, seed: u64, scale: &Scale) -> Option<Mixture> {
    let model = GaussianMixtureModel::params_with_rng(groups, Xoshiro256Plus::seed_from_u64(seed))
        .n_runs(1)
        .tolerance(TOLERANCE)
        .max_n_iterations(MOST_ITERATIONS)
        .fit(data)
        .ok()?;
    let throws = data.nsamples() as f64;
    let parts: Vec<Part> = (0..groups)
        .map(|k| {
            let covariance = std::array::from_fn(|row| {
                std::array::from_fn(|col| model.covariances()[[k, row, col]] * scale.sd[row] * scale.sd[col])
            });
            let mean = std::array::from_fn(|d| scale.mean[d] + scale.sd[d] * model.means()[[k, d]]);
            Part::new(model.weights()[k], mean, covariance)
        })
        .collect();
    let sound = |part: &Part| part.weight * throws >= SMALLEST_GROUP && part.mean.iter().all(|m| m.is_finite());
    parts.iter().all(sound).then_some(Mixture { parts })
}

/// Means and standard deviations, to standardise with and come back.
#[derive(Debug, Clone, Copy)]
struct Scale {
    mean: Look,
    sd: Look,
}

impl Scale {
    /// Nothing for fewer throws than one group needs. A number that never varies gets a tiny spread.
    fn of(looks: &[Look]) -> Option<Self> {
        let n = looks.len() as f64;
        if n < SMALLEST_GROUP {
            return None;
        }
        let mean: Look = std::array::from_fn(|d| looks.iter().map(|l| l[d]).sum::<f64>() / n);
        let variance = |d: usize| looks.iter().map(|l| (l[d] - mean[d]).powi(2)).sum::<f64>() / n;
        Some(Self { mean, sd: std::array::from_fn(|d| variance(d).sqrt().max(1e-3)) })
    }

    fn standardised(&self, looks: &[Look]) -> Standardised {
        let rows = Array2::from_shape_fn((looks.len(), 3), |(i, d)| (looks[i][d] - self.mean[d]) / self.sd[d]);
        DatasetBase::from(rows)
    }
}

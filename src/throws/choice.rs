//! How many pitches there are.
//!
//! For each count from one up, linfa fits a mixture of normal groups on standardised numbers from
//! several seeds. Fits are compared by the **integrated completed likelihood** of the division they
//! make ([`super::evidence`]), within a count and between counts. Unlike the Bayesian criterion,
//! which is shown beside it, it does not cut one pitch in half: every throw between the halves would
//! have to be explained. The price: two true pitches that overlap so far that most throws could be
//! either are counted as one.

use linfa::prelude::*;
use linfa_clustering::GaussianMixtureModel;
use ndarray::Array2;
use rand::SeedableRng;
use rand_xoshiro::Xoshiro256Plus;
use rayon::prelude::*;

use super::evidence::log_evidence;
use super::mixture::{Look, MOST_GROUPS, Mixture, Part};

/// Starts for each count, tried in two halves.
const SEEDS: u64 = 10;
/// Starts that must have found the same best place for the search to end early, the difference in
/// criterion within which places are the same, and the difference that other starts do not make up.
const AGREEING: usize = 3;
const SAME_PLACE: f64 = 2.0;
const FAR_BEHIND: f64 = 20.0;
/// Throws without which nothing is sorted, and throws a group must have.
const FEWEST_THROWS: usize = 6;
const SMALLEST_GROUP: f64 = 3.0;
/// As linfa needs it: tight, with room to get there.
const TOLERANCE: f64 = 1e-4;
const MOST_ITERATIONS: u64 = 300;
/// Parameters of one group: weight, three means, six covariances.
const PARAMETERS: f64 = 10.0;

/// Counts beyond the best that are tried before giving up.
const PATIENCE: usize = 2;

type Standardised = DatasetBase<Array2<f64>, ndarray::Array1<()>>;

/// How hard to look for the best start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Care {
    /// Half of the starts: for groups that only serve to bring the days onto one zero.
    Quick,
    /// All starts, unless half of them agree.
    Full,
}

/// One count of groups and how well it does; lower is better.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Candidate {
    /// Groups.
    pub groups: usize,
    /// Bayesian information criterion.
    pub bic: f64,
    /// Integrated completed likelihood, times minus two like the other.
    pub icl: f64,
}

/// The best mixture for the count with the lowest integrated completed likelihood, and every
/// candidate; no mixture when there are too few throws for one group.
pub(super) fn choose(looks: &[Look], most_groups: usize, seed: u64, care: Care) -> (Option<Mixture>, Vec<Candidate>) {
    let Some(scale) = Scale::of(looks) else {
        return (None, Vec::new());
    };
    let search = Search { looks, data: scale.standardised(looks), scale, seed, care };
    let mut best: Vec<Scored> = Vec::new();
    for count in 1..=most_groups.min(MOST_GROUPS) {
        best.extend(search.best_of_count(count, lowest(&best).map(|lowest| lowest.icl)));
        if lowest(&best).is_none_or(|lowest| lowest.groups + PATIENCE <= count) {
            break;
        }
    }
    let candidates = best.iter().map(|scored| scored.candidate).collect();
    let chosen = best.into_iter().min_by(|a, b| a.candidate.icl.total_cmp(&b.candidate.icl));
    (chosen.map(|scored| scored.mixture), candidates)
}

fn lowest(best: &[Scored]) -> Option<Candidate> {
    best.iter().map(|scored| scored.candidate).min_by(|a, b| a.icl.total_cmp(&b.icl))
}

struct Search<'a> {
    looks: &'a [Look],
    data: Standardised,
    scale: Scale,
    seed: u64,
    care: Care,
}

impl Search<'_> {
    /// The best fit of one count over the starts; nothing when none gives groups of fair size.
    /// The second half of the starts is spared when the first half agrees, or is far from `to_beat`.
    fn best_of_count(&self, count: usize, to_beat: Option<f64>) -> Option<Scored> {
        let mut fits: Vec<Scored> = Vec::new();
        for starts in [0..SEEDS / 2, SEEDS / 2..SEEDS] {
            let more: Vec<Mixture> = starts.into_par_iter().filter_map(|start| self.fit(count, start)).collect();
            fits.extend(more.into_iter().map(|mixture| scored(mixture, self.looks)));
            let best = fits.iter().map(|fit| fit.candidate.icl).fold(f64::INFINITY, f64::min);
            let agreeing = fits.iter().filter(|fit| fit.candidate.icl - best < SAME_PLACE).count();
            let is_behind = best.is_finite() && to_beat.is_some_and(|to_beat| best > to_beat + FAR_BEHIND);
            if count == 1 || self.care == Care::Quick || agreeing >= AGREEING || is_behind {
                break;
            }
        }
        fits.into_iter().min_by(|a, b| a.candidate.icl.total_cmp(&b.candidate.icl))
    }

    /// One linfa fit, brought back to mph and inches; nothing when it failed or made a tiny group.
    fn fit(&self, groups: usize, start: u64) -> Option<Mixture> {
        let rng = Xoshiro256Plus::seed_from_u64(self.seed.wrapping_add(start));
        let model = GaussianMixtureModel::params_with_rng(groups, rng)
            .n_runs(1)
            .tolerance(TOLERANCE)
            .max_n_iterations(MOST_ITERATIONS)
            .fit(&self.data)
            .ok()?;
        let throws = self.looks.len() as f64;
        let parts: Vec<Part> = (0..groups).map(|k| self.scale.part(&model, k)).collect();
        let is_sound = |part: &Part| part.weight * throws >= SMALLEST_GROUP && part.mean.iter().all(|m| m.is_finite());
        parts.iter().all(is_sound).then_some(Mixture { parts })
    }
}

#[derive(Debug, Clone)]
struct Scored {
    mixture: Mixture,
    candidate: Candidate,
}

fn scored(mixture: Mixture, looks: &[Look]) -> Scored {
    let memberships: Vec<_> = looks.iter().map(|look| mixture.membership_for_sure(look)).collect();
    let log_likelihood: f64 = memberships.iter().map(|membership| membership.log_density).sum();
    let group_of: Vec<usize> = memberships.iter().map(|membership| membership.best().0).collect();
    let groups = mixture.parts.len();
    let bic = (PARAMETERS * groups as f64 - 1.0) * (looks.len() as f64).ln() - 2.0 * log_likelihood;
    let icl = -2.0 * log_evidence(looks, &group_of, groups);
    Scored { mixture, candidate: Candidate { groups, bic, icl } }
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
        if looks.len() < FEWEST_THROWS {
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

    /// A group of a standardised model in mph and inches.
    fn part(&self, model: &GaussianMixtureModel<f64>, k: usize) -> Part {
        let covariance = std::array::from_fn(|row| {
            std::array::from_fn(|col| model.covariances()[[k, row, col]] * self.sd[row] * self.sd[col])
        });
        let mean = std::array::from_fn(|d| self.mean[d] + self.sd[d] * model.means()[[k, d]]);
        Part::new(model.weights()[k], mean, covariance)
    }
}

//! Who gains most: for each athlete the new pitch that would be worth the most.

use std::num::NonZeroUsize;

use crate::athlete::eligibility::Eligibility;
use crate::athlete::profile::Profile;
use crate::ball::Family;

use super::advice::{Candidate, FAMILIES};
use super::model::Model;
use super::new_pitch::Command;
use super::verdict::Verdict;

/// One athlete's place.
#[derive(Debug, Clone)]
pub struct Standing {
    /// The best new pitch that nothing forbids.
    pub best: Option<Candidate>,
    /// What to do about it.
    pub verdict: Verdict,
}

impl Standing {
    /// The standing of `profile` in `draws` draws.
    pub fn of(profile: &Profile, command: Command, draws: NonZeroUsize, seed: u64) -> Self {
        let model = Model::new(profile, draws, seed);
        let throws = |family: Family| profile.pitches.iter().any(|pitch| pitch.family == family);
        let free = |family: &Family| !throws(*family) && Eligibility::of(profile, *family).bar().is_none();
        let families: Vec<Family> = FAMILIES.into_iter().filter(free).collect();
        let best =
            Candidate::all_of(&model, &families, command).into_iter().max_by(|a, b| a.gain().total_cmp(&b.gain()));
        let verdict = best.as_ref().map_or(Verdict::NotNow, |best| best.verdict(profile));
        Self { best, verdict }
    }

    /// What the best new pitch saves, runs per 100 pitches; nothing without one.
    pub fn worth(&self) -> f64 {
        self.best.as_ref().map_or(0.0, Candidate::gain)
    }
}

/// The order of `standings`, best first: places in the given slice. Equal worths keep the order they came in.
pub fn ranking(standings: &[Standing]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..standings.len()).collect();
    order.sort_by(|&a, &b| standings[b].worth().total_cmp(&standings[a].worth()));
    order
}

//! A staff ranked: for each athlete the new pitch that would be worth the most to him.
//!
//! Every family he does not throw yet is searched; the best that nothing forbids stands for him.
//! The ranking is by that worth; equal worths keep the order they came in.

use rayon::prelude::*;

use crate::advice::{FAMILIES, Question, Verdict, bar, verdict_on};
use crate::evaluate::{Stage, Today, draws, worlds};
use crate::pitch::Family;
use crate::profile::Profile;
use crate::search::{Candidate, Command, best_of_family};

/// One athlete's place.
#[derive(Debug, Clone)]
pub struct Standing {
    /// The best new pitch that nothing forbids; nothing when none is in reach.
    pub best: Option<Candidate>,
    /// What to do about it.
    pub verdict: Verdict,
}

impl Standing {
    /// What the best new pitch is worth, runs per 100 pitches; nothing without one.
    pub fn worth(&self, command: Command) -> f64 {
        self.best.as_ref().map_or(0.0, |best| best.worth(command).overall.value)
    }
}

/// The standing of `profile`; of `question` the family is not used.
pub fn standing(profile: &Profile, question: Question) -> Standing {
    let stage = Stage::new(profile);
    let today = Today::of(&stage);
    let worlds =
        worlds(&stage, &today, draws(stage.profile.athlete.level, stage.pitches.len(), question.draws, question.seed));
    let wanted = |family: &Family| {
        bar(profile, *family).is_none() && profile.pitches.iter().all(|pitch| pitch.family != *family)
    };
    let candidates: Vec<Candidate> = FAMILIES
        .into_par_iter()
        .filter(wanted)
        .filter_map(|family| best_of_family(&stage, &today, family, &worlds).ok())
        .collect();
    let worth = |candidate: &Candidate| candidate.worth(question.command).overall.value;
    let best = candidates.into_iter().reduce(|best, next| if worth(&next) > worth(&best) { next } else { best });
    let verdict = best.as_ref().map_or(Verdict::NotNow, |best| verdict_on(profile, question, best));
    Standing { best, verdict }
}

/// The order of `standings`, best first: places in the given slice.
pub fn ranking(standings: &[Standing], command: Command) -> Vec<usize> {
    let mut order: Vec<usize> = (0..standings.len()).collect();
    order.sort_by(|&a, &b| standings[b].worth(command).total_cmp(&standings[a].worth(command)));
    order
}

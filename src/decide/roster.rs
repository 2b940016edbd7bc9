//! A staff ranked: for each athlete the new pitch that would be worth the most to him.
//!
//! Every family he does not throw yet and that nothing forbids is looked at roughly, the two most
//! promising are searched in full, and the better one is judged and stands for him: a staff takes
//! half the time and gets the same answer nearly always. The ranking is by that worth; equal worths keep
//! the order they came in.

use rayon::prelude::*;

use crate::athlete::profile::Profile;
use crate::ball::Family;
use crate::decide::advice::{FAMILIES, Question, Verdict, bar, verdict_on};
use crate::former::evaluate::{Stage, Today, draws, worlds};
use crate::former::search::{Candidate, find, promise};

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
    pub fn worth(&self) -> f64 {
        self.best.as_ref().map_or(0.0, |best| best.worth.overall.value)
    }
}

/// The standing of `profile`; of `question` the family is not used.
pub fn standing(profile: &Profile, question: Question) -> Standing {
    let stage = Stage::new(profile);
    let today = Today::of(&stage);
    let worlds =
        worlds(&stage, &today, draws(stage.profile.athlete.level, stage.pitches.len(), question.draws, question.seed));
    let found: Vec<_> = finalists(profile, &stage, &today)
        .into_par_iter()
        .filter_map(|family| find(&stage, &today, family).ok())
        .map(|found| (found.gain(&stage, question.command), found))
        .collect();
    let best = found.into_iter().reduce(|best, next| if next.0 > best.0 { next } else { best });
    let best = best.map(|(_, found)| found.judged(&stage, question.command, &worlds));
    let verdict = best.as_ref().map_or(Verdict::NotNow, |best| verdict_on(profile, best));
    Standing { best, verdict }
}

/// Families searched in full.
const FINALISTS: usize = 2;

/// The most promising families that are new to him and allowed, best first.
fn finalists(profile: &Profile, stage: &Stage, today: &Today) -> Vec<Family> {
    let wanted = |family: &Family| {
        bar(profile, *family).is_none() && profile.pitches.iter().all(|pitch| pitch.family != *family)
    };
    let mut promises: Vec<(f64, Family)> = FAMILIES
        .into_par_iter()
        .filter(wanted)
        .map(|family| (promise(stage, today, family).unwrap_or(f64::NEG_INFINITY), family))
        .collect();
    promises.sort_by(|a, b| b.0.total_cmp(&a.0));
    promises.into_iter().take(FINALISTS).map(|(_, family)| family).collect()
}

/// The order of `standings`, best first: places in the given slice.
pub fn ranking(standings: &[Standing]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..standings.len()).collect();
    order.sort_by(|&a, &b| standings[b].worth().total_cmp(&standings[a].worth()));
    order
}

//! A pitch that might be learnt or reshaped: its target, how it is thrown, and what it is worth.

use rayon::prelude::*;

use crate::athlete::eligibility::Eligibility;
use crate::athlete::profile::Profile;
use crate::ball::Family;
use crate::base::geometry::Side;
use crate::decide::chase::{Target, Work, target};
use crate::decide::model::Model;
use crate::decide::new_pitch::Command;
use crate::decide::verdict::Verdict;
use crate::decide::worth::{Change, Worth};

/// A pitch that might be learnt, or an owned one that might change its shape.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// The shape to chase.
    pub target: Target,
    /// What it is worth with the command asked about.
    pub worth: Worth,
    /// What it is worth with the command of its first months, where the other was asked about.
    pub at_first: Option<Worth>,
}

impl Candidate {
    /// The best shape of each of `families` that arms are known to throw, with its worth, in their order. A family the
    /// athlete throws already is answered with what another shape of it would be worth.
    pub fn all_of(model: &Model, families: &[Family], command: Command) -> Vec<Self> {
        let targets: Vec<Target> =
            families.par_iter().filter_map(|&family| target(model, family, work(model.profile, family))).collect();
        let changes: Vec<Change> = targets.iter().map(|target| target.change_with(command)).collect();
        let worths = Worth::of_all(model, &changes);
        targets.into_iter().zip(worths).map(|(target, worth)| Self { target, worth, at_first: None }).collect()
    }

    /// The same with what it is worth with the command of its first months.
    #[must_use]
    pub fn with_first_months(self, model: &Model) -> Self {
        let at_first = Worth::of(model, &self.target.change_with(Command::Now));
        Self { at_first: Some(at_first), ..self }
    }

    /// Runs saved per 100 pitches, on the best guess.
    pub fn gain(&self) -> f64 {
        self.worth.overall.value
    }

    /// Whether it is a pitch to be learnt, not an owned one in another shape.
    pub fn is_new(&self) -> bool {
        self.target.work == Work::Learn
    }

    /// Whether it would be thrown at all.
    pub fn is_thrown(&self) -> bool {
        let share = |side| self.target.change.shares.mix(side).last().copied().unwrap_or(0.0);
        self.target.work != Work::Learn || Side::BOTH.into_iter().any(|side| share(side) > 0.0)
    }

    /// The verdict on it when no other pitch is weighed: what speaks against adding at once asks for a trial first.
    pub fn verdict(&self, profile: &Profile) -> Verdict {
        let hesitates = !Eligibility::of(profile, self.target.family).hesitations().is_empty();
        match self.worth.verdict() {
            Verdict::Add if hesitates => Verdict::Trial,
            verdict => verdict,
        }
    }
}

/// What is done with a family: learnt, or reshaped by whoever throws it.
pub fn work(profile: &Profile, family: Family) -> Work {
    let owned = profile.pitches.iter().position(|pitch| pitch.family == family);
    owned.map_or(Work::Learn, Work::Reshape)
}

//! What to watch while a new pitch is learnt, and what an answer cannot know.

use crate::athlete::profile::Profile;
use crate::ball::Family;
use crate::former::search::Candidate;

use super::Verdict;

/// Something to watch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caution {
    /// Always: pain stops the work.
    PainStops,
    /// The age is unknown.
    AgeUnknown,
    /// Youth limits, by age.
    Youth(u8),
    /// Too few months off throwing.
    MonthsOff(u8),
    /// Months off are not known.
    MonthsOffUnknown,
    /// A harder breaking ball loads the arm like a fastball.
    Workload,
    /// The seams' help is an assumption.
    SeamsAssumed,
    /// The target lies at an end of what goes by the family's name.
    AtEdge {
        /// Which family.
        family: Family,
        /// At an end in speed, vertical break, glove-side break.
        axes: [bool; 3],
    },
    /// The model's hitters are fitted to one pitcher's season.
    OneCalibration,
}

impl Caution {
    /// What to watch when `profile`'s athlete goes after `target`, or is told not to; what hurts first.
    pub(super) fn all_of(profile: &Profile, target: Option<&Candidate>, verdict: Verdict) -> Vec<Self> {
        let mut cautions = vec![Self::PainStops];
        match profile.athlete.age {
            None => cautions.push(Self::AgeUnknown),
            Some(age) if age <= 18 => cautions.push(Self::Youth(age)),
            Some(_) => {}
        }
        match profile.health.months_off {
            None => cautions.push(Self::MonthsOffUnknown),
            Some(months) if months < 4 => cautions.push(Self::MonthsOff(months)),
            Some(_) => {}
        }
        cautions.push(Self::Workload);
        if target.is_some_and(|candidate| candidate.recipe.seam_total_in() > 1.0) {
            cautions.push(Self::SeamsAssumed);
        }
        if let Some(target) = target.filter(|target| verdict != Verdict::NotNow && target.at_edge.contains(&true)) {
            cautions.push(Self::AtEdge { family: target.family, axes: target.at_edge });
        }
        cautions.push(Self::OneCalibration);
        cautions
    }
}

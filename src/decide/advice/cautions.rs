//! What to watch while a new pitch is learnt, and what an answer cannot know.

use crate::athlete::profile::{Level, Profile};

use super::Candidate;

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
    /// A new pitch's throws count as workload.
    Workload,
    /// Much of the shape is expected from the seams.
    Seams,
    /// The hitters are fitted to one day of the top league.
    OneDay,
    /// Hitters of this level are professional ones with coarser eyes and hands.
    LevelAssumed(Level),
}

/// From how much of the movement on the seams are told as a caution, in.
const MUCH_FROM_SEAMS_IN: f64 = 4.0;

impl Caution {
    /// What to watch when the athlete of `profile` goes after a pitch, or is told not to; what hurts first.
    pub(super) fn all_of(profile: &Profile, to_chase: Option<&Candidate>) -> Vec<Self> {
        let age = match profile.athlete.age {
            None => Some(Self::AgeUnknown),
            Some(age) => (age <= 18).then_some(Self::Youth(age)),
        };
        let off = match profile.health.months_off {
            None => Some(Self::MonthsOffUnknown),
            Some(months) => (months < 4).then_some(Self::MonthsOff(months)),
        };
        let seams = to_chase.is_some_and(|candidate| candidate.target.seams_in() > MUCH_FROM_SEAMS_IN);
        let level = profile.athlete.level;
        let assumed = (level != Level::Professional).then_some(Self::LevelAssumed(level));
        [
            Some(Self::PainStops),
            age,
            off,
            Some(Self::Workload),
            seams.then_some(Self::Seams),
            assumed,
            Some(Self::OneDay),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

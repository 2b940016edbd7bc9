//! When a plan says no, and why.
//!
//! These are rules about flags a person has set and about published guidelines; nothing here
//! diagnoses. A refusal names what is refused, the reason with its source, and what would lift it.

use crate::athlete::profile::{Health, Level, Profile};
use crate::ball::Family;

use super::limits::YOUNGEST;

/// Below this age the plan teaches no new pitch other than a fastball or a changeup.
pub const NEW_PITCH_AGE: u8 = 14;
/// Through this age the guideline asks for a consistent fastball and changeup before any breaking ball.
const CHANGEUP_FIRST_AGE: u8 = 14;

/// A plan that is not made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refusal {
    /// What is refused.
    pub refused: Refused,
    /// Every reason, most serious first; at least one.
    pub reasons: Vec<Reason>,
}

/// What a plan refuses.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Refused {
    /// All throwing.
    Work,
    /// The new pitch; the rest of the work is not this tool's to forbid.
    NewPitch,
}

/// Why a plan is not made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// Pain in the arm now.
    Pain,
    /// Coming back from an arm injury.
    RecentInjury,
    /// A licensed professional has asked for no new breaking ball.
    NoNewBreakingBall,
    /// Too young for a new pitch of this kind.
    TooYoung {
        /// Years.
        age: u8,
        /// What was asked for.
        family: Family,
    },
    /// Of an age at which the fastball and the changeup come first, and one of them is lacking.
    FastballAndChangeupFirst {
        /// Years.
        age: u8,
    },
    /// A youth whose age is not given.
    AgeNeeded,
    /// Younger than the guideline's table.
    BelowTheTable {
        /// Years.
        age: u8,
    },
}

impl Refusal {
    /// The refusal for `profile` asking for a new `family`, if there is one.
    pub fn of(profile: &Profile, family: Family) -> Option<Self> {
        let stops = work_reasons(profile.health, profile.athlete.age);
        if !stops.is_empty() {
            return Some(Self { refused: Refused::Work, reasons: stops });
        }
        let reasons = pitch_reasons(profile, family);
        (!reasons.is_empty()).then_some(Self { refused: Refused::NewPitch, reasons })
    }
}

fn work_reasons(health: Health, age: Option<u8>) -> Vec<Reason> {
    let young = age.filter(|&age| age < YOUNGEST).map(|age| Reason::BelowTheTable { age });
    let pain = health.pain.then_some(Reason::Pain);
    let injury = health.recent_injury.then_some(Reason::RecentInjury);
    [pain, injury, young].into_iter().flatten().collect()
}

fn pitch_reasons(profile: &Profile, family: Family) -> Vec<Reason> {
    let banned = profile.health.no_new_breaking_ball && family.is_breaking();
    let mut reasons = Vec::from_iter(banned.then_some(Reason::NoNewBreakingBall));
    let simple = family.is_fastball() || family == Family::Changeup;
    let Some(age) = profile.athlete.age else {
        let needed = profile.athlete.level == Level::Youth && !simple;
        reasons.extend(needed.then_some(Reason::AgeNeeded));
        return reasons;
    };
    if age < NEW_PITCH_AGE && !simple {
        reasons.push(Reason::TooYoung { age, family });
    }
    let throws = |wanted: fn(Family) -> bool| profile.pitches.iter().any(|pitch| wanted(pitch.family));
    let has_both = throws(Family::is_fastball) && throws(|family| family == Family::Changeup);
    if age <= CHANGEUP_FIRST_AGE && family.is_breaking() && !has_both {
        reasons.push(Reason::FastballAndChangeupFirst { age });
    }
    reasons
}

//! When a plan says no, and why.
//!
//! These are rules about flags a person has set and about published guidelines; nothing here
//! diagnoses. A refusal names what is refused, the reason with its source, and what would lift it.

use std::fmt;

use jiff::civil::Date;

use crate::athlete::profile::{Health, Level, Profile};
use crate::ball::Family;
use crate::decide::advice::guideline;

use super::limits::{SOURCE, YOUNGEST};
use super::schedule::{MONTHS_IN_A_ROW, MONTHS_OFF};

/// Below this age the plan teaches no new pitch other than a fastball or a changeup.
const NEW_PITCH_AGE: u8 = 14;
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
    /// The new pitch; the rest of his work is not this tool's to forbid.
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
    /// The dates leave less of the year without throwing than the guideline asks for.
    NoRestInTheYear {
        /// First day of throwing.
        first: Date,
        /// Last day of throwing.
        last: Date,
        /// The last day on which a plan that begins so may end.
        latest: Date,
    },
    /// Too young for a new pitch of this kind.
    TooYoung {
        /// His age.
        age: u8,
        /// What was asked for.
        family: Family,
    },
    /// Of an age at which the fastball and the changeup come first, and he lacks one.
    FastballAndChangeupFirst {
        /// His age.
        age: u8,
    },
    /// A youth whose age is not given.
    AgeNeeded,
    /// Younger than the guideline's table.
    BelowTheTable {
        /// His age.
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

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Work => "no throwing plan",
            Self::NewPitch => "no plan for this new pitch",
        })
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Pain => f.write_str(
                "the profile reports pain in the arm: stop throwing and see a licensed professional (physician, \
                 physical therapist or athletic trainer); set pain = false once one has cleared him",
            ),
            Self::RecentInjury => f.write_str(
                "the profile reports a recent arm injury: the way back belongs to a licensed professional; set \
                 recent_injury = false once one has cleared him for a new pitch",
            ),
            Self::NoNewBreakingBall => {
                f.write_str("the profile says no new breaking ball: whoever asked for that decides when it ends")
            }
            Self::NoRestInTheYear { first, last, latest } => write!(
                f,
                "these dates are for throwing from {first} to {last}; the guideline asks for at least {MONTHS_OFF} months \
                 a year without throwing, {MONTHS_IN_A_ROW} to 3 of them in a row ({SOURCE}): end the plan by {latest}"
            ),
            Self::TooYoung { age, family } => write!(
                f,
                "at {age} {} ({SOURCE}); below {NEW_PITCH_AGE} no plan is made here for a new {family}",
                guideline(*age)
            ),
            Self::FastballAndChangeupFirst { age } => write!(
                f,
                "he is {age} and the profile does not show both a fastball and a changeup: these come first ({SOURCE})"
            ),
            Self::AgeNeeded => write!(
                f,
                "he is a youth of unknown age, and what he may throw depends on it: give age in [athlete] ({SOURCE})"
            ),
            Self::BelowTheTable { age } => {
                write!(f, "he is {age}: the limits used here begin at {YOUNGEST} ({SOURCE})")
            }
        }
    }
}

//! What an athlete may not throw, or not yet: the only place for the rules of health and age.
//!
//! The rules are flags a person has set and published guidelines; nothing here diagnoses. Every
//! command asks [`Eligibility::of`] and shows its reasons, so that no two of them contradict each
//! other. Words are in the report; the daily limits and days of rest are in the plan.

use crate::ball::{Family, Supination};

use super::profile::{Athlete, Health, Level, Profile};

/// Below this age nothing but a fastball and a changeup is learnt. The guidelines of USA Baseball and
/// Major League Baseball (copy of about 2015) say so for age 8 and under, and ask for a consistent
/// fastball and changeup before a breaking ball at 13 and 14; between the two this project is as
/// careful as at 8.
pub const BASICS_ONLY_BELOW: u8 = 13;
/// Through this age everything else waits for a fastball and a changeup, and is then tried first; as
/// above.
pub const BASICS_FIRST_THROUGH: u8 = 14;
/// The youngest age the guidelines' daily limits begin at; below it there is nothing to go by.
pub const YOUNGEST: u8 = 7;

/// Whether an athlete may learn a pitch.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Eligibility {
    /// Nothing known speaks against it.
    Free,
    /// It is tried before it is added, whatever it is worth; at least one reason.
    TryFirst(Vec<Hesitation>),
    /// It is not thrown.
    Barred(Bar),
}

/// What is forbidden, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bar {
    /// How much is forbidden.
    pub scope: Scope,
    /// Every reason, most serious first; at least one.
    pub reasons: Vec<Reason>,
}

/// How much is forbidden.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// All throwing.
    AllThrowing,
    /// The new pitch; the rest of the athlete's work is not this tool's to forbid.
    NewPitch,
}

/// Why a pitch is not thrown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// Pain in the arm now.
    Pain,
    /// Coming back from an arm injury.
    RecentInjury,
    /// Younger than the guidelines' tables.
    BelowTheTable {
        /// Years.
        age: u8,
    },
    /// A licensed professional has asked for no new breaking ball.
    NoNewBreakingBall,
    /// A youth whose age is not given.
    AgeNeeded,
    /// Of an age at which only a fastball and a changeup are learnt.
    BasicsOnly {
        /// Years.
        age: u8,
        /// What was asked for.
        family: Family,
    },
    /// Of an age at which a fastball and a changeup come first, and one of them is lacking.
    BasicsFirst {
        /// Years.
        age: u8,
    },
}

/// Why a pitch is tried before it is added.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hesitation {
    /// Of an age at which everything but a fastball and a changeup is tried first.
    Young {
        /// Years.
        age: u8,
    },
    /// The hand does not turn easily, and a breaking ball asks that of it.
    StiffHand {
        /// What was asked for.
        family: Family,
    },
}

impl Eligibility {
    /// Whether the athlete of `profile` may learn a pitch of `family`.
    pub fn of(profile: &Profile, family: Family) -> Self {
        let all = reasons_against_throwing(profile.health, &profile.athlete);
        if !all.is_empty() {
            return Self::Barred(Bar { scope: Scope::AllThrowing, reasons: all });
        }
        let pitch = reasons_against_pitch(profile, family);
        if !pitch.is_empty() {
            return Self::Barred(Bar { scope: Scope::NewPitch, reasons: pitch });
        }
        let hesitations = hesitations(profile, family);
        if hesitations.is_empty() { Self::Free } else { Self::TryFirst(hesitations) }
    }

    /// What forbids the pitch, if anything does.
    pub fn bar(&self) -> Option<&Bar> {
        match self {
            Self::Barred(bar) => Some(bar),
            Self::Free | Self::TryFirst(_) => None,
        }
    }

    /// Why it is tried first, if it is.
    pub fn hesitations(&self) -> &[Hesitation] {
        match self {
            Self::TryFirst(hesitations) => hesitations,
            Self::Free | Self::Barred(_) => &[],
        }
    }
}

/// What forbids all throwing.
pub fn reasons_against_throwing(health: Health, athlete: &Athlete) -> Vec<Reason> {
    let pain = health.pain.then_some(Reason::Pain);
    let injury = health.recent_injury.then_some(Reason::RecentInjury);
    let young = athlete.age.filter(|&age| age < YOUNGEST).map(|age| Reason::BelowTheTable { age });
    [pain, injury, young].into_iter().flatten().collect()
}

fn reasons_against_pitch(profile: &Profile, family: Family) -> Vec<Reason> {
    let banned = profile.health.no_new_breaking_ball && family.is_breaking();
    let age = match profile.athlete.age {
        _ if is_basic(family) => None,
        None => (profile.athlete.level == Level::Youth).then_some(Reason::AgeNeeded),
        Some(age) if age < BASICS_ONLY_BELOW => Some(Reason::BasicsOnly { age, family }),
        Some(age) if age <= BASICS_FIRST_THROUGH && !has_basics(profile) => Some(Reason::BasicsFirst { age }),
        Some(_) => None,
    };
    [banned.then_some(Reason::NoNewBreakingBall), age].into_iter().flatten().collect()
}

fn hesitations(profile: &Profile, family: Family) -> Vec<Hesitation> {
    let young = profile.athlete.age.filter(|&age| age <= BASICS_FIRST_THROUGH && !is_basic(family));
    let stiff = family.is_breaking() && profile.release.supination == Supination::Hard;
    [young.map(|age| Hesitation::Young { age }), stiff.then_some(Hesitation::StiffHand { family })]
        .into_iter()
        .flatten()
        .collect()
}

/// A fastball or a changeup, which come first at every age.
fn is_basic(family: Family) -> bool {
    family.is_fastball() || family == Family::Changeup
}

fn has_basics(profile: &Profile) -> bool {
    let throws = |wanted: fn(Family) -> bool| profile.pitches.iter().any(|pitch| wanted(pitch.family));
    throws(Family::is_fastball) && throws(|family| family == Family::Changeup)
}

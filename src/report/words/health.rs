//! What health and age say about throwing, in words. Nothing here diagnoses: these are rules about
//! flags a person has set and about published guidelines.

use crate::athlete::eligibility;
use crate::athlete::profile::Profile;
use crate::learn::plan::limits::YOUNGEST;
use crate::learn::plan::{NEW_PITCH_AGE, Reason, Refused};

use super::super::content::{Text, text};

/// Where the published limits come from, as shown beside every use of them.
pub(crate) const GUIDELINES: &str =
    "guidelines of USA Baseball and Major League Baseball, copy of about 2015; the current page and local rules decide";

/// Nothing new for somebody who is unwell.
pub(crate) const UNTIL_CLEARED: &str = "nothing new until a licensed professional has cleared the athlete";

/// What the guidelines say of a pitch that is hard on the arm at `age`, below 15.
pub(crate) fn guideline(age: u8) -> &'static str {
    if age < 13 {
        "a fastball and a changeup come first"
    } else {
        "a breaking ball comes only after a consistent fastball and changeup"
    }
}

/// What is refused.
pub(crate) fn refused(refused: Refused) -> &'static str {
    match refused {
        Refused::Work => "no throwing plan",
        Refused::NewPitch => "no plan for this new pitch",
    }
}

/// Why.
pub(crate) fn reason(reason: Reason) -> Text {
    let source = format!(" ({GUIDELINES})");
    match reason {
        Reason::Pain => "the profile reports pain in the arm: stop throwing and see a licensed professional (physician, \
                         physical therapist or athletic trainer); set pain = false once one has cleared the athlete"
            .into(),
        Reason::RecentInjury => "the profile reports a recent arm injury: the way back belongs to a licensed \
                                 professional; set recent_injury = false once one has cleared the athlete for a new pitch"
            .into(),
        Reason::NoNewBreakingBall => {
            "the profile says no new breaking ball: whoever asked for that decides when it ends".into()
        }
        Reason::TooYoung { age, family } => {
            let below = format!("; below {NEW_PITCH_AGE} no plan is made here for a new ");
            text!["at ", age, " ", guideline(age), source, below, family]
        }
        Reason::FastballAndChangeupFirst { age } => text![
            "the athlete is ",
            age,
            " and the profile does not show both a fastball and a changeup: these come first",
            source
        ],
        Reason::AgeNeeded => text![
            "the athlete is a youth of unknown age, and what may be thrown depends on it: give age in [athlete]",
            source
        ],
        Reason::BelowTheTable { age } => {
            text!["the athlete is ", age, ": the limits used here begin at ", YOUNGEST, source]
        }
    }
}

/// Why a pitch, or any, is not thrown.
pub(crate) fn barring(reason: eligibility::Reason) -> Text {
    use eligibility::Reason as Bar;
    match reason {
        Bar::Pain => self::reason(Reason::Pain),
        Bar::RecentInjury => self::reason(Reason::RecentInjury),
        Bar::BelowTheTable { age } => self::reason(Reason::BelowTheTable { age }),
        Bar::NoNewBreakingBall => self::reason(Reason::NoNewBreakingBall),
        Bar::AgeNeeded => self::reason(Reason::AgeNeeded),
        Bar::BasicsOnly { age, .. } => text!["at ", age, " ", guideline(age), format!(" ({GUIDELINES})")],
        Bar::BasicsFirst { age } => self::reason(Reason::FastballAndChangeupFirst { age }),
    }
}

/// Pain and a recent injury, as they stand before anything else in every answer about throwing.
pub(crate) fn unwell(profile: &Profile) -> Vec<Text> {
    let health = profile.health;
    let said = [health.pain.then_some(Reason::Pain), health.recent_injury.then_some(Reason::RecentInjury)];
    said.into_iter().flatten().map(reason).collect()
}

//! What health and age say about throwing, in words. Nothing here diagnoses: these are rules about
//! flags a person has set and about published guidelines.

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

/// Pain and a recent injury, as they stand before anything else in every answer about throwing.
pub(crate) fn unwell(profile: &Profile) -> Vec<Text> {
    let health = profile.health;
    let said = [health.pain.then_some(Reason::Pain), health.recent_injury.then_some(Reason::RecentInjury)];
    said.into_iter().flatten().map(reason).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ball::Family;

    #[test]
    fn a_refusal_for_age_or_pain_names_its_source_or_who_to_see() {
        let said = [12, 13].map(|age| reason(Reason::TooYoung { age, family: Family::Sweeper }).to_string());
        assert!(said[0].starts_with("at 12 a fastball and a changeup come first ("), "{}", said[0]);
        assert!(said[1].starts_with("at 13 a breaking ball comes only after a consistent fastball"), "{}", said[1]);
        assert!(said.iter().all(|said| said.contains("copy of about 2015")), "{said:?}");
        assert!(reason(Reason::Pain).to_string().contains("licensed professional"));
    }
}

//! What health and age say about throwing, in words. Nothing here diagnoses: these are rules about
//! flags a person has set and about published guidelines.

use crate::athlete::eligibility::{BASICS_ONLY_BELOW, Reason, Scope, YOUNGEST, reasons_against_throwing};
use crate::athlete::profile::Profile;

use super::super::content::{Text, text};

/// Where the published limits come from, as shown beside every use of them.
pub(crate) const GUIDELINES: &str =
    "guidelines of USA Baseball and Major League Baseball, copy of about 2015; the current page and local rules decide";

/// Nothing new for somebody who is unwell.
pub(crate) const UNTIL_CLEARED: &str = "nothing new until a licensed professional has cleared the athlete";

/// What is refused when a plan is asked for.
pub(crate) fn refused(scope: Scope) -> &'static str {
    match scope {
        Scope::AllThrowing => "no throwing plan",
        Scope::NewPitch => "no plan for this new pitch",
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
        Reason::BasicsOnly { age, family } => {
            let below = format!("; below {BASICS_ONLY_BELOW} nothing is said here for a new ");
            text!["at ", age, " a fastball and a changeup come first", source, below, family]
        }
        Reason::BasicsFirst { age } => text![
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

/// What speaks against all throwing, as it stands before anything else in every answer about throwing.
pub(crate) fn unwell(profile: &Profile) -> Vec<Text> {
    reasons_against_throwing(profile.health, &profile.athlete).into_iter().map(reason).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ball::Family;

    #[test]
    fn a_refusal_for_age_or_pain_names_its_source_or_who_to_see() {
        let said = [
            reason(Reason::BasicsOnly { age: 12, family: Family::Sweeper }).to_string(),
            reason(Reason::BasicsFirst { age: 13 }).to_string(),
        ];
        assert!(said[0].starts_with("at 12 a fastball and a changeup come first ("), "{}", said[0]);
        assert!(said[1].starts_with("the athlete is 13 and the profile does not show both"), "{}", said[1]);
        assert!(said.iter().all(|said| said.contains("copy of about 2015")), "{said:?}");
        assert!(reason(Reason::Pain).to_string().contains("licensed professional"));
    }
}

//! What to keep in mind about a plan, most serious first.

use crate::athlete::profile::Profile;
use crate::ball::Family;

use super::dated::{Caution, Phase, PhaseKind, PlanDay, Request};
use super::limits::{DayLimit, TABLE};
use super::schedule::MONTHS_OFF;
use super::steps::Step;

/// Below this age evidence on breaking balls is told.
const GROWN: u8 = 18;

/// What to keep in mind about a plan.
pub(super) fn cautions(request: &Request, phases: &[Phase], days: &[PlanDay]) -> Vec<Caution> {
    let profile = request.profile;
    let most = DayLimit::of(&profile.athlete).most;
    let about_age = about_age(profile, request.target.family);
    [Some(Caution::Limits), about_age, Some(Caution::HalfOfTheLimit { most })]
        .into_iter()
        .chain([about_rest(profile, phases), about_length(phases, days)])
        .flatten()
        .collect()
}

fn about_age(profile: &Profile, family: Family) -> Option<Caution> {
    let last = TABLE[TABLE.len() - 1].ages.1;
    match profile.athlete.age {
        None => Some(Caution::AgeUnknown { level: profile.athlete.level }),
        Some(age) if age > last => Some(Caution::PastTheTable { age }),
        Some(age) if age < GROWN && family.is_breaking() => Some(Caution::YoungBreakingBall),
        Some(_) => None,
    }
}

fn about_rest(profile: &Profile, phases: &[Phase]) -> Option<Caution> {
    let is_resting = phases.iter().any(|phase| phase.kind == PhaseKind::Rest);
    match profile.health.months_off {
        None => Some(Caution::MonthsOffUnknown),
        Some(months) if is_resting => Some(Caution::RestFirst { months }),
        Some(months) if months < MONTHS_OFF => Some(Caution::RestElsewhere { months }),
        Some(_) => None,
    }
}

fn about_length(phases: &[Phase], days: &[PlanDay]) -> Option<Caution> {
    match phases.last().map(|phase| phase.kind) {
        Some(PhaseKind::Step(Step::Hitters)) if !days.is_empty() => None,
        Some(PhaseKind::Step(step)) if !days.is_empty() => Some(Caution::EndsAt { step }),
        _ => Some(Caution::NoDay),
    }
}

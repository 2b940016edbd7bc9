//! The off-season plan: dated steps with gates, throws per day within the published limits.
//!
//! [`plan`] answers with a [`Plan`] or with a `Bar`; both are data. A plan is a
//! proposal for a coach, not a treatment and not a licence: pain stops the work, and local rules
//! and licensed professionals decide.

mod cautions;
mod dated;
pub mod limits;
mod schedule;
mod span;
mod steps;

pub use dated::{Answer, Caution, NoRest, Phase, PhaseKind, Plan, PlanDay, Request};
pub use schedule::{MONTHS_IN_A_ROW, MONTHS_OFF};
pub use span::{NotADay, Span, SpanError, Weekdays};
pub use steps::{Gate, Measure, Measured, Need, Step, Work, first_step, gates};

use crate::athlete::eligibility::Eligibility;

use limits::DayLimit;

/// The plan for `request`, or why there is none.
pub fn plan(request: &Request) -> Answer {
    let profile = request.profile;
    if let Eligibility::Barred(bar) = Eligibility::of(profile, request.target.family) {
        return Answer::Refused(bar);
    }
    let limit = DayLimit::of(&profile.athlete);
    let phases = schedule::phases(request);
    let days = schedule::days(request, limit, &phases);
    if let Some(dates) = schedule::without_rest(&days) {
        return Answer::NoRest(dates);
    }
    let cautions = cautions::cautions(request, &phases, &days);
    Answer::Plan(Box::new(Plan {
        athlete: profile.athlete.name.clone(),
        target: *request.target,
        span: request.span,
        weekdays: request.weekdays,
        limit,
        phases,
        days,
        cautions,
    }))
}

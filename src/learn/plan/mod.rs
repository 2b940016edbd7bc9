//! The off-season plan: dated steps with gates, throws per day within the published limits.
//!
//! [`plan`] answers with a [`Plan`] or with a [`Refusal`]; both are data. The plan can be shown as
//! a table from its fields, as [`Plan::markdown`] and as [`Plan::calendar`] (RFC 5545). It is a
//! proposal for a coach, not a treatment and not a licence: pain stops the work, and local rules
//! and licensed professionals decide.

mod calendar;
pub mod limits;
mod markdown;
mod refusal;
mod schedule;
mod span;
mod steps;
mod words;

pub use refusal::{Reason, Refusal, Refused};
pub use span::{NotADay, Span, SpanError, Weekdays};
pub use steps::{Gate, Measure, Measured, Need, Step, Work, first_step, gates};
pub use words::{GUIDELINE_RECORD, STOP_RULES};

use jiff::civil::Date;

use crate::athlete::profile::Profile;
use crate::learn::target::Target;

use limits::DayLimit;

/// What a plan is asked for.
#[derive(Debug, Clone, Copy)]
pub struct Request<'a> {
    /// Who.
    pub profile: &'a Profile,
    /// What he is to learn.
    pub target: &'a Target,
    /// From when to when.
    pub span: Span,
    /// On which days he may throw.
    pub weekdays: Weekdays,
    /// What is already known of the new pitch; decides where the plan begins.
    pub measured: Measured,
}

/// A plan or the reasons for none.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// The plan.
    Plan(Box<Plan>),
    /// Why there is none.
    Refused(Refusal),
}

/// A dated plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Whose.
    pub athlete: String,
    /// What he is to learn.
    pub target: Target,
    /// From when to when.
    pub span: Span,
    /// On which days he throws.
    pub weekdays: Weekdays,
    /// The limits that hold; every day is below half of them.
    pub limit: DayLimit,
    /// The phases in date order; they fill the span without gaps.
    pub phases: Vec<Phase>,
    /// Every throwing day.
    pub days: Vec<PlanDay>,
    /// What to keep in mind, most serious first.
    pub cautions: Vec<String>,
}

/// A run of days with one purpose.
#[derive(Debug, Clone, PartialEq)]
pub struct Phase {
    /// What it is for.
    pub kind: PhaseKind,
    /// When.
    pub span: Span,
    /// What must be measured before the next begins; nothing for rest.
    pub gates: Vec<Gate>,
}

/// What a phase is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PhaseKind {
    /// No throwing at all.
    Rest,
    /// A step of learning the pitch.
    Step(Step),
}

/// A throwing day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PlanDay {
    /// When.
    pub date: Date,
    /// Week of throwing, from 1.
    pub week: u32,
    /// Which step.
    pub step: Step,
    /// Throws of the new pitch.
    pub new_pitch: u32,
    /// Throws of the others.
    pub others: u32,
    /// Effort in percent of game effort.
    pub effort_percent: u32,
    /// Whether it lies in a lighter week.
    pub deload: bool,
    /// Days without throwing that the limits ask for afterwards; the plan leaves at least these.
    pub rest_after: u32,
}

impl PlanDay {
    /// All throws of the day.
    pub fn throws(&self) -> u32 {
        self.new_pitch + self.others
    }
}

/// The plan for `request`, or why there is none.
pub fn plan(request: &Request) -> Answer {
    let profile = request.profile;
    if let Some(refusal) = Refusal::of(profile, request.target.family) {
        return Answer::Refused(refusal);
    }
    let Some(limit) = DayLimit::of(&profile.athlete) else {
        let age = profile.athlete.age.unwrap_or(0);
        let reasons = vec![Reason::BelowTheTable { age }];
        return Answer::Refused(Refusal { refused: Refused::Work, reasons });
    };
    let phases = schedule::phases(request);
    let days = schedule::days(request, limit, &phases);
    if let Some(reason) = schedule::without_rest(&days) {
        return Answer::Refused(Refusal { refused: Refused::Work, reasons: vec![reason] });
    }
    let cautions = words::cautions(request, &phases, &days);
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

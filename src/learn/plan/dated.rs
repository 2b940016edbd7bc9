//! A dated plan as values: phases, throwing days, doubts, and what it was asked for.

use jiff::civil::Date;

use crate::athlete::eligibility::Bar;
use crate::athlete::profile::{Level, Profile};
use crate::learn::target::Target;

use super::limits::DayLimit;
use super::span::{Span, Weekdays};
use super::steps::{Gate, Measured, Step};

/// What a plan is asked for.
#[derive(Debug, Clone, Copy)]
pub struct Request<'a> {
    /// Who.
    pub profile: &'a Profile,
    /// What is to be learnt.
    pub target: &'a Target,
    /// From when to when.
    pub span: Span,
    /// On which days the athlete may throw.
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
    Refused(Bar),
    /// The dates leave less of the year without throwing than the guideline asks for.
    NoRest(NoRest),
}

/// Dates that leave too little of the year without throwing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NoRest {
    /// First day of throwing.
    pub first: Date,
    /// Last day of throwing.
    pub last: Date,
    /// The last day on which a plan that begins so may end.
    pub latest: Date,
}

/// A dated plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Whose.
    pub athlete: String,
    /// What is to be learnt.
    pub target: Target,
    /// From when to when.
    pub span: Span,
    /// On which days the athlete throws.
    pub weekdays: Weekdays,
    /// The limits that hold; every day is below half of them.
    pub limit: DayLimit,
    /// The phases in date order; they fill the span without gaps.
    pub phases: Vec<Phase>,
    /// Every throwing day.
    pub days: Vec<PlanDay>,
    /// What to keep in mind, most serious first.
    pub cautions: Vec<Caution>,
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

/// A doubt about a plan, or a rule it stands on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caution {
    /// Where the daily limits come from.
    Limits,
    /// No age is given: the limits are those of a young one of that level.
    AgeUnknown {
        /// The level of the hitters faced.
        level: Level,
    },
    /// Older than the table, whose last row is used.
    PastTheTable {
        /// Years.
        age: u8,
    },
    /// A young arm and a breaking ball: evidence is mixed.
    YoungBreakingBall,
    /// No day uses more than half of what the table allows.
    HalfOfTheLimit {
        /// Most pitches in a day.
        most: u32,
    },
    /// Months off are not known, so no rest is planned.
    MonthsOffUnknown,
    /// Too few months off: the plan begins with rest.
    RestFirst {
        /// Months off in the last twelve.
        months: u8,
    },
    /// Too few months off in the year, with enough in a row: the rest lies outside the plan.
    RestElsewhere {
        /// Months off in the last twelve.
        months: u8,
    },
    /// The dates are too few for every step.
    EndsAt {
        /// The last step that fits.
        step: Step,
    },
    /// The dates leave no day to throw on.
    NoDay,
}

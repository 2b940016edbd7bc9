//! What a plan says in words: steps, gates, cautions and the rules that stop the work.
//!
//! Shared by the Markdown and calendar texts, so that both say the same. The stop rules follow
//! what the evidence supports: total workload and pitching while tired are the better supported
//! risks, and pain is a reason to stop, not a number to manage.

use std::fmt;

use crate::athlete::profile::Profile;
use crate::ball::Family;

use super::limits::{DayLimit, SOURCE};
use super::schedule::{MONTHS_IN_A_ROW, MONTHS_OFF};
use super::steps::{Gate, Measure, Need, Step};
use super::{Phase, PhaseKind, PlanDay, Request};

/// When to stop; shown with every plan.
pub const STOP_RULES: [&str; 5] = [
    "pain in the elbow, shoulder or anywhere in the arm: stop that day and see a licensed professional (physician, \
     physical therapist or athletic trainer)",
    "tired arm, or fastball speed and release falling off within a session: stop the session; pitching while tired is \
     one of the better supported risks",
    "fastball slower than the profile, or the slot lower, for two sessions running: stop the new pitch, keep the \
     fastball, find out why before going on",
    "other throwing that day (a game, another position): count it, and leave the planned throws out",
    "local rules and licensed professionals overrule anything written here",
];

/// What to write down on every throwing day, whatever the step.
pub const GUIDELINE_RECORD: [&str; 2] =
    ["every throw made that day, games and practice together", "how the arm feels before, after and the next morning"];

impl fmt::Display for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

impl fmt::Display for PhaseKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Rest => f.pad("no throwing"),
            Self::Step(step) => f.pad(step.name()),
        }
    }
}

impl Measure {
    /// What is measured, with its unit.
    pub fn name(self) -> &'static str {
        match self {
            Self::ActiveFractionSpread => "spread of the active fraction",
            Self::ClockSpreadMinutes => "spread of the spin clock (minutes of the clock face)",
            Self::ShareInWindow => "share of the last twenty in the window (percent)",
            Self::SpeedMph => "speed (mph)",
            Self::FastballLossMph => "fastball speed lost against the profile (mph)",
            Self::SlotDropDeg => "slot dropped against the profile (degrees)",
            Self::CommandIn => "scatter at the plate (in)",
            Self::Swings => "swings seen at it",
        }
    }

    fn shown(self, value: f64) -> String {
        match self {
            Self::ActiveFractionSpread => format!("{:.2}", rounded(value, 2)),
            Self::ShareInWindow => format!("{:.0}", rounded(100.0 * value, 0)),
            Self::ClockSpreadMinutes | Self::Swings => format!("{:.0}", rounded(value, 0)),
            _ => format!("{:.1}", rounded(value, 1)),
        }
    }
}

/// Rounded to so many decimals; a zero has no sign.
pub(super) fn rounded(value: f64, places: i32) -> f64 {
    let scale = 10_f64.powi(places);
    (value * scale).round() / scale + 0.0
}

impl fmt::Display for Gate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = self.measure.name();
        match self.need {
            Need::AtMost(most) => write!(f, "{name}: at most {}", self.measure.shown(most))?,
            Need::AtLeast(least) => write!(f, "{name}: at least {}", self.measure.shown(least))?,
        }
        let Some(now) = self.now else { return Ok(()) };
        let [value, low, high] = [now.value, now.low, now.high].map(|number| self.measure.shown(number));
        write!(f, " (now {value}, {low} to {high})")
    }
}

/// What to keep in mind about a plan, most serious first.
pub(super) fn cautions(request: &Request, phases: &[Phase], days: &[PlanDay]) -> Vec<String> {
    let profile = request.profile;
    let mut said = vec![format!("daily limits and rest days: {SOURCE}")];
    said.extend(about_age(profile, request.target.family));
    said.extend(about_rest(profile, phases));
    said.extend(about_length(phases, days));
    said
}

fn about_age(profile: &Profile, family: Family) -> Vec<String> {
    let mut said = Vec::new();
    match profile.athlete.age {
        None => said
            .push(format!("age is not given: the limits are those of a young {} player", profile.athlete.level.name())),
        Some(age) if age > 22 => said.push(format!("he is {age}: the table ends at 22, and its last row is used")),
        Some(age) if age < 18 && family.is_breaking() => said.push(
            "evidence on young arms and breaking balls is mixed (shoulder and elbow pain more often in one study of \
             ages 9 to 14: Lyman et al., AJSM 30 (2002) 463; no higher joint load in a review: Sports Health 2013): \
             keep the fastball and the changeup first"
                .into(),
        ),
        Some(_) => {}
    }
    let beneath = DayLimit::of(&profile.athlete).map_or(0, |limit| limit.most);
    said.push(format!("no day of the plan uses more than half of the {beneath} pitches the table allows"));
    said
}

fn about_rest(profile: &Profile, phases: &[Phase]) -> Vec<String> {
    let asks = format!(
        "the guideline asks for at least {MONTHS_OFF} months a year without throwing, {MONTHS_IN_A_ROW} to 3 of them in \
         a row"
    );
    let resting = phases.iter().any(|phase| phase.kind == PhaseKind::Rest);
    match profile.health.months_off {
        None => vec![format!("months_off is not given, so the plan has no rest block: {asks}")],
        Some(months) if resting => vec![format!(
            "the last twelve months had {months} without throwing, so the plan begins with {MONTHS_IN_A_ROW}: {asks}"
        )],
        Some(months) if months < MONTHS_OFF => {
            vec![format!(
                "the last twelve months had {months} without throwing: {asks}; find the rest outside this plan"
            )]
        }
        Some(_) => Vec::new(),
    }
}

fn about_length(phases: &[Phase], days: &[PlanDay]) -> Vec<String> {
    let last = phases.last().map(|phase| phase.kind);
    match last {
        Some(PhaseKind::Step(Step::Hitters)) if !days.is_empty() => Vec::new(),
        Some(PhaseKind::Step(step)) if !days.is_empty() => {
            vec![format!("the dates are too few for every step: the plan ends at \"{step}\"")]
        }
        _ => vec!["the dates leave no day to throw on".into()],
    }
}

//! The steps of a plan, their gates and what to keep in mind, in words.
//!
//! The stop rules follow what the evidence supports: total workload and pitching while tired are the
//! better supported risks, and pain is a reason to stop, not a number to manage.

use crate::learn::plan::{Caution, Gate, MONTHS_IN_A_ROW, MONTHS_OFF, Measure, Need, NoRest, PhaseKind, Step};

use super::super::content::amount::{Amount, pure, share};
use super::super::content::{Text, say, text};
use super::health::GUIDELINES;

/// When to stop; shown with every plan.
pub(crate) const STOP_RULES: [&str; 5] = [
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
pub(crate) const EVERY_DAY: [&str; 2] =
    ["every throw made that day, games and practice together", "how the arm feels before, after and the next morning"];

/// A step's name.
pub(crate) fn step(step: Step) -> &'static str {
    match step {
        Step::Spin => "spin clean",
        Step::Shape => "shape in window",
        Step::Effort => "shape at game effort",
        Step::Command => "command",
        Step::Hitters => "hitters",
    }
}

/// What a phase is called.
pub(crate) fn phase(kind: PhaseKind) -> &'static str {
    match kind {
        PhaseKind::Rest => "no throwing",
        PhaseKind::Step(one) => step(one),
    }
}

/// What is done in a step.
pub(crate) fn work(step: Step) -> &'static str {
    match step {
        Step::Spin => "easy throws with the marked ball from half distance to full, one grip at a time",
        Step::Shape => "full distance with the best grip, a fastball between every two new pitches",
        Step::Effort => "off the mound at game effort, mixed with the fastball",
        Step::Command => "off the mound to called targets, mixed with every other pitch",
        Step::Hitters => "hitters standing in, then swinging; the new pitch within its usage cap",
    }
}

/// What is written down of every throw or day of a step.
pub(crate) fn record(step: Step) -> &'static [&'static str] {
    match step {
        Step::Spin => &["grip", "where the dot showed", "active fraction and spin clock", "wobble, yes or no"],
        Step::Shape => &["grip", "speed and both breaks of every throw", "spin", "release height and side"],
        Step::Effort => {
            &["speed and both breaks of every pitch", "release height, side and extension", "fastball speed"]
        }
        Step::Command => &["target called and where it crossed", "speed and both breaks", "release", "fastball speed"],
        Step::Hitters => {
            &["side the hitter stood on", "swing, miss, weak or solid contact, take", "speed and both breaks"]
        }
    }
}

/// What is measured, with its unit.
pub(crate) fn measure(measure: Measure) -> &'static str {
    match measure {
        Measure::ActiveFractionSpread => "spread of the active fraction",
        Measure::ClockSpreadMinutes => "spread of the spin clock (minutes of the clock face)",
        Measure::ShareInWindow => "share of the last twenty in the window (percent)",
        Measure::SpeedMph => "speed (mph)",
        Measure::FastballLossMph => "fastball speed lost against the profile (mph)",
        Measure::SlotDropDeg => "slot dropped against the profile (degrees)",
        Measure::CommandIn => "scatter at the plate (in)",
        Measure::Swings => "swings seen at it",
    }
}

fn shown(measure: Measure, value: f64) -> Amount {
    match measure {
        Measure::ActiveFractionSpread => pure(value, 2),
        Measure::ShareInWindow => share(value).bare(),
        Measure::ClockSpreadMinutes | Measure::Swings => pure(value, 0),
        _ => pure(value, 1),
    }
}

/// One line of a gate, with where it stands when that was measured.
pub(crate) fn gate(gate: &Gate) -> Text {
    let show = |value: f64| shown(gate.measure, value);
    let need = match gate.need {
        Need::AtMost(most) => say!(": at most {}", show(most)),
        Need::AtLeast(least) => say!(": at least {}", show(least)),
    };
    let now = gate
        .now
        .map_or_else(Text::default, |now| say!(" (now {}, {} to {})", show(now.value), show(now.low), show(now.high)));
    text![measure(gate.measure), need, now]
}

/// What to keep in mind about a plan.
pub(crate) fn caution(caution: Caution) -> Text {
    let asks = format!(
        "the guideline asks for at least {MONTHS_OFF} months a year without throwing, {MONTHS_IN_A_ROW} to 3 of them in \
         a row"
    );
    match caution {
        Caution::Limits => format!("daily limits and rest days: {GUIDELINES}").into(),
        Caution::AgeUnknown { level } => {
            format!("age is not given: the limits are those of a young {} player", level.name()).into()
        }
        Caution::PastTheTable { age } => {
            say!("the athlete is {}: the table ends at 22, and its last row is used", age)
        }
        Caution::YoungBreakingBall => {
            "evidence on young arms and breaking balls is mixed (shoulder and elbow pain more \
                                       often in one study of ages 9 to 14: Lyman et al., AJSM 30 (2002) 463; no higher \
                                       joint load in a review: Sports Health 2013): keep the fastball and the changeup \
                                       first"
                .into()
        }
        Caution::HalfOfTheLimit { most } => {
            say!("no day of the plan uses more than half of the {} pitches the table allows", most)
        }
        Caution::MonthsOffUnknown => format!("months_off is not given, so the plan has no rest block: {asks}").into(),
        Caution::RestFirst { months } => say!(
            "the last twelve months had {} without throwing, so the plan begins with {}: {}",
            months,
            MONTHS_IN_A_ROW,
            asks
        ),
        Caution::RestElsewhere { months } => {
            say!("the last twelve months had {} without throwing: {}; find the rest outside this plan", months, asks)
        }
        Caution::EndsAt { step: last } => {
            format!("the dates are too few for every step: the plan ends at \"{}\"", step(last)).into()
        }
        Caution::NoDay => "the dates leave no day to throw on".into(),
    }
}

/// Why dates leave too little of the year without throwing.
pub(crate) fn no_rest(dates: &NoRest) -> Text {
    let NoRest { first, last, latest } = *dates;
    text![
        "these dates are for throwing from ",
        first,
        " to ",
        last,
        format!(
            "; the guideline asks for at least {MONTHS_OFF} months a year without throwing, {MONTHS_IN_A_ROW} to 3 of them \
             in a row ({GUIDELINES}): end the plan by "
        ),
        latest
    ]
}

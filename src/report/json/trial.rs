//! `trial`: every grip with its chances, what to throw next, and the cues for each grip. Angles of
//! the dot are as the thrower sees them: plus is clockwise for either hand.

use serde::Serialize;

use crate::base::geometry::Hand;
use crate::base::stats::Estimate;
use crate::learn::cues::for_grip;
use crate::learn::trial::{Grip, Trial, Verdict};

use super::super::follow::Ground;
use super::shared::{ChaseForm, CueForm, EstimateForm, RowForm};
use super::{pretty, round};

/// The answer of `trial`.
pub fn trial(ground: &Ground, trial: &Trial) -> String {
    pretty(&TrialForm {
        athlete: &ground.profile.athlete.name,
        bars: ground.bars.iter().map(ToString::to_string).collect(),
        verdict: verdict(trial.verdict),
        next_grip: trial.next.as_ref().map(|next| next.grip.as_str()),
        more_throws: trial.next.as_ref().map(|next| EstimateForm::of(next.more_throws)),
        target: ChaseForm::of(ground.target),
        grips: trial.grips.iter().map(|grip| GripForm::of(grip, ground.profile.athlete.throws)).collect(),
        cautions: ground.cautions.iter().chain(&ground.session.notes).map(String::as_str).collect(),
        set_aside: RowForm::all(ground.session, &ground.session.set_aside),
        assumptions: &ground.profile.assumptions,
    })
}

fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Empty => "empty",
        Verdict::OneGrip => "one_grip",
        Verdict::TooEarly { .. } => "too_early",
        Verdict::Open => "open",
        Verdict::Settled => "settled",
    }
}

#[derive(Serialize)]
struct TrialForm<'a> {
    athlete: &'a str,
    bars: Vec<String>,
    verdict: &'static str,
    next_grip: Option<&'a str>,
    more_throws: Option<EstimateForm>,
    target: ChaseForm,
    grips: Vec<GripForm<'a>>,
    cautions: Vec<&'a str>,
    set_aside: Vec<RowForm<'a>>,
    assumptions: &'a [String],
}

#[derive(Serialize)]
struct GripForm<'a> {
    grip: &'a str,
    throws: u32,
    in_window: u32,
    chance_next_in_window: EstimateForm,
    chance_best: f64,
    speed_mph: EstimateForm,
    vertical_break_in: EstimateForm,
    glove_side_break_in: EstimateForm,
    speed_cost_mph: EstimateForm,
    slot_cost_deg: Option<EstimateForm>,
    active_fraction_spread: Option<EstimateForm>,
    clock_spread_minutes: Option<EstimateForm>,
    wobble: Option<EstimateForm>,
    dot: Option<DotErrorForm>,
    cues: Vec<CueForm>,
}

#[derive(Serialize)]
struct DotErrorForm {
    says: String,
    radius: EstimateForm,
    turn_hours: EstimateForm,
}

impl<'a> GripForm<'a> {
    fn of(grip: &'a Grip, hand: Hand) -> Self {
        let form = |estimate: Option<Estimate>| estimate.map(EstimateForm::of);
        Self {
            grip: &grip.name,
            throws: grip.throws,
            in_window: grip.in_window.hits,
            chance_next_in_window: EstimateForm::of(grip.chance_next),
            chance_best: round(grip.chance_best, 3),
            speed_mph: EstimateForm::of(grip.speed_mph),
            vertical_break_in: EstimateForm::of(grip.vertical_break_in),
            glove_side_break_in: EstimateForm::of(grip.glove_side_break_in),
            speed_cost_mph: EstimateForm::of(grip.speed_cost_mph),
            slot_cost_deg: form(grip.slot_cost_deg),
            active_fraction_spread: form(grip.clean.active_fraction_spread),
            clock_spread_minutes: form(grip.clean.clock_spread_minutes),
            wobble: form(grip.clean.wobble),
            dot: grip.dot.map(|dot| DotErrorForm {
                says: dot.words(hand),
                radius: EstimateForm::of(dot.radius),
                turn_hours: EstimateForm::of(seen_by(dot.turn_hours, hand)),
            }),
            cues: for_grip(grip).into_iter().map(CueForm::of).collect(),
        }
    }
}

/// A turn of the right-hander's dot as `hand` sees it.
fn seen_by(turn: Estimate, hand: Hand) -> Estimate {
    match hand {
        Hand::Right => turn,
        Hand::Left => Estimate { value: -turn.value, low: -turn.high, high: -turn.low },
    }
}

//! `advise`: the keys are a promise, see the design.

use serde::Serialize;

use crate::base::geometry::{Hand, Side};
use crate::decide::advice::{Advice, Alternative};
use crate::former::search::Candidate;
use crate::former::search::reach::Recipe;

use crate::decide::why::{Lever, Why};

use super::super::words;
use super::shared::{DotsForm, EstimateForm, PitchForm, SeamForm, SideForm, WindowForm};
use super::{pretty, round};

/// The answer of `advise` as one JSON object.
pub fn advise(advice: &Advice, leaning: Option<&Why>) -> String {
    pretty(&AdviceForm { why: leaning.map(WhyForm::of), ..AdviceForm::of(advice) })
}

#[derive(Serialize)]
struct AdviceForm<'a> {
    athlete: &'a str,
    verdict: &'static str,
    reasons: Vec<String>,
    cautions: Vec<String>,
    assumptions: &'a [String],
    target: Option<TargetForm>,
    gain_runs_per_100: Option<GainForm>,
    chance_real: Option<f64>,
    usage: Option<BeforeAfterForm>,
    alternatives: Vec<AlternativeForm>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<WhyForm>,
}

#[derive(Serialize)]
struct WhyForm {
    levers: Vec<LeverForm>,
    command_limit_in: Option<f64>,
}

#[derive(Serialize)]
struct LeverForm {
    assumption: &'static str,
    lowest_gain_runs_per_100: f64,
    highest_gain_runs_per_100: f64,
}

impl WhyForm {
    fn of(why: &Why) -> Self {
        let lever = |lever: &Lever| LeverForm {
            assumption: words::assumption(lever.assumption),
            lowest_gain_runs_per_100: round(lever.worst, 4),
            highest_gain_runs_per_100: round(lever.best, 4),
        };
        Self {
            levers: why.levers.iter().map(lever).collect(),
            command_limit_in: why.command_limit_in.map(|inches| round(inches, 1)),
        }
    }
}

impl<'a> AdviceForm<'a> {
    fn of(advice: &'a Advice) -> Self {
        let worth = advice.target.as_ref().map(|target| &target.worth);
        let new_name = advice.target.as_ref().map(|target| target.family.name());
        Self {
            athlete: &advice.profile.athlete.name,
            verdict: words::verdict_key(advice.verdict),
            reasons: advice.reasons.iter().map(words::reason).collect(),
            cautions: advice.cautions.iter().map(|&caution| words::caution(caution)).collect(),
            assumptions: &advice.profile.assumptions,
            target: advice.target.as_ref().map(|target| TargetForm::of(target, advice.profile.athlete.throws)),
            gain_runs_per_100: worth.map(|worth| GainForm {
                same_side: EstimateForm::of(worth.sides.same.gain),
                opposite_side: EstimateForm::of(worth.sides.opposite.gain),
                overall: EstimateForm::of(worth.overall),
            }),
            chance_real: worth.map(|worth| round(worth.chance_real, 3)),
            usage: worth.map(|worth| {
                let side = |side: Side| BeforeAfter {
                    before: SideForm::of(advice.profile, None, &worth.sides.on(side).before).pitches,
                    after: SideForm::of(advice.profile, new_name, &worth.sides.on(side).after).pitches,
                };
                BeforeAfterForm { same_side: side(Side::Same), opposite_side: side(Side::Opposite) }
            }),
            alternatives: advice.alternatives.iter().map(AlternativeForm::of).collect(),
            why: None,
        }
    }
}

#[derive(Serialize)]
struct TargetForm {
    family: &'static str,
    speed_mph: f64,
    vertical_break_in: f64,
    glove_side_break_in: f64,
    window: WindowForm,
    spin_rpm: f64,
    active_fraction: f64,
    spin_clock: String,
    gyro_deg: f64,
    seam_shift_in: SeamForm,
    dot: DotsForm,
}

impl TargetForm {
    fn of(target: &Candidate, hand: Hand) -> Self {
        let Recipe { shape, spin, seam_in } = target.recipe;
        Self {
            family: target.family.name(),
            speed_mph: round(shape.speed_mph, 1),
            vertical_break_in: round(shape.vertical_break_in, 1),
            glove_side_break_in: round(shape.glove_side_break_in, 1),
            window: WindowForm::of(target.window),
            spin_rpm: round(spin.rpm, 0),
            active_fraction: round(spin.active_fraction, 3),
            spin_clock: spin.clock.for_hand(hand).to_string(),
            gyro_deg: round(spin.gyro_deg(), 1),
            seam_shift_in: SeamForm::of(seam_in),
            dot: DotsForm::of(spin.dot(), hand),
        }
    }
}

#[derive(Serialize)]
struct GainForm {
    same_side: EstimateForm,
    opposite_side: EstimateForm,
    overall: EstimateForm,
}

#[derive(Serialize)]
struct BeforeAfterForm {
    same_side: BeforeAfter,
    opposite_side: BeforeAfter,
}

#[derive(Serialize)]
struct BeforeAfter {
    before: Vec<PitchForm>,
    after: Vec<PitchForm>,
}

#[derive(Serialize)]
struct AlternativeForm {
    family: &'static str,
    in_reach: bool,
    speed_mph: Option<f64>,
    vertical_break_in: Option<f64>,
    glove_side_break_in: Option<f64>,
    gain_runs_per_100: Option<EstimateForm>,
    chance_real: Option<f64>,
    effort: Option<f64>,
}

impl AlternativeForm {
    fn of(alternative: &Alternative) -> Self {
        let candidate = alternative.candidate.as_ref();
        let worth = candidate.map(|candidate| &candidate.worth);
        let shape = candidate.map(|candidate| candidate.recipe.shape);
        Self {
            family: alternative.family.name(),
            in_reach: candidate.is_some(),
            speed_mph: shape.map(|shape| round(shape.speed_mph, 1)),
            vertical_break_in: shape.map(|shape| round(shape.vertical_break_in, 1)),
            glove_side_break_in: shape.map(|shape| round(shape.glove_side_break_in, 1)),
            gain_runs_per_100: worth.map(|worth| EstimateForm::of(worth.overall)),
            chance_real: worth.map(|worth| round(worth.chance_real, 3)),
            effort: candidate.map(|candidate| round(candidate.effort, 2)),
        }
    }
}

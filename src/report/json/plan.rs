//! `plan`: phases with their gates and every throwing day, or the reasons for no plan. The key
//! `refused` is null when there is a plan.

use serde::Serialize;

use crate::athlete::profile::Profile;
use crate::base::stats::Estimate;
use crate::learn::plan::{GUIDELINE_RECORD, Gate, Need, Phase, PhaseKind, Plan, PlanDay, STOP_RULES};

use super::super::follow::{NoPlan, Start, advised};
use super::progress::kind;
use super::shared::{ChaseForm, EstimateForm};
use super::{pretty, round};

/// The refusal.
pub fn no_plan(profile: &Profile, why: &NoPlan, unwritten: &[String]) -> String {
    pretty(&NoPlanForm {
        athlete: &profile.athlete.name,
        refused: why.headline(),
        reasons: why.reasons(),
        not_written: unwritten,
    })
}

/// The whole plan.
pub fn plan(start: &Start, plan: &Plan) -> String {
    pretty(&PlanForm {
        athlete: &plan.athlete,
        refused: None,
        target: ChaseForm::of(&plan.target),
        start: plan.span.start().to_string(),
        end: plan.span.end().to_string(),
        weekdays: plan.weekdays.to_string(),
        advice: start.advice.and_then(advised),
        stop_findings: start.stops.iter().map(|finding| kind(finding.kind)).collect(),
        phases: plan.phases.iter().map(PhaseForm::of).collect(),
        days: plan.days.iter().map(DayForm::of).collect(),
        stop_rules: STOP_RULES,
        record_every_day: GUIDELINE_RECORD,
        cautions: &plan.cautions,
        assumptions: &start.profile.assumptions,
        written: start.written,
    })
}

#[derive(Serialize)]
struct NoPlanForm<'a> {
    athlete: &'a str,
    refused: String,
    reasons: Vec<String>,
    not_written: &'a [String],
}

#[derive(Serialize)]
struct PlanForm<'a> {
    athlete: &'a str,
    refused: Option<String>,
    target: ChaseForm,
    start: String,
    end: String,
    weekdays: String,
    advice: Option<String>,
    stop_findings: Vec<&'static str>,
    phases: Vec<PhaseForm>,
    days: Vec<DayForm>,
    stop_rules: [&'static str; 5],
    record_every_day: [&'static str; 2],
    cautions: &'a [String],
    assumptions: &'a [String],
    written: &'a [String],
}

#[derive(Serialize)]
struct PhaseForm {
    step: String,
    start: String,
    end: String,
    effort_percent: Option<u32>,
    what: Option<&'static str>,
    record: &'static [&'static str],
    gates: Vec<GateForm>,
}

impl PhaseForm {
    fn of(phase: &Phase) -> Self {
        let work = match phase.kind {
            PhaseKind::Rest => None,
            PhaseKind::Step(step) => Some(step.work()),
        };
        Self {
            step: phase.kind.to_string(),
            start: phase.span.start().to_string(),
            end: phase.span.end().to_string(),
            effort_percent: work.map(|work| work.effort_percent),
            what: work.map(|work| work.what),
            record: work.map_or(&[], |work| work.record),
            gates: phase.gates.iter().map(GateForm::of).collect(),
        }
    }
}

#[derive(Serialize)]
struct GateForm {
    measure: &'static str,
    at_least: Option<f64>,
    at_most: Option<f64>,
    now: Option<EstimateForm>,
    is_met: Option<bool>,
}

impl GateForm {
    fn of(gate: &Gate) -> Self {
        let (at_least, at_most) = match gate.need {
            Need::AtLeast(least) => (Some(round(least, 3)), None),
            Need::AtMost(most) => (None, Some(round(most, 3))),
        };
        let now = gate.now.map(|now: Estimate| EstimateForm::of(now));
        Self { measure: gate.measure.name(), at_least, at_most, now, is_met: gate.is_met() }
    }
}

#[derive(Serialize)]
struct DayForm {
    date: String,
    week: u32,
    step: String,
    throws: u32,
    new_pitch: u32,
    others: u32,
    effort_percent: u32,
    lighter_week: bool,
    rest_days_after: u32,
}

impl DayForm {
    fn of(day: &PlanDay) -> Self {
        Self {
            date: day.date.to_string(),
            week: day.week,
            step: day.step.to_string(),
            throws: day.throws(),
            new_pitch: day.new_pitch,
            others: day.others,
            effort_percent: day.effort_percent,
            lighter_week: day.deload,
            rest_days_after: day.rest_after,
        }
    }
}

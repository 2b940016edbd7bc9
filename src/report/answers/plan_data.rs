//! `plan` for machines: phases with their gates and every throwing day, or the reasons for no plan.
//! The key `refused` is null when there is a plan.

use crate::athlete::profile::Profile;
use crate::learn::plan::{Gate, Need, Phase, PhaseKind, Plan, PlanDay};

use super::super::content::data::{Data, list, number};
use super::super::content::{Text, object};
use super::super::words::steps;
use super::ground::target_data;
use super::plan_start::Start;
use super::progress_data::kind_key;

/// The refusal.
pub(crate) fn no_plan_data(profile: &Profile, headline: &Text, reasons: &[Text], unwritten: &[String]) -> Data {
    object! {
        "athlete": &profile.athlete.name,
        "refused": headline,
        "reasons": list(reasons),
        "not_written": list(unwritten),
    }
}

/// The whole plan.
pub(crate) fn data(start: &Start, plan: &Plan, cautions: Vec<Text>) -> Data {
    object! {
        "athlete": &plan.athlete,
        "refused": Data::Null,
        "target": target_data(&plan.target),
        "start": plan.span.start().to_string(),
        "end": plan.span.end().to_string(),
        "weekdays": plan.weekdays.to_string(),
        "advice": start.advised(),
        "stop_findings": list(start.stops.iter().map(|finding| kind_key(finding.kind))),
        "phases": list(plan.phases.iter().map(phase_data)),
        "days": list(plan.days.iter().map(day_data)),
        "stop_rules": list(steps::STOP_RULES),
        "record_every_day": list(steps::EVERY_DAY),
        "cautions": list(cautions),
        "assumptions": list(&start.profile.assumptions),
        "written": list(start.written),
    }
}

fn phase_data(phase: &Phase) -> Data {
    let step = match phase.kind {
        PhaseKind::Rest => None,
        PhaseKind::Step(step) => Some(step),
    };
    object! {
        "step": steps::phase(phase.kind),
        "start": phase.span.start().to_string(),
        "end": phase.span.end().to_string(),
        "effort_percent": step.map(|step| step.work().effort_percent),
        "what": step.map(steps::work),
        "record": list(step.map_or(&[][..], steps::record).iter().copied()),
        "gates": list(phase.gates.iter().map(gate_data)),
    }
}

fn gate_data(gate: &Gate) -> Data {
    let (at_least, at_most) = match gate.need {
        Need::AtLeast(least) => (Some(least), None),
        Need::AtMost(most) => (None, Some(most)),
    };
    let end = |end: Option<f64>| end.map(|end| number(end, 3));
    object! {
        "measure": steps::measure(gate.measure),
        "at_least": end(at_least),
        "at_most": end(at_most),
        "now": gate.now,
        "is_met": gate.is_met(),
    }
}

fn day_data(day: &PlanDay) -> Data {
    object! {
        "date": day.date.to_string(),
        "week": day.week,
        "step": steps::step(day.step),
        "throws": day.throws(),
        "new_pitch": day.new_pitch,
        "others": day.others,
        "effort_percent": day.effort_percent,
        "lighter_week": day.deload,
        "rest_days_after": day.rest_after,
    }
}

//! The page of `plan`: the steps and what ends each, when to stop, then week by week.
//!
//! Single days are left to the calendar and the Markdown file; a page of fifty dates is not read.

use crate::cues::{SOURCE, cue};
use crate::plan::{GUIDELINE_RECORD, PhaseKind, Plan, PlanDay, STOP_RULES, Step};
use crate::profile::Profile;
use crate::progress::Finding;

use super::super::follow::{NoPlan, Start, advised, finding_headline};
use super::super::format::{plain, signed};
use super::Page;

/// The refusal, with what was not written.
pub fn no_plan(profile: &Profile, why: &NoPlan, unwritten: &[String], width: u16) -> String {
    let mut page = Page::new(width);
    page.title(profile);
    page.heading(&why.headline());
    page.list(why.reasons());
    let files = unwritten.iter().map(|path| format!("{path} was not written"));
    let rest: Vec<String> = why.next().map(str::to_owned).into_iter().chain(files).collect();
    if !rest.is_empty() {
        page.heading("Next");
        page.list(rest);
    }
    page.finish()
}

/// The whole plan.
pub fn plan(start: &Start, plan: &Plan, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(start.profile);
    page.heading(&format!("A new {}, {} to {}", plan.target.family, plan.span.start(), plan.span.end()));
    page.paragraph(&target(plan));
    first(&mut page, start);
    steps(&mut page, plan);
    page.heading("When to stop");
    page.list(STOP_RULES.map(str::to_owned));
    weeks(&mut page, plan);
    work(&mut page, plan);
    page.heading("Keep in mind");
    page.list(plan.cautions.iter().cloned());
    page.assumptions(start.profile);
    if !start.written.is_empty() {
        page.heading("Written");
        page.list(start.written.iter().cloned());
    }
    page.finish()
}

fn target(plan: &Plan) -> String {
    let shape = plan.target.shape;
    format!(
        "Target: {} mph, vertical break {} in, glove-side break {} in. Throwing on {}. Steps, volumes and gates are \
         {SOURCE}. A step is over when its gate is passed, not when its dates are.",
        plain(shape.speed_mph, 1),
        signed(shape.vertical_break_in, 1),
        signed(shape.glove_side_break_in, 1),
        plan.weekdays.to_string().replace(',', ", "),
    )
}

/// What comes before the first day of the plan.
fn first(page: &mut Page, start: &Start) {
    let stops = start.stops.iter().map(|finding: &Finding| {
        format!("{}, by the outings given: the plan waits until nothing says stop", finding_headline(finding))
    });
    let advice = start.advice.and_then(advised);
    let said: Vec<String> = stops.chain(advice).collect();
    if !said.is_empty() {
        page.heading("Before the first day");
        page.list(said);
    }
    if let Some(cue) = cue("slot-dropping").filter(|_| start.stops.iter().any(drops)) {
        page.list([format!("try: {}", cue.attempt)]);
    }
}

fn drops(finding: &Finding) -> bool {
    use crate::progress::Kind;
    matches!(finding.kind, Kind::SlotDropping | Kind::NewPitchSlotLower)
}

fn steps(page: &mut Page, plan: &Plan) {
    page.heading("The steps");
    let rows = plan.phases.iter().map(|phase| {
        let (days, effort) = match phase.kind {
            PhaseKind::Rest => ("-".into(), "-".into()),
            PhaseKind::Step(step) => (
                plan.days.iter().filter(|day| day.step == step).count().to_string(),
                format!("{} %", step.work().effort_percent),
            ),
        };
        vec![phase.kind.to_string(), phase.span.start().to_string(), phase.span.end().to_string(), days, effort]
    });
    page.table(&["step", "from", "to", "throwing days", "effort"], rows.collect());
    page.heading("What ends each step");
    page.list(plan.phases.iter().filter(|phase| !phase.gates.is_empty()).map(|phase| {
        let gates: Vec<String> = phase.gates.iter().map(ToString::to_string).collect();
        format!("{}: {}", phase.kind, gates.join("; "))
    }));
}

fn weeks(page: &mut Page, plan: &Plan) {
    page.heading("Week by week: throws on each day, and how many of them are the new pitch");
    let rows = plan.days.chunk_by(|a, b| a.week == b.week && a.step == b.step).map(|days| {
        let note = if days.iter().any(|day| day.deload) { "lighter" } else { "" };
        let span = |read: fn(&PlanDay) -> u32| {
            let (low, high) = (days.iter().map(read).min(), days.iter().map(read).max());
            let (low, high) = (low.unwrap_or(0), high.unwrap_or(0));
            if low == high { low.to_string() } else { format!("{low} to {high}") }
        };
        vec![
            days[0].week.to_string(),
            days[0].date.to_string(),
            days.len().to_string(),
            span(PlanDay::throws),
            span(|day| day.new_pitch),
            days[0].step.to_string(),
            note.into(),
        ]
    });
    page.table(&["week", "from", "days", "throws", "new", "step", ""], rows.collect());
}

fn work(page: &mut Page, plan: &Plan) {
    page.heading("What is done, and what is written down");
    let steps =
        Step::ALL.into_iter().filter(|&step| plan.phases.iter().any(|phase| phase.kind == PhaseKind::Step(step)));
    page.list(steps.map(|step| {
        let work = step.work();
        format!("{step}: {}. Write down: {}", work.what, work.record.join(", "))
    }));
    page.list([format!("every throwing day: {}", GUIDELINE_RECORD.join("; "))]);
}

//! The page of `plan`: what comes first, the weeks as a picture, what ends each step, when to
//! stop. Single days are left to the calendar and the Markdown file, as in the terminal.

use crate::athlete::profile::Profile;
use crate::learn::plan::{Phase, PhaseKind, Plan, PlanDay, STOP_RULES, Step};

use super::super::charts::{Picture, Table, Week, calendar};
use super::super::follow::{NoPlan, Start};
use super::super::learning::{before, gates_of, plan_target, step_rows, work};
use super::{Page, about};

/// The refusal, with what was not written.
pub fn no_plan(profile: &Profile, why: &NoPlan, unwritten: &[String]) -> String {
    let mut page = Page::new(&profile.athlete.name, &why.headline(), &about(profile));
    page.list("Why", why.reasons());
    let files = unwritten.iter().map(|path| format!("not written: {path}"));
    page.list("Next", why.next().map(str::to_owned).into_iter().chain(files));
    page.assumptions(profile);
    page.finish()
}

/// The whole plan.
pub fn plan(start: &Start, plan: &Plan) -> String {
    // A date in large letters must not break at its hyphens.
    let [from, to] = [plan.span.start(), plan.span.end()].map(|date| date.to_string().replace('-', "\u{2011}"));
    let headline = format!("A new {}, {from} to {to}.", plan.target.family);
    let mut page = Page::new(&start.profile.athlete.name, &headline, &about(start.profile));
    page.list("What it is", [plan_target(plan)]);
    page.list("Before the first day", before(start));
    page.pictures("Week by week", "weeks", [weeks(plan)]);
    page.table("The steps", &steps(plan));
    page.list("What ends each step", gates_of(plan));
    page.list("When to stop", STOP_RULES.map(str::to_owned));
    page.list("What is done, and what is written down", work(plan));
    page.list("Keep in mind", plan.cautions.iter().cloned());
    page.assumptions(start.profile);
    page.list("Written", start.written.iter().map(|path| format!("beside this page: {path}")));
    page.finish()
}

fn weeks(plan: &Plan) -> Picture {
    let weeks: Vec<Week> = plan.phases.iter().flat_map(|phase| weeks_of(plan, phase)).collect();
    calendar("Throws of each week, and the step it belongs to".into(), &weeks, &plan.span.end().to_string())
}

fn weeks_of(plan: &Plan, phase: &Phase) -> Vec<Week> {
    let PhaseKind::Step(step) = phase.kind else { return rest_of(phase) };
    let inside = |day: &&PlanDay| day.step == step && day.date >= phase.span.start() && day.date <= phase.span.end();
    let days: Vec<PlanDay> = plan.days.iter().filter(inside).copied().collect();
    let week = |days: &[PlanDay]| Week {
        from: days[0].date.to_string(),
        step: Step::ALL.iter().position(|&other| other == step),
        name: step.to_string(),
        days: days.len(),
        throws: days.iter().map(PlanDay::throws).sum(),
        new: days.iter().map(|day| day.new_pitch).sum(),
        lighter: days.iter().any(|day| day.deload),
    };
    days.chunk_by(|a, b| a.week == b.week).map(week).collect()
}

/// The weeks of a rest; one that is not whole counts as one.
fn rest_of(phase: &Phase) -> Vec<Week> {
    let dates: Vec<String> = phase.span.dates().map(|date| date.to_string()).collect();
    let week = |dates: &[String]| Week {
        from: dates[0].clone(),
        step: None,
        name: phase.kind.to_string(),
        days: 0,
        throws: 0,
        new: 0,
        lighter: false,
    };
    dates.chunks(7).map(week).collect()
}

fn steps(plan: &Plan) -> Table {
    Table::new(&["step", "from", "to", "throwing days", "effort"], step_rows(plan))
}

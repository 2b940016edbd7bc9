//! The page of `plan`: the steps and what ends each, when to stop, then week by week.
//!
//! Single days are left to the calendar and the Markdown file; a page of fifty dates is not read.

use crate::athlete::profile::Profile;
use crate::learn::plan::{Plan, PlanDay, STOP_RULES};

use super::super::follow::{NoPlan, Start};
use super::super::learning::{before, gates_of, plan_target, step_rows, work};
use super::Page;

/// The refusal, with what was not written.
pub fn no_plan(profile: &Profile, why: &NoPlan, unwritten: &[String], width: u16) -> String {
    let mut page = Page::new(width);
    page.title(profile);
    page.heading(&why.headline());
    page.list(why.reasons());
    let files = unwritten.iter().map(|path| format!("{path} was not written"));
    let rest: Vec<String> = why.next().map(str::to_owned).into_iter().chain(files).collect();
    page.section("Next", rest);
    page.finish()
}

/// The whole plan.
pub fn plan(start: &Start, plan: &Plan, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(start.profile);
    page.heading(&format!("A new {}, {} to {}", plan.target.family, plan.span.start(), plan.span.end()));
    page.paragraph(&plan_target(plan));
    let before = before(start);
    page.section("Before the first day", before);
    steps(&mut page, plan);
    page.heading("When to stop");
    page.list(STOP_RULES.map(str::to_owned));
    weeks(&mut page, plan);
    page.heading("What is done, and what is written down");
    page.list(work(plan));
    page.heading("Keep in mind");
    page.list(plan.cautions.iter().cloned());
    page.assumptions(start.profile);
    page.section("Written", start.written.iter().cloned());
    page.finish()
}

fn steps(page: &mut Page, plan: &Plan) {
    page.heading("The steps");
    page.table(&["step", "from", "to", "throwing days", "effort"], step_rows(plan));
    page.heading("What ends each step");
    page.list(gates_of(plan));
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

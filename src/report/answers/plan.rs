//! The answer of `plan`: the steps and what ends each, when to stop, then week by week; or why there
//! is no plan. Single days are left to the calendar and the sheet; a page of fifty dates is not read.

use crate::athlete::profile::Profile;
use crate::base::Range;
use crate::learn::cues::Cue;
use crate::learn::plan::{Phase, PhaseKind, Plan, PlanDay, Step as PlanStep};
use crate::learn::progress::{Finding, Kind};

use super::super::charts::{Week, calendar};
use super::super::content::amount::{share, speed};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, row, text};
use super::super::words::cues::{self, SOURCE};
use super::super::words::{advice, findings, health, steps};
use super::about::{about, assumed};
use super::dot::breaks;
use super::plan_data::{data, no_plan_data};
use super::plan_start::{NoPlan, Start};

/// The refusal, with what was not written; `file` is where the profile lies.
pub fn no_plan(profile: &Profile, file: &str, why: &NoPlan, unwritten: &[String]) -> Answer {
    let (headline, reasons): (Text, Vec<Text>) = match why {
        NoPlan::Barred(bar) => (
            format!("There is {}.", health::refused(bar.scope)).into(),
            bar.reasons.iter().map(|&reason| health::reason(reason)).collect(),
        ),
        NoPlan::NoRest(dates) => ("There is no plan for these dates.".into(), vec![steps::no_rest(dates)]),
        NoPlan::Advised(said) => (
            text!["There is no plan for this pitch. ", advice::headline(said)],
            said.reasons.iter().map(|reason| advice::reason(reason, profile.athlete.level)).collect(),
        ),
    };
    let other = matches!(why, NoPlan::Advised(_)).then(|| plan_another(file));
    let files = unwritten.iter().map(|path| Step::act(text![name(path), " was not written"]));
    let data = no_plan_data(profile, &headline, &reasons, unwritten);
    about(profile, headline)
        .lead(reasons)
        .with(Section::next(other.into_iter().chain(files).collect()))
        .with(assumed(profile))
        .machine(data)
}

fn plan_another(file: &str) -> Step {
    let words = ["plan", file, "--start", "FIRST-DAY", "--end", "LAST-DAY", "--family", "PITCH"];
    Step::ask(
        Command::arsenalfit(words),
        "plans another pitch; a target of three numbers plans a shape of your own all the same",
    )
}

/// The whole plan.
pub fn plan(start: &Start, plan: &Plan) -> Answer {
    let span = [plan.span.start(), plan.span.end()];
    let cautions: Vec<Text> = plan.cautions.iter().map(|&doubt| steps::caution(doubt)).collect();
    about(start.profile, text!["A new ", plan.target.family, ", ", span[0], " to ", span[1]])
        .lead_paragraph(target(plan))
        .with(Section::new("Before the first day").bullets(before(start)))
        .with(Section::new("The steps").table(step_table(plan)))
        .with(Section::new("What ends each step").bullets(gates(plan)))
        .with(Section::new("When to stop").bullets(steps::STOP_RULES))
        .with(weeks(plan))
        .with(Section::new("What is done, and what is written down").bullets(work(plan)))
        .with(Section::new("Keep in mind").bullets(cautions.clone()))
        .with(assumed(start.profile))
        .with(Section::new("Written").bullets(start.written.iter().map(|path| name(path))))
        .machine(data(start, plan, cautions))
}

/// The target and how to read the dates.
fn target(plan: &Plan) -> Text {
    let shape = plan.target.shape;
    let days = plan.weekdays.to_string().replace(',', ", ");
    text![
        "Target: ",
        speed(shape.speed_mph),
        ", ",
        breaks(shape.vertical_break_in, shape.glove_side_break_in),
        format!(
            ". Throwing on {days}. Steps, volumes and gates are {SOURCE}. A step is over when its gate is passed, not \
             when its dates are."
        )
    ]
}

/// What comes before the first day.
fn before(start: &Start) -> Vec<Text> {
    let stops = start.stops.iter().map(|finding| {
        let stop = findings::headline(finding);
        format!("{stop}, by the outings given: the plan waits until nothing says stop").into()
    });
    let drops = |finding: &Finding| matches!(finding.kind, Kind::SlotDropping | Kind::NewPitchSlotLower);
    let attempt = start.stops.iter().any(drops).then(|| cues::advice(Cue::SlotDropping).attempt);
    stops.chain(start.advised()).chain(attempt.map(|attempt| format!("try: {attempt}").into())).collect()
}

/// Each step: its name, first and last day, throwing days, effort.
fn step_table(plan: &Plan) -> Table {
    let rows = plan.phases.iter().map(|phase| {
        let step = match phase.kind {
            PhaseKind::Rest => None,
            PhaseKind::Step(step) => Some(step),
        };
        let days = step.map(|step| plan.days.iter().filter(|day| day.step == step).count());
        let effort = step.map(|step| share(f64::from(step.work().effort_percent) / 100.0));
        row![steps::phase(phase.kind), phase.span.start(), phase.span.end(), days, effort]
    });
    Table::new(columns!["step", "from", "to", "throwing days", "effort"], rows)
}

/// What ends each step.
fn gates(plan: &Plan) -> Vec<Text> {
    let gated = plan.phases.iter().filter(|phase| !phase.gates.is_empty());
    let line =
        |phase: &Phase| text![steps::phase(phase.kind), ": ", Text::joined(phase.gates.iter().map(steps::gate), "; ")];
    gated.map(line).collect()
}

/// What is done in each step, and what is written down.
fn work(plan: &Plan) -> Vec<Text> {
    let is_planned = |step: &PlanStep| plan.phases.iter().any(|phase| phase.kind == PhaseKind::Step(*step));
    let said = PlanStep::ALL.into_iter().filter(is_planned).map(|step| {
        format!("{}: {}. Write down: {}", steps::step(step), steps::work(step), steps::record(step).join(", ")).into()
    });
    said.chain([format!("every throwing day: {}", steps::EVERY_DAY.join("; ")).into()]).collect()
}

fn weeks(plan: &Plan) -> Section {
    let weeks: Vec<Week> = plan.phases.iter().flat_map(|phase| weeks_of(plan, phase)).collect();
    let title = "Throws of each week, and the step it belongs to";
    let picture: Picture = calendar(title.into(), &weeks, plan.span.end());
    Section::new("Week by week: throws, and how many of them are the new pitch").picture(picture)
}

fn weeks_of(plan: &Plan, phase: &Phase) -> Vec<Week> {
    let PhaseKind::Step(step) = phase.kind else { return rest_of(phase) };
    let inside = |day: &&PlanDay| day.step == step && day.date >= phase.span.start() && day.date <= phase.span.end();
    let days: Vec<PlanDay> = plan.days.iter().filter(inside).copied().collect();
    let week = |days: &[PlanDay]| Week {
        from: days[0].date,
        step: PlanStep::ALL.iter().position(|&other| other == step),
        name: steps::step(step),
        days: days.len(),
        daily: daily(days),
        throws: days.iter().map(PlanDay::throws).sum(),
        new: days.iter().map(|day| day.new_pitch).sum(),
        lighter: days.iter().any(|day| day.deload),
    };
    days.chunk_by(|a, b| a.week == b.week).map(week).collect()
}

fn daily(days: &[PlanDay]) -> Range {
    let throws = || days.iter().map(|day| f64::from(day.throws()));
    Range::new(throws().fold(f64::INFINITY, f64::min), throws().fold(0.0, f64::max))
}

/// The weeks of a rest; one that is not whole counts as one.
fn rest_of(phase: &Phase) -> Vec<Week> {
    let (name, daily) = (steps::phase(phase.kind), Range::about(0.0, 0.0));
    let week = |from| Week { from, step: None, name, days: 0, daily, throws: 0, new: 0, lighter: false };
    phase.span.dates().step_by(7).map(week).collect()
}

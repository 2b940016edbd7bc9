//! A plan day by day, to print or to share: what is done in each step, what is written down, the
//! gate, and every throwing day.

use crate::learn::plan::{Phase, PhaseKind, Plan, PlanDay};

use super::super::content::amount::{share, speed};
use super::super::content::{Answer, Section, Table, Text, columns, name, row, say};
use super::super::words::cues::SOURCE;
use super::super::words::health::GUIDELINES;
use super::super::words::steps;
use super::dot::breaks;

/// The whole plan.
pub fn plan_sheet(plan: &Plan) -> Answer {
    let cautions = plan.cautions.iter().map(|&doubt| steps::caution(doubt));
    Answer::new(name(&plan.athlete), "", say!("learning a {}", plan.target.family))
        .lead_paragraph(dates_and_target(plan))
        .lead_paragraph(format!(
            "Steps, volumes and gates are {SOURCE}. Limits: {GUIDELINES}. A step is over when its gate is met, not when \
             its dates are."
        ))
        .with_all(plan.phases.iter().map(|phase| phase_section(plan, phase)))
        .with(Section::new("Stop").bullets(steps::STOP_RULES))
        .with(Section::new("Keep in mind").bullets(cautions))
}

fn dates_and_target(plan: &Plan) -> Text {
    let shape = plan.target.shape;
    say!(
        "{} to {}{}{}, {}.",
        plan.span.start(),
        plan.span.end(),
        format!(", throwing on {}. Target: ", plan.weekdays),
        speed(shape.speed_mph),
        breaks(shape.vertical_break_in, shape.glove_side_break_in)
    )
}

fn phase_section(plan: &Plan, phase: &Phase) -> Section {
    let dates = say!(" ({} to {})", phase.span.start(), phase.span.end());
    let section = Section::new(Text::from(steps::phase(phase.kind)).and(dates));
    let PhaseKind::Step(step) = phase.kind else {
        return section.bullets(["no throwing of any kind; other training as the coach sees fit"]);
    };
    let effort = share(f64::from(step.work().effort_percent) / 100.0);
    let days = plan.days.iter().filter(|day| (phase.span.start()..=phase.span.end()).contains(&day.date));
    section
        .bullets([say!("{}, {} effort", steps::work(step), effort)])
        .subheading("Write down")
        .bullets(steps::record(step).iter().chain(&steps::EVERY_DAY).copied())
        .subheading("Gate")
        .bullets(phase.gates.iter().map(steps::gate))
        .table(day_table(days))
}

fn day_table<'d>(days: impl Iterator<Item = &'d PlanDay>) -> Table {
    let rows = days.map(|day| {
        let weekday = format!("{:?}", day.date.weekday());
        let note = if day.deload { "lighter week" } else { "" };
        let date = say!("{} {}", &weekday[..3], day.date);
        row![date, day.week, day.throws(), day.new_pitch, day.others, note]
    });
    Table::new(columns!["date", "week", "throws", "new pitch", "others", ""], rows)
}

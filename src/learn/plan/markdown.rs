//! The plan as Markdown, for printing or for a shared folder.
//!
//! One section for each phase with what to do, what to write down, the gate and the days; then the
//! rules that stop the work. The words come from [`super::words`]; nothing is decided here.

use std::fmt::Write as _;

use super::limits::SOURCE;
use super::words::{GUIDELINE_RECORD, STOP_RULES, rounded};
use super::{Phase, PhaseKind, Plan, PlanDay};

impl Plan {
    /// The plan as Markdown text.
    pub fn markdown(&self) -> String {
        let mut text = self.head();
        for phase in &self.phases {
            text += &self.phase_section(phase);
        }
        text += &section("Stop", STOP_RULES);
        text += &section("Keep in mind", &self.cautions);
        text
    }

    fn head(&self) -> String {
        let shape = self.target.shape;
        format!(
            "# {}: learning a {}\n\n{} to {}, throwing on {}. Target: {:.1} mph, {:+.1} in vertical break, {:+.1} in \
             glove-side break.\n\nSteps, volumes and gates are common practice, no published source. Limits: {SOURCE}. \
             A step is over when its gate is met, not when its dates are.\n",
            escaped(&self.athlete),
            self.target.family,
            self.span.start(),
            self.span.end(),
            self.weekdays,
            shape.speed_mph,
            rounded(shape.vertical_break_in, 1),
            rounded(shape.glove_side_break_in, 1),
        )
    }

    fn phase_section(&self, phase: &Phase) -> String {
        let title = format!("{} ({} to {})", phase.kind, phase.span.start(), phase.span.end());
        let PhaseKind::Step(step) = phase.kind else {
            return section(&title, ["no throwing of any kind; other training as his coach sees fit"]);
        };
        let work = step.work();
        let mut text = section(&title, [format!("{}, {} % effort", work.what, work.effort_percent)]);
        text += &section_level("Write down", 3, work.record.iter().chain(&GUIDELINE_RECORD));
        text += &section_level("Gate", 3, &phase.gates);
        text + &day_table(self.days.iter().filter(|day| (phase.span.start()..=phase.span.end()).contains(&day.date)))
    }
}

fn section<T: std::fmt::Display>(title: &str, lines: impl IntoIterator<Item = T>) -> String {
    section_level(title, 2, lines)
}

fn section_level<T: std::fmt::Display>(title: &str, level: usize, lines: impl IntoIterator<Item = T>) -> String {
    let mut text = format!("\n{} {title}\n\n", "#".repeat(level));
    for line in lines {
        let _ = writeln!(text, "- {line}");
    }
    text
}

fn day_table<'d>(days: impl Iterator<Item = &'d PlanDay>) -> String {
    let mut text = String::from("\n| date | week | throws | new pitch | others | |\n|---|---|---|---|---|---|\n");
    for day in days {
        let note = if day.deload { "lighter week" } else { "" };
        let (date, weekday) = (day.date, &format!("{:?}", day.date.weekday())[..3]);
        let _ = writeln!(
            text,
            "| {weekday} {date} | {} | {} | {} | {} | {note} |",
            day.week,
            day.throws(),
            day.new_pitch,
            day.others
        );
    }
    text
}

/// `text` with everything escaped that Markdown would read as markup.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        if c.is_ascii_punctuation() {
            out.push('\\');
        }
        out.push(if c.is_control() { ' ' } else { c });
    }
    out
}

//! The plan as an iCalendar text (RFC 5545), by the `icalendar` crate.
//!
//! Every event is a whole day or a run of whole days: no time, no zone, so nothing moves when the
//! clocks change. The text is the same for the same plan: stamps are the plan's own first day and
//! identifiers come from what the plan says, so a plan imported twice replaces itself.

use icalendar::{Calendar, Component, Event, Property};
use jiff::civil::Date;

use super::words::{GUIDELINE_RECORD, STOP_RULES};
use super::{Phase, PhaseKind, Plan, PlanDay, Span};

impl Plan {
    /// The plan as iCalendar text, lines ended by CR LF.
    pub fn calendar(&self) -> String {
        let title = format!("{}: {}", self.athlete, self.target.family);
        let mut calendar = Calendar::empty();
        for (key, value) in [("VERSION", "2.0"), ("PRODID", "-//arsenalfit//plan//EN"), ("CALSCALE", "GREGORIAN")] {
            calendar.append_property(Property::new(key, value).done());
        }
        calendar.append_property(Property::new("X-WR-CALNAME", clean(&title)).done());
        for phase in &self.phases {
            calendar.push(self.phase_event(phase));
        }
        for day in &self.days {
            calendar.push(self.day_event(day));
        }
        calendar.to_string()
    }

    fn phase_event(&self, phase: &Phase) -> Event {
        let summary = format!("{}: {}", self.target.family, phase.kind);
        self.event(phase.span, "phase", &summary, &phase_text(phase))
    }

    fn day_event(&self, day: &PlanDay) -> Event {
        let lighter = if day.deload { ", lighter week" } else { "" };
        let summary =
            format!("{} throws, {} {} ({}{lighter})", day.throws(), day.new_pitch, self.target.family, day.step);
        let text = format!(
            "{}\n{} % effort; {} throws of the new pitch, {} of the others\nWrite down:\n{}\n{}",
            day.step.work().what,
            day.effort_percent,
            day.new_pitch,
            day.others,
            lines(day.step.work().record.iter().chain(&GUIDELINE_RECORD)),
            STOP_RULES[0],
        );
        Span::new(day.date, day.date).map_or_else(|_| Event::new(), |span| self.event(span, "day", &summary, &text))
    }

    fn event(&self, span: Span, kind: &str, summary: &str, text: &str) -> Event {
        let after = span.end().tomorrow().unwrap_or(span.end());
        let uid = format!("{kind}-{}-{:016x}@arsenalfit.invalid", compact(span.start()), self.fingerprint());
        Event::with_uid(&uid)
            .summary(&clean(summary))
            .description(text)
            .append_property(Property::new("DTSTAMP", format!("{}T000000Z", compact(self.span.start()))).done())
            .append_property(whole_day("DTSTART", span.start()))
            .append_property(whole_day("DTEND", after))
            .append_property(Property::new("TRANSP", "TRANSPARENT").done())
            .done()
    }

    /// A number that differs between athletes and pitches and stays the same between runs (64-bit
    /// Fowler-Noll-Vo hash, variant 1a).
    fn fingerprint(&self) -> u64 {
        let bytes = self.athlete.bytes().chain([0]).chain(self.target.family.name().bytes());
        bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
    }
}

fn phase_text(phase: &Phase) -> String {
    let PhaseKind::Step(step) = phase.kind else {
        return "No throwing of any kind.".into();
    };
    format!("{}\nGate:\n{}\nStop:\n{}", step.work().what, lines(&phase.gates), lines(STOP_RULES))
}

fn lines<T: std::fmt::Display>(items: impl IntoIterator<Item = T>) -> String {
    items.into_iter().map(|item| format!("- {item}")).collect::<Vec<_>>().join("\n")
}

fn whole_day(key: &str, date: Date) -> Property {
    Property::new(key, compact(date)).add_parameter("VALUE", "DATE").done()
}

fn compact(date: Date) -> String {
    format!("{:04}{:02}{:02}", date.year(), date.month(), date.day())
}

/// One line without control characters, as a calendar's title must be.
fn clean(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}

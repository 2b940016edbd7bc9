//! A plan as an iCalendar text (RFC 5545), by the `icalendar` crate.
//!
//! Every event is a whole day or a run of whole days: no time, no zone, so nothing moves when the
//! clocks change. The text is the same for the same plan: stamps are the plan's own first day and
//! identifiers come from what the plan says, so a plan imported twice replaces itself.

use icalendar::{Calendar, Component, Event, Property};
use jiff::civil::Date;

use crate::learn::plan::{Phase, PhaseKind, Plan, PlanDay, Span};

use super::super::words::steps::{EVERY_DAY, STOP_RULES, gate, phase as phase_name, record, step, work};

/// `plan` as iCalendar text, lines ended by CR LF.
pub fn calendar(plan: &Plan) -> String {
    let title = format!("{}: {}", plan.athlete, plan.target.family);
    let mut calendar = Calendar::empty();
    for (key, value) in [("VERSION", "2.0"), ("PRODID", "-//arsenalfit//plan//EN"), ("CALSCALE", "GREGORIAN")] {
        calendar.append_property(Property::new(key, value).done());
    }
    calendar.append_property(Property::new("X-WR-CALNAME", clean(&title)).done());
    for phase in &plan.phases {
        let summary = format!("{}: {}", plan.target.family, phase_name(phase.kind));
        calendar.push(event(plan, phase.span, "phase", &summary, &phase_text(phase)));
    }
    for event in plan.days.iter().filter_map(|day| day_event(plan, day)) {
        calendar.push(event);
    }
    calendar.to_string()
}

fn day_event(plan: &Plan, day: &PlanDay) -> Option<Event> {
    let lighter = if day.deload { ", lighter week" } else { "" };
    let summary =
        format!("{} throws, {} {} ({}{lighter})", day.throws(), day.new_pitch, plan.target.family, step(day.step));
    let text = format!(
        "{}\n{} % effort; {} throws of the new pitch, {} of the others\nWrite down:\n{}\n{}",
        work(day.step),
        day.effort_percent,
        day.new_pitch,
        day.others,
        lines(record(day.step).iter().chain(&EVERY_DAY)),
        STOP_RULES[0],
    );
    Span::new(day.date, day.date).ok().map(|span| event(plan, span, "day", &summary, &text))
}

fn event(plan: &Plan, span: Span, kind: &str, summary: &str, text: &str) -> Event {
    let after = span.end().tomorrow().unwrap_or(span.end());
    let uid = format!("{kind}-{}-{:016x}@arsenalfit.invalid", compact(span.start()), fingerprint(plan));
    Event::with_uid(&uid)
        .summary(&clean(summary))
        .description(text)
        .append_property(Property::new("DTSTAMP", format!("{}T000000Z", compact(plan.span.start()))).done())
        .append_property(whole_day("DTSTART", span.start()))
        .append_property(whole_day("DTEND", after))
        .append_property(Property::new("TRANSP", "TRANSPARENT").done())
        .done()
}

/// A number that differs between athletes and pitches and stays the same between runs (64-bit
/// Fowler-Noll-Vo hash, variant 1a).
fn fingerprint(plan: &Plan) -> u64 {
    let bytes = plan.athlete.bytes().chain([0]).chain(plan.target.family.name().bytes());
    bytes.fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

fn phase_text(phase: &Phase) -> String {
    let PhaseKind::Step(step) = phase.kind else {
        return "No throwing of any kind.".into();
    };
    format!("{}\nGate:\n{}\nStop:\n{}", work(step), lines(phase.gates.iter().map(gate)), lines(STOP_RULES))
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

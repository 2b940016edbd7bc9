//! Laying the steps over the calendar, and throws over the days.
//!
//! 1. When the year has had less than two months without throwing, the plan begins with two
//!    months of rest (guideline, see [`super::limits`]).
//! 2. The weeks left go to as many steps as fit, each with its fewest weeks, the rest by share.
//! 3. Throws on a day rise with every full week to the step's number, every fourth week is lighter, and
//!    the day's number is cut to half the daily limit and to what the rest before the next
//!    throwing day allows.
//! 4. Days that leave less than the guideline's months of the year without throwing are no plan.
//!
//! The rise, the lighter week and the half are common practice, no published source.

use jiff::ToSpan;
use jiff::civil::Date;

use super::dated::{NoRest, Phase, PhaseKind, PlanDay, Request};
use super::limits::DayLimit;
use super::span::{Span, days_between};
use super::steps::{Step, first_step, gates, new_pitches};

/// Months without throwing in a year that the guideline asks for.
pub const MONTHS_OFF: u8 = 4;
/// Months in a row.
pub const MONTHS_IN_A_ROW: u8 = 2;

const MONTHS_OF_YEAR: i32 = 12;

/// Throws on the first day, and how many more each week may bring.
const FIRST_THROWS: u32 = 15;
const RISE_PER_WEEK: u32 = 4;
/// Every how many weeks one is lighter, and its percent of the throws.
const DELOAD_EVERY: u32 = 4;
const DELOAD_PERCENT: u32 = 60;
/// Percent of the daily limit a plan uses: warm-up, catch and other sessions need the rest.
const LIMIT_PERCENT: u32 = 50;

/// The phases of `request`; they fill its span without gaps.
pub(super) fn phases(request: &Request) -> Vec<Phase> {
    let (rest, work) = request.span.split_at(throwing_start(request));
    let rest = rest.map(|span| Phase { kind: PhaseKind::Rest, span, gates: Vec::new() });
    let steps = work.map(|work| step_phases(request, work)).unwrap_or_default();
    rest.into_iter().chain(steps).collect()
}

/// The first day on which throwing is allowed; past the end when rest takes it all.
fn throwing_start(request: &Request) -> Date {
    let start = request.span.start();
    let rested = request.profile.health.months_off.is_none_or(|months| months >= MONTHS_IN_A_ROW);
    if rested { start } else { start.saturating_add(i32::from(MONTHS_IN_A_ROW).months()) }
}

fn step_phases(request: &Request, work: Span) -> Vec<Phase> {
    let first = first_step(request.target, &request.measured);
    let weeks = usize::try_from(work.days().div_ceil(7)).unwrap_or(1);
    let shared = share_weeks(first, weeks);
    let mut start = work.start();
    let last = shared.len().saturating_sub(1);
    let mut phases = Vec::new();
    for (place, (step, weeks)) in shared.into_iter().enumerate() {
        let next = start.saturating_add(i64::try_from(weeks).unwrap_or(0).weeks());
        let end = if place == last { work.end() } else { next.yesterday().unwrap_or(next).min(work.end()) };
        let Ok(span) = Span::new(start, end) else { break };
        phases.push(Phase { kind: PhaseKind::Step(step), span, gates: gates(step, request.target, &request.measured) });
        start = next;
    }
    phases
}

/// The steps from `first` that fit into `weeks`, with the weeks each gets; they sum to `weeks`.
fn share_weeks(first: Step, weeks: usize) -> Vec<(Step, usize)> {
    let mut left = weeks;
    let mut shared: Vec<(Step, usize)> = Vec::new();
    for step in Step::ALL.into_iter().filter(|&step| step >= first) {
        let fewest = step.weeks().0.min(if shared.is_empty() { weeks } else { usize::MAX });
        if fewest > left {
            break;
        }
        left -= fewest;
        shared.push((step, fewest));
    }
    for _ in 0..left {
        give_a_week(&mut shared);
    }
    shared
}

/// One more week to the step that has least of its share.
fn give_a_week(shared: &mut [(Step, usize)]) {
    let filled = |&(step, weeks): &(Step, usize)| weeks as f64 / step.weeks().1;
    if let Some((_, weeks)) = shared.iter_mut().min_by(|a, b| filled(a).total_cmp(&filled(b))) {
        *weeks += 1;
    }
}

/// Why throwing on `days` leaves less than the guideline's months of the year for rest; nothing when it
/// does not.
pub(super) fn without_rest(days: &[PlanDay]) -> Option<NoRest> {
    let (first, last) = (days.first()?.date, days.last()?.date);
    let rest_begins = first.saturating_add((MONTHS_OF_YEAR - i32::from(MONTHS_OFF)).months());
    let latest = rest_begins.yesterday().unwrap_or(rest_begins);
    (last > latest).then_some(NoRest { first, last, latest })
}

/// Every throwing day of `phases`.
pub(super) fn days(request: &Request, limit: DayLimit, phases: &[Phase]) -> Vec<PlanDay> {
    let dates: Vec<(Date, Step)> = phases
        .iter()
        .filter_map(|phase| match phase.kind {
            PhaseKind::Rest => None,
            PhaseKind::Step(step) => Some(phase.span.dates().map(move |date| (date, step))),
        })
        .flatten()
        .filter(|&(date, _)| request.weekdays.contains(date))
        .collect();
    let start = phases.iter().find(|phase| phase.kind != PhaseKind::Rest).map(|phase| phase.span.start());
    let rest_before_next = |place: usize| {
        dates.get(place + 1).map_or(u32::MAX, |&(next, _)| days_between(dates[place].0, next).saturating_sub(1))
    };
    dates
        .iter()
        .enumerate()
        .map(|(place, &(date, step))| {
            let week = start.map_or(0, |start| days_between(start, date) / 7);
            day(request, limit, date, week, step, rest_before_next(place))
        })
        .collect()
}

fn day(request: &Request, limit: DayLimit, date: Date, week: u32, step: Step, rest: u32) -> PlanDay {
    let deload = week % DELOAD_EVERY == DELOAD_EVERY - 1;
    let full_weeks = week - week / DELOAD_EVERY;
    let risen = (FIRST_THROWS + RISE_PER_WEEK * full_weeks).min(step.work().throws);
    let wanted = if deload { risen * DELOAD_PERCENT / 100 } else { risen };
    let throws = wanted.min(limit.most * LIMIT_PERCENT / 100).min(limit.most_before_rest(rest));
    let new_pitch = new_pitches(step, throws, request.profile);
    PlanDay {
        date,
        week: week + 1,
        step,
        new_pitch,
        others: throws - new_pitch,
        effort_percent: step.work().effort_percent,
        deload,
        rest_after: limit.rest_days(throws),
    }
}

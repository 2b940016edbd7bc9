//! `sort`: groups, days, rows set aside, and the comparison with labels.

use serde::Serialize;

use crate::athlete::session::Session;
use crate::base::stats::Estimate;
use crate::throws::{Cause, Group, Sorted, Treatment};

use super::shared::{EstimateForm, RowForm};
use super::{pretty, round};

/// The answer of `sort`.
pub fn sort(session: &Session, sorted: &Sorted) -> String {
    pretty(&SortForm {
        rows: sorted.rows(),
        throws: session.throws.len(),
        sorted: sorted.sorted(),
        unsorted: sorted.unsorted(),
        pitches: sorted.groups.iter().map(|group| GroupForm::of(session, group)).collect(),
        days: sorted
            .days
            .iter()
            .map(|day| DayForm {
                day: &day.day,
                throws: day.throws,
                treatment: treatment(day.treatment),
                cause: day.cause.map(cause),
                vertical_offset_in: round(day.vertical_offset_in, 1),
                glove_side_offset_in: round(day.glove_side_offset_in, 1),
            })
            .collect(),
        set_aside: RowForm::all(session, &sorted.set_aside),
        adjusted_rand: sorted.agreement.as_ref().map(|agreement| round(agreement.adjusted_rand, 4)),
        cautions: session.notes.iter().chain(&sorted.cautions).map(String::as_str).collect(),
    })
}

#[derive(Serialize)]
struct SortForm<'a> {
    rows: usize,
    throws: usize,
    sorted: usize,
    unsorted: usize,
    pitches: Vec<GroupForm>,
    days: Vec<DayForm<'a>>,
    set_aside: Vec<RowForm<'a>>,
    adjusted_rand: Option<f64>,
    cautions: Vec<&'a str>,
}

#[derive(Serialize)]
struct GroupForm {
    family: &'static str,
    confidence: f64,
    throws: usize,
    clearness: f64,
    speed_mph: EstimateForm,
    vertical_break_in: EstimateForm,
    glove_side_break_in: EstimateForm,
    spin_rpm: Option<EstimateForm>,
    active_fraction: Option<EstimateForm>,
    spin_clock: Option<String>,
    slot_deg: Option<EstimateForm>,
}

impl GroupForm {
    fn of(session: &Session, group: &Group) -> Self {
        let form = |estimate: Option<Estimate>| estimate.map(EstimateForm::of);
        let hand = session.hand.unwrap_or(crate::base::geometry::Hand::Right);
        Self {
            family: group.naming.family.name(),
            confidence: round(group.naming.confidence, 3),
            throws: group.throws,
            clearness: round(group.clearness, 3),
            speed_mph: EstimateForm::of(group.speed_mph),
            vertical_break_in: EstimateForm::of(group.vertical_break_in),
            glove_side_break_in: EstimateForm::of(group.glove_side_break_in),
            spin_rpm: form(group.spin_rpm),
            active_fraction: form(group.active_fraction),
            spin_clock: group.spin_clock.map(|clock| clock.for_hand(hand).to_string()),
            slot_deg: form(group.slot_deg),
        }
    }
}

#[derive(Serialize)]
struct DayForm<'a> {
    day: &'a str,
    throws: usize,
    treatment: &'static str,
    cause: Option<&'static str>,
    vertical_offset_in: f64,
    glove_side_offset_in: f64,
}

fn treatment(treatment: Treatment) -> &'static str {
    match treatment {
        Treatment::AsMeasured => "as_measured",
        Treatment::Rezeroed => "rezeroed",
        Treatment::SetAside => "set_aside",
    }
}

fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::Sensor => "sensor",
        Cause::Arm => "arm",
    }
}

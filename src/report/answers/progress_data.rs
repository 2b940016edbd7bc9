//! `progress` for machines: findings with their cues, everything watched, the new pitch outing by
//! outing. Findings stand most serious first; a day is given as written in the files.

use crate::learn::cues::for_finding;
use crate::learn::progress::{Finding, Kind, OutingShape, Progress, Quantity, Severity, ShapeState, State, Watch};

use super::super::content::data::{Data, list, number};
use super::super::content::{Text, object};
use super::super::words::findings::{kind, unit};
use super::super::words::rows::set_aside_data;
use super::ground::{Ground, cue_data, target_data};

/// The whole answer.
pub(crate) fn data(ground: &Ground, progress: &Progress, cautions: Vec<Text>) -> Data {
    object! {
        "athlete": &ground.profile.athlete.name,
        "bars": list(ground.bars()),
        "must_stop": progress.must_stop(),
        "findings": list(progress.findings.iter().map(|finding| finding_data(finding, progress))),
        "target": target_data(ground.target),
        "new_pitch": new_pitch_data(progress),
        "watched": list(progress.watches.iter().map(|watch| watch_data(watch, &progress.days))),
        "cautions": list(ground.noted(cautions)),
        "set_aside": set_aside_data(ground.session, &ground.session.set_aside),
        "assumptions": list(&ground.profile.assumptions),
    }
}

fn finding_data(finding: &Finding, progress: &Progress) -> Data {
    object! {
        "finding": kind_key(finding.kind),
        "severity": severity_key(finding.severity),
        "says": kind(finding.kind),
        "amount": finding.amount,
        "unit": unit(finding.kind),
        "since": finding.since.and_then(|place| progress.days.get(place)),
        "cue": for_finding(finding.kind, &progress.new_pitch).map(cue_data),
    }
}

fn new_pitch_data(progress: &Progress) -> Data {
    let pitch = &progress.new_pitch;
    let now = |axis: usize| pitch.shape_now.map(|shape| shape[axis]);
    let outings = progress.days.iter().zip(&pitch.by_outing);
    object! {
        "shape": shape_key(pitch.state),
        "share_in_window": pitch.share_now,
        "speed_mph": now(0),
        "vertical_break_in": now(1),
        "glove_side_break_in": now(2),
        "scatter_first_in": pitch.command.map(|(first, _)| first),
        "scatter_last_in": pitch.command.map(|(_, last)| last),
        "outings": list(outings.map(|(day, outing)| outing_data(day, outing))),
    }
}

fn outing_data(day: &str, outing: &OutingShape) -> Data {
    let [speed_mph, vertical_break_in, glove_side_break_in] = outing.shape;
    object! {
        "day": day,
        "throws": outing.throws,
        "speed_mph": speed_mph,
        "vertical_break_in": vertical_break_in,
        "glove_side_break_in": glove_side_break_in,
        "share_in_window": outing.share_in_window,
        "scatter_in": outing.command_in,
    }
}

fn watch_data(watch: &Watch, days: &[String]) -> Data {
    let change = watch.change.map(|change| {
        object! { "since": days.get(change.since), "rang_at": days.get(change.rang_at), "amount": change.amount }
    });
    object! {
        "quantity": quantity_key(watch.quantity),
        "profile": watch.baseline,
        "now_against_profile": watch.now,
        "matters_from": number(watch.quantity.matters(), 4),
        "state": watch.state().map(state_key),
        "change": change,
        "outings": list(watch.by_outing.iter().copied()),
    }
}

/// The key of a finding.
pub(crate) fn kind_key(kind: Kind) -> &'static str {
    match kind {
        Kind::SlotDropping => "slot_dropping",
        Kind::NewPitchSlotLower => "new_pitch_slot_lower",
        Kind::FastballSlower => "fastball_slower",
        Kind::FastballVerticalChanged => "fastball_vertical_changed",
        Kind::FastballSidewaysChanged => "fastball_sideways_changed",
        Kind::ReleaseLower => "release_lower",
        Kind::ReleaseSideMoved => "release_side_moved",
        Kind::ExtensionShorter => "extension_shorter",
        Kind::CommandNotComing => "command_not_coming",
        Kind::ShapeDrifted => "shape_drifted",
        Kind::ShapeOnTheWay => "shape_on_the_way",
        Kind::ShapeArrived => "shape_arrived",
    }
}

fn severity_key(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "stop",
        Severity::Watch => "watch",
        Severity::Note => "note",
        Severity::Good => "good",
    }
}

fn state_key(state: State) -> &'static str {
    match state {
        State::Moved => "moved",
        State::MayMatter => "may_matter",
        State::TooLittle => "too_little",
        State::Holds => "holds",
        State::NotSure => "not_sure",
    }
}

fn shape_key(state: ShapeState) -> &'static str {
    match state {
        ShapeState::Unknown => "unknown",
        ShapeState::OnTheWay => "on_the_way",
        ShapeState::Arrived { .. } => "arrived",
        ShapeState::Drifted { .. } => "drifted",
    }
}

fn quantity_key(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Slot => "slot_deg",
        Quantity::NewPitchSlot => "new_pitch_slot_deg",
        Quantity::FastballSpeed => "fastball_speed_mph",
        Quantity::FastballVertical => "fastball_vertical_break_in",
        Quantity::FastballGloveSide => "fastball_glove_side_break_in",
        Quantity::ReleaseHeight => "release_height_ft",
        Quantity::ReleaseSide => "release_side_ft",
        Quantity::Extension => "extension_ft",
    }
}

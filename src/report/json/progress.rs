//! `progress`: findings with their cues, everything watched, and the new pitch outing by outing.
//! Findings stand most serious first; a day is given as written in the files.

use serde::Serialize;

use crate::base::stats::Estimate;
use crate::learn::cues::for_finding;
use crate::learn::progress::{Finding, Kind, OutingShape, Progress, Quantity, Severity, ShapeState, State, Watch};

use super::super::follow::Ground;
use super::pretty;
use super::shared::{ChaseForm, CueForm, EstimateForm, RowForm};

/// The answer of `progress`.
pub fn progress(ground: &Ground, progress: &Progress) -> String {
    pretty(&ProgressForm {
        athlete: &ground.profile.athlete.name,
        bars: ground.bars.iter().map(ToString::to_string).collect(),
        must_stop: progress.must_stop(),
        findings: progress.findings.iter().map(|finding| FindingForm::of(finding, progress)).collect(),
        target: ChaseForm::of(ground.target),
        new_pitch: PitchForm::of(progress),
        watched: progress.watches.iter().map(|watch| WatchForm::of(watch, &progress.days)).collect(),
        cautions: ground.cautions.iter().chain(&ground.session.notes).map(String::as_str).collect(),
        set_aside: RowForm::all(ground.session, &ground.session.set_aside),
        assumptions: &ground.profile.assumptions,
    })
}

#[derive(Serialize)]
struct ProgressForm<'a> {
    athlete: &'a str,
    bars: Vec<String>,
    must_stop: bool,
    findings: Vec<FindingForm<'a>>,
    target: ChaseForm,
    new_pitch: PitchForm<'a>,
    watched: Vec<WatchForm<'a>>,
    cautions: Vec<&'a str>,
    set_aside: Vec<RowForm<'a>>,
    assumptions: &'a [String],
}

#[derive(Serialize)]
struct FindingForm<'a> {
    finding: &'static str,
    severity: &'static str,
    says: &'static str,
    amount: Option<EstimateForm>,
    unit: &'static str,
    since: Option<&'a str>,
    cue: Option<CueForm>,
}

impl<'a> FindingForm<'a> {
    fn of(finding: &Finding, progress: &'a Progress) -> Self {
        Self {
            finding: kind(finding.kind),
            severity: severity(finding.severity),
            says: finding.kind.words(),
            amount: finding.amount.map(EstimateForm::of),
            unit: finding.kind.unit(),
            since: finding.since.and_then(|place| progress.days.get(place)).map(String::as_str),
            cue: for_finding(finding.kind, &progress.new_pitch).map(CueForm::of),
        }
    }
}

#[derive(Serialize)]
struct PitchForm<'a> {
    shape: &'static str,
    share_in_window: Option<EstimateForm>,
    speed_mph: Option<EstimateForm>,
    vertical_break_in: Option<EstimateForm>,
    glove_side_break_in: Option<EstimateForm>,
    scatter_first_in: Option<EstimateForm>,
    scatter_last_in: Option<EstimateForm>,
    outings: Vec<OutingForm<'a>>,
}

impl<'a> PitchForm<'a> {
    fn of(progress: &'a Progress) -> Self {
        let pitch = &progress.new_pitch;
        let form = |estimate: Option<Estimate>| estimate.map(EstimateForm::of);
        let now = |axis: usize| pitch.shape_now.map(|shape| EstimateForm::of(shape[axis]));
        Self {
            shape: state(pitch.state),
            share_in_window: form(pitch.share_now),
            speed_mph: now(0),
            vertical_break_in: now(1),
            glove_side_break_in: now(2),
            scatter_first_in: form(pitch.command.map(|(first, _)| first)),
            scatter_last_in: form(pitch.command.map(|(_, last)| last)),
            outings: progress
                .days
                .iter()
                .zip(&pitch.by_outing)
                .map(|(day, outing)| OutingForm::of(day, outing))
                .collect(),
        }
    }
}

#[derive(Serialize)]
struct OutingForm<'a> {
    day: &'a str,
    throws: u32,
    speed_mph: Option<EstimateForm>,
    vertical_break_in: Option<EstimateForm>,
    glove_side_break_in: Option<EstimateForm>,
    share_in_window: Option<EstimateForm>,
    scatter_in: Option<EstimateForm>,
}

impl<'a> OutingForm<'a> {
    fn of(day: &'a str, outing: &OutingShape) -> Self {
        let [speed_mph, vertical_break_in, glove_side_break_in] = outing.shape.map(|e| e.map(EstimateForm::of));
        Self {
            day,
            throws: outing.throws,
            speed_mph,
            vertical_break_in,
            glove_side_break_in,
            share_in_window: outing.share_in_window.map(EstimateForm::of),
            scatter_in: outing.command_in.map(EstimateForm::of),
        }
    }
}

#[derive(Serialize)]
struct WatchForm<'a> {
    quantity: &'static str,
    profile: EstimateForm,
    now_against_profile: Option<EstimateForm>,
    matters_from: f64,
    state: Option<&'static str>,
    change: Option<ChangeForm<'a>>,
    outings: Vec<Option<EstimateForm>>,
}

#[derive(Serialize)]
struct ChangeForm<'a> {
    since: Option<&'a str>,
    rang_at: Option<&'a str>,
    amount: EstimateForm,
}

impl<'a> WatchForm<'a> {
    fn of(watch: &Watch, days: &'a [String]) -> Self {
        let day = |place: usize| days.get(place).map(String::as_str);
        Self {
            quantity: quantity(watch.quantity),
            profile: EstimateForm::of(watch.baseline),
            now_against_profile: watch.now.map(EstimateForm::of),
            matters_from: watch.quantity.matters(),
            state: watch.state().map(watch_state),
            change: watch.change.map(|change| ChangeForm {
                since: day(change.since),
                rang_at: day(change.rang_at),
                amount: EstimateForm::of(change.amount),
            }),
            outings: watch.by_outing.iter().map(|outing| outing.map(EstimateForm::of)).collect(),
        }
    }
}

pub(super) fn kind(kind: Kind) -> &'static str {
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

fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "stop",
        Severity::Watch => "watch",
        Severity::Note => "note",
        Severity::Good => "good",
    }
}

fn watch_state(state: State) -> &'static str {
    match state {
        State::Moved => "moved",
        State::MayMatter => "may_matter",
        State::TooLittle => "too_little",
        State::Holds => "holds",
        State::NotSure => "not_sure",
    }
}

fn state(state: ShapeState) -> &'static str {
    match state {
        ShapeState::Unknown => "unknown",
        ShapeState::OnTheWay => "on_the_way",
        ShapeState::Arrived { .. } => "arrived",
        ShapeState::Drifted { .. } => "drifted",
    }
}

fn quantity(quantity: Quantity) -> &'static str {
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

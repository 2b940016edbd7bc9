//! What the numbers mean, most serious first.
//!
//! A finding names what moved, by how much and since when. Only what can cost an arm or a fastball
//! says stop; everything else asks for a look. What to try about it is another table (`cues`).

use crate::base::stats::Estimate;
use crate::learn::target::Target;

use super::arrival::{NewPitch, ShapeState};
use super::watch::{Quantity, Watch};

/// How serious a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Stop work on the new pitch until the cause is found; `--strict` fails.
    Stop,
    /// Look at it in the next outing.
    Watch,
    /// Where things stand.
    Note,
    /// What was hoped for.
    Good,
}

/// One thing found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finding {
    /// What it is.
    pub kind: Kind,
    /// How serious it is.
    pub severity: Severity,
    /// How much: for a change, the last outings against those before it (against the profile, when
    /// the detector did not ring); for command, the scatter (in);
    /// for the shape, the share of throws in the window.
    pub amount: Option<Estimate>,
    /// Index of the outing at which it began, when that can be said.
    pub since: Option<usize>,
}

/// What was found. In the order of seriousness.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// The arm comes lower with the fastball.
    SlotDropping,
    /// The arm comes lower with the new pitch than with the fastball of the profile.
    NewPitchSlotLower,
    /// The fastball has lost speed.
    FastballSlower,
    /// The fastball moves otherwise than it did, up or down.
    FastballVerticalChanged,
    /// The fastball moves otherwise than it did, sideways.
    FastballSidewaysChanged,
    /// The release is lower.
    ReleaseLower,
    /// The release is farther in or out.
    ReleaseSideMoved,
    /// The ball is let go farther from the plate.
    ExtensionShorter,
    /// The new pitch still scatters as it did at first.
    CommandNotComing,
    /// The shape was in the window and has left it.
    ShapeDrifted,
    /// The shape is not in the window yet.
    ShapeOnTheWay,
    /// The shape is in the window.
    ShapeArrived,
}

/// Scatter that has fallen below this share of the first outings' is coming.
const COMING: f64 = 0.9;

/// Every finding, most serious first. A slot that drops with the fastball drops with the new pitch
/// as well, and is said once.
pub(super) fn findings(watches: &[Watch], pitch: &NewPitch, target: &Target) -> Vec<Finding> {
    let mut found: Vec<Finding> = watches.iter().filter_map(of_watch).collect();
    let drops = found.iter().any(|finding| finding.kind == Kind::SlotDropping && finding.severity == Severity::Stop);
    found.retain(|finding| !(drops && finding.kind == Kind::NewPitchSlotLower));
    found.extend(of_command(pitch, target));
    found.extend(of_shape(pitch));
    found.sort_by_key(|finding| (finding.severity, finding.kind));
    found
}

fn of_watch(watch: &Watch) -> Option<Finding> {
    let kind = match watch.quantity {
        Quantity::Slot => Kind::SlotDropping,
        Quantity::NewPitchSlot => Kind::NewPitchSlotLower,
        Quantity::FastballSpeed => Kind::FastballSlower,
        Quantity::FastballVertical => Kind::FastballVerticalChanged,
        Quantity::FastballGloveSide => Kind::FastballSidewaysChanged,
        Quantity::ReleaseHeight => Kind::ReleaseLower,
        Quantity::ReleaseSide => Kind::ReleaseSideMoved,
        Quantity::Extension => Kind::ExtensionShorter,
    };
    let stops = matches!(kind, Kind::SlotDropping | Kind::NewPitchSlotLower | Kind::FastballSlower);
    let severity = if stops && watch.is_serious() { Severity::Stop } else { Severity::Watch };
    let since = watch.change.map(|change| change.since);
    let amount = watch.change.map(|change| change.amount).or(watch.now);
    (watch.is_serious() || watch.change.is_some()).then_some(Finding { kind, severity, amount, since })
}

fn of_command(pitch: &NewPitch, target: &Target) -> Option<Finding> {
    let (first, last) = pitch.command?;
    let wide = last.low > target.scatter_enough_in() && last.value > COMING * first.value;
    let finding = Finding { kind: Kind::CommandNotComing, severity: Severity::Watch, amount: Some(last), since: None };
    wide.then_some(finding)
}

fn of_shape(pitch: &NewPitch) -> Option<Finding> {
    let of = |kind, severity, since| Some(Finding { kind, severity, amount: pitch.share_now, since });
    match pitch.state {
        ShapeState::Unknown => None,
        ShapeState::OnTheWay => of(Kind::ShapeOnTheWay, Severity::Note, None),
        ShapeState::Arrived { since } => of(Kind::ShapeArrived, Severity::Good, Some(since)),
        ShapeState::Drifted { .. } => of(Kind::ShapeDrifted, Severity::Watch, None),
    }
}

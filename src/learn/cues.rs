//! Which cue a finding calls for. A cue is for a coach who is there; what it says is in words in
//! [`crate::report`], all of it common practice without a published source. Medical matters are no
//! cue: they are for a licensed professional.

use crate::learn::progress::{Kind, NewPitch, ShapeState};
use crate::learn::trial::{DotFault, Grip};

/// What to look at when something is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Cue {
    /// Too much bullet spin.
    DotTooCentral,
    /// Too little bullet spin.
    DotTooFarOut,
    /// The spin pushes along another clock direction.
    DotTurned,
    /// The dot shows elsewhere on every throw.
    DotWandering,
    /// The ball wobbles.
    Wobble,
    /// The spin is right and the sweep is missing.
    SpinRightNoSweep,
    /// It drops more than the window allows.
    TooMuchDepth,
    /// It stays up more than the window allows.
    TooMuchRide,
    /// It is slower than the window.
    TooSlow,
    /// The arm comes lower.
    SlotDropping,
    /// The fastball is slower.
    FastballSlower,
    /// The fastball moves otherwise.
    FastballShapeChanged,
    /// The release is elsewhere.
    ReleaseMoved,
    /// The ball is let go farther from the plate.
    ExtensionShorter,
    /// The new pitch scatters as at first.
    CommandNotComing,
    /// The shape has left its window.
    ShapeDrifted,
    /// The shape is in its window.
    ShapeArrived,
}

impl Cue {
    /// Every cue.
    pub const ALL: [Self; 17] = [
        Self::DotTooCentral,
        Self::DotTooFarOut,
        Self::DotTurned,
        Self::DotWandering,
        Self::Wobble,
        Self::SpinRightNoSweep,
        Self::TooMuchDepth,
        Self::TooMuchRide,
        Self::TooSlow,
        Self::SlotDropping,
        Self::FastballSlower,
        Self::FastballShapeChanged,
        Self::ReleaseMoved,
        Self::ExtensionShorter,
        Self::CommandNotComing,
        Self::ShapeDrifted,
        Self::ShapeArrived,
    ];
}

/// The cue for a finding over the outings.
pub fn for_finding(kind: Kind, pitch: &NewPitch) -> Option<Cue> {
    Some(match kind {
        Kind::SlotDropping | Kind::NewPitchSlotLower => Cue::SlotDropping,
        Kind::FastballSlower => Cue::FastballSlower,
        Kind::FastballVerticalChanged | Kind::FastballSidewaysChanged => Cue::FastballShapeChanged,
        Kind::ReleaseLower | Kind::ReleaseSideMoved => Cue::ReleaseMoved,
        Kind::ExtensionShorter => Cue::ExtensionShorter,
        Kind::CommandNotComing => Cue::CommandNotComing,
        Kind::ShapeDrifted => drifted(pitch),
        Kind::ShapeOnTheWay => return None,
        Kind::ShapeArrived => Cue::ShapeArrived,
    })
}

fn drifted(pitch: &NewPitch) -> Cue {
    match pitch.state {
        ShapeState::Drifted { axis: 0, above: false } => Cue::TooSlow,
        ShapeState::Drifted { axis: 1, above: false } => Cue::TooMuchDepth,
        ShapeState::Drifted { axis: 1, above: true } => Cue::TooMuchRide,
        _ => Cue::ShapeDrifted,
    }
}

/// A share of wobbling throws that is worth a word.
const WOBBLING: f64 = 0.3;

/// The cues for one grip of a trial, most basic first.
pub fn for_grip(grip: &Grip) -> Vec<Cue> {
    let wobbles = grip.clean.wobble.is_some_and(|share| share.value > WOBBLING);
    let faults = grip.dot.map(|dot| dot.faults()).unwrap_or_default();
    let dots = faults.into_iter().map(|fault| match fault {
        DotFault::TooCentral => Cue::DotTooCentral,
        DotFault::TooFarOut => Cue::DotTooFarOut,
        DotFault::Turned => Cue::DotTurned,
    });
    let basic = [wobbles.then_some(Cue::Wobble), grip.clean.wanders().then_some(Cue::DotWandering)];
    basic.into_iter().flatten().chain(dots).collect()
}

/// The cue for a grip whose dot is right and whose sweep falls short of `least_in` all the same.
pub fn for_missing_sweep(grip: &Grip, least_in: f64) -> Option<Cue> {
    let right = grip.dot.is_some_and(|dot| dot.faults().is_empty());
    (right && grip.glove_side_break_in.high < least_in).then_some(Cue::SpinRightNoSweep)
}

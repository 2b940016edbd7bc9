//! What was found over the outings, in words.

use crate::learn::progress::{Caution, Finding, Kind, Quantity, Severity, State};

use super::super::content::amount::feet;
use super::super::content::{Text, Unit, say};

/// A finding as a headline.
pub(crate) fn headline(finding: &Finding) -> String {
    let call = match finding.severity {
        Severity::Stop => "Stop",
        Severity::Watch => "Look",
        Severity::Note => "So far",
        Severity::Good => "Good",
    };
    format!("{call}: {}", kind(finding.kind))
}

/// What was found.
pub(crate) fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::SlotDropping => "the arm slot is dropping",
        Kind::NewPitchSlotLower => "the arm slot drops for the new pitch",
        Kind::FastballSlower => "the fastball is slower than it was",
        Kind::FastballVerticalChanged => "the fastball's vertical break has changed",
        Kind::FastballSidewaysChanged => "the fastball's sideways break has changed",
        Kind::ReleaseLower => "the release is lower than it was",
        Kind::ReleaseSideMoved => "the release has moved sideways",
        Kind::ExtensionShorter => "the ball is let go farther from the plate",
        Kind::CommandNotComing => "command of the new pitch is not coming",
        Kind::ShapeDrifted => "the new pitch was in its window and has drifted out",
        Kind::ShapeOnTheWay => "the new pitch is not firmly in its window yet",
        Kind::ShapeArrived => "the new pitch has arrived in its window",
    }
}

/// The unit of a finding's amount, for machines.
pub(crate) fn unit(kind: Kind) -> &'static str {
    match kind {
        Kind::SlotDropping | Kind::NewPitchSlotLower => "degrees",
        Kind::FastballSlower => "mph",
        Kind::FastballVerticalChanged | Kind::FastballSidewaysChanged | Kind::CommandNotComing => "in",
        Kind::ReleaseLower | Kind::ReleaseSideMoved | Kind::ExtensionShorter => "ft",
        Kind::ShapeDrifted | Kind::ShapeOnTheWay | Kind::ShapeArrived => "of its throws in the window",
    }
}

/// A watched quantity, its unit, and the decimals it is shown with.
pub(crate) fn quantity(quantity: Quantity) -> (&'static str, Unit, usize) {
    match quantity {
        Quantity::Slot => ("fastball slot", Unit::Degrees, 1),
        Quantity::NewPitchSlot => ("new pitch slot", Unit::Degrees, 1),
        Quantity::FastballSpeed => ("fastball", Unit::Mph, 1),
        Quantity::FastballVertical => ("fastball vertical", Unit::Inches, 1),
        Quantity::FastballGloveSide => ("fastball glove side", Unit::Inches, 1),
        Quantity::ReleaseHeight => ("release height", Unit::Feet, 2),
        Quantity::ReleaseSide => ("release side", Unit::Feet, 2),
        Quantity::Extension => ("extension", Unit::Feet, 2),
    }
}

/// Where a watched quantity stands, in a word or three.
pub(crate) fn state(state: State) -> &'static str {
    match state {
        State::Moved => "moved",
        State::MayMatter => "may matter",
        State::TooLittle => "too little",
        State::Holds => "holds",
        State::NotSure => "not sure yet",
    }
}

/// What these words mean, and which way each quantity counts.
pub(crate) const KEY: [&str; 2] = [
    "matters: a change of this size would be worth acting on; of slot, fastball speed, release height and extension \
     only a drop counts",
    "moved: by that much; may matter: it moved, and whether by that much is not known; too little: it moved by less; \
     holds: the interval stays short of it; not sure yet: the interval reaches beyond it",
];

/// A doubt about the outings.
pub(crate) fn caution(caution: Caution) -> Text {
    match caution {
        Caution::DaysNotDated => {
            "some day is not written as a date like 2026-11-25: the order of reading is kept".into()
        }
        Caution::GivenToNearestShape { throws } => {
            say!("{} throws have no label known here and were given to the nearest shape", throws)
        }
        Caution::AlreadyInProfile { family } => say!(
            "the profile already holds a {}: its throws are taken as those of the new pitch; where another label is \
             meant, name it with --pitch",
            family
        ),
        Caution::NoFastball => "the profile has no fastball: only the new pitch is watched".into(),
        Caution::ReleaseFromFirstOuting { apart_ft } => say!(
            "the first outing's release is {} from the profile's: later ones are compared with the first \
             outing",
            feet(apart_ft)
        ),
        Caution::NoRelease => "release was not measured: slot and release are not watched".into(),
        Caution::FewOutings { outings } => say!("{} outings: only a large change can be seen yet", outings),
    }
}

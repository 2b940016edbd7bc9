//! Forms that several answers share.

use serde::Serialize;

use crate::evaluate::{PitchOutlook, SideOutlook};
use crate::geometry::Hand;
use crate::profile::Profile;
use crate::spin::{Dot, Dots};
use crate::stats::Estimate;

use super::round;

#[derive(Serialize)]
pub(super) struct EstimateForm {
    value: f64,
    low: f64,
    high: f64,
}

impl EstimateForm {
    pub(super) fn of(estimate: Estimate) -> Self {
        Self { value: round(estimate.value, 4), low: round(estimate.low, 4), high: round(estimate.high, 4) }
    }
}

#[derive(Serialize)]
pub(super) struct SideForm {
    runs_per_100: EstimateForm,
    pub(super) pitches: Vec<PitchForm>,
}

impl SideForm {
    pub(super) fn of(profile: &Profile, new: Option<&str>, outlook: &SideOutlook) -> Self {
        let names = profile.pitches.iter().map(|pitch| pitch.name.as_str()).chain(new);
        Self {
            runs_per_100: EstimateForm::of(outlook.runs_per_100),
            pitches: names.zip(&outlook.pitches).map(|(name, pitch)| PitchForm::of(name, pitch)).collect(),
        }
    }
}

#[derive(Serialize)]
pub(super) struct PitchForm {
    pitch: String,
    share: f64,
    aim: &'static str,
    swing_and_miss: EstimateForm,
    weak_contact: EstimateForm,
    solid_contact: EstimateForm,
    take: EstimateForm,
}

impl PitchForm {
    pub(super) fn of(name: &str, pitch: &PitchOutlook) -> Self {
        Self {
            pitch: name.to_owned(),
            share: round(pitch.share, 3),
            aim: pitch.aim.name(),
            swing_and_miss: EstimateForm::of(pitch.swing_and_miss),
            weak_contact: EstimateForm::of(pitch.weak_contact),
            solid_contact: EstimateForm::of(pitch.solid_contact),
            take: EstimateForm::of(pitch.take),
        }
    }
}

#[derive(Serialize)]
pub(super) struct SeamForm {
    vertical: f64,
    glove_side: f64,
}

impl SeamForm {
    pub(super) fn of([glove_side, vertical]: [f64; 2]) -> Self {
        Self { vertical: round(vertical, 1), glove_side: round(glove_side, 1) }
    }
}

#[derive(Serialize)]
pub(super) struct DotsForm {
    thrower: DotPlace,
    partner: DotPlace,
}

#[derive(Serialize)]
pub(super) struct DotPlace {
    clock: String,
    radius: f64,
}

impl DotsForm {
    pub(super) fn of(dots: Dots, hand: Hand) -> Self {
        let place = |dot: Dot| DotPlace { clock: dot.clock.for_hand(hand).to_string(), radius: round(dot.radius, 3) };
        Self { thrower: place(dots.thrower), partner: place(dots.partner) }
    }
}

/// A push with its doubt.
#[derive(Serialize)]
pub(super) struct PushForm {
    vertical: EstimateForm,
    glove_side: EstimateForm,
}

impl PushForm {
    pub(super) fn of(vertical: Estimate, glove_side: Estimate) -> Self {
        Self { vertical: EstimateForm::of(vertical), glove_side: EstimateForm::of(glove_side) }
    }
}

//! Forms that several answers share.

use serde::Serialize;

use crate::athlete::profile::Profile;
use crate::athlete::session::{Session, SetAside};
use crate::ball::Shape;
use crate::ball::spin::{Dot, Dots};
use crate::base::geometry::Hand;
use crate::base::stats::Estimate;
use crate::former::evaluate::{PitchOutlook, SideOutlook};
use crate::former::search::Window;
use crate::learn::cues::Cue;
use crate::learn::target::Target;

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

/// A row that is not used.
#[derive(Serialize)]
pub(super) struct RowForm<'a> {
    file: &'a str,
    row: u32,
    reason: String,
}

impl<'a> RowForm<'a> {
    pub(super) fn all(session: &'a Session, rows: &[SetAside]) -> Vec<Self> {
        let file = |index: u16| session.files[usize::from(index)].as_str();
        let form =
            |row: &SetAside| RowForm { file: file(row.place.file), row: row.place.row, reason: row.reason.to_string() };
        rows.iter().map(form).collect()
    }
}

/// What a follow-through works toward.
#[derive(Serialize)]
pub(super) struct ChaseForm {
    family: &'static str,
    #[serde(flatten)]
    shape: ShapeForm,
    window: WindowForm,
}

impl ChaseForm {
    pub(super) fn of(target: &Target) -> Self {
        Self { family: target.family.name(), shape: ShapeForm::of(target.shape), window: WindowForm::of(target.window) }
    }
}

#[derive(Serialize)]
struct ShapeForm {
    speed_mph: f64,
    vertical_break_in: f64,
    glove_side_break_in: f64,
}

impl ShapeForm {
    fn of(shape: Shape) -> Self {
        Self {
            speed_mph: round(shape.speed_mph, 1),
            vertical_break_in: round(shape.vertical_break_in, 1),
            glove_side_break_in: round(shape.glove_side_break_in, 1),
        }
    }
}

#[derive(Serialize)]
pub(super) struct WindowForm {
    speed_mph: RangeForm,
    vertical_break_in: RangeForm,
    glove_side_break_in: RangeForm,
}

impl WindowForm {
    pub(super) fn of(window: Window) -> Self {
        let range = |(low, high): (f64, f64)| RangeForm { low: round(low, 1), high: round(high, 1) };
        Self {
            speed_mph: range(window.speed_mph),
            vertical_break_in: range(window.vertical_break_in),
            glove_side_break_in: range(window.glove_side_break_in),
        }
    }
}

#[derive(Serialize)]
struct RangeForm {
    low: f64,
    high: f64,
}

/// What to try.
#[derive(Serialize)]
pub(super) struct CueForm {
    says: &'static str,
    r#try: &'static str,
    must_not_cost: &'static str,
}

impl CueForm {
    pub(super) fn of(cue: &'static Cue) -> Self {
        Self { says: &cue.says, r#try: &cue.attempt, must_not_cost: &cue.must_not_cost }
    }
}

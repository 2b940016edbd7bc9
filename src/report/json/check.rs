//! `check`: every pitch looked into.

use serde::Serialize;

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::SeamPush;
use crate::base::stats::Estimate;
use crate::decide::inspect::{Inspected, SecondLook, SpinSource, second_looks};

use super::super::second_look::{Told, told};
use super::super::words::spin_source;
use super::shared::{EstimateForm, PushForm};
use super::{pretty, round};

/// The answer of `check`; `elevation_ft` is where the restated shapes would be thrown.
pub fn check(profile: &Profile, inspected: &[Inspected], elevation_ft: f64) -> String {
    let pitches = profile.pitches.iter().zip(inspected).map(|(pitch, seen)| PitchForm::of(profile, pitch, seen));
    pretty(&CheckForm {
        athlete: &profile.athlete.name,
        assumptions: &profile.assumptions,
        restated_at_elevation_ft: elevation_ft,
        pitches: pitches.collect(),
        worth_a_second_look: second_looks(profile).iter().map(LookForm::of).collect(),
    })
}

#[derive(Serialize)]
struct CheckForm<'a> {
    athlete: &'a str,
    assumptions: &'a [String],
    restated_at_elevation_ft: f64,
    pitches: Vec<PitchForm<'a>>,
    worth_a_second_look: Vec<LookForm>,
}

#[derive(Serialize)]
struct LookForm {
    about: String,
    found: String,
    usual: String,
    check: String,
}

impl LookForm {
    fn of(look: &SecondLook) -> Self {
        let Told { about, found, usual, check } = told(look);
        Self { about, found, usual, check }
    }
}

#[derive(Serialize)]
struct PitchForm<'a> {
    pitch: &'a str,
    family: &'static str,
    throws: u32,
    speed_mph: EstimateForm,
    vertical_break_in: EstimateForm,
    glove_side_break_in: EstimateForm,
    against: &'static str,
    vertical_break_as_written_in: Option<f64>,
    glove_side_break_as_written_in: Option<f64>,
    spin_measured: bool,
    spin_source: &'static str,
    spin_rpm: f64,
    active_fraction: f64,
    spin_clock: String,
    gyro_deg: f64,
    active_rpm_that_would_do: EstimateForm,
    spin_break_in: Option<PushForm>,
    seam_shift_in: Option<PushForm>,
    usual_seam_shift_in: Option<PushForm>,
    seam_shift_departure_sd: Option<f64>,
    restated_vertical_break_in: f64,
    restated_glove_side_break_in: f64,
}

impl<'a> PitchForm<'a> {
    fn of(profile: &Profile, pitch: &'a Pitch, seen: &Inspected) -> Self {
        let [speed, up, side] = seen.averages.map(EstimateForm::of);
        Self {
            pitch: &pitch.name,
            family: pitch.family.name(),
            throws: pitch.throws,
            speed_mph: speed,
            vertical_break_in: up,
            glove_side_break_in: side,
            against: pitch.against.unwrap_or_default().name(),
            vertical_break_as_written_in: seen.read.map(|read| round(read.vertical_break_in, 2)),
            glove_side_break_as_written_in: seen.read.map(|read| round(read.glove_side_break_in, 2)),
            spin_measured: seen.source == SpinSource::Measured,
            spin_source: spin_source(seen.source),
            spin_rpm: round(seen.spin.rpm, 0),
            active_fraction: round(seen.spin.active_fraction, 3),
            spin_clock: seen.spin.clock.for_hand(profile.athlete.throws).to_string(),
            gyro_deg: round(seen.spin.gyro_deg(), 1),
            active_rpm_that_would_do: EstimateForm::of(seen.active_needed),
            spin_break_in: seen.shares.map(|s| PushForm::of(s.spin_vertical_in, s.spin_glove_side_in)),
            seam_shift_in: seen.shares.map(|s| PushForm::of(s.seam_vertical_in, s.seam_glove_side_in)),
            usual_seam_shift_in: seen.seams.map(|look| {
                let SeamPush { mean, sd, .. } = look.usual;
                let of = |mean: f64, sd: f64| Estimate::from_sd(mean, sd);
                PushForm::of(of(mean.up_in, sd.up_in), of(mean.glove_side_in, sd.glove_side_in))
            }),
            seam_shift_departure_sd: seen.seams.map(|look| round(look.departure, 2)),
            restated_vertical_break_in: round(seen.restated.vertical_break_in, 1),
            restated_glove_side_break_in: round(seen.restated.glove_side_break_in, 1),
        }
    }
}

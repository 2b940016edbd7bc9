//! `dot`: a spin and where its mark shows.

use serde::Serialize;

use crate::ball::spin::Spin;
use crate::base::geometry::Hand;

use super::shared::{DotsForm, SeamForm};
use super::{pretty, round};

/// Several pitches, each with its name, its spin and whether that is measured.
pub fn dots<'a>(spins: impl Iterator<Item = (&'a str, Spin, bool)>, hand: Hand) -> String {
    let forms: Vec<DotForm> =
        spins.map(|(name, spin, measured)| DotForm::of(name, spin, measured, None, hand)).collect();
    pretty(&forms)
}

/// A spin and where its mark shows.
pub fn dot(name: &str, spin: Spin, seam_in: Option<[f64; 2]>, hand: Hand) -> String {
    pretty(&DotForm::of(name, spin, false, seam_in, hand))
}

#[derive(Serialize)]
struct DotForm<'a> {
    pitch: &'a str,
    measured: bool,
    spin_rpm: f64,
    active_fraction: f64,
    spin_clock: String,
    gyro_deg: f64,
    seam_shift_in: Option<SeamForm>,
    dot: DotsForm,
}

impl<'a> DotForm<'a> {
    fn of(pitch: &'a str, spin: Spin, measured: bool, seam_in: Option<[f64; 2]>, hand: Hand) -> Self {
        Self {
            pitch,
            measured,
            spin_rpm: round(spin.rpm, 0),
            active_fraction: round(spin.active_fraction, 3),
            spin_clock: spin.clock.for_hand(hand).to_string(),
            gyro_deg: round(spin.gyro_deg(), 1),
            seam_shift_in: seam_in.map(SeamForm::of),
            dot: DotsForm::of(spin.dot(), hand),
        }
    }
}

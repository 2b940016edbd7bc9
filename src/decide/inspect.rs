//! What an athlete has: each pitch's spin, what of its movement the spin explains and what is left
//! for the seams, and what the shape would be in other air.

mod second_look;

pub use second_look::{About, Found, Length, SecondLook, Suspect, second_looks, second_looks_at};

use crate::athlete::profile::Profile;
use crate::ball::Shape;
use crate::ball::flight::Air;
use crate::ball::flight::inverse::{Shares, active_spin_needed, restated, shares};
use crate::ball::spin::Spin;
use crate::base::stats::Estimate;
use crate::former::evaluate::Stage;
use crate::former::search::reach::spin_of;

/// One pitch, looked into.
#[derive(Debug, Clone, PartialEq)]
pub struct Inspected {
    /// Averages with the interval their number of throws allows: speed, vertical, glove side.
    pub averages: [Estimate; 3],
    /// Its spin: measured where the profile gives it, otherwise worked out from the shape.
    pub spin: Spin,
    /// Whether total spin, active fraction and clock were all measured.
    pub measured: bool,
    /// Movement divided between spin and seams; only with measured spin.
    pub shares: Option<Shares>,
    /// Active spin (rpm) that would give the shape: the spread of the lift laws and of seam help.
    pub active_needed: Estimate,
    /// The shape in the other air.
    pub restated: Shape,
}

/// Looks into every pitch of `profile`; shapes are restated in `other` air.
pub fn inspect(profile: &Profile, other: Air) -> Vec<Inspected> {
    let stage = Stage::new(profile);
    profile
        .pitches
        .iter()
        .zip(&stage.pitches)
        .map(|(pitch, thrown)| {
            let spin = spin_of(&stage, pitch);
            let measured = pitch.is_spin_measured();
            let root = f64::from(pitch.throws).sqrt();
            Inspected {
                averages: [
                    Estimate::from_sd(pitch.shape.speed_mph, pitch.spread.speed_mph / root),
                    Estimate::from_sd(pitch.shape.vertical_break_in, pitch.spread.vertical_break_in / root),
                    Estimate::from_sd(pitch.shape.glove_side_break_in, pitch.spread.glove_side_break_in / root),
                ],
                spin,
                measured,
                shares: measured.then(|| shares(pitch.shape, spin, thrown.release, stage.air)),
                active_needed: active_spin_needed(pitch.shape, thrown.release, stage.air, profile.limits.seam_shift_in),
                restated: restated(pitch.shape, thrown.release, stage.air, other),
            }
        })
        .collect()
}

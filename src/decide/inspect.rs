//! What an athlete has: each pitch's spin, what of its movement the spin explains and what is left
//! for the seams, and what the shape would be in other air.

mod counted;
mod second_look;
mod spins;

pub use second_look::{About, Found, Length, SecondLook, Suspect, second_looks, second_looks_at};
pub use spins::{SpinSource, spin_of};

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::flight::Air;
use crate::ball::flight::inverse::{Shares, restated};
use crate::ball::recipe::active_rpm_needed;
use crate::ball::spin::Spin;
use crate::ball::{Against, Ground, SeamPush, Shape};
use crate::base::stats::Estimate;

/// More standard deviations between pitchers than this from what is usual is out of the ordinary: one pitcher in twenty.
const ORDINARY: f64 = 2.0;

/// One pitch, looked into.
#[derive(Debug, Clone, PartialEq)]
pub struct Inspected {
    /// Averages with the interval their number of throws allows: speed, vertical, glove side.
    pub averages: [Estimate; 3],
    /// The numbers of the profile, where these count movement against gravity alone.
    pub read: Option<Shape>,
    /// Its spin.
    pub spin: Spin,
    /// Where that is known from.
    pub source: SpinSource,
    /// Movement divided between spin and seams; only with the spin's push and rate measured.
    pub shares: Option<Shares>,
    /// What is left over beside what is usual; only with the spin's push and rate measured.
    pub seams: Option<SeamLook>,
    /// Active spin (rpm) that would give the shape with the seams' usual help: the spread of the lift laws and of the
    /// seams between pitchers.
    pub active_needed: Estimate,
    /// The shape in the other air.
    pub restated: Shape,
}

/// A pitch's left-over beside what pitches of its family usually show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeamLook {
    /// What is usual, between pitchers.
    pub usual: SeamPush,
    /// How many standard deviations between pitchers the left-over lies from the mean, across the spin's push.
    pub departure: f64,
}

impl SeamLook {
    /// Whether few pitchers show such a left-over.
    pub fn is_out_of_the_ordinary(self) -> bool {
        self.departure.abs() > ORDINARY
    }
}

/// Looks into every pitch of `profile`; shapes are restated in `other` air.
pub fn inspect(profile: &Profile, other: Air) -> Vec<Inspected> {
    profile.pitches.iter().map(|pitch| inspect_pitch(profile, pitch, other)).collect()
}

fn inspect_pitch(profile: &Profile, pitch: &Pitch, other: Air) -> Inspected {
    let ground = spins::ground_of(profile, pitch);
    let (spin, source) = spin_of(profile, pitch);
    let root = f64::from(pitch.throws).sqrt();
    Inspected {
        averages: [
            Estimate::from_sd(pitch.shape.speed_mph, pitch.spread.speed_mph / root),
            Estimate::from_sd(pitch.shape.vertical_break_in, pitch.spread.vertical_break_in / root),
            Estimate::from_sd(pitch.shape.glove_side_break_in, pitch.spread.glove_side_break_in / root),
        ],
        read: (pitch.against == Some(Against::Gravity)).then(|| as_read(pitch, ground)),
        spin,
        source,
        shares: spins::shares_of(profile, pitch),
        seams: seam_look(profile, pitch),
        active_needed: active_rpm_needed(pitch.shape, spins::seams_of(profile, pitch), ground),
        restated: restated(pitch.shape, ground.release, ground.air, other),
    }
}

/// The shape as the profile's own numbers tell it.
fn as_read(pitch: &Pitch, ground: Ground) -> Shape {
    pitch.against.unwrap_or_default().reading(pitch.shape, ground.release, pitch.family.usual_place(), ground.air)
}

fn seam_look(profile: &Profile, pitch: &Pitch) -> Option<SeamLook> {
    let usual = crate::ball::Usual::of(pitch.family)?.seams;
    let left = spins::shares_of(profile, pitch)?.left();
    Some(SeamLook { usual, departure: usual.departure(left, pitch.spin_clock?) })
}

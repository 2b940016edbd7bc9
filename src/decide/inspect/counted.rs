//! Whether a four-seam's movement looks as if it were counted against the other throw: with drag's share inside where the
//! profile says without, or the other way round.
//!
//! Drag's share of a four-seam, 1.7 in up and 1.0 in to the arm side, is less than four-seams differ between arms, so
//! this can only ever be a hint. Where nobody told, at the bar taken here, it is raised for 34 in 100 four-seams that are
//! the other kind and for 7 in 100 that are not: 83 pitchers of one day of the top league with five throws or more, each
//! left out of the fit (R package abdwr3edata, CC0).

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::{Against, Family, Ground};
use crate::base::Movement;

use super::second_look::{About, Found, SecondLook};
use super::spins::ground_of;

/// How many times more likely the other kind must be: where nobody told which it is, and where the profile does.
const LIKELIER: (f64, f64) = (2.0, 4.0);
/// Four-seams of an arm that lets go 5.8 ft high and 1.9 ft to the side, in standard air: mean and standard deviation
/// between pitchers; least squares on those 83.
const USUAL: Movement = Movement { glove_side_in: -7.4, up_in: 14.6 };
const SD: Movement = Movement { glove_side_in: 3.4, up_in: 2.4 };
/// By how much that grows with each foot higher and each foot farther to the side.
const PER_FOOT_HIGHER: Movement = Movement { glove_side_in: 3.1, up_in: 1.2 };
const PER_FOOT_FARTHER: Movement = Movement { glove_side_in: 0.4, up_in: -1.2 };
const MEAN_RELEASE_FT: (f64, f64) = (5.8, 1.9);
/// Density of the air the numbers above are for, kg/m³.
const STANDARD_DENSITY: f64 = 1.225;

/// The hint, when the other kind is that much likelier.
pub(super) fn looks_like_the_other(profile: &Profile, pitch: &Pitch) -> Option<SecondLook> {
    if pitch.family != Family::FourSeam {
        return None;
    }
    let ground = ground_of(profile, pitch);
    let usual = usual_movement(profile, pitch, ground);
    let said = pitch.against.unwrap_or_default();
    let read = said.reading(pitch.shape, ground.release, pitch.family.usual_place(), ground.air);
    let other = match said {
        Against::DragFree => Against::Gravity,
        Against::Gravity => Against::DragFree,
    };
    let meant = other.drag_free(read, ground.release, pitch.family.usual_place(), ground.air);
    let ratio = (log_likelihood(meant.movement() - usual) - log_likelihood(pitch.shape.movement() - usual)).exp();
    let bar = if pitch.against.is_some() { LIKELIER.1 } else { LIKELIER.0 };
    let found = Found::Counted { read, rather: other, usual };
    (ratio > bar).then(|| SecondLook { about: About::Pitch(pitch.name.clone()), found })
}

fn usual_movement(profile: &Profile, pitch: &Pitch, ground: Ground) -> Movement {
    let release = profile.release_of(pitch);
    let higher = PER_FOOT_HIGHER * (release.height_ft - MEAN_RELEASE_FT.0);
    let farther = PER_FOOT_FARTHER * (release.side_ft - MEAN_RELEASE_FT.1);
    (USUAL + higher + farther) * (ground.air.density / STANDARD_DENSITY)
}

fn log_likelihood(off: Movement) -> f64 {
    -((off.glove_side_in / SD.glove_side_in).powi(2) + (off.up_in / SD.up_in).powi(2)) / 2.0
}

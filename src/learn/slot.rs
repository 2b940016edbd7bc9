//! The arm slot of a throw, worked out from where it left the hand.
//!
//! Few files carry a measured slot, nearly all carry release height and side. So the shoulder is
//! placed once, from the profile, and the slot of a throw is the angle from there to its release.
//! That the shoulder stays where it was is an assumption: an athlete who bends the trunk more
//! reads as a dropped slot here. It is meant for changes, not for a slot by itself.

use crate::ball::Release;
use crate::base::units::DEGREE;

/// Shoulder to ball at release. An assumption of this project's: a longer arm turns the same drop
/// of the hand into a smaller angle.
const ARM_FT: f64 = 2.0;

/// The slot in degrees of a throw released at `height_ft` and `side_ft` (arm side), by an athlete
/// whose ordinary release is `usual`.
pub fn slot_deg(usual: Release, height_ft: f64, side_ft: f64) -> f64 {
    let (sin, cos) = (usual.slot_deg * DEGREE).sin_cos();
    let up = height_ft - usual.height_ft + ARM_FT * sin;
    let out = side_ft - usual.side_ft + ARM_FT * cos;
    up.atan2(out) / DEGREE
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ball::Supination;

    const USUAL: Release =
        Release { slot_deg: 40.0, height_ft: 5.7, side_ft: 2.1, extension_ft: 6.2, supination: Supination::Ordinary };

    #[test]
    fn the_usual_release_has_the_usual_slot_and_a_lower_wider_one_a_lower_slot() {
        assert!((slot_deg(USUAL, 5.7, 2.1) - 40.0).abs() < 1e-9);
        let lower = slot_deg(USUAL, 5.5, 2.25);
        assert!((30.0..36.0).contains(&lower), "{lower}");
    }
}

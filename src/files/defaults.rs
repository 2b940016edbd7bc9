//! What is assumed of an athlete when a profile does not say, and where each number comes from.
//!
//! All of these are common practice, no published source, unless a line says otherwise. They are
//! middle-of-the-road values for an ordinary arm, not findings; every use of one is told to the
//! reader through [`super::assumptions`].

use crate::athlete::profile::Level;
use crate::ball::Release;
use crate::base::units::DEGREE;

/// Arm angle above horizontal: a three-quarter slot.
pub(super) const SLOT_DEG: f64 = Release::ORDINARY.slot_deg;
/// Release height.
pub(super) const HEIGHT_FT: f64 = Release::ORDINARY.height_ft;
/// Distance from the front of the rubber to the release.
pub(super) const EXTENSION_FT: f64 = Release::ORDINARY.extension_ft;
/// Relative humidity, when a temperature is given.
pub(super) const HUMIDITY_PERCENT: f64 = 50.0;
/// Throws behind a pitch's averages: a short practice session.
pub(super) const THROWS: u32 = 20;
/// Share of opposite-side hitters faced.
pub(super) const OPPOSITE_SHARE: f64 = 0.5;
/// Least share of fastballs.
pub(super) const FASTBALL_FLOOR: f64 = 0.3;
/// Largest share of a new pitch.
pub(super) const NEW_PITCH_CAP: f64 = 0.35;
/// Largest share of breaking balls together.
pub(super) const BREAKING_CAP: f64 = 0.6;
/// How far to the arm side a slot carries the hand: the shoulder stands about a foot off the
/// middle line, and an arm with the trunk's lean reaches about 1.6 ft further when level.
pub(super) fn side_ft(slot_deg: f64) -> f64 {
    1.0 + 1.6 * (slot_deg * DEGREE).cos()
}

/// The hitters an athlete of this age most likely faces.
pub(super) fn level_at(age: u32) -> Level {
    match age {
        ..=14 => Level::Youth,
        15..=18 => Level::HighSchool,
        19..=22 => Level::College,
        _ => Level::Professional,
    }
}

//! What cannot be said of some outings, or only with a doubt.

use crate::ball::Family;

/// A doubt about a watch over outings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Caution {
    /// Some day is not written as a date, so the order of reading was kept.
    DaysNotDated,
    /// Throws without a usable label were given to the nearest shape.
    GivenToNearestShape {
        /// How many.
        throws: u32,
    },
    /// The profile already holds a pitch of the family, which is taken as the new one.
    AlreadyInProfile {
        /// The family.
        family: Family,
    },
    /// The profile has no fastball, so nothing is watched but the new pitch.
    NoFastball,
    /// The first outing's release is so far from the profile's that it replaces it as baseline.
    ReleaseFromFirstOuting {
        /// How far the two are apart, ft.
        apart_ft: f64,
    },
    /// Release was not measured, so slot and release are not watched.
    NoRelease,
    /// Too few outings for the detector to say much.
    FewOutings {
        /// How many there are.
        outings: usize,
    },
}

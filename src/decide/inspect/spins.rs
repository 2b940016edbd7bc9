//! How an athlete's pitches spin: as measured, and where that is open, as pitches of the family usually do.

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::flight::Air;
use crate::ball::flight::inverse::{Shares, release_point, shares, usual_shares};
use crate::ball::spin::Spin;
use crate::ball::{Ground, SeamPush, Usual, recipe};

/// Where a pitch's spin is known from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SpinSource {
    /// Total spin, active share and clock were measured.
    Measured,
    /// Total spin and clock were measured, the active share is what is usual of the family.
    UsualShare,
    /// Worked out from the shape: the seams give what is usual of the family, the spin the rest.
    WorkedOut,
}

/// How a pitch of `profile` spins.
pub fn spin_of(profile: &Profile, pitch: &Pitch) -> (Spin, SpinSource) {
    let usual = Usual::of(pitch.family);
    let rpm = pitch.spin_rpm.unwrap_or_else(|| usual_rpm(profile, pitch)).max(1.0);
    if let (Some(_), Some(clock)) = (pitch.spin_rpm, pitch.spin_clock) {
        if let Some(active_fraction) = pitch.active_fraction {
            return (Spin { rpm, active_fraction, clock }, SpinSource::Measured);
        }
        if let Some(usual) = usual {
            return (Spin { rpm, active_fraction: usual.active_share.mean, clock }, SpinSource::UsualShare);
        }
    }
    let worked_out = recipe(pitch.shape, rpm, seams_of(profile, pitch), ground_of(profile, pitch)).spin;
    let spin = Spin {
        rpm,
        active_fraction: pitch.active_fraction.unwrap_or(worked_out.active_fraction),
        clock: pitch.spin_clock.unwrap_or(worked_out.clock),
    };
    (spin, SpinSource::WorkedOut)
}

/// Movement divided between spin and seams; only where the spin's push and rate were measured.
pub(super) fn shares_of(profile: &Profile, pitch: &Pitch) -> Option<Shares> {
    let Ground { release, air } = ground_of(profile, pitch);
    match spin_of(profile, pitch) {
        (spin, SpinSource::Measured) => Some(shares(pitch.shape, spin, release, air)),
        (spin, SpinSource::UsualShare) => {
            let usual = Usual::of(pitch.family)?;
            Some(usual_shares(pitch.shape, spin, usual.active_share, release, air))
        }
        (_, SpinSource::WorkedOut) => None,
    }
}

/// What the seams are expected to add to `pitch`: usual of its family, and not more than the profile trusts them with.
pub(super) fn seams_of(profile: &Profile, pitch: &Pitch) -> SeamPush {
    let usual = pitch.family.usual_seams();
    profile.limits.seam_shift_in.map_or(usual, |inches| usual.at_most(inches))
}

/// Where and in which air `pitch` is thrown.
pub(super) fn ground_of(profile: &Profile, pitch: &Pitch) -> Ground {
    Ground { release: release_point(profile.release_of(pitch)), air: Air::of(profile.weather) }
}

/// Spin of an ordinary pitch of that family and speed, as much more or less as the athlete's fastball has, where that
/// was measured: within pitchers of one day of the top league the two go together (a correlation of .5 to .8 for
/// sinkers, cutters, sliders, sweepers and splitters; R package abdwr3edata, CC0). A knuckleball hardly turns.
fn usual_rpm(profile: &Profile, pitch: &Pitch) -> f64 {
    /// Spin per mph of a knuckleball (common practice, no published source).
    const KNUCKLEBALL: f64 = 1.2;
    let spun = |other: &Pitch| Some(other.spin_rpm? / other.shape.speed_mph / Usual::of(other.family)?.rpm_per_mph);
    let fastballs = profile.pitches.iter().filter(|other| other.family.is_fastball() && other.spin_rpm.is_some());
    let fastest = fastballs.max_by(|a, b| a.shape.speed_mph.total_cmp(&b.shape.speed_mph));
    let own = fastest.and_then(spun).unwrap_or(1.0);
    Usual::of(pitch.family).map_or(KNUCKLEBALL, |usual| usual.rpm_per_mph * own) * pitch.shape.speed_mph
}

//! Which family each group of throws belongs to, from its physics.
//!
//! A group is named by where it lies among the natural shapes of this arm ([`crate::athlete::natural`]), all groups
//! together; the confidence is the weight of its name. Throws near the border between two families (a hard slider, a
//! slow cutter) get a low confidence, and the tool says so. Two-seam and sinker are one family under two names: it is
//! called a sinker here. A knuckleball is told by its spin alone.

use crate::athlete::natural::{Arm, Unnamed, name_together};
use crate::ball::{Family, Supination};
use crate::base::stats::Estimate;

/// Confidence below which a name is only a guess.
pub const SURE_NAME: f64 = 0.7;
/// Less spin (rpm) than any other family has (common practice, no published source), and the share of the hardest
/// pitch's speed below which it is no fastball.
const KNUCKLEBALL: (f64, f64) = (700.0, 0.92);

/// A family with the chance that it is the right one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Naming {
    /// The likeliest family.
    pub family: Family,
    /// Its share among all families, 0 to 1.
    pub confidence: f64,
    /// The next likeliest.
    pub runner_up: Family,
}

/// What naming looks at besides the groups.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct MeanRelease {
    pub(super) height_ft: Option<f64>,
    pub(super) side_ft: Option<f64>,
}

/// Names every group of an arm.
pub(super) fn name_groups(release: MeanRelease, groups: &[Unnamed]) -> Vec<Naming> {
    let hardest = groups.iter().map(|group| group.shape.speed_mph).fold(0.0, f64::max);
    let is_knuckleball = |group: &Unnamed| {
        group.spin_rpm.is_some_and(|rpm| rpm < KNUCKLEBALL.0) && group.shape.speed_mph < KNUCKLEBALL.1 * hardest
    };
    let others: Vec<Unnamed> = groups.iter().copied().filter(|group| !is_knuckleball(group)).collect();
    let arm = Arm {
        height_ft: release.height_ft,
        side_ft: release.side_ft,
        fastball_mph: None,
        supination: Supination::Ordinary,
    };
    let mut named = name_together(&arm, &others).into_iter().map(|likeness| {
        let [(family, confidence), (runner_up, _), ..] = likeness.ordered();
        Naming { family, confidence, runner_up }
    });
    let knuckleball = Naming { family: Family::Knuckleball, confidence: 1.0, runner_up: Family::Splitter };
    groups.iter().map(|group| if is_knuckleball(group) { None } else { named.next() }.unwrap_or(knuckleball)).collect()
}

/// The arm angle above horizontal that a release point suggests.
///
/// A shoulder stands about 0.7 of the release height of a three-quarter arm, some 4.4 ft over flat
/// ground for a grown pitcher in his stride on the mound, and about 1 ft to the arm side of the
/// middle line; the arm points from it to the ball. Common practice, no published source: good to
/// about ten degrees, which is the interval.
pub(super) fn slot_deg(height_ft: f64, side_ft: f64) -> Estimate {
    const SHOULDER_FT: (f64, f64) = (0.8, 4.6);
    let degrees = (height_ft - SHOULDER_FT.1).atan2((side_ft - SHOULDER_FT.0).max(0.05)) / crate::base::units::DEGREE;
    Estimate { value: degrees, low: degrees - 10.0, high: degrees + 10.0 }
}

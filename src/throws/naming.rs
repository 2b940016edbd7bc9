//! Which family a group of throws belongs to, from its physics.
//!
//! Each family has a usual place relative to the athlete's own hardest pitch: share of its speed,
//! and the two breaks; and a usual spin. All of these numbers are common practice, no published
//! source. A group's score is the normal log-density of its means about those places; the
//! confidence is the family's share among all families. Throws near the border between two
//! families (a hard slider, a slow cutter) get a low confidence, and the tool says so.

use crate::ball::Family;
use crate::base::stats::Estimate;

/// Usual place of a family: share of the hardest pitch's speed, vertical break, glove-side break
/// (inches, three-quarter slot), spin (rpm), each with its spread.
struct Usual {
    family: Family,
    speed_share: (f64, f64),
    vertical_in: (f64, f64),
    glove_side_in: (f64, f64),
    spin_rpm: (f64, f64),
}

const fn usual(
    family: Family,
    speed_share: (f64, f64),
    vertical_in: (f64, f64),
    glove_side_in: (f64, f64),
    spin_rpm: (f64, f64),
) -> Usual {
    Usual { family, speed_share, vertical_in, glove_side_in, spin_rpm }
}

const USUAL: [Usual; 10] = [
    usual(Family::FourSeam, (1.0, 0.012), (16.0, 4.0), (-6.0, 5.0), (2300.0, 250.0)),
    usual(Family::TwoSeam, (0.988, 0.012), (11.0, 3.5), (-13.0, 4.0), (2150.0, 250.0)),
    usual(Family::Sinker, (0.982, 0.015), (5.5, 3.5), (-14.5, 4.0), (2100.0, 250.0)),
    usual(Family::Cutter, (0.955, 0.018), (9.5, 4.0), (2.0, 3.0), (2350.0, 250.0)),
    usual(Family::Slider, (0.912, 0.03), (2.0, 4.5), (5.0, 3.5), (2400.0, 300.0)),
    usual(Family::Sweeper, (0.875, 0.03), (1.0, 4.5), (15.0, 3.5), (2600.0, 300.0)),
    usual(Family::Curveball, (0.83, 0.045), (-10.0, 5.5), (7.0, 6.0), (2600.0, 350.0)),
    usual(Family::Changeup, (0.905, 0.03), (8.0, 6.0), (-12.0, 5.0), (1750.0, 300.0)),
    usual(Family::Splitter, (0.915, 0.03), (3.0, 4.0), (-8.5, 5.0), (1300.0, 300.0)),
    usual(Family::Knuckleball, (0.80, 0.07), (0.0, 8.0), (0.0, 8.0), (250.0, 250.0)),
];

/// How far the athlete's own fastball carries his other pitches along, as a share of its distance
/// from the usual one: a high slot adds ride and takes run from all of them.
const CARRY: f64 = 0.5;
/// Confidence below which a name is only a guess.
pub const SURE_NAME: f64 = 0.7;

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

/// What naming looks at.
#[derive(Debug, Clone, Copy)]
pub(super) struct Traits {
    pub(super) speed_mph: f64,
    pub(super) vertical_in: f64,
    pub(super) glove_side_in: f64,
    pub(super) spin_rpm: Option<f64>,
}

/// Names every group; the hardest group is taken for a fastball of some kind.
pub(super) fn name_groups(groups: &[Traits]) -> Vec<Naming> {
    let Some(hardest) = groups.iter().copied().max_by(|a, b| a.speed_mph.total_cmp(&b.speed_mph)) else {
        return Vec::new();
    };
    let carry =
        [CARRY * (hardest.vertical_in - 14.0).clamp(-9.0, 9.0), CARRY * (hardest.glove_side_in + 8.0).clamp(-7.0, 9.0)];
    let scores: Vec<[f64; 10]> = groups
        .iter()
        .map(|group| USUAL.each_ref().map(|usual| score(usual, group, hardest.speed_mph, carry)))
        .collect();
    let mut namings: Vec<Naming> = scores.iter().map(|score| naming(score, &[])).collect();
    part_twins(&mut namings, &scores);
    namings
}

fn score(usual: &Usual, group: &Traits, hardest_mph: f64, carry: [f64; 2]) -> f64 {
    let term = |value: f64, (middle, sd): (f64, f64)| -0.5 * ((value - middle) / sd).powi(2) - sd.ln();
    // Common to all families, so that a group without spin loses nothing against one with it.
    let spin = group.spin_rpm.map_or(0.0, |rpm| term(rpm, usual.spin_rpm));
    term(group.speed_mph / hardest_mph, usual.speed_share)
        + term(group.vertical_in - carry[0], usual.vertical_in)
        + term(group.glove_side_in - carry[1], usual.glove_side_in)
        + spin
}

/// The likeliest family outside `taken`.
fn naming(scores: &[f64; 10], taken: &[Family]) -> Naming {
    let mut order: Vec<usize> = (0..10).collect();
    order.sort_by(|a, b| scores[*b].total_cmp(&scores[*a]));
    let total: f64 = scores.iter().map(|s| (s - scores[order[0]]).exp()).sum();
    let free: Vec<usize> = order.iter().copied().filter(|i| !taken.contains(&USUAL[*i].family)).collect();
    Naming {
        family: USUAL[free[0]].family,
        confidence: (scores[free[0]] - scores[order[0]]).exp() / total,
        runner_up: USUAL[free.get(1).copied().unwrap_or(free[0])].family,
    }
}

/// Two groups of one athlete are two pitches: of groups with the same name the surest keeps it.
fn part_twins(namings: &mut [Naming], scores: &[[f64; 10]]) {
    let mut order: Vec<usize> = (0..namings.len()).collect();
    order.sort_by(|a, b| namings[*b].confidence.total_cmp(&namings[*a].confidence));
    let mut taken = Vec::new();
    for index in order {
        if taken.contains(&namings[index].family) {
            namings[index] = naming(&scores[index], &taken);
        }
        taken.push(namings[index].family);
    }
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

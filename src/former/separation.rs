//! How far apart two pitches are, to a hitter: how alike they look while he can still decide, and
//! how far apart they end.
//!
//! Two pitches are compared twice: leaving the hand on the same line (what disguise is possible),
//! and each at its own usual target (what the hitter really faces). Nothing here knows what the
//! hitter then does; the hitter model does.

use crate::athlete::profile::{Aim, PerSide};
use crate::ball::flight::inverse::{MIDDLE, throw_of_shape};
use crate::ball::flight::{Forces, Throw, Trajectory};
use crate::base::Location;
use crate::base::geometry::{Side, Vec3};
use crate::base::units::{DEGREE, INCH, MILLISECOND};
use crate::former::evaluate::{Stage, Thrown};
use crate::former::eyes::Eyes;

/// A pair of pitches, compared.
#[derive(Debug, Clone, PartialEq)]
pub struct Pair {
    /// Places of the two in the profile.
    pub pitches: (usize, usize),
    /// Speed of the first less the second, mph.
    pub speed_gap_mph: f64,
    /// Arrival of the second less the first, ms.
    pub arrival_gap_ms: f64,
    /// Distance between the breaks, in.
    pub movement_in: f64,
    /// Distance in (speed, breaks) in units of the two pitches' own scatter (Mahalanobis).
    pub scatter_distance: f64,
    /// As seen by hitters of each side.
    pub seen: PerSide<Seen>,
}

/// A pair as one hitter sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// Both leaving the hand on the same line.
    pub same_line: Gaps,
    /// Each at its own usual target.
    pub own_targets: Gaps,
    /// Gap at the decision instant that this hitter can just tell, in.
    pub resolvable_in: f64,
}

/// Where two balls are relative to each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gaps {
    /// Between the release points, in.
    pub release_in: f64,
    /// Across the line of flight at the decision instant, in.
    pub decision_in: f64,
    /// The same as an angle at the hitter's eye.
    pub decision_deg: f64,
    /// At the front of the plate, in.
    pub plate_in: f64,
    /// Share of the plate gap that appears after the decision instant, 0 to 1.
    pub late_share: f64,
    /// Inches apart at the plate for each inch the hitter could have told apart at the decision
    /// instant: see [`disguise`].
    pub disguise: f64,
}

/// Above this a pair is simply indistinguishable in time.
pub const DISGUISE_CAP: f64 = 12.0;

/// Plate gap over what the hitter has to go by: the gap at the decision instant and the mismatch of
/// the release points together, or what he can just resolve if that is more. Held to
/// [`DISGUISE_CAP`], because below the resolvable gap a smaller one is worth nothing more.
pub fn disguise(plate_in: f64, decision_in: f64, release_in: f64, resolvable_in: f64) -> f64 {
    (plate_in / decision_in.hypot(release_in).max(resolvable_in)).min(DISGUISE_CAP)
}

/// Every pair of the pitches of `stage`, each at its target in `aims`.
pub fn pairs(stage: &Stage, aims: &PerSide<Vec<Aim>>) -> Vec<Pair> {
    let count = stage.pitches.len();
    (0..count)
        .flat_map(|first| (first + 1..count).map(move |second| (first, second)))
        .map(|pair| compare(stage, pair, aims))
        .collect()
}

fn compare(stage: &Stage, pitches: (usize, usize), aims: &PerSide<Vec<Aim>>) -> Pair {
    let (a, b) = (&stage.pitches[pitches.0], &stage.pitches[pitches.1]);
    let arrival = |pitch: &Thrown| middle_throw(stage, pitch).fly().crossing().time;
    Pair {
        pitches,
        speed_gap_mph: a.shape.speed_mph - b.shape.speed_mph,
        arrival_gap_ms: (arrival(b) - arrival(a)) / MILLISECOND,
        movement_in: a.shape.movement_distance_in(b.shape),
        scatter_distance: scatter_distance(a, b),
        seen: PerSide::from_fn(|side| {
            let aim = |pitch: usize| aims.on(side)[pitch];
            seen(stage, side, a, b, (aim(pitches.0), aim(pitches.1)))
        }),
    }
}

/// Mahalanobis distance with the mean of the two pitches' variances (P. C. Mahalanobis, Proc. Natl.
/// Inst. Sci. India 2 (1936) 49), speed and breaks taken as independent.
fn scatter_distance(a: &Thrown, b: &Thrown) -> f64 {
    let term = |difference: f64, one: f64, other: f64| {
        2.0 * difference * difference / (one * one + other * other).max(f64::MIN_POSITIVE)
    };
    (term(a.shape.speed_mph - b.shape.speed_mph, a.spread.speed_mph, b.spread.speed_mph)
        + term(
            a.shape.vertical_break_in - b.shape.vertical_break_in,
            a.spread.vertical_break_in,
            b.spread.vertical_break_in,
        )
        + term(
            a.shape.glove_side_break_in - b.shape.glove_side_break_in,
            a.spread.glove_side_break_in,
            b.spread.glove_side_break_in,
        ))
    .sqrt()
}

fn seen(stage: &Stage, side: Side, a: &Thrown, b: &Thrown, aims: (Aim, Aim)) -> Seen {
    let decision = stage.decision();
    let place = |aim: Aim| {
        let (away, height) = aim.place_in();
        Location { glove_side_in: away * side.away_sign(), height_in: height }
    };
    // On the same line: both start as the first does when it is thrown to the middle.
    let first = middle_throw(stage, a);
    let second = on_the_line_of(&first, &middle_throw(stage, b));
    let ball = first.fly().at(decision).position;
    let range = (ball - Eyes::position(side)).norm();
    // Two directions are compared, each with the eye's error.
    let resolvable_in = std::f64::consts::SQRT_2 * stage.hitter.eyes.on(side).angular_deg * DEGREE * range / INCH;
    let own = (throw_to(stage, a, place(aims.0)), throw_to(stage, b, place(aims.1)));
    Seen {
        same_line: gaps(&first, &second, decision, side, resolvable_in),
        own_targets: gaps(&own.0, &own.1, decision, side, resolvable_in),
        resolvable_in,
    }
}

fn throw_to(stage: &Stage, pitch: &Thrown, target: Location) -> Throw {
    throw_of_shape(pitch.shape, pitch.release, target, stage.air)
}

/// `pitch` thrown to the middle of the zone.
pub fn middle_throw(stage: &Stage, pitch: &Thrown) -> Throw {
    throw_to(stage, pitch, MIDDLE)
}

/// `throw` with its own speed and forces, leaving its own release point in the direction of `line`.
pub fn on_the_line_of(line: &Throw, throw: &Throw) -> Throw {
    let forces: Forces = throw.forces;
    Throw { release: throw.release, velocity: line.velocity.unit() * throw.velocity.norm(), forces }
}

fn gaps(a: &Throw, b: &Throw, decision: f64, side: Side, resolvable_in: f64) -> Gaps {
    let across = |p: Vec3, q: Vec3| (p.x - q.x).hypot(p.z - q.z) / INCH;
    let (path_a, path_b): (Trajectory, Trajectory) = (a.fly(), b.fly());
    let (ball_a, ball_b) = (path_a.at(decision).position, path_b.at(decision).position);
    let (end_a, end_b) = (path_a.crossing(), path_b.crossing());
    let plate_in = (end_a.x - end_b.x).hypot(end_a.z - end_b.z) / INCH;
    let decision_in = across(ball_a, ball_b);
    let release_in = across(a.release, b.release);
    Gaps {
        release_in,
        decision_in,
        decision_deg: Eyes::angle_deg(ball_a, ball_b, side),
        plate_in,
        late_share: if plate_in > 0.0 { (1.0 - decision_in / plate_in).clamp(0.0, 1.0) } else { 0.0 },
        disguise: disguise(plate_in, decision_in, release_in, resolvable_in),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_release_mismatch_counts_against_disguise_and_tiny_gaps_stop_counting() {
        assert!(disguise(12.0, 2.0, 3.0, 1.0) < disguise(12.0, 2.0, 0.0, 1.0));
        assert!((disguise(12.0, 0.2, 0.0, 1.0) - disguise(12.0, 0.9, 0.0, 1.0)).abs() < 1e-12);
        assert!((disguise(200.0, 0.0, 0.0, 1.0) - DISGUISE_CAP).abs() < 1e-12);
    }
}

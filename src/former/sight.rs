//! What a hitter's eye meets: the way of each pitch from hand to plate, all leaving on one line.
//!
//! The first pitch is thrown to the middle of the zone; the others leave the hand in its direction,
//! each with its own speed and movement. So the picture shows what disguise is possible, not
//! where anybody aims. Places are given from the eye; whoever draws them chooses the projection.

use crate::athlete::profile::PerSide;
use crate::base::geometry::{Side, Vec3};
use crate::base::units::INCH;
use crate::former::evaluate::{Stage, Thrown};
use crate::former::eyes::Eyes;
use crate::former::separation::{middle_throw, on_the_line_of};

/// Several pitches as hitters of one side see them.
#[derive(Debug, Clone, PartialEq)]
pub struct Sight {
    /// Which hitters.
    pub side: Side,
    /// Where their eyes are, m.
    pub eye: Vec3,
    /// Angle they can just tell when they must decide, degrees.
    pub resolvable_deg: f64,
    /// The pitches, in the order asked for; the first sets the line.
    pub paths: Vec<SeenPath>,
}

/// The way of one pitch.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenPath {
    /// The ball from the eye, m, at [`LOOKS`] even moments from release to the decision.
    pub until_decision: Vec<Vec3>,
    /// The same from the decision to the plate.
    pub after_decision: Vec<Vec3>,
    /// Where it crosses the front of the plate: glove side and up, in.
    pub plate_in: [f64; 2],
    /// Angle between it and the first pitch when he must decide, degrees.
    pub gap_deg: f64,
    /// Distance at the plate from the first pitch, in.
    pub plate_gap_in: f64,
}

/// Moments along each half of a way.
pub const LOOKS: usize = 24;

/// How hitters of both sides see `pitches`, the first of which sets the line. Nothing when there
/// is no pitch.
pub fn sights(stage: &Stage, pitches: &[Thrown]) -> Option<PerSide<Sight>> {
    let line = pitches.first()?;
    Some(PerSide::from_fn(|side| sight(stage, line, pitches, side)))
}

fn sight(stage: &Stage, line: &Thrown, pitches: &[Thrown], side: Side) -> Sight {
    let eye = Eyes::position(side);
    let decision = stage.decision();
    let first = middle_throw(stage, line);
    let reference = first.fly();
    let paths = pitches.iter().map(|pitch| {
        let path = on_the_line_of(&first, &middle_throw(stage, pitch)).fly();
        let end = path.crossing();
        let look = |time: f64| path.at(time).position - eye;
        let plate_in = [end.x / INCH, end.z / INCH];
        let at_plate = reference.crossing();
        SeenPath {
            until_decision: moments(0.0, decision).map(look).collect(),
            after_decision: moments(decision, end.time).map(look).collect(),
            plate_in,
            gap_deg: Eyes::angle_deg(reference.at(decision).position, path.at(decision).position, side),
            plate_gap_in: (end.x - at_plate.x).hypot(end.z - at_plate.z) / INCH,
        }
    });
    Sight {
        side,
        eye,
        resolvable_deg: std::f64::consts::SQRT_2 * stage.hitter.eyes.angular_deg,
        paths: paths.collect(),
    }
}

fn moments(from: f64, to: f64) -> impl Iterator<Item = f64> {
    (0..=LOOKS).map(move |step| from + (to - from) * step as f64 / LOOKS as f64)
}

/// How the gap between two pitches on one line grows: share of the way to the plate, and inches
/// apart. The decision stands at the returned share.
#[derive(Debug, Clone, PartialEq)]
pub struct Opening {
    /// (share of the first pitch's flight, inches apart), from release to plate.
    pub gaps: Vec<(f64, f64)>,
    /// Share of the flight at which he must decide.
    pub decision: f64,
}

/// The opening between each pair of today's pitches, in the order of [`crate::former::separation::pairs`].
///
/// Up to the decision the two balls are compared at the same moment, as he sees them. After it
/// each goes on to its own crossing, so that the end is the gap at the plate.
pub fn openings(stage: &Stage) -> Vec<Opening> {
    let count = stage.pitches.len();
    let pairs = (0..count).flat_map(|first| (first + 1..count).map(move |second| (first, second)));
    pairs.map(|(first, second)| opening(stage, &stage.pitches[first], &stage.pitches[second])).collect()
}

fn opening(stage: &Stage, one: &Thrown, other: &Thrown) -> Opening {
    let first = middle_throw(stage, one);
    let (a, b) = (first.fly(), on_the_line_of(&first, &middle_throw(stage, other)).fly());
    let (end_a, end_b) = (a.crossing().time, b.crossing().time);
    let decision = stage.decision();
    let gap = |time_a: f64, time_b: f64| {
        let (p, q) = (a.at(time_a).position, b.at(time_b).position);
        (time_a / end_a, (p.x - q.x).hypot(p.z - q.z) / INCH)
    };
    let before = moments(0.0, decision).map(|time| gap(time, time));
    let after = moments(0.0, 1.0)
        .skip(1)
        .map(|share| gap(decision + share * (end_a - decision), decision + share * (end_b - decision)));
    Opening { gaps: before.chain(after).collect(), decision: decision / end_a }
}

//! How far apart an athlete's pitches are, to a hitter: how often one is taken for the other when the hitter must decide,
//! and how far apart they are by then and at the plate, each thrown to where it is really aimed.

use crate::athlete::profile::{PerSide, Spread};
use crate::base::Movement;
use crate::base::geometry::Side;
use crate::hitter::{Delivery, Hitter};

use super::model::Model;

/// A pair of pitches.
#[derive(Debug, Clone, PartialEq)]
pub struct Pair {
    /// The two, by their places in the profile.
    pub pitches: (usize, usize),
    /// Speed of the first less the second, mph.
    pub speed_gap_mph: f64,
    /// Arrival of the second less the first, ms.
    pub arrival_gap_ms: f64,
    /// Distance between their movements, in.
    pub movement_in: f64,
    /// Distance in speed and movement in units of both pitches' own scatter.
    pub scatter_distance: f64,
    /// As hitters of each side meet them.
    pub seen: PerSide<Seen>,
}

/// A pair as hitters of one side meet it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// How often the first is taken for the second when the hitter must decide, 0 to 1.
    pub first_for_second: f64,
    /// How often the second is taken for the first.
    pub second_for_first: f64,
    /// How far apart the two leave the hand, in.
    pub release_in: f64,
    /// How far apart the two are when the hitter must decide on the faster one, in.
    pub decision_in: f64,
    /// How far apart they arrive, in.
    pub plate_in: f64,
    /// How far apart their ways move after the decision, in.
    pub late_in: f64,
}

impl Seen {
    /// How much of the distance at the plate appears only after the decision, 0 to 1.
    pub fn late_share(&self) -> f64 {
        if self.plate_in > 0.0 { (1.0 - self.decision_in / self.plate_in).clamp(0.0, 1.0) } else { 0.0 }
    }
}

/// How two pitches come apart on their way: distances at equal times after release, until the first of them arrives.
#[derive(Debug, Clone, PartialEq)]
pub struct Parting {
    /// The two, by their places in the profile.
    pub pitches: (usize, usize),
    /// When the hitter must decide on the faster one, s after release.
    pub decision_s: f64,
    /// When the faster one arrives, s after release.
    pub arrival_s: f64,
    /// Distance across the line to the plate, in, at [`LOOKS`] even moments from release to the arrival.
    pub gaps_in: Vec<f64>,
}

/// Moments at which two pitches are compared on their way.
pub const LOOKS: usize = 33;

/// Every pair of today's pitches.
pub fn pairs(model: &Model) -> Vec<Pair> {
    let taken = PerSide::from_fn(|side| taken_for(model, side));
    let flown = PerSide::from_fn(|side| model.today[0].deliveries(side).copied().collect::<Vec<Delivery>>());
    every_two(model.arsenal.len())
        .map(|pair| {
            let seen = PerSide::from_fn(|side| seen(&model.hitters[0], pair, taken.on(side), flown.on(side)));
            compared(model, pair, &flown.same, seen)
        })
        .collect()
}

/// How every pair of today's pitches comes apart before hitters of `side`, in the order of [`pairs`].
pub fn partings(model: &Model, side: Side) -> Vec<Parting> {
    let flown: Vec<&Delivery> = model.today[0].deliveries(side).collect();
    let parting = |(first, second): (usize, usize)| {
        let (one, other) = (flown[first], flown[second]);
        let arrival_s = first_arrival_s(one, other);
        let moment = |look: usize| arrival_s * look as f64 / (LOOKS - 1) as f64;
        let gap = |look: usize| gap_at(one, other, moment(look)).length();
        Parting {
            pitches: (first, second),
            decision_s: arrival_s - model.hitters[0].parameters.commit_s,
            arrival_s,
            gaps_in: (0..LOOKS).map(gap).collect(),
        }
    };
    every_two(flown.len()).map(parting).collect()
}

/// When the faster of two arrives, s after release.
fn first_arrival_s(one: &Delivery, other: &Delivery) -> f64 {
    one.aimed.course.flight_s.min(other.aimed.course.flight_s)
}

/// Every two of so many.
fn every_two(count: usize) -> impl Iterator<Item = (usize, usize)> {
    (0..count).flat_map(move |first| (first + 1..count).map(move |second| (first, second)))
}

/// The way from the one ball to the other at one moment after release.
fn gap_at(one: &Delivery, other: &Delivery, seconds: f64) -> Movement {
    other.place_at(seconds) - one.place_at(seconds)
}

/// How often each pitch is taken for each, over both readings of the hitter.
fn taken_for(model: &Model, side: Side) -> Vec<Vec<f64>> {
    let mix = model.shares.mix(side);
    let [one, other] = model.today.each_ref().map(|facing| facing.taken_for(side, &mix));
    let middle = |(a, b): (&Vec<f64>, &Vec<f64>)| a.iter().zip(b).map(|(a, b)| f64::midpoint(*a, *b)).collect();
    one.iter().zip(&other).map(middle).collect()
}

fn seen(hitter: &Hitter, (first, second): (usize, usize), taken: &[Vec<f64>], flown: &[Delivery]) -> Seen {
    let (one, other) = (flown[first], flown[second]);
    let decision_s = first_arrival_s(&one, &other) - hitter.parameters.commit_s;
    let by_then = gap_at(&one, &other, decision_s);
    let (a, b) = (one.aim(), other.aim());
    let at_plate = Movement { glove_side_in: b.glove_side_in - a.glove_side_in, up_in: b.height_in - a.height_in };
    Seen {
        first_for_second: taken[first][second],
        second_for_first: taken[second][first],
        release_in: gap_at(&one, &other, 0.0).length(),
        decision_in: by_then.length(),
        plate_in: at_plate.length(),
        late_in: (at_plate - by_then).length(),
    }
}

fn compared(model: &Model, pitches: (usize, usize), flown: &[Delivery], seen: PerSide<Seen>) -> Pair {
    let [one, other] = [pitches.0, pitches.1].map(|pitch| &model.profile.pitches[pitch]);
    let speed_gap_mph = one.shape.speed_mph - other.shape.speed_mph;
    let apart = one.shape.movement() - other.shape.movement();
    let arrival = flown[pitches.1].aimed.course.flight_s - flown[pitches.0].aimed.course.flight_s;
    Pair {
        pitches,
        speed_gap_mph,
        arrival_gap_ms: 1000.0 * arrival,
        movement_in: apart.length(),
        scatter_distance: in_scatter(speed_gap_mph, apart, &one.spread, &other.spread),
        seen,
    }
}

/// A difference of shapes in units of the scatter of both.
fn in_scatter(speed_mph: f64, movement: Movement, one: &Spread, other: &Spread) -> f64 {
    let part = |gap: f64, read: fn(&Spread) -> f64| gap / read(one).hypot(read(other)).max(1e-9);
    let speed = part(speed_mph, |spread| spread.speed_mph);
    let up = part(movement.up_in, |spread| spread.vertical_break_in);
    let side = part(movement.glove_side_in, |spread| spread.glove_side_break_in);
    speed.hypot(up).hypot(side)
}

//! Throws as a hitter met them: the ball, what he knew of the pitcher, and what he did.

use std::collections::HashMap;
use std::sync::Arc;

use arsenalfit::base::geometry::Side;
use arsenalfit::hitter::{Along, Arrival, Ball, Belief, CountGroup, Course, Hand, Zone};

use crate::arsenals::{Arsenal, Arsenals, release_ft};
use crate::day::{Day, Outcome, Throw};

/// One throw as it was met.
#[derive(Debug, Clone)]
pub struct Meeting {
    /// Which row of the day.
    pub row: usize,
    /// The game.
    pub game: usize,
    /// The ball.
    pub ball: Ball,
    /// What the hitter knows: every pitch of the pitcher.
    pub beliefs: Arc<[Belief]>,
    /// The share of each to this side.
    pub mix: Arc<[f64]>,
    /// The zone.
    pub zone: Zone,
    /// The side.
    pub side: Side,
    /// The count.
    pub group: CountGroup,
    /// What he did.
    pub seen: Seen,
}

/// What the hitter did, question by question; nothing where the throw does not answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Seen {
    /// Swung.
    pub swing: Option<bool>,
    /// Missed, given a swing.
    pub miss: Option<bool>,
    /// Hit it solidly, given contact that was measured.
    pub solid: Option<bool>,
    /// Called a strike, given a take.
    pub called: Option<bool>,
}

/// What hitters know of one pitcher.
struct Known {
    beliefs: Arc<[Belief]>,
    mix: [Arc<[f64]>; 2],
}

/// Every throw of a day that was measured; rows without flight, place or side are left out.
pub fn meetings(day: &Day, arsenals: &Arsenals) -> Vec<Meeting> {
    let mut known: HashMap<&str, Option<Known>> = HashMap::new();
    let met = day.throws.iter().enumerate().filter_map(|(row, throw)| {
        let known = known.entry(&throw.pitcher).or_insert_with(|| arsenals.of_pitcher(&throw.pitcher).map(Known::of));
        meeting(row, throw, known.as_ref()?)
    });
    met.collect()
}

fn meeting(row: usize, throw: &Throw, known: &Known) -> Option<Meeting> {
    let side = throw.side?;
    Some(Meeting {
        row,
        game: throw.game,
        ball: ball(throw)?,
        beliefs: Arc::clone(&known.beliefs),
        mix: Arc::clone(&known.mix[usize::from(side == Side::Opposite)]),
        zone: throw.zone_in.map_or(Zone::TYPICAL, Zone::of),
        side,
        group: throw.count.map_or(CountGroup::Other, |(balls, strikes)| CountGroup::of(balls, strikes)),
        seen: Seen::of(throw),
    })
}

fn ball(throw: &Throw) -> Option<Ball> {
    let (measured, flight) = (throw.measured?, throw.flight?);
    let (velocity, acceleration) = (flight.velocity_in_s, flight.acceleration_in_s2);
    let along = |place_in, velocity_in_s, acceleration_in_s2| Along { place_in, velocity_in_s, acceleration_in_s2 };
    Some(Ball {
        course: Course {
            flight_s: flight.time_s,
            speed_mph: measured.shape.speed_mph,
            approach_in_s: -velocity.y,
            movement: flight.movement_against_gravity(),
            hand: hand(release_ft(throw)),
        },
        arrival: Arrival {
            across: along(measured.plate.side_in?, velocity.x, acceleration.x),
            height: along(measured.plate.height_in?, velocity.z, acceleration.z),
        },
    })
}

fn hand((height_ft, arm_side_ft): (f64, f64)) -> Hand {
    Hand { height_in: 12.0 * height_ft, arm_side_in: 12.0 * arm_side_ft }
}

impl Known {
    fn of(arsenal: &Arsenal) -> Self {
        let beliefs: Vec<Belief> = arsenal
            .groups
            .iter()
            .map(|group| Belief {
                flight_s: group.time_s,
                speed_mph: group.speed_mph,
                movement: group.movement,
                hand: hand((group.release_height_ft, group.release_side_ft)),
            })
            .collect();
        Self { beliefs: beliefs.into(), mix: Side::BOTH.map(|side| arsenal.shares(side).into()) }
    }
}

impl Seen {
    /// Hit it solidly, given contact; a ball whose speed nobody measured was not.
    pub fn solid_of_all(self) -> Option<bool> {
        (self.miss == Some(false)).then_some(self.solid == Some(true))
    }

    /// What the throw says.
    pub fn of(throw: &Throw) -> Self {
        let outcome = throw.outcome;
        let swing = outcome.is_swing();
        Self {
            swing,
            miss: (swing == Some(true)).then_some(outcome == Outcome::Miss),
            solid: throw.solid,
            called: (swing == Some(false)).then_some(outcome == Outcome::CalledStrike),
        }
    }
}

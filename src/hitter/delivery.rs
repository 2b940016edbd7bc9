//! A pitch of an arm as hitters meet it: flown once to its aim, then turned to any other place.

use crate::ball::Shape;
use crate::ball::flight::Air;
use crate::ball::flight::inverse::throw_of_shape;
use crate::base::geometry::Vec3;
use crate::base::units::INCH;
use crate::base::{Location, Movement};

use super::sight::GRAVITY_IN_S2;
use super::{Along, Arrival, Ball, Belief, Course, Hand};

/// A pitch of an arm on its way to its aim.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Delivery {
    /// The ball that arrives where it was aimed.
    pub aimed: Ball,
    /// How far on its way to the plate the ball is after half of its time: a little more than half, for it slows.
    half_way: f64,
}

impl Delivery {
    /// The pitch of this shape from this release point (m), aimed at a place of the front of the plate.
    ///
    /// The hitter's formulas know a flight under a constant acceleration, as it is fitted to tracked throws. Here it is,
    /// along each axis, the parabola in time through the flight's place at release, half-way in time and at the plate.
    pub fn of(shape: Shape, release: Vec3, air: Air, aim: Location) -> Self {
        let flight = throw_of_shape(shape, release, aim, air).fly();
        let flight_s = flight.crossing().time;
        let [start, middle, end] = [0.0, flight_s / 2.0, flight_s].map(|time| flight.at(time).position * (1.0 / INCH));
        let across = parabola([start.x, middle.x, end.x], flight_s);
        let height = parabola([start.z, middle.z, end.z], flight_s);
        let inches = 0.5 * flight_s * flight_s;
        let course = Course {
            flight_s,
            speed_mph: shape.speed_mph,
            approach_in_s: -parabola([start.y, middle.y, end.y], flight_s).velocity_in_s,
            movement: Movement {
                glove_side_in: across.acceleration_in_s2 * inches,
                up_in: (height.acceleration_in_s2 + GRAVITY_IN_S2) * inches,
            },
            hand: Hand { height_in: start.z, arm_side_in: -start.x },
        };
        let half_way = (start.y - middle.y) / (start.y - end.y);
        Self { aimed: Ball { course, arrival: Arrival { across, height } }, half_way }
    }

    /// Where it was aimed.
    pub fn aim(&self) -> Location {
        self.aimed.arrival.place()
    }

    /// The same pitch turned a little at release, so that it arrives at `place`: all but its direction stays.
    pub fn ball_at(&self, place: Location) -> Ball {
        let arrival = Arrival { across: self.across_at(place.glove_side_in), height: self.height_at(place.height_in) };
        Ball { arrival, ..self.aimed }
    }

    /// The place across of the pitch turned so that it arrives there.
    pub(super) fn across_at(&self, place_in: f64) -> Along {
        self.turned(self.aimed.arrival.across, place_in)
    }

    /// The height of the pitch turned so that it arrives there.
    pub(super) fn height_at(&self, place_in: f64) -> Along {
        self.turned(self.aimed.arrival.height, place_in)
    }

    /// A turn moves the ball in proportion to its way so far; the parabola through that is added.
    fn turned(&self, aimed: Along, place_in: f64) -> Along {
        let off = place_in - aimed.place_in;
        let added = parabola([0.0, off * self.half_way, off], self.aimed.course.flight_s);
        Along {
            place_in,
            velocity_in_s: aimed.velocity_in_s + added.velocity_in_s,
            acceleration_in_s2: aimed.acceleration_in_s2 + added.acceleration_in_s2,
        }
    }

    /// Where it is in the plane across the line to the plate, `seconds` after release, when aimed as it is: to the glove
    /// side and up, in.
    pub fn place_at(&self, seconds: f64) -> Movement {
        let Ball { course, arrival } = self.aimed;
        let left = course.flight_s - seconds;
        Movement { glove_side_in: arrival.across.place_before(left), up_in: arrival.height.place_before(left) }
    }

    /// What a hitter who knows this pitch knows of it.
    pub fn belief(&self) -> Belief {
        let Course { flight_s, speed_mph, movement, hand, .. } = self.aimed.course;
        Belief { flight_s, speed_mph, movement, hand }
    }
}

/// The parabola in time through places (in) at release, half-way in time and at the plate, as it ends.
fn parabola([start, middle, end]: [f64; 3], flight_s: f64) -> Along {
    Along {
        place_in: end,
        velocity_in_s: (start - 4.0 * middle + 3.0 * end) / flight_s,
        acceleration_in_s2: 4.0 * (start - 2.0 * middle + end) / (flight_s * flight_s),
    }
}

//! What movement is counted against, and the way from one count to the other.
//!
//! Units work movement out from the mean acceleration of a pitch: half of it times the square of the time of flight.
//! Some leave out gravity only, so that what drag does to the height and to the side of a ball that comes in at a slant
//! stays inside; others leave out drag as well. Inside this crate movement is always the latter.

use std::fmt;

use super::inverse::throw_of_shape;
use super::{Air, Throw};
use crate::ball::Shape;
use crate::base::geometry::Vec3;
use crate::base::units::INCH;
use crate::base::{Location, Movement};

/// What movement is counted against.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Against {
    /// The same throw with no sideways force: same release, same drag, gravity on.
    #[default]
    DragFree,
    /// A throw on which gravity alone acts. A pitch comes down and toward the glove side, and drag holds that up: such
    /// numbers read 1.7 to 2.4 in higher and 0.7 to 1.5 in farther to the arm side, by family (means of the 4,418
    /// pitches of one day of the top league, which carry both; R package abdwr3edata, CC0).
    Gravity,
}

impl Against {
    /// Both, the one used inside first.
    pub const ALL: [Self; 2] = [Self::DragFree, Self::Gravity];

    /// As written in a profile and a column map.
    pub fn name(self) -> &'static str {
        match self {
            Self::DragFree => "drag-free",
            Self::Gravity => "gravity",
        }
    }

    /// The shape, as it is used inside, of a pitch whose movement reads `read` against this. Where the ball crossed
    /// matters: an inch lower is 0.04 in more of drag's share.
    ///
    /// Error on the league day when the place of each pitch is known: at most 0.2 in on average for every family, 0.1 to
    /// 0.3 in from pitch to pitch; with a family's usual place for all of its pitches as good on average (test).
    #[must_use]
    pub fn drag_free(self, read: Shape, release: Vec3, target: Location, air: Air) -> Shape {
        let mut shape = read;
        if self == Self::Gravity {
            // Drag's share hardly depends on the movement: each round leaves a thirtieth of the error.
            for _ in 0..3 {
                let share = drag_share(&throw_of_shape(shape, release, target, air));
                shape = read.with_movement(read.movement() - share);
            }
        }
        shape
    }

    /// What a unit that counts against this reads of `shape`.
    #[must_use]
    pub fn reading(self, shape: Shape, release: Vec3, target: Location, air: Air) -> Shape {
        match self {
            Self::DragFree => shape,
            Self::Gravity => {
                let share = drag_share(&throw_of_shape(shape, release, target, air));
                shape.with_movement(shape.movement() + share)
            }
        }
    }
}

impl fmt::Display for Against {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// Drag's share of movement against gravity alone: half of drag's mean acceleration times the square of the time.
///
/// Drag is -k |v| v and v dt a step along the path, so its sum over time is that of speed over the path.
pub fn drag_share(throw: &Throw) -> Movement {
    let path = throw.fly();
    let steps = path.states().windows(2).map(|ends| {
        let mean_speed = f64::midpoint(ends[0].velocity.norm(), ends[1].velocity.norm());
        (ends[1].position - ends[0].position) * mean_speed
    });
    let sum = steps.fold(Vec3::default(), |sum, step| sum + step);
    let scale = -throw.forces.drag * throw.forces.per_metre * path.crossing().time / 2.0 / INCH;
    Movement { glove_side_in: sum.x * scale, up_in: sum.z * scale }
}

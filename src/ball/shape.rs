//! The shape of a pitch: its speed and how far it moves, and the range of speeds known here.

use crate::base::Movement;
use crate::base::units::MPH;

/// The slowest pitch known here, mph. Below some 26 mph no throw carries 60 ft 6 in to the plate at all, and
/// below 35 not every throw in heavy air (computed); whoever throws so pitches from nearer. Nothing drawn or
/// searched may be slower either.
pub const SLOWEST_MPH: f64 = 40.0;
/// The fastest pitch known here, mph: beyond every arm (common practice, no published source).
pub const FASTEST_MPH: f64 = 110.0;

/// What a pitch does, in the hand-free frame: release speed and the two breaks.
///
/// A break is how far from the same throw with no sideways force at all (same release, same drag,
/// gravity on) the ball arrives at the front of the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// Release speed.
    pub speed_mph: f64,
    /// Inches above (+) or below (-) the throw with no sideways force.
    pub vertical_break_in: f64,
    /// Inches to the glove side (+) or arm side (-) of it.
    pub glove_side_break_in: f64,
}

impl Shape {
    /// Release speed in m/s.
    pub fn speed(self) -> f64 {
        self.speed_mph * MPH
    }

    /// Its three numbers: speed (mph), vertical break (in), glove-side break (in).
    pub fn numbers(self) -> [f64; 3] {
        [self.speed_mph, self.vertical_break_in, self.glove_side_break_in]
    }

    /// The two breaks.
    pub fn movement(self) -> Movement {
        Movement { glove_side_in: self.glove_side_break_in, up_in: self.vertical_break_in }
    }

    /// The same speed with these breaks.
    #[must_use]
    pub fn with_movement(self, movement: Movement) -> Self {
        Self { vertical_break_in: movement.up_in, glove_side_break_in: movement.glove_side_in, ..self }
    }

    /// The shape that is `speed_mph` faster and moves by `movement` more; no slower than [`SLOWEST_MPH`] and no faster
    /// than [`FASTEST_MPH`].
    #[must_use]
    pub fn moved(self, speed_mph: f64, movement: Movement) -> Self {
        Self {
            speed_mph: (self.speed_mph + speed_mph).clamp(SLOWEST_MPH, FASTEST_MPH),
            vertical_break_in: self.vertical_break_in + movement.up_in,
            glove_side_break_in: self.glove_side_break_in + movement.glove_side_in,
        }
    }

    /// The shape to the mile per hour and the inch, as finely as a coach can aim.
    #[must_use]
    pub fn rounded(self) -> Self {
        Self {
            speed_mph: self.speed_mph.round(),
            vertical_break_in: self.vertical_break_in.round() + 0.0,
            glove_side_break_in: self.glove_side_break_in.round() + 0.0,
        }
    }

    /// Distance in inches between the breaks of two shapes.
    pub fn movement_distance_in(self, other: Self) -> f64 {
        self.movement().distance(other.movement())
    }
}

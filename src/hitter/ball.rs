//! One ball as it comes to the hitter, and what he knows of the pitches he may get.

use crate::base::{Location, Movement};

/// Where a ball leaves the hand, inches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hand {
    /// Above the plate's level.
    pub height_in: f64,
    /// From the middle line to the arm side.
    pub arm_side_in: f64,
}

/// What all balls of one pitch share, wherever they are aimed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Course {
    /// Seconds from release to the front of the plate.
    pub flight_s: f64,
    /// Speed at release, mph.
    pub speed_mph: f64,
    /// How fast it comes at the front of the plate, along the line from pitcher to plate, in/s, positive.
    pub approach_in_s: f64,
    /// Movement against gravity alone.
    pub movement: Movement,
    /// Where it leaves the hand.
    pub hand: Hand,
}

/// Where and how a ball crosses the front of the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arrival {
    /// To the glove side of the middle of the plate.
    pub across: Along,
    /// Up from the ground, gravity in its acceleration.
    pub height: Along,
}

/// One axis of a flight under a constant acceleration, as it ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Along {
    /// Place at the front of the plate, in.
    pub place_in: f64,
    /// Velocity there, in/s.
    pub velocity_in_s: f64,
    /// Acceleration all the way, in/s².
    pub acceleration_in_s2: f64,
}

impl Along {
    /// Place so many seconds before it arrives, in.
    pub fn place_before(&self, seconds: f64) -> f64 {
        self.place_in - self.velocity_in_s * seconds + 0.5 * self.acceleration_in_s2 * seconds * seconds
    }
}

impl Arrival {
    /// Where it crosses.
    pub fn place(&self) -> Location {
        Location { glove_side_in: self.across.place_in, height_in: self.height.place_in }
    }
}

/// One ball as it comes to the hitter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ball {
    /// What it shares with every ball of its pitch.
    pub course: Course,
    /// How it crosses the plate.
    pub arrival: Arrival,
}

/// What a hitter knows of one pitch: its means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Belief {
    /// Seconds from release to the front of the plate.
    pub flight_s: f64,
    /// Speed at release, mph.
    pub speed_mph: f64,
    /// Movement against gravity alone.
    pub movement: Movement,
    /// Where it leaves the hand.
    pub hand: Hand,
}

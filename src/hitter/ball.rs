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

/// What all balls of one pitch share, wherever they are aimed: a flight under a constant acceleration.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Course {
    /// Seconds from release to the front of the plate.
    pub flight_s: f64,
    /// Speed at release, mph.
    pub speed_mph: f64,
    /// How fast it comes at the front of the plate, along the line from pitcher to plate, in/s, positive.
    pub approach_in_s: f64,
    /// Constant acceleration to the glove side, in/s².
    pub glove_side_in_s2: f64,
    /// Constant acceleration up, gravity in it, in/s².
    pub up_in_s2: f64,
    /// Movement against gravity alone.
    pub movement: Movement,
    /// Where it leaves the hand.
    pub hand: Hand,
}

/// Where and in which direction a ball crosses the front of the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arrival {
    /// Where it crosses.
    pub place: Location,
    /// Speed to the glove side there, in/s.
    pub glove_side_in_s: f64,
    /// Speed up there, in/s.
    pub up_in_s: f64,
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

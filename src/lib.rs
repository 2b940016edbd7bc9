//! arsenalfit decides whether a new pitch belongs in a pitcher's arsenal.
pub mod units;
pub mod geometry;
pub mod stats;

pub mod pitch;
pub mod profile;
pub mod session;
pub mod input;

pub mod spin;
pub mod flight;
pub mod eyes;
pub mod hitter;
pub mod mix;

pub mod evaluate;
pub mod search;

pub mod target;
pub mod slot;
pub mod trial;
pub mod progress;
pub mod cues;
pub mod plan;

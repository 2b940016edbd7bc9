//! arsenalfit decides whether a new pitch belongs in a pitcher's arsenal.
pub mod evaluate;
pub mod eyes;
pub mod flight;
pub mod geometry;
pub mod hitter;
pub mod input;
pub mod mix;
pub mod pitch;
pub mod profile;
pub mod search;
pub mod spin;
pub mod stats;
pub mod units;

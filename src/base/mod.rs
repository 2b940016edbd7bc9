//! Numbers and what they mean: units, directions and places, movement and ranges, doubt.

mod movement;
pub mod units;
pub mod geometry;
pub mod stats;

pub use movement::{Location, Movement, Range};

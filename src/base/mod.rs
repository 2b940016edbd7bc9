//! Numbers and what they mean: units, directions and places, doubt.

pub mod units;
pub mod geometry;
pub mod stats;

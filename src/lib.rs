//! arsenalfit decides whether a new pitch belongs in a pitcher's arsenal.
pub mod demo;
pub mod flight;
pub mod geometry;
pub mod input;
pub mod pitch;
pub mod profile;
pub mod profile_text;
pub mod session;
pub mod sorting;
pub mod spin;
pub mod stats;
pub mod units;

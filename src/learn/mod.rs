//! The follow-through: what is worked toward, which grip gives it, whether it arrives, on which days.

pub mod window;
pub mod target;
pub mod slot;
pub mod trial;
pub mod progress;
pub mod cues;
pub mod plan;

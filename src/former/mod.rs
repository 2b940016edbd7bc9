//! The first hitter and what is judged against him, until the new one takes over.

pub mod demo;
pub mod eyes;
pub mod hitter;
pub mod mix;
pub mod evaluate;
pub mod search;
pub mod separation;
pub mod sight;

//! The answers: how pitches are used, whether a new one belongs, who gains most.

pub mod usage;
pub mod inspect;
pub mod advice;
pub mod why;
pub mod coverage;
pub mod compare;
pub mod roster;

//! The answers: how pitches are used, whether a new one belongs, which shape to chase, who gains most.
//!
//! 1. What is thrown and what it costs: [`counts`], [`runs`], [`shares`], [`custom`], [`bounds`], [`places`].
//! 2. An arsenal against a hitter: [`offering`], [`facing`], [`aims`], [`own_results`]; what is not known: [`draws`].
//! 3. One athlete's [`model`], and what a change of the arsenal is worth: [`new_pitch`], [`worth`], [`share_choice`],
//!    [`chase`], [`recipe`], [`verdict`].
//! 4. The answers: [`usage`], [`apart`], [`advice`], [`levers`], [`why`], [`compare`], [`roster`], [`inspect`].

pub mod counts;
pub mod runs;
pub mod shares;
pub mod offering;
pub mod own_results;
pub mod facing;
pub mod places;
pub mod custom;
pub mod bounds;
pub mod draws;
pub mod aims;
pub mod model;
pub mod recipe;
pub mod new_pitch;
pub mod worth;
pub mod share_choice;
pub mod chase;
pub mod verdict;
pub mod outlook;
pub mod leaning;
pub mod usage;
pub mod apart;
pub mod advice;
pub mod levers;
pub mod why;
pub mod compare;
pub mod roster;
pub mod inspect;

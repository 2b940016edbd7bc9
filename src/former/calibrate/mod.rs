//! For developers: fitting the hitter to real pitches, and checking the fit where it was not made.
//!
//! 1. [`Evidence`]: real pitches by pitch and side, with what hitters did, from a sorted session.
//! 2. [`crate::former::hitter::FreeParameters`]: a hitter as a point in a box of published ranges.
//! 3. [`fit`]: a random walk through the box that stays longer where the evidence is likelier
//!    (Metropolis), tempered by how much the model misses; it gives a best point and an ensemble of
//!    about equally good ones.
//! 4. [`cross_validate`]: log loss on games left out, beside two baselines.
//!
//! The hitter shipped with the tool is the ensemble that this wrote; nothing here runs for users.

mod check;
mod evidence;
mod walk;

pub use check::{Calibration, CrossValidation, Losses, cross_validate};
pub use evidence::{Cell, Counts, Evidence};
pub use walk::{Fit, fit};

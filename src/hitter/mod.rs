//! The hitter: what he sees of a ball, which pitch he takes it for, whether he swings, what he hits.
//!
//! A ball is met under each pitch he believes it could be; each meeting gives a weight and chances of a swing, of
//! contact and of solid contact ([`meet`]); the outcome is their mean by weight, so it is linear in weights that
//! stand in proportion to how often the pitches are thrown. What is not swung at is called by [`called_strike`].
//!
//! Units inside this room are those of the fit: inches, seconds, mph; x to the glove side, z up, movement
//! against gravity alone unless told otherwise. Runs, places thrown to and shares of use are not decided here.

mod ball;
mod parameters;
mod table;
mod posterior;
mod person;
mod sight;
mod axis;
mod contact;
mod meeting;
mod called;
mod levels;
mod delivery;
mod places;
mod umpire;
mod chances;
mod row;
#[cfg(test)]
mod laws;

pub use ball::{Along, Arrival, Ball, Belief, Course, Hand};
pub use called::called_strike;
pub use chances::Chances;
pub use delivery::Delivery;
pub use levels::LevelFactors;
pub use meeting::{Met, Struck, meet, outcome};
pub use parameters::{PARAMETERS, Parameters};
pub use person::{CountGroup, Hitter, Reading, Zone};
pub use places::{AIM_ALLOWANCE_IN, Scatter, Spread};
pub use posterior::{DRAWS, Posterior};
pub use row::{Mixed, Row};
pub use table::{Known, Transform, free, known};

//! One evaluation for today's arsenal and for every candidate.
//!
//! [`Stage`] holds what an athlete's evaluations share. [`SidePlan`] is an arsenal against hitters
//! of one side: where each pitch is aimed, how the pitches are mixed, and what comes of it.
//! [`Draw`] is one way the world might be; plans are made on the best guess and then judged in
//! every draw, because no pitcher knows his hitter's eyes when he chooses his mix.

mod draws;
mod plan;
mod results;
mod stage;
mod world;

pub use draws::{Draw, draws};
pub use plan::{Chosen, SidePlan, Today};
pub use results::{BlendedRates, OwnResults, PRIOR_TRIES};
pub use stage::{NewPitch, Stage, Thrown};
pub use world::{PitchOutlook, SideOutlook, World, worlds};

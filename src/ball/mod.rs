//! The ball: what families of pitches there are, what shape a pitch has, how it is released, spins and flies.

mod family;
mod shape;
mod release;
mod weather;
pub mod recipe;
pub mod spin;
pub mod usual;
pub mod flight;

pub use family::Family;
pub use flight::Against;
pub use recipe::{Ground, Recipe, recipe};
pub use release::{Release, Supination};
pub use shape::{FASTEST_MPH, SLOWEST_MPH, Shape};
pub use usual::{ActiveShare, SeamPush, Usual};
pub use weather::Weather;

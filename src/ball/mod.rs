//! The ball: what families of pitches there are, what shape a pitch has, how it is released, spins and flies.

mod family;
mod shape;
mod release;
mod weather;
pub mod spin;
pub mod usual;
pub mod flight;

pub use family::Family;
pub use flight::Against;
pub use release::{Release, Supination};
pub use shape::{FASTEST_MPH, SLOWEST_MPH, Shape};
pub use weather::Weather;

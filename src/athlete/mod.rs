//! The athlete: who he is, what he throws, what was measured of it, and what he may not throw.

pub mod profile;
pub mod session;
mod spread;

pub use spread::PROFESSIONAL_COMMAND_IN;

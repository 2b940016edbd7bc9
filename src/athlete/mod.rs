//! The athlete: who it is, what is thrown, what was measured of it, and what may not be thrown.

pub mod eligibility;
pub mod natural;
pub mod profile;
pub mod session;
mod spread;

pub use spread::PROFESSIONAL_COMMAND_IN;

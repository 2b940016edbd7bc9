//! The athlete: who he is, what he throws, what was measured of it, and what he may not throw.

pub mod natural;
pub mod profile;
pub mod session;

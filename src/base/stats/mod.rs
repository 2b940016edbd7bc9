//! The statistics every other part leans on: an estimate with its interval, the normal
//! distribution in one and several dimensions, low-discrepancy points and beta posteriors.
//!
//! Distribution tails and quantiles come from `statrs`; the tabulated normal is here because the
//! hitter model asks for it some ten million times per decision.

mod estimate;
mod gaussian;
mod matrix;
mod points;
mod rate;
mod sample;

pub use estimate::{Estimate, INTERVAL_MASS};
pub use gaussian::{NormalTable, normal_quantile};
pub use matrix::{Cholesky, Matrix};
pub use points::normal_points;
pub use rate::{Blend, Count};
pub use sample::{Sample, sd_estimate, share_estimate};

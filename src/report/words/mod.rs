//! Words of values: what a reason, a caution, a finding or a cue says. One place for each sentence;
//! whatever form an answer takes, it is said alike.

pub(crate) mod advice;
pub(crate) mod counts;
pub(crate) mod cues;
pub(crate) mod findings;
pub(crate) mod grips;
pub(crate) mod health;
pub(crate) mod levers;
pub(crate) mod looks;
pub(crate) mod places;
pub(crate) mod rows;
pub(crate) mod season;
pub(crate) mod sides;
pub(crate) mod sorting;
pub(crate) mod steps;

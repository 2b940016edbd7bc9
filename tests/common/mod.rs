//! What the tests of the hitter, the mix and the search share.

pub(crate) mod at_bats;
pub(crate) mod standard;

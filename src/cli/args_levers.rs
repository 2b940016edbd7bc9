//! What can be asked of `levers`, and how.

use std::num::NonZeroUsize;

use clap::Args;

use crate::decide::draws::DRAWS;

use super::args::{ProfileArg, draws};
use super::page::PageArg;

#[derive(Debug, Args)]
pub(super) struct LeversArgs {
    #[command(flatten)]
    pub(super) profile: ProfileArg,
    /// Simulations of what is not known; more give steadier intervals.
    #[arg(long, value_name = "N", default_value_t = DRAWS, allow_negative_numbers = true, value_parser = draws)]
    pub(super) draws: NonZeroUsize,
    #[command(flatten)]
    pub(super) page: PageArg,
}

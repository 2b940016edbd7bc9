//! How throws are read: the options of every command that takes sessions. What is made of them is in
//! [`super::reading`].

use std::path::PathBuf;

use clap::Args;

use crate::base::geometry::Hand;

use super::words::hands;

/// How the throws are written, and whose they are.
#[derive(Debug, Args)]
pub(super) struct ReadingArgs {
    /// How the columns of the throws are named, what their units are and which way they point (TOML);
    /// without it they carry this tool's own names.
    #[arg(long, value_name = "MAP")]
    pub(super) columns: Option<PathBuf>,
    /// Whose throws to read, when the files name several pitchers.
    #[arg(long, value_name = "NAME")]
    pub(super) pitcher: Option<String>,
}

/// The same where no profile need tell the hand.
#[derive(Debug, Args)]
pub(super) struct SessionArgs {
    #[command(flatten)]
    pub(super) reading: ReadingArgs,
    /// Throwing hand, when neither profile nor map tells it.
    #[arg(long, value_name = "HAND", value_parser = hands())]
    pub(super) hand: Option<Hand>,
}

//! What can be asked of the program about itself: completions and manual pages. Everything else
//! about a command line is in [`super::args`].

use std::path::PathBuf;

use clap::Args;
use clap_complete::Shell;

#[derive(Debug, Args)]
pub(super) struct CompletionsArgs {
    /// The shell.
    #[arg(value_name = "SHELL", value_enum)]
    pub(super) shell: Shell,
}

#[derive(Debug, Args)]
pub(super) struct ManArgs {
    /// Only the page of this command.
    #[arg(value_name = "COMMAND", conflicts_with = "dir")]
    pub(super) command: Option<String>,
    /// Write all pages into this folder, made when it is not there.
    #[arg(long, value_name = "DIR")]
    pub(super) dir: Option<PathBuf>,
    /// Write over files that are there and are no manual pages of this program.
    #[arg(long, requires = "dir")]
    pub(super) force: bool,
}

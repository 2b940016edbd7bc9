//! `--report`: an answer as a page, beside the text.

use std::path::{Path, PathBuf};

use clap::Args;

use super::Failure;
use super::files::{Ready, put_all, ready};
use super::outputs::{Named, Output};

/// Where a page goes.
#[derive(Debug, Args)]
pub(super) struct PageArg {
    /// Also write a page with pictures: one self-contained HTML file, for screen, phone and print.
    #[arg(long, value_name = "FILE.html")]
    pub(super) report: Option<PathBuf>,
    /// Write over a file that is there; without it only what this program made is replaced, and never a profile.
    #[arg(long)]
    pub(super) force: bool,
}

impl PageArg {
    /// The page as a file to write, when one is asked for.
    pub(super) fn output(&self) -> Option<Output<'_>> {
        let path = self.report.as_deref()?;
        Some(Output { flag: "--report", path, force: self.force })
    }

    /// Refuses a page that would be written over one of the `inputs` or over another file.
    pub(super) fn check(&self, inputs: &[&Path]) -> Result<(), Failure> {
        Named { texts: inputs.to_vec(), outputs: self.output().into_iter().collect(), ..Named::default() }.check()
    }

    /// Writes the page that `make` sets, when one is asked for.
    pub(super) fn write(&self, make: impl FnOnce() -> String) -> Result<(), Failure> {
        put_all(self.ready(make)?.into_iter().collect())
    }

    /// The same page before it takes its name.
    pub(super) fn ready(&self, make: impl FnOnce() -> String) -> Result<Option<Ready<'_>>, Failure> {
        self.output().map(|output| ready(output, &make())).transpose()
    }
}

//! `--report`: an answer as a page, beside the text.

use super::Failure;
use super::args::PageArg;
use super::files::write_whole;

impl PageArg {
    /// Writes the page that `make` sets, when one is asked for.
    pub(super) fn write(&self, make: impl FnOnce() -> String) -> Result<(), Failure> {
        self.report.as_ref().map_or(Ok(()), |path| write_whole(path, &make()))
    }
}

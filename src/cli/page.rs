//! `--report`: an answer as a page, beside the text.

use std::fs::File;
use std::io::Read;
use std::path::Path;

use super::Failure;
use super::args::PageArg;
use super::files::write_whole;

impl PageArg {
    /// Writes the page that `make` sets, when one is asked for. A page that is there is replaced;
    /// any other file, a profile say, is left alone.
    pub(super) fn write(&self, make: impl FnOnce() -> String) -> Result<(), Failure> {
        let Some(path) = &self.report else { return Ok(()) };
        if is_no_page(path) {
            let problem = format!("{} is there already and is no page", path.display());
            return Err(Failure::request(problem, "name another file for the page, or remove that one"));
        }
        write_whole(path, &make())
    }
}

/// Whether an ordinary file with something else than a page in it stands there.
fn is_no_page(path: &Path) -> bool {
    const PAGE: &[u8] = b"<!DOCTYPE html>";
    let mut head = [0; PAGE.len()];
    let opened = std::fs::metadata(path).is_ok_and(|file| file.is_file() && file.len() > 0).then(|| File::open(path));
    opened.and_then(Result::ok).is_some_and(|mut file| file.read_exact(&mut head).is_err() || head != PAGE)
}

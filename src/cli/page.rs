//! Writing a page: whole or not at all.
//!
//! The text goes to a temporary file in the same folder, which then takes the name asked for in
//! one step. Whoever opens the page sees the old one or the new one, never half of one.

use std::io::{self, Write};
use std::path::Path;

use super::Failure;
use super::args::PageArg;

impl PageArg {
    /// Writes the page that `make` sets, when one is asked for.
    pub(super) fn write(&self, make: impl FnOnce() -> String) -> Result<(), Failure> {
        let Some(path) = &self.report else {
            return Ok(());
        };
        replace(path, &make()).map_err(|problem| Failure::Page { path: path.to_string_lossy().into_owned(), problem })
    }
}

fn replace(path: &Path, text: &str) -> io::Result<()> {
    temporary_beside(path, text)?.persist(path).map_err(|error| error.error)?;
    Ok(())
}

/// `text` in a temporary file in the folder of `path`, with the rights an ordinary new file has.
pub(super) fn temporary_beside(path: &Path, text: &str) -> io::Result<tempfile::NamedTempFile> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut file = builder.prefix(".arsenalfit-").tempfile_in(folder)?;
    file.write_all(text.as_bytes())?;
    file.as_file().sync_all()?;
    Ok(file)
}

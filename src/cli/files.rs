//! Writing a file whole or not at all.
//!
//! The text goes to a temporary file in the same folder, which then takes the name asked for in one
//! step. Whoever looks sees the old file or the new one, never half of one.

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::Failure;

/// Writes `text` to `path`; a file that is there is replaced and keeps its permissions.
///
/// # Errors
/// When the folder cannot be written to; the old file is then as it was.
pub(super) fn write_whole(path: &Path, text: &str) -> Result<(), Failure> {
    ready(path, text)?.put()
}

/// A file written to the end that has not yet taken its name. Where several are asked for, all are
/// made ready before the first is put in its place: a full disk then leaves every old one.
#[derive(Debug)]
pub(super) struct Ready<'p> {
    /// The name asked for.
    path: &'p Path,
    /// The same with links followed, so that a link stays a link.
    place: PathBuf,
    beside: NamedTempFile,
}

/// Makes `text` ready to become the file at `path`.
///
/// # Errors
/// When the folder cannot be written to, or something that is no file is there.
pub(super) fn ready<'p>(path: &'p Path, text: &str) -> Result<Ready<'p>, Failure> {
    written_beside(path, text).map_err(|problem| Failure::unwritten(path, &problem))
}

impl Ready<'_> {
    /// Gives the file its name.
    ///
    /// # Errors
    /// When the folder has changed meanwhile; the old file is then as it was.
    pub(super) fn put(self) -> Result<(), Failure> {
        let put = self.beside.persist(self.place);
        put.map(drop).map_err(|problem| Failure::unwritten(self.path, &problem.error))
    }
}

fn written_beside<'p>(path: &'p Path, text: &str) -> io::Result<Ready<'p>> {
    let old = std::fs::metadata(path).ok();
    if let Some(kind) = old.as_ref().map(std::fs::Metadata::file_type).filter(|kind| !kind.is_file()) {
        // A device or a pipe must not be replaced by a file.
        return Err(if kind.is_dir() { io::ErrorKind::IsADirectory } else { io::ErrorKind::InvalidInput }.into());
    }
    let place = path.canonicalize().unwrap_or_else(|_| path.to_owned());
    let beside = temporary_beside(&place, text)?;
    if let Some(old) = old {
        beside.as_file().set_permissions(old.permissions())?;
    }
    Ok(Ready { path, place, beside })
}

/// `text` in a temporary file in the folder of `path`, with the rights an ordinary new file has.
pub(super) fn temporary_beside(path: &Path, text: &str) -> io::Result<NamedTempFile> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut file = builder.prefix(".arsenalfit-").tempfile_in(folder)?;
    file.write_all(text.as_bytes())?;
    file.as_file().sync_all()?;
    Ok(file)
}

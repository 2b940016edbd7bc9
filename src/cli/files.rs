//! Writing a file whole or not at all.
//!
//! The text goes to a temporary file in the same folder, which then takes the name asked for in one
//! step. Whoever looks sees the old file or the new one, never half of one.

use std::io::{self, Write};
use std::path::Path;

use super::Failure;

/// Writes `text` to `path`; a file that is there is replaced and keeps its permissions.
///
/// # Errors
/// When the folder cannot be written to; the old file is then as it was.
pub(super) fn write_whole(path: &Path, text: &str) -> Result<(), Failure> {
    replace(path, text).map_err(|problem| Failure::unwritten(path, &problem))
}

fn replace(path: &Path, text: &str) -> io::Result<()> {
    let old = std::fs::metadata(path).ok();
    if let Some(kind) = old.as_ref().map(std::fs::Metadata::file_type).filter(|kind| !kind.is_file()) {
        // A device or a pipe must not be replaced by a file.
        return Err(if kind.is_dir() { io::ErrorKind::IsADirectory } else { io::ErrorKind::InvalidInput }.into());
    }
    // A link stays a link: what it points to is replaced.
    let path = &path.canonicalize().unwrap_or_else(|_| path.to_owned());
    let beside = temporary_beside(path, text)?;
    if let Some(old) = old {
        beside.as_file().set_permissions(old.permissions())?;
    }
    beside.persist(path).map_err(|error| error.error)?;
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

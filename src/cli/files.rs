//! Writing a file whole or not at all.

use std::io::Write;
use std::path::Path;

use super::Failure;

/// Writes `text` beside `path` and moves it into place: whoever looks sees the old file or the new
/// one, whole, whatever happens in between.
///
/// # Errors
/// When the folder cannot be written to; the old file is then as it was.
pub(super) fn write_whole(path: &Path, text: &str) -> Result<(), Failure> {
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let refuse = |error: &dyn std::fmt::Display| {
        Failure::Request(format!(
            "cannot write {}: {error}\nhint: check that the folder exists, can be written to and has room",
            path.display()
        ))
    };
    let mut beside = tempfile::Builder::new().prefix(".arsenalfit-").tempfile_in(folder).map_err(|e| refuse(&e))?;
    beside.write_all(text.as_bytes()).and_then(|()| beside.as_file().sync_all()).map_err(|e| refuse(&e))?;
    keep_permissions(path, beside.as_file()).map_err(|e| refuse(&e))?;
    beside.persist(path).map_err(|e| refuse(&e.error))?;
    Ok(())
}

/// Gives the new file the old one's permissions, or those of an ordinary new file.
fn keep_permissions(path: &Path, file: &std::fs::File) -> std::io::Result<()> {
    if let Ok(old) = std::fs::metadata(path) {
        return file.set_permissions(old.permissions());
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        file.set_permissions(std::fs::Permissions::from_mode(0o644))?;
    }
    Ok(())
}

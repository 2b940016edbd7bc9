//! Writing a file whole or not at all.
//!
//! The text goes to a temporary file in the same folder, which then takes the name asked for in one
//! step. Whoever looks sees the old file or the new one, never half of one; of several who write a new
//! name at once, one wins.

use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::Failure;
use super::outputs::{Output, Standing, confirm};

/// Writes `text` and says so; a file that is replaced keeps its permissions.
///
/// # Errors
/// When a file is there that must stay, or the folder cannot be written to.
pub(super) fn write_whole(output: Output, text: &str) -> Result<(), Failure> {
    put_all(vec![ready(output, text)?])
}

/// A file written to the end that has not yet taken its name. Where several are asked for, all are
/// made ready before the first is put in its place: a full disk then leaves every old one.
#[derive(Debug)]
pub(super) struct Ready<'p> {
    output: Output<'p>,
    standing: Standing,
    /// The name asked for with links followed, so that a link stays a link.
    place: PathBuf,
    beside: NamedTempFile,
}

/// Makes `text` ready to become the file at `output`.
///
/// # Errors
/// When something is there that must stay, or the folder cannot be written to.
pub(super) fn ready<'p>(output: Output<'p>, text: &str) -> Result<Ready<'p>, Failure> {
    let standing = output.standing()?;
    let written = || -> io::Result<Ready> {
        let place = output.path.canonicalize().unwrap_or_else(|_| output.path.to_owned());
        let beside = temporary_beside(&place, text)?;
        if standing == Standing::Replaceable {
            beside.as_file().set_permissions(std::fs::metadata(&place)?.permissions())?;
        }
        Ok(Ready { output, standing, place, beside })
    };
    written().map_err(|problem| Failure::unwritten(output.path, &problem))
}

/// Gives every file its name and tells which were written.
///
/// # Errors
/// When a folder has changed meanwhile, or another was first; the old file is then as it was.
pub(super) fn put_all(files: Vec<Ready>) -> Result<(), Failure> {
    let mut written = Vec::new();
    for file in files {
        let path = file.output.path;
        file.put()?;
        written.push(path);
    }
    confirm(&written);
    Ok(())
}

impl Ready<'_> {
    fn put(self) -> Result<(), Failure> {
        let put = match self.standing {
            Standing::Free if !self.output.force => self.beside.persist_noclobber(&self.place),
            _ => self.beside.persist(&self.place),
        };
        put.map(drop).map_err(|problem| match problem.error.kind() {
            io::ErrorKind::AlreadyExists => self.output.is_there(),
            _ => Failure::unwritten(self.output.path, &problem.error),
        })
    }
}

/// `text` in a temporary file in the folder of `path`, with the rights an ordinary new file has.
fn temporary_beside(path: &Path, text: &str) -> io::Result<NamedTempFile> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut builder = tempfile::Builder::new();
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut file = builder.prefix(".arsenalfit-").tempfile_in(folder)?;
    file.write_all(text.as_bytes())?;
    file.as_file().sync_all()?;
    Ok(file)
}

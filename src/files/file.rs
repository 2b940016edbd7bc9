//! Getting text out of a file, whatever the path turns out to be.
//!
//! Missing files, directories, huge files and files in another encoding each end in one clear
//! [`InputError`]. What the text means is for others.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::Path;

use super::error::InputError;

/// The largest file read. A long profile is a hundredth of this; anything larger is a mistake.
const MAX_BYTES: u64 = 1024 * 1024;

/// The text of a file of at most 1 MiB.
///
/// # Errors
/// When there is no such file, it is no file, too large or no UTF-8 text; each says how to mend it.
pub fn read_text(path: &Path) -> Result<String, InputError> {
    // One byte more than allowed, so that no device can fill the memory.
    let mut bytes = Vec::new();
    open(path)?.take(MAX_BYTES + 1).read_to_end(&mut bytes).map_err(|error| refused(path, &error))?;
    text_from_bytes(&path.to_string_lossy(), bytes)
}

/// The text that at most 1 MiB of bytes are; `origin` is the file name shown in errors.
///
/// # Errors
/// When there are more, or they are no UTF-8 text.
pub fn text_from_bytes(origin: &str, bytes: Vec<u8>) -> Result<String, InputError> {
    let unreadable = |problem: &str, hint: &str| unreadable(origin, problem, hint);
    if bytes.len() as u64 > MAX_BYTES {
        let hint = "a profile or a column map has a few kilobytes; is this the right file?";
        return Err(unreadable("it is larger than 1 MiB", hint));
    }
    String::from_utf8(bytes).map_err(|error| {
        let good = &error.as_bytes()[..error.utf8_error().valid_up_to()];
        let line = good.split(|&byte| byte == b'\n').count();
        unreadable(&format!("line {line} is not UTF-8 text"), "save the file with the encoding UTF-8")
    })
}

/// An open file.
///
/// # Errors
/// When there is no such file, or it is none that can be read.
pub(super) fn open(path: &Path) -> Result<File, InputError> {
    if path.is_dir() {
        return Err(unreadable(&path.to_string_lossy(), "it is a directory", "give the path of a file inside it"));
    }
    File::open(path).map_err(|error| refused(path, &error))
}

fn refused(path: &Path, error: &std::io::Error) -> InputError {
    let unreadable = |problem: &str, hint: &str| unreadable(&path.to_string_lossy(), problem, hint);
    match error.kind() {
        ErrorKind::NotFound => unreadable("there is no such file", "check the name and the folder"),
        ErrorKind::PermissionDenied => unreadable("permission denied", "make the file readable for your account"),
        _ => unreadable(&error.to_string(), "copy the file elsewhere and try again"),
    }
}

fn unreadable(origin: &str, problem: &str, hint: &str) -> InputError {
    InputError::Unreadable { origin: origin.to_owned(), problem: problem.to_owned(), hint: hint.to_owned() }
}

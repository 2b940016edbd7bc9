//! Getting text out of a file, whatever the path turns out to be.
//!
//! Missing files, directories, huge files and files in another encoding each end in one clear
//! [`InputError`]. What the text means is for others.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::Path;

use super::error::{InputError, visible};

/// The largest file read. A long profile is a hundredth of this; anything larger is a mistake.
const MAX_BYTES: u64 = 1024 * 1024;

/// The name `-` stands for, as it is shown.
const STANDARD_INPUT: &str = "standard input";

/// The text of a file of at most 1 MiB; `-` is standard input.
///
/// # Errors
/// When there is no such file, it is no file, too large or no UTF-8 text; each says how to mend it.
pub fn read_text(path: &Path) -> Result<String, InputError> {
    let (name, source) = source(path)?;
    // One byte more than allowed, so that no device can fill the memory.
    let mut bytes = Vec::new();
    source.take(MAX_BYTES + 1).read_to_end(&mut bytes).map_err(|error| refused(&name, &error))?;
    text_from_bytes(&name, bytes)
}

/// The name of an input as it may be shown.
pub fn shown_name(path: &Path) -> String {
    if path.as_os_str() == "-" { STANDARD_INPUT.into() } else { visible(&path.to_string_lossy()) }
}

/// A file's bytes and its name as it may be shown; `-` is standard input.
pub(super) fn source(path: &Path) -> Result<(String, Box<dyn Read>), InputError> {
    let name = shown_name(path);
    if path.as_os_str() == "-" {
        return Ok((name, Box::new(std::io::stdin().lock())));
    }
    if path.is_dir() {
        return Err(unreadable(&name, "it is a directory", "give the path of a file inside it"));
    }
    let file = File::open(path).map_err(|error| refused(&name, &error))?;
    Ok((name, Box::new(file)))
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

fn refused(name: &str, error: &std::io::Error) -> InputError {
    let unreadable = |problem: &str, hint: &str| unreadable(name, problem, hint);
    match error.kind() {
        ErrorKind::NotFound => unreadable("there is no such file", "check the name and the folder"),
        ErrorKind::PermissionDenied => unreadable("permission denied", "make the file readable for your account"),
        ErrorKind::OutOfMemory => exhausted(name, "memory"),
        _ if error.raw_os_error().is_some_and(|code| NO_HANDLES.contains(&code)) => exhausted(name, "file handles"),
        _ => unreadable(&error.to_string(), "copy the file elsewhere and try again"),
    }
}

/// The errors of POSIX systems for too many open files: ENFILE and EMFILE, the same numbers on Linux,
/// macOS and the BSDs.
const NO_HANDLES: [i32; 2] = [23, 24];

fn exhausted(name: &str, what: &'static str) -> InputError {
    InputError::Exhausted { origin: name.to_owned(), what }
}

fn unreadable(origin: &str, problem: &str, hint: &str) -> InputError {
    InputError::Unreadable { origin: origin.to_owned(), problem: problem.to_owned(), hint: hint.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn too_many_open_files_are_the_machines_fault() {
        for code in NO_HANDLES {
            let error = refused("a.toml", &std::io::Error::from_raw_os_error(code));
            assert!(matches!(error, InputError::Exhausted { what: "file handles", .. }), "{error}");
            assert!(error.to_string().contains("no more file handles"), "{error}");
        }
    }
}

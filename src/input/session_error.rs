//! What is wrong with a session file or its column map, in one clear message.
//!
//! A session file may have a million rows, so unlike a profile it is not shown with a picture: the
//! message names file, row, column, what was found, what is allowed and how to mend it. Single bad
//! rows are no error; they are set aside with their reason. An error means the file as a whole
//! cannot be used.

use std::fmt;

use super::error::is_hidden;

/// Why a session could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SessionError {
    /// The file as it was named.
    pub file: String,
    /// The line, when the fault has one.
    pub row: Option<u32>,
    /// The column, by the file's own name, when the fault has one.
    pub column: Option<String>,
    /// What was found.
    pub found: Box<str>,
    /// What is allowed.
    pub allowed: Box<str>,
    /// How to mend it.
    pub hint: Box<str>,
}

impl SessionError {
    /// An error of the whole file.
    pub(super) fn of_file(
        file: &str,
        found: impl Into<Box<str>>,
        allowed: impl Into<Box<str>>,
        hint: impl Into<Box<str>>,
    ) -> Self {
        Self {
            file: file.to_owned(),
            row: None,
            column: None,
            found: found.into(),
            allowed: allowed.into(),
            hint: hint.into(),
        }
    }

    /// The same error, at a row.
    #[must_use]
    pub(super) fn at_row(self, row: u32) -> Self {
        Self { row: Some(row), ..self }
    }

    /// The same error, in a column.
    #[must_use]
    pub(super) fn in_column(self, column: impl Into<String>) -> Self {
        Self { column: Some(column.into()), ..self }
    }
}

impl fmt::Display for SessionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&printable(&self.file))?;
        if let Some(row) = self.row {
            write!(f, ", row {row}")?;
        }
        if let Some(column) = &self.column {
            write!(f, ", column {}", printable(column))?;
        }
        write!(f, ": {}; must be {}", printable(&self.found), printable(&self.allowed))?;
        write!(f, "\nhint: {}", printable(&self.hint))
    }
}

impl std::error::Error for SessionError {}

/// Longest piece of a file repeated in a message, in characters.
const LONGEST: usize = 40;

/// A cell as it may be repeated: short, and nothing in it that steers a terminal.
pub(super) fn excerpt(cell: &[u8]) -> String {
    let text = String::from_utf8_lossy(cell);
    let short: String = text.trim().chars().take(LONGEST).collect();
    printable(&if text.trim().chars().count() > LONGEST { format!("{short}...") } else { short })
}

/// The text with everything replaced that could steer a terminal.
pub(super) fn printable(text: &str) -> String {
    text.chars().map(|c| if is_hidden(c) { char::REPLACEMENT_CHARACTER } else { c }).collect()
}

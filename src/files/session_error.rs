//! What is wrong with a session file, in one clear message.
//!
//! A session file may have a million rows, so unlike a profile it is not shown with a picture: the
//! message names file, row, column, what was found, what is allowed and how to mend it. Single bad
//! rows are no error; they are set aside with their reason. An error means the file as a whole
//! cannot be used.

use super::error::{Told, visible};

/// Why a session file cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SessionError {
    /// The file as it was named.
    pub file: String,
    /// The line, when the fault has one.
    pub row: Option<u32>,
    /// The column, by the file's own name, when the fault has one.
    pub column: Option<String>,
    /// What was found; with a column it completes "is".
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

    /// The message as text; `color` adds terminal colours.
    pub(super) fn render(&self, color: bool) -> String {
        let problem = match &self.column {
            Some(column) => format!("column {column} is {}", self.found),
            None => self.found.to_string(),
        };
        let place = Some((self.file.as_str(), self.row));
        Told { problem: &problem, place, allowed: &self.allowed, hint: &self.hint }.render(color)
    }
}

/// Longest piece of a file repeated in a message, in characters.
const LONGEST: usize = 40;

/// A cell as it may be repeated: short, and nothing in it that steers a terminal.
pub(super) fn excerpt(cell: &[u8]) -> String {
    let text = String::from_utf8_lossy(cell);
    let short: String = text.trim().chars().take(LONGEST).collect();
    visible(&if text.trim().chars().count() > LONGEST { format!("{short}...") } else { short })
}

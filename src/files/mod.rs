//! Reading files: the only step that can fail, and the only place that says why.
//!
//! Text comes in, a checked value or an [`InputError`] goes out. Every fault in a file is found
//! in one pass and points at its line, so that a coach mends a profile once and not ten times.
//! Nothing here computes an answer; what passes is complete, in range and hand-free.

use std::path::Path;

use crate::athlete::profile::Profile;

mod error;
mod file;
mod fields;
mod near_words;
mod names;
mod outline;
mod syntax;
mod unit_hints;

mod profile_file;
mod sections;
mod pitch_table;
mod pitch_checks;
mod arsenal_checks;
mod assumptions;
mod defaults;
mod starter;

mod session_file;
mod session_error;
mod session_words;
mod throw_row;
mod tally;
mod misfit;
mod columns;
mod column_map;
mod columns_guess;
mod header_words;
mod quantity;
mod table;
mod cells;
mod numbers;
mod dates;
mod days;
mod plan;
mod trade_words;

pub use columns::{Column, ColumnMap};
pub use columns_guess::{Proposal, propose, read_proposal};
pub use error::{Fault, InputError, Told, visible};
pub use file::{read_text, shown_name, text_from_bytes};
pub use names::{is_same_name, looks_empty};
pub use near_words::LONGEST_TEXT;
pub use outline::{Content, Entry, Outline};
pub use quantity::{Positive, Quantity, Unit};
pub use session_error::SessionError;
pub use session_file::MOST_THROWS;
pub use session_file::{ReadOptions, read_sessions, session_from_bytes};
pub use starter::Starter;
pub use trade_words::{Meant, family as family_of_word, hand as hand_of_word};

/// Reads a profile from its file; `-` is standard input.
///
/// # Errors
/// When the file cannot be read as text of at most 1 MiB, or as [`profile_from_toml`] says.
pub fn read_profile(path: &Path) -> Result<Profile, InputError> {
    let text = file::read_text(path)?;
    profile_from_toml(&text, &file::shown_name(path))
}

/// Every key a profile may hold, with what may stand there; contradictions between values are not
/// part of it.
pub fn profile_outline() -> Outline {
    profile_file::outline()
}

/// Reads a column map from its file; `-` is standard input.
///
/// # Errors
/// When the file cannot be read as text of at most 1 MiB, or as [`ColumnMap::from_toml`] says.
pub fn read_columns(path: &Path) -> Result<ColumnMap, InputError> {
    ColumnMap::from_toml(&file::read_text(path)?, &file::shown_name(path))
}

/// Reads a profile from TOML text; `origin` is the file name shown in errors.
///
/// # Errors
/// With every fault of the text at once: bad TOML, missing, unknown or mistyped keys, values out
/// of range and values that contradict each other.
pub fn profile_from_toml(text: &str, origin: &str) -> Result<Profile, InputError> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    profile_file::read(text).map_err(|faults| InputError::Faulty {
        origin: origin.to_owned(),
        text: text.to_owned(),
        faults,
    })
}

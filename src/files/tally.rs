//! How many rows of a file cannot be used, and when that is too many to trust the others.

use super::session_error::SessionError;
use crate::athlete::session::{Reason, Slip};

/// How many rows there were, and the first of each kind that cannot be read.
#[derive(Default)]
pub(super) struct Tally {
    pub(super) rows: usize,
    pub(super) blank: usize,
    bad: usize,
    first: Option<(u32, Reason)>,
    misfits: usize,
    first_misfit: Option<(u32, Reason)>,
}

impl Tally {
    /// Counts a row that cannot be used.
    pub(super) fn count(&mut self, row: u32, reason: &Reason) {
        self.bad += 1;
        self.first.get_or_insert_with(|| (row, reason.clone()));
        if matches!(reason, Reason::Misfit { .. }) {
            self.misfits += 1;
            self.first_misfit.get_or_insert_with(|| (row, reason.clone()));
        }
    }

    /// A file is given up when half of its rows cannot be used, or when a tenth of them do not fit the
    /// header: then the rows that seem to fit may be wrong as well.
    pub(super) fn give_up_if_hopeless(&self, name: &str) -> Result<(), SessionError> {
        match (&self.first_misfit, &self.first) {
            (Some((row, reason)), _) if self.misfits * 10 >= self.rows => Err(self.of_misfits(name, *row, reason)),
            (_, Some((row, reason))) if self.bad * 2 > self.rows => Err(self.hopeless(name, *row, reason)),
            _ => Ok(()),
        }
    }

    fn of_misfits(&self, name: &str, row: u32, reason: &Reason) -> SessionError {
        let share = format!("{} of {} rows do not fit the header", self.misfits, self.rows);
        let slip = if let Reason::Misfit { slip, .. } = reason { *slip } else { Slip::TooManyCells };
        let hint = match slip {
            Slip::DecimalCommas => {
                "these look like numbers with decimal commas: write points, or part the cells by semicolons"
            }
            Slip::SeparatorInText => "this looks like a text that holds the separator: put such texts in double quotes",
            Slip::TooManyCells => "there are more values than names: give every column a name in the first row",
            Slip::CutShort => "the row ends early: export the file again with every cell, empty ones too",
        };
        let allowed = "one cell for each column of the header";
        SessionError::of_file(name, format!("{reason} ({share})"), allowed, hint).at_row(row)
    }

    fn hopeless(&self, name: &str, row: u32, reason: &Reason) -> SessionError {
        let share = format!("{} of {} rows cannot be used", self.bad, self.rows);
        let (column, found, allowed) = match reason {
            Reason::Missing { column } => (Some(column), format!("empty ({share})"), "a number".to_owned()),
            Reason::Unreadable { column, found } => {
                (Some(column), format!("\"{found}\" ({share})"), "a number".to_owned())
            }
            Reason::Impossible { column, found, allowed } => {
                (Some(column), format!("{found} ({share})"), allowed.clone())
            }
            other => (None, format!("{other} ({share})"), "a throw".to_owned()),
        };
        let hint = "check the column map and its units; --explain-columns proposes a map for this file";
        let error = SessionError::of_file(name, found, allowed, hint).at_row(row);
        match column {
            Some(column) => error.in_column(column),
            None => error,
        }
    }
}

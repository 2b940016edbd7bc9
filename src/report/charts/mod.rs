//! Pictures drawn from the model, one file each.
//!
//! A picture comes with its words (title, description) and the table of the numbers behind it, so
//! that nobody needs eyes to read it. Every pitch has a mark of its own shape, so nobody needs
//! colour either. All are drawn about 360 units wide: a phone shows them whole with readable
//! letters, a sheet of paper shows two beside each other.

mod ball;
mod band;
mod calendar;
mod forks;
mod hitter_view;
mod labels;
mod marks;
mod ranges;
mod scale;
mod shape_map;
mod slots;
mod usage;

pub(super) use ball::faces;
pub(super) use band::{Band, Moved, band};
pub(super) use calendar::{Week, calendar};
pub(super) use forks::forks;
pub(super) use hitter_view::hitter_view;
pub(super) use marks::{Ink, inks};
pub(super) use ranges::{RangeRow, ranges};
pub(super) use shape_map::{HALF, MapPitch, MapTarget, ShapeMap};
pub(super) use slots::slots;
pub(super) use usage::{Change, usage_change};

use super::svg::Drawing;

/// A picture, the words that stand in for it and the numbers behind it.
#[derive(Debug, Clone)]
pub(super) struct Picture {
    /// Heading.
    pub(super) title: String,
    /// What a reader who cannot see it is told.
    pub(super) description: String,
    /// The drawing.
    pub(super) drawing: Drawing,
    /// How to read it, in a sentence or two.
    pub(super) legend: String,
    /// The numbers.
    pub(super) table: Table,
}

/// Rows under a header.
#[derive(Debug, Clone, Default)]
pub(super) struct Table {
    /// Names of the columns; the first names the row.
    pub(super) header: Vec<String>,
    /// Cells, as many to a row as there are columns.
    pub(super) rows: Vec<Vec<String>>,
    /// Leading columns that hold words and not figures.
    pub(super) words: usize,
}

impl Table {
    /// A table from its header and rows.
    pub(super) fn new(header: &[&str], rows: Vec<Vec<String>>) -> Self {
        Self { header: header.iter().map(|&name| name.to_owned()).collect(), rows, words: 1 }
    }

    /// The same with this many leading columns of words.
    pub(super) fn with_words(self, words: usize) -> Self {
        Self { words, ..self }
    }
}

/// Width every picture is drawn at.
const WIDTH: f64 = 360.0;

/// A name short enough to stand in a picture; the table holds the whole one.
pub(super) fn short(name: &str, most: usize) -> String {
    if name.chars().count() <= most {
        return name.to_owned();
    }
    name.chars().take(most.saturating_sub(1)).chain(['\u{2026}']).collect()
}

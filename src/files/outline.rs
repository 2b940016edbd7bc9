//! What a file may hold, as values: its keys, their kinds and their ranges.
//!
//! An [`Outline`] is no table of its own that could fall behind the reader: it is what the reader
//! asks for. Run over a file with nothing in it, the reader puts every question it has, and
//! [`super::fields`] writes them down.

use std::ops::RangeInclusive;

/// The keys of one table, in the order in which they are read.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Outline {
    /// The keys.
    pub entries: Vec<Entry>,
}

/// One key.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// As written.
    pub key: &'static str,
    /// Whether its absence is a fault.
    pub is_needed: bool,
    /// What may stand there.
    pub content: Content,
}

/// What may stand under a key.
#[derive(Debug, Clone, PartialEq)]
pub enum Content {
    /// A number in a range.
    Number(RangeInclusive<f64>),
    /// A whole number in a range.
    Whole(RangeInclusive<u32>),
    /// `true` or `false`.
    Flag,
    /// Printable text on one line; spaces around it do not count.
    Text {
        /// Its greatest length in characters.
        most: usize,
    },
    /// One of these words.
    Word(Vec<&'static str>),
    /// A clock position, `h:mm`.
    Clock,
    /// A table.
    Section(Outline),
    /// A list of one or more tables.
    Sections {
        /// How many at most.
        most: usize,
        /// What each may hold.
        each: Outline,
    },
}

impl Outline {
    /// The keys alone.
    pub fn keys(&self) -> Vec<&'static str> {
        self.entries.iter().map(|entry| entry.key).collect()
    }
}

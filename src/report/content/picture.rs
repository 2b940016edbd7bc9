//! A picture as an answer holds it: the drawing, the words that stand in for it, the numbers behind it.

use super::super::svg::Drawing;
use super::table::Table;
use super::text::Text;

/// A picture, and what a form without pictures shows in its place.
#[derive(Debug, Clone)]
pub(crate) struct Picture {
    /// Heading.
    pub(crate) title: Text,
    /// What a reader who cannot see it is told.
    pub(crate) description: String,
    /// The drawing.
    pub(crate) drawing: Drawing,
    /// How to read it, in a sentence or two.
    pub(crate) legend: String,
    /// The numbers.
    pub(crate) table: Table,
    /// What stands for it in text.
    pub(crate) in_text: InText,
}

/// What stands for a picture where there are only letters.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum InText {
    /// Nothing: other parts of the answer say it.
    Nothing,
    /// Its numbers.
    Table,
    /// A drawing in characters.
    Characters(String),
}

impl Picture {
    /// The same with its numbers in place of it in text.
    pub(crate) fn with_numbers_in_text(self) -> Self {
        Self { in_text: InText::Table, ..self }
    }
}

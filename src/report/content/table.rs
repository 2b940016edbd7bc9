//! Rows under a header.

use super::amount::Unit;
use super::text::Text;

/// The head of a column; a unit named here is not said again in its cells.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Column {
    /// What stands in it.
    name: String,
    /// The unit of its amounts.
    pub(crate) unit: Unit,
}

impl Column {
    /// As it is written.
    pub(crate) fn head(&self) -> String {
        match (self.name.as_str(), self.unit.head()) {
            (name, "") => name.to_owned(),
            ("", unit) => unit.to_owned(),
            (name, unit) => format!("{name}, {unit}"),
        }
    }
}

impl From<&str> for Column {
    fn from(name: &str) -> Self {
        Self { name: name.to_owned(), unit: Unit::None }
    }
}

impl From<(&str, Unit)> for Column {
    fn from((name, unit): (&str, Unit)) -> Self {
        Self { name: name.to_owned(), unit }
    }
}

/// A table; the first column names the row.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Table {
    /// Heads of the columns.
    pub(crate) columns: Vec<Column>,
    /// Cells, as many to a row as there are columns.
    pub(crate) rows: Vec<Vec<Text>>,
    /// Leading columns that hold words and not figures.
    pub(crate) words: usize,
}

impl Table {
    /// A table from its columns and rows.
    pub(crate) fn new(columns: impl IntoIterator<Item = Column>, rows: impl IntoIterator<Item = Vec<Text>>) -> Self {
        Self { columns: columns.into_iter().collect(), rows: rows.into_iter().collect(), words: 1 }
    }

    /// The same with this many leading columns of words.
    pub(crate) fn with_words(self, words: usize) -> Self {
        Self { words, ..self }
    }

    /// Each row's cells as they stand under their columns.
    pub(crate) fn cells(&self) -> impl Iterator<Item = Vec<Text>> + '_ {
        let under = |(column, cell): (&Column, &Text)| cell.in_column(column.unit);
        self.rows.iter().map(move |row| self.columns.iter().zip(row).map(under).collect())
    }
}

/// The columns of a table: words, or words with a unit.
macro_rules! columns {
    ($($column:expr),* $(,)?) => { [$($crate::report::content::table::Column::from($column)),*] };
}

pub(crate) use columns;

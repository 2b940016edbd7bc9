//! The column map: which column of a session file holds what, in which unit, counted which way.
//!
//! Without a map our own plain names are looked for. With one, a TOML file names the file's own
//! headers:
//!
//! ```toml
//! throws = "left"
//! against = "gravity"
//!
//! [columns]
//! speed = { header = "speed_50ft_mph", unit = "mph", at_ft = 50 }
//! vertical_break = { header = "rise", unit = "cm", from_ft = 40 }
//! glove_side_break = { header = "run", positive = "catchers-right" }
//!
//! [outcomes]
//! "whiff" = "swing and miss"
//!
//! [date]
//! order = "month-first"
//! ```
//!
//! Distances are in feet from the rear point of the plate. Reading a map is in
//! [`super::column_map`], proposing one in [`super::columns_guess`].

use std::collections::BTreeMap;

use super::column_map;
use super::dates::Order;
use super::error::{InputError, is_hidden};
use super::quantity::{Positive, Quantity, Unit};
use crate::athlete::session::{Measured, Outcome};
use crate::ball::{Against, Weather};
use crate::base::geometry::Hand;

/// Which column holds what.
#[derive(Debug, Clone, PartialEq)]
pub struct ColumnMap {
    /// Throwing hand, when the map tells it.
    pub hand: Option<Hand>,
    /// What movement is counted against, when the map tells it; [`Against::DragFree`] is taken otherwise.
    pub against: Option<Against>,
    /// Whose throws are read of a file that names several pitchers.
    pub pitcher: Option<String>,
    /// What stands between cells, when the map tells it; found from the file otherwise.
    pub separator: Option<u8>,
    /// Whether numbers have a decimal comma, when the map tells it.
    pub decimal_comma: Option<bool>,
    /// The air of the measurements, when the map tells it.
    pub weather: Option<Weather>,
    /// Words of the file for outcomes, lower case.
    pub outcomes: BTreeMap<String, Outcome>,
    /// Which number of a date stands first, when the map tells it; found from the files otherwise.
    pub(super) date_order: Option<Order>,
    /// The columns.
    pub columns: BTreeMap<Quantity, Column>,
}

/// One column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// Its header in the file.
    pub header: String,
    /// Its unit; ours when not given.
    pub unit: Option<Unit>,
    /// Which way its numbers grow; our way when not given.
    pub positive: Option<Positive>,
    /// For speed: where it was taken.
    pub at_ft: Option<f64>,
    /// For movement: from where it counts.
    pub from_ft: Option<f64>,
}

impl Default for ColumnMap {
    /// Our own names.
    fn default() -> Self {
        let own = |q: Quantity| {
            (q, Column { header: q.header().to_owned(), unit: None, positive: None, at_ft: None, from_ft: None })
        };
        Self {
            hand: None,
            against: None,
            pitcher: None,
            separator: None,
            decimal_comma: None,
            weather: None,
            outcomes: BTreeMap::new(),
            date_order: None,
            columns: Quantity::ALL.into_iter().map(own).collect(),
        }
    }
}

impl ColumnMap {
    /// Reads a map from TOML text; `origin` is the file name shown in errors.
    ///
    /// # Errors
    /// With every fault of the text at once: bad TOML, an unknown key, or a value that does not fit.
    pub fn from_toml(text: &str, origin: &str) -> Result<Self, InputError> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        column_map::read(text).map_err(|faults| InputError::Faulty {
            origin: origin.to_owned(),
            text: text.to_owned(),
            faults,
        })
    }

    /// The map as TOML text, every column on its line.
    pub fn to_toml(&self) -> String {
        let hand = self.hand.map_or_else(String::new, |hand| format!("throws = \"{hand}\"\n\n"));
        let against =
            self.against.map_or_else(String::new, |against| format!("{AGAINST_TOLD}against = \"{against}\"\n\n"));
        let lines =
            self.columns.iter().map(|(quantity, column)| format!("{} = {}\n", quantity.key(), column.to_toml()));
        format!("{hand}{against}[columns]\n{}", lines.collect::<String>())
    }

    /// Where along the flight the file measures.
    pub fn measured(&self) -> Measured {
        let get = |q: Quantity| self.columns.get(&q);
        Measured {
            speed_at_ft: get(Quantity::Speed).and_then(|c| c.at_ft),
            vertical_from_ft: get(Quantity::VerticalBreak).and_then(|c| c.from_ft),
            glove_side_from_ft: get(Quantity::GloveSideBreak).and_then(|c| c.from_ft),
        }
    }
}

/// How a coach tells one kind of movement from the other.
const AGAINST_TOLD: &str = "\
# What movement is counted against; no number of the file says it, so ask the unit's maker.
# \"drag-free\": the same throw with no sideways force, slowed by the air alike. \"gravity\": a throw on which
# gravity alone acts; then the same pitch reads about 2 in higher and 1 in farther to the arm side.
";

impl Column {
    fn to_toml(&self) -> String {
        let mut parts = vec![format!("header = {}", quoted(&self.header))];
        parts.extend(self.unit.map(|unit| format!("unit = \"{}\"", unit.name())));
        parts.extend(self.positive.map(|positive| format!("positive = \"{}\"", positive.name())));
        parts.extend(self.at_ft.map(|feet| format!("at_ft = {feet}")));
        parts.extend(self.from_ft.map(|feet| format!("from_ft = {feet}")));
        format!("{{ {} }}", parts.join(", "))
    }
}

/// A TOML string in which nothing steers a terminal.
fn quoted(text: &str) -> String {
    let escaped = text.chars().map(|c| match c {
        '"' | '\\' => format!("\\{c}"),
        c if is_hidden(c) => format!("\\U{:08X}", u32::from(c)),
        c => c.to_string(),
    });
    format!("\"{}\"", escaped.collect::<String>())
}

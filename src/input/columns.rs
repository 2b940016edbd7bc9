//! The column map: which column of a session file holds what, in which unit, counted which way.
//!
//! Without a map our own plain names are looked for. With one, a TOML file names the file's own
//! headers:
//!
//! ```toml
//! throws = "left"
//!
//! [columns]
//! speed = { header = "speed_50ft_mph", unit = "mph", at_ft = 50 }
//! vertical_break = { header = "rise", unit = "cm", from_ft = 40 }
//! glove_side_break = { header = "run", positive = "catchers-right" }
//!
//! [outcomes]
//! "whiff" = "swing and miss"
//! ```
//!
//! Distances are in feet from the rear point of the plate. Proposing a map is in
//! [`super::columns_guess`].

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::error::is_hidden;
use super::quantity::{Kind, Positive, Quantity, Unit};
use super::sections::{ELEVATION_FT, HUMIDITY_PERCENT, PRESSURE_INHG, TEMPERATURE_F};
use super::session_error::SessionError;
use crate::geometry::Hand;
use crate::profile::Weather;
use crate::session::{Measured, Outcome};

/// Which column holds what.
#[derive(Debug, Clone, PartialEq)]
pub struct ColumnMap {
    /// Throwing hand, when the map tells it.
    pub hand: Option<Hand>,
    /// What stands between cells, when the map tells it; found from the file otherwise.
    pub separator: Option<u8>,
    /// Whether numbers have a decimal comma, when the map tells it.
    pub decimal_comma: Option<bool>,
    /// The air of the measurements, when the map tells it.
    pub weather: Option<Weather>,
    /// Words of the file for outcomes, lower case.
    pub outcomes: BTreeMap<String, Outcome>,
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
            separator: None,
            decimal_comma: None,
            weather: None,
            outcomes: BTreeMap::new(),
            columns: Quantity::ALL.into_iter().map(own).collect(),
        }
    }
}

impl ColumnMap {
    /// Reads a map from TOML text; `origin` is the file name shown in errors.
    ///
    /// # Errors
    /// With the first fault: bad TOML, an unknown key, or a unit or direction that does not fit.
    pub fn from_toml(text: &str, origin: &str) -> Result<Self, SessionError> {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let file: MapFile = toml::from_str(text).map_err(|error| {
            let row = error.span().map(|span| 1 + text[..span.start.min(text.len())].matches('\n').count());
            let found = error.message().lines().collect::<Vec<_>>().join(", ");
            let mut fault = SessionError::of_file(origin, found, "a column map", HINT);
            fault.row = row.and_then(|row| u32::try_from(row).ok());
            fault
        })?;
        let map = file.into_map();
        map.check(origin)?;
        Ok(map)
    }

    /// The map as TOML text, every column on its line.
    pub fn to_toml(&self) -> String {
        let hand = self.hand.map_or_else(String::new, |hand| format!("throws = \"{hand}\"\n\n"));
        let lines =
            self.columns.iter().map(|(quantity, column)| format!("{} = {}\n", quantity.key(), column.to_toml()));
        format!("{hand}[columns]\n{}", lines.collect::<String>())
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

    fn check(&self, origin: &str) -> Result<(), SessionError> {
        for (&quantity, column) in &self.columns {
            if let Some((found, allowed)) = column.fault(quantity) {
                let hint = format!("correct the line {} under [columns]", quantity.key());
                return Err(SessionError::of_file(origin, found, allowed, hint).in_column(quantity.key()));
            }
        }
        self.check_air(origin)
    }

    fn check_air(&self, origin: &str) -> Result<(), SessionError> {
        let Some(air) = self.weather else { return Ok(()) };
        let given = [
            ("elevation_ft", Some(air.elevation_ft), ELEVATION_FT),
            ("temperature_f", air.temperature_f, TEMPERATURE_F),
            ("pressure_inhg", air.pressure_inhg, PRESSURE_INHG),
            ("humidity_percent", Some(air.humidity_percent), HUMIDITY_PERCENT),
        ];
        for (key, value, range) in given {
            if let Some(value) = value.filter(|value| !range.contains(value)) {
                let allowed = format!("a number from {} to {}", range.start(), range.end());
                let hint = format!("correct the line {key} under [air]");
                return Err(SessionError::of_file(origin, format!("{key} is {value}"), allowed, hint));
            }
        }
        Ok(())
    }
}

const HINT: &str = "see --explain-columns for a map made from a file's own headers";

impl Column {
    /// What is wrong with this column for that quantity: found, allowed.
    fn fault(&self, quantity: Quantity) -> Option<(String, String)> {
        let units = Unit::of_kind(quantity.kind());
        if let Some(unit) = self.unit.filter(|unit| !units.contains(unit)) {
            let names: Vec<_> = units.iter().map(|unit| unit.name()).collect();
            let allowed = if names.is_empty() { "left out".to_owned() } else { names.join(" or ") };
            return Some((format!("unit is {}", unit.name()), allowed));
        }
        let sideways = quantity.kind() == Kind::Length { is_sideways: true };
        let vertical = matches!(self.positive, Some(Positive::Up | Positive::Down));
        if self.positive.is_some() && (sideways == vertical || quantity.kind() == Kind::Text) {
            let allowed = if sideways { "glove, arm, catchers-right or pitchers-right" } else { "up or down" };
            return Some(("positive does not fit".to_owned(), allowed.to_owned()));
        }
        let is_movement = matches!(quantity, Quantity::VerticalBreak | Quantity::GloveSideBreak);
        let misplaced =
            (self.at_ft.is_some() && quantity != Quantity::Speed) || (self.from_ft.is_some() && !is_movement);
        if misplaced {
            return Some(("at_ft or from_ft given".into(), "at_ft with speed, from_ft with the breaks only".into()));
        }
        let distance = self.at_ft.or(self.from_ft)?;
        (!(5.0..=60.5).contains(&distance)).then(|| {
            (format!("a distance of {distance} ft"), "from 5 to 60.5 ft from the rear point of the plate".into())
        })
    }

    fn to_toml(&self) -> String {
        let mut parts = vec![format!("header = {}", quoted(&self.header))];
        parts.extend(self.unit.map(|unit| format!("unit = \"{}\"", unit.name())));
        let name =
            |positive: Positive| toml::Value::try_from(positive).map_or_else(|_| String::new(), |v| v.to_string());
        parts.extend(self.positive.map(|positive| format!("positive = {}", name(positive))));
        parts.extend(self.at_ft.map(|feet| format!("at_ft = {feet}")));
        parts.extend(self.from_ft.map(|feet| format!("from_ft = {feet}")));
        format!("{{ {} }}", parts.join(", "))
    }
}

/// Text as TOML has it, with escapes for whatever could steer the terminal on which a proposal is shown.
fn quoted(text: &str) -> String {
    let written = |c: char| match c {
        '"' | '\\' => format!("\\{c}"),
        c if is_hidden(c) => format!("\\u{:04X}", u32::from(c)),
        c => c.to_string(),
    };
    format!("\"{}\"", text.chars().map(written).collect::<String>())
}

/// The file as written.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct MapFile {
    throws: Option<HandName>,
    separator: Option<SeparatorName>,
    decimal: Option<DecimalName>,
    #[serde(default)]
    columns: BTreeMap<Quantity, ColumnEntry>,
    #[serde(default)]
    outcomes: BTreeMap<String, OutcomeName>,
    air: Option<AirEntry>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct ColumnEntry {
    header: String,
    unit: Option<Unit>,
    positive: Option<Positive>,
    at_ft: Option<f64>,
    from_ft: Option<f64>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct AirEntry {
    #[serde(default)]
    elevation_ft: f64,
    temperature_f: Option<f64>,
    pressure_inhg: Option<f64>,
    humidity_percent: Option<f64>,
}

#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum HandName {
    Right,
    Left,
}

#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum SeparatorName {
    Comma,
    Semicolon,
    Tab,
}

#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum DecimalName {
    Point,
    Comma,
}

#[derive(Debug, Clone, Copy, Deserialize)]
enum OutcomeName {
    #[serde(rename = "ball")]
    Ball,
    #[serde(rename = "called strike")]
    CalledStrike,
    #[serde(rename = "swing and miss")]
    SwingAndMiss,
    #[serde(rename = "foul")]
    Foul,
    #[serde(rename = "weak contact")]
    WeakContact,
    #[serde(rename = "solid contact")]
    SolidContact,
    #[serde(rename = "in play")]
    InPlay,
    #[serde(rename = "hit by pitch")]
    HitByPitch,
}

impl From<OutcomeName> for Outcome {
    fn from(name: OutcomeName) -> Self {
        match name {
            OutcomeName::Ball => Self::Ball,
            OutcomeName::CalledStrike => Self::CalledStrike,
            OutcomeName::SwingAndMiss => Self::SwingAndMiss,
            OutcomeName::Foul => Self::Foul,
            OutcomeName::WeakContact => Self::WeakContact,
            OutcomeName::SolidContact => Self::SolidContact,
            OutcomeName::InPlay => Self::InPlay,
            OutcomeName::HitByPitch => Self::HitByPitch,
        }
    }
}

impl MapFile {
    /// The map; columns that are not named keep our own names.
    fn into_map(self) -> ColumnMap {
        let mut map = ColumnMap::default();
        map.columns.extend(self.columns.into_iter().map(|(quantity, entry)| {
            let ColumnEntry { header, unit, positive, at_ft, from_ft } = entry;
            (quantity, Column { header, unit, positive, at_ft, from_ft })
        }));
        map.hand = self.throws.map(|name| match name {
            HandName::Right => Hand::Right,
            HandName::Left => Hand::Left,
        });
        map.separator = self.separator.map(|name| match name {
            SeparatorName::Comma => b',',
            SeparatorName::Semicolon => b';',
            SeparatorName::Tab => b'\t',
        });
        map.decimal_comma = self.decimal.map(|name| name == DecimalName::Comma);
        map.outcomes = self.outcomes.into_iter().map(|(word, name)| (word.to_lowercase(), name.into())).collect();
        map.weather = self.air.map(|air| Weather {
            elevation_ft: air.elevation_ft,
            temperature_f: air.temperature_f,
            pressure_inhg: air.pressure_inhg,
            humidity_percent: air.humidity_percent.unwrap_or(50.0),
        });
        map
    }
}

//! Proposing a column map from a file's headers and its first rows.
//!
//! Words in the header say which quantity a column may hold, the numbers in it say in which unit.
//! It is a proposal: signs and the distance of measurement cannot be seen in numbers, so every
//! line that rests on a default says so, for a person to check.

use std::io::Read;
use std::ops::RangeInclusive;
use std::path::Path;

use csv::ByteRecord;

use crate::ball::{Against, FASTEST_MPH};

use super::cells;
use super::columns::{Column, ColumnMap};
use super::error::InputError;
use super::file::source;
use super::header_words::{likeness, plain_header};
use super::numbers::{Mark, large_number, number};
use super::quantity::{Kind, Quantity, Unit};
use super::session_error::{SessionError, excerpt};
use super::table::Table;

/// Rows looked at.
const ROWS: usize = 200;

/// A proposed map with the reason for each line.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposal {
    /// The map; its [`ColumnMap::to_toml`] is ready to save.
    pub map: ColumnMap,
    /// For each column of the file, in order: header, an example, and what it was taken for.
    pub columns: Vec<(String, String, String)>,
    /// Needed quantities for which no column was found.
    pub missing: Vec<Quantity>,
}

/// Proposes a map for a file; `-` is standard input.
///
/// # Errors
/// When the file cannot be opened or read as a table.
pub fn read_proposal(path: &Path) -> Result<Proposal, InputError> {
    let (name, bytes) = source(path)?;
    Ok(propose(&name, bytes)?)
}

/// Proposes a map for the bytes of a file; `name` is the file name shown in errors.
///
/// # Errors
/// When they cannot be read as a table.
pub fn propose(name: &str, bytes: impl Read) -> Result<Proposal, SessionError> {
    let mut table = Table::open(name, bytes, None)?;
    let mut rows = Vec::new();
    let mut record = ByteRecord::new();
    while rows.len() < ROWS && table.next(name, &mut record)? {
        record.trim();
        rows.push(record.clone());
    }
    let headers: Vec<String> = table.header.iter().map(|cell| String::from_utf8_lossy(cell).into_owned()).collect();
    let numbers: Vec<Option<f64>> = (0..headers.len()).map(|column| typical_size(&rows, column, table.mark)).collect();
    Ok(proposal(&headers, &numbers, &rows))
}

/// The median size of a column's numbers; nothing when it hardly holds any.
fn typical_size(rows: &[ByteRecord], column: usize, mark: Mark) -> Option<f64> {
    let cells = rows.iter().filter_map(|row| row.get(column)).filter(|cell| !cells::is_nothing(cell));
    let all = cells.clone().count();
    let size = |cell: &[u8]| number(cell, mark).or_else(|_| large_number(cell, mark)).ok().flatten().map(f64::abs);
    let mut sizes: Vec<f64> = cells.filter_map(size).collect();
    sizes.sort_by(f64::total_cmp);
    (2 * sizes.len() > all).then(|| sizes[sizes.len() / 2])
}

fn proposal(headers: &[String], sizes: &[Option<f64>], rows: &[ByteRecord]) -> Proposal {
    let chosen = pair_off(headers, sizes);
    let mut map = ColumnMap { columns: std::collections::BTreeMap::new(), ..ColumnMap::default() };
    let mut columns = Vec::new();
    for (index, header) in headers.iter().enumerate() {
        let example = rows.iter().filter_map(|row| row.get(index)).find(|cell| !cells::is_nothing(cell));
        let example = example.map_or_else(String::new, excerpt);
        let taken = chosen.iter().find(|(_, column)| *column == index).map(|(quantity, _)| *quantity);
        let verdict = taken.map_or_else(
            || "not used".to_owned(),
            |quantity| describe(&mut map, quantity, header, sizes[index], &example),
        );
        columns.push((excerpt(header.as_bytes()), example, verdict));
    }
    map.against = Some(against(&map));
    let missing = Quantity::NEEDED.into_iter().filter(|needed| !map.columns.contains_key(needed)).collect();
    Proposal { map, columns, missing }
}

/// What the movement that was found is counted against: gravity alone where a header says so.
fn against(map: &ColumnMap) -> Against {
    let says =
        |quantity: Quantity| map.columns.get(&quantity).is_some_and(|c| c.header.to_lowercase().contains("gravity"));
    if says(Quantity::VerticalBreak) || says(Quantity::GloveSideBreak) { Against::Gravity } else { Against::DragFree }
}

/// Each quantity with the column that suits it best, no column twice, the best suited first.
fn pair_off(headers: &[String], sizes: &[Option<f64>]) -> Vec<(Quantity, usize)> {
    let suits = |quantity: Quantity, index: usize| suitability(quantity, &headers[index], sizes[index]);
    let mut pairs: Vec<(usize, Quantity, usize)> = Quantity::ALL
        .into_iter()
        .flat_map(|quantity| (0..headers.len()).map(move |index| (suits(quantity, index), quantity, index)))
        .filter(|(suits, _, _)| *suits > 0)
        .collect();
    pairs.sort_by_key(|(suits, quantity, index)| (std::cmp::Reverse(*suits), *quantity, *index));
    let mut chosen: Vec<(Quantity, usize)> = Vec::new();
    for (_, quantity, index) in pairs {
        if chosen.iter().all(|(q, i)| *q != quantity && *i != index) {
            chosen.push((quantity, index));
        }
    }
    chosen
}

/// Adds the column to the map and says what it was taken for.
fn describe(map: &mut ColumnMap, quantity: Quantity, header: &str, size: Option<f64>, example: &str) -> String {
    let unit = if quantity == Quantity::SpinClock && !example.contains(':') {
        Some(Unit::Degrees)
    } else {
        size.and_then(|size| likely_unit(quantity, header, size))
    };
    let distance = quantity.distance().and_then(|(_, feet)| distance(header, &feet));
    let (at_ft, from_ft) = if quantity == Quantity::Speed { (distance, None) } else { (None, distance) };
    let is_sideways = quantity.kind() == Kind::Length { is_sideways: true };
    let positive = is_sideways.then(|| direction(header, quantity));
    map.columns.insert(quantity, Column { header: header.to_owned(), unit, positive, at_ft, from_ft });
    let unit = unit.map_or_else(String::new, |unit| format!(" in {}", unit.name()));
    let check = if is_sideways { "; check which way is positive" } else { "" };
    format!("{}{unit}{check}", quantity.key())
}

/// How well a header suits a quantity: the number of its words found, none if a needed one lacks.
fn suitability(quantity: Quantity, header: &str, size: Option<f64>) -> usize {
    if header.eq_ignore_ascii_case(quantity.header()) {
        return 100;
    }
    if plain_header(header).is_some_and(|(plain, _)| plain == quantity) {
        return 50;
    }
    let is_number = size.is_some() || quantity == Quantity::SpinClock;
    let is_text = quantity.kind() == Kind::Text;
    if (is_text && quantity != Quantity::Date && is_number && quantity != Quantity::SpinClock)
        || (!is_text && !is_number)
    {
        return 0;
    }
    likeness(quantity, header)
}

/// The unit in which numbers of this size make sense; the header's own word wins.
fn likely_unit(quantity: Quantity, header: &str, size: f64) -> Option<Unit> {
    let lower = header.to_lowercase();
    let is_said = |word: &str| lower.split(|c: char| !c.is_alphanumeric() && c != '/').any(|w| w == word);
    let named = Unit::words_of_kind(quantity.kind()).into_iter().find(|(word, _)| is_said(word));
    named.map(|(_, unit)| unit).or_else(|| match quantity.kind() {
        Kind::Speed if size > FASTEST_MPH => Some(Unit::Kph),
        Kind::Speed if size < 50.0 => Some(Unit::MetresPerSecond),
        Kind::Fraction if size > 1.5 => Some(Unit::Percent),
        Kind::Length { .. } if quantity.own_unit() == Some(Unit::Foot) && size > 12.0 => {
            Some(if size > 100.0 { Unit::Centimetre } else { Unit::Inch })
        }
        Kind::Length { .. } if quantity.own_unit() == Some(Unit::Inch) && size < 1.0 => Some(Unit::Metre),
        _ => quantity.own_unit(),
    })
}

/// A distance named in a header, such as `from_40ft` or `50ft`.
fn distance(header: &str, allowed: &RangeInclusive<f64>) -> Option<f64> {
    let lower = header.to_lowercase();
    let words = lower.split(|c: char| !c.is_alphanumeric());
    words.filter_map(|word| word.strip_suffix("ft")?.parse::<f64>().ok()).find(|feet| allowed.contains(feet))
}

/// The direction a header names; the catcher's view when it says right.
fn direction(header: &str, quantity: Quantity) -> super::quantity::Positive {
    use super::quantity::Positive;
    let lower = header.to_lowercase();
    if lower.contains("glove") {
        Positive::Glove
    } else if lower.contains("arm") {
        Positive::Arm
    } else if lower.contains("right") {
        Positive::CatchersRight
    } else {
        quantity.own_positive()
    }
}

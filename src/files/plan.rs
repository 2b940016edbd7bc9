//! A column map laid over one file's header: which cell of a row holds what, and how to turn it
//! into our units and signs.
//!
//! Made once per file, so that reading a row is a few look-ups. Whether the row makes a throw is
//! decided in [`super::session_file`].

use csv::ByteRecord;

use super::cells::{self, NotANumber};
use super::columns::{Column, ColumnMap};
use super::error::visible;
use super::header_words::{likeness, plain_header};
use super::numbers::{Mark, large_number, number};
use super::quantity::{Kind, Quantity, Unit};
use super::session_error::{SessionError, excerpt};
use crate::athlete::session::Reason;
use crate::base::geometry::{Clock, Hand};

/// Likeness (Jaro-Winkler) from which a header is offered for a missing one.
const NEAR_ENOUGH: f64 = 0.75;

pub(super) struct Plan {
    slots: [Option<Slot>; Quantity::ALL.len()],
    mark: Mark,
}

/// Where a quantity stands in a row and how to read it.
struct Slot {
    index: usize,
    header: String,
    unit: Option<Unit>,
    factor: f64,
    range: (f64, f64),
}

impl Plan {
    /// Lays the map over a header.
    pub(super) fn new(
        name: &str,
        header: &ByteRecord,
        map: &ColumnMap,
        hand: Option<Hand>,
        mark: Mark,
    ) -> Result<Self, SessionError> {
        let mut slots = [const { None }; Quantity::ALL.len()];
        let named = map.columns.iter().filter(|(quantity, column)| column.header != quantity.header());
        let taken: Vec<&str> = named.map(|(_, column)| column.header.as_str()).collect();
        for (slot, quantity) in slots.iter_mut().zip(Quantity::ALL) {
            if let Some(column) = map.columns.get(&quantity) {
                *slot = find(name, header, quantity, column, &taken)?
                    .map(|(index, column)| Slot::new(name, index, quantity, &column, hand))
                    .transpose()?;
            }
        }
        Ok(Self { slots, mark })
    }

    /// What there is to tell of columns that sound like ours and are not used.
    pub(super) fn note(&self, header: &ByteRecord) -> Option<String> {
        let is_used = |index: usize| self.slots.iter().flatten().any(|slot| slot.index == index);
        let lacking = || Quantity::ALL.into_iter().filter(|&quantity| self.slot(quantity).is_none());
        let alike = |(index, cell): (usize, &[u8])| {
            let words = String::from_utf8_lossy(cell);
            let best = lacking().filter(|_| !is_used(index)).max_by_key(|&quantity| likeness(quantity, &words))?;
            (likeness(best, &words) > 0).then(|| format!("{} (like {})", excerpt(cell), best.header()))
        };
        let told: Vec<String> = header.iter().enumerate().filter_map(alike).collect();
        (!told.is_empty()).then(|| {
            format!(
                "not used, because quantity, unit or direction is open: {}; rename the columns so, or name them in a \
                 column map, which --explain-columns proposes",
                told.join(", ")
            )
        })
    }

    /// Whether a cell of the row holds the whole of another row, as behind a quotation mark never closed.
    pub(super) fn swallowed_a_row(&self, record: &ByteRecord, separator: u8) -> bool {
        let is_row = |line: &[u8]| {
            let cells: ByteRecord = line.split(|&byte| byte == separator).collect();
            Quantity::NEEDED.into_iter().all(|quantity| self.needed(&cells, quantity).is_ok())
        };
        record.iter().any(|cell| cell.split(|&byte| byte == b'\n').skip(1).any(is_row))
    }

    /// Whether there is such a column.
    pub(super) fn has(&self, quantity: Quantity) -> bool {
        self.slot(quantity).is_some()
    }

    /// The file's own name of a column.
    pub(super) fn header(&self, quantity: Quantity) -> String {
        self.slot(quantity).map_or_else(|| quantity.header().to_owned(), |slot| slot.header.clone())
    }

    fn slot(&self, quantity: Quantity) -> Option<&Slot> {
        self.slots[quantity as usize].as_ref()
    }

    /// The words of a cell; nothing when the column is not there or the cell says nothing.
    pub(super) fn text<'r>(&self, record: &'r ByteRecord, quantity: Quantity) -> Option<&'r [u8]> {
        let cell = record.get(self.slot(quantity)?.index)?.trim_ascii();
        (!cells::is_nothing(cell)).then_some(cell)
    }

    /// A number in our unit and sign, when it was measured.
    #[inline]
    pub(super) fn number(&self, record: &ByteRecord, quantity: Quantity) -> Result<Option<f64>, Reason> {
        let Some(slot) = self.slot(quantity) else { return Ok(None) };
        let cell = record.get(slot.index).unwrap_or_default().trim_ascii();
        let found = if quantity == Quantity::Spin { large_number(cell, self.mark) } else { number(cell, self.mark) };
        found.map_err(|NotANumber| slot.unreadable(cell))?.map(|number| slot.converted(number, cell)).transpose()
    }

    /// A number without which there is no throw.
    #[inline]
    pub(super) fn needed(&self, record: &ByteRecord, quantity: Quantity) -> Result<f64, Reason> {
        let column = || self.slot(quantity).map_or_else(String::new, |slot| slot.header.clone());
        self.number(record, quantity)?.ok_or_else(|| Reason::Missing { column: column() })
    }

    /// What was measured is in range; what it is for the whole flight must be too.
    pub(super) fn check_restored(&self, record: &ByteRecord, quantity: Quantity, restored: f64) -> Result<(), Reason> {
        let (low, high) = quantity.range();
        match self.slot(quantity) {
            Some(slot) if !(low..=high).contains(&restored) => {
                let cell = excerpt(record.get(slot.index).unwrap_or_default());
                let unit = quantity.own_unit().map_or("", Unit::name);
                let whole = if quantity == Quantity::Speed { "at release" } else { "over the whole flight" };
                Err(Reason::Impossible {
                    column: slot.header.clone(),
                    found: format!("{cell}, which is {restored:.1} {unit} {whole}"),
                    allowed: format!("{low} to {high} {unit} {whole}"),
                })
            }
            _ => Ok(()),
        }
    }

    /// The spin's push, as a right-hander's.
    pub(super) fn clock(&self, record: &ByteRecord, hand: Option<Hand>) -> Result<Option<Clock>, Reason> {
        let Some(slot) = self.slot(Quantity::SpinClock) else { return Ok(None) };
        let cell = record.get(slot.index).unwrap_or_default().trim_ascii();
        let clock = if slot.unit == Some(Unit::Degrees) {
            number(cell, self.mark).map(|n| n.map(|degrees| Clock::from_hours(degrees * slot.factor)))
        } else {
            cells::clock(cell)
        };
        let clock = clock.map_err(|NotANumber| slot.unreadable(cell))?;
        Ok(clock.zip(hand).map(|(clock, hand)| clock.for_hand(hand)))
    }
}

impl Slot {
    fn new(
        name: &str,
        index: usize,
        quantity: Quantity,
        column: &Column,
        hand: Option<Hand>,
    ) -> Result<Self, SessionError> {
        let needs_hand = |what: &str| {
            let hint = "say which hand throws: --hand right or --hand left, or `throws = \"left\"` in the column map";
            SessionError::of_file(name, format!("{what}, and the throwing hand is not known"), "", hint)
                .in_column(&column.header)
        };
        if quantity == Quantity::SpinClock && hand.is_none() {
            return Err(needs_hand("a clock face as the pitcher sees it"));
        }
        let own = quantity.own_positive();
        let positive = column.positive.unwrap_or(own);
        let sign =
            positive.toward_glove(hand).ok_or_else(|| needs_hand("counted to the catcher's or pitcher's right"))?;
        let own_sign = own.toward_glove(hand).unwrap_or(1.0);
        let unit = column.unit.or(quantity.own_unit());
        let size = |unit: Option<Unit>| unit.map_or(1.0, Unit::size);
        let is_number = !matches!(quantity.kind(), Kind::Text | Kind::Clock);
        let scale = if is_number { size(unit) / size(quantity.own_unit()) } else { size(unit) };
        let factor = sign * own_sign * scale;
        Ok(Self { index, header: visible(&column.header), unit, factor, range: quantity.range() })
    }

    #[inline]
    fn converted(&self, number: f64, cell: &[u8]) -> Result<f64, Reason> {
        let ours = number * self.factor;
        let (low, high) = self.range;
        if (low..=high).contains(&ours) { Ok(ours) } else { Err(self.impossible(cell)) }
    }

    fn impossible(&self, cell: &[u8]) -> Reason {
        let (a, b) = (self.range.0 / self.factor, self.range.1 / self.factor);
        let unit = self.unit.map_or("", Unit::name);
        let allowed = format!("{:.4} to {:.4} {unit}", a.min(b), a.max(b)).replace(".0000", "");
        Reason::Impossible { column: self.header.clone(), found: excerpt(cell), allowed }
    }

    fn unreadable(&self, cell: &[u8]) -> Reason {
        Reason::Unreadable { column: self.header.clone(), found: excerpt(cell) }
    }
}

/// The place of a column in the header, with what the header itself tells of it: nothing for an
/// optional one that is not there.
fn find(
    name: &str,
    header: &ByteRecord,
    quantity: Quantity,
    column: &Column,
    taken: &[&str],
) -> Result<Option<(usize, Column)>, SessionError> {
    let mut places = (0..header.len()).filter(|&i| header[i].eq_ignore_ascii_case(column.header.as_bytes()));
    let first = places.next();
    if places.next().is_some() {
        let hint = "rename one of the two in the file's first row";
        return Err(SessionError::of_file(name, "there twice", "there once", hint).at_row(1).in_column(&column.header));
    }
    if let Some(index) = first {
        return Ok(Some((index, column.clone())));
    }
    // A header the map names itself must be there; our own names are only looked for.
    let is_own = column.header == quantity.header();
    if let Some(found) = is_own.then(|| in_plain_words(header, quantity, taken)).flatten() {
        return Ok(Some(found));
    }
    if is_own && !Quantity::NEEDED.contains(&quantity) {
        Ok(None)
    } else {
        Err(missing(name, header, quantity, column))
    }
}

/// The only column that names the quantity in plain words and that the map has not taken for another.
fn in_plain_words(header: &ByteRecord, quantity: Quantity, taken: &[&str]) -> Option<(usize, Column)> {
    let mut found = header.iter().enumerate().filter_map(|(index, cell)| {
        let words = String::from_utf8_lossy(cell).into_owned();
        if taken.iter().any(|header| header.eq_ignore_ascii_case(&words)) {
            return None;
        }
        let (named, unit) = plain_header(&words)?;
        let column = Column { header: words, unit, positive: None, at_ft: None, from_ft: None };
        (named == quantity).then_some((index, column))
    });
    found.next().filter(|_| found.next().is_none())
}

fn missing(name: &str, header: &ByteRecord, quantity: Quantity, column: &Column) -> SessionError {
    let headers: Vec<String> = header.iter().take(40).map(excerpt).collect();
    let likeness = |other: &String| strsim::jaro_winkler(&other.to_lowercase(), &column.header.to_lowercase());
    let nearest = headers.iter().max_by(|a, b| likeness(a).total_cmp(&likeness(b)));
    let offer = nearest
        .filter(|other| likeness(other) >= NEAR_ENOUGH)
        .map_or_else(String::new, |other| format!("did you mean \"{other}\"? "));
    let hint = format!(
        "{offer}name the file's own header for {} in a column map; --explain-columns proposes one",
        quantity.key()
    );
    let found = format!("not there; the file has {}", headers.join(", "));
    SessionError::of_file(name, found, "a column of the file", hint).at_row(1).in_column(&column.header)
}

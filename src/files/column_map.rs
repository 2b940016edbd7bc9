//! Reading a column map, with the same care as a profile: every fault at once, each at its place.
//!
//! A column is asked only for what suits its quantity, so a direction for a speed is an unknown key.

use super::assumptions::Assumptions;
use super::columns::{Column, ColumnMap};
use super::dates::Order;
use super::error::Fault;
use super::fields::{At, Fields, read_document};
use super::outline::Content;
use super::quantity::{Positive, Quantity, Unit};
use super::sections::AirDraft;
use crate::athlete::session::Outcome;
use crate::ball::Against;

/// Names of what may stand between cells.
const SEPARATORS: [(&str, u8); 3] = [("comma", b','), ("semicolon", b';'), ("tab", b'\t')];
/// Names of the decimal mark, and whether it is a comma.
const DECIMALS: [(&str, bool); 2] = [("point", false), ("comma", true)];

/// The map written in `text`, or every fault of it in file order; what it does not name keeps our
/// own names.
pub(super) fn read(text: &str) -> Result<ColumnMap, Vec<Fault>> {
    read_document(text, |root| {
        let mut map = ColumnMap {
            hand: value(root.hand("throws")),
            against: value(root.choice("against", &Against::ALL, Against::name)),
            pitcher: value(root.text("pitcher")),
            separator: value(root.choice("separator", &SEPARATORS, |(name, _)| name)).map(|(_, byte)| byte),
            decimal_comma: value(root.choice("decimal", &DECIMALS, |(name, _)| name)).map(|(_, is_comma)| is_comma),
            ..ColumnMap::default()
        };
        let own = |columns: &mut Fields| -> Vec<(Quantity, Column)> {
            Quantity::ALL
                .into_iter()
                .filter_map(|q| Some((q, columns.section(q.key(), |fields| column(fields, q))?)))
                .collect()
        };
        map.columns.extend(root.section("columns", own));
        let words = root.section("outcomes", |words| words.choices(&Outcome::ALL, Outcome::name));
        map.outcomes = words.into_iter().map(|(word, outcome)| (word.to_lowercase(), outcome)).collect();
        map.date_order = value(root.section("date", |date| date.choice("order", &Order::ALL, Order::name)));
        let air = root.section("air", AirDraft::read);
        air.check(root.faults());
        map.weather = air.is_given().then(|| Assumptions::default().about("air", |filler| air.fill(filler)));
        Some(map)
    })
}

/// One column; nothing when the map does not name it.
fn column(fields: &mut Fields, quantity: Quantity) -> Option<Column> {
    fields.needs(&["header"]);
    let (units, positives) = (Unit::words_of_kind(quantity.kind()), Positive::of_kind(quantity.kind()));
    let filled = |text: &str| Some(text.trim_ascii().to_owned()).filter(|text| !text.is_empty());
    let text = Content::Text { most: usize::MAX };
    let copy = |_: &str| Some("copy it from the file's first row".into());
    let header = fields.parsed("header", text, "a header of the file", filled, copy);
    let distance = quantity.distance().and_then(|(key, feet)| value(fields.number(key, feet)));
    let (at_ft, from_ft) = if quantity == Quantity::Speed { (distance, None) } else { (None, distance) };
    let unit = (!units.is_empty()).then(|| value(fields.choice("unit", &units, |(word, _)| word))).flatten();
    let unit = unit.map(|(_, unit)| unit);
    let positive = (!positives.is_empty()).then(|| value(fields.choice("positive", positives, Positive::name)));
    Some(Column { header: header?.value, unit, positive: positive.flatten(), at_ft, from_ft })
}

fn value<T>(found: Option<At<T>>) -> Option<T> {
    found.map(|found| found.value)
}

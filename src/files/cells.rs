//! What one cell says: a number, a clock face, a side, an outcome, a day.
//!
//! Exporters write the same thing in many ways; each function here knows the usual ones and gives
//! up on the rest. Ranges and units are checked by the caller.

use std::collections::BTreeMap;

use crate::athlete::session::Outcome;
use crate::base::geometry::{Clock, Hand, Side};

/// A cell that holds nothing, or something that is no number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct NotANumber;

/// Words that mean "not measured".
const NOTHING: [&[u8]; 8] = [b"na", b"n/a", b"nan", b"null", b"none", b"-", b"--", b"."];

/// Whether a cell, trimmed, says nothing.
pub(super) fn is_nothing(cell: &[u8]) -> bool {
    cell.is_empty() || NOTHING.iter().any(|word| cell.eq_ignore_ascii_case(word))
}

/// The number in a trimmed cell; nothing when it says it was not measured.
#[inline]
pub(super) fn number(cell: &[u8], has_decimal_comma: bool) -> Result<Option<f64>, NotANumber> {
    if is_nothing(cell) {
        return Ok(None);
    }
    let text = std::str::from_utf8(cell).map_err(|_| NotANumber)?;
    let parsed = if cell.contains(&b',') { plain(text, has_decimal_comma).parse() } else { text.parse::<f64>() };
    parsed.ok().filter(|number| number.is_finite()).map(Some).ok_or(NotANumber)
}

/// The number with a decimal point and no separators of thousands.
fn plain(text: &str, has_decimal_comma: bool) -> String {
    if has_decimal_comma {
        return text.replace('.', "").replace(',', ".");
    }
    let is_thousands = text.split(',').skip(1).all(|group| group.split('.').next().is_some_and(|g| g.len() == 3));
    if is_thousands { text.replace(',', "") } else { text.replace(',', ".") }
}

/// A clock face as `h:mm`, with or without seconds.
pub(super) fn clock(cell: &[u8]) -> Result<Option<Clock>, NotANumber> {
    if is_nothing(cell) {
        return Ok(None);
    }
    let text = std::str::from_utf8(cell).map_err(|_| NotANumber)?;
    if let Ok(clock) = text.parse() {
        return Ok(Some(clock));
    }
    let without_seconds = text.split(':').take(2).collect::<Vec<_>>().join(":");
    let hours_first = without_seconds.trim_start_matches('0');
    let midnight = hours_first.starts_with(':').then(|| format!("12{hours_first}"));
    midnight.as_deref().unwrap_or(hours_first).parse().map(Some).map_err(|_| NotANumber)
}

/// The hitter's side; left and right need the pitcher's hand.
pub(super) fn side(cell: &[u8], hand: Option<Hand>) -> Option<Side> {
    let is = |word: &str| cell.eq_ignore_ascii_case(word.as_bytes());
    let bats = match () {
        () if is("same") || is("same side") => return Some(Side::Same),
        () if is("opposite") || is("opposite side") => return Some(Side::Opposite),
        () if is("left") || is("l") => Hand::Left,
        () if is("right") || is("r") => Hand::Right,
        () => return None,
    };
    hand.map(|throws| if throws == bats { Side::Same } else { Side::Opposite })
}

/// Yes or no.
pub(super) fn yes_or_no(cell: &[u8]) -> Option<bool> {
    let is = |word: &&str| cell.eq_ignore_ascii_case(word.as_bytes());
    let yes = ["yes", "y", "true", "1"].iter().any(is);
    (yes || ["no", "n", "false", "0"].iter().any(is)).then_some(yes)
}

/// The outcome, by the map's own words first and then by ours.
pub(super) fn outcome(cell: &[u8], words: &BTreeMap<String, Outcome>) -> Option<Outcome> {
    if !words.is_empty() {
        let lower = String::from_utf8_lossy(cell).to_lowercase();
        if let Some(&outcome) = words.get(&lower) {
            return Some(outcome);
        }
    }
    let is = |word: &str| cell.eq_ignore_ascii_case(word.as_bytes());
    let ours = Outcome::ALL.into_iter().find(|outcome| is(outcome.name()));
    ours.or_else(|| (is("foul tip") || is("bunt")).then_some(Outcome::Foul))
}

/// The day in a cell that may also tell the time.
pub(super) fn day(cell: &[u8]) -> &[u8] {
    let has_time = cell.len() > 10 && cell[0].is_ascii_digit() && matches!(cell[10], b'T' | b' ');
    if has_time { &cell[..10] } else { cell }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_with_points_commas_and_thousands() {
        for (text, comma, value) in [
            ("92.5", false, 92.5),
            ("92,5", true, 92.5),
            ("92,5", false, 92.5),
            ("2,350", false, 2350.0),
            ("2.350,5", true, 2350.5),
            ("-1e1", false, -10.0),
        ] {
            assert_eq!(number(text.as_bytes(), comma), Ok(Some(value)), "{text}");
        }
        assert_eq!(number(b"N/A", false), Ok(None));
        for wrong in ["fast", "inf", "1 2", "\u{661}", "1,2,3"] {
            assert_eq!(number(wrong.as_bytes(), false), Err(NotANumber), "{wrong}");
        }
    }

    #[test]
    fn clocks_are_read_with_leading_zeros_and_seconds() {
        for (text, shown) in [("1:15", "1:15"), ("01:15", "1:15"), ("01:15:00", "1:15"), ("00:30", "12:30")] {
            assert_eq!(clock(text.as_bytes()).ok().flatten().map(|c| c.to_string()), Some(shown.into()), "{text}");
        }
        assert_eq!(clock(b"quarter past"), Err(NotANumber));
    }

    #[test]
    fn a_left_handed_hitter_is_same_side_for_a_left_hander() {
        assert_eq!(side(b"L", Some(Hand::Left)), Some(Side::Same));
        assert_eq!(side(b"right", Some(Hand::Left)), Some(Side::Opposite));
        assert_eq!(side(b"right", None), None);
    }

    #[test]
    fn the_time_of_day_is_no_other_day() {
        assert_eq!(day(b"2031-03-01T17:20:00"), b"2031-03-01");
        assert_eq!(day(b"spring camp day 2"), b"spring camp day 2");
    }
}

//! Numbers as exporters write them: with decimal points or commas, with or without groups of
//! thousands.
//!
//! What can be read in two ways is not read at all: a wrong number is worse than a row set aside.
//! Only a spin is ever in the thousands, so `2,350` is one for a spin and nothing for a break.

use super::cells::{NotANumber, is_nothing};

/// What stands between the whole part of a file's numbers and their decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Mark {
    Point,
    Comma,
}

impl Mark {
    fn char(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }

    /// The mark of most numbers in the `cells` of a file; a point when there is none to see.
    pub(super) fn of_most<'c>(cells: impl Iterator<Item = &'c [u8]>) -> Self {
        let (mut points, mut commas) = (0_usize, 0_usize);
        for cell in cells {
            let Ok(text) = std::str::from_utf8(cell) else { continue };
            let mut marks = text.matches(['.', ',']);
            if let (Some(mark), None) = (marks.next(), marks.next())
                && !is_grouped(text.trim(), mark)
                && text.trim().replace(mark, "").parse::<i64>().is_ok()
            {
                *(if mark == "." { &mut points } else { &mut commas }) += 1;
            }
        }
        if commas > points { Self::Comma } else { Self::Point }
    }
}

/// The number in a trimmed cell; nothing when it says it was not measured.
#[inline]
pub(super) fn number(cell: &[u8], mark: Mark) -> Result<Option<f64>, NotANumber> {
    read(cell, mark, false)
}

/// The same for what may be in the thousands.
#[inline]
pub(super) fn large_number(cell: &[u8], mark: Mark) -> Result<Option<f64>, NotANumber> {
    read(cell, mark, true)
}

#[inline]
fn read(cell: &[u8], mark: Mark, may_have_thousands: bool) -> Result<Option<f64>, NotANumber> {
    if is_nothing(cell) {
        return Ok(None);
    }
    let text = std::str::from_utf8(cell).map_err(|_| NotANumber)?;
    let is_plain = cell.iter().all(|&byte| byte.is_ascii_alphanumeric() || matches!(byte, b'.' | b'-' | b'+'));
    let has_one_reading = is_plain && mark == Mark::Point && !may_have_thousands;
    let parsed =
        if has_one_reading { text.parse::<f64>() } else { plain(text, mark, may_have_thousands)?.parse::<f64>() };
    parsed.ok().filter(|number| number.is_finite()).map(Some).ok_or(NotANumber)
}

/// The number with a decimal point and no separators of thousands.
fn plain(text: &str, mark: Mark, may_have_thousands: bool) -> Result<String, NotANumber> {
    let text = without_gaps(&text.replace('\u{2212}', "-"))?;
    let (points, commas) = (text.matches('.').count(), text.matches(',').count());
    match (points, commas) {
        (0, 0) => Ok(text),
        (1, 0) => one_mark(&text, ".", mark, may_have_thousands),
        (0, 1) => one_mark(&text, ",", mark, may_have_thousands),
        (_, 0) => ungrouped(&text, "."),
        (0, _) => ungrouped(&text, ","),
        // Of two marks the last stands before the decimals.
        _ if text.rfind('.') > text.rfind(',') => both_marks(&text, ",", "."),
        _ => both_marks(&text, ".", ","),
    }
}

/// The number without the spaces and apostrophes that part its thousands.
fn without_gaps(text: &str) -> Result<String, NotANumber> {
    const GAPS: [char; 5] = [' ', '\u{a0}', '\u{202f}', '\'', '\u{2019}'];
    if !text.contains(GAPS) {
        return Ok(text.to_owned());
    }
    let whole = text.split(['.', ',']).next().unwrap_or_default();
    let one_gap = whole.replace(GAPS, "'");
    if text[whole.len()..].contains(GAPS) || !is_grouped(&one_gap, "'") {
        return Err(NotANumber);
    }
    Ok(text.replace(GAPS, ""))
}

/// A number with a single point or comma.
fn one_mark(text: &str, found: &str, mark: Mark, may_have_thousands: bool) -> Result<String, NotANumber> {
    let is_decimal_mark = found.starts_with(mark.char());
    let decimal = || Ok(text.replace(found, "."));
    if !is_grouped(text, found) {
        return decimal();
    }
    let has_one_leading_digit = text.trim_start_matches(['+', '-']).find(found) == Some(1);
    match (may_have_thousands, is_decimal_mark) {
        // Nobody measures a few revolutions per minute to the thousandth.
        (true, true) if has_one_leading_digit => ungrouped(text, found),
        (true, false) => ungrouped(text, found),
        (_, true) => decimal(),
        (false, false) => Err(NotANumber),
    }
}

fn both_marks(text: &str, groups: &str, decimals: &str) -> Result<String, NotANumber> {
    let (whole, rest) = text.split_once(decimals).ok_or(NotANumber)?;
    if rest.contains([',', '.']) {
        return Err(NotANumber);
    }
    Ok(format!("{}.{rest}", ungrouped(whole, groups)?))
}

fn ungrouped(text: &str, mark: &str) -> Result<String, NotANumber> {
    if is_grouped(text, mark) { Ok(text.replace(mark, "")) } else { Err(NotANumber) }
}

/// Whether `mark` parts a whole number into groups of three digits, as in 2,350.
fn is_grouped(text: &str, mark: &str) -> bool {
    let mut groups = text.trim_start_matches(['+', '-']).split(mark);
    let first = groups.next().unwrap_or_default();
    let is_digits = |group: &str| group.bytes().all(|byte| byte.is_ascii_digit());
    let starts_well = (1..=3).contains(&first.len()) && is_digits(first) && !first.starts_with('0');
    let mut others = groups.peekable();
    starts_well && others.peek().is_some() && others.all(|group| group.len() == 3 && is_digits(group))
}

#[cfg(test)]
mod tests {
    use super::Mark::{Comma, Point};
    use super::*;

    #[test]
    fn numbers_are_read_with_points_commas_and_thousands() {
        for (text, mark, value) in [
            ("92.5", Point, 92.5),
            ("92,5", Comma, 92.5),
            ("92,5", Point, 92.5),
            ("92.5", Comma, 92.5),
            ("92.125", Point, 92.125),
            ("92,125", Comma, 92.125),
            ("2,350.5", Point, 2350.5),
            ("2.350,5", Comma, 2350.5),
            ("2 350", Point, 2350.0),
            ("1\u{202f}002\u{202f}350,5", Comma, 1_002_350.5),
            ("-1e1", Point, -10.0),
            ("\u{2212}7,25", Comma, -7.25),
        ] {
            assert_eq!(number(text.as_bytes(), mark), Ok(Some(value)), "{text}");
        }
        assert_eq!(number(b"N/A", Point), Ok(None));
        for (wrong, mark) in [
            ("fast", Point),
            ("inf", Point),
            ("1 2", Point),
            ("\u{661}", Point),
            ("1,2,3", Point),
            ("1,250", Point),
            ("1.250", Comma),
            ("1.2,5.0", Comma),
            ("1,250.5.5", Point),
        ] {
            assert_eq!(number(wrong.as_bytes(), mark), Err(NotANumber), "{wrong}");
        }
    }

    #[test]
    fn a_spin_has_thousands_and_never_thousandths() {
        for mark in [Point, Comma] {
            for text in ["2,350", "2.350", "2'350", "2\u{a0}350", "2350"] {
                assert_eq!(large_number(text.as_bytes(), mark), Ok(Some(2350.0)), "{text} {mark:?}");
            }
        }
        assert_eq!(large_number(b"950.125", Point), Ok(Some(950.125)));
        assert_eq!(large_number(b"0.125", Point), Ok(Some(0.125)));
        assert_eq!(large_number(b"2350,5", Comma), Ok(Some(2350.5)));
    }

    #[test]
    fn the_mark_of_a_file_is_that_of_most_numbers_and_not_of_dates_or_thousands() {
        let of = |cells: &[&str]| Mark::of_most(cells.iter().map(|cell| cell.as_bytes()));
        assert_eq!(of(&["92,5", "2.350", "3.2.2031", "16"]), Comma);
        assert_eq!(of(&["92.5", "2,350", "a,b"]), Point);
        assert_eq!(of(&[]), Point);
    }
}

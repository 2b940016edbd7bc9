//! What one date cell says: the day without the time, by every reading that the calendar allows.
//!
//! `2/3/2031` may be two days; which one is settled over all dates of the files in
//! [`super::days`]. The calendar itself is jiff's.

use jiff::civil::{Date, Weekday};

/// Which number of a date stands first when none of them says so itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Order {
    Month,
    Day,
    Year,
}

impl Order {
    /// Every order, the one to prefer first.
    pub(super) const ALL: [Self; 3] = [Self::Month, Self::Day, Self::Year];

    /// As written in a column map.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Month => "month-first",
            Self::Day => "day-first",
            Self::Year => "year-first",
        }
    }

    /// As said in a sentence: "read ...".
    pub(super) fn words(self) -> &'static str {
        match self {
            Self::Month => "month first",
            Self::Day => "day first",
            Self::Year => "year first",
        }
    }

    /// The patterns of its dates, with four digits of the year and with two (69 to 99 are 1969 to
    /// 1999, as POSIX has it).
    fn patterns(self) -> [&'static str; 2] {
        match self {
            Self::Month => ["%m %d %Y", "%m %d %y"],
            Self::Day => ["%d %m %Y", "%d %m %y"],
            Self::Year => ["%Y %m %d", "%y %m %d"],
        }
    }
}

/// What a cell may mean.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Reading {
    /// One day, whatever the order.
    Clear(Date),
    /// A day for each of [`Order::ALL`] by which there is one.
    ByOrder([Option<Date>; 3]),
    /// Numbers like a date's that no calendar has.
    NoSuchDay,
    /// No date: a name for a day.
    Name,
}

/// Patterns of dates that leave no doubt; months are cut to three letters before.
const CLEAR: [&str; 6] = ["%Y %m %d", "%d %b %Y", "%b %d %Y", "%Y %b %d", "%d %b %y", "%b %d %y"];
/// Years of throws anybody has on file, or may plan.
const YEARS: std::ops::RangeInclusive<i16> = 1900..=2199;

/// The readings of a date without its time.
pub(super) fn reading(text: &str) -> Reading {
    let (parts, weekday) = parts_of(text);
    let day = |pattern: &str, text: &str| {
        let date = Date::strptime(pattern, text).ok();
        date.filter(|date| YEARS.contains(&date.year()) && weekday.is_none_or(|weekday| date.weekday() == weekday))
    };
    let digits: Vec<usize> =
        parts.iter().map(|part| if part.bytes().all(|b| b.is_ascii_digit()) { part.len() } else { 0 }).collect();
    let joined = parts.join(" ");
    match digits[..] {
        [8] => day("%Y%m%d", &joined).map_or(Reading::NoSuchDay, Reading::Clear),
        [1..=2, 1..=2, 4] => by_order(|order| day(order.patterns()[0], &joined)),
        [1..=2, 1..=2, 2] => by_order(|order| day(order.patterns()[1], &joined)),
        [4, 1..=2, 1..=2] => day(CLEAR[0], &joined).map_or(Reading::NoSuchDay, Reading::Clear),
        [_, _, _] => CLEAR[1..].iter().find_map(|pattern| day(pattern, &joined)).map_or(Reading::Name, Reading::Clear),
        _ => Reading::Name,
    }
}

fn by_order(day: impl Fn(Order) -> Option<Date>) -> Reading {
    match Order::ALL.map(day) {
        [None, None, None] => Reading::NoSuchDay,
        [Some(one), Some(other), third] if one == other && third.is_none_or(|third| third == one) => {
            Reading::Clear(one)
        }
        days => Reading::ByOrder(days),
    }
}

/// The parts of a date, months cut to three letters, and the day of the week when it is told.
fn parts_of(text: &str) -> (Vec<String>, Option<Weekday>) {
    let mut weekday = None;
    let mut parts = Vec::new();
    for part in text.split([' ', '/', '-', '.', ',', '\u{a0}']).filter(|part| !part.is_empty()) {
        if let Some(day) = weekday_of(part) {
            weekday = Some(day);
        } else {
            parts.push(plain(part));
        }
    }
    (parts, weekday)
}

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// `3rd` as 3, `September` as Sep.
fn plain(part: &str) -> String {
    let lower = part.to_lowercase();
    let number = ["st", "nd", "rd", "th"].iter().find_map(|ending| lower.strip_suffix(ending));
    if let Some(number) = number.filter(|number| !number.is_empty() && number.bytes().all(|b| b.is_ascii_digit())) {
        return number.to_owned();
    }
    let is_month = lower.len() >= 3 && MONTHS.iter().any(|month| month.starts_with(&lower));
    if is_month { lower[..3].to_owned() } else { lower }
}

const WEEKDAYS: [(&str, Weekday); 7] = [
    ("monday", Weekday::Monday),
    ("tuesday", Weekday::Tuesday),
    ("wednesday", Weekday::Wednesday),
    ("thursday", Weekday::Thursday),
    ("friday", Weekday::Friday),
    ("saturday", Weekday::Saturday),
    ("sunday", Weekday::Sunday),
];

fn weekday_of(part: &str) -> Option<Weekday> {
    let lower = part.to_lowercase();
    let found = WEEKDAYS.into_iter().find(|(name, _)| lower.len() >= 3 && name.starts_with(&lower));
    found.map(|(_, day)| day)
}

/// A cell parted into its day and what it tells of the time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Parted<'c> {
    /// Empty when the cell tells a time and no day.
    pub(super) day: &'c [u8],
    /// Whether the time is told as that of Greenwich, so that a day may end in the middle of an evening.
    pub(super) is_utc: bool,
}

/// Parts a trimmed cell: `2/3/2031 10:01 PM` is the day `2/3/2031`.
pub(super) fn part(cell: &[u8]) -> Parted<'_> {
    let is_digit = |at: usize| cell.get(at).is_some_and(u8::is_ascii_digit);
    let colon = (1..cell.len()).find(|&at| cell[at] == b':' && is_digit(at - 1) && is_digit(at + 1));
    let Some(colon) = colon else {
        // The basic form of ISO 8601: 20310203T100105.
        let t = (1..cell.len()).find(|&at| cell[at] == b'T' && is_digit(at - 1) && is_digit(at + 1));
        return t.map_or(Parted { day: cell, is_utc: false }, |at| Parted { day: &cell[..at], is_utc: is_utc(cell) });
    };
    let hour = cell[..colon].iter().rposition(|byte| !byte.is_ascii_digit()).map_or(0, |before| before + 1);
    let before = trimmed(&cell[..hour]);
    if !before.is_empty() {
        return Parted { day: before, is_utc: is_utc(cell) };
    }
    // The time stands first: the day begins after it and its morning or evening.
    let rest =
        cell[colon..].iter().position(u8::is_ascii_whitespace).map_or(&b""[..], |at| cell[colon + at..].trim_ascii());
    let is_half = |word: &[u8]| word.eq_ignore_ascii_case(b"am") || word.eq_ignore_ascii_case(b"pm");
    let word = rest.split(u8::is_ascii_whitespace).next().unwrap_or_default();
    let day = if is_half(word) { rest[word.len()..].trim_ascii() } else { rest };
    Parted { day, is_utc: false }
}

/// Without what stands between a day and its time.
fn trimmed(day: &[u8]) -> &[u8] {
    let day = day.trim_ascii();
    let day = day.strip_suffix(b"T").filter(|day| day.last().is_some_and(u8::is_ascii_digit)).unwrap_or(day);
    day.strip_suffix(b",").unwrap_or(day).trim_ascii()
}

fn is_utc(cell: &[u8]) -> bool {
    let ends =
        |ending: &[u8]| cell.len() > ending.len() && cell[cell.len() - ending.len()..].eq_ignore_ascii_case(ending);
    [&b"Z"[..], b"+00:00", b"-00:00", b"+0000", b" UTC", b" GMT"].iter().any(|ending| ends(ending))
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn the_time_of_day_is_no_part_of_the_day() {
        for (cell, day) in [
            ("2031-02-03", "2031-02-03"),
            ("2031-02-03T10:01:05", "2031-02-03"),
            ("2031-02-03T10:01:05.123+02:00[Europe/Berlin]", "2031-02-03"),
            ("2031-02-03 10:01:05", "2031-02-03"),
            ("20310203T100105", "20310203"),
            ("2/3/2031 10:01:05 PM", "2/3/2031"),
            ("2/3/2031, 10:01", "2/3/2031"),
            ("10:01 pm 2/3/2031", "2/3/2031"),
            ("Feb 3, 2031 9:05 a.m.", "Feb 3, 2031"),
            ("10:01:05", ""),
            ("spring camp day 2", "spring camp day 2"),
            ("bullpen: two", "bullpen: two"),
        ] {
            assert_eq!(std::str::from_utf8(part(cell.as_bytes()).day), Ok(day), "{cell}");
        }
        assert!(part(b"2031-02-03T23:30:00Z").is_utc && !part(b"2031-02-03T23:30:00-05:00").is_utc);
    }

    #[test]
    fn dates_are_read_in_every_way_the_calendar_allows() {
        let third = date(2031, 2, 3);
        for text in [
            "2031-02-03",
            "2031/2/3",
            "2031.02.03",
            "20310203",
            "3 Feb 2031",
            "February 3rd, 2031",
            "03-Feb-31",
            "Mon, 3 Feb 2031",
            "Mon 2/3/2031",
            "Monday 3.2.31",
        ] {
            let clear = match reading(text) {
                Reading::Clear(date) => Some(date),
                Reading::ByOrder(days) => days.iter().flatten().copied().find(|_| days.iter().flatten().count() == 1),
                _ => None,
            };
            assert_eq!(clear, Some(third), "{text}: {:?}", reading(text));
        }
        assert_eq!(reading("2/3/2031"), Reading::ByOrder([Some(third), Some(date(2031, 3, 2)), None]));
        assert_eq!(reading("3/3/2031"), Reading::Clear(date(2031, 3, 3)));
        assert_eq!(reading("13/2/2031"), Reading::ByOrder([None, Some(date(2031, 2, 13)), None]));
        for text in ["31/31/2031", "2031-02-30", "2/3/0031", "99999999"] {
            assert_eq!(reading(text), Reading::NoSuchDay, "{text}");
        }
        for text in ["spring camp", "day 2", "Tue 3 Feb 2031", "1 2", "", "first half season", "session-1.csv"] {
            assert_eq!(reading(text), Reading::Name, "{text}");
        }
    }
}

//! Dates of a plan: from when to when, and on which days of the week.
//!
//! Everything is a civil date, without a time and without a zone, so neither a leap day nor the
//! end of summer time can move a throwing day. Text is read here because both are typed on the
//! command line as well as written in files.

use std::fmt;
use std::str::FromStr;

use jiff::civil::Date;

/// A run of days from 1900 to 2199, both ends included; never empty, at most 366 days.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Span {
    start: Date,
    end: Date,
}

/// Why two dates make no span.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SpanError {
    /// The end lies before the start.
    #[error("the end {end} lies before the start {start}")]
    EndBeforeStart {
        /// As given.
        start: Date,
        /// As given.
        end: Date,
    },
    /// A day that no calendar on a phone takes.
    #[error("{day} is not in the years 1900 to 2199")]
    FarOff {
        /// As given.
        day: Date,
    },
    /// Longer than a year.
    #[error("{start} to {end} is {days} days; a plan covers at most 366")]
    TooLong {
        /// As given.
        start: Date,
        /// As given.
        end: Date,
        /// Their distance.
        days: u32,
    },
}

impl Span {
    const MOST_DAYS: u32 = 366;
    const YEARS: std::ops::RangeInclusive<i16> = 1900..=2199;

    /// From `start` to `end`, both included.
    ///
    /// # Errors
    /// When a day is far off, or the end lies before the start or more than a year after it.
    pub fn new(start: Date, end: Date) -> Result<Self, SpanError> {
        if let Some(day) = [start, end].into_iter().find(|day| !Self::YEARS.contains(&day.year())) {
            return Err(SpanError::FarOff { day });
        }
        if end < start {
            return Err(SpanError::EndBeforeStart { start, end });
        }
        let days = days_between(start, end) + 1;
        if days > Self::MOST_DAYS { Err(SpanError::TooLong { start, end, days }) } else { Ok(Self { start, end }) }
    }

    /// The first day.
    pub fn start(self) -> Date {
        self.start
    }

    /// The last day.
    pub fn end(self) -> Date {
        self.end
    }

    /// How many days.
    pub fn days(self) -> u32 {
        days_between(self.start, self.end) + 1
    }

    /// Every day.
    pub fn dates(self) -> impl Iterator<Item = Date> {
        std::iter::successors(Some(self.start), |date| date.tomorrow().ok()).take_while(move |&date| date <= self.end)
    }

    /// The days before `date` and those from `date` on; either may be nothing.
    pub(super) fn split_at(self, date: Date) -> (Option<Self>, Option<Self>) {
        let before = date.yesterday().ok().map(|last| last.min(self.end));
        let before = before.and_then(|end| Self::new(self.start, end).ok());
        (before, Self::new(date.max(self.start), self.end).ok())
    }
}

/// Whole days from `from` to `to`; 0 when `to` is earlier.
pub(super) fn days_between(from: Date, to: Date) -> u32 {
    u32::try_from(to.duration_since(from).as_hours() / 24).unwrap_or(0)
}

/// Days of the week; at least one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weekdays {
    /// From Monday.
    on: [bool; 7],
}

/// Why a text names no days.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("\"{found}\" is not a day: use mon, tue, wed, thu, fri, sat, sun, separated by commas")]
pub struct NotADay {
    /// The part that is not a day.
    pub found: String,
}

const NAMES: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const FULL: [&str; 7] = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"];

impl Weekdays {
    /// Whether `date` is on one of them.
    pub fn contains(self, date: Date) -> bool {
        let place = usize::try_from(date.weekday().to_monday_zero_offset()).unwrap_or(0);
        self.on[place % 7]
    }

    /// How many there are in a week.
    pub fn per_week(self) -> usize {
        self.on.into_iter().filter(|&on| on).count()
    }
}

impl Default for Weekdays {
    /// Monday, Wednesday and Friday.
    fn default() -> Self {
        Self { on: [true, false, true, false, true, false, false] }
    }
}

impl FromStr for Weekdays {
    type Err = NotADay;

    /// Reads `mon,wed,fri`; full names and any case are fine.
    fn from_str(text: &str) -> Result<Self, NotADay> {
        let mut on = [false; 7];
        for part in text.split(',').map(str::trim) {
            let lower = part.to_lowercase();
            let is_it = |(short, full): (&str, &str)| lower == short || lower == full;
            let Some(place) = NAMES.into_iter().zip(FULL).position(is_it) else {
                return Err(NotADay { found: part.to_owned() });
            };
            on[place] = true;
        }
        Ok(Self { on })
    }
}

impl fmt::Display for Weekdays {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let shown: Vec<&str> = NAMES.into_iter().zip(self.on).filter(|&(_, on)| on).map(|(name, _)| name).collect();
        f.write_str(&shown.join(","))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn a_span_counts_both_ends_and_the_leap_day() {
        let span = Span::new(date(2028, 2, 27), date(2028, 3, 1)).unwrap();
        assert_eq!(span.days(), 4);
        assert!(span.dates().any(|day| day == date(2028, 2, 29)));
        assert!(Span::new(date(2028, 1, 1), date(2028, 12, 31)).is_ok());
        assert!(Span::new(date(2027, 1, 1), date(2028, 2, 1)).is_err());
        assert!(Span::new(date(2027, 1, 2), date(2027, 1, 1)).is_err());
        for far in [date(1899, 12, 31), date(2200, 1, 1), date(-5, 1, 1), date(9999, 12, 31)] {
            assert_eq!(Span::new(far, far), Err(SpanError::FarOff { day: far }));
        }
    }

    #[test]
    fn days_of_the_week_are_read_short_or_long_and_shown_short() {
        assert_eq!("Mon, Wednesday,fri".parse::<Weekdays>(), Ok(Weekdays::default()));
        assert_eq!(Weekdays::default().to_string(), "mon,wed,fri");
        for wrong in ["", "mon,,fri", "moon", "monda", "m"] {
            assert!(wrong.parse::<Weekdays>().is_err(), "{wrong}");
        }
        assert!(Weekdays::default().contains(date(2026, 11, 25)), "a Wednesday");
    }
}

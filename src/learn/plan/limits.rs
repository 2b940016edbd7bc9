//! The published daily limits and rest days, as a table with its date.
//!
//! From the guidelines of USA Baseball and Major League Baseball, as read in a copy of about 2015.
//! Guidelines change: the governing body's current page decides, and so do local rules. Nothing
//! here says what is safe; it says what that copy allows at most.

use crate::athlete::eligibility::YOUNGEST;
use crate::athlete::profile::{Athlete, Level};

/// What one day's pitching may hold, and the rest it asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DayLimit {
    /// Ages of the row.
    pub ages: (u8, u8),
    /// Most pitches in a day.
    pub most: u32,
    /// Most pitches after which 0, 1, 2 and 3 days of rest are enough; beyond the last, 4.
    pub rest_after: [u32; 4],
}

/// Rest steps up to age 14, and from age 15.
const YOUNG: [u32; 4] = [20, 35, 50, 65];
const OLDER: [u32; 4] = [30, 45, 60, 75];

/// The table, youngest first.
pub const TABLE: [DayLimit; 7] = [
    DayLimit { ages: (7, 8), most: 50, rest_after: YOUNG },
    DayLimit { ages: (9, 10), most: 75, rest_after: YOUNG },
    DayLimit { ages: (11, 12), most: 85, rest_after: YOUNG },
    DayLimit { ages: (13, 14), most: 95, rest_after: YOUNG },
    DayLimit { ages: (15, 16), most: 95, rest_after: OLDER },
    DayLimit { ages: (17, 18), most: 105, rest_after: OLDER },
    DayLimit { ages: (19, 22), most: 120, rest_after: OLDER },
];

impl DayLimit {
    /// The row for `age`; ages above the table use its last row, below it there is none.
    pub fn at_age(age: u8) -> Option<Self> {
        let row = TABLE.into_iter().find(|row| age <= row.ages.1).unwrap_or(TABLE[TABLE.len() - 1]);
        (age >= YOUNGEST).then_some(row)
    }

    /// The row for an athlete; when the age is not known, a young one for the level. Whoever is younger than the table
    /// is barred from throwing before a limit is asked for, and would get its first row.
    pub fn of(athlete: &Athlete) -> Self {
        let age = athlete.age.unwrap_or(match athlete.level {
            Level::Youth => YOUNGEST,
            Level::HighSchool => 15,
            Level::College | Level::Professional => 17,
        });
        Self::at_age(age).unwrap_or(TABLE[0])
    }

    /// Days of rest after `pitches` in a day.
    pub fn rest_days(self, pitches: u32) -> u32 {
        self.rest_after.into_iter().map(|most| u32::from(pitches > most)).sum()
    }

    /// Most pitches in a day that is followed by `rest` days without any.
    pub fn most_before_rest(self, rest: u32) -> u32 {
        let step = usize::try_from(rest).ok().and_then(|rest| self.rest_after.get(rest).copied());
        step.unwrap_or(self.most).min(self.most)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// SOURCES section 6: read in a copy of about 2015.
    #[test]
    fn the_table_is_the_published_one() {
        let most = [(7, 50), (10, 75), (11, 85), (14, 95), (15, 95), (18, 105), (19, 120), (22, 120), (30, 120)];
        for (age, expected) in most {
            assert_eq!(DayLimit::at_age(age).map(|row| row.most), Some(expected), "age {age}");
        }
        assert_eq!(DayLimit::at_age(6), None);
        let young = [(1, 0), (20, 0), (21, 1), (35, 1), (36, 2), (50, 2), (51, 3), (65, 3), (66, 4), (95, 4)];
        let older = [(1, 0), (30, 0), (31, 1), (45, 1), (46, 2), (60, 2), (61, 3), (75, 3), (76, 4), (120, 4)];
        for (age, table) in [(14, young), (15, older)] {
            let row = DayLimit::at_age(age).unwrap();
            assert!(table.iter().all(|&(pitches, rest)| row.rest_days(pitches) == rest), "age {age}");
        }
    }

    #[test]
    fn the_most_before_some_rest_needs_no_more_rest_than_that() {
        for row in TABLE {
            for rest in 0..6 {
                assert!(row.rest_days(row.most_before_rest(rest)) <= rest);
            }
        }
    }
}

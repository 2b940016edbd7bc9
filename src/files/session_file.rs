//! Session files: rows of any export into throws.
//!
//! Each row either becomes a throw or is set aside with its row number and reason; blank rows are
//! skipped. A file is refused as a whole when it names no columns we need, when it holds no row at
//! all, or when half of its rows cannot be used: then something is wrong with the map and not with
//! the rows.

use std::collections::HashMap;
use std::io::Read;
use std::path::{Path, PathBuf};

use csv::ByteRecord;

use super::cells;
use super::columns::ColumnMap;
use super::error::{InputError, visible};
use super::file;
use super::plan::Plan;
use super::quantity::Quantity;
use super::session_error::SessionError;
use super::table::Table;
use crate::athlete::session::{
    FullFlight, Place, PlateReading, Reason, ReleaseReading, Session, SetAside, SpinReading, Throw,
};
use crate::ball::flight::Air;
use crate::ball::flight::inverse::release_point;
use crate::ball::{Against, Shape};
use crate::base::geometry::Hand;

/// Rows after which a file of mostly unusable rows is given up, again and again.
const PATIENCE: usize = 2000;
/// The most throws of all files together: more than a league throws in a season.
const MOST_THROWS: usize = 2_000_000;
/// The most rows of nothing, such as a spreadsheet saves below its table.
const MOST_BLANK_ROWS: usize = 1_000_000;
/// The most different labels, grips or days, and the most bytes they may have together.
const MOST_WORDS: (usize, usize) = (5000, 1024 * 1024);
/// Rows between two reports of progress.
const REPORT_EVERY: usize = 1 << 15;

/// What is said when nobody tells what movement is counted against.
const AGAINST_ASSUMED: &str = "what movement is counted against is not told: assumed the same throw with no sideways \
    force and the same drag; if the unit counts against gravity alone, write against = \"gravity\" in the column map";

/// How to read.
pub struct ReadOptions<'a> {
    /// Which column holds what.
    pub map: ColumnMap,
    /// The throwing hand, when it is known from elsewhere than the map.
    pub hand: Option<Hand>,
    /// Told now and then how many (uncompressed) bytes of all files have been read.
    pub progress: &'a mut dyn FnMut(u64),
}

/// Reads session files; `-` is standard input.
///
/// # Errors
/// When a file cannot be opened or read, lacks a column, holds no throws, or is mostly unusable.
pub fn read_sessions(paths: &[PathBuf], options: ReadOptions) -> Result<Session, InputError> {
    let mut reading = Reading::new(options);
    for path in paths {
        let (name, bytes) = source(path)?;
        reading.read(&name, bytes)?;
    }
    Ok(reading.finish())
}

/// A file's bytes and its name as it may be shown; `-` is standard input.
pub(super) fn source(path: &Path) -> Result<(String, Box<dyn Read>), InputError> {
    if path.as_os_str() == "-" {
        return Ok(("standard input".into(), Box::new(std::io::stdin().lock())));
    }
    Ok((visible(&path.to_string_lossy()), Box::new(file::open(path)?)))
}

/// Reads one session from bytes; `name` is the file name shown in errors and reports.
///
/// # Errors
/// As [`read_sessions`].
pub fn session_from_bytes(name: &str, bytes: impl Read, options: ReadOptions) -> Result<Session, InputError> {
    let mut reading = Reading::new(options);
    reading.read(name, bytes)?;
    Ok(reading.finish())
}

struct Reading<'a> {
    options: ReadOptions<'a>,
    full_flight: FullFlight,
    against: Against,
    air: Air,
    session: Session,
    days: Words,
    labels: Words,
    grips: Words,
    unread_outcomes: HashMap<Vec<u8>, usize>,
    bytes_before: u64,
}

impl<'a> Reading<'a> {
    fn new(options: ReadOptions<'a>) -> Self {
        let hand = options.hand.or(options.map.hand);
        let against = options.map.against;
        let session = Session { hand, against, weather: options.map.weather, ..Session::default() };
        Self {
            full_flight: FullFlight::new(options.map.measured()),
            against: against.unwrap_or_default(),
            air: options.map.weather.map_or(Air::SEA_LEVEL, Air::of),
            options,
            session,
            days: Words::default(),
            labels: Words::default(),
            grips: Words::default(),
            unread_outcomes: HashMap::new(),
            bytes_before: 0,
        }
    }

    fn finish(mut self) -> Session {
        self.session.days = self.days.met;
        self.session.labels = self.labels.met;
        self.session.grips = self.grips.met;
        let mut unread: Vec<_> = self.unread_outcomes.into_iter().collect();
        unread.sort();
        self.session.notes = unread
            .into_iter()
            .map(|(word, rows)| {
                format!("outcome \"{}\" is not known ({rows} rows)", super::session_error::excerpt(&word))
            })
            .collect();
        if self.session.against.is_none() {
            self.session.notes.push(AGAINST_ASSUMED.to_owned());
        }
        self.session
    }

    fn read(&mut self, name: &str, bytes: impl Read) -> Result<(), SessionError> {
        let mut table = Table::open(name, bytes, self.options.map.separator)?;
        let decimal_comma = self.options.map.decimal_comma.unwrap_or(table.has_decimal_comma);
        let plan = Plan::new(name, &table.header, &self.options.map, self.session.hand, decimal_comma)?;
        let file = u16::try_from(self.session.files.len()).unwrap_or(u16::MAX);
        self.session.files.push(name.to_owned());
        let mut record = ByteRecord::new();
        let mut tally = Tally::default();
        while table.next(name, &mut record)? {
            if record.iter().all(|cell| cell.trim_ascii().is_empty()) {
                tally.blank += 1;
                if tally.blank > MOST_BLANK_ROWS {
                    let hint = "delete the rows that hold no throw";
                    let found = "there are more than a million blank rows";
                    return Err(SessionError::of_file(name, found, "", hint).at_row(table.line()));
                }
                continue;
            }
            let place = Place { file, row: table.line() };
            self.take_row(name, &plan, &record, &table.header, place, &mut tally)?;
            tally.give_up_if_hopeless(name, tally.rows % PATIENCE == 0)?;
            if tally.rows % REPORT_EVERY == 0 {
                (self.options.progress)(self.bytes_before + table.bytes_read());
            }
        }
        self.bytes_before += table.bytes_read();
        if tally.rows == 0 {
            let hint = "export the throws again, or leave this file out";
            return Err(SessionError::of_file(
                name,
                "there are no throws below the header",
                "a row for each throw",
                hint,
            ));
        }
        tally.give_up_if_hopeless(name, true)
    }

    fn take_row(
        &mut self,
        name: &str,
        plan: &Plan,
        record: &ByteRecord,
        header: &ByteRecord,
        place: Place,
        tally: &mut Tally,
    ) -> Result<(), SessionError> {
        tally.rows += 1;
        let outcome = if record == header { Err(Reason::RepeatedHeader) } else { self.throw(plan, record, place) };
        match outcome {
            Ok(throw) => self.session.throws.push(throw),
            Err(reason) => {
                tally.count(place.row, &reason);
                self.session.set_aside.push(SetAside { place, reason });
            }
        }
        let too_much = |what: &str, hint: &str| Err(SessionError::of_file(name, what, "", hint).at_row(place.row));
        if self.session.throws.len() > MOST_THROWS {
            return too_much("there are more than 2 million throws", "give one season at a time");
        }
        if [&self.days, &self.labels, &self.grips].iter().any(|words| words.are_too_many()) {
            return too_much(
                "there are more than 5000 different dates, pitch labels or grips, or more than 1 MiB of them",
                "the column map points at the wrong column; --explain-columns shows what each holds",
            );
        }
        Ok(())
    }

    fn throw(&mut self, plan: &Plan, record: &ByteRecord, place: Place) -> Result<Throw, Reason> {
        use Quantity as Q;
        let speed = plan.needed(record, Q::Speed)?;
        let vertical = plan.needed(record, Q::VerticalBreak)?;
        let glove_side = plan.needed(record, Q::GloveSideBreak)?;
        let spin = SpinReading {
            rpm: plan.number(record, Q::Spin)?,
            active_fraction: plan.number(record, Q::ActiveFraction)?,
            clock: plan.clock(record, self.session.hand)?,
        };
        let release = ReleaseReading {
            height_ft: plan.number(record, Q::ReleaseHeight)?,
            side_ft: plan.number(record, Q::ReleaseSide)?,
            extension_ft: plan.number(record, Q::Extension)?,
        };
        let plate = PlateReading {
            side_in: plan.number(record, Q::PlateSide)?,
            height_in: plan.number(record, Q::PlateHeight)?,
        };
        let (speed_mph, vertical_break_in, glove_side_break_in) = self.full_flight.restore(speed, vertical, glove_side);
        plan.check_restored(record, Q::Speed, speed_mph)?;
        plan.check_restored(record, Q::VerticalBreak, vertical_break_in)?;
        plan.check_restored(record, Q::GloveSideBreak, glove_side_break_in)?;
        let read = Shape { speed_mph, vertical_break_in, glove_side_break_in };
        let shape = self.against.drag_free(read, release_point(release.or_ordinary()), plate.or_usual(), self.air);
        let file = usize::from(place.file);
        let day = cells::day(plan.text(record, Q::Date).unwrap_or(self.session.files[file].as_bytes()));
        Ok(Throw {
            place,
            day: self.days.index(day),
            shape,
            spin,
            release,
            plate,
            label: plan.text(record, Q::Pitch).map(|word| self.labels.index(word)),
            grip: plan.text(record, Q::Grip).map(|word| self.grips.index(word)),
            batter_side: plan.text(record, Q::BatterSide).and_then(|word| cells::side(word, self.session.hand)),
            outcome: plan.text(record, Q::Outcome).and_then(|word| self.outcome(word)),
            wobble: plan.text(record, Q::Wobble).and_then(cells::yes_or_no),
        })
    }

    fn outcome(&mut self, word: &[u8]) -> Option<crate::athlete::session::Outcome> {
        let outcome = cells::outcome(word, &self.options.map.outcomes);
        if outcome.is_none() && (self.unread_outcomes.len() < 20 || self.unread_outcomes.contains_key(word)) {
            *self.unread_outcomes.entry(word.to_vec()).or_default() += 1;
        }
        outcome
    }
}

/// Different words and their numbers, in the order met.
#[derive(Default)]
struct Words {
    met: Vec<String>,
    bytes: usize,
    index: HashMap<Vec<u8>, u16>,
    latest: u16,
}

impl Words {
    fn index(&mut self, word: &[u8]) -> u16 {
        let is_latest = self.met.get(usize::from(self.latest)).is_some_and(|latest| latest.as_bytes() == word);
        if !is_latest {
            self.latest = self.index.get(word).copied().unwrap_or_else(|| self.learn(word));
        }
        self.latest
    }

    fn learn(&mut self, word: &[u8]) -> u16 {
        let next = u16::try_from(self.met.len()).unwrap_or(u16::MAX);
        self.index.insert(word.to_vec(), next);
        self.met.push(visible(&String::from_utf8_lossy(word)));
        self.bytes += word.len();
        next
    }

    fn are_too_many(&self) -> bool {
        self.met.len() > MOST_WORDS.0 || self.bytes > MOST_WORDS.1
    }
}

/// How many rows there were, how many of them cannot be read, and the first of those.
#[derive(Default)]
struct Tally {
    rows: usize,
    blank: usize,
    bad: usize,
    first: Option<(u32, Reason)>,
}

impl Tally {
    fn count(&mut self, row: u32, reason: &Reason) {
        self.bad += 1;
        if self.first.is_none() {
            self.first = Some((row, reason.clone()));
        }
    }

    fn give_up_if_hopeless(&self, name: &str, is_due: bool) -> Result<(), SessionError> {
        match &self.first {
            Some((row, reason)) if is_due && self.bad * 2 > self.rows => Err(self.hopeless(name, *row, reason)),
            _ => Ok(()),
        }
    }

    fn hopeless(&self, name: &str, row: u32, reason: &Reason) -> SessionError {
        let share = format!("{} of {} rows cannot be used", self.bad, self.rows);
        let (column, found, allowed) = match reason {
            Reason::Missing { column } => (Some(column), format!("empty ({share})"), "a number".to_owned()),
            Reason::Unreadable { column, found } => {
                (Some(column), format!("\"{found}\" ({share})"), "a number".to_owned())
            }
            Reason::Impossible { column, found, allowed } => {
                (Some(column), format!("{found} ({share})"), allowed.clone())
            }
            other => (None, format!("{other} ({share})"), "a throw".to_owned()),
        };
        let hint = "check the column map and its units; --explain-columns proposes a map for this file";
        let error = SessionError::of_file(name, found, allowed, hint).at_row(row);
        match column {
            Some(column) => error.in_column(column),
            None => error,
        }
    }
}

//! Session files: rows of any export into throws.
//!
//! Each row either becomes a throw or is set aside with its row number and reason; blank rows are
//! skipped. A file is refused as a whole when it names no columns we need, when it holds no row at
//! all, or when too many of its rows cannot be used ([`super::tally`]): then something is wrong with
//! the map and not with the rows. What one row says is in [`super::throw_row`].

use std::io::Read;
use std::path::PathBuf;

use csv::ByteRecord;

use super::columns::ColumnMap;
use super::error::InputError;
use super::file;
use super::misfit::misfit;
use super::numbers::Mark;
use super::plan::Plan;
use super::quantity::Quantity;
use super::session_error::SessionError;
use super::table::{Table, never_closed};
use super::tally::Tally;
use super::throw_row::Rows;
use crate::athlete::session::{Place, Reason, Session, SetAside};
use crate::base::geometry::Hand;

/// Rows after which a file of mostly unusable rows is given up, again and again.
const PATIENCE: usize = 2000;
/// The most rows set aside: each is remembered with its reason.
const MOST_SET_ASIDE: usize = 250_000;
/// The most rows of nothing, such as a spreadsheet saves below its table.
const MOST_BLANK_ROWS: usize = 1_000_000;
/// Rows between two reports of progress.
const REPORT_EVERY: usize = 1 << 15;

/// The most throws of all files together: more than a league throws in a season.
pub const MOST_THROWS: usize = 2_000_000;

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
/// When a file cannot be opened or read, lacks a column, holds no throws, is mostly unusable, or when
/// the throws are by more than one pitcher.
pub fn read_sessions(paths: &[PathBuf], options: ReadOptions) -> Result<Session, InputError> {
    let mut reading = Reading::new(options);
    for path in paths {
        let (name, bytes) = file::source(path)?;
        reading.read(&name, bytes)?;
    }
    Ok(reading.finish()?)
}

/// Reads one session from bytes; `name` is the file name shown in errors and reports.
///
/// # Errors
/// As [`read_sessions`].
pub fn session_from_bytes(name: &str, bytes: impl Read, options: ReadOptions) -> Result<Session, InputError> {
    let mut reading = Reading::new(options);
    reading.read(name, bytes)?;
    Ok(reading.finish()?)
}

struct Reading<'a> {
    options: ReadOptions<'a>,
    session: Session,
    rows: Rows,
    notes: Vec<String>,
    bytes_before: u64,
}

impl<'a> Reading<'a> {
    fn new(options: ReadOptions<'a>) -> Self {
        let hand = options.hand.or(options.map.hand);
        let session = Session { hand, weather: options.map.weather, ..Session::default() };
        Self { rows: Rows::new(&options.map, hand), options, session, notes: Vec::new(), bytes_before: 0 }
    }

    fn finish(mut self) -> Result<Session, SessionError> {
        let order = self.options.map.date_order;
        let told = self.rows.settle(&mut self.session, order)?;
        self.session.notes = self.notes.into_iter().chain(told).collect();
        Ok(self.session)
    }

    fn read(&mut self, name: &str, bytes: impl Read) -> Result<(), InputError> {
        let map = &self.options.map;
        let mut table = Table::open(name, bytes, map.separator)?;
        let mark = map.decimal_comma.map_or(table.mark, |is_comma| if is_comma { Mark::Comma } else { Mark::Point });
        let plan = Plan::new(name, &table.header, map, self.session.hand, mark)?;
        self.note_columns(name, &plan, &table);
        let file = u16::try_from(self.session.files.len()).unwrap_or(u16::MAX);
        self.session.files.push(name.to_owned());
        let (mut record, mut tally) = (ByteRecord::new(), Tally::default());
        while table.next(name, &mut record)? {
            let place = Place { file, row: table.line() };
            if record.iter().all(|cell| cell.trim_ascii().is_empty()) {
                count_blank(name, place, &mut tally)?;
                continue;
            }
            if table.latest_spans_lines() && plan.swallowed_a_row(&record, table.separator) {
                return Err(never_closed(name, place.row, &record).into());
            }
            self.make_room(name)?;
            self.take_row(name, &plan, &record, &table, place, &mut tally)?;
            if tally.rows % PATIENCE == 0 {
                tally.give_up_if_hopeless(name)?;
            }
            if tally.rows % REPORT_EVERY == 0 {
                (self.options.progress)(self.bytes_before + table.bytes_read());
            }
        }
        self.bytes_before += table.bytes_read();
        if tally.rows == 0 {
            let hint = "export the throws again, or leave this file out";
            let found = "there are no throws below the header";
            return Err(SessionError::of_file(name, found, "a row for each throw", hint).into());
        }
        Ok(tally.give_up_if_hopeless(name)?)
    }

    /// Room for one more throw; where the machine has none, that is said and nothing breaks.
    fn make_room(&mut self, name: &str) -> Result<(), InputError> {
        let throws = &mut self.session.throws;
        if throws.len() < throws.capacity() {
            return Ok(());
        }
        let more = throws.len().clamp(1024, MOST_THROWS);
        throws.try_reserve_exact(more).map_err(|_| InputError::Exhausted { origin: name.to_owned(), what: "memory" })
    }

    /// Columns that sound like ours are told, unless a map chose the columns.
    fn note_columns(&mut self, name: &str, plan: &Plan, table: &Table) {
        let is_own = |quantity: &Quantity| {
            self.options.map.columns.get(quantity).is_some_and(|column| column.header == quantity.header())
        };
        if Quantity::NEEDED.iter().all(is_own) {
            self.notes.extend(plan.note(&table.header).map(|note| format!("{name}: {note}")));
        }
    }

    fn take_row(
        &mut self,
        name: &str,
        plan: &Plan,
        record: &ByteRecord,
        table: &Table,
        place: Place,
        tally: &mut Tally,
    ) -> Result<(), SessionError> {
        tally.rows += 1;
        let unfit = || misfit(record, &table.header, table.separator);
        let outcome = if record == &table.header {
            Err(Reason::RepeatedHeader)
        } else if let Some(reason) = unfit() {
            Err(reason)
        } else if self.rows.is_of_another(plan, record, place) {
            return Ok(());
        } else {
            self.rows.throw(plan, record, place, &self.session.files)
        };
        match outcome {
            Ok(throw) => self.session.throws.push(throw),
            Err(reason) => {
                tally.count(place.row, &reason);
                self.session.set_aside.push(SetAside { place, reason });
            }
        }
        self.refuse_too_much(name, place)
    }

    fn refuse_too_much(&self, name: &str, place: Place) -> Result<(), SessionError> {
        let too_much = |what: &str, hint: &str| Err(SessionError::of_file(name, what, "", hint).at_row(place.row));
        if self.session.throws.len() > MOST_THROWS {
            return too_much("there are more than 2 million throws", "give one season at a time");
        }
        if self.session.set_aside.len() > MOST_SET_ASIDE {
            let hint = "check the column map and its units; --explain-columns proposes a map for this file";
            return too_much("there are more than 250,000 rows that cannot be used", hint);
        }
        if self.rows.has_too_many_words() {
            return too_much(
                "there are more than 5000 different dates, pitch labels, grips or pitchers, or more than 1 MiB of them",
                "the column map points at the wrong column; --explain-columns shows what each holds",
            );
        }
        Ok(())
    }
}

fn count_blank(name: &str, place: Place, tally: &mut Tally) -> Result<(), SessionError> {
    tally.blank += 1;
    if tally.blank <= MOST_BLANK_ROWS {
        return Ok(());
    }
    let found = "there are more than a million blank rows";
    Err(SessionError::of_file(name, found, "", "delete the rows that hold no throw").at_row(place.row))
}

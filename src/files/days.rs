//! The days of the throws: every date of the files read together, so that one order of day and
//! month is settled for all of them and told.
//!
//! A date becomes the same text (`2031-02-03`) however it was written, and a throw's time never
//! makes a day of its own. Words that are no date stay days by their own name.

use std::collections::HashMap;

use jiff::civil::Date;

use super::dates::{Order, Parted, Reading, part, reading};
use super::error::visible;
use super::session_error::{SessionError, excerpt};
use crate::athlete::session::Place;

/// The days met so far.
#[derive(Default)]
pub(super) struct Days {
    met: Vec<Met>,
    bytes: usize,
    index: HashMap<Vec<u8>, u16>,
    latest: u16,
    undated: usize,
    has_utc: bool,
}

/// A day as written, and where first.
struct Met {
    text: String,
    place: Place,
    /// Named by its file, because the throws tell no day.
    is_file: bool,
}

/// The days once all are known.
pub(super) struct Settled {
    /// Each day once, in the order met.
    pub(super) days: Vec<String>,
    /// For each day met, which of `days` it is.
    pub(super) places: Vec<u16>,
    /// What there is to tell, one sentence each.
    pub(super) notes: Vec<String>,
}

impl Days {
    /// The day of a throw: its date cell, or its file when that says nothing.
    pub(super) fn index(&mut self, cell: Option<&[u8]>, file: &str, place: Place) -> u16 {
        let parted = cell.map(part).filter(|parted| !parted.day.is_empty());
        let Some(Parted { day, is_utc }) = parted else {
            self.undated += 1;
            return self.known(file.as_bytes(), place, true);
        };
        self.has_utc |= is_utc;
        self.known(day, place, false)
    }

    fn known(&mut self, word: &[u8], place: Place, is_file: bool) -> u16 {
        let latest = self.met.get(usize::from(self.latest));
        if latest.is_none_or(|met| met.text.as_bytes() != word || met.is_file != is_file) {
            let found = self.index.get(word).copied().filter(|at| self.met[usize::from(*at)].is_file == is_file);
            self.latest = found.unwrap_or_else(|| self.learn(word, place, is_file));
        }
        self.latest
    }

    fn learn(&mut self, word: &[u8], place: Place, is_file: bool) -> u16 {
        let next = u16::try_from(self.met.len()).unwrap_or(u16::MAX);
        self.index.insert(word.to_vec(), next);
        self.met.push(Met { text: visible(&String::from_utf8_lossy(word)), place, is_file });
        self.bytes += word.len();
        next
    }

    /// How many different ones there are, and their bytes.
    pub(super) fn size(&self) -> (usize, usize) {
        (self.met.len(), self.bytes)
    }

    /// Settles the order of day and month, by what the column map says or else by what fits every date.
    pub(super) fn settle(self, told: Option<Order>, files: &[String]) -> Result<Settled, SessionError> {
        let readings: Vec<Reading> =
            self.met.iter().map(|met| if met.is_file { Reading::Name } else { reading(&met.text) }).collect();
        let (order, note) = self.order(&readings, told, files)?;
        let mut notes: Vec<String> = note.into_iter().collect();
        notes.extend(self.other_notes(&readings));
        let (mut days, mut places, mut known) = (Vec::new(), Vec::new(), HashMap::new());
        for (met, reading) in self.met.iter().zip(&readings) {
            let day = date_of(*reading, order).map_or_else(|| met.text.clone(), |date| date.to_string());
            let place = *known.entry(day.clone()).or_insert_with(|| {
                days.push(day);
                u16::try_from(days.len() - 1).unwrap_or(u16::MAX)
            });
            places.push(place);
        }
        Ok(Settled { days, places, notes })
    }

    /// The order of all dates that need one, and how it was found.
    fn order(
        &self,
        readings: &[Reading],
        told: Option<Order>,
        files: &[String],
    ) -> Result<(Order, Option<String>), SessionError> {
        let open: Vec<(&Met, [Option<Date>; 3])> = (self.met.iter().zip(readings))
            .filter_map(|(met, reading)| if let Reading::ByOrder(days) = reading { Some((met, *days)) } else { None })
            .collect();
        let Some((first, first_days)) = open.first() else { return Ok((told.unwrap_or(Order::Month), None)) };
        let misses = |order: Order| open.iter().find(|(_, days)| days[order as usize].is_none()).map(|(met, _)| *met);
        if let Some(order) = told {
            return misses(order).map_or(Ok((order, None)), |met| Err(other_order(met, order, files)));
        }
        let fitting: Vec<Order> = Order::ALL.into_iter().filter(|&order| misses(order).is_none()).collect();
        let has_dots = open.iter().all(|(met, _)| met.text.contains('.'));
        let order = match fitting[..] {
            [] => {
                return Err(two_orders(first, misses(Order::Month).unwrap_or(first), misses(Order::Day), files));
            }
            // Dates with points between have the day first wherever they are written.
            _ if has_dots && fitting.contains(&Order::Day) => Order::Day,
            [only, ..] => only,
        };
        let shown = first_days[order as usize].map_or_else(String::new, |date| date.to_string());
        let proof = Order::ALL.into_iter().filter(|&other| other != order).find_map(misses);
        let why = match (fitting.len(), proof) {
            (1, Some(met)) if met.text == first.text => "the only order the calendar allows".into(),
            (1, Some(met)) => format!("as \"{}\" must be", met.text),
            _ => format!(
                "which nothing in the files settles; if that is wrong, say [date] order = \"{}\" in the column map",
                if order == Order::Day { Order::Month } else { Order::Day }.name()
            ),
        };
        Ok((order, Some(format!("dates such as \"{}\" are read {} ({shown}), {why}", first.text, order.words()))))
    }

    fn other_notes(&self, readings: &[Reading]) -> Vec<String> {
        let lost: Vec<&Met> = self
            .met
            .iter()
            .zip(readings)
            .filter(|(_, reading)| **reading == Reading::NoSuchDay)
            .map(|(met, _)| met)
            .collect();
        let lost = lost.first().map(|met| {
            format!("\"{}\" is no day of the calendar from 1900 to 2199 and is kept as a day by that name", met.text)
        });
        let undated = (self.undated > 0 && self.met.iter().any(|met| !met.is_file)).then(|| {
            format!("{} throws have no date and are taken as thrown on one day, named by their file", self.undated)
        });
        let utc = self.has_utc.then(|| {
            "some times are those of Greenwich (UTC), and so are the days: an evening may be counted to the day after".into()
        });
        [lost, undated, utc].into_iter().flatten().collect()
    }
}

fn date_of(reading: Reading, order: Order) -> Option<Date> {
    match reading {
        Reading::Clear(date) => Some(date),
        Reading::ByOrder(days) => days[order as usize],
        Reading::NoSuchDay | Reading::Name => None,
    }
}

fn of_day(met: &Met, found: String, allowed: &str, hint: &str, files: &[String]) -> SessionError {
    let file = files.get(usize::from(met.place.file)).map_or("", String::as_str);
    SessionError::of_file(file, found, allowed, hint).at_row(met.place.row)
}

fn other_order(met: &Met, order: Order, files: &[String]) -> SessionError {
    let found = format!("the date is \"{}\"", excerpt(met.text.as_bytes()));
    let allowed = format!("a day of the calendar with the {}, as the column map says", order.words());
    of_day(met, found, &allowed, "mend the date, or [date] order in the column map", files)
}

fn two_orders(first: &Met, one: &Met, other: Option<&Met>, files: &[String]) -> SessionError {
    let other = other.unwrap_or(first);
    let [one_text, other_text] = [one, other].map(|met| excerpt(met.text.as_bytes()));
    let found =
        format!("the dates are \"{one_text}\" and \"{other_text}\", and no one order of day and month reads both");
    let hint = "write every date in one way, best as 2031-02-03";
    let later = if (one.place.file, one.place.row) > (other.place.file, other.place.row) { one } else { other };
    of_day(later, found, "dates in one order", hint, files)
}

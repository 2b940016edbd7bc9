//! One row of a session file as a throw, and what is remembered from row to row: days, labels, grips,
//! pitchers, and words that are not known here.
//!
//! Cells are found and turned into our units by [`super::plan`].

use csv::ByteRecord;

use super::cells;
use super::columns::ColumnMap;
use super::dates::Order;
use super::days::Days;
use super::plan::Plan;
use super::quantity::Quantity as Q;
use super::session_error::SessionError;
use super::session_words::{Pitchers, Unread, Words};
use super::trade_words::Stands;
use crate::athlete::session::{
    FullFlight, Outcome, Place, PlateReading, Reason, ReleaseReading, Session, SpinReading, Throw,
};
use crate::ball::flight::Air;
use crate::ball::flight::inverse::release_point;
use crate::ball::{Against, Shape};
use crate::base::geometry::{Hand, Side};

/// The most different labels, grips, days or pitchers, and the most bytes each kind may have.
const MOST_WORDS: (usize, usize) = (5000, 1024 * 1024);
/// More days than this with fewer than two throws each are no days, but something else in the column.
const MOST_LONE_DAYS: usize = 20;

/// What turns rows into throws.
pub(super) struct Rows {
    full_flight: FullFlight,
    against: Against,
    air: Air,
    hand: Option<Hand>,
    outcomes: std::collections::BTreeMap<String, Outcome>,
    days: Days,
    labels: Words,
    grips: Words,
    pitchers: Pitchers,
    unread: Unread,
    /// The files' own names of the columns whose words may be unknown.
    headers: [String; 3],
}

/// The columns whose words may be unknown.
const OF_WORDS: [Q; 3] = [Q::BatterSide, Q::Outcome, Q::Wobble];

impl Rows {
    pub(super) fn new(map: &ColumnMap, hand: Option<Hand>) -> Self {
        Self {
            full_flight: FullFlight::new(map.measured()),
            against: map.against.unwrap_or_default(),
            air: map.weather.map_or(Air::SEA_LEVEL, Air::of),
            hand,
            outcomes: map.outcomes.clone(),
            days: Days::default(),
            labels: Words::default(),
            grips: Words::default(),
            pitchers: Pitchers::new(map.pitcher.as_deref()),
            unread: Unread::default(),
            headers: OF_WORDS.map(|quantity| quantity.header().to_owned()),
        }
    }

    /// Whether the row is by a pitcher who was not asked for.
    pub(super) fn is_of_another(&mut self, plan: &Plan, record: &ByteRecord, place: Place) -> bool {
        plan.has(Q::Pitcher) && !self.pitchers.takes(plan.text(record, Q::Pitcher), place)
    }

    pub(super) fn has_too_many_words(&self) -> bool {
        let sizes = [self.days.size(), self.labels.size(), self.grips.size(), (self.pitchers.count(), 0)];
        sizes.into_iter().any(|(words, bytes)| words > MOST_WORDS.0 || bytes > MOST_WORDS.1)
    }

    /// The throw, or why the row is none.
    pub(super) fn throw(
        &mut self,
        plan: &Plan,
        record: &ByteRecord,
        place: Place,
        files: &[String],
    ) -> Result<Throw, Reason> {
        let read = self.shape(plan, record)?;
        let spin = SpinReading {
            rpm: plan.number(record, Q::Spin)?,
            active_fraction: plan.number(record, Q::ActiveFraction)?,
            clock: plan.clock(record, self.hand)?,
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
        let shape = self.against.drag_free(read, release_point(release.or_ordinary()), plate.or_usual(), self.air);
        Ok(Throw {
            place,
            day: self.days.index(plan.text(record, Q::Date), &files[usize::from(place.file)], place),
            shape,
            spin,
            release,
            plate,
            label: plan.text(record, Q::Pitch).map(|word| self.labels.index(word)),
            grip: plan.text(record, Q::Grip).map(|word| self.grips.index(word)),
            batter_side: plan.text(record, Q::BatterSide).and_then(|word| self.side(plan, word)),
            outcome: self.known(plan, record, Q::Outcome, |rows, word| cells::outcome(word, &rows.outcomes)),
            wobble: self.known(plan, record, Q::Wobble, |_, word| cells::yes_or_no(word)),
        })
    }

    /// The shape of the full flight, counted as the file counts it.
    fn shape(&self, plan: &Plan, record: &ByteRecord) -> Result<Shape, Reason> {
        let speed = plan.needed(record, Q::Speed)?;
        let vertical = plan.needed(record, Q::VerticalBreak)?;
        let glove_side = plan.needed(record, Q::GloveSideBreak)?;
        let (speed_mph, vertical_break_in, glove_side_break_in) = self.full_flight.restore(speed, vertical, glove_side);
        plan.check_restored(record, Q::Speed, speed_mph)?;
        plan.check_restored(record, Q::VerticalBreak, vertical_break_in)?;
        plan.check_restored(record, Q::GloveSideBreak, glove_side_break_in)?;
        Ok(Shape { speed_mph, vertical_break_in, glove_side_break_in })
    }

    /// What a word means; one that is not known is counted.
    fn known<T>(
        &mut self,
        plan: &Plan,
        record: &ByteRecord,
        quantity: Q,
        meaning: impl Fn(&Self, &[u8]) -> Option<T>,
    ) -> Option<T> {
        let word = plan.text(record, quantity)?;
        let found = meaning(self, word);
        if found.is_none() {
            self.not_known(plan, quantity, word);
        }
        found
    }

    fn side(&mut self, plan: &Plan, word: &[u8]) -> Option<Side> {
        match (cells::stands(word), self.hand) {
            (Some(Stands::On(side)), _) => Some(side),
            (Some(Stands::Bats(bats)), Some(throws)) => Some(cells::side_of(bats, throws)),
            (Some(Stands::Bats(_)), None) => {
                self.unread.hands += 1;
                None
            }
            (None, _) => {
                self.not_known(plan, Q::BatterSide, word);
                None
            }
        }
    }

    fn not_known(&mut self, plan: &Plan, quantity: Q, word: &[u8]) {
        self.unread.count(quantity, word);
        if let Some(place) = OF_WORDS.iter().position(|of| *of == quantity) {
            self.headers[place] = plan.header(quantity);
        }
    }

    /// Gives the session its days, labels and grips; what there is to tell of them, one sentence each.
    pub(super) fn settle(self, session: &mut Session, order: Option<Order>) -> Result<Vec<String>, SessionError> {
        let about_pitchers = self.pitchers.settle(&session.files)?;
        let settled = self.days.settle(order, &session.files)?;
        for throw in &mut session.throws {
            throw.day = settled.places[usize::from(throw.day)];
        }
        session.days = settled.days;
        session.labels = self.labels.met;
        session.grips = self.grips.met;
        refuse_lone_days(session)?;
        let header = |quantity: Q| {
            let place = OF_WORDS.iter().position(|of| *of == quantity);
            place.map_or_else(String::new, |place| self.headers[place].clone())
        };
        Ok(about_pitchers.into_iter().chain(settled.notes).chain(self.unread.notes(header)).collect())
    }
}

/// A time, a number or a name in the column of dates makes every throw its own day.
fn refuse_lone_days(session: &Session) -> Result<(), SessionError> {
    let (days, throws) = (session.days.len(), session.throws.len());
    if days <= MOST_LONE_DAYS || throws >= 2 * days {
        return Ok(());
    }
    let file = session.files.first().map_or("", String::as_str);
    let found = format!(
        "{throws} throws are on {days} different days, such as \"{}\" and \"{}\"",
        session.days[0], session.days[1]
    );
    let hint = "name the column of dates in a column map; --explain-columns shows what each column holds";
    Err(SessionError::of_file(file, found, "days with several throws each", hint))
}

//! One day of the top league, read through the program's own column map, beside what the map does not read.
//!
//! Data: `tests/data/league_day.csv`, 4,418 pitches of 15 games, from the tests of the R package abdwr3edata, companion
//! of *Analyzing Baseball Data with R*, 3rd edition (Marchi, Albert, Baumer); CC0. Names removed, everything turned so
//! that every pitcher is a right-hander.

use arsenalfit::athlete::session::{Session, Throw};
use arsenalfit::ball::{Against, Family};
use arsenalfit::base::Movement;
use arsenalfit::base::geometry::Vec3;
use arsenalfit::files::{ColumnMap, Quantity, ReadOptions, session_from_bytes};
use serde::Deserialize;

const CSV: &str = include_str!("../data/league_day.csv");

/// The columns the map does not read.
#[derive(Debug, Clone, Deserialize)]
pub(crate) struct Row {
    pub(crate) game: u32,
    pub(crate) pitcher: u32,
    pub(crate) pitch: String,
    pub(crate) vertical_break_in: f64,
    pub(crate) glove_side_break_in: f64,
    vx0_50ft: f64,
    vy0_50ft: f64,
    vz0_50ft: f64,
    ax_50ft: f64,
    ay_50ft: f64,
    az_50ft: f64,
}

impl Row {
    /// The label as a family; the day's labels are ours.
    pub(crate) fn family(&self) -> Family {
        Family::from_name(&self.pitch).expect("a known label")
    }

    /// Movement without drag's share, as the file has it.
    pub(crate) fn movement(&self) -> Movement {
        Movement { glove_side_in: self.glove_side_break_in, up_in: self.vertical_break_in }
    }

    /// Velocity at 50 ft and acceleration, ft/s and ft/s².
    pub(crate) fn kinematics(&self) -> (Vec3, Vec3) {
        (Vec3::new(self.vx0_50ft, self.vy0_50ft, self.vz0_50ft), Vec3::new(self.ax_50ft, self.ay_50ft, self.az_50ft))
    }
}

/// Every pitch of the day: the throw as the program reads it, and its row.
pub(crate) fn pitches(against: Against) -> Vec<(Throw, Row)> {
    let rows: Vec<Row> =
        csv::Reader::from_reader(CSV.as_bytes()).deserialize().collect::<Result<_, _>>().expect("complete rows");
    let session = session(against);
    assert_eq!(session.throws.len(), rows.len(), "no row is set aside: {:?}", session.set_aside.first());
    session.throws.into_iter().zip(rows).collect()
}

/// The day as the program reads it, by the columns of movement counted against `against`.
pub(crate) fn session(against: Against) -> Session {
    let mut map = ColumnMap::from_toml(include_str!("../data/league_day_columns.toml"), "columns").expect("a map");
    if against == Against::Gravity {
        map.against = Some(against);
        for quantity in [Quantity::VerticalBreak, Quantity::GloveSideBreak] {
            let column = map.columns.get_mut(&quantity).expect("a column of movement");
            column.header = column.header.replace("_break_in", "_break_gravity_in");
        }
    }
    let options = ReadOptions { map, hand: None, progress: &mut |_| {} };
    // The pitchers stay together: a session is of one, unless no column says whose throws they are.
    let anonymous = CSV.replacen("game,pitcher,", "game,arm,", 1);
    session_from_bytes("league_day.csv", anonymous.as_bytes(), options).expect("a session")
}

/// The families of the day, as its labels name them.
pub(crate) const FAMILIES: [Family; 8] = [
    Family::FourSeam,
    Family::Sinker,
    Family::Cutter,
    Family::Slider,
    Family::Sweeper,
    Family::Curveball,
    Family::Changeup,
    Family::Splitter,
];

/// The mean of some numbers.
pub(crate) fn mean(values: impl IntoIterator<Item = f64>) -> f64 {
    let (sum, count) = values.into_iter().fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    sum / count
}

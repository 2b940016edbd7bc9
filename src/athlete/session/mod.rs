//! Throws as the model sees them: full-flight shapes, hand-free, every number in range.
//!
//! A `Session` is made only by [`crate::files`], which converts units,
//! signs and measured distance and mirrors left-handers. Rows that could not be used stand in
//! [`Session::set_aside`] with their row number and reason: nothing is dropped in silence. What
//! kind of pitch each throw was is not known here; that is [`crate::throws`].

mod full_flight;

use std::fmt;

pub use full_flight::{FullFlight, Measured};

use crate::ball::usual::USUAL_PLACE;
use crate::ball::{Against, Release, Shape, Weather};
use crate::base::Location;
use crate::base::geometry::{Clock, Hand, Side};

/// Throws of one athlete, from one or several files.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Session {
    /// Throwing hand, when it was told: used only to mirror results back for display.
    pub hand: Option<Hand>,
    /// What movement was counted against, when it was told; the shapes here are drag-free in any case.
    pub against: Option<Against>,
    /// The air of the measurements, when it was told.
    pub weather: Option<Weather>,
    /// The files read, as they were named.
    pub files: Vec<String>,
    /// The days thrown on, in the order met: dates as 2031-02-03, other words as written, or the file's name.
    pub days: Vec<String>,
    /// The pitch labels met, as written.
    pub labels: Vec<String>,
    /// The grips met, as written.
    pub grips: Vec<String>,
    /// Every usable throw, in reading order.
    pub throws: Vec<Throw>,
    /// Every row that cannot be used, and why.
    pub set_aside: Vec<SetAside>,
    /// What could not be understood in usable rows, one plain sentence each.
    pub notes: Vec<String>,
}

/// One throw: where it was written, what the ball did, and whatever else was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Throw {
    /// Where it was written.
    pub place: Place,
    /// Index into [`Session::days`].
    pub day: u16,
    /// Release speed and full-flight breaks.
    pub shape: Shape,
    /// How it spun.
    pub spin: SpinReading,
    /// Where it left the hand.
    pub release: ReleaseReading,
    /// Where it crossed the plate.
    pub plate: PlateReading,
    /// Index into [`Session::labels`].
    pub label: Option<u16>,
    /// Index into [`Session::grips`].
    pub grip: Option<u16>,
    /// Where the hitter stood.
    pub batter_side: Option<Side>,
    /// What came of it.
    pub outcome: Option<Outcome>,
    /// Whether the ball wobbled, when somebody noted it.
    pub wobble: Option<bool>,
}

/// A line of a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub struct Place {
    /// Index into [`Session::files`].
    pub file: u16,
    /// Line of the file on which the row begins; the header is line 1.
    pub row: u32,
}

/// Measured spin of one throw, as a right-hander's.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SpinReading {
    /// Total spin.
    pub rpm: Option<f64>,
    /// Share of the spin at right angles to the flight.
    pub active_fraction: Option<f64>,
    /// Which way the spin pushes.
    pub clock: Option<Clock>,
}

/// Measured release of one throw.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ReleaseReading {
    /// Height above the plate's level.
    pub height_ft: Option<f64>,
    /// Distance from the middle line to the arm side.
    pub side_ft: Option<f64>,
    /// Distance in front of the rubber.
    pub extension_ft: Option<f64>,
}

/// Where one throw crossed the front of the plate.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PlateReading {
    /// From the middle of the plate toward the pitcher's glove side.
    pub side_in: Option<f64>,
    /// Height.
    pub height_in: Option<f64>,
}

impl ReleaseReading {
    /// The release, an ordinary arm's where it was not measured.
    pub fn or_ordinary(self) -> Release {
        let usual = Release::ORDINARY;
        Release {
            height_ft: self.height_ft.unwrap_or(usual.height_ft),
            side_ft: self.side_ft.unwrap_or(usual.side_ft),
            extension_ft: self.extension_ft.unwrap_or(usual.extension_ft),
            ..usual
        }
    }
}

impl PlateReading {
    /// The place, where pitches cross on average when it was not measured.
    pub fn or_usual(self) -> Location {
        Location {
            glove_side_in: self.side_in.unwrap_or(USUAL_PLACE.glove_side_in),
            height_in: self.height_in.unwrap_or(USUAL_PLACE.height_in),
        }
    }
}

/// What came of a throw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Outcome {
    /// Taken, outside the zone.
    Ball,
    /// Taken, in the zone.
    CalledStrike,
    /// Swung at and missed.
    SwingAndMiss,
    /// Hit foul (foul tips and bunts too).
    Foul,
    /// Put in play softly.
    WeakContact,
    /// Put in play hard.
    SolidContact,
    /// Put in play; how hard is not known.
    InPlay,
    /// Hit the hitter.
    HitByPitch,
}

impl Outcome {
    /// Every outcome.
    pub const ALL: [Self; 8] = [
        Self::Ball,
        Self::CalledStrike,
        Self::SwingAndMiss,
        Self::Foul,
        Self::WeakContact,
        Self::SolidContact,
        Self::InPlay,
        Self::HitByPitch,
    ];

    /// As written in a session file.
    pub fn name(self) -> &'static str {
        match self {
            Self::Ball => "ball",
            Self::CalledStrike => "called strike",
            Self::SwingAndMiss => "swing and miss",
            Self::Foul => "foul",
            Self::WeakContact => "weak contact",
            Self::SolidContact => "solid contact",
            Self::InPlay => "in play",
            Self::HitByPitch => "hit by pitch",
        }
    }

    /// Whether the hitter swung.
    pub fn is_swing(self) -> bool {
        !matches!(self, Self::Ball | Self::CalledStrike | Self::HitByPitch)
    }
}

/// A row that is not used, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct SetAside {
    /// Where it was written.
    pub place: Place,
    /// Why it is not used.
    pub reason: Reason,
}

/// Why a row is not used.
#[derive(Debug, Clone, PartialEq)]
pub enum Reason {
    /// A needed cell is empty.
    Missing {
        /// The file's own name of the column.
        column: String,
    },
    /// A cell cannot be read as what its column holds.
    Unreadable {
        /// The file's own name of the column.
        column: String,
        /// The cell, shortened.
        found: String,
    },
    /// A number no throw can have.
    Impossible {
        /// The file's own name of the column.
        column: String,
        /// The cell, shortened, and what it means for the whole flight when that is what is not possible.
        found: String,
        /// The range allowed, with its unit.
        allowed: String,
    },
    /// The header once more in the middle of the file.
    RepeatedHeader,
    /// More or fewer cells than the header, so that none can be trusted to stand under its own name.
    Misfit {
        /// Cells of the row.
        cells: usize,
        /// Columns of the header.
        columns: usize,
        /// What made it so, most likely.
        slip: Slip,
    },
    /// The same throw as an earlier row.
    Duplicate {
        /// The earlier row.
        of: Place,
    },
    /// Far slower than anything thrown in earnest that day.
    Lob {
        /// Its speed.
        speed_mph: f64,
        /// The speed below which a throw is not counted.
        floor_mph: f64,
    },
    /// The movement reading did not change from throw to throw: the unit was stuck.
    Stuck {
        /// How many throws in a row carry the same reading.
        run: usize,
    },
    /// More movement than any force on a ball at that speed gives.
    TooMuchMovement {
        /// Its total movement.
        movement_in: f64,
        /// The most that speed allows.
        most_in: f64,
    },
    /// The whole day was measured in a way that no change of zero mends.
    UnreliableDay {
        /// The day as written.
        day: String,
    },
}

/// What makes a row misfit the header.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slip {
    /// Numbers with decimal commas in a file whose cells are parted by commas.
    DecimalCommas,
    /// A text that holds the separator and stands in no quotation marks.
    SeparatorInText,
    /// More values than the header has names.
    TooManyCells,
    /// The row ends early.
    CutShort,
}

impl Reason {
    /// A short word for counting by kind.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Missing { .. } => "missing value",
            Self::Unreadable { .. } => "unreadable value",
            Self::Impossible { .. } => "impossible value",
            Self::RepeatedHeader => "repeated header",
            Self::Misfit { .. } => "cells that do not fit the header",
            Self::Duplicate { .. } => "duplicate",
            Self::Lob { .. } => "lob or warm-up",
            Self::Stuck { .. } => "stuck reading",
            Self::TooMuchMovement { .. } => "impossible movement",
            Self::UnreliableDay { .. } => "unreliable day",
        }
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Missing { column } => write!(f, "{column} is empty"),
            Self::Unreadable { column, found } => write!(f, "{column} is \"{found}\", which cannot be read"),
            Self::Impossible { column, found, allowed } => write!(f, "{column} is {found}; allowed is {allowed}"),
            Self::RepeatedHeader => f.write_str("the header again"),
            Self::Misfit { cells, columns, slip } => {
                let many = if *cells == 1 { "1 cell".to_owned() } else { format!("{cells} cells") };
                write!(f, "{many} under {columns} columns, {slip}")
            }
            Self::Duplicate { of } => write!(f, "the same as row {}", of.row),
            Self::Lob { speed_mph, floor_mph } => {
                write!(f, "{speed_mph:.1} mph is no full throw (below {floor_mph:.1} mph)")
            }
            Self::Stuck { run } => write!(f, "the movement reading stayed the same for {run} throws"),
            Self::TooMuchMovement { movement_in, most_in } => {
                write!(f, "{movement_in:.1} in of movement; at that speed {most_in:.1} in is the most")
            }
            Self::UnreliableDay { day } => write!(f, "day {day} was measured in a way no change of zero mends"),
        }
    }
}

impl fmt::Display for Slip {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::DecimalCommas => "as decimal commas between commas make",
            Self::SeparatorInText => "as a text without quotation marks makes",
            Self::TooManyCells => "more than there are names for",
            Self::CutShort => "so it ends early",
        })
    }
}

//! A day of a league: every throw with what the ball did, who stood there and what came of it.
//!
//! What the program reads too (speed, release, place at the plate) comes through the program's own
//! reader; what it has no columns for (velocities, accelerations, zone, runs) through a small one
//! here. A row with something missing stays a throw: what cannot be said of it is `None`.

mod kinematics;
mod raw;

pub use kinematics::{Flight, GRAVITY_IN_S2};

use std::error::Error;
use std::path::{Path, PathBuf};

use arsenalfit::athlete::session::{Session, Throw as Measured};
use arsenalfit::ball::Family;
use arsenalfit::base::Range;
use arsenalfit::base::geometry::{Hand, Side};
use arsenalfit::files::{ColumnMap, Quantity, ReadOptions, session_from_bytes};

use raw::Raw;

/// Throws of one day, in file order, one for every row.
#[derive(Debug, Clone, Default)]
pub struct Day {
    /// The throws.
    pub throws: Vec<Throw>,
    /// Why the program's reader refused the file as a whole: then no throw was measured.
    pub refused: Option<String>,
}

/// One row of the file.
#[derive(Debug, Clone)]
pub struct Throw {
    /// The game, by its number in order of first mention.
    pub game: usize,
    /// Who threw, as written.
    pub pitcher: String,
    /// The label of the pitch, as written.
    pub label: String,
    /// Where the hitter stood.
    pub side: Option<Side>,
    /// Balls and strikes before the pitch.
    pub count: Option<(u32, u32)>,
    /// What the program's reader made of the row; nothing when it set it aside.
    pub measured: Option<Measured>,
    /// The flight, when velocities and accelerations are there.
    pub flight: Option<Flight>,
    /// Bottom and top of this hitter's zone, inches.
    pub zone_in: Option<Range>,
    /// What came of it.
    pub outcome: Outcome,
    /// Whether a hit ball was hit hard on a useful line; nothing when it was not hit or not measured.
    pub solid: Option<bool>,
    /// Change of the runs to be expected, positive for the hitting side.
    pub runs: Option<f64>,
}

/// What came of a throw, as far as the hitter is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// Taken, not called a strike: balls and hit batters.
    Ball,
    /// Taken, called a strike.
    CalledStrike,
    /// Swung at and missed, foul tips too.
    Miss,
    /// Hit foul.
    Foul,
    /// Hit into play.
    InPlay,
    /// Bunted, pitched out or not understood: says nothing of eyes and bat.
    Other,
}

/// A ball is hit solidly from this speed on (mph), between these angles above the horizon (degrees):
/// the model's definition, near where hit balls begin to be worth extra bases.
const SOLID_MPH: f64 = 95.0;
const SOLID_DEG: (f64, f64) = (-5.0, 35.0);

/// The line below the header.
const FIRST_ROW: u32 = 2;

impl Day {
    /// The league day that is kept with the tests.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub fn league() -> Result<Self, Box<dyn Error>> {
        Self::read(&Self::league_path())
    }

    /// Where the league day is kept.
    pub fn league_path() -> PathBuf {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../data/league_day.csv")
    }

    /// Reads a file with the columns of the league day; spin and runs may be missing.
    ///
    /// # Errors
    /// When the file cannot be read or is no table of comma-separated values with the columns `game`,
    /// `pitcher`, `pitch`, `batter_side` and `outcome`.
    pub fn read(path: &Path) -> Result<Self, Box<dyn Error>> {
        let text = std::fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))?;
        Self::from_text(&path.to_string_lossy(), &text)
    }

    /// As [`Self::read`], from text; `name` is shown in errors.
    ///
    /// # Errors
    /// As [`Self::read`].
    pub fn from_text(name: &str, text: &str) -> Result<Self, Box<dyn Error>> {
        // Line by line, so that both readers count alike.
        let lines: Vec<&str> = text.lines().filter(|line| !line.trim().is_empty()).collect();
        let text = lines.join("\n");
        let options = ReadOptions { map: columns(), hand: Some(Hand::Right), progress: &mut |_| {} };
        let (session, refused) = match session_from_bytes(name, text.as_bytes(), options) {
            Ok(session) => (session, None),
            Err(error) => (Session::default(), Some(error.to_string())),
        };
        let mut games: Vec<String> = Vec::new();
        let mut throws = Vec::new();
        let mut measured = session.throws.into_iter().peekable();
        for (row, raw) in (FIRST_ROW..).zip(raw::rows(&text)?) {
            let raw = raw?;
            let game = games.iter().position(|game| *game == raw.game).unwrap_or_else(|| {
                games.push(raw.game.clone());
                games.len() - 1
            });
            let measured = measured.next_if(|throw| throw.place.row == row);
            throws.push(Throw::of(raw, game, measured));
        }
        Ok(Self { throws, refused })
    }

    /// Number of games.
    pub fn games(&self) -> usize {
        self.throws.iter().map(|throw| throw.game + 1).max().unwrap_or(0)
    }
}

/// What is asked of the program's reader.
const ASKED: [Quantity; 8] = [
    Quantity::Speed,
    Quantity::VerticalBreak,
    Quantity::GloveSideBreak,
    Quantity::ReleaseHeight,
    Quantity::ReleaseSide,
    Quantity::Extension,
    Quantity::PlateSide,
    Quantity::PlateHeight,
];

/// The file's columns under the program's names; everybody in the file is a right-hander.
fn columns() -> ColumnMap {
    let mut map = ColumnMap::default();
    map.columns.retain(|quantity, _| ASKED.contains(quantity));
    if let Some(column) = map.columns.get_mut(&Quantity::PlateSide) {
        column.header = "plate_glove_side_in".into();
    }
    map
}

impl Throw {
    fn of(raw: Raw, game: usize, measured: Option<Measured>) -> Self {
        let outcome = Outcome::from_name(&raw.outcome);
        let extension_ft = measured.and_then(|throw| throw.release.extension_ft);
        Self {
            game,
            side: raw.side(),
            count: raw.balls.zip(raw.strikes),
            measured,
            flight: raw.velocity().zip(raw.acceleration()).and_then(|(v, a)| Flight::of(v, a, extension_ft)),
            zone_in: raw.zone_in(),
            outcome,
            solid: raw.exit_speed_mph.filter(|_| outcome.is_contact()).map(|mph| {
                mph >= SOLID_MPH && raw.launch_deg.is_some_and(|deg| (SOLID_DEG.0..=SOLID_DEG.1).contains(&deg))
            }),
            runs: raw.runs,
            pitcher: raw.pitcher,
            label: raw.pitch,
        }
    }

    /// The family of the label; nothing when the label names none.
    pub fn family(&self) -> Option<Family> {
        Family::from_name(&self.label)
    }
}

impl Outcome {
    fn from_name(name: &str) -> Self {
        match name {
            "ball" | "hit by pitch" => Self::Ball,
            "called strike" => Self::CalledStrike,
            "swing and miss" | "foul tip" => Self::Miss,
            "foul" => Self::Foul,
            "in play" => Self::InPlay,
            _ => Self::Other,
        }
    }

    /// Whether the bat was swung; nothing when the pitch says nothing of eyes and bat.
    pub fn is_swing(self) -> Option<bool> {
        match self {
            Self::Ball | Self::CalledStrike => Some(false),
            Self::Miss | Self::Foul | Self::InPlay => Some(true),
            Self::Other => None,
        }
    }

    /// Whether the bat met the ball.
    pub fn is_contact(self) -> bool {
        matches!(self, Self::Foul | Self::InPlay)
    }
}

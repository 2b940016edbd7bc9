//! A day with everything a fit or a score needs of it.

use std::error::Error;
use std::path::Path;

use arsenalfit::athlete::profile::Level;
use arsenalfit::hitter::{Hitter, Reading, called_strike};

use crate::arsenals::Arsenals;
use crate::day::{Day, Throw};
use crate::fit::{Joint, met};
use crate::league::League;
use crate::losses::Said;
use crate::meetings::{Meeting, meetings};

/// How many parts the games are cut into for cross-validation.
pub const FOLDS: usize = 5;

/// A day and its throws as hitters met them.
#[derive(Debug, Clone)]
pub struct Evidence {
    /// The day.
    pub day: Day,
    /// Its throws, as far as they were measured.
    pub meetings: Vec<Meeting>,
}

impl Evidence {
    /// The league day, small groups pulled to its own league.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn league(path: &Path) -> Result<Self, Box<dyn Error>> {
        let day = Day::read(path)?;
        let league = League::of_day(&day);
        Ok(Self::of(day, &league))
    }

    /// A day, small groups pulled to this league.
    pub fn of(day: Day, league: &League) -> Self {
        let meetings = meetings(&day, &Arsenals::of(&day, league));
        Self { day, meetings }
    }

    /// The throw behind a meeting.
    pub fn throw(&self, meeting: &Meeting) -> &Throw {
        &self.day.throws[meeting.row]
    }
}

/// What the program says of throws: the mean over both readings of shares.
pub fn said(meetings: &[Meeting]) -> Vec<Said> {
    let hitters = Reading::ALL.map(|reading| Hitter::best(Level::Professional, reading));
    let joint = |meeting| Joint::mean(hitters.map(|hitter| met(&hitter, meeting)));
    meetings.iter().map(|meeting| said_with(joint(meeting), meeting)).collect()
}

/// These chances with the called zone's.
pub fn said_with(joint: Joint, meeting: &Meeting) -> Said {
    Said {
        swing: joint.swing,
        contact: joint.contact_given_swing(),
        solid: joint.solid_given_contact(),
        called: called_strike(meeting.ball.arrival.place(), meeting.zone, meeting.side, meeting.group),
    }
}

/// Which part of the games a game is in.
pub fn fold(game: usize) -> usize {
    game % FOLDS
}

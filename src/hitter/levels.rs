//! How hitters of a level differ from professionals: coarser eyes and hands, nothing else.
//!
//! An assumption, for no open data tells it. The factors are set so that an ordinary arsenal of a level costs its
//! hitters as many runs as an ordinary professional one costs professionals (test). The zone stays that of
//! professionals: places are told from its middle, and no open data tells how those of shorter hitters scatter.

use crate::athlete::profile::Level;

use super::{Hitter, Posterior, Reading};

/// What sets the hitters of a level apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LevelFactors {
    /// Factor on every error of the eyes, and of the timing.
    pub eyes: f64,
    /// Factor on every error of the hands.
    pub hands: f64,
}

impl LevelFactors {
    /// The factors of a level: assumptions.
    pub fn of(level: Level) -> Self {
        let both = |factor| Self { eyes: factor, hands: factor };
        match level {
            Level::Professional => both(1.0),
            Level::College => both(1.1),
            Level::HighSchool => both(1.25),
            Level::Youth => both(1.5),
        }
    }
}

impl Hitter {
    /// The likeliest hitter of a level.
    pub fn best(level: Level, reading: Reading) -> Self {
        Self::new(Posterior::under(reading).best(), reading).at_level(level)
    }

    /// Hitters of a level that the throws like about equally: [`super::DRAWS`] of them, always the same.
    pub fn draws(level: Level, reading: Reading) -> Vec<Self> {
        let of = |parameters| Self::new(parameters, reading).at_level(level);
        Posterior::under(reading).draws().iter().copied().map(of).collect()
    }

    fn at_level(self, level: Level) -> Self {
        let LevelFactors { eyes, hands } = LevelFactors::of(level);
        Self { eyes, hands, ..self }
    }
}

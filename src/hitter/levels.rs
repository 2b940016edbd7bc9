//! How hitters of a level differ from professionals: an assumption, for no open data tells it.

use crate::athlete::profile::Level;

use super::{Hitter, Posterior, Reading, Zone};

/// What sets a level apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LevelFactors {
    /// Factor on every error of the eyes, and of the timing.
    pub eyes: f64,
    /// Factor on every error of the hands.
    pub hands: f64,
    /// The zone of the typical hitter.
    pub zone: Zone,
}

impl LevelFactors {
    /// The factors of a level. They are assumptions.
    pub fn of(level: Level) -> Self {
        let alike = |factor| Self { eyes: factor, hands: factor, zone: Zone::TYPICAL };
        match level {
            Level::Professional => alike(1.0),
            Level::College => alike(1.1),
            Level::HighSchool => alike(1.25),
            Level::Youth => alike(1.5),
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
        let LevelFactors { eyes, hands, zone } = LevelFactors::of(level);
        Self { eyes, hands, zone, ..self }
    }
}

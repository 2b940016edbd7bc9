//! The hitter: an ideal observer with noisy eyes and a noisy bat.
//!
//! 1. [`PitchLaw`]: what one pitch looks like at the decision instant and where and when it
//!    arrives, as one joint normal law (the flight linearised about its mean).
//! 2. [`Facing`]: a hitter on one side against a set of pitches. For every pitch and every point of
//!    a fixed even set he sees something, weighs which pitch it is (the pitcher's mix is his
//!    prior), predicts place and time, swings or takes, and hits or misses.
//! 3. [`RunValues`]: what each outcome is worth.
//!
//! What he does not have: memory of the last pitch (published effects are unsettled), a count, a
//! plan, or tiredness.

mod facing;
mod law;
mod outcome;
mod parameters;
mod swing;

pub use facing::{Expected, Facing, Row};
pub use law::{FEATURES, PitchLaw, Setting};
pub use outcome::{Rates, RunValues};
pub use parameters::{FreeParameters, PARAMETERS, Parameter};
pub use swing::{Bat, SwingChoice, ZONE};

use crate::athlete::profile::Level;
use crate::former::eyes::Eyes;

/// Every free parameter of the hitter in one place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hitter {
    /// How he sees.
    pub eyes: Eyes,
    /// When he swings.
    pub choice: SwingChoice,
    /// How he hits.
    pub bat: Bat,
    /// What outcomes are worth.
    pub runs: RunValues,
}

impl Hitter {
    /// The hitter of a level at the middle of the calibrated ensemble.
    pub fn of(level: Level) -> Self {
        Self::at(&FreeParameters::centre(), level)
    }

    /// The hitter of a level at `point`. The calibration is to professionals; below that, eyes and
    /// hands are noisier by a stated factor. The ends are held by published timing: professionals about
    /// 5 ms, an average person about 25 ms (Summers, Natural History); the steps between are this
    /// project's assumption.
    pub fn at(point: &FreeParameters, level: Level) -> Self {
        let factor = match level {
            Level::Professional => 1.0,
            Level::College => 1.15,
            Level::HighSchool => 1.35,
            Level::Youth => 1.7,
        };
        let mut hitter = point.hitter();
        // The familiarity term is one unusual left-hander's, whom same-side hitters hardly ever see.
        // For others geometry alone gives the published order of the families and about the
        // published size (sweeper -0.3 runs per 100, changeup reversed), and the term would swamp it.
        hitter.eyes.same_side_factor = 1.0;
        hitter.noisier(factor, factor)
    }

    /// The same hitter with noisier (or finer) eyes and hands.
    #[must_use]
    pub fn noisier(self, eyes: f64, hands: f64) -> Self {
        Self {
            eyes: Eyes {
                angular_deg: self.eyes.angular_deg * eyes,
                range_weber: self.eyes.range_weber * eyes,
                speed_weber: self.eyes.speed_weber * eyes,
                ..self.eyes
            },
            bat: Bat {
                height_sd: self.bat.height_sd * hands,
                along_sd: self.bat.along_sd * hands,
                timing_sd: self.bat.timing_sd * hands,
                ..self.bat
            },
            ..self
        }
    }
}

//! From a worth to a verdict: the only place for its thresholds.

use crate::base::Range;

use super::worth::Worth;

/// The answer in one word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Add it.
    Add,
    /// Try it before deciding.
    Trial,
    /// Do not add it now.
    NotNow,
    /// Another pitch is better.
    OtherPitch,
}

/// Runs per 100 pitches from which a pitch is added: two and a half runs over a season of 2,500 pitches.
pub const ADD: f64 = 0.10;
/// Runs per 100 pitches from which it is tried.
pub const TRY: f64 = 0.05;
/// What each reading of the hitter must say for the one and for the other.
pub const ADD_BOTH: f64 = 0.05;
const TRY_BOTH: f64 = 0.03;
/// Chance of saving anything from which a pitch is added.
pub const SURE: f64 = 0.75;
/// How much more another pitch must save to be called better, runs per 100.
const CLEARLY_MORE: f64 = 0.05;
/// And in which share of the draws.
const MORE_OFTEN: f64 = 0.6;

/// What keeps a worth from the next better verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shortfall {
    /// It saves too little, runs per 100 pitches.
    TooSmall {
        /// What it would take.
        needed: f64,
    },
    /// One of the two readings of the hitter says too little, runs per 100 pitches.
    ReadingsDiffer {
        /// From the lower to the higher.
        readings: Range,
    },
    /// The chance of saving anything is too low.
    TooUnsure {
        /// What it would take.
        needed: f64,
    },
}

impl Worth {
    /// The verdict on a pitch of this worth that nothing else speaks against.
    pub fn verdict(&self) -> Verdict {
        if self.short_of_adding().is_none() {
            Verdict::Add
        } else if self.short_of_trying().is_none() {
            Verdict::Trial
        } else {
            Verdict::NotNow
        }
    }

    /// Why it is not simply added.
    pub fn short_of_adding(&self) -> Option<Shortfall> {
        self.short_of(ADD, ADD_BOTH).or_else(|| (self.chance < SURE).then_some(Shortfall::TooUnsure { needed: SURE }))
    }

    /// Why it is not even tried.
    pub fn short_of_trying(&self) -> Option<Shortfall> {
        self.short_of(TRY, TRY_BOTH)
    }

    fn short_of(&self, needed: f64, both: f64) -> Option<Shortfall> {
        let readings = Range::new(self.by_reading[0], self.by_reading[1]);
        if self.overall.value < needed {
            Some(Shortfall::TooSmall { needed })
        } else if readings.low < both {
            Some(Shortfall::ReadingsDiffer { readings })
        } else {
            None
        }
    }

    /// In which share of the draws it saves more than `other`.
    pub fn more_often_than(&self, other: &Self) -> f64 {
        let more = self.by_draw.iter().zip(&other.by_draw).filter(|(own, other)| own > other).count();
        more as f64 / self.by_draw.len().max(1) as f64
    }

    /// Whether it is clearly better than `other`, which may be nothing at all.
    pub fn is_clearly_better(&self, other: Option<&Self>) -> bool {
        let value = other.map_or(0.0, |other| other.overall.value);
        let often = other.map_or(self.chance, |other| self.more_often_than(other));
        self.overall.value - value > CLEARLY_MORE && often >= MORE_OFTEN
    }
}

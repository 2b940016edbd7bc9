//! Who hits: his parameters, his zone, the state of the count, and how he reads shares.

use crate::base::Range;

use super::Parameters;

/// The state of the count, as far as it changes what a hitter does: strikes, but for the first pitch and three and
/// nothing. On a league day (2023) groups by strikes told swings of games left out better than groups by who is ahead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CountGroup {
    /// One strike.
    Other,
    /// Nothing and nothing.
    First,
    /// One or two balls and no strike.
    HitterAhead,
    /// Three and nothing.
    ThreeNothing,
    /// Two strikes.
    TwoStrikes,
}

impl CountGroup {
    /// Every group, in order.
    pub const ALL: [Self; 5] = [Self::Other, Self::First, Self::HitterAhead, Self::ThreeNothing, Self::TwoStrikes];

    /// The group of a count.
    pub fn of(balls: u32, strikes: u32) -> Self {
        match (balls, strikes) {
            (_, 2..) => Self::TwoStrikes,
            (0, 0) => Self::First,
            (3.., 0) => Self::ThreeNothing,
            (_, 0) => Self::HitterAhead,
            _ => Self::Other,
        }
    }
}

/// How much the share of a pitch matters to the hitter. The throws cannot tell which is right, so both are asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reading {
    /// A pitch weighs as often as it is thrown.
    Shares,
    /// A pitch weighs mix / (mix + [`Parameters::share_at_half`]): once it is one of the crowd, its share hardly matters.
    Crowd,
}

impl Reading {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Shares, Self::Crowd];
}

/// A hitter's strike zone, by the rules from knees to the middle of the torso.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zone {
    /// Height of its middle, in.
    pub middle_in: f64,
    /// Half its height, in.
    pub half_in: f64,
}

impl Zone {
    /// The mean of the 296 hitters of a league day: from 19.0 (sd 1.3) to 40.3 (2.3) in above the ground (2023 day in the
    /// tests of the R package abdwr3edata, companion of *Analyzing Baseball Data with R*, 3rd edition; CC0).
    pub const TYPICAL: Self = Self { middle_in: 29.65, half_in: 10.66 };

    /// The zone from its bottom to its top, in.
    pub fn of(heights: Range) -> Self {
        Self { middle_in: heights.middle(), half_in: heights.width() / 2.0 }
    }
}

/// One hitter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hitter {
    /// What makes him.
    pub parameters: Parameters,
    /// How he reads shares.
    pub reading: Reading,
    /// His strike zone.
    pub zone: Zone,
    /// Factor on every error of his eyes, and of his timing.
    pub eyes: f64,
    /// Factor on every error of his hands.
    pub hands: f64,
}

impl Hitter {
    /// A professional with these parameters and the typical zone.
    pub fn new(parameters: Parameters, reading: Reading) -> Self {
        Self { parameters, reading, zone: Zone::TYPICAL, eyes: 1.0, hands: 1.0 }
    }

    /// The same hitter with another zone.
    #[must_use]
    pub fn with_zone(self, zone: Zone) -> Self {
        Self { zone, ..self }
    }

    /// Weight of a pitch thrown with this share, before it is seen, and the derivative of it in the share.
    #[inline]
    pub fn weight_of_share(&self, share: f64) -> (f64, f64) {
        match self.reading {
            Reading::Shares => (share, 1.0),
            Reading::Crowd => {
                let half = self.parameters.share_at_half;
                let all = share + half;
                (share / all, half / (all * all))
            }
        }
    }
}

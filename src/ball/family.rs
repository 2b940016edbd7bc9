//! The families of pitches, by the words of the trade.

use std::fmt;

use super::usual::{SeamPush, USUAL_PLACE, Usual};
use crate::base::Location;

/// A pitch family. Names are always spelled out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Family {
    /// The straight fastball, backspin.
    FourSeam,
    /// The running fastball.
    TwoSeam,
    /// The sinking fastball.
    Sinker,
    /// The fastball that cuts to the glove side.
    Cutter,
    /// The hard breaking ball, much bullet spin.
    Slider,
    /// The sweeping breaking ball, much side spin.
    Sweeper,
    /// The breaking ball with topspin.
    Curveball,
    /// The slow pitch with a fastball's arm.
    Changeup,
    /// The slow pitch with little spin.
    Splitter,
    /// The pitch with next to no spin.
    Knuckleball,
}

impl Family {
    /// Every family, in the order they are shown.
    pub const ALL: [Self; 10] = [
        Self::FourSeam,
        Self::TwoSeam,
        Self::Sinker,
        Self::Cutter,
        Self::Slider,
        Self::Sweeper,
        Self::Curveball,
        Self::Changeup,
        Self::Splitter,
        Self::Knuckleball,
    ];

    /// The name as written in profiles and shown everywhere.
    pub fn name(self) -> &'static str {
        match self {
            Self::FourSeam => "four-seam",
            Self::TwoSeam => "two-seam",
            Self::Sinker => "sinker",
            Self::Cutter => "cutter",
            Self::Slider => "slider",
            Self::Sweeper => "sweeper",
            Self::Curveball => "curveball",
            Self::Changeup => "changeup",
            Self::Splitter => "splitter",
            Self::Knuckleball => "knuckleball",
        }
    }

    /// The family with this name.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|family| family.name() == name)
    }

    /// The one name of a family that has two: two-seam and sinker are one pitch to everything but the eye of whoever
    /// names it, and real labels use the words for the same shapes (common practice, no published source).
    #[must_use]
    pub fn one_name(self) -> Self {
        if self == Self::TwoSeam { Self::Sinker } else { self }
    }

    /// Four-seam, two-seam and sinker: what a floor on fastballs counts.
    pub fn is_fastball(self) -> bool {
        matches!(self, Self::FourSeam | Self::TwoSeam | Self::Sinker)
    }

    /// Changeup and splitter: what comes slower with a fastball's arm.
    pub fn is_off_speed(self) -> bool {
        matches!(self, Self::Changeup | Self::Splitter)
    }

    /// Slider, sweeper and curveball: what youth guidelines call breaking balls.
    pub fn is_breaking(self) -> bool {
        matches!(self, Self::Slider | Self::Sweeper | Self::Curveball)
    }
}

impl Family {
    /// Where its pitches cross on average; where all do for one of which that is not known.
    pub fn usual_place(self) -> Location {
        Usual::of(self).map_or(USUAL_PLACE, |usual| usual.place)
    }

    /// What the seams usually add; nothing known for one of which that is not known.
    pub fn usual_seams(self) -> SeamPush {
        Usual::of(self).map_or(SeamPush::UNKNOWN, |usual| usual.seams)
    }
}

impl fmt::Display for Family {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

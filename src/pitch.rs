//! The words of the trade: pitch families and the shape of a pitch.

use std::fmt;

use crate::units::{INCH, MPH};

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

    /// Four-seam, two-seam and sinker: what a floor on fastballs counts.
    pub fn is_fastball(self) -> bool {
        matches!(self, Self::FourSeam | Self::TwoSeam | Self::Sinker)
    }

    /// Slider, sweeper and curveball: what youth guidelines call breaking balls.
    pub fn is_breaking(self) -> bool {
        matches!(self, Self::Slider | Self::Sweeper | Self::Curveball)
    }
}

impl fmt::Display for Family {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// The slowest pitch known here, mph. Below some 26 mph no throw carries 60 ft 6 in to the plate at all, and
/// below 35 not every throw in heavy air (computed); whoever throws so pitches from nearer. Nothing drawn or
/// searched may be slower either.
pub const SLOWEST_MPH: f64 = 40.0;
/// The fastest pitch known here, mph: beyond every arm (common practice, no published source).
pub const FASTEST_MPH: f64 = 110.0;

/// What a pitch does, in the hand-free frame: release speed and the two breaks.
///
/// A break is how far from the same throw with no sideways force at all (same release, same drag,
/// gravity on) the ball arrives at the front of the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// Release speed.
    pub speed_mph: f64,
    /// Inches above (+) or below (-) the throw with no sideways force.
    pub vertical_break_in: f64,
    /// Inches to the glove side (+) or arm side (-) of it.
    pub glove_side_break_in: f64,
}

impl Shape {
    /// Release speed in m/s.
    pub fn speed(self) -> f64 {
        self.speed_mph * MPH
    }

    /// The breaks (glove side, up) in metres.
    pub fn break_m(self) -> [f64; 2] {
        [self.glove_side_break_in * INCH, self.vertical_break_in * INCH]
    }

    /// Distance in inches between the breaks of two shapes.
    pub fn movement_distance_in(self, other: Self) -> f64 {
        (self.vertical_break_in - other.vertical_break_in).hypot(self.glove_side_break_in - other.glove_side_break_in)
    }
}

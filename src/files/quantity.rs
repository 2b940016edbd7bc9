//! The quantities a session file may hold: our names, units, ranges and meanings of the sign.
//!
//! Inside a session every number is in our unit and hand-free; here is the table that brings it
//! there. Which column of a file holds what is in [`super::columns`].

use std::ops::RangeInclusive;

use crate::ball::spin::MOST_RPM;
use crate::ball::{FASTEST_MPH, SLOWEST_MPH};
use crate::base::geometry::Hand;
use crate::base::units::{FOOT, INCH, MPH};

/// Something a column may hold. Written in snake case in a column map.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Quantity {
    /// Release speed.
    Speed,
    /// Movement up.
    VerticalBreak,
    /// Movement to the glove side.
    GloveSideBreak,
    /// Total spin.
    Spin,
    /// Active share of the spin.
    ActiveFraction,
    /// Which way the spin pushes, as the pitcher sees it.
    SpinClock,
    /// Release height.
    ReleaseHeight,
    /// Release distance to the arm side.
    ReleaseSide,
    /// Release distance in front of the rubber.
    Extension,
    /// Where it crossed the plate, sideways.
    PlateSide,
    /// Where it crossed the plate, up.
    PlateHeight,
    /// Somebody's label of the pitch.
    Pitch,
    /// Where the hitter stood.
    BatterSide,
    /// What came of it.
    Outcome,
    /// The day.
    Date,
    /// The grip.
    Grip,
    /// Whether the ball wobbled.
    Wobble,
    /// Who threw it.
    Pitcher,
}

/// What a quantity is made of, and so which units it may have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Speed,
    Length { is_sideways: bool },
    Spin,
    Fraction,
    Clock,
    Text,
}

/// A unit of a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Miles per hour.
    Mph,
    /// Kilometres per hour.
    Kph,
    /// Metres per second.
    MetresPerSecond,
    /// Inches.
    Inch,
    /// Centimetres.
    Centimetre,
    /// Feet.
    Foot,
    /// Metres.
    Metre,
    /// Revolutions per minute.
    Rpm,
    /// A share from 0 to 1.
    Fraction,
    /// A share from 0 to 100.
    Percent,
    /// A clock face, `h:mm`.
    Clock,
    /// Degrees of the spin's push from straight up, clockwise as the pitcher sees it unless the column says which way.
    Degrees,
}

/// Which way a column's numbers grow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Positive {
    /// Toward the pitcher's glove.
    Glove,
    /// Toward the pitcher's throwing arm.
    Arm,
    /// To the right as the catcher sees it.
    CatchersRight,
    /// To the right as the pitcher sees it.
    PitchersRight,
    /// Up.
    Up,
    /// Down.
    Down,
}

impl Positive {
    /// As written in a column map.
    pub(super) fn name(self) -> &'static str {
        match self {
            Self::Glove => "glove",
            Self::Arm => "arm",
            Self::CatchersRight => "catchers-right",
            Self::PitchersRight => "pitchers-right",
            Self::Up => "up",
            Self::Down => "down",
        }
    }

    /// The directions a kind of quantity may have.
    pub(super) fn of_kind(kind: Kind) -> &'static [Self] {
        match kind {
            Kind::Clock | Kind::Length { is_sideways: true } => {
                &[Self::Glove, Self::Arm, Self::CatchersRight, Self::PitchersRight]
            }
            Kind::Length { is_sideways: false } => &[Self::Up, Self::Down],
            _ => &[],
        }
    }

    /// The factor that makes the numbers grow toward the glove side (or up); nothing when it
    /// depends on a hand that is not known.
    pub(super) fn toward_glove(self, hand: Option<Hand>) -> Option<f64> {
        match (self, hand) {
            (Self::Glove | Self::Up, _)
            | (Self::CatchersRight, Some(Hand::Right))
            | (Self::PitchersRight, Some(Hand::Left)) => Some(1.0),
            (Self::Arm | Self::Down, _)
            | (Self::CatchersRight, Some(Hand::Left))
            | (Self::PitchersRight, Some(Hand::Right)) => Some(-1.0),
            (Self::CatchersRight | Self::PitchersRight, None) => None,
        }
    }
}

impl Quantity {
    /// Every quantity, in the order of a file with our own names.
    pub const ALL: [Self; 18] = [
        Self::Speed,
        Self::VerticalBreak,
        Self::GloveSideBreak,
        Self::Spin,
        Self::ActiveFraction,
        Self::SpinClock,
        Self::ReleaseHeight,
        Self::ReleaseSide,
        Self::Extension,
        Self::PlateSide,
        Self::PlateHeight,
        Self::Pitch,
        Self::BatterSide,
        Self::Outcome,
        Self::Date,
        Self::Grip,
        Self::Wobble,
        Self::Pitcher,
    ];

    /// The header it has in a file with our own names.
    pub fn header(self) -> &'static str {
        match self {
            Self::Speed => "speed_mph",
            Self::VerticalBreak => "vertical_break_in",
            Self::GloveSideBreak => "glove_side_break_in",
            Self::Spin => "spin_rpm",
            Self::ActiveFraction => "active_fraction",
            Self::SpinClock => "spin_clock",
            Self::ReleaseHeight => "release_height_ft",
            Self::ReleaseSide => "release_side_ft",
            Self::Extension => "extension_ft",
            Self::PlateSide => "plate_side_in",
            Self::PlateHeight => "plate_height_in",
            Self::Pitch => "pitch",
            Self::BatterSide => "batter_side",
            Self::Outcome => "outcome",
            Self::Date => "date",
            Self::Grip => "grip",
            Self::Wobble => "wobble",
            Self::Pitcher => "pitcher",
        }
    }

    /// Its key in a column map: the header without the unit.
    pub fn key(self) -> &'static str {
        let header = self.header();
        ["_mph", "_in", "_rpm", "_ft"].iter().find_map(|unit| header.strip_suffix(unit)).unwrap_or(header)
    }

    /// Without these no throw can be sorted.
    pub(super) const NEEDED: [Self; 3] = [Self::Speed, Self::VerticalBreak, Self::GloveSideBreak];

    pub(super) fn kind(self) -> Kind {
        match self {
            Self::Speed => Kind::Speed,
            Self::GloveSideBreak | Self::ReleaseSide | Self::PlateSide => Kind::Length { is_sideways: true },
            Self::VerticalBreak | Self::ReleaseHeight | Self::Extension | Self::PlateHeight => {
                Kind::Length { is_sideways: false }
            }
            Self::Spin => Kind::Spin,
            Self::ActiveFraction => Kind::Fraction,
            Self::SpinClock => Kind::Clock,
            Self::Pitch | Self::BatterSide | Self::Outcome | Self::Date | Self::Grip | Self::Wobble | Self::Pitcher => {
                Kind::Text
            }
        }
    }

    /// The range of any throw, in our unit: wide enough for a child's lob and the best in the
    /// world, and for movement measured from another zero (common practice, no published source).
    pub(super) fn range(self) -> (f64, f64) {
        match self {
            Self::Speed => (SLOWEST_MPH, FASTEST_MPH),
            Self::VerticalBreak | Self::GloveSideBreak => (-80.0, 80.0),
            Self::Spin => (0.0, MOST_RPM),
            Self::ActiveFraction => (0.0, 1.0),
            Self::SpinClock => (0.0, 12.0),
            Self::ReleaseHeight | Self::Extension => (0.0, 9.0),
            Self::ReleaseSide => (-6.0, 6.0),
            Self::PlateSide | Self::PlateHeight => (-150.0, 200.0),
            Self::Pitch | Self::BatterSide | Self::Outcome | Self::Date | Self::Grip | Self::Wobble | Self::Pitcher => {
                (0.0, 0.0)
            }
        }
    }

    /// The key that says where it was measured, and the feet from the plate it may name; nothing for what is measured
    /// in one place.
    ///
    /// A full flight's movement is eight times that of its last 20 ft: from nearer, what is restored is the unit's
    /// error and no movement (common practice, no published source).
    pub(super) fn distance(self) -> Option<(&'static str, RangeInclusive<f64>)> {
        match self {
            Self::Speed => Some(("at_ft", 5.0..=60.5)),
            Self::VerticalBreak | Self::GloveSideBreak => Some(("from_ft", 20.0..=60.5)),
            _ => None,
        }
    }

    /// The unit of our own name.
    pub(super) fn own_unit(self) -> Option<Unit> {
        match self.kind() {
            Kind::Speed => Some(Unit::Mph),
            Kind::Length { .. } if self.header().ends_with("_ft") => Some(Unit::Foot),
            Kind::Length { .. } => Some(Unit::Inch),
            Kind::Spin => Some(Unit::Rpm),
            Kind::Fraction => Some(Unit::Fraction),
            Kind::Clock => Some(Unit::Clock),
            Kind::Text => None,
        }
    }

    /// The direction of our own name.
    pub(super) fn own_positive(self) -> Positive {
        match self {
            Self::GloveSideBreak | Self::PlateSide => Positive::Glove,
            Self::ReleaseSide => Positive::Arm,
            Self::SpinClock => Positive::PitchersRight,
            _ => Positive::Up,
        }
    }
}

impl Unit {
    /// As written in a column map.
    pub fn name(self) -> &'static str {
        match self {
            Self::Mph => "mph",
            Self::Kph => "kph",
            Self::MetresPerSecond => "m/s",
            Self::Inch => "in",
            Self::Centimetre => "cm",
            Self::Foot => "ft",
            Self::Metre => "m",
            Self::Rpm => "rpm",
            Self::Fraction => "fraction",
            Self::Percent => "percent",
            Self::Clock => "clock",
            Self::Degrees => "degrees",
        }
    }

    /// The units a kind of quantity may have.
    pub(super) fn of_kind(kind: Kind) -> &'static [Self] {
        match kind {
            Kind::Speed => &[Self::Mph, Self::Kph, Self::MetresPerSecond],
            Kind::Length { .. } => &[Self::Inch, Self::Centimetre, Self::Foot, Self::Metre],
            Kind::Spin => &[Self::Rpm],
            Kind::Fraction => &[Self::Fraction, Self::Percent],
            Kind::Clock => &[Self::Clock, Self::Degrees],
            Kind::Text => &[],
        }
    }

    /// The words by which a column map may call the units of a kind; each unit's own name comes first.
    pub(super) fn words_of_kind(kind: Kind) -> Vec<(&'static str, Self)> {
        let also = |unit: Self| match unit {
            Self::Kph => &["km/h", "kmh"][..],
            Self::Inch => &["inch", "inches"],
            Self::Foot => &["feet"],
            Self::Degrees => &["deg"],
            _ => &[],
        };
        let words =
            |&unit: &Self| std::iter::once(unit.name()).chain(also(unit).iter().copied()).map(move |w| (w, unit));
        Self::of_kind(kind).iter().flat_map(words).collect()
    }

    /// How many SI (or natural) units one of it is.
    pub(super) fn size(self) -> f64 {
        match self {
            Self::Mph => MPH,
            Self::Kph => 1.0 / 3.6,
            Self::Inch => INCH,
            Self::Centimetre | Self::Percent => 0.01,
            Self::Foot => FOOT,
            Self::Degrees => 1.0 / 30.0,
            Self::MetresPerSecond | Self::Metre | Self::Rpm | Self::Fraction | Self::Clock => 1.0,
        }
    }
}

//! Numbers as they are told: with a unit, decimals that suit it, and an interval where there is one.
//!
//! How finely a quantity is told is decided here and nowhere else, so that text, page and Markdown
//! round alike.

use crate::base::Range;
use crate::base::stats::Estimate;

use super::super::number::{plain, signed};

/// What a number counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Unit {
    /// A bare number.
    None,
    Mph,
    Inches,
    Feet,
    Degrees,
    Rpm,
    Milliseconds,
    /// Minutes of the clock face.
    Minutes,
    /// A share of one, shown in percent.
    Percent,
    /// A share of one, shown per hundred without a sign: columns say so.
    PerHundred,
    /// A chance that comes from a finite number of simulations.
    InHundred,
    /// Runs; the words around it say over how many pitches.
    Runs,
}

impl Unit {
    /// As written after a number.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::None | Self::PerHundred | Self::InHundred => "",
            Self::Mph => "mph",
            Self::Inches => "in",
            Self::Feet => "ft",
            Self::Degrees => "degrees",
            Self::Rpm => "rpm",
            Self::Milliseconds => "ms",
            Self::Minutes => "minutes",
            Self::Percent => "%",
            Self::Runs => "runs",
        }
    }

    /// As written in the head of a column.
    pub(crate) fn head(self) -> &'static str {
        if self == Self::Degrees { "deg" } else { self.name() }
    }

    fn factor(self) -> f64 {
        if matches!(self, Self::Percent | Self::PerHundred) { 100.0 } else { 1.0 }
    }
}

/// One number, two ends, or a number with its interval.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Shown {
    /// `81.0`
    One(f64),
    /// `79.5 to 82.5`
    Ends(f64, f64),
    /// `81.0 (80.2 to 81.9)`
    Interval(Estimate),
    /// `81.0 ±0.9`: half the interval.
    Half(Estimate),
}

impl From<f64> for Shown {
    fn from(value: f64) -> Self {
        Self::One(value)
    }
}

impl From<Range> for Shown {
    fn from(range: Range) -> Self {
        Self::Ends(range.low, range.high)
    }
}

impl From<(f64, f64)> for Shown {
    fn from((low, high): (f64, f64)) -> Self {
        Self::Ends(low, high)
    }
}

impl From<Estimate> for Shown {
    fn from(estimate: Estimate) -> Self {
        Self::Interval(estimate)
    }
}

/// A quantity as it is told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Amount {
    shown: Shown,
    unit: Unit,
    places: usize,
    is_signed: bool,
}

impl Amount {
    fn new(shown: impl Into<Shown>, unit: Unit, places: usize) -> Self {
        Self { shown: shown.into(), unit, places, is_signed: false }
    }

    /// With so many decimals.
    pub(crate) fn places(self, places: usize) -> Self {
        Self { places, ..self }
    }

    /// With a plus where it is not negative.
    pub(crate) fn signed(self) -> Self {
        Self { is_signed: true, ..self }
    }

    /// An estimate as `±` half its interval.
    pub(crate) fn half(self) -> Self {
        match self.shown {
            Shown::Interval(estimate) => Self { shown: Shown::Half(estimate), ..self },
            _ => self,
        }
    }

    /// Without its unit.
    pub(crate) fn bare(self) -> Self {
        Self { unit: if self.unit.factor() > 1.0 { Unit::PerHundred } else { Unit::None }, ..self }
    }

    /// The unit, which a column's head may have said already.
    pub(crate) fn unit(&self) -> Unit {
        self.unit
    }

    /// The numbers without the unit; a percent sign stays.
    pub(crate) fn figures(&self) -> String {
        let sign = if self.unit == Unit::Percent { " %" } else { "" };
        match self.shown {
            Shown::One(chance) if self.unit == Unit::InHundred => in_hundred(chance),
            Shown::One(value) => format!("{}{sign}", self.one(value)),
            Shown::Ends(low, high) if self.one(low) == self.one(high) => format!("{}{sign}", self.one(low)),
            Shown::Ends(low, high) => format!("{} to {}{sign}", self.one(low), self.one(high)),
            Shown::Interval(Estimate { value, low, high }) => {
                format!("{}{sign} ({} to {})", self.one(value), self.one(low), self.one(high))
            }
            Shown::Half(estimate) => format!("{} ±{}{sign}", self.one(estimate.value), self.half_of(estimate)),
        }
    }

    fn half_of(&self, estimate: Estimate) -> String {
        let half = estimate.half_width();
        if half.is_infinite() { "?".into() } else { plain(half * self.unit.factor(), self.places) }
    }

    fn one(&self, value: f64) -> String {
        let write = if self.is_signed { signed } else { plain };
        write(value * self.unit.factor(), self.places)
    }
}

/// A chance as "94 in 100"; a finite number of simulations never shows a certainty.
fn in_hundred(chance: f64) -> String {
    match chance {
        c if c > 0.99 => "over 99 in 100".into(),
        c if c < 0.01 => "under 1 in 100".into(),
        c => format!("{} in 100", plain(100.0 * c, 0)),
    }
}

/// A speed.
pub(crate) fn speed(mph: impl Into<Shown>) -> Amount {
    Amount::new(mph, Unit::Mph, 1)
}

/// A movement up or to the glove side, or a change: with its sign.
pub(crate) fn movement(inches: impl Into<Shown>) -> Amount {
    Amount::new(inches, Unit::Inches, 1).signed()
}

/// A length without a direction.
pub(crate) fn inches(inches: impl Into<Shown>) -> Amount {
    Amount::new(inches, Unit::Inches, 1)
}

/// A height or a distance.
pub(crate) fn feet(feet: impl Into<Shown>) -> Amount {
    Amount::new(feet, Unit::Feet, 1)
}

/// An angle.
pub(crate) fn degrees(degrees: impl Into<Shown>) -> Amount {
    Amount::new(degrees, Unit::Degrees, 0)
}

/// A spin.
pub(crate) fn rpm(rpm: impl Into<Shown>) -> Amount {
    Amount::new(rpm, Unit::Rpm, 0)
}

/// A time of flight or a part of it.
pub(crate) fn milliseconds(ms: impl Into<Shown>) -> Amount {
    Amount::new(ms, Unit::Milliseconds, 0)
}

/// Minutes of the clock face.
pub(crate) fn minutes(minutes: impl Into<Shown>) -> Amount {
    Amount::new(minutes, Unit::Minutes, 0)
}

/// A share, 0 to 1.
pub(crate) fn share(share: impl Into<Shown>) -> Amount {
    Amount::new(share, Unit::Percent, 0)
}

/// A chance that was counted over simulations, 0 to 1.
pub(crate) fn chance(chance: f64) -> Amount {
    Amount::new(chance, Unit::InHundred, 0)
}

/// A chance per hundred of a pitch thrown, 0 to 1, with its doubt.
pub(crate) fn rate(chance: Estimate) -> Amount {
    Amount::new(chance, Unit::PerHundred, 0).half()
}

/// Runs per 100 pitches.
pub(crate) fn runs(runs: impl Into<Shown>) -> Amount {
    Amount::new(runs, Unit::Runs, 2).signed()
}

/// A number without a unit.
pub(crate) fn pure(value: impl Into<Shown>, places: usize) -> Amount {
    Amount::new(value, Unit::None, places)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quantity_is_told_alike_with_and_without_its_interval() {
        let gain = Estimate { value: 0.486, low: -0.001, high: 0.63 };
        assert_eq!(runs(gain).figures(), "+0.49 (+0.00 to +0.63)");
        assert_eq!(runs(gain.value).figures(), "+0.49");
        assert_eq!(share(Estimate { value: 0.48, low: 0.31, high: 0.63 }).figures(), "48 % (31 to 63)");
        assert_eq!(rate(Estimate { value: 0.14, low: 0.11, high: 0.17 }).figures(), "14 ±3");
        assert_eq!(movement(Range::new(0.0, -6.04)).figures(), "-6.0 to +0.0");
        assert_eq!([0.999, 0.5, 0.001].map(|c| chance(c).figures()), ["over 99 in 100", "50 in 100", "under 1 in 100"]);
    }
}

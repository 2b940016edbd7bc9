//! What becomes of a pitch on the mean over its places.

use super::Struck;
use super::umpire::Taken;

/// What becomes of a pitch, averaged over the places it ends up at; shares of all pitches thrown.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Chances {
    /// He swings.
    pub swing: f64,
    /// He swings and hits the ball.
    pub contact: f64,
    /// He swings and hits it hard on a good line.
    pub solid: f64,
    /// He takes it and it is called a strike.
    pub called_strike: f64,
    /// No part of the ball passes through the zone.
    pub outside: f64,
    /// No part of it does, and he swings.
    pub swing_outside: f64,
}

impl Chances {
    /// He swings and misses.
    pub fn miss(&self) -> f64 {
        self.swing - self.contact
    }

    /// He takes it and it is called a ball.
    pub fn ball(&self) -> f64 {
        1.0 - self.swing - self.called_strike
    }

    /// The mean by weight; weights sum to one.
    pub fn mean<'c>(weighed: impl Iterator<Item = (f64, &'c Self)>) -> Self {
        weighed.fold(Self::default(), |sum, (weight, chances)| sum + *chances * weight)
    }

    /// Adds what becomes of a pitch at a place of this weight.
    #[inline]
    pub(super) fn add(&mut self, weight: f64, struck: Struck, taken: Taken) {
        self.swing += weight * struck.swing;
        self.contact += weight * struck.contact;
        self.solid += weight * struck.solid;
        self.called_strike += weight * (1.0 - struck.swing) * taken.called_strike;
        self.outside += weight * (1.0 - taken.inside);
        self.swing_outside += weight * struck.swing * (1.0 - taken.inside);
    }

    fn combine(self, other: Self, by: impl Fn(f64, f64) -> f64) -> Self {
        Self {
            swing: by(self.swing, other.swing),
            contact: by(self.contact, other.contact),
            solid: by(self.solid, other.solid),
            called_strike: by(self.called_strike, other.called_strike),
            outside: by(self.outside, other.outside),
            swing_outside: by(self.swing_outside, other.swing_outside),
        }
    }
}

impl std::ops::Add for Chances {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        self.combine(other, |a, b| a + b)
    }
}

impl std::ops::Sub for Chances {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self.combine(other, |a, b| a - b)
    }
}

impl std::ops::Mul<f64> for Chances {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        self.combine(self, |a, _| a * factor)
    }
}

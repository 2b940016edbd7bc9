//! Directions and places: vectors, the plate's frame, the clock face, and the one mirror.
//!
//! Frame: origin at the rear point of the plate, x to the catcher's right, y from the plate to
//! the pitcher, z up. Everything inside the model is a right-hander's throw, so x is also the
//! glove side; a left-hander is mirrored where his numbers enter and mirrored back where they
//! leave ([`Clock::mirrored`], [`Hand`]). Nothing between knows handedness.

use std::fmt;
use std::ops::{Add, Mul, Neg, Sub};

use crate::base::units::{DEGREE, FOOT, INCH};

/// Distance from the rear point of the plate to its front edge (Official Baseball Rules 2.02).
pub const PLATE_FRONT_Y: f64 = 17.0 * INCH;
/// Distance from the rear point of the plate to the front of the rubber (Official Baseball Rules 2.01).
pub const RUBBER_Y: f64 = 60.5 * FOOT;
/// Half the width of the plate (Official Baseball Rules 2.02: 17 in).
pub const PLATE_HALF_WIDTH: f64 = 8.5 * INCH;

/// A vector in the plate's frame, SI units.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Vec3 {
    /// To the catcher's right.
    pub x: f64,
    /// From the plate to the pitcher.
    pub y: f64,
    /// Up.
    pub z: f64,
}

impl Vec3 {
    /// A vector from its three components.
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// Scalar product.
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    /// Vector product, right-handed.
    #[must_use]
    pub fn cross(self, other: Self) -> Self {
        Self::new(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }

    /// Length.
    pub fn norm(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// The same direction with length one; the zero vector stays zero.
    #[must_use]
    pub fn unit(self) -> Self {
        let norm = self.norm();
        if norm > 0.0 { self * (1.0 / norm) } else { self }
    }

    /// The part at right angles to `direction`, which must have length one.
    #[must_use]
    pub fn transverse_to(self, direction: Self) -> Self {
        self - direction * self.dot(direction)
    }
}

impl Add for Vec3 {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y, self.z + other.z)
    }
}

impl Sub for Vec3 {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}

impl Mul<f64> for Vec3 {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor, self.z * factor)
    }
}

impl Neg for Vec3 {
    type Output = Self;
    fn neg(self) -> Self {
        self * -1.0
    }
}

/// The hand a pitcher throws with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hand {
    /// Glove on the left hand; glove side is the catcher's right.
    Right,
    /// Glove on the right hand; glove side is the catcher's left.
    Left,
}

impl Hand {
    /// Both hands, in the order they are always named.
    pub const ALL: [Self; 2] = [Self::Right, Self::Left];

    /// As written in a profile.
    pub fn name(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Left => "left",
        }
    }
}

impl fmt::Display for Hand {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// Where the hitter stands, as seen from the pitcher's throwing hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Side {
    /// The hitter bats on the side the pitcher throws with.
    Same,
    /// The hitter bats on the other side.
    Opposite,
}

impl Side {
    /// Both sides, in the order they are always shown.
    pub const BOTH: [Self; 2] = [Self::Same, Self::Opposite];

    /// The direction *away* from this hitter along x: glove side for a same-side hitter.
    pub fn away_sign(self) -> f64 {
        match self {
            Self::Same => 1.0,
            Self::Opposite => -1.0,
        }
    }
}

impl fmt::Display for Side {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Same => "same side",
            Self::Opposite => "opposite side",
        })
    }
}

/// A direction on a clock face **seen by the pitcher**: the way the spin pushes the ball.
/// 12:00 is pure backspin, 6:00 topspin, 9:00 a right-hander's glove side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clock {
    hours: f64,
}

impl Clock {
    /// A clock position from hours; any number is brought into `0.0..12.0`.
    pub fn from_hours(hours: f64) -> Self {
        Self { hours: hours.rem_euclid(12.0) }
    }

    /// The clock on which a push of `glove_side` and `up` (any common unit) points, right-hander.
    /// In the pitcher's view the glove side of a right-hander is to the left.
    pub fn from_push(glove_side: f64, up: f64) -> Self {
        Self::from_hours((-glove_side).atan2(up) / DEGREE / 30.0)
    }

    /// Hours in `0.0..12.0`.
    pub fn hours(self) -> f64 {
        self.hours
    }

    /// Unit push (glove side, up) of a right-hander's ball with this clock.
    pub fn push(self) -> (f64, f64) {
        let (sin, cos) = (self.hours * 30.0 * DEGREE).sin_cos();
        (-sin, cos)
    }

    /// The same clock for the other hand: 1:30 becomes 10:30.
    #[must_use]
    pub fn mirrored(self) -> Self {
        Self::from_hours(-self.hours)
    }

    /// The clock as `hand` shows it, from the right-hander's clock used inside (and back again).
    #[must_use]
    pub fn for_hand(self, hand: Hand) -> Self {
        match hand {
            Hand::Right => self,
            Hand::Left => self.mirrored(),
        }
    }

    /// Signed smallest turn from `self` to `other` in hours, in `-6.0..6.0`.
    pub fn hours_to(self, other: Self) -> f64 {
        (other.hours - self.hours + 6.0).rem_euclid(12.0) - 6.0
    }
}

impl fmt::Display for Clock {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Whole minutes first, so that 11:59.7 rolls over to 12:00 and not to 11:60.
        let minutes = (self.hours * 60.0).round().rem_euclid(720.0);
        let hour = (minutes / 60.0).floor();
        let shown = if hour == 0.0 { 12.0 } else { hour };
        write!(f, "{shown}:{:02}", minutes - hour * 60.0)
    }
}

/// Why a text is not a clock position.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("not a clock position from 12:00 to 11:59")]
pub struct NotAClock;

impl std::str::FromStr for Clock {
    type Err = NotAClock;

    /// Reads `h:mm` with hours 1 to 12 and minutes 00 to 59.
    fn from_str(text: &str) -> Result<Self, NotAClock> {
        let (hour, minute) = text.split_once(':').ok_or(NotAClock)?;
        let digits = |part: &str| part.bytes().all(|byte| byte.is_ascii_digit());
        if minute.len() != 2 || !digits(minute) || !digits(hour) {
            return Err(NotAClock);
        }
        let hour: u8 = hour.parse().map_err(|_| NotAClock)?;
        let minute: u8 = minute.parse().map_err(|_| NotAClock)?;
        if !(1..=12).contains(&hour) || minute > 59 {
            return Err(NotAClock);
        }
        Ok(Self::from_hours(f64::from(hour) + f64::from(minute) / 60.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_right_handers_glove_side_is_nine_and_the_clock_goes_round() {
        assert!((Clock::from_push(1.0, 0.0).hours() - 9.0).abs() < 1e-12);
        assert!((Clock::from_push(0.0, -1.0).hours() - 6.0).abs() < 1e-12);
        let (glove, up) = Clock::from_hours(1.5).push();
        assert!(glove < 0.0 && up > 0.0, "a right-hander's fastball runs to the arm side");
        assert_eq!(Clock::from_hours(1.5).mirrored().to_string(), "10:30");
    }

    #[test]
    fn clocks_are_read_and_shown_without_a_sixtieth_minute() {
        assert_eq!("12:05".parse::<Clock>().map(|c| c.to_string()), Ok("12:05".into()));
        assert_eq!(Clock::from_hours(11.9999).to_string(), "12:00");
        for wrong in ["", "13:00", "0:30", "1:60", "1:5", "1.5", "-1:30", "+1:30", "1:-3"] {
            assert_eq!(wrong.parse::<Clock>(), Err(NotAClock), "{wrong}");
        }
    }

    #[test]
    fn the_smallest_turn_has_a_sign() {
        assert!((Clock::from_hours(11.0).hours_to(Clock::from_hours(1.0)) - 2.0).abs() < 1e-12);
        assert!((Clock::from_hours(1.0).hours_to(Clock::from_hours(11.0)) + 2.0).abs() < 1e-12);
    }
}

//! How a ball spins, how hard that spin pushes, and where a mark on its pole shows.
//!
//! The push is Magnus lift on the **active** (transverse) spin: bullet spin gives none (A. M. Nathan
//! and D. Baldwin, Baseball Research Journal 36 (2007) 77); how much is in [`LiftLaw`]. Everything here
//! is a right-hander's; nothing here flies a ball.

use crate::base::geometry::{Clock, Vec3};
use crate::base::units::{DEGREE, INCH, RPM};

mod lift;

pub use lift::LiftLaw;

/// Ball radius from the middle of the permitted circumference, 9 to 9.25 in (Official Baseball Rules 3.01).
pub const BALL_RADIUS: f64 = 9.125 * INCH / std::f64::consts::TAU;
/// More spin (rpm) than any arm is known to give (common practice, no published source).
pub const MOST_RPM: f64 = 4500.0;

/// A right-hander's spin: how much, how much of it is active, which way it pushes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spin {
    /// Total spin.
    pub rpm: f64,
    /// Share of the spin at right angles to the flight: 0 bullet, 1 all active.
    pub active_fraction: f64,
    /// Which way the active spin pushes.
    pub clock: Clock,
}

impl Spin {
    /// Active spin.
    pub fn active_rpm(self) -> f64 {
        self.rpm * self.active_fraction
    }

    /// Angle between the axis and the plane across the flight: 0 all active, 90 pure bullet.
    pub fn gyro_deg(self) -> f64 {
        self.active_fraction.clamp(0.0, 1.0).acos() / DEGREE
    }

    /// Active spin parameter at `speed` (m/s).
    pub fn active_parameter(self, speed: f64) -> f64 {
        BALL_RADIUS * self.active_rpm() * RPM / speed
    }

    /// Unit direction of the axis for a ball that leaves along `flight` (length one).
    ///
    /// Across the flight the axis is `flight × push`. Along it the bullet part points the way the
    /// ball goes: a right-hander's bullet spin turns clockwise as he sees it (common practice, no
    /// published source).
    pub fn axis(self, flight: Vec3) -> Vec3 {
        let (glove_side, up) = self.clock.push();
        let push = Vec3::new(glove_side, 0.0, up).transverse_to(flight).unit();
        let bullet = (1.0 - self.active_fraction * self.active_fraction).max(0.0).sqrt();
        flight.cross(push) * self.active_fraction + flight * bullet
    }

    /// Angular velocity (rad/s) for a ball that leaves along `flight` (length one).
    pub fn angular_velocity(self, flight: Vec3) -> Vec3 {
        self.axis(flight) * (self.rpm * RPM)
    }

    /// Where a mark on the spin pole shows on the ball's face.
    ///
    /// The ball leaves along -y. Of the two poles, the thrower sees the one with y > 0, the partner
    /// the other. Each sees it at distance `active_fraction` of the radius from the middle; x runs
    /// to the partner's right and so to the thrower's left.
    pub fn dot(self) -> Dots {
        let axis = self.axis(Vec3::new(0.0, -1.0, 0.0));
        let near_thrower = if axis.y > 0.0 { axis } else { -axis };
        let near_partner = -near_thrower;
        let radius = near_thrower.x.hypot(near_thrower.z);
        Dots {
            thrower: Dot { clock: Clock::from_push(near_thrower.x, near_thrower.z), radius },
            partner: Dot { clock: Clock::from_push(-near_partner.x, near_partner.z), radius },
        }
    }
}

/// A mark on the ball's face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dot {
    /// Direction from the middle of the face, on a clock as the viewer sees it.
    pub clock: Clock,
    /// Distance from the middle in ball radii.
    pub radius: f64,
}

/// The mark as the two people in a game of catch see it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dots {
    /// Seen from behind the ball, by the one who throws.
    pub thrower: Dot,
    /// Seen from in front, by the one who catches.
    pub partner: Dot,
}

#[cfg(test)]
mod tests {
    use super::*;

    /// DEVELOPERS.md, Sources 7: a backspin fastball's axis points to the pitcher's right, which is -x.
    #[test]
    fn backspin_has_its_axis_to_the_pitchers_right() {
        let backspin = Spin { rpm: 2300.0, active_fraction: 1.0, clock: Clock::from_hours(0.0) };
        let axis = backspin.axis(Vec3::new(0.0, -1.0, 0.0));
        assert!((axis.x + 1.0).abs() < 1e-12 && axis.y.abs() < 1e-12 && axis.z.abs() < 1e-12, "{axis:?}");
    }

    /// Common practice, no published source: a right-hander's sweeper shows the dot low right to
    /// the thrower and high right to the partner; a left-hander mirrors.
    #[test]
    fn a_sweeper_shows_its_dot_low_right_to_the_thrower_and_high_right_to_the_partner() {
        let sweeper = Spin { rpm: 2500.0, active_fraction: 0.7, clock: Clock::from_hours(8.4) };
        let dots = sweeper.dot();
        let (thrower, partner) = (dots.thrower.clock.hours(), dots.partner.clock.hours());
        assert!((3.0..6.0).contains(&thrower), "low right to the thrower, not {thrower}");
        assert!((0.0..3.0).contains(&partner), "high right to the partner, not {partner}");
        assert!((dots.thrower.radius - 0.7).abs() < 1e-12);
        let left = dots.thrower.clock.mirrored().hours();
        assert!((6.0..9.0).contains(&left), "low left for a left-hander, not {left}");
    }

    #[test]
    fn pure_bullet_spin_shows_its_dot_in_the_middle() {
        let bullet = Spin { rpm: 2400.0, active_fraction: 0.0, clock: Clock::from_hours(9.0) };
        assert!(bullet.dot().thrower.radius < 1e-12);
        assert!((bullet.gyro_deg() - 90.0).abs() < 1e-9);
    }
}

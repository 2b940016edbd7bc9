//! How a ball spins, how hard that spin pushes, and where a mark on its pole shows.
//!
//! The push is Magnus lift on the **active** (transverse) spin: bullet spin gives none (A. M. Nathan
//! and D. Baldwin, Baseball Research Journal 36 (2007) 77). Three published lift laws are kept side
//! by side, because their spread is the honest uncertainty of turning spin into movement.
//! Everything here is a right-hander's; nothing here flies a ball.

use crate::base::geometry::{Clock, Vec3};
use crate::base::units::{DEGREE, INCH, RPM};

/// Ball radius from the middle of the permitted circumference, 9 to 9.25 in (Official Baseball Rules 3.01).
pub const BALL_RADIUS: f64 = 9.125 * INCH / std::f64::consts::TAU;
/// More spin (rpm) than any arm is known to give (common practice, no published source).
pub const MOST_RPM: f64 = 4500.0;

/// A published law for the lift coefficient `C_L` at spin parameter S = r ω / v.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LiftLaw {
    /// `C_L = S / (0.4 + 2.32 S)`. R. Cross, *Physics of Baseball and Softball* (2011), from memory.
    Rational,
    /// `C_L = 1.5 S` up to S = 0.1, then `0.09 + 0.6 S`.
    /// G. S. Sawicki, M. Hubbard and W. J. Stronge, Am. J. Phys. 71 (2003) 1152.
    Bilinear,
    /// `C_L = 0.62 S^0.7`. University course notes ("experimental data show approximately").
    Power,
}

impl LiftLaw {
    /// All of them; the first is the default.
    pub const ALL: [Self; 3] = [Self::Rational, Self::Bilinear, Self::Power];

    /// A plain name for messages.
    pub fn name(self) -> &'static str {
        match self {
            Self::Rational => "rational",
            Self::Bilinear => "bilinear",
            Self::Power => "power",
        }
    }

    /// Lift coefficient at active spin parameter `s`.
    #[inline]
    pub fn coefficient(self, s: f64) -> f64 {
        match self {
            Self::Rational => s / (0.4 + 2.32 * s),
            Self::Bilinear if s <= 0.1 => 1.5 * s,
            Self::Bilinear => 0.09 + 0.6 * s,
            Self::Power => 0.62 * s.powf(0.7),
        }
    }

    /// `C_L / S` at active spin parameter S = `turn` / `speed`, both above zero and in the same unit;
    /// as a fraction, because a flight asks for it thousands of times and divisions are slow.
    #[inline]
    pub fn coefficient_per_parameter(self, turn: f64, speed: f64) -> f64 {
        match self {
            Self::Rational => speed / (0.4 * speed + 2.32 * turn),
            Self::Bilinear if turn <= 0.1 * speed => 1.5,
            Self::Bilinear => 0.09 * speed / turn + 0.6,
            Self::Power => 0.62 * (turn / speed).powf(-0.3),
        }
    }

    /// The active spin parameter that gives lift coefficient `c`; infinite where the law never does.
    pub fn spin_parameter(self, c: f64) -> f64 {
        match self {
            Self::Rational if c >= 1.0 / 2.32 => f64::INFINITY,
            Self::Rational => 0.4 * c / (1.0 - 2.32 * c),
            Self::Bilinear if c <= 0.15 => c / 1.5,
            Self::Bilinear => (c - 0.09) / 0.6,
            Self::Power => (c / 0.62).powf(1.0 / 0.7),
        }
    }
}

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

    /// Computed values in the sources table: S = 0.10 / 0.20 / 0.30.
    #[test]
    fn the_lift_laws_have_their_published_values() {
        let table = [
            (LiftLaw::Bilinear, [0.150, 0.210, 0.270]),
            (LiftLaw::Rational, [0.158, 0.231_5, 0.274]),
            (LiftLaw::Power, [0.124, 0.201, 0.267]),
        ];
        for (law, expected) in table {
            for (s, c) in [0.1, 0.2, 0.3].into_iter().zip(expected) {
                assert!((law.coefficient(s) - c).abs() < 6e-4, "{law:?} at {s}");
                assert!((law.spin_parameter(law.coefficient(s)) - s).abs() < 1e-12, "{law:?} inverts");
            }
        }
    }

    /// DEVELOPERS.md, Sources 3: `dS/dC_L` = 0.94, 1.39, 2.27, 4.33 at `C_L` .15, .20, .25, .30 (rational).
    #[test]
    fn inverting_gets_harder_as_lift_saturates() {
        for (c, slope) in [(0.15, 0.94), (0.20, 1.39), (0.25, 2.27), (0.30, 4.33)] {
            let law = LiftLaw::Rational;
            let numeric = (law.spin_parameter(c + 1e-6) - law.spin_parameter(c - 1e-6)) / 2e-6;
            assert!((numeric - slope).abs() < 0.006, "{c}: {numeric}");
        }
    }

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

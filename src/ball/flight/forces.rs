//! What acts on the ball in the air.

use super::Air;
use crate::ball::spin::{BALL_RADIUS, LiftLaw};
use crate::base::geometry::Vec3;
use crate::base::units::OUNCE;

/// Standard gravity, m/s² (3rd CGPM, 1901).
pub const GRAVITY: f64 = 9.806_65;
/// Middle of the permitted weight, 5 to 5.25 oz (Official Baseball Rules 3.01).
pub const BALL_MASS: f64 = 5.125 * OUNCE;
/// Cross-section of the ball, m².
pub const BALL_AREA: f64 = std::f64::consts::PI * BALL_RADIUS * BALL_RADIUS;
/// Drag coefficient. Its speed dependence may be neglected from 70 to 100 mph (D. Kagan and A. M.
/// Nathan, Phys. Teach. 52 (2014) 278). The value is that of the mean decelerations of the 4,418 pitches of one day of
/// the top league, rounded (R package abdwr3edata, CC0): 0.316 if their air was standard air at sea level (0.297 to
/// 0.325 by family), 0.33 in air of 25 degrees C; which it was is not in the data.
pub const DRAG_COEFFICIENT: f64 = 0.33;

/// Everything needed to turn a velocity into an acceleration. The spin axis is fixed in space.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Forces {
    /// ρ A / 2m, 1/m.
    pub per_metre: f64,
    /// Drag coefficient.
    pub drag: f64,
    /// Angular velocity, rad/s.
    pub angular_velocity: Vec3,
    /// Law from active spin to lift.
    pub lift: LiftLaw,
    /// Constant side-force coefficients (glove side, up) across the flight: the seams' share, or
    /// the whole side force when the spin is not known.
    pub side: [f64; 2],
}

impl Forces {
    /// Drag and a constant side force, no spin.
    pub fn sideways(air: Air, side: [f64; 2]) -> Self {
        Self {
            per_metre: air.density * BALL_AREA / (2.0 * BALL_MASS),
            drag: DRAG_COEFFICIENT,
            angular_velocity: Vec3::default(),
            lift: LiftLaw::DEFAULT,
            side,
        }
    }

    /// Drag only: the throw that breaks are measured against.
    #[must_use]
    pub fn without_side_force(self) -> Self {
        Self { angular_velocity: Vec3::default(), side: [0.0; 2], ..self }
    }

    /// Whether a constant side force acts.
    pub(super) fn has_side_force(&self) -> bool {
        self.side.iter().any(|&c| c != 0.0)
    }

    /// Whether the ball spins.
    pub(super) fn has_spin(&self) -> bool {
        self.angular_velocity != Vec3::default()
    }

    /// Acceleration at `velocity`, m/s².
    #[inline]
    pub fn acceleration(&self, velocity: Vec3) -> Vec3 {
        let speed_squared = velocity.dot(velocity);
        let speed = speed_squared.sqrt();
        let mut sum = velocity * (-self.drag * self.per_metre * speed);
        if self.has_side_force() {
            sum = sum + self.side_force(velocity, speed);
        }
        let turning = self.angular_velocity.cross(velocity);
        let turning_squared = turning.dot(turning);
        if turning_squared > 0.0 {
            // C_L v^2 (w_T x v)/|w_T x v| = (C_L / S) r (w x v), since |w x v| = S v^2 / r.
            let ratio = self.lift.coefficient_per_parameter(BALL_RADIUS * turning_squared.sqrt(), speed_squared);
            sum = sum + turning * (self.per_metre * BALL_RADIUS * ratio);
        }
        sum.z -= GRAVITY;
        sum
    }

    /// The constant coefficients along the two directions across the flight: horizontally to the
    /// glove side (up × v̂) and at right angles to both.
    #[inline]
    fn side_force(&self, v: Vec3, speed: f64) -> Vec3 {
        let across = (v.x * v.x + v.y * v.y).sqrt();
        let glove_side = Vec3::new(-v.y, v.x, 0.0);
        let up = v.cross(glove_side);
        (glove_side * (self.side[0] * speed) + up * self.side[1]) * (self.per_metre * speed / across)
    }
}

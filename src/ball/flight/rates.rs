//! The force law once more, laid out for speed: how velocity and time change per metre of y.
//!
//! Flights are flown by the hundred thousand, and nearly all of them feel drag alone, drag and a constant side force,
//! or drag and spin under a law S / (a + b S). Each of the three has here one square root and one division less than
//! [`Forces::acceleration`], which is the law itself and serves all others; that they agree is a test.

use super::forces::{Forces, GRAVITY};
use crate::ball::spin::BALL_RADIUS;
use crate::base::geometry::Vec3;

/// Change per metre of y.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rates {
    /// Of the velocity, 1/s.
    pub(super) velocity: Vec3,
    /// Of the time, s/m.
    pub(super) time: f64,
}

impl Rates {
    /// Those of an acceleration at `velocity`.
    #[inline]
    pub(super) fn of(acceleration: Vec3, velocity: Vec3) -> Self {
        let time = 1.0 / velocity.y;
        Self { velocity: acceleration * time, time }
    }

    /// Drag and gravity alone.
    #[inline]
    pub(super) fn of_drag(forces: &Forces, v: Vec3) -> Self {
        let mut sum = v * (-forces.drag * forces.per_metre * v.norm());
        sum.z -= GRAVITY;
        Self::of(sum, v)
    }

    /// Drag, gravity and the constant side force.
    #[inline]
    pub(super) fn of_side_force(forces: &Forces, v: Vec3) -> Self {
        let across_squared = v.x * v.x + v.y * v.y;
        let (speed, across) = ((across_squared + v.z * v.z).sqrt(), across_squared.sqrt());
        let both = 1.0 / (across * v.y);
        let (time, scale) = (across * both, forces.per_metre * speed * v.y * both);
        let (glove_side, up) = (forces.side[0] * speed * scale, forces.side[1] * scale);
        let drag = -forces.drag * forces.per_metre * speed;
        let sum = Vec3::new(
            v.x * drag - v.y * glove_side - v.z * v.x * up,
            v.y * drag + v.x * glove_side - v.z * v.y * up,
            v.z * drag + across_squared * up - GRAVITY,
        );
        Self { velocity: sum * time, time }
    }

    /// Drag, gravity and spin under the law S / (a + b S).
    #[inline]
    pub(super) fn of_spin(forces: &Forces, (a, b): (f64, f64), v: Vec3) -> Self {
        let speed_squared = v.dot(v);
        let turning = forces.angular_velocity.cross(v);
        let law = a * speed_squared + b * BALL_RADIUS * turning.norm();
        let both = 1.0 / (law * v.y);
        let time = law * both;
        let lift = forces.per_metre * BALL_RADIUS * speed_squared * (v.y * both);
        let mut sum = v * (-forces.drag * forces.per_metre * speed_squared.sqrt()) + turning * lift;
        sum.z -= GRAVITY;
        Self { velocity: sum * time, time }
    }
}

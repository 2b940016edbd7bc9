//! Where a ball was, from its velocity and acceleration at 50 ft, with the acceleration constant.
//!
//! Not a flight model: units fit a constant acceleration to what they see, and this undoes the fit.

use arsenalfit::base::geometry::Vec3;
use arsenalfit::base::{Movement, Range};

/// Standard gravity, in/s².
pub const GRAVITY_IN_S2: f64 = 32.174 * FOOT_IN;

const FOOT_IN: f64 = 12.0;
/// Where velocities and accelerations are given, ft from the rear point of the plate.
const GIVEN_AT_FT: f64 = 50.0;
/// The front of the plate (Official Baseball Rules: 17 in).
const PLATE_FT: f64 = 17.0 / FOOT_IN;
/// The front of the rubber (Official Baseball Rules: 60 ft 6 in).
const RUBBER_FT: f64 = 60.5;
/// A release this far in front of the rubber where it was not measured: the league day's mean.
const USUAL_EXTENSION_FT: f64 = 6.3;

/// What a throw can have: anything beyond is a fault of the file (common sense, no source).
const FLIGHT_S: Range = Range { low: 0.25, high: 1.2 };
const SIDEWAYS_FT_S: Range = Range { low: -40.0, high: 40.0 };
const SIDEWAYS_FT_S2: Range = Range { low: -90.0, high: 90.0 };

/// A flight from release to the front of the plate. Inches and seconds; x to the glove side, y from
/// the plate to the pitcher, z up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flight {
    /// From release to the front of the plate, s.
    pub time_s: f64,
    /// At the front of the plate, in/s.
    pub velocity_in_s: Vec3,
    /// On the whole way, in/s².
    pub acceleration_in_s2: Vec3,
}

impl Flight {
    /// From velocity (ft/s) and acceleration (ft/s²) at 50 ft; nothing when they are no throw's that
    /// reaches the plate.
    pub(super) fn of(velocity: Vec3, acceleration: Vec3, extension_ft: Option<f64>) -> Option<Self> {
        let release_ft = RUBBER_FT - extension_ft.unwrap_or(USUAL_EXTENSION_FT);
        let when = |at_ft: f64| {
            let speed_squared = velocity.y.powi(2) - 2.0 * acceleration.y * (GIVEN_AT_FT - at_ft);
            (-velocity.y - speed_squared.sqrt()) / acceleration.y
        };
        let at_plate = when(PLATE_FT);
        let time_s = at_plate - when(release_ft);
        let is_throw = FLIGHT_S.holds(time_s)
            && SIDEWAYS_FT_S.holds(velocity.x)
            && SIDEWAYS_FT_S.holds(velocity.z)
            && SIDEWAYS_FT_S2.holds(acceleration.x)
            && SIDEWAYS_FT_S2.holds(acceleration.z);
        is_throw.then(|| Self {
            time_s,
            velocity_in_s: (velocity + acceleration * at_plate) * FOOT_IN,
            acceleration_in_s2: acceleration * FOOT_IN,
        })
    }

    /// Movement over the whole flight against a throw on which gravity alone acts.
    pub fn movement_against_gravity(&self) -> Movement {
        let half_square = 0.5 * self.time_s * self.time_s;
        Movement {
            glove_side_in: half_square * self.acceleration_in_s2.x,
            up_in: half_square * (self.acceleration_in_s2.z + GRAVITY_IN_S2),
        }
    }
}

//! A pitch as nine numbers: where it is, its velocity and its one acceleration, as units store it.

use arsenalfit::base::geometry::Vec3;

/// The rear point of the plate to its front edge, ft.
const PLATE_FRONT_FT: f64 = 17.0 / 12.0;
/// Where the stored velocity counts, ft from the rear point.
const STORED_AT_FT: f64 = 50.0;

/// The path from release to plate, ft and s.
pub(crate) struct Path {
    /// Velocity at release.
    pub(crate) velocity: Vec3,
    /// Acceleration all along.
    pub(crate) acceleration: Vec3,
    /// Seconds from release to the front of the plate.
    pub(crate) time: f64,
}

impl Path {
    /// From the velocity at 50 ft, for a ball that leaves the hand `release_ft` from the rear point.
    pub(crate) fn new(stored: Vec3, acceleration: Vec3, release_ft: f64) -> Self {
        let to = |y: f64| time_to(stored, acceleration, y - STORED_AT_FT);
        let (release, plate) = (to(release_ft), to(PLATE_FRONT_FT));
        Self { velocity: stored + acceleration * release, acceleration, time: plate - release }
    }

    /// Velocity at the front of the plate.
    pub(crate) fn plate_velocity(&self) -> Vec3 {
        self.velocity + self.acceleration * self.time
    }

    /// Velocity half-way in time.
    pub(crate) fn mean_velocity(&self) -> Vec3 {
        self.velocity + self.acceleration * (self.time / 2.0)
    }
}

/// Seconds until the ball has gone `distance` (negative: toward the plate) along y.
fn time_to(velocity: Vec3, acceleration: Vec3, distance: f64) -> f64 {
    let arrival = -(velocity.y * velocity.y + 2.0 * acceleration.y * distance).sqrt();
    (arrival - velocity.y) / acceleration.y
}

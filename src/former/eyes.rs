//! The hitter's eyes: where they are, when he must decide, and how finely he sees.
//!
//! Used twice: separation asks what gap he can resolve, the hitter model adds the noise to what he
//! sees. It says nothing about what he does next.

use crate::base::geometry::{Side, Vec3};
use crate::base::units::{DEGREE, FOOT, INCH, MILLISECOND};

/// How finely a hitter sees, and until when.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Eyes {
    /// Error of a direction, degrees. Direction in depth is told to 0.14-0.22 degrees
    /// (Portfors-Yeomans and Regan, JEP:HPP 23 (1997) 227).
    pub angular_deg: f64,
    /// Relative error of range. Same start value as speed.
    pub range_weber: f64,
    /// Relative error of speed: about 0.06 after 100 ms of viewing
    /// (Snowden and Braddick, Vision Research 31 (1991) 907).
    pub speed_weber: f64,
    /// Seconds over which direction of travel is read.
    pub viewing_window: f64,
    /// Seconds before the hardest pitch arrives when he must decide: a swing lasts about 150 ms
    /// (Adair, AAAS 2000), and sight within the last 150 ms hardly matters (Higuchi et al., `PLoS`
    /// ONE 11 (2016) e0148498).
    pub decision_lead: f64,
    /// Error in reading the release point, m. Start value, no source.
    pub release_read: f64,
    /// Factor on the errors of direction and speed for a same-side hitter, who sees fewer pitchers
    /// of his own side and looks at a release from behind him: the named familiarity term. Geometry
    /// alone does not explain the four-seam's same-side advantage in the teaching data.
    pub same_side_factor: f64,
}

impl Eyes {
    /// Start values, inside the published ranges above, after a first look at the teaching data
    /// (DEVELOPERS.md tells how they were chosen).
    pub const START: Self = Self {
        angular_deg: 0.18,
        range_weber: 0.04,
        speed_weber: 0.04,
        viewing_window: 0.15,
        decision_lead: 165.0 * MILLISECOND,
        release_read: 1.5 * INCH,
        same_side_factor: 1.0,
    };

    /// These eyes in a hitter on `side`.
    #[must_use]
    pub fn on(&self, side: Side) -> Self {
        let factor = match side {
            Side::Same => self.same_side_factor,
            Side::Opposite => 1.0,
        };
        Self {
            angular_deg: self.angular_deg * factor,
            range_weber: self.range_weber * factor,
            speed_weber: self.speed_weber * factor,
            ..*self
        }
    }

    /// Where the eyes are: about 2.4 ft off the middle of the plate on the hitter's own side, level
    /// with its front edge, 5 ft up. Common practice, no published source.
    pub fn position(side: Side) -> Vec3 {
        // A same-side hitter stands on the arm side, away from the glove side.
        Vec3::new(-side.away_sign() * 2.4 * FOOT, 17.0 * INCH, 5.0 * FOOT)
    }

    /// Standard deviations, m, of what he reads of a ball at `ball`: across (x) and up (z).
    ///
    /// The error is angular across the line of sight and proportional along it; each axis takes
    /// its share of both: var = (σ r)² (1 - u²) + (w r)² u², u the axis' part of the direction.
    pub fn place_sd(&self, ball: Vec3, side: Side) -> (f64, f64) {
        let sight = ball - Self::position(side);
        let range = sight.norm();
        let along = sight.unit();
        let share = |u: f64| {
            let across = self.angular_deg * DEGREE * range;
            let depth = self.range_weber * range;
            (across * across * (1.0 - u * u) + depth * depth * u * u).sqrt()
        };
        (share(along.x), share(along.z))
    }

    /// Standard deviation, m/s, of a velocity across the line of sight at `ball`: two looks, each
    /// with the angular error, one viewing window apart.
    pub fn velocity_sd(&self, ball: Vec3, side: Side) -> f64 {
        let range = (ball - Self::position(side)).norm();
        std::f64::consts::SQRT_2 * self.angular_deg * DEGREE * range / self.viewing_window
    }

    /// Angle, degrees, between two balls as this hitter sees them.
    pub fn angle_deg(one: Vec3, other: Vec3, side: Side) -> f64 {
        let eye = Self::position(side);
        let (a, b) = ((one - eye).unit(), (other - eye).unit());
        a.cross(b).norm().atan2(a.dot(b)) / DEGREE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_same_side_hitter_stands_on_the_arm_side() {
        assert!(Eyes::position(Side::Same).x < 0.0);
        assert!(Eyes::position(Side::Opposite).x > 0.0);
    }

    #[test]
    fn an_inch_across_at_twenty_feet_is_about_a_quarter_of_a_degree() {
        let eye = Eyes::position(Side::Same);
        let ball = eye + Vec3::new(0.0, 20.0 * FOOT, 0.0);
        let angle = Eyes::angle_deg(ball, ball + Vec3::new(INCH, 0.0, 0.0), Side::Same);
        assert!((angle - (1.0_f64 / 240.0).atan() / DEGREE).abs() < 1e-9);
    }
}

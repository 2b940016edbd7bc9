//! A throw and the path it takes to the front of the plate.

use super::integrator::integrate_rates;
use super::rates::Rates;
use super::{Forces, State};
use crate::base::geometry::{PLATE_FRONT_Y, Vec3};
use crate::base::units::INCH;
use crate::base::{Location, Movement};

/// Steps from release to plate. Three keep a pitch of 60 mph or more within 0.01 in of the converged
/// path (0.011 in at 60 mph and much bullet spin), and slower ones within 0.15 in however they spin (test).
pub const STEPS: usize = 3;

/// A ball leaving the hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Throw {
    /// Where it leaves the hand.
    pub release: Vec3,
    /// With which velocity.
    pub velocity: Vec3,
    /// What acts on it.
    pub forces: Forces,
}

/// A ball at the front of the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crossing {
    /// Toward the glove side from the middle of the plate, m.
    pub x: f64,
    /// Height, m.
    pub z: f64,
    /// Seconds since release.
    pub time: f64,
    /// Speed there, m/s.
    pub speed: f64,
}

/// The path of a throw, readable at any time before it reaches the plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trajectory {
    states: [State; STEPS + 1],
}

impl Throw {
    /// The path to the front of the plate.
    pub fn fly(&self) -> Trajectory {
        let forces = &self.forces;
        match (forces.has_side_force(), forces.has_spin(), forces.lift.saturation()) {
            (false, false, _) => self.fly_by(|velocity| Rates::of_drag(forces, velocity)),
            (true, false, _) => self.fly_by(|velocity| Rates::of_side_force(forces, velocity)),
            (false, true, Some(law)) => self.fly_by(|velocity| Rates::of_spin(forces, law, velocity)),
            _ => self.fly_by(|velocity| Rates::of(forces.acceleration(velocity), velocity)),
        }
    }

    #[inline]
    fn fly_by(&self, rates: impl Fn(Vec3) -> Rates) -> Trajectory {
        let mut states = [State::default(); STEPS + 1];
        let start = State { time: 0.0, position: self.release, velocity: self.velocity };
        integrate_rates(start, PLATE_FRONT_Y, STEPS, rates, |index, state| states[index] = state);
        Trajectory { states }
    }

    /// The same throw with no sideways force at all.
    #[must_use]
    pub fn without_side_force(self) -> Self {
        Self { forces: self.forces.without_side_force(), ..self }
    }

    /// How far from the throw with no sideways force this one arrives.
    pub fn movement(&self) -> Movement {
        let with = self.fly().crossing();
        let without = self.without_side_force().fly().crossing();
        Movement { glove_side_in: (with.x - without.x) / INCH, up_in: (with.z - without.z) / INCH }
    }
}

impl Crossing {
    /// The place, as it is told.
    pub fn location(self) -> Location {
        Location { glove_side_in: self.x / INCH, height_in: self.z / INCH }
    }
}

impl Trajectory {
    /// The states at equally spaced planes from release to plate.
    pub(super) fn states(&self) -> &[State] {
        &self.states
    }

    /// Where, when and how fast the ball crosses the front of the plate.
    pub fn crossing(&self) -> Crossing {
        let last = self.states[STEPS];
        Crossing { x: last.position.x, z: last.position.z, time: last.time, speed: last.velocity.norm() }
    }

    /// The state at `time`, held to the flight from release to plate.
    ///
    /// Cubic Hermite interpolation between the integrator's states; with steps of some 0.14 s and
    /// a fourth derivative below 5 m/s⁴ its error in place is below 0.005 mm (`h⁴ / 384` of it).
    pub fn at(&self, time: f64) -> State {
        let time = time.clamp(0.0, self.states[STEPS].time);
        let after = (1..STEPS).find(|&i| self.states[i].time >= time).unwrap_or(STEPS);
        let (a, b) = (self.states[after - 1], self.states[after]);
        let span = b.time - a.time;
        let t = (time - a.time) / span;
        let rise = b.position - a.position;
        let c2 = rise * 3.0 - (a.velocity * 2.0 + b.velocity) * span;
        let c3 = (a.velocity + b.velocity) * span - rise * 2.0;
        State {
            time,
            position: a.position + (a.velocity * span + (c2 + c3 * t) * t) * t,
            velocity: a.velocity + (c2 * 2.0 + c3 * (3.0 * t)) * (t / span),
        }
    }
}

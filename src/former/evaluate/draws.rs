//! The ways the world might be: one draw perturbs everything that is not known exactly.

use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256PlusPlus;

use crate::athlete::profile::{Level, PerSide};
use crate::ball::SLOWEST_MPH;
use crate::ball::spin::LiftLaw;
use crate::base::stats::normal_quantile;
use crate::former::eyes::Eyes;
use crate::former::hitter::{Bat, FreeParameters, Hitter, RunValues};

use super::{NewPitch, Thrown};

/// One way the world might be.
#[derive(Debug, Clone, PartialEq)]
pub struct Draw {
    /// The hitters.
    pub hitter: Hitter,
    /// Standard normal errors of (speed, vertical break, glove-side break) for each pitch thrown.
    pub shape_offsets: Vec<[f64; 3]>,
    /// Standard normal luck in own results: (take, miss, weak) for each pitch and side.
    pub luck: Vec<PerSide<[f64; 3]>>,
    /// Shift of the even set of points in this world, 0 to 1.
    pub shift: f64,
    /// Factor on command scatter.
    pub command: f64,
    /// The lift law that turns the new pitch's spin into movement.
    pub lift: LiftLaw,
    /// Share of the hoped-for seam shift that arrives.
    pub seam: f64,
    /// How far off (speed mph, vertical in, glove side in) the new pitch ends up.
    pub new_offset: [f64; 3],
}

/// Relative standard deviations of what the calibration does not fit; this project's assumptions.
const WINDOW_SD: f64 = 0.15;
const RELEASE_READ_SD: f64 = 0.15;
const TURN_SD: f64 = 0.20;
const CONTACT_VALUE_SD: f64 = 0.10;
/// Relative standard deviation of command as stated in a profile.
const COMMAND_SD: f64 = 0.10;
/// The same ball in the same conditions can behave two or three ways (J. Garrett, MS thesis, Utah
/// State 2022): the seams' help is drawn evenly between none and a third more than hoped.
const SEAM_RANGE: (f64, f64) = (0.0, 1.33);
/// How far a learned pitch ends up from its target: standard deviations, this project's assumption.
const NEW_SPEED_SD: f64 = 1.0;
const NEW_BREAK_SD: f64 = 1.5;

/// `count` draws for an arsenal of `pitches` pitches against hitters of `level`; the same for the
/// same seed.
pub fn draws(level: Level, pitches: usize, count: usize, seed: u64) -> Vec<Draw> {
    let mut chance = Chance(Xoshiro256PlusPlus::seed_from_u64(seed));
    (0..count).map(|_| draw(level, pitches, &mut chance)).collect()
}

fn draw(level: Level, pitches: usize, chance: &mut Chance) -> Draw {
    Draw {
        hitter: drawn_hitter(level, chance),
        shape_offsets: (0..pitches).map(|_| std::array::from_fn(|_| chance.normal())).collect(),
        luck: (0..pitches).map(|_| PerSide::from_fn(|_| std::array::from_fn(|_| chance.normal()))).collect(),
        shift: chance.0.gen_range(0.0..1.0),
        command: chance.factor(COMMAND_SD),
        lift: LiftLaw::ALL[chance.0.gen_range(0..LiftLaw::ALL.len())],
        seam: chance.0.gen_range(SEAM_RANGE.0..SEAM_RANGE.1),
        new_offset: [NEW_SPEED_SD * chance.normal(), NEW_BREAK_SD * chance.normal(), NEW_BREAK_SD * chance.normal()],
    }
}

/// A member of the calibrated ensemble, with what the calibration does not fit perturbed.
fn drawn_hitter(level: Level, chance: &mut Chance) -> Hitter {
    let ensemble = FreeParameters::ensemble();
    let Hitter { eyes, choice, bat, runs } = Hitter::at(&ensemble[chance.0.gen_range(0..ensemble.len())], level);
    Hitter {
        eyes: Eyes {
            viewing_window: eyes.viewing_window * chance.factor(WINDOW_SD),
            release_read: eyes.release_read * chance.factor(RELEASE_READ_SD),
            ..eyes
        },
        choice,
        bat: Bat { turn: bat.turn * chance.factor(TURN_SD), ..bat },
        runs: RunValues {
            weak_contact: runs.weak_contact * chance.factor(CONTACT_VALUE_SD),
            solid_contact: runs.solid_contact * chance.factor(CONTACT_VALUE_SD),
            ..runs
        },
    }
}

impl Draw {
    /// The best guess of everything, as a draw.
    pub fn nominal(level: Level, pitches: usize) -> Self {
        Self {
            hitter: Hitter::of(level),
            shape_offsets: vec![[0.0; 3]; pitches],
            luck: vec![PerSide::default(); pitches],
            shift: 0.0,
            command: 1.0,
            lift: LiftLaw::DEFAULT,
            seam: 1.0,
            new_offset: [0.0; 3],
        }
    }

    /// The new pitch as it turns out in this draw: its spin pushes as this draw's lift law says,
    /// the seams help as much as they do here, and it lands a little off its target.
    pub fn realised(&self, new: &NewPitch) -> Thrown {
        let push = self.lift.coefficient(new.spin_parameter) / LiftLaw::DEFAULT.coefficient(new.spin_parameter);
        let push = if push.is_finite() { push } else { 1.0 };
        let total = [new.thrown.shape.glove_side_break_in, new.thrown.shape.vertical_break_in];
        let [side, up] = [0, 1].map(|k| new.spin_break_in[k] * push + (total[k] - new.spin_break_in[k]) * self.seam);
        let mut thrown = new.thrown;
        thrown.shape.speed_mph = (thrown.shape.speed_mph + self.new_offset[0]).max(SLOWEST_MPH);
        thrown.shape.vertical_break_in = up + self.new_offset[1];
        thrown.shape.glove_side_break_in = side + self.new_offset[2];
        thrown.spread.command_side_in *= self.command;
        thrown.spread.command_height_in *= self.command;
        thrown
    }
}

struct Chance(Xoshiro256PlusPlus);

impl Chance {
    fn normal(&mut self) -> f64 {
        normal_quantile(self.0.gen_range(1e-9..1.0 - 1e-9))
    }

    /// A positive factor with median one: exp of a normal with this standard deviation.
    fn factor(&mut self, sd: f64) -> f64 {
        (sd * self.normal()).exp()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_draws_the_same_worlds_and_another_seed_others() {
        assert_eq!(draws(Level::College, 3, 8, 7), draws(Level::College, 3, 8, 7));
        assert_ne!(draws(Level::College, 3, 8, 7), draws(Level::College, 3, 8, 8));
    }
}

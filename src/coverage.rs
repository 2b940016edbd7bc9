//! For developers: does the interval of worth hold what it claims, and how often is a verdict wrong?
//!
//! Athletes are made up with known true shapes. The tool sees averages of a few dozen throws, as a
//! coach would bring, and gives its answer for a sweeper. The truth is then drawn from what the tool
//! says it does not know (hitters, lift law, seams, command, where the pitch ends up), and the two
//! mixes it advised are played in it. This checks the arithmetic of doubt, not the model itself.

use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256PlusPlus;
use rayon::prelude::*;

use crate::advice::{SURE, WORTH_A_TRIAL};
use crate::evaluate::{Draw, Stage, Today, World, draws, worlds};
use crate::geometry::Hand;
use crate::pitch::{Family, Shape};
use crate::profile::{Athlete, Health, Level, Limits, PerSide, Pitch, Profile, Release, Spread, Supination, Weather};
use crate::search::{Command, TRIFLE, best_of_family};
use crate::stats::normal_quantile;

/// What the tool said of one made-up athlete, and what was true.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Case {
    /// The 90 % interval of worth.
    pub said: (f64, f64),
    /// The chance it gave for more than a trifle.
    pub chance: f64,
    /// Runs per 100 pitches that its advice would really save.
    pub truth: f64,
}

impl Case {
    /// Whether the interval held the truth.
    pub fn is_covered(&self) -> bool {
        (self.said.0..=self.said.1).contains(&self.truth)
    }

    /// Whether the pitch really saves more than a trifle.
    pub fn is_worth_it(&self) -> bool {
        self.truth > TRIFLE
    }

    /// The verdict that the chance alone leads to: 0 not now, 1 trial, 2 add.
    pub fn verdict(&self) -> usize {
        usize::from(self.chance >= WORTH_A_TRIAL) + usize::from(self.chance >= SURE)
    }
}

/// Worlds in each answer.
const DRAWS: usize = 96;

/// `count` made-up athletes; the same for the same seed. Those whom no sweeper is in reach of are
/// left out.
pub fn simulate(count: u64, seed: u64) -> Vec<Case> {
    (0..count).into_par_iter().filter_map(|number| case(seed.wrapping_mul(1_000_003).wrapping_add(number))).collect()
}

fn case(seed: u64) -> Option<Case> {
    let mut chance = Xoshiro256PlusPlus::seed_from_u64(seed);
    let truth = made_up(&mut chance);
    let seen = measured(&truth, &mut chance);
    let stage = Stage::new(&seen);
    let today = Today::of(&stage);
    let level = seen.athlete.level;
    let drawn = draws(level, stage.pitches.len(), DRAWS, seed ^ 0x5eed);
    let worlds = worlds(&stage, &today, drawn);
    let found = best_of_family(&stage, &today, Family::Sweeper, Command::Mastered, &worlds).ok()?;
    let worth = &found.worth;
    // The true shapes are known here, so the true world has no error of measurement.
    let real = draws(level, stage.pitches.len(), 1, seed ^ 0x7e57).pop()?;
    let real = Draw { shape_offsets: vec![[0.0; 3]; stage.pitches.len()], ..real };
    let world = World::of(&Stage::new(&truth), &today, real);
    Some(Case {
        said: (worth.overall.low, worth.overall.high),
        chance: worth.chance_real,
        truth: worth.gain_in(&stage, &world, &found.pitch(&stage)),
    })
}

/// An athlete with a fastball and one to three other pitches, all believable.
fn made_up(chance: &mut Xoshiro256PlusPlus) -> Profile {
    let speed = chance.gen_range(84.0..97.0);
    let slot_deg: f64 = chance.gen_range(25.0..75.0);
    let four_seam = pitch(Family::FourSeam, [speed, chance.gen_range(13.0..20.0), chance.gen_range(-10.0..-3.0)]);
    let others = [
        (Family::Changeup, 0.91, (6.0, 5.0), (-14.0, 3.0)),
        (Family::Slider, 0.92, (2.0, 3.0), (4.0, 3.0)),
        (Family::Curveball, 0.84, (-12.0, 4.0), (7.0, 4.0)),
    ];
    let mut pitches = vec![four_seam];
    for (family, share, up, side) in others {
        if chance.gen_bool(0.6) {
            let near = |(middle, reach): (f64, f64), chance: &mut Xoshiro256PlusPlus| {
                middle + reach * chance.gen_range(-1.0..1.0)
            };
            let shape = [speed * (share + chance.gen_range(-0.02..0.02)), near(up, chance), near(side, chance)];
            pitches.push(pitch(family, shape));
        }
    }
    Profile {
        athlete: Athlete {
            name: "made up".into(),
            throws: Hand::Right,
            age: Some(20),
            level: Level::ALL[chance.gen_range(1..Level::ALL.len())],
        },
        release: Release {
            slot_deg,
            height_ft: 5.8,
            side_ft: 2.0,
            extension_ft: 6.2,
            supination: Supination::Ordinary,
        },
        weather: Weather { elevation_ft: 0.0, temperature_f: None, pressure_inhg: None, humidity_percent: 0.0 },
        pitches,
        opposite_share: chance.gen_range(0.35..0.65),
        limits: Limits { fastball_floor: 0.3, new_pitch_cap: 0.35, breaking_cap: 0.6, seam_shift_in: 6.0 },
        health: Health::default(),
        assumptions: Vec::new(),
    }
}

fn pitch(family: Family, [speed_mph, vertical_break_in, glove_side_break_in]: [f64; 3]) -> Pitch {
    let loose = if family.is_fastball() { 1.0 } else { 1.15 };
    Pitch {
        name: family.name().into(),
        family,
        shape: Shape { speed_mph, vertical_break_in, glove_side_break_in },
        spin_rpm: None,
        active_fraction: None,
        spin_clock: None,
        release_height_ft: None,
        release_side_ft: None,
        spread: Spread {
            speed_mph: 1.2,
            vertical_break_in: 2.2,
            glove_side_break_in: 2.2,
            command_side_in: 8.0 * loose,
            command_height_in: 8.5 * loose,
            release_in: 1.5,
        },
        throws: 30,
        usage: PerSide::default(),
        results: PerSide::default(),
        aim: PerSide::default(),
    }
}

/// The athlete as a coach would bring him: averages of the throws behind each pitch.
fn measured(truth: &Profile, chance: &mut Xoshiro256PlusPlus) -> Profile {
    let mut seen = truth.clone();
    for pitch in &mut seen.pitches {
        let root = f64::from(pitch.throws).sqrt();
        let mut error = |sd: f64| normal_quantile(chance.gen_range(1e-9..1.0 - 1e-9)) * sd / root;
        pitch.shape.speed_mph += error(pitch.spread.speed_mph);
        pitch.shape.vertical_break_in += error(pitch.spread.vertical_break_in);
        pitch.shape.glove_side_break_in += error(pitch.spread.glove_side_break_in);
    }
    seen
}

//! What is not known about an athlete, drawn: one draw fixes everything that a worth leans on.
//!
//! A worth is judged in every draw with the use and the targets that were chosen on the best guess: nobody knows which
//! draw is the true one when the pitches are called.

use std::num::NonZeroUsize;

use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256PlusPlus;

use crate::athlete::natural::Likeness;
use crate::athlete::profile::{Level, PerSide};
use crate::ball::spin::LiftLaw;
use crate::base::Movement;
use crate::base::stats::normal_quantile;
use crate::hitter::{Hitter, Reading};

/// One way things may be.
#[derive(Debug, Clone)]
pub struct Draw {
    /// The hitter; even draws read shares, odd ones the crowd.
    pub hitter: Hitter,
    /// What is added to the model's runs.
    pub terms: Terms,
    /// How far each owned pitch's measured mean may be off, in its standard errors.
    pub errors: Vec<ShapeError>,
    /// How far own results may be off, (take, miss, weak contact) in standard deviations, by pitch and side.
    pub luck: Vec<PerSide<[f64; 3]>>,
    /// Factor on command.
    pub command: f64,
    /// The law that turns spin into movement.
    pub lift: LiftLaw,
    /// How far the seams' push of a new pitch lies from its family's mean, in standard deviations between pitchers.
    pub seams: Movement,
    /// How far off its target a new pitch ends up, in standard deviations.
    pub landing: ShapeError,
    /// Factor on the share of a new pitch.
    pub share: f64,
}

/// What stands between the model's runs and those to be expected.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Terms {
    /// What differences in runs between pitches are multiplied with.
    pub shrink: f64,
    /// What pitches of a kind bring beside what the model says.
    pub offsets: Offsets,
    /// The unknown level of a new pitch, runs per 100 thrown.
    pub new_level: f64,
}

/// How many draws an answer makes unless told otherwise.
pub const DRAWS: NonZeroUsize = NonZeroUsize::new(64).expect("not zero");

/// Errors of a shape, in standard deviations.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ShapeError {
    /// Of the speed.
    pub speed: f64,
    /// Of the movement.
    pub movement: Movement,
}

/// Runs per 100 pitches that breaking, off-speed and fast pitches bring the hitters beside what the model says.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Offsets {
    /// Slider, sweeper, curveball.
    pub breaking: f64,
    /// Changeup, splitter.
    pub off_speed: f64,
    /// Four-seam, sinker, cutter.
    pub fast: f64,
}

/// Differences in runs between pitches are over-spread by the model: the slope of what was seen on what was said,
/// cross-validated by game on a league day (R package abdwr3edata, CC0), .6 with a standard error of .2 (computed).
const SHRINK: f64 = 0.6;
const SHRINK_SD: f64 = 0.2;
/// What was seen less what was said by kind of pitch, runs per 100, shrunk toward none, and its standard error; same
/// day (computed).
const OFFSETS: Offsets = Offsets { breaking: -0.16, off_speed: 0.23, fast: 0.0 };
const OFFSETS_SD: Offsets = Offsets { breaking: 0.22, off_speed: 0.25, fast: 0.17 };
/// Standard deviation between pitches of what the model cannot know of a new one (deception, how it is mixed in), runs
/// per 100; same day (computed).
const NEW_LEVEL_SD: f64 = 0.6;
/// Relative standard deviation of command as a profile states it; this project's assumption.
const COMMAND_SD: f64 = 0.10;
/// The same of the share a new pitch will have.
const SHARE_SD: f64 = 0.25;

impl Offsets {
    /// For a pitch of this likeness, runs per 100.
    pub fn of(&self, likeness: &Likeness) -> f64 {
        likeness.mix(|family| {
            if family.is_breaking() {
                self.breaking
            } else if family.is_off_speed() {
                self.off_speed
            } else {
                self.fast
            }
        })
    }
}

/// What a draw fixes, told apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// How hitters see, believe, swing and hit.
    Hitters,
    /// By how much the model spreads pitches too far apart, and what kinds of pitches bring beside it.
    Terms,
    /// What the model cannot know of a new pitch.
    NewLevel,
    /// How well today's shapes are measured.
    Measurement,
    /// Command.
    Command,
    /// The law from spin to lift.
    LiftLaw,
    /// How much the seams help.
    Seams,
    /// Where the new pitch ends up.
    Landing,
    /// How often it is thrown.
    Share,
}

impl Part {
    /// Every one.
    pub const ALL: [Self; 9] = [
        Self::Hitters,
        Self::Terms,
        Self::NewLevel,
        Self::Measurement,
        Self::Command,
        Self::LiftLaw,
        Self::Seams,
        Self::Landing,
        Self::Share,
    ];
}

impl Terms {
    /// The likeliest.
    pub const LIKELIEST: Self = Self { shrink: SHRINK, offsets: OFFSETS, new_level: 0.0 };

    fn drawn(chance: &mut Chance) -> Self {
        Self {
            shrink: SHRINK + SHRINK_SD * chance.normal(),
            offsets: Offsets {
                breaking: OFFSETS.breaking + OFFSETS_SD.breaking * chance.normal(),
                off_speed: OFFSETS.off_speed + OFFSETS_SD.off_speed * chance.normal(),
                fast: OFFSETS.fast + OFFSETS_SD.fast * chance.normal(),
            },
            new_level: NEW_LEVEL_SD * chance.normal(),
        }
    }
}

impl Draw {
    /// `count` draws for an arsenal of `pitches` against hitters of `level`; the same for the same seed.
    pub fn many(level: Level, pitches: usize, count: usize, seed: u64) -> Vec<Self> {
        let hitters = Reading::ALL.map(|reading| Hitter::draws(level, reading));
        let mut chance = Chance(Xoshiro256PlusPlus::seed_from_u64(seed));
        (0..count)
            .map(|index| {
                let reading = &hitters[index % hitters.len()];
                let hitter = &reading[chance.0.gen_range(0..reading.len())];
                Self::one(hitter, pitches, &mut chance)
            })
            .collect()
    }

    /// The likeliest of everything, before this hitter.
    fn likeliest(hitter: &Hitter, pitches: usize) -> Self {
        Self {
            hitter: *hitter,
            terms: Terms::LIKELIEST,
            errors: vec![ShapeError::default(); pitches],
            luck: vec![PerSide::default(); pitches],
            command: 1.0,
            lift: LiftLaw::DEFAULT,
            seams: Movement::default(),
            landing: ShapeError::default(),
            share: 1.0,
        }
    }

    /// The likeliest of everything but `part`, which is as here; `hitters` are the likeliest under each reading.
    #[must_use]
    pub fn with_only(&self, part: Part, hitters: &[Hitter; 2]) -> Self {
        let same = hitters.iter().find(|hitter| hitter.reading == self.hitter.reading);
        let likeliest = Self::likeliest(same.unwrap_or(&self.hitter), self.errors.len());
        match part {
            Part::Hitters => Self { hitter: self.hitter, ..likeliest },
            Part::Terms => Self { terms: Terms { new_level: 0.0, ..self.terms }, ..likeliest },
            Part::NewLevel => {
                Self { terms: Terms { new_level: self.terms.new_level, ..Terms::LIKELIEST }, ..likeliest }
            }
            Part::Measurement => Self { errors: self.errors.clone(), luck: self.luck.clone(), ..likeliest },
            Part::Command => Self { command: self.command, ..likeliest },
            Part::LiftLaw => Self { lift: self.lift, ..likeliest },
            Part::Seams => Self { seams: self.seams, ..likeliest },
            Part::Landing => Self { landing: self.landing, ..likeliest },
            Part::Share => Self { share: self.share, ..likeliest },
        }
    }

    fn one(hitter: &Hitter, pitches: usize, chance: &mut Chance) -> Self {
        Self {
            hitter: *hitter,
            terms: Terms::drawn(chance),
            errors: (0..pitches).map(|_| chance.error()).collect(),
            luck: (0..pitches).map(|_| PerSide::from_fn(|_| std::array::from_fn(|_| chance.normal()))).collect(),
            command: chance.factor(COMMAND_SD),
            lift: LiftLaw::ALL[chance.0.gen_range(0..LiftLaw::ALL.len())],
            seams: chance.movement(),
            landing: chance.error(),
            share: chance.factor(SHARE_SD),
        }
    }
}

struct Chance(Xoshiro256PlusPlus);

impl Chance {
    fn normal(&mut self) -> f64 {
        normal_quantile(self.0.gen_range(1e-9..1.0 - 1e-9))
    }

    fn movement(&mut self) -> Movement {
        Movement { glove_side_in: self.normal(), up_in: self.normal() }
    }

    fn error(&mut self) -> ShapeError {
        ShapeError { speed: self.normal(), movement: self.movement() }
    }

    /// A positive factor with median one: exp of a normal with this standard deviation.
    fn factor(&mut self, sd: f64) -> f64 {
        (sd * self.normal()).exp()
    }
}

//! For developers: does the interval of worth hold what it claims, and how often is a verdict wrong?
//!
//! Athletes are made up with known true shapes, and throw: four days, some with the unit's zero set
//! wrong. What the unit would have written goes the whole way a coach's file goes: read, sorted into
//! pitches, made a profile, and asked about a pitch that the athlete does not throw. The truth is
//! then drawn from what the tool says it does not know (hitters, lift law, seams, command, where the
//! new pitch ends up) and from the true shapes, and the two mixes it advised are played in it. This
//! checks the arithmetic of doubt along the whole way, not the model itself.

use rand::seq::IteratorRandom;
use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256PlusPlus;
use rayon::prelude::*;

use crate::athlete::profile::{Level, Profile, Spread};
use crate::ball::Family;
use crate::decide::advice::{FAMILIES, SURE, WORTH_A_TRIAL};
use crate::files::{ColumnMap, ReadOptions, profile_from_toml, session_from_bytes};
use crate::former::demo::{DemoPitch, Scenario, csv, session};
use crate::former::evaluate::{Draw, Stage, Today, World, draws, worlds};
use crate::former::search::{Command, TRIFLE, best_of_family};
use crate::throws::profile_text::updated_profile;
use crate::throws::{Options, sort};

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

/// `count` made-up athletes; the same for the same seed. Those whom the pitch asked about is out of
/// reach of are left out.
pub fn simulate(count: u64, seed: u64) -> Vec<Case> {
    (0..count).into_par_iter().filter_map(|number| case(seed.wrapping_mul(1_000_003).wrapping_add(number))).collect()
}

/// Nothing when the session cannot be sorted into a profile, or no shape of the family is in reach.
fn case(seed: u64) -> Option<Case> {
    let mut chance = Xoshiro256PlusPlus::seed_from_u64(seed);
    let scenario = Scenario::random(seed);
    let seen = profile_of(&scenario, &mut chance)?;
    let family = new_family(&seen, &mut chance)?;
    let stage = Stage::new(&seen);
    let today = Today::of(&stage);
    let (level, pitches) = (seen.athlete.level, stage.pitches.len());
    let worlds = worlds(&stage, &today, draws(level, pitches, DRAWS, seed ^ 0x5eed));
    let found = best_of_family(&stage, &today, family, Command::Mastered, &worlds).ok()?;
    // The true shapes are known here, so the true world has no error of measurement.
    let real = draws(level, pitches, 1, seed ^ 0x7e57).pop()?;
    let real = Draw { shape_offsets: vec![[0.0; 3]; pitches], ..real };
    let truth = truth_behind(&seen, &scenario);
    let world = World::of(&Stage::new(&truth), &today, real);
    Some(Case {
        said: (found.worth.overall.low, found.worth.overall.high),
        chance: found.worth.chance_real,
        truth: found.worth.gain_in(&stage, &world, &found.pitch(&stage)),
    })
}

/// The profile that the tool makes of the athlete's throws. He throws to nobody: the outcomes of
/// an invented session follow the zone alone and would teach the tool what is not so.
fn profile_of(scenario: &Scenario, chance: &mut Xoshiro256PlusPlus) -> Option<Profile> {
    let mut thrown = session(scenario);
    for throw in &mut thrown.throws {
        (throw.label, throw.outcome, throw.batter_side) = (None, None, None);
    }
    let options = ReadOptions { map: ColumnMap::default(), hand: Some(scenario.hand), progress: &mut |_| {} };
    let session = session_from_bytes("made up", csv(&thrown, None).as_bytes(), options).ok()?;
    let sorted = sort(&session, Options::default());
    let level = Level::ALL[chance.gen_range(1..Level::ALL.len())].name();
    let known = format!(
        "[athlete]\nname = \"made up\"\nlevel = \"{level}\"\n[faces]\nopposite_share = {:.2}\n",
        chance.gen_range(0.35..0.65)
    );
    let update = updated_profile(&known, "made up", &session, &sorted).ok()?;
    profile_from_toml(&update.text, "made up").ok()
}

/// A family a coach would weigh that this athlete does not throw.
fn new_family(profile: &Profile, chance: &mut Xoshiro256PlusPlus) -> Option<Family> {
    let is_new = |family: &Family| profile.pitches.iter().all(|pitch| pitch.family != *family);
    FAMILIES.into_iter().filter(is_new).choose(chance)
}

/// The athlete as he really is: each pitch of the profile with the shape and scatter of the made-up
/// pitch it was measured from, the nearest.
fn truth_behind(seen: &Profile, scenario: &Scenario) -> Profile {
    let mut truth = seen.clone();
    for pitch in &mut truth.pitches {
        let far = |real: &DemoPitch| {
            pitch.shape.movement_distance_in(real.shape).hypot(pitch.shape.speed_mph - real.shape.speed_mph)
        };
        let Some(real) = scenario.pitches.iter().min_by(|a, b| far(a).total_cmp(&far(b))) else { continue };
        pitch.shape = real.shape;
        let [speed_mph, vertical_break_in, glove_side_break_in] = real.sd;
        pitch.spread = Spread { speed_mph, vertical_break_in, glove_side_break_in, ..pitch.spread };
    }
    truth
}

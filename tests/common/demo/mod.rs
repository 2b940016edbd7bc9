//! Invented sessions of known truth, flown with this crate's own flight model.
//!
//! Nobody threw these: the athletes, their pitches and the faults of their units are our own
//! invention, made from a seed for tests, benchmarks and `demo-data/`. A pitch is a spin and a
//! little help from the seams; its true shape is what the flight model makes of that. Throws
//! scatter about it, days shift its zero, and what a unit would have measured comes out. Nothing
//! here is used to answer a question about a real arm.

#![allow(dead_code, unused_imports, reason = "each test takes what it needs of it")]

mod file;
mod scenario;

pub(crate) use file::csv;
pub(crate) use scenario::{Scenario, catalogue, six_weeks, six_weeks_files};

use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256Plus;

use arsenalfit::athlete::session::{Outcome, Place, PlateReading, ReleaseReading, Session, SpinReading, Throw};
use arsenalfit::ball::flight::inverse::{MIDDLE, release_point, shape_of_throw, throw_of_shape};
use arsenalfit::ball::flight::{Air, Forces, Throw as Flight};
use arsenalfit::ball::spin::{LiftLaw, Spin};
use arsenalfit::ball::{Family, Shape};
use arsenalfit::ball::{Release, Supination};
use arsenalfit::base::Location;
use arsenalfit::base::geometry::{Clock, Hand, Side};
use arsenalfit::base::units::{INCH, MPH};

/// A pitch of an invented athlete, as a right-hander's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DemoPitch {
    /// What it is.
    pub(crate) family: Family,
    /// Its true mean shape.
    pub(crate) shape: Shape,
    /// Its mean spin.
    pub(crate) spin: Spin,
    /// Throw-to-throw standard deviations: mph, vertical in, glove side in.
    pub(crate) sd: [f64; 3],
    /// Share of all throws.
    pub(crate) share: f64,
}

/// A day of an invented session.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct DemoDay {
    /// As written in the file.
    pub(crate) name: String,
    /// Throws.
    pub(crate) throws: usize,
    /// The unit's zero that day against the true one: vertical, glove side, inches.
    pub(crate) zero_in: [f64; 2],
}

/// The release every invented athlete has.
pub(crate) const RELEASE: Release =
    Release { slot_deg: 45.0, height_ft: 5.9, side_ft: 2.0, extension_ft: 6.1, supination: Supination::Ordinary };

impl DemoPitch {
    /// The pitch that this spin and these seam coefficients (glove side, up) make.
    pub(crate) fn new(family: Family, speed_mph: f64, spin: Spin, seams: [f64; 2]) -> Self {
        let release = release_point(RELEASE);
        let level = Shape { speed_mph, vertical_break_in: 0.0, glove_side_break_in: 0.0 };
        let aimed = throw_of_shape(level, release, MIDDLE, Air::SEA_LEVEL);
        let angular_velocity = spin.angular_velocity(aimed.velocity.unit());
        let forces =
            Forces { angular_velocity, drag: 0.34, lift: LiftLaw::Rational, ..Forces::sideways(Air::SEA_LEVEL, seams) };
        let shape = shape_of_throw(&Flight { forces, velocity: aimed.velocity.unit() * (speed_mph * MPH), release });
        Self { family, shape, spin, sd: [1.0, 2.0, 2.0], share: 1.0 }
    }

    /// How far apart two pitches are, in units of their joint spread.
    pub(crate) fn separation(&self, other: &Self) -> f64 {
        let looks = [self, other].map(|p| [p.shape.speed_mph, p.shape.vertical_break_in, p.shape.glove_side_break_in]);
        let squared = |d: usize| {
            (looks[0][d] - looks[1][d]).powi(2) / f64::midpoint(self.sd[d] * self.sd[d], other.sd[d] * other.sd[d])
        };
        (0..3).map(squared).sum::<f64>().sqrt()
    }
}

/// The session of a scenario: every throw labelled with its true family.
pub(crate) fn session(scenario: &Scenario) -> Session {
    let mut rng = Xoshiro256Plus::seed_from_u64(scenario.seed);
    let mut throws = Vec::new();
    for (day, plan) in scenario.days.iter().enumerate() {
        for _ in 0..plan.throws {
            let which = pick(&mut rng, &scenario.pitches);
            let row = u32::try_from(throws.len() + 2).unwrap_or(u32::MAX);
            let throw = one_throw(&mut rng, &scenario.pitches[which], plan);
            let label = u16::try_from(which).ok();
            throws.push(Throw { place: Place { file: 0, row }, day: u16::try_from(day).unwrap_or(0), label, ..throw });
        }
    }
    Session {
        hand: Some(scenario.hand),
        files: vec!["demo".to_owned()],
        days: scenario.days.iter().map(|day| day.name.clone()).collect(),
        labels: scenario.pitches.iter().map(|pitch| pitch.family.name().to_owned()).collect(),
        throws,
        ..Session::default()
    }
}

fn pick(rng: &mut Xoshiro256Plus, pitches: &[DemoPitch]) -> usize {
    let total: f64 = pitches.iter().map(|pitch| pitch.share).sum();
    let mut left = rng.gen_range(0.0..total);
    for (index, pitch) in pitches.iter().enumerate() {
        left -= pitch.share;
        if left < 0.0 {
            return index;
        }
    }
    pitches.len() - 1
}

fn one_throw(rng: &mut Xoshiro256Plus, pitch: &DemoPitch, day: &DemoDay) -> Throw {
    let [speed, vertical, glove_side] = pitch.sd.map(|sd| sd * normal(rng));
    let thrown = Shape {
        speed_mph: pitch.shape.speed_mph + speed,
        vertical_break_in: pitch.shape.vertical_break_in + vertical,
        glove_side_break_in: pitch.shape.glove_side_break_in + glove_side,
    };
    let height_in = if pitch.family.is_fastball() { 30.0 } else { 22.0 } + 9.0 * normal(rng);
    let target = Location { glove_side_in: 8.5 * normal(rng), height_in: height_in.max(2.0) };
    let crossing = throw_of_shape(thrown, release_point(RELEASE), target, Air::SEA_LEVEL).fly().crossing();
    let plate = PlateReading { side_in: Some(crossing.x / INCH), height_in: Some(crossing.z / INCH) };
    let shape = Shape {
        vertical_break_in: thrown.vertical_break_in + day.zero_in[0],
        glove_side_break_in: thrown.glove_side_break_in + day.zero_in[1],
        ..thrown
    };
    Throw {
        place: Place::default(),
        day: 0,
        shape,
        spin: spin_reading(rng, pitch.spin),
        release: release_reading(rng),
        plate,
        label: None,
        grip: None,
        wobble: None,
        batter_side: Some(if rng.gen_bool(0.5) { Side::Same } else { Side::Opposite }),
        outcome: Some(outcome(rng, crossing.x / INCH, crossing.z / INCH)),
    }
}

fn spin_reading(rng: &mut Xoshiro256Plus, mean: Spin) -> SpinReading {
    SpinReading {
        rpm: Some(mean.rpm + 70.0 * normal(rng)),
        active_fraction: Some((mean.active_fraction + 0.03 * normal(rng)).clamp(0.02, 1.0)),
        clock: Some(Clock::from_hours(mean.clock.hours() + 0.2 * normal(rng))),
    }
}

fn release_reading(rng: &mut Xoshiro256Plus) -> ReleaseReading {
    ReleaseReading {
        height_ft: Some(RELEASE.height_ft + 0.1 * normal(rng)),
        side_ft: Some(RELEASE.side_ft + 0.1 * normal(rng)),
        extension_ft: Some(RELEASE.extension_ft + 0.1 * normal(rng)),
    }
}

/// What came of it: invented rates that depend on the zone only.
fn outcome(rng: &mut Xoshiro256Plus, side_in: f64, height_in: f64) -> Outcome {
    let is_strike = side_in.abs() < 10.0 && (18.0..42.0).contains(&height_in);
    let swings = rng.gen_bool(if is_strike { 0.65 } else { 0.3 });
    match (swings, is_strike) {
        (false, true) => Outcome::CalledStrike,
        (false, false) => Outcome::Ball,
        (true, _) if rng.gen_bool(if is_strike { 0.15 } else { 0.45 }) => Outcome::SwingAndMiss,
        (true, _) if rng.gen_bool(0.5) => Outcome::Foul,
        (true, _) if rng.gen_bool(0.6) => Outcome::WeakContact,
        (true, _) => Outcome::SolidContact,
    }
}

/// A standard normal number, by the polar method of Box, Muller and Marsaglia.
fn normal(rng: &mut Xoshiro256Plus) -> f64 {
    loop {
        let (a, b) = (rng.gen_range(-1.0..1.0_f64), rng.gen_range(-1.0..1.0_f64));
        let s = a * a + b * b;
        if s > 0.0 && s < 1.0 {
            return a * (-2.0 * s.ln() / s).sqrt();
        }
    }
}

/// The clock for display to the athlete of this hand.
fn shown_clock(clock: Clock, hand: Hand) -> String {
    clock.for_hand(hand).to_string()
}

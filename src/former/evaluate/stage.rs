//! What all evaluations of one athlete share: his release, his air, his hitters and his pitches.

use crate::athlete::profile::{Aim, Pitch, Profile, Spread};
use crate::ball::Release;
use crate::ball::flight::Air;
use crate::ball::flight::inverse::{MIDDLE, release_point, throw_of_shape};
use crate::ball::{Family, SLOWEST_MPH, Shape};
use crate::base::Location;
use crate::base::geometry::{Side, Vec3};
use crate::base::stats::normal_points;
use crate::former::hitter::{FEATURES, Hitter, PitchLaw, Setting};
use crate::former::mix::{Bounds, Group};

use super::Draw;

/// Points of the even set where a result is shown: a gain is then within about 0.03 runs per 100 of
/// what 4096 points say (test).
const POINTS: usize = 320;
/// Points while many shapes are compared, and in each of the worlds, where every world has a set of
/// its own so that their errors do not add up.
const ROUGH_POINTS: usize = 96;

/// How widely a pitcher's targets are scattered, as his hitters know it: about the standard
/// deviation of the targets in [`Aim`]. Common practice, no published source.
const TARGETS_SIDE_IN: f64 = 6.0;
const TARGETS_HEIGHT_IN: f64 = 7.0;

/// A pitch as far as an evaluation cares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thrown {
    /// What it is.
    pub family: Family,
    /// What it does.
    pub shape: Shape,
    /// Where it leaves the hand, m.
    pub release: Vec3,
    /// How much it varies.
    pub spread: Spread,
}

/// A pitch that might be added.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NewPitch {
    /// The pitch.
    pub thrown: Thrown,
    /// The part of its movement (glove side, up; inches) that the spin gives. The rest is seams.
    pub spin_break_in: [f64; 2],
    /// Active spin parameter, where the lift laws are compared.
    pub spin_parameter: f64,
}

/// The shared ground of one athlete's evaluations.
#[derive(Debug, Clone)]
pub struct Stage<'a> {
    /// Whose.
    pub profile: &'a Profile,
    /// Release point, m.
    pub release: Vec3,
    /// The air he throws in.
    pub air: Air,
    /// The hitters he faces.
    pub hitter: Hitter,
    /// His pitches, in the profile's order.
    pub pitches: Vec<Thrown>,
    points: Vec<[f64; FEATURES]>,
}

impl<'a> Stage<'a> {
    /// The ground of `profile`.
    pub fn new(profile: &'a Profile) -> Self {
        let pitches: Vec<Thrown> = profile.pitches.iter().map(|pitch| thrown(pitch, profile.release)).collect();
        Self {
            profile,
            release: release_point(profile.release),
            air: Air::of(profile.weather),
            hitter: Hitter::of(profile.athlete.level),
            pitches,
            points: normal_points(POINTS, 0.0),
        }
    }

    /// The same ground with fewer points, for comparing many shapes.
    #[must_use]
    pub fn rough(&self) -> Self {
        Self { points: normal_points(ROUGH_POINTS, 0.0), ..self.clone() }
    }

    /// The same ground as one draw has it: other hitters, and the measured shapes off by what the
    /// number of throws allows.
    #[must_use]
    pub fn drawn(&self, draw: &Draw) -> Self {
        let mut drawn = self.clone();
        drawn.hitter = draw.hitter;
        drawn.points = normal_points(ROUGH_POINTS, draw.shift);
        for ((thrown, pitch), offset) in drawn.pitches.iter_mut().zip(&self.profile.pitches).zip(&draw.shape_offsets) {
            let per_sd = 1.0 / f64::from(pitch.throws).sqrt();
            let off_mph = offset[0] * per_sd * pitch.spread.speed_mph;
            thrown.shape.speed_mph = (thrown.shape.speed_mph + off_mph).max(SLOWEST_MPH);
            thrown.shape.vertical_break_in += offset[1] * per_sd * pitch.spread.vertical_break_in;
            thrown.shape.glove_side_break_in += offset[2] * per_sd * pitch.spread.glove_side_break_in;
            thrown.spread.command_side_in *= draw.command;
            thrown.spread.command_height_in *= draw.command;
        }
        drawn
    }

    /// Seconds after release at which these hitters decide.
    pub fn decision(&self) -> f64 {
        let arrival =
            |pitch: &Thrown| throw_of_shape(pitch.shape, pitch.release, MIDDLE, self.air).fly().crossing().time;
        // A profile has at least one pitch.
        self.pitches.iter().map(arrival).fold(f64::INFINITY, f64::min) - self.hitter.eyes.decision_lead
    }

    /// The law of `pitch` aimed at `aim` against a hitter on `side`.
    pub fn law(&self, pitch: &Thrown, aim: Aim, side: Side, decision: f64) -> PitchLaw {
        let (away, height) = aim.place_in();
        self.law_at(
            pitch,
            &pitch.spread,
            Location { glove_side_in: away * side.away_sign(), height_in: height },
            side,
            decision,
        )
    }

    /// The habit of `pitch` as the hitter knows it: about the middle, scattered by command and by
    /// the choice of target.
    pub fn habit(&self, pitch: &Thrown, side: Side, decision: f64) -> PitchLaw {
        let spread = Spread {
            command_side_in: pitch.spread.command_side_in.hypot(TARGETS_SIDE_IN),
            command_height_in: pitch.spread.command_height_in.hypot(TARGETS_HEIGHT_IN),
            ..pitch.spread
        };
        self.law_at(pitch, &spread, MIDDLE, side, decision)
    }

    fn law_at(&self, pitch: &Thrown, spread: &Spread, target: Location, side: Side, decision: f64) -> PitchLaw {
        let setting = Setting { release: pitch.release, air: self.air, decision };
        PitchLaw::new(pitch.shape, spread, target, &setting, side, &self.hitter.eyes)
    }

    /// The even set of points.
    pub fn points(&self) -> &[[f64; FEATURES]] {
        &self.points
    }

    /// The bounds on a mix of the pitches thrown today and, last, of `new` when there is one.
    pub fn bounds(&self, new: Option<Family>) -> Bounds {
        let limits = &self.profile.limits;
        let families: Vec<Family> = self.pitches.iter().map(|pitch| pitch.family).chain(new).collect();
        let mut caps = vec![1.0; families.len()];
        if new.is_some() {
            caps[families.len() - 1] = limits.new_pitch_cap;
        }
        let group = |is_member: fn(Family) -> bool, bound: f64| Group {
            members: families.iter().map(|&family| is_member(family)).collect(),
            bound,
        };
        Bounds {
            caps,
            fastballs: group(Family::is_fastball, limits.fastball_floor),
            breaking: group(Family::is_breaking, limits.breaking_cap),
        }
    }

    /// Share of hitters on `side`.
    pub fn side_share(&self, side: Side) -> f64 {
        match side {
            Side::Same => 1.0 - self.profile.opposite_share,
            Side::Opposite => self.profile.opposite_share,
        }
    }
}

fn thrown(pitch: &Pitch, release: Release) -> Thrown {
    let own = Release {
        height_ft: pitch.release_height_ft.unwrap_or(release.height_ft),
        side_ft: pitch.release_side_ft.unwrap_or(release.side_ft),
        ..release
    };
    Thrown { family: pitch.family, shape: pitch.shape, release: release_point(own), spread: pitch.spread }
}

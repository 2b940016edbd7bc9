//! An athlete as the model sees him: every field filled, in range and hand-free.
//!
//! A `Profile` is made only by [`crate::files`], which fills defaults (each noted in
//! [`Profile::assumptions`]), refuses contradictions and mirrors left-handers. So nothing after
//! this point checks, guesses or asks which hand throws.

pub use super::spread::Spread;
use crate::ball::{Against, Family, Release, Shape, Weather};
use crate::base::geometry::{Clock, Hand, Side};
use crate::base::stats::Count;

/// Everything known about one athlete.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// Who he is.
    pub athlete: Athlete,
    /// Where the ball leaves the hand.
    pub release: Release,
    /// The air the shapes were measured in.
    pub weather: Weather,
    /// What he throws; at least one, names unique.
    pub pitches: Vec<Pitch>,
    /// Share of opposite-side hitters he faces, 0 to 1.
    pub opposite_share: f64,
    /// Bounds on how the pitches may be used.
    pub limits: Limits,
    /// What forbids or delays new work.
    pub health: Health,
    /// Every default that was filled in, as one plain sentence each.
    pub assumptions: Vec<String>,
}

impl Profile {
    /// Where `pitch` leaves the hand.
    pub fn release_of(&self, pitch: &Pitch) -> Release {
        Release {
            height_ft: pitch.release_height_ft.unwrap_or(self.release.height_ft),
            side_ft: pitch.release_side_ft.unwrap_or(self.release.side_ft),
            ..self.release
        }
    }
}

/// Who the athlete is.
#[derive(Debug, Clone, PartialEq)]
pub struct Athlete {
    /// As written; may be any text.
    pub name: String,
    /// Throwing hand: used only to mirror results back for display.
    pub throws: Hand,
    /// Years; unknown if not given, and then youth limits cannot be checked.
    pub age: Option<u8>,
    /// The hitters he faces.
    pub level: Level,
}

/// Level of the hitters faced; sets how sharp their eyes and hands are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Level {
    /// Up to about 14 years.
    Youth,
    /// About 15 to 18 years.
    HighSchool,
    /// College and good amateur.
    College,
    /// Professional.
    Professional,
}

impl Level {
    /// Every level, in order.
    pub const ALL: [Self; 4] = [Self::Youth, Self::HighSchool, Self::College, Self::Professional];

    /// As written in a profile.
    pub fn name(self) -> &'static str {
        match self {
            Self::Youth => "youth",
            Self::HighSchool => "high-school",
            Self::College => "college",
            Self::Professional => "professional",
        }
    }
}

/// One pitch he throws.
#[derive(Debug, Clone, PartialEq)]
pub struct Pitch {
    /// As written; unique in the profile.
    pub name: String,
    /// What it is.
    pub family: Family,
    /// Average shape, drag-free.
    pub shape: Shape,
    /// What the profile's own numbers count movement against, when it tells; drag-free is assumed otherwise.
    pub against: Option<Against>,
    /// Total spin, when measured.
    pub spin_rpm: Option<f64>,
    /// Share of the spin at right angles to the flight, when measured.
    pub active_fraction: Option<f64>,
    /// Which way the spin pushes, **as a right-hander's**, when measured.
    pub spin_clock: Option<Clock>,
    /// Height this pitch leaves the hand at, when it differs from the athlete's.
    pub release_height_ft: Option<f64>,
    /// Arm-side distance this pitch leaves the hand at, when it differs from the athlete's.
    pub release_side_ft: Option<f64>,
    /// Throw-to-throw standard deviations.
    pub spread: Spread,
    /// Throws behind the averages.
    pub throws: u32,
    /// Today's share against each side, 0 to 1, when given.
    pub usage: PerSide<Option<f64>>,
    /// Own results against each side, when given.
    pub results: PerSide<Option<Results>>,
    /// Where it is usually aimed against each side, when given.
    pub aim: PerSide<Option<Aim>>,
}

impl Pitch {
    /// Whether total spin, active fraction and clock were all measured.
    pub fn is_spin_measured(&self) -> bool {
        self.spin_rpm.is_some() && self.active_fraction.is_some() && self.spin_clock.is_some()
    }
}

/// One thing for each side of hitter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct PerSide<T> {
    /// Against same-side hitters.
    pub same: T,
    /// Against opposite-side hitters.
    pub opposite: T,
}

impl<T> PerSide<T> {
    /// One thing for each side, made in turn.
    pub fn from_fn(mut make: impl FnMut(Side) -> T) -> Self {
        Self { same: make(Side::Same), opposite: make(Side::Opposite) }
    }

    /// The one for `side`.
    pub fn on(&self, side: Side) -> &T {
        match side {
            Side::Same => &self.same,
            Side::Opposite => &self.opposite,
        }
    }
}

/// Counted results of one pitch against one side. Each count is at most the one it is part of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Results {
    /// Pitches thrown.
    pub pitches: u32,
    /// Of those, swung at.
    pub swings: u32,
    /// Of the swings, missed.
    pub misses: u32,
    /// Of the swings, hit weakly (fouls and soft balls in play), when counted.
    pub weak: Option<u32>,
}

impl Results {
    /// Pitches taken.
    pub fn takes(self) -> Count {
        Count { hits: self.pitches - self.swings, tries: self.pitches }
    }

    /// Swings that missed.
    pub fn misses(self) -> Count {
        Count { hits: self.misses, tries: self.swings }
    }

    /// Contacts that were weak, when counted.
    pub fn weak(self) -> Option<Count> {
        self.weak.map(|weak| Count { hits: weak, tries: self.swings - self.misses })
    }
}

/// A target at the plate, relative to the hitter: which side of the plate, and how high.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Aim {
    /// High, toward the hitter.
    UpIn,
    /// High, middle of the plate.
    Up,
    /// High, away from the hitter.
    UpAway,
    /// Belt high on the inner edge.
    In,
    /// The middle of the zone.
    Middle,
    /// Belt high on the outer edge.
    Away,
    /// Low, toward the hitter.
    DownIn,
    /// Low, middle of the plate.
    Down,
    /// Low, away from the hitter.
    DownAway,
    /// Below the zone, off the plate toward the hitter.
    BackFoot,
    /// Below the zone, off the plate away from the hitter.
    Chase,
}

impl Aim {
    /// Every target, in reading order.
    pub const ALL: [Self; 11] = [
        Self::UpIn,
        Self::Up,
        Self::UpAway,
        Self::In,
        Self::Middle,
        Self::Away,
        Self::DownIn,
        Self::Down,
        Self::DownAway,
        Self::BackFoot,
        Self::Chase,
    ];

    /// As written in a profile.
    pub fn name(self) -> &'static str {
        match self {
            Self::UpIn => "up-in",
            Self::Up => "up",
            Self::UpAway => "up-away",
            Self::In => "in",
            Self::Middle => "middle",
            Self::Away => "away",
            Self::DownIn => "down-in",
            Self::Down => "down",
            Self::DownAway => "down-away",
            Self::BackFoot => "back-foot",
            Self::Chase => "chase",
        }
    }

    /// The target (inches away from the hitter off the middle of the plate, inches above ground).
    ///
    /// These are places to aim at, not to hit: with command scatter of some 8 in, edges are aimed at
    /// from well inside. Heights are the lower third, middle and upper third of the zone in
    /// [`crate::hitter`]. Common practice, no published source.
    pub fn place_in(self) -> (f64, f64) {
        const EDGE: f64 = 5.5;
        const OFF: f64 = 10.5;
        const HIGH: f64 = 35.0;
        const BELT: f64 = 30.0;
        const LOW: f64 = 25.0;
        const BELOW: f64 = 18.0;
        match self {
            Self::UpIn => (-EDGE, HIGH),
            Self::Up => (0.0, HIGH),
            Self::UpAway => (EDGE, HIGH),
            Self::In => (-EDGE, BELT),
            Self::Middle => (0.0, BELT),
            Self::Away => (EDGE, BELT),
            Self::DownIn => (-EDGE, LOW),
            Self::Down => (0.0, LOW),
            Self::DownAway => (EDGE, LOW),
            Self::BackFoot => (-OFF, BELOW),
            Self::Chase => (OFF, BELOW),
        }
    }
}

/// Bounds on usage and on what may change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// Fastballs (four-seam, two-seam, sinker) together at least this share.
    pub fastball_floor: f64,
    /// A new pitch at most this share.
    pub new_pitch_cap: f64,
    /// Breaking balls together at most this share.
    pub breaking_cap: f64,
    /// The most movement the seams are trusted to add; what is usual of each family when not given.
    pub seam_shift_in: Option<f64>,
}

/// What forbids or delays new work. These are flags a person has set; nothing here diagnoses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Health {
    /// Pain in the arm now.
    pub pain: bool,
    /// Coming back from an arm injury.
    pub recent_injury: bool,
    /// A licensed professional has asked for no new breaking ball.
    pub no_new_breaking_ball: bool,
    /// Months off throwing in the last twelve, when known.
    pub months_off: Option<u8>,
}

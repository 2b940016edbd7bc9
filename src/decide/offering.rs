//! A pitch as hitters meet it, and where it is thrown: what every evaluation of an arsenal is made of.

use crate::athlete::natural::{Likeness, NaturalShapes};
use crate::athlete::profile::{Aim, PerSide, Pitch, Profile, Spread};
use crate::ball::flight::inverse::release_point;
use crate::ball::{Family, Release, Shape};
use crate::base::geometry::{Side, Vec3};
use crate::hitter::Scatter;

/// A pitch as hitters meet it.
#[derive(Debug, Clone, PartialEq)]
pub struct Offering {
    /// What it is called.
    pub family: Family,
    /// What it does.
    pub shape: Shape,
    /// Where it leaves the hand, m.
    pub release: Vec3,
    /// Scatter of places about the target, in.
    pub command: Scatter,
    /// Which families it looks like on this arm.
    pub likeness: Likeness,
    /// The athlete's own targets, where the profile tells them.
    pub aims: PerSide<Option<Aim>>,
}

impl Offering {
    /// A pitch the athlete throws.
    pub fn owned(pitch: &Pitch, profile: &Profile, natural: &NaturalShapes) -> Self {
        let release = Release {
            height_ft: pitch.release_height_ft.unwrap_or(profile.release.height_ft),
            side_ft: pitch.release_side_ft.unwrap_or(profile.release.side_ft),
            ..profile.release
        };
        Self {
            family: pitch.family,
            shape: pitch.shape,
            release: release_point(release),
            command: command(&pitch.spread),
            likeness: natural.likeness(pitch.shape, pitch.spin_rpm),
            aims: pitch.aim,
        }
    }

    /// A pitch the athlete would learn, thrown from the usual release with `spread`.
    pub fn to_learn(family: Family, shape: Shape, spread: &Spread, profile: &Profile, natural: &NaturalShapes) -> Self {
        Self {
            family,
            shape,
            release: release_point(profile.release),
            command: command(spread),
            likeness: natural.likeness(shape, None),
            aims: PerSide::default(),
        }
    }

    /// The same pitch with another shape.
    #[must_use]
    pub fn reshaped(&self, shape: Shape, natural: &NaturalShapes) -> Self {
        Self { shape, likeness: natural.likeness(shape, None), ..self.clone() }
    }

    /// The same pitch with its scatter about the target times `factor`.
    #[must_use]
    pub fn with_command(mut self, factor: f64) -> Self {
        self.command = Scatter { side_in: self.command.side_in * factor, height_in: self.command.height_in * factor };
        self
    }

    /// The athlete's own target against hitters on `side`.
    pub fn own_aim(&self, side: Side) -> Option<Aim> {
        *self.aims.on(side)
    }
}

fn command(spread: &Spread) -> Scatter {
    Scatter { side_in: spread.command_side_in, height_in: spread.command_height_in }
}

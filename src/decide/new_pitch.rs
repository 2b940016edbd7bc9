//! A pitch the athlete would learn: how it is thrown to, what gives it its movement, which owned pitch it is most like.

use crate::athlete::natural::{NaturalShapes, alike};
use crate::athlete::profile::Spread;
use crate::ball::spin::LiftLaw;
use crate::ball::{Family, Shape};
use crate::base::Movement;

use super::draws::Draw;
use super::facing::Placed;
use super::model::Model;
use super::offering::Offering;
use super::places::customary;
use super::recipe::recipe_of;
use super::shares::Twin;

/// Whether a new pitch is judged with the command it will have at first or once mastered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// As thrown at first: a quarter more scatter of place and shape.
    Now,
    /// As thrown once mastered: like the athlete's other pitches.
    Mastered,
}

/// How much more a new pitch scatters at first. This project's assumption, no published source.
const NEW_SCATTER: f64 = 1.25;

impl Command {
    /// Factor on the scatter of a mastered pitch.
    pub fn scatter(self) -> f64 {
        match self {
            Self::Now => NEW_SCATTER,
            Self::Mastered => 1.0,
        }
    }
}

/// A pitch to be learnt.
#[derive(Debug, Clone, PartialEq)]
pub struct NewPitch {
    /// The pitch where it would be thrown to.
    pub placed: Placed,
    /// The movement its spin gives; the rest of its shape is the seams'.
    pub spin_movement: Movement,
    /// Its active spin parameter, where the lift laws are compared.
    pub spin_parameter: f64,
    /// How much the seams' push of its family differs between pitchers, standard deviations.
    pub seams_sd: Movement,
    /// The owned pitch it is most like.
    pub twin: Twin,
}

/// What a lift law or the seams do otherwise than expected is seen in training and half mended; this project's
/// assumption.
const NOT_MENDED: f64 = 0.5;
/// How much the seams' push differs between pitchers where it is not known; this project's assumption.
const UNKNOWN_SEAMS_SD: Movement = Movement { glove_side_in: 2.5, up_in: 2.5 };
/// How far a learnt pitch ends up from its target, standard deviations; this project's assumption.
const SPEED_SD_MPH: f64 = 1.0;
const MOVEMENT_SD_IN: f64 = 1.5;

impl NewPitch {
    /// A pitch of this shape beside the athlete's: thrown to its customary places, or to those of the owned pitch it is
    /// like, as far as it is like it.
    pub fn of(model: &Model, family: Family, shape: Shape, command: Command) -> Self {
        let profile = model.profile;
        let spreads = profile.pitches.iter().map(|pitch| (pitch.family, &pitch.spread));
        let spread = Spread::to_expect(spreads).times(command.scatter());
        let recipe = recipe_of(model, family, shape);
        let twin = nearest(model, shape);
        let offering = Offering::to_learn(family, shape, &spread, profile, &model.natural);
        Self {
            placed: customary(offering).toward(&model.arsenal[twin.pitch], twin.likeness),
            spin_movement: recipe.map_or(shape.movement(), |recipe| recipe.spin_push),
            spin_parameter: recipe.map_or(0.0, |recipe| recipe.spin.active_parameter(shape.speed())),
            seams_sd: recipe.map_or(UNKNOWN_SEAMS_SD, |recipe| recipe.usual_seams.sd),
            twin,
        }
    }

    /// The same pitch with its scatter about the target times `factor`.
    #[must_use]
    pub fn scattered(&self, factor: f64) -> Self {
        Self { placed: self.placed.with_command(factor), ..self.clone() }
    }

    /// The pitch as it turns out in `draw`.
    pub fn landed(&self, draw: &Draw, natural: &NaturalShapes) -> Placed {
        let lift = draw.lift.coefficient(self.spin_parameter) / LiftLaw::DEFAULT.coefficient(self.spin_parameter);
        let otherwise = if lift.is_finite() { self.spin_movement * (lift - 1.0) } else { Movement::default() };
        let seams = Movement {
            glove_side_in: draw.seams.glove_side_in * self.seams_sd.glove_side_in,
            up_in: draw.seams.up_in * self.seams_sd.up_in,
        };
        let moved = (otherwise + seams) * NOT_MENDED + draw.landing.movement * MOVEMENT_SD_IN;
        let shape = self.placed.offering.shape.moved(draw.landing.speed * SPEED_SD_MPH, moved);
        self.placed.reshaped(shape, natural).with_command(draw.command)
    }
}

/// The owned pitch that a shape is most like.
fn nearest(model: &Model, shape: Shape) -> Twin {
    let twin = |(pitch, placed): (usize, &Placed)| Twin { pitch, likeness: alike(placed.offering.shape, shape) };
    let twins = model.arsenal.iter().enumerate().map(twin);
    twins.max_by(|a, b| a.likeness.total_cmp(&b.likeness)).unwrap_or(Twin { pitch: 0, likeness: 0.0 })
}

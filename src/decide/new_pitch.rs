//! A pitch the athlete would learn: how it is thrown to, what gives it its movement, which owned pitch it is most like.

use crate::ball::spin::LiftLaw;
use crate::base::Movement;

use super::draws::Draw;
use super::facing::Placed;
use super::shares::Twin;

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
/// How far a learnt pitch ends up from its target, standard deviations; this project's assumption.
const SPEED_SD_MPH: f64 = 1.0;
const MOVEMENT_SD_IN: f64 = 1.5;

impl NewPitch {
    /// The pitch as it turns out in `draw`.
    pub fn landed(&self, draw: &Draw, arm: &Arm) -> Placed {
        let lift = draw.lift.coefficient(self.spin_parameter) / LiftLaw::FITTED.coefficient(self.spin_parameter);
        let otherwise = if lift.is_finite() { self.spin_movement * (lift - 1.0) } else { Movement::default() };
        let seams = Movement {
            glove_side_in: draw.seams.glove_side_in * self.seams_sd.glove_side_in,
            up_in: draw.seams.up_in * self.seams_sd.up_in,
        };
        let moved = (otherwise + seams) * NOT_MENDED + draw.landing.movement * MOVEMENT_SD_IN;
        let shape = self.placed.offering.shape.moved(draw.landing.speed * SPEED_SD_MPH, moved);
        self.placed.reshaped(shape, arm).with_command(draw.command)
    }
}

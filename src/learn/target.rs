//! What a follow-through works toward: one shape, the window around it and the spin that gives it.
//!
//! A target comes from the search, or from three numbers a coach has in mind; the same numbers give the same target
//! either way. All of it is a right-hander's. Nothing here judges whether the target is a good one: that is the advice.

use crate::athlete::natural::NaturalShape;
use crate::athlete::profile::{Profile, Spread};
use crate::ball::spin::Spin;
use crate::ball::{Family, Shape};
use crate::base::Range;
use crate::base::stats::Matrix;
use crate::decide::advice::work;
use crate::decide::chase;
use crate::decide::model::Model;
use crate::decide::recipe::recipe_of;

use super::window::Window;

/// A shape to chase.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Target {
    /// What it is called.
    pub family: Family,
    /// The middle of what is wanted.
    pub shape: Shape,
    /// What still counts as that shape.
    pub window: Window,
    /// The spin that gives it, when known.
    pub spin: Option<Spin>,
    /// Throw-to-throw scatter to be expected of it.
    pub spread: Spread,
}

/// How arms differ in a family of which no arm is known: mph, in, in. This project's choice.
const UNKNOWN: Matrix<3, 3> = [[4.0, 0.0, 0.0], [0.0, 9.0, 0.0], [0.0, 0.0, 9.0]];
/// A pitch is in its window with this share of what a centred, ordinarily scattered one would have
/// there. Common practice, no published source.
const SHARE_OF_BEST: f64 = 0.7;
/// A new pitch may scatter this much more at the plate than the others. Common practice, no
/// published source.
const COMMAND_RATIO: f64 = 1.15;

impl Target {
    /// The shape of `family` to chase; nothing when no arm is known to throw it.
    pub fn best(model: &Model, family: Family) -> Option<Self> {
        let found = chase::target(model, family, work(model.profile, family))?;
        Some(Self::about(model, family, found.shape))
    }

    /// The target of these three numbers.
    pub fn about(model: &Model, family: Family, shape: Shape) -> Self {
        let natural = model.natural.family(family);
        Self {
            family,
            shape,
            window: Window::about(shape, &natural.map_or(UNKNOWN, NaturalShape::shape_covariance)),
            spin: recipe_of(model, family, shape).map(|recipe| recipe.spin),
            spread: likely_spread(model.profile),
        }
    }

    /// The same target with another spin that gives it, measured perhaps.
    #[must_use]
    pub fn with_spin(self, spin: Spin) -> Self {
        Self { spin: Some(spin), ..self }
    }

    /// The chance of a throw in the window once the pitch is in its middle and scatters as expected.
    pub fn chance_at_best(&self) -> f64 {
        self.window.chance(self.window.ranges().map(Range::middle), self.scatter())
    }

    /// The share of throws in the window that counts as being there.
    pub fn share_enough(&self) -> f64 {
        SHARE_OF_BEST * self.chance_at_best()
    }

    /// The most scatter at the plate (root mean square of side and height, in) with which it is
    /// commanded.
    pub fn scatter_enough_in(&self) -> f64 {
        let (side, height) = (self.spread.command_side_in, self.spread.command_height_in);
        COMMAND_RATIO * f64::midpoint(side * side, height * height).sqrt()
    }

    /// Expected scatter of the shape: speed, vertical break, glove-side break.
    pub fn scatter(&self) -> [f64; 3] {
        [self.spread.speed_mph, self.spread.vertical_break_in, self.spread.glove_side_break_in]
    }
}

fn likely_spread(profile: &Profile) -> Spread {
    Spread::to_expect(profile.pitches.iter().map(|pitch| (pitch.family, &pitch.spread)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::profile_from_toml;
    use std::num::NonZeroUsize;

    fn target() -> Target {
        let profile = profile_from_toml(include_str!("../../profiles/three-quarter-right.toml"), "p").unwrap();
        let shape = Shape { speed_mph: 82.0, vertical_break_in: 0.0, glove_side_break_in: 15.0 };
        Target::about(&Model::new(&profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape)
    }

    #[test]
    fn a_target_from_three_numbers_holds_its_own_shape_and_not_a_far_one() {
        let target = target();
        assert!(target.window.holds(target.shape));
        assert!(!target.window.holds(Shape { glove_side_break_in: 8.0, ..target.shape }));
    }

    #[test]
    fn no_mean_does_better_than_the_middle_of_the_window() {
        let target = target();
        let best = target.chance_at_best();
        assert!(best > 0.3 && best < 1.0, "{best}");
        assert!(target.window.chance([83.0, 1.0, 14.0], target.scatter()) < best);
        assert!(target.window.chance([82.0, 40.0, 14.0], target.scatter()) < 1e-9);
    }
}

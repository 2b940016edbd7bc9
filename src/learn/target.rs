//! What a follow-through works toward: one shape, the window around it and the spin that gives it.
//!
//! A target comes from the search, or from three numbers a coach has in mind; the rest of the
//! follow-through does not care which. All of it is a right-hander's. Nothing here judges whether
//! the target is a good one: that is [`crate::former::search`].

use crate::athlete::profile::{Profile, Spread};
use crate::ball::spin::Spin;
use crate::ball::{Family, Shape};
use crate::base::Range;
use crate::former::evaluate::{Stage, Today};
use crate::former::search::reach::Reach;
use crate::former::search::{Candidate, Command, best_of_family};
use crate::learn::window::Window;

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

/// Least half width of a window: speed (mph), then either break (in). A window narrower than an
/// ordinary scatter asks for what no arm does. This project's choice.
const LEAST_HALF: [f64; 3] = [1.5, 2.0, 2.0];
/// Half width of the window around a target that was given as three numbers. This project's choice.
const USUAL_HALF: [f64; 3] = [2.0, 3.0, 3.0];
/// A pitch is in its window with this share of what a centred, ordinarily scattered one would have
/// there. Common practice, no published source.
const SHARE_OF_BEST: f64 = 0.7;
/// A new pitch may scatter this much more at the plate than the others. Common practice, no
/// published source.
const COMMAND_RATIO: f64 = 1.15;

impl Target {
    /// The best reachable shape of `family`; nothing when none is in reach.
    pub fn best(profile: &Profile, family: Family) -> Option<Self> {
        let stage = Stage::new(profile);
        // The shape does not depend on what is not known, only its worth does: nothing is drawn.
        let found = best_of_family(&stage, &Today::of(&stage), family, Command::Mastered, &[]).ok()?;
        Some(Self::of_candidate(&found, profile))
    }

    /// A target from three numbers, with the spin that gives it when that is in reach.
    pub fn wished(profile: &Profile, family: Family, shape: Shape) -> Self {
        let stage = Stage::new(profile);
        let recipe = Reach::of(&stage, family).recipe(&stage, shape);
        Self { spin: recipe.map(|recipe| recipe.spin), ..Self::around(family, shape, profile) }
    }

    /// The target the search found for `profile`.
    pub fn of_candidate(candidate: &Candidate, profile: &Profile) -> Self {
        let shape = candidate.recipe.shape;
        let [speed, vertical, glove_side] =
            [candidate.window.speed_mph, candidate.window.vertical_break_in, candidate.window.glove_side_break_in]
                .map(|(low, high)| Range::new(low, high));
        let found = Window { speed_mph: speed, vertical_break_in: vertical, glove_side_break_in: glove_side };
        Self {
            family: candidate.family,
            shape,
            window: found.and(Window::about(shape, LEAST_HALF)),
            spin: Some(candidate.recipe.spin),
            spread: likely_spread(profile),
        }
    }

    /// A target from three numbers; scatter as on the pitches `profile` has apart from fastballs.
    pub fn around(family: Family, shape: Shape, profile: &Profile) -> Self {
        Self { family, shape, window: Window::about(shape, USUAL_HALF), spin: None, spread: likely_spread(profile) }
    }

    /// The same target with the spin that gives it.
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

/// A shape's three numbers: speed, vertical break, glove-side break.
pub fn numbers(shape: Shape) -> [f64; 3] {
    [shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in]
}

fn likely_spread(profile: &Profile) -> Spread {
    Spread::to_expect(profile.pitches.iter().map(|pitch| (pitch.family, &pitch.spread)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::profile_from_toml;

    fn target() -> Target {
        let profile = profile_from_toml(include_str!("../../profiles/three-quarter-right.toml"), "p").unwrap();
        let shape = Shape { speed_mph: 82.0, vertical_break_in: 0.0, glove_side_break_in: 15.0 };
        Target::around(Family::Sweeper, shape, &profile)
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

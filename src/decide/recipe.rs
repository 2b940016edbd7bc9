//! How this athlete would throw a shape: the spin that is natural for the arm, and the seams' usual part.

use crate::ball::flight::inverse::release_point;
use crate::ball::{Family, Ground, Recipe, Shape, Usual, recipe};

use super::model::Model;

/// The recipe for `shape` of `family`; nothing for a family of which no arm is known.
pub fn recipe_of(model: &Model, family: Family, shape: Shape) -> Option<Recipe> {
    let natural = model.natural.family(family)?;
    let seams = Usual::of(family)?.seams;
    let ground = Ground { release: release_point(model.profile.release), air: model.air };
    Some(recipe(shape, natural.spin_rpm(), seams, ground))
}

//! Which unknown the worth of a pitch leans on most.
//!
//! One thing at a time is drawn, everything else kept at its likeliest; the ends of the range are those of the draws
//! themselves. The order says where a measurement, a bullpen or a second opinion would change the most.

use rayon::prelude::*;

use crate::base::stats::Estimate;

use super::draws::{Draw, Part};
use super::model::Model;
use super::worth::{Change, gain_in};

/// One unknown and what it does to a worth, runs per 100 pitches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Leaning {
    /// What is not known.
    pub part: Part,
    /// The worth when only that is drawn.
    pub worth: Estimate,
}

/// What the worth of `change` leans on, most first.
pub fn why(model: &Model, change: &Change) -> Vec<Leaning> {
    let value = change.best_guess(model);
    let leaning = |part: Part| {
        let drawn: Vec<f64> = model.draws.par_iter().map(|draw| alone(draw, part, model, change)).collect();
        Leaning { part, worth: Estimate::from_draws(value, &drawn) }
    };
    let mut leanings: Vec<Leaning> = Part::ALL.map(leaning).to_vec();
    let width = |leaning: &Leaning| leaning.worth.high - leaning.worth.low;
    leanings.sort_by(|a, b| width(b).total_cmp(&width(a)));
    leanings
}

fn alone(draw: &Draw, part: Part, model: &Model, change: &Change) -> f64 {
    let draw = draw.with_only(part, &model.hitters);
    let gain = gain_in(&draw, model, change);
    model.over_sides(|side| *gain.on(side))
}

//! Which family a shape is on an arm, and how alike two shapes of one arm are.
//!
//! Weights over the families are in proportion to how often arms throw a family at all times the normal density of the
//! shape about the family's natural shape for this arm: names, customary places and twins follow them, not the label.

use super::shape::NaturalShape;
use super::table::{FAMILIES, place};
use crate::ball::{Family, Shape};

/// Share of 135 arms of a league's day (R package abdwr3edata, CC0) that threw each of [`FAMILIES`] at all.
const COMMON: [f64; FAMILIES.len()] = [0.82, 0.52, 0.29, 0.61, 0.19, 0.30, 0.47, 0.10];

/// Weights over [`FAMILIES`] that sum to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Likeness {
    /// One weight for each.
    pub weights: [f64; FAMILIES.len()],
}

impl Likeness {
    pub(super) fn of(shapes: &[NaturalShape; FAMILIES.len()], shape: Shape, spin_rpm: Option<f64>) -> Self {
        let logs: [f64; FAMILIES.len()] =
            std::array::from_fn(|f| COMMON[f].ln() + shapes[f].log_density(shape, spin_rpm));
        let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let chances = logs.map(|log| (log - most).exp());
        let sum: f64 = chances.iter().sum();
        Self { weights: chances.map(|chance| chance / sum) }
    }

    /// The weight of one family; a knuckleball has none.
    pub fn weight(&self, family: Family) -> f64 {
        place(family).map_or(0.0, |f| self.weights[f])
    }

    /// Something told of each family, mixed by the weights.
    pub fn mix(&self, of: impl Fn(Family) -> f64) -> f64 {
        FAMILIES.into_iter().zip(self.weights).map(|(family, weight)| weight * of(family)).sum()
    }

    /// The families, likeliest first, with their weights.
    pub fn ordered(&self) -> [(Family, f64); FAMILIES.len()] {
        let mut all: [(Family, f64); FAMILIES.len()] = std::array::from_fn(|f| (FAMILIES[f], self.weights[f]));
        all.sort_by(|a, b| b.1.total_cmp(&a.1));
        all
    }
}

/// How alike two shapes of one arm are: 1 for the same shape, falling with their distance as exp(-d²/2), d in units
/// that a hitter hardly tells: twice the throw-to-throw spread of practised pitches, which is 1.0 mph, 2.0 in and
/// 2.0 in on a league's day (R package abdwr3edata, CC0, over all families). Twice is an assumption: two pitches that
/// lie so far apart overlap in half of their throws.
pub fn alike(a: Shape, b: Shape) -> f64 {
    const UNIT: [f64; 3] = [2.0, 4.0, 4.0];
    let away = [
        a.speed_mph - b.speed_mph,
        a.vertical_break_in - b.vertical_break_in,
        a.glove_side_break_in - b.glove_side_break_in,
    ];
    let squared: f64 = away.iter().zip(UNIT).map(|(away, unit)| (away / unit).powi(2)).sum();
    (-0.5 * squared).exp()
}

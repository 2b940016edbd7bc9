//! What movement pitches of a family have in this league, given speed and release: where the mean of
//! a few throws is pulled to.
//!
//! A ridge regression of each family's mean movement on speed, release height and release side, one
//! row a pitcher, with [`STIFFNESS`] against slopes; families without enough pitchers share one
//! regression over all, which also bends with speed.

use std::collections::HashMap;

use arsenalfit::base::Movement;
use linfa_linalg::cholesky::SolveC;
use ndarray::{Array1, Array2};

use crate::arsenals::{Arsenals, Group};
use crate::day::Day;

/// The fewest throws of a group and pitchers of a family that a regression is made from.
const FEWEST_THROWS: f64 = 3.0;
const FEWEST_PITCHERS: usize = 5;
/// A group weighs as many throws as it has, up to this many.
const MOST_WEIGHT: f64 = 10.0;
/// Ridge on the slopes, in pitchers of mean weight; a tenth of it where all families are one.
const STIFFNESS: f64 = 6.0;

/// Mean movement against gravity alone, by label of the pitch.
#[derive(Debug, Clone)]
pub struct League {
    by_label: HashMap<String, Line>,
    all: Line,
}

impl League {
    /// From the pitchers of a day.
    pub fn of_day(day: &Day) -> Self {
        Self::of(&Arsenals::as_thrown(day).groups())
    }

    /// From groups of throws.
    pub fn of(groups: &[Group]) -> Self {
        let mut by_label: HashMap<&str, Vec<&Group>> = HashMap::new();
        for group in groups {
            by_label.entry(&group.label).or_default().push(group);
        }
        let lines = by_label.into_iter().filter_map(|(label, groups)| {
            let enough = groups.iter().filter(|group| group.throws >= FEWEST_THROWS).count() >= FEWEST_PITCHERS;
            Some((label.to_owned(), Line::of(groups, Bend::Straight).filter(|_| enough)?))
        });
        let all = Line::of(groups.iter().collect(), Bend::WithSpeed).unwrap_or_default();
        Self { by_label: lines.collect(), all }
    }

    /// The movement to be expected of a pitch with this label, speed and release.
    pub fn movement(&self, group: &Group) -> Movement {
        self.by_label.get(&group.label).unwrap_or(&self.all).at(group)
    }
}

/// Whether the line bends with speed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Bend {
    #[default]
    Straight,
    WithSpeed,
}

#[derive(Debug, Clone, Default)]
struct Line {
    bend: Bend,
    glove_side: Vec<f64>,
    up: Vec<f64>,
}

impl Line {
    /// Nothing when there is no group to draw it from.
    fn of(groups: Vec<&Group>, bend: Bend) -> Option<Self> {
        let groups: Vec<&Group> = groups.into_iter().filter(|group| group.throws >= FEWEST_THROWS).collect();
        let weights: Vec<f64> = groups.iter().map(|group| group.throws.min(MOST_WEIGHT)).collect();
        let mean = weights.iter().sum::<f64>() / weights.len() as f64;
        let rows: Vec<Vec<f64>> = groups.iter().map(|group| features(group, bend)).collect();
        let size = rows.first()?.len();
        let stiffness = if bend == Bend::Straight { STIFFNESS } else { 0.1 * STIFFNESS };
        let mut normal = Array2::from_diag(&Array1::from_elem(size, stiffness));
        normal[[0, 0]] = 1e-6;
        let mut answers = Array2::zeros((size, 2));
        for ((row, group), weight) in rows.iter().zip(&groups).zip(&weights) {
            for i in 0..size {
                for j in 0..size {
                    normal[[i, j]] += row[i] * row[j] * weight / mean;
                }
                answers[[i, 0]] += row[i] * group.movement.glove_side_in * weight / mean;
                answers[[i, 1]] += row[i] * group.movement.up_in * weight / mean;
            }
        }
        let found = normal.solvec(&answers).ok()?;
        Some(Self { bend, glove_side: found.column(0).to_vec(), up: found.column(1).to_vec() })
    }

    fn at(&self, group: &Group) -> Movement {
        let features = features(group, self.bend);
        let along = |slopes: &[f64]| slopes.iter().zip(&features).map(|(slope, feature)| slope * feature).sum();
        Movement { glove_side_in: along(&self.glove_side), up_in: along(&self.up) }
    }
}

/// Constant, speed and release, each about a usual one and in units of about its spread.
fn features(group: &Group, bend: Bend) -> Vec<f64> {
    let speed = (group.speed_mph - 90.0) / 5.0;
    let mut features = vec![1.0, speed, (group.release_height_ft - 5.8) * 2.0, group.release_side_ft - 1.9];
    if bend == Bend::WithSpeed {
        features.push(speed * speed);
    }
    features
}

//! Which families the pitches of one arm are, named together.
//!
//! A shape has no name by itself: a low slot's four-seam runs like a league's sinker. So all pitches of an arm are named
//! at once. For every way to give them families, the factor model tells how likely such an arm throws such pitches: each
//! pitch in turn, hardest first, under what the arm's release and the pitches named before it say of the factors. The
//! ways with the highest probability are kept at every step; a pitch's weights are the sums over the ways kept. How many
//! throws a pitch has only tells how well its shape is known.

use super::arm::{Arm, Beside};
use super::factors::{Belief, Reading};
use super::likeness::Likeness;
use super::table::{FAMILIES, Table};
use crate::ball::Shape;
use crate::base::stats::Matrix;

/// Ways kept at every step.
const WAYS: usize = 64;
/// Which families arms throw together: logarithms of odds, a family's own on the diagonal, each pair's beside.
const TOGETHER: Matrix<{ FAMILIES.len() }, { FAMILIES.len() }> = [
    [1.07, -1.64, 0.00, 0.40, -0.25, 0.55, 1.00, 0.35],
    [-1.64, 0.56, 0.47, -0.05, 0.20, 0.20, 0.08, -0.58],
    [0.00, 0.47, -1.45, -0.73, 0.25, 0.44, 0.86, -0.16],
    [0.40, -0.05, -0.73, 0.04, -1.19, -0.39, 0.53, -0.49],
    [-0.25, 0.20, 0.25, -1.19, -1.27, -0.27, 0.28, -0.57],
    [0.55, 0.20, 0.44, -0.39, -0.27, -2.24, 0.93, 0.27],
    [1.00, 0.08, 0.86, 0.53, 0.28, 0.93, -2.07, -1.05],
    [0.35, -0.58, -0.16, -0.49, -0.57, 0.27, -1.05, -1.84],
];
/// Odds that what sorted as two pitches is one family twice.
const TWICE: f64 = 0.02;
/// Odds that an arm's hardest pitch is no four-seam and no sinker.
const NO_FASTBALL: f64 = 0.03;

/// A pitch without a name.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unnamed {
    /// Its mean shape.
    pub shape: Shape,
    /// Its spin, when measured.
    pub spin_rpm: Option<f64>,
    /// Throws behind the means.
    pub throws: u32,
}

/// One way to name the pitches so far.
#[derive(Clone)]
struct Way {
    families: Vec<usize>,
    log: f64,
    belief: Belief,
    beside: Beside,
}

/// The families of all pitches of an arm, in their order. The arm's fastball speed is not looked at: the pitches tell it.
pub fn name_together(arm: &Arm, pitches: &[Unnamed]) -> Vec<Likeness> {
    name_by_table(Table::shipped(), arm, pitches)
}

fn name_by_table(table: &Table, arm: &Arm, pitches: &[Unnamed]) -> Vec<Likeness> {
    let mut order: Vec<usize> = (0..pitches.len()).collect();
    order.sort_by(|a, b| pitches[*b].shape.speed_mph.total_cmp(&pitches[*a].shape.speed_mph));
    let Some((hardest, others)) = order.split_first() else { return Vec::new() };
    let mut ways: Vec<Way> = (0..FAMILIES.len()).map(|f| first(table, arm, &pitches[*hardest], f)).collect();
    for index in others {
        let next =
            |way: &Way| -> Vec<Way> { (0..FAMILIES.len()).map(|f| way.with(table, &pitches[*index], f)).collect() };
        ways = ways.iter().flat_map(next).collect();
        ways.sort_by(|a, b| b.log.total_cmp(&a.log));
        ways.truncate(WAYS);
    }
    let place = |index: usize| order.iter().position(|ordered| *ordered == index).unwrap_or(0);
    (0..pitches.len()).map(|index| weights(&ways, place(index))).collect()
}

/// The hardest pitch as a family, which tells how hard the fastball is.
fn first(table: &Table, arm: &Arm, pitch: &Unnamed, f: usize) -> Way {
    let is_fastball = f < 2;
    let share = if is_fastball { 1.0 } else { table.families[f].mean[0] / 100.0 };
    let arm = Arm { fastball_mph: Some(pitch.shape.speed_mph / share), ..*arm };
    let beside = Beside::of(&arm, table);
    let belief = Belief::PRIOR + Belief::evidence(&table.arm.loads, &table.arm.residual, &beside.away);
    let log = if is_fastball { 0.0 } else { NO_FASTBALL.ln() };
    Way { families: Vec::new(), log, belief, beside }.with(table, pitch, f)
}

impl Way {
    fn with(&self, table: &Table, pitch: &Unnamed, f: usize) -> Self {
        let block = &table.families[f];
        let reading = self.reading(pitch);
        let odds = if self.families.contains(&f) {
            TOGETHER[f][f] + TWICE.ln()
        } else {
            TOGETHER[f][f] + self.families.iter().map(|g| TOGETHER[f][*g]).sum::<f64>()
        };
        let mut families = self.families.clone();
        families.push(f);
        Self {
            families,
            log: self.log + odds + self.belief.predict(block).log_density(block, &reading),
            belief: self.belief + Belief::pitch(block, &reading),
            beside: self.beside,
        }
    }

    fn reading(&self, pitch: &Unnamed) -> Reading {
        let Shape { speed_mph, vertical_break_in, glove_side_break_in } = pitch.shape;
        let percent = 100.0 * speed_mph / self.beside.fastball_mph;
        let spin = pitch.spin_rpm.map(|rpm| rpm * self.beside.spin / 100.0);
        let axes = [Some(percent), Some(vertical_break_in), Some(glove_side_break_in), spin];
        Reading { axes, throws: f64::from(pitch.throws) }
    }
}

fn weights(ways: &[Way], place: usize) -> Likeness {
    let most = ways.iter().map(|way| way.log).fold(f64::NEG_INFINITY, f64::max);
    let mut weights = [0.0; FAMILIES.len()];
    for way in ways {
        weights[way.families[place]] += (way.log - most).exp();
    }
    let sum: f64 = weights.iter().sum();
    Likeness { weights: weights.map(|weight| weight / sum) }
}

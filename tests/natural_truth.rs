//! Natural shapes against real arms: each pitch of each arm hidden in turn, its table fitted without that arm.
//!
//! Data: `tests/data/league_day.csv` (R package abdwr3edata, CC0), see `common/arms_of_day.rs`. What is beaten is the
//! mean of the family over the other arms, its speed as a share of the fastball's.

#[path = "common/arms_of_day.rs"]
mod arms_of_day;
#[path = "lab/src/natural_fit.rs"]
mod natural_fit;

use arms_of_day::arms;
use arsenalfit::athlete::natural::{Known, NaturalShape, NaturalShapes, fastball_mph};
use arsenalfit::ball::{Family, Shape};
use natural_fit::{ArmMeans, ENOUGH, fit};
use rayon::prelude::*;

/// Squared effort inside of which nine shapes in ten should lie: the 90 % point of chi-squared with three degrees of
/// freedom (any table).
const NINE_IN_TEN: f64 = 6.25;

struct Hidden {
    truth: Shape,
    natural: NaturalShape,
    constant: Shape,
}

impl Hidden {
    /// How far the natural shape and the constant are off, by axis: mph, in, in.
    fn errors(&self) -> [[f64; 2]; 3] {
        let of = |shape: Shape| {
            [
                (shape.speed_mph - self.truth.speed_mph).abs(),
                (shape.vertical_break_in - self.truth.vertical_break_in).abs(),
                (shape.glove_side_break_in - self.truth.glove_side_break_in).abs(),
            ]
        };
        let (natural, constant) = (of(self.natural.shape()), of(self.constant));
        std::array::from_fn(|axis| [natural[axis], constant[axis]])
    }
}

fn without(arms: &[ArmMeans], index: usize) -> Vec<ArmMeans> {
    arms.iter().enumerate().filter(|(other, _)| *other != index).map(|(_, arm)| arm.clone()).collect()
}

/// The other arms' mean of a family, its speed as a share of the fastball.
fn constant(others: &[ArmMeans], family: Family, own_fastball_mph: f64) -> Shape {
    let (mut sum, mut count) = ([0.0; 3], 0.0);
    for arm in others.iter().filter(|arm| arm.pitches.iter().any(|pitch| pitch.family.is_fastball())) {
        let Some(fastball) = fastball_mph(&arm.pitches) else { continue };
        for pitch in arm.pitches.iter().filter(|pitch| pitch.family == family && pitch.throws >= ENOUGH) {
            let Shape { speed_mph, vertical_break_in, glove_side_break_in } = pitch.shape;
            for (sum, value) in sum.iter_mut().zip([speed_mph / fastball, vertical_break_in, glove_side_break_in]) {
                *sum += value;
            }
            count += 1.0;
        }
    }
    let [share, vertical_break_in, glove_side_break_in] = sum.map(|sum| sum / count);
    Shape { speed_mph: share * own_fastball_mph, vertical_break_in, glove_side_break_in }
}

/// Every pitch of an arm, each hidden in turn.
fn hidden(arms: &[ArmMeans], index: usize) -> Vec<Hidden> {
    let others = without(arms, index);
    let table = fit(&others);
    let arm = &arms[index];
    let asked = arm.pitches.iter().filter(|pitch| pitch.throws >= ENOUGH);
    asked
        .filter_map(|truth| {
            let known: Vec<Known> = arm.pitches.iter().filter(|pitch| pitch.family != truth.family).copied().collect();
            known.iter().any(|pitch| pitch.family.is_fastball()).then_some(())?;
            let natural = *NaturalShapes::by_table(&table, &arm.arm(), &known).family(truth.family)?;
            let constant = constant(&others, truth.family, natural.fastball_mph);
            Some(Hidden { truth: truth.shape, natural, constant })
        })
        .collect()
}

#[test]
fn a_hidden_pitch_is_found_nearer_than_by_its_familys_mean_and_nine_in_ten_lie_where_told() {
    let arms = arms();
    let all: Vec<Hidden> = (0..arms.len()).into_par_iter().flat_map_iter(|index| hidden(&arms, index)).collect();
    assert!(all.len() > 150, "{} pitches", all.len());
    let count = all.len() as f64;
    for (axis, name) in ["speed", "vertical break", "glove-side break"].into_iter().enumerate() {
        let [natural, constant] = [0, 1].map(|which| all.iter().map(|h| h.errors()[axis][which]).sum::<f64>() / count);
        // Speeds load on nothing: there the family's mean is only matched.
        let allowed = if axis == 0 { 1.02 } else { 1.0 };
        assert!(natural < constant * allowed, "{name}: {natural:.2} off, the family's mean {constant:.2}");
    }
    let within = all.iter().filter(|h| h.natural.effort(h.truth).powi(2) < NINE_IN_TEN).count() as f64 / count;
    assert!((0.8..0.97).contains(&within), "{within:.2} lie in the 90 % set");
}

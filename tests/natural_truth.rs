//! Real arms with one pitch hidden.
#![expect(clippy::print_stdout, reason = "figures for the notes, shown with --nocapture")]

#[path = "common/arms_of_day.rs"]
mod arms_of_day;
#[path = "lab/src/natural_fit.rs"]
mod natural_fit;

use arms_of_day::arms;
use arsenalfit::athlete::natural::{FAMILIES, Known, NaturalShape, NaturalShapes, Table, place};
use arsenalfit::ball::{Family, Shape};
use natural_fit::{ArmMeans, ENOUGH, fit};
use rayon::prelude::*;

struct Hidden {
    family: Family,
    truth: Known,
    natural: NaturalShape,
    constant: Shape,
    constant_spin: f64,
}

impl Hidden {
    fn errors(&self) -> [[f64; 2]; 4] {
        let of = |shape: Shape, spin: f64| {
            [
                (shape.speed_mph - self.truth.shape.speed_mph).abs(),
                (shape.vertical_break_in - self.truth.shape.vertical_break_in).abs(),
                (shape.glove_side_break_in - self.truth.shape.glove_side_break_in).abs(),
                self.truth.spin_rpm.map_or(0.0, |rpm| (rpm - spin).abs()),
            ]
        };
        let (ours, theirs) = (of(self.natural.shape(), self.natural.spin_rpm()), of(self.constant, self.constant_spin));
        std::array::from_fn(|axis| [ours[axis], theirs[axis]])
    }
}

fn without(arms: &[ArmMeans], index: usize) -> Vec<ArmMeans> {
    arms.iter().enumerate().filter(|(other, _)| *other != index).map(|(_, arm)| arm.clone()).collect()
}

/// The other arms' mean, speed as a share of the fastball.
fn constant(others: &[ArmMeans], family: Family, fastball_mph: f64) -> (Shape, f64) {
    let (mut sum, mut count) = ([0.0; 4], 0.0);
    for arm in others {
        let Some(fastball) = arsenalfit::athlete::natural::fastball_mph(&arm.pitches)
            .filter(|_| arm.pitches.iter().any(|p| p.family.is_fastball()))
        else {
            continue;
        };
        for pitch in arm.pitches.iter().filter(|pitch| pitch.family == family && pitch.throws >= ENOUGH) {
            let Shape { speed_mph, vertical_break_in, glove_side_break_in } = pitch.shape;
            for (sum, value) in sum.iter_mut().zip([
                speed_mph / fastball,
                vertical_break_in,
                glove_side_break_in,
                pitch.spin_rpm.unwrap_or(2300.0),
            ]) {
                *sum += value;
            }
            count += 1.0;
        }
    }
    let [share, vertical_break_in, glove_side_break_in, spin] = sum.map(|sum| sum / count);
    (Shape { speed_mph: share * fastball_mph, vertical_break_in, glove_side_break_in }, spin)
}

fn hidden(arms: &[ArmMeans], index: usize, table: &Table) -> Vec<Hidden> {
    let others = without(arms, index);
    let arm = &arms[index];
    let asked = arm.pitches.iter().filter(|pitch| pitch.throws >= ENOUGH);
    asked
        .filter_map(|truth| {
            let known: Vec<Known> = arm.pitches.iter().filter(|pitch| pitch.family != truth.family).copied().collect();
            known.iter().any(|pitch| pitch.family.is_fastball()).then_some(())?;
            let natural = *NaturalShapes::by_table(table, &arm.arm(), &known).family(truth.family)?;
            let (constant, constant_spin) = constant(&others, truth.family, natural.fastball_mph);
            Some(Hidden { family: truth.family, truth: *truth, natural, constant, constant_spin })
        })
        .collect()
}

fn all_hidden() -> Vec<Hidden> {
    let arms = arms();
    (0..arms.len()).into_par_iter().flat_map_iter(|index| hidden(&arms, index, &fit(&without(&arms, index)))).collect()
}

#[test]
fn x() {
    let start = std::time::Instant::now();
    let table = fit(&arms());
    println!("{} one fit {:?}", table.to_csv(), start.elapsed());
    let all = all_hidden();
    println!("{:?}", start.elapsed());
    let six = |h: &&Hidden| place(h.family).is_some_and(|f| f >= 2);
    let mut d2: Vec<f64> = all.iter().map(|h| h.natural.effort(h.truth.shape).powi(2)).collect();
    for family in FAMILIES {
        let these: Vec<&Hidden> = all.iter().filter(|h| h.family == family).collect();
        show(&format!("{family}"), &these);
    }
    show("all", &all.iter().collect::<Vec<_>>());
    show("six", &all.iter().filter(six).collect::<Vec<_>>());
    d2.sort_by(f64::total_cmp);
    for p in [0.25, 0.5, 0.75, 0.8, 0.9, 0.95] {
        println!("d2 at {p}: {:.2}", d2[(p * d2.len() as f64) as usize]);
    }
}

fn show(name: &str, these: &[&Hidden]) {
    let n = these.len() as f64;
    let mean = |axis: usize, which: usize| these.iter().map(|h| h.errors()[axis][which]).sum::<f64>() / n;
    let row: String = (0..4)
        .map(|axis| format!("  {:.2}/{:.2} {:+.3}", mean(axis, 0), mean(axis, 1), 1.0 - mean(axis, 0) / mean(axis, 1)))
        .collect();
    let within = these.iter().filter(|h| h.natural.effort(h.truth.shape).powi(2) < 6.25).count() as f64 / n;
    println!("{name:10} {n:4} {row}  within 90%: {within:.2}");
}
#[test]
fn y() {
    for h in all_hidden().iter().filter(|h| (h.natural.fastball_mph - 94.39).abs() > 6.25) {
        println!(
            "{:10} fb {:.1} spin {:.0} true {:?} const {:.0} v {:.1} {:.1} const {:.1}",
            h.family,
            h.natural.fastball_mph,
            h.natural.spin_rpm(),
            h.truth.spin_rpm,
            h.constant_spin,
            h.natural.mean[1],
            h.truth.shape.vertical_break_in,
            h.constant.vertical_break_in
        );
    }
}

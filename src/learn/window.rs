//! What still counts as the shape that is chased: which shapes are in it, how likely a throw lands in it, and the line
//! around it on a map. Everything that counts or draws a window asks here.
//!
//! A window is an ellipsoid about the target in speed and movement: as far as one standard deviation between arms like
//! the athlete's, so that it is wide where such arms differ and leans as they lean (a sweeper with more sweep drops more).

use crate::ball::Shape;
use crate::base::stats::{Cholesky, Matrix, NormalTable};
use crate::base::{Movement, Range};

/// Shapes within one standard deviation of the target: speed, vertical break, glove-side break.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    centre: [f64; 3],
    covariance: Matrix<3, 3>,
    root: Cholesky<3>,
}

/// Least standard deviation along an axis: speed (mph), then either break (in). A narrower window asks for what no arm
/// does. This project's choice.
const LEAST_SD: [f64; 3] = [1.5, 2.0, 2.0];
/// Nodes across an axis when a chance is added up.
const NODES: usize = 15;
/// Points of a drawn line.
const LINE: usize = 48;

impl Window {
    /// The window about `shape` for arms that differ by `covariance` (mph, in, in).
    pub fn about(shape: Shape, covariance: &Matrix<3, 3>) -> Self {
        let wider = std::array::from_fn(|axis: usize| (LEAST_SD[axis] / covariance[axis][axis].sqrt()).max(1.0));
        let wider: [f64; 3] = wider;
        let covariance = std::array::from_fn(|i| std::array::from_fn(|j| covariance[i][j] * wider[i] * wider[j]));
        Self { centre: shape.numbers(), covariance, root: Cholesky::of(&covariance) }
    }

    /// From end to end along each axis: speed, vertical break, glove-side break.
    pub fn ranges(&self) -> [Range; 3] {
        std::array::from_fn(|axis| Range::about(self.centre[axis], self.covariance[axis][axis].sqrt()))
    }

    /// Whether `shape` lies in it.
    pub fn holds(&self, shape: Shape) -> bool {
        self.distance(shape.numbers()) <= 1.0
    }

    /// How far off the target, as a share of the way to the edge.
    fn distance(&self, numbers: [f64; 3]) -> f64 {
        let off = std::array::from_fn(|axis| numbers[axis] - self.centre[axis]);
        self.root.forward(&off).iter().map(|part| part * part).sum::<f64>().sqrt()
    }

    /// Chance that a throw lands in it when throws scatter by `sd` about `mean`, each number by itself: added up over
    /// speeds and vertical breaks, exactly along the glove side.
    pub fn chance(&self, mean: [f64; 3], sd: [f64; 3]) -> f64 {
        let table = NormalTable::shared();
        let per_sd = sd.map(|sd| 1.0 / sd.max(1e-9));
        let mut chance = 0.0;
        for speed in unit_nodes() {
            // Points of the unit ball, turned into shapes by the root of the covariance.
            let rest = (1.0 - speed * speed).max(0.0).sqrt();
            for up in unit_nodes().map(|node| node * rest) {
                let half = (rest * rest - up * up).max(0.0).sqrt();
                let [mph, vertical, glove] = self.root.spread(&[speed, up, 0.0]);
                let reach = half * self.root.spread(&[0.0, 0.0, 1.0])[2];
                let at = [self.centre[0] + mph, self.centre[1] + vertical, self.centre[2] + glove];
                let along = table.mass_and_slope(at[2] - reach, at[2] + reach, mean[2], per_sd[2]).0.max(0.0);
                let density = |axis: usize| {
                    let z = (at[axis] - mean[axis]) * per_sd[axis];
                    (-0.5 * z * z).exp() * per_sd[axis] / (2.0 * std::f64::consts::PI).sqrt()
                };
                chance += density(0) * density(1) * along * rest;
            }
        }
        let cell = (2.0 / NODES as f64).powi(2);
        let stretch = self.root.spread(&[1.0, 0.0, 0.0])[0] * self.root.spread(&[0.0, 1.0, 0.0])[1];
        (chance * cell * stretch).clamp(0.0, 1.0)
    }

    /// The closed line around the movements in it at the target's speed, in order.
    pub fn contour(&self) -> Vec<Movement> {
        let point = |index: usize| {
            let (sin, cos) = (std::f64::consts::TAU * index as f64 / LINE as f64).sin_cos();
            let [_, up, glove] = self.root.spread(&[0.0, cos, sin]);
            Movement { glove_side_in: self.centre[2] + glove, up_in: self.centre[1] + up }
        };
        (0..LINE).map(point).collect()
    }
}

/// Middles of even cells of -1..1.
fn unit_nodes() -> impl Iterator<Item = f64> {
    (0..NODES).map(|node| (2 * node + 1) as f64 / NODES as f64 - 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    const COVARIANCE: Matrix<3, 3> = [[4.0, 1.5, -2.0], [1.5, 12.0, -8.0], [-2.0, -8.0, 16.0]];
    const MIDDLE: Shape = Shape { speed_mph: 80.0, vertical_break_in: -2.0, glove_side_break_in: 13.0 };

    #[test]
    fn the_line_around_a_window_parts_what_it_holds_from_what_it_does_not() {
        let window = Window::about(MIDDLE, &COVARIANCE);
        for edge in window.contour() {
            let at = |share: f64| {
                let towards = edge - MIDDLE.movement();
                MIDDLE.moved(0.0, towards * share)
            };
            assert!(window.holds(at(0.99)) && !window.holds(at(1.01)), "{edge:?}");
        }
    }

    /// Against a count of throws drawn evenly (the additive recurrence of [`crate::base::stats::normal_points`]).
    #[test]
    fn the_chance_of_a_throw_in_the_window_is_the_share_of_drawn_throws_in_it() {
        let window = Window::about(MIDDLE, &COVARIANCE);
        for (mean, sd) in [([80.0, -2.0, 13.0], [1.0, 2.5, 2.5]), ([81.0, 1.0, 11.0], [1.2, 2.0, 3.0])] {
            let points = crate::base::stats::normal_points::<3>(40_000, 0.0);
            let inside = points.iter().filter(|z| {
                let n: [f64; 3] = std::array::from_fn(|axis| mean[axis] + sd[axis] * z[axis]);
                window.holds(Shape { speed_mph: n[0], vertical_break_in: n[1], glove_side_break_in: n[2] })
            });
            let counted = inside.count() as f64 / points.len() as f64;
            let added = window.chance(mean, sd);
            assert!((added - counted).abs() < 0.01, "added up {added}, counted {counted}");
        }
    }

    #[test]
    fn no_window_is_narrower_than_an_ordinary_arm_scatters() {
        let ranges = Window::about(MIDDLE, &[[0.01, 0.0, 0.0], [0.0, 0.01, 0.0], [0.0, 0.0, 0.01]]).ranges();
        for (range, least) in ranges.into_iter().zip(LEAST_SD) {
            assert!((range.width() - 2.0 * least).abs() < 1e-9, "{range:?}");
        }
    }
}

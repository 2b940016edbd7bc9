//! What still counts as the shape that is chased: which shapes are in it, how likely a throw lands
//! in it, and the line around it on a map. Everything that counts or draws a window asks here.

use crate::ball::Shape;
use crate::base::stats::NormalTable;
use crate::base::{Movement, Range};

/// Shapes within a range of each number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Release speed, mph.
    pub speed_mph: Range,
    /// Vertical break, in.
    pub vertical_break_in: Range,
    /// Glove-side break, in.
    pub glove_side_break_in: Range,
}

impl Window {
    /// `half` (mph, in, in) to either side of `shape`.
    pub fn about(shape: Shape, half: [f64; 3]) -> Self {
        Self {
            speed_mph: Range::about(shape.speed_mph, half[0]),
            vertical_break_in: Range::about(shape.vertical_break_in, half[1]),
            glove_side_break_in: Range::about(shape.glove_side_break_in, half[2]),
        }
    }

    /// The smallest window that holds both.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        let both = |a: Range, b: Range| Range::new(a.low.min(b.low), a.high.max(b.high));
        Self {
            speed_mph: both(self.speed_mph, other.speed_mph),
            vertical_break_in: both(self.vertical_break_in, other.vertical_break_in),
            glove_side_break_in: both(self.glove_side_break_in, other.glove_side_break_in),
        }
    }

    /// Its ranges: speed, vertical break, glove-side break.
    pub fn ranges(&self) -> [Range; 3] {
        [self.speed_mph, self.vertical_break_in, self.glove_side_break_in]
    }

    /// Whether `shape` lies in it.
    pub fn holds(&self, shape: Shape) -> bool {
        let numbers = [shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in];
        self.ranges().into_iter().zip(numbers).all(|(range, number)| range.holds(number))
    }

    /// Chance that a throw lands in it when throws scatter by `sd` about `mean`, each number by itself.
    pub fn chance(&self, mean: [f64; 3], sd: [f64; 3]) -> f64 {
        let table = NormalTable::shared();
        let mass = |axis: usize| {
            let range = self.ranges()[axis];
            table.mass_and_slope(range.low, range.high, mean[axis], 1.0 / sd[axis].max(1e-9)).0.max(0.0)
        };
        mass(0) * mass(1) * mass(2)
    }

    /// The closed line around the movements in it, in order.
    pub fn contour(&self) -> Vec<Movement> {
        let (up, side) = (self.vertical_break_in, self.glove_side_break_in);
        let corner = |glove_side_in, up_in| Movement { glove_side_in, up_in };
        vec![corner(side.low, up.low), corner(side.low, up.high), corner(side.high, up.high), corner(side.high, up.low)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Twice the area by the shoelace formula; the window is what its contour encloses.
    #[test]
    fn the_line_around_a_window_encloses_what_it_holds() {
        let middle = Shape { speed_mph: 80.0, vertical_break_in: -2.0, glove_side_break_in: 13.0 };
        let window = Window::about(middle, [2.0, 3.0, 4.0]);
        let line = window.contour();
        let next = line.iter().cycle().skip(1);
        let twice: f64 =
            line.iter().zip(next).map(|(a, b)| a.glove_side_in * b.up_in - b.glove_side_in * a.up_in).sum();
        assert!((twice.abs() / 2.0 - 6.0 * 8.0).abs() < 1e-9, "{twice}");
        for corner in line {
            let at = |share: f64| Shape {
                vertical_break_in: middle.vertical_break_in + share * (corner.up_in - middle.vertical_break_in),
                glove_side_break_in: middle.glove_side_break_in
                    + share * (corner.glove_side_in - middle.glove_side_break_in),
                ..middle
            };
            assert!(window.holds(at(0.99)) && !window.holds(at(1.01)), "{corner:?}");
        }
    }
}

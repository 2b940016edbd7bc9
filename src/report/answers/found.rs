//! The shape to chase of a family, as several answers show it.

use crate::decide::advice::Candidate;
use crate::learn::window::Window;

use super::super::charts::{Ink, MapTarget};
use super::super::content::amount::{movement, speed};
use super::super::content::{Text, text};

/// What still counts as the shape to chase.
pub(crate) fn window(candidate: &Candidate) -> Window {
    Window::about(candidate.target.shape, &candidate.target.natural.shape_covariance())
}

/// The shape to chase on a map.
pub(crate) fn map_target<'n>(candidate: &Candidate, name: &'n str, ink: Ink) -> MapTarget<'n> {
    let window = window(candidate);
    MapTarget {
        name,
        ink,
        shape: candidate.target.shape,
        contour: window.contour(),
        ranges: window.ranges(),
        line: "The dashed line holds what still counts as the pitch: one standard deviation of such arms about the target.",
    }
}

/// "80, -2, +14": speed, vertical and glove-side break in whole numbers.
pub(crate) fn in_short(candidate: &Candidate) -> Text {
    let shape = candidate.target.shape;
    let [up, side] =
        [shape.vertical_break_in, shape.glove_side_break_in].map(|inches| movement(inches).bare().places(0));
    text![speed(shape.speed_mph).bare().places(0), ", ", up, ", ", side]
}

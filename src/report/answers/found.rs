//! The best shape found for a family, as several answers show it.

use crate::base::{Movement, Range};
use crate::former::search::{Candidate, Window};

use super::super::charts::{Ink, MapTarget};
use super::super::content::amount::{movement, speed};
use super::super::content::{Text, text};

/// The ranges of a window: speed, vertical break, glove-side break.
pub(crate) fn ranges(window: Window) -> [Range; 3] {
    [window.speed_mph, window.vertical_break_in, window.glove_side_break_in].map(|(low, high)| Range::new(low, high))
}

/// The found shape on a map. Its window is known along each axis alone, so its line joins the four ends.
pub(crate) fn map_target<'n>(candidate: &Candidate, name: &'n str, ink: Ink) -> MapTarget<'n> {
    let (shape, [mph, up, side]) = (candidate.recipe.shape, ranges(candidate.window));
    let end = |glove_side_in, up_in| Movement { glove_side_in, up_in };
    let (middle_up, middle_side) = (shape.vertical_break_in, shape.glove_side_break_in);
    MapTarget {
        name,
        ink,
        shape,
        contour: vec![
            end(side.low, middle_up),
            end(middle_side, up.high),
            end(side.high, middle_up),
            end(middle_side, up.low),
        ],
        ranges: [mph, up, side],
        line: "The dashed line ends where, along each axis alone, 90 % of the gain is kept.",
    }
}

/// "80, -2, +14": speed, vertical and glove-side break in whole numbers.
pub(crate) fn in_short(candidate: &Candidate) -> Text {
    let shape = candidate.recipe.shape;
    let [up, side] =
        [shape.vertical_break_in, shape.glove_side_break_in].map(|inches| movement(inches).bare().places(0));
    text![speed(shape.speed_mph).bare().places(0), ", ", up, ", ", side]
}

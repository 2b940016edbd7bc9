//! The sheet of the shape map: a survey sheet rather than a graph. Small crosses every six inches
//! instead of a grid, words at the edges instead of axes, and the ball that no spin moves in the
//! middle. Seen by the pitcher, so a right-hander's glove side is to the left.

use crate::athlete::profile::Spread;
use crate::ball::Shape;
use crate::base::geometry::Hand;
use crate::base::{Movement, Range};

use super::super::svg::{Drawing, Point, Tag};
use super::labels::Labels;
use super::marks::Ink;
use super::scale::range_of;
use super::sheet::{WIDTH, sheet};

/// Radius, in standard deviations, of the ellipse that half of all throws fall in: for a round
/// normal scatter the share within r is 1 - exp(-r²/2).
pub(crate) const HALF: f64 = 1.177;
/// Size of a mark.
pub(crate) const MARK: f64 = 6.5;
/// Inches between survey crosses.
const STEP: f64 = 6.0;
/// Room for words left and right, above and below.
const MARGIN: Point = (22.0, 26.0);
/// The most height inches take.
const TALLEST: f64 = 290.0;
/// Inches left free around what is shown.
const FREE_IN: f64 = 3.0;

/// The movement of a shape.
pub(crate) fn moved(shape: Shape) -> Movement {
    Movement { glove_side_in: shape.glove_side_break_in, up_in: shape.vertical_break_in }
}

/// Where inches of movement stand on the sheet.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Ground {
    glove_side: Range,
    up: Range,
    per_inch: f64,
    hand: Hand,
}

impl Ground {
    /// Room for every one of some movements, as a pitcher of `hand` sees them.
    pub(crate) fn holding(movements: &[Movement], hand: Hand) -> Self {
        let padded = |read: fn(&Movement) -> f64| {
            let (low, high) = range_of(movements.iter().map(read));
            Range { low: low - FREE_IN, high: high + FREE_IN }
        };
        let (glove_side, up) = (padded(|m| m.glove_side_in), padded(|m| m.up_in));
        let per_inch = ((WIDTH - 2.0 * MARGIN.0) / glove_side.width()).min(TALLEST / up.width());
        Self { glove_side, up, per_inch, hand }
    }

    fn height(&self) -> f64 {
        self.up.width() * self.per_inch + 2.0 * MARGIN.1
    }

    /// Where a movement stands.
    pub(crate) fn spot(&self, movement: Movement) -> Point {
        let sign = if self.hand == Hand::Right { -1.0 } else { 1.0 };
        let x = WIDTH / 2.0 + sign * (movement.glove_side_in - self.glove_side.middle()) * self.per_inch;
        (x, MARGIN.1 + (self.up.high - movement.up_in) * self.per_inch)
    }

    /// Where a shape stands.
    pub(crate) fn place(&self, shape: Shape) -> Point {
        self.spot(moved(shape))
    }

    /// Words may stand anywhere between the edges' own.
    pub(crate) fn labels(&self) -> Labels {
        Labels::within((4.0, MARGIN.1 - 8.0), (WIDTH - 4.0, self.height() - MARGIN.1 + 8.0))
    }

    /// How far from its middle words must stay to leave most of a scatter's ellipse free.
    pub(crate) fn reach(&self, spread: Spread) -> f64 {
        let wide = HALF * spread.glove_side_break_in.min(spread.vertical_break_in) * self.per_inch;
        (wide - 2.0).clamp(MARK, 22.0)
    }

    /// The ellipse that half of the throws fall in.
    pub(crate) fn scatter(&self, ink: Ink, shape: Shape, spread: Spread) -> Tag {
        let radius = |sd: f64| HALF * sd * self.per_inch;
        let radii = (radius(spread.glove_side_break_in), radius(spread.vertical_break_in));
        Tag::ellipse(self.place(shape), radii).class(&format!("scatter {} {}", ink.fill(), ink.stroke()))
    }

    /// Crosses, the unmoved ball and the four words.
    pub(crate) fn sheet(&self) -> Drawing {
        let mut drawing = sheet(self.height());
        let half = (WIDTH / 2.0 - MARGIN.0 / 2.0) / self.per_inch;
        for glove_side_in in steps(Range::about(self.glove_side.middle(), half)) {
            for up_in in steps(self.up) {
                drawing.add_all(self.survey_cross(Movement { glove_side_in, up_in }));
            }
        }
        if self.glove_side.holds(0.0) && self.up.holds(0.0) {
            drawing.add(Tag::circle(self.spot(Movement::default()), 3.5).class("unmoved"));
        }
        drawing.add_all(self.edges());
        drawing
    }

    fn edges(&self) -> [Tag; 4] {
        let sides = ["glove side", "arm side"];
        let [left, right] = if self.hand == Hand::Right { sides } else { [sides[1], sides[0]] };
        let bottom = self.height() - 9.0;
        [
            Tag::text((WIDTH / 2.0, 17.0), "stays up").class("edge mid"),
            Tag::text((WIDTH / 2.0, bottom), "drops").class("edge mid"),
            Tag::text((10.0, bottom), &format!("\u{2190} {left}")).class("edge"),
            Tag::text((WIDTH - 10.0, bottom), &format!("{right} \u{2192}")).class("edge end"),
        ]
    }

    /// A cross, bolder on the two lines through the middle, none in it.
    fn survey_cross(&self, movement: Movement) -> Vec<Tag> {
        let on_line = [movement.glove_side_in, movement.up_in].map(|inches| inches.abs() < 0.1);
        if on_line == [true, true] {
            return Vec::new();
        }
        let (x, y) = self.spot(movement);
        let (arm, class) = if on_line.contains(&true) { (4.0, "survey on") } else { (2.2, "survey") };
        vec![Tag::line((x - arm, y), (x + arm, y)).class(class), Tag::line((x, y - arm), (x, y + arm)).class(class)]
    }
}

/// Multiples of [`STEP`] inside a range.
fn steps(range: Range) -> Vec<f64> {
    (-10..=10).map(|step| f64::from(step) * STEP).filter(|&value| range.holds(value)).collect()
}

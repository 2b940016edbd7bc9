//! Words beside marks, kept from standing on each other.
//!
//! Each label tries the places around its mark in turn and takes the one that covers least of what
//! is already there. Widths are estimated from the number of letters: a picture is drawn before
//! any font is known.

use super::super::svg::{Point, Tag};

/// Width of a letter and height of a line, as shares of the letter size.
const LETTER: f64 = 0.68;
const LINE: f64 = 1.15;

/// A step farther from its mark, of which a label takes two at most.
const FARTHER: f64 = 12.0;

/// A box: left, top, right, bottom.
type Box4 = [f64; 4];

/// What is taken, and the frame to stay in.
#[derive(Debug, Clone)]
pub(crate) struct Labels {
    frame: Box4,
    taken: Vec<Box4>,
}

impl Labels {
    /// Nothing taken inside a frame from `corner` to `end`.
    pub(crate) fn within(corner: Point, end: Point) -> Self {
        Self { frame: [corner.0, corner.1, end.0, end.1], taken: Vec::new() }
    }

    /// Keeps a square about a mark free.
    pub(crate) fn keep_free(&mut self, (x, y): Point, reach: f64) {
        self.taken.push([x - reach, y - reach, x + reach, y + reach]);
    }

    /// Places `lines` beside the mark at `place` with that `reach`.
    pub(crate) fn beside(&mut self, place: Point, reach: f64, lines: &[(&str, &str)], size: f64) -> Vec<Tag> {
        let extent = extent(lines, size);
        // Farther off only where nearer by something would be covered.
        let corners = [0.0, 1.0, 2.0].map(|steps| around(place, reach + steps * FARTHER, extent)).concat();
        let (left, top) = self.best_corner(&corners, extent);
        self.set(lines, (left, top), extent, size)
    }

    /// The same, with only places to the left of the mark.
    pub(crate) fn left_of(&mut self, (x, y): Point, reach: f64, lines: &[(&str, &str)], size: f64) -> Vec<Tag> {
        let extent = extent(lines, size);
        let left = x - reach - 4.0 - extent.0;
        let tops = [-0.5, -0.9, -0.1, -1.3, 0.3, -1.7, 0.7].map(|share| (left, y + share * extent.1));
        let corner = self.best_corner(&tops, extent);
        self.set(lines, corner, extent, size)
    }

    fn set(&mut self, lines: &[(&str, &str)], (left, top): Point, extent: Point, size: f64) -> Vec<Tag> {
        self.taken.push([left, top, left + extent.0, top + extent.1]);
        let middle = left + extent.0 / 2.0;
        let tag = |(index, (words, class)): (usize, &(&str, &str))| {
            let baseline = top + (index as f64 + 0.82) * LINE * size;
            Tag::text((middle, baseline), words).class(&format!("mid {class}"))
        };
        lines.iter().enumerate().map(tag).collect()
    }

    fn best_corner(&self, corners: &[Point], (width, height): Point) -> Point {
        let cost = |&(left, top): &Point| self.cost([left, top, left + width, top + height]);
        let best = corners.iter().copied().min_by(|a, b| cost(a).total_cmp(&cost(b))).unwrap_or_default();
        (best.0.clamp(self.frame[0], (self.frame[2] - width).max(self.frame[0])), best.1)
    }

    /// Area covered that is taken, and dearer, area outside the frame.
    fn cost(&self, spot: Box4) -> f64 {
        let area = |a: Box4| (a[2] - a[0]) * (a[3] - a[1]);
        let taken: f64 = self.taken.iter().map(|other| overlap(spot, *other)).sum();
        taken + 3.0 * (area(spot) - overlap(spot, self.frame))
    }
}

/// Width and height of lines of words.
fn extent(lines: &[(&str, &str)], size: f64) -> Point {
    let letters = lines.iter().map(|(words, _)| words.chars().count()).max().unwrap_or(0);
    (letters as f64 * LETTER * size, lines.len() as f64 * LINE * size)
}

/// Upper left corners around a mark, best liked first.
fn around((x, y): Point, reach: f64, (width, height): Point) -> [Point; 8] {
    let gap = reach + 4.0;
    [
        (x + gap, y - height / 2.0),
        (x - gap - width, y - height / 2.0),
        (x - width / 2.0, y - gap - height),
        (x - width / 2.0, y + gap),
        (x + gap * 0.7, y - gap * 0.7 - height),
        (x - gap * 0.7 - width, y - gap * 0.7 - height),
        (x + gap * 0.7, y + gap * 0.7),
        (x - gap * 0.7 - width, y + gap * 0.7),
    ]
}

fn overlap(a: Box4, b: Box4) -> f64 {
    let wide = (a[2].min(b[2]) - a[0].max(b[0])).max(0.0);
    let high = (a[3].min(b[3]) - a[1].max(b[1])).max(0.0);
    wide * high
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_marks_on_one_place_get_their_words_on_different_sides() {
        let mut labels = Labels::within((0.0, 0.0), (300.0, 300.0));
        let place = (150.0, 150.0);
        labels.keep_free(place, 6.0);
        labels.beside(place, 6.0, &[("four-seam", "")], 12.0);
        labels.beside(place, 6.0, &[("two-seam", "")], 12.0);
        assert!(overlap(labels.taken[1], labels.taken[2]) < 1e-9, "{labels:?}");
    }
}

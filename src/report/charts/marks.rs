//! One mark and one ink for each pitch.
//!
//! A family keeps its mark and its ink wherever it appears, so that two athletes can be read side
//! by side. When somebody throws two pitches of one family, the second takes a spare mark: no
//! two pitches of a picture share one.

use crate::ball::Family;

use super::super::svg::{Point, Tag, number};

/// The shape a pitch is marked with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Mark {
    /// Pointing up.
    Triangle,
    /// Pointing to the right.
    Flag,
    /// Pointing down.
    Wedge,
    /// A square.
    Square,
    /// A square on its corner.
    Diamond,
    /// A six-pointed star.
    Star,
    /// A disc.
    Disc,
    /// An upright cross.
    Plus,
    /// A slanting cross.
    Cross,
    /// A ring.
    Ring,
    /// A spool: two bars with a thin middle.
    Spool,
    /// The lower half of a disc.
    Bowl,
    /// An hourglass.
    Glass,
}

/// Every mark; the first ten belong to the families in their order.
const MARKS: [Mark; 13] = [
    Mark::Triangle,
    Mark::Flag,
    Mark::Wedge,
    Mark::Square,
    Mark::Diamond,
    Mark::Star,
    Mark::Disc,
    Mark::Plus,
    Mark::Cross,
    Mark::Ring,
    Mark::Spool,
    Mark::Bowl,
    Mark::Glass,
];

/// How a pitch is drawn: its mark, and the class of its family's ink.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Ink {
    /// The shape.
    pub(crate) mark: Mark,
    family: usize,
}

/// Stands for no family.
const NO_FAMILY: usize = usize::MAX;

/// The inks of several pitches, no two with the same mark as long as there are marks.
pub(crate) fn inks(families: impl IntoIterator<Item = Family>) -> Vec<Ink> {
    let mut taken: Vec<Mark> = Vec::new();
    let mut inks = Vec::new();
    for family in families {
        let index = Family::ALL.iter().position(|&other| other == family).unwrap_or(0);
        let own = MARKS[index];
        let spare = MARKS.into_iter().rev().find(|mark| !taken.contains(mark));
        let mark = if taken.contains(&own) { spare.unwrap_or(own) } else { own };
        taken.push(mark);
        inks.push(Ink { mark, family: index });
    }
    inks
}

impl Ink {
    /// For what concerns no pitch by itself: a disc in the ink of the words.
    pub(crate) const NEUTRAL: Self = Self { mark: Mark::Disc, family: NO_FAMILY };

    /// The class that gives a filled shape this ink.
    pub(crate) fn fill(self) -> String {
        if self.family == NO_FAMILY { "pin".into() } else { format!("f{}", self.family) }
    }

    /// The class that gives a line this ink.
    pub(crate) fn stroke(self) -> String {
        if self.family == NO_FAMILY { "span".into() } else { format!("s{}", self.family) }
    }

    /// The mark about a place, `size` from its middle to its rim.
    pub(crate) fn at(self, place: Point, size: f64) -> Tag {
        outline(self.mark, place, size).class(&format!("mk {}", self.fill()))
    }

    /// Only its outline: the same pitch before a change.
    pub(crate) fn hollow_at(self, place: Point, size: f64) -> Tag {
        outline(self.mark, place, size).class(&format!("hollow {}", self.stroke()))
    }
}

fn outline(mark: Mark, (x, y): Point, size: f64) -> Tag {
    let at = |points: &[Point]| -> Vec<Point> { points.iter().map(|&(a, b)| (x + a * size, y + b * size)).collect() };
    let closed = |points: &[Point]| Tag::polygon(&at(points));
    match mark {
        Mark::Triangle => closed(&[(0.0, -1.1), (1.0, 0.75), (-1.0, 0.75)]),
        Mark::Wedge => closed(&[(0.0, 1.1), (1.0, -0.75), (-1.0, -0.75)]),
        Mark::Flag => closed(&[(1.1, 0.0), (-0.75, 1.0), (-0.75, -1.0)]),
        Mark::Square => closed(&[(-0.85, -0.85), (0.85, -0.85), (0.85, 0.85), (-0.85, 0.85)]),
        Mark::Diamond => closed(&[(0.0, -1.15), (1.0, 0.0), (0.0, 1.15), (-1.0, 0.0)]),
        Mark::Star => Tag::polygon(&star((x, y), size * 1.25)),
        Mark::Disc => Tag::circle((x, y), size * 0.92),
        Mark::Ring => ring((x, y), size),
        Mark::Plus => closed(&PLUS),
        Mark::Cross => closed(&PLUS.map(|(a, b)| (0.75 * (a + b), 0.75 * (a - b)))),
        Mark::Spool => closed(&[
            (-1.0, -0.9),
            (1.0, -0.9),
            (1.0, -0.2),
            (0.3, 0.0),
            (1.0, 0.2),
            (1.0, 0.9),
            (-1.0, 0.9),
            (-1.0, 0.2),
            (-0.3, 0.0),
            (-1.0, -0.2),
        ]),
        Mark::Bowl => closed(&[(-1.0, -0.4), (1.0, -0.4), (0.7, 0.45), (0.0, 0.85), (-0.7, 0.45)]),
        Mark::Glass => closed(&[(-0.9, -1.0), (0.9, -1.0), (-0.9, 1.0), (0.9, 1.0)]),
    }
}

/// A six-pointed star: the outer points at `radius`.
fn star((x, y): Point, radius: f64) -> Vec<Point> {
    (0..12)
        .map(|step| {
            let reach = if step % 2 == 0 { radius } else { radius * 0.52 };
            let angle = f64::from(step) * std::f64::consts::PI / 6.0;
            (x + reach * angle.sin(), y - reach * angle.cos())
        })
        .collect()
}

/// A disc with a hole, as one path: the inner circle runs the other way.
fn ring((x, y): Point, size: f64) -> Tag {
    let circle = |radius: f64, sweep: u8| {
        let [left, right, level, radius] = [x - radius, x + radius, y, radius].map(number);
        format!(
            "M{left},{level}A{radius},{radius} 0 1 {sweep} {right},{level}A{radius},{radius} 0 1 {sweep} {left},{level}Z"
        )
    };
    Tag::path(&(circle(size, 1) + &circle(size * 0.45, 0)))
}

/// An upright cross with arms a third as thick as long.
const PLUS: [Point; 12] = [
    (-0.33, -1.0),
    (0.33, -1.0),
    (0.33, -0.33),
    (1.0, -0.33),
    (1.0, 0.33),
    (0.33, 0.33),
    (0.33, 1.0),
    (-0.33, 1.0),
    (-0.33, 0.33),
    (-1.0, 0.33),
    (-1.0, -0.33),
    (-0.33, -0.33),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_pitches_of_a_profile_share_a_mark() {
        let crowded = [Family::Slider; 5].into_iter().chain(Family::ALL.into_iter().take(7));
        let inks = inks(crowded);
        for (index, ink) in inks.iter().enumerate() {
            assert!(inks[..index].iter().all(|other| other.mark != ink.mark), "{inks:?}");
        }
    }

    #[test]
    fn a_family_keeps_its_mark_from_one_athlete_to_the_next() {
        assert_eq!(inks([Family::Sweeper])[0], inks([Family::FourSeam, Family::Sweeper])[1]);
    }
}

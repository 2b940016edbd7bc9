//! The sheet a picture is drawn on.

use super::super::svg::{Drawing, Tag};

/// Width every picture is drawn at: a phone shows it whole, a sheet of paper two beside each other.
pub(crate) const WIDTH: f64 = 360.0;

/// An empty sheet of this height.
pub(crate) fn sheet(height: f64) -> Drawing {
    let mut drawing = Drawing::new(WIDTH, height);
    drawing.add(Tag::rect((0.0, 0.0), (WIDTH, height)).set("rx", "10").class("sheet"));
    drawing
}

/// A name short enough to stand in a picture; the table holds the whole one.
pub(crate) fn short(name: &str, most: usize) -> String {
    if name.chars().count() <= most {
        return name.to_owned();
    }
    name.chars().take(most.saturating_sub(1)).chain(['\u{2026}']).collect()
}

//! What is worth a second look, in words: what was found, what is usual, what to check.

use crate::ball::{Against, Family, SeamPush, Shape};
use crate::base::units::FOOT;
use crate::base::{Movement, Range};
use crate::decide::inspect::{FAR_IN, Found, ReleaseMeasure, SecondLook};

use super::format::{plain, signed};

const CENTIMETRES_PER_INCH: f64 = 2.54;

/// One look in words.
pub(super) struct Told {
    pub(super) about: String,
    pub(super) found: String,
    pub(super) usual: String,
    pub(super) check: String,
}

/// One look as one sentence.
pub fn second_look(look: &SecondLook) -> String {
    let Told { about, found, usual, check } = told(look);
    format!("{about}: {found}; usual is {usual}; check {check}")
}

/// One look, part by part.
pub(super) fn told(look: &SecondLook) -> Told {
    let [found, usual, check] = match look.found {
        Found::Break { family, is_vertical, inches, usual } => odd_break(family, is_vertical, inches, usual),
        Found::Release { what, feet, usual } => odd_release(what, feet, usual),
        Found::Counted { read, rather, usual } => counted(read, rather, usual),
        Found::LeftOver { family, left, usual, departure } => left_over(family, left, usual, departure),
    };
    Told { about: look.about.clone(), found, usual, check }
}

fn odd_break(family: Family, is_vertical: bool, inches: f64, usual: Range) -> [String; 3] {
    let axis = if is_vertical { "vertical" } else { "glove-side" };
    let check = if inches.abs() > FAR_IN + usual.low.abs().max(usual.high.abs()) {
        let converted = inches / CENTIMETRES_PER_INCH;
        let written = if usual.holds(converted) { format!(" ({converted:+.1} if it is in cm)") } else { String::new() };
        format!("the unit{written}, and the family")
    } else if is_vertical {
        "the sign, + is up against the same throw without spin; and the family".to_owned()
    } else {
        "the sign, + is to the glove side; the hand; and the family".to_owned()
    };
    let usual = format!("{:+.0} to {:+.0} in for a {family}", usual.low, usual.high);
    [format!("{inches:+.1} in of {axis} break"), usual, check]
}

fn odd_release(what: ReleaseMeasure, feet: f64, usual: Range) -> [String; 3] {
    let what = match what {
        ReleaseMeasure::Height => "a height",
        ReleaseMeasure::MeanHeight => "a release height",
        ReleaseMeasure::Extension => "an extension",
    };
    let metres = feet / FOOT;
    let written = if usual.holds(metres) { format!(" (if it is in metres, write {metres:.1})") } else { String::new() };
    [
        format!("{what} of {feet:.1} ft"),
        format!("{:.1} to {:.1} ft", usual.low, usual.high),
        format!("the unit{written}, and the slot"),
    ]
}

fn counted(read: Shape, rather: Against, usual: Movement) -> [String; 3] {
    let like = match rather {
        Against::DragFree => "movement without drag's share",
        Against::Gravity => "movement against gravity alone",
    };
    [
        format!(
            "{} in up and {} in to the glove side, which looks more like {like}",
            signed(read.vertical_break_in, 1),
            signed(read.glove_side_break_in, 1)
        ),
        format!(
            "{} and {} in, without drag's share, for a four-seam from there",
            signed(usual.up_in, 0),
            signed(usual.glove_side_in, 0)
        ),
        format!("with the unit's maker what it counts against; if so, write against = \"{rather}\""),
    ]
}

fn left_over(family: Family, left: Movement, usual: SeamPush, departure: f64) -> [String; 3] {
    let between = |mean: f64, sd: f64| format!("{} ±{}", signed(mean, 1), plain(sd, 1));
    [
        format!(
            "{} in up and {} in to the glove side left over for the seams, a departure of {}",
            signed(left.up_in, 1),
            signed(left.glove_side_in, 1),
            plain(departure.abs(), 1)
        ),
        format!(
            "{} and {} in for a {family}",
            between(usual.mean.up_in, usual.sd.up_in),
            between(usual.mean.glove_side_in, usual.sd.glove_side_in)
        ),
        "the clock, the spin and the family; if they are right, the seams of this pitch do other than most".to_owned(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_height_in_metres_is_told_in_feet() {
        let usual = Range { low: 3.8, high: 7.5 };
        let found = Found::Release { what: ReleaseMeasure::Height, feet: 1.8, usual };
        let sentence = second_look(&SecondLook { about: "release".into(), found });
        assert!(sentence.contains("write 5.9"), "{sentence}");
    }
}

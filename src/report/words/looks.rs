//! What is worth a second look, in words.

use crate::ball::{Against, Family, SeamPush, Shape};
use crate::base::Movement;
use crate::decide::inspect::{About, Found, Length, SecondLook, SpinSource, Suspect};

use super::super::content::amount::{feet, movement, pure};
use super::super::content::{Text, name, text};

/// A second look in four parts.
pub(crate) struct LookWords {
    pub(crate) about: Text,
    pub(crate) found: Text,
    pub(crate) usual: Text,
    pub(crate) check: Text,
}

impl LookWords {
    /// The four parts of `look`.
    pub(crate) fn of(look: &SecondLook) -> Self {
        let (found, usual, check) = match look.found {
            Found::Break { is_vertical, inches, usual, family, suspect } => {
                let axis = if is_vertical { "vertical" } else { "glove-side" };
                let found = text![movement(inches), " of ", axis, " break"];
                (found, text![movement(usual).places(0), " for a ", family], check_break(suspect, is_vertical))
            }
            Found::Feet { length, feet: found, usual, if_metres_ft } => {
                let what = if length == Length::Height { "a height of " } else { "an extension of " };
                (text![what, feet(found)], text![feet(usual)], check_feet(if_metres_ft))
            }
            Found::Counted { read, rather, usual } => counted(read, rather, usual),
            Found::LeftOver { family, left, usual, departure } => left_over(family, left, usual, departure),
        };
        Self { about: about(&look.about), found, usual, check }
    }

    /// All of it as one sentence.
    pub(crate) fn sentence(self) -> Text {
        text![self.about, ": ", self.found, "; usual is ", self.usual, "; check ", self.check]
    }
}

fn about(about: &About) -> Text {
    match about {
        About::Release => "release".into(),
        About::Pitch(pitch) => name(pitch),
        About::Group { guessed, labelled: None } => text!["the ", *guessed],
        About::Group { guessed, labelled: Some(family) } => text!["the ", *guessed, ", labelled ", *family],
    }
}

fn check_break(suspect: Suspect, is_vertical: bool) -> Text {
    match suspect {
        Suspect::Unit { if_cm_in: Some(inches) } => {
            text!["the unit (", movement(inches).bare(), " if it is in cm), and the family"]
        }
        Suspect::Unit { if_cm_in: None } => "the unit, and the family".into(),
        Suspect::Sign if is_vertical => "the sign, + is up against the same throw without spin; and the family".into(),
        Suspect::Sign => "the sign, + is to the glove side; the hand; and the family".into(),
    }
}

fn check_feet(if_metres_ft: Option<f64>) -> Text {
    match if_metres_ft {
        Some(written) => text!["the unit (if it is in metres, write ", feet(written).bare(), "), and the slot"],
        None => "the unit, and the slot".into(),
    }
}

fn counted(read: Shape, rather: Against, usual: Movement) -> (Text, Text, Text) {
    let like = match rather {
        Against::DragFree => "movement without drag\u{2019}s share",
        Against::Gravity => "movement against gravity alone",
    };
    (
        text![
            movement(read.vertical_break_in),
            " up and ",
            movement(read.glove_side_break_in),
            " to the glove side, which looks more like ",
            like
        ],
        text![
            movement(usual.up_in).places(0),
            " and ",
            movement(usual.glove_side_in).places(0),
            ", without drag\u{2019}s share, for a four-seam from there"
        ],
        format!("with the unit\u{2019}s maker what it counts against; if so, write against = \"{rather}\"").into(),
    )
}

fn left_over(family: Family, left: Movement, usual: SeamPush, departure: f64) -> (Text, Text, Text) {
    (
        text![
            movement(left.up_in),
            " up and ",
            movement(left.glove_side_in),
            " to the glove side left over for the seams, a departure of ",
            pure(departure.abs(), 1)
        ],
        text![
            movement(usual.mean.up_in),
            " \u{b1}",
            pure(usual.sd.up_in, 1),
            " and ",
            movement(usual.mean.glove_side_in),
            " \u{b1}",
            pure(usual.sd.glove_side_in, 1),
            " for a ",
            family
        ],
        "the clock, the spin and the family; if they are right, the seams of this pitch do other than most".into(),
    )
}

/// Where a pitch's spin is known from.
pub(crate) fn spin_source(source: SpinSource) -> &'static str {
    match source {
        SpinSource::Measured => "measured",
        SpinSource::UsualShare => "usual share",
        SpinSource::WorkedOut => "worked out",
    }
}

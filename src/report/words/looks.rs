//! What is worth a second look, in words.

use crate::decide::inspect::{About, Found, Length, SecondLook, Suspect};

use super::super::content::amount::{feet, movement};
use super::super::content::{Text, name, say, text};

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
                let found = say!("{} of {} break", movement(inches), axis);
                (found, say!("{} for a {}", movement(usual).places(0), family), check_break(suspect, is_vertical))
            }
            Found::Feet { length, feet: found, usual, if_metres_ft } => {
                let what = if length == Length::Height { "a height of " } else { "an extension of " };
                (text![what, feet(found)], text![feet(usual)], check_feet(if_metres_ft))
            }
        };
        Self { about: about(&look.about), found, usual, check }
    }

    /// All of it as one sentence.
    pub(crate) fn sentence(self) -> Text {
        say!("{}: {}; usual is {}; check {}", self.about, self.found, self.usual, self.check)
    }
}

fn about(about: &About) -> Text {
    match about {
        About::Release => "release".into(),
        About::Pitch(pitch) => name(pitch),
        About::Group { guessed, labelled: None } => say!("the {}", *guessed),
        About::Group { guessed, labelled: Some(family) } => say!("the {}, labelled {}", *guessed, *family),
    }
}

fn check_break(suspect: Suspect, is_vertical: bool) -> Text {
    match suspect {
        Suspect::Unit { if_cm_in: Some(inches) } => {
            say!("the unit ({} if it is in cm), and the family", movement(inches).bare())
        }
        Suspect::Unit { if_cm_in: None } => "the unit, and the family".into(),
        Suspect::Sign if is_vertical => "the sign, + is up against the same throw without spin; and the family".into(),
        Suspect::Sign => "the sign, + is to the glove side; the hand; and the family".into(),
    }
}

fn check_feet(if_metres_ft: Option<f64>) -> Text {
    match if_metres_ft {
        Some(written) => say!("the unit (if it is in metres, write {}), and the slot", feet(written).bare()),
        None => "the unit, and the slot".into(),
    }
}

//! Values of arguments that are one of a few words. Shells complete them and `--help` lists them;
//! what is said of a wrong one is the reader's own message.

use clap::builder::{PossibleValue, TypedValueParser};

use crate::ball::Family;
use crate::base::geometry::Hand;

use super::args::{family, hand};

/// Reads with `read`, and knows the `words` that it takes.
#[derive(Debug, Clone)]
pub(super) struct OneOf<T> {
    words: Vec<&'static str>,
    read: fn(&str) -> Result<T, String>,
}

/// The families of pitches.
pub(super) fn families() -> OneOf<Family> {
    OneOf { words: Family::ALL.map(Family::name).to_vec(), read: family }
}

/// The hands.
pub(super) fn hands() -> OneOf<Hand> {
    OneOf { words: Hand::ALL.map(Hand::name).to_vec(), read: hand }
}

impl<T: Clone + Send + Sync + 'static> TypedValueParser for OneOf<T> {
    type Value = T;

    fn parse_ref(
        &self,
        command: &clap::Command,
        argument: Option<&clap::Arg>,
        value: &std::ffi::OsStr,
    ) -> Result<T, clap::Error> {
        self.read.parse_ref(command, argument, value)
    }

    fn possible_values(&self) -> Option<Box<dyn Iterator<Item = PossibleValue> + '_>> {
        Some(Box::new(self.words.iter().map(PossibleValue::new)))
    }
}

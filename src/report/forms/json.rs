//! An answer for machines: stable keys, numbers rounded to what they are good for. Keys are a
//! promise: they are added to and never renamed.

use serde::Serialize;

use super::super::content::{Answer, Machine};

impl Answer {
    /// The answer as JSON: one indented value, or one value a line where there are several.
    pub fn json(&self) -> String {
        match &self.machine {
            Machine::One(value) => indented(value),
            Machine::Lines(values) => values.iter().map(|value| written(serde_json::to_string(value))).collect(),
        }
    }
}

/// A value over several lines.
pub(crate) fn indented(value: &impl Serialize) -> String {
    written(serde_json::to_string_pretty(value))
}

/// Values hold numbers, texts and lists only, so that writing them cannot fail.
fn written(text: serde_json::Result<String>) -> String {
    text.unwrap_or_default() + "\n"
}

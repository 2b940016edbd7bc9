//! Filling in what a profile leaves out, and saying so.
//!
//! One sentence for each part of the profile that was not given in full. The values themselves
//! are in [`super::defaults`]; which of them were wise is for the reader of the sentence.

use super::fields::At;

/// The sentences so far.
#[derive(Debug, Default)]
pub(super) struct Assumptions {
    sentences: Vec<String>,
}

impl Assumptions {
    /// Fills one part of the profile; what was filled becomes one sentence about `subject`.
    pub(super) fn about<T>(&mut self, subject: &str, fill: impl FnOnce(&mut Filler) -> T) -> T {
        let mut filler = Filler::default();
        let filled = fill(&mut filler);
        if let Some((last, others)) = filler.phrases.split_last() {
            let list = if others.is_empty() { last.clone() } else { format!("{} and {last}", others.join(", ")) };
            self.sentences.push(format!("{subject} not given in full: assumed {list}"));
        }
        filled
    }

    /// One more sentence, about something that was taken one way of several.
    pub(super) fn say(&mut self, sentence: String) {
        self.sentences.push(sentence);
    }

    /// All sentences, in the order of the profile.
    pub(super) fn into_sentences(self) -> Vec<String> {
        self.sentences
    }
}

/// Fills the gaps of one part of the profile.
#[derive(Debug, Default)]
pub(super) struct Filler {
    phrases: Vec<String>,
}

impl Filler {
    /// The value given; or else `default`, noted as `phrase`.
    pub(super) fn or<T>(&mut self, given: Option<At<T>>, default: T, phrase: impl Into<String>) -> T {
        if let Some(given) = given {
            return given.value;
        }
        self.note(phrase);
        default
    }

    /// Notes something assumed that is no single value.
    pub(super) fn note(&mut self, phrase: impl Into<String>) {
        self.phrases.push(phrase.into());
    }
}

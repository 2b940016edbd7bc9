//! What every answer about one athlete has: who, and what was assumed.

use crate::athlete::profile::Profile;

use super::super::content::{Answer, Section, Text, name};

/// An answer about the athlete of `profile`.
pub(crate) fn about(profile: &Profile, headline: impl Into<Text>) -> Answer {
    let athlete = &profile.athlete;
    let age = athlete.age.map_or("age not given".into(), |age| format!("{age} years"));
    let about = format!("throws {}, {age}, {}", athlete.throws, athlete.level.name());
    Answer::new(name(&athlete.name), about, headline)
}

/// What was taken for granted.
pub(crate) fn assumed(profile: &Profile) -> Section {
    Section::new("Assumed, because the profile does not say").bullets(profile.assumptions.iter().map(|said| name(said)))
}

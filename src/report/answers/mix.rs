//! Today's pitches, by name, mark and place on the map: what several answers show.

use crate::athlete::profile::Profile;

use super::super::charts::{Ink, MapPitch, ShapeMap, inks};
use super::super::content::Text;

/// Names of today's pitches.
pub(crate) fn todays_names(profile: &Profile) -> Vec<&str> {
    profile.pitches.iter().map(|pitch| pitch.name.as_str()).collect()
}

/// Marks of today's pitches.
pub(crate) fn todays_inks(profile: &Profile) -> Vec<Ink> {
    inks(profile.pitches.iter().map(|pitch| pitch.family))
}

/// The map of today's pitches alone.
pub(crate) fn todays_map<'p>(profile: &'p Profile, title: impl Into<Text>, inks: &[Ink]) -> ShapeMap<'p> {
    let pitches = profile.pitches.iter().zip(inks);
    ShapeMap {
        title: title.into(),
        hand: profile.athlete.throws,
        pitches: pitches
            .map(|(pitch, &ink)| MapPitch { name: &pitch.name, ink, shape: pitch.shape, spread: pitch.spread })
            .collect(),
        target: None,
        throws: Vec::new(),
    }
}

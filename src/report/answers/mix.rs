//! A mix of pitches against one side, and today's pitches on the map: what several answers show.

use crate::athlete::profile::Profile;
use crate::former::evaluate::{PitchOutlook, SideOutlook};

use super::super::charts::{Ink, MapPitch, ShapeMap, inks};
use super::super::content::amount::rate;
use super::super::content::data::{Data, list, number};
use super::super::content::{Text, object, row};
use super::super::number::rounded_shares;

/// What the columns of [`outcome_cells`] count.
pub(crate) const OUTCOMES: &str =
    "miss, weak and solid contact, take: chances per 100 of that pitch thrown, ± half the 90 % interval";

/// Shares in whole percent that sum to 100.
pub(crate) fn whole_shares(outlook: &SideOutlook) -> Vec<f64> {
    rounded_shares(&outlook.pitches.iter().map(|pitch| pitch.share).collect::<Vec<f64>>(), 100.0)
}

/// Aim and the four chances of a pitch.
pub(crate) fn outcome_cells(pitch: &PitchOutlook) -> Vec<Text> {
    row![
        pitch.aim.name(),
        rate(pitch.swing_and_miss),
        rate(pitch.weak_contact),
        rate(pitch.solid_contact),
        rate(pitch.take),
    ]
}

/// A mix for machines; `new` is the name of a pitch behind today's.
pub(crate) fn side_data(profile: &Profile, new: Option<&str>, outlook: &SideOutlook) -> Data {
    object! { "runs_per_100": outlook.runs_per_100, "pitches": pitches_data(profile, new, outlook) }
}

/// The pitches of a mix for machines.
pub(crate) fn pitches_data(profile: &Profile, new: Option<&str>, outlook: &SideOutlook) -> Data {
    let names = profile.pitches.iter().map(|pitch| pitch.name.as_str()).chain(new);
    let shares: Vec<f64> = outlook.pitches.iter().map(|pitch| pitch.share).collect();
    let shares = rounded_shares(&shares, 1000.0);
    list(names.zip(&outlook.pitches).zip(shares).map(|((name, pitch), part)| {
        object! {
            "pitch": name,
            "share": number(part, 3),
            "aim": pitch.aim.name(),
            "swing_and_miss": pitch.swing_and_miss,
            "weak_contact": pitch.weak_contact,
            "solid_contact": pitch.solid_contact,
            "take": pitch.take,
        }
    }))
}

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

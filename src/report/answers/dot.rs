//! The answer of `dot`: how a pitch spins and where a mark on its spin pole shows.

use crate::athlete::profile::Profile;
use crate::ball::Recipe;
use crate::ball::spin::{Dot, Dots, Spin};
use crate::base::Movement;
use crate::base::geometry::Hand;
use crate::base::stats::Estimate;

use super::super::charts::faces;
use super::super::content::amount::{degrees, movement, rpm, share, speed};
use super::super::content::data::{Data, list, number};
use super::super::content::{Answer, Section, Text, name, object, say};
use super::about::about;

/// One pitch's name, its spin and whether that was measured.
pub type Spun<'a> = (&'a str, Spin, bool);

/// Pitches of a profile.
pub fn dots(profile: &Profile, pitches: &[Spun]) -> Answer {
    let hand = profile.athlete.throws;
    let section = |&(pitch, spin, measured): &Spun| {
        let section = Section::new(name(pitch));
        let section = if measured {
            section
        } else {
            section.paragraph(
                "The spin is not fully measured: what is missing is worked out from the shape, as if the seams did \
                 nothing.",
            )
        };
        section.paragraph(said(spin, hand)).picture(faces(spin, hand))
    };
    let data = |&(pitch, spin, measured): &Spun| dot_data(pitch, spin, measured, None, hand);
    about(profile, "Where the mark on the spin pole shows.")
        .with_all(pitches.iter().map(section))
        .machine(list(pitches.iter().map(data)))
}

/// A wished-for shape; `active_rpm` is the active spin that would do, over the published lift laws.
pub fn dot_of_shape(recipe: &Recipe, active_rpm: Estimate, hand: Hand) -> Answer {
    let (shape, spin) = (recipe.shape, recipe.spin);
    let who = say!("{}, {}", speed(shape.speed_mph), breaks(shape.vertical_break_in, shape.glove_side_break_in));
    let would_do = say!(
        "Active spin that would do with no help from the seams: {} ({} over three published lift laws), \
         so {} to {} of {}.",
        rpm(active_rpm.value),
        rpm((active_rpm.low, active_rpm.high)).bare(),
        share(active_rpm.low / spin.rpm),
        share((active_rpm.high / spin.rpm).min(1.0)),
        rpm(spin.rpm)
    );
    let section = Section::new("Where the mark shows").picture(faces(spin, hand)).paragraph(would_do);
    Answer::new(who, format!("throws {hand}"), said(spin, hand)).with(section).machine(dot_data(
        "target",
        spin,
        false,
        Some(recipe.seams),
        hand,
    ))
}

/// `vertical break -4.0 in, glove-side break +14.0 in`.
pub(crate) fn breaks(up_in: f64, side_in: f64) -> Text {
    say!("vertical break {}, glove-side break {}", movement(up_in), movement(side_in))
}

fn said(spin: Spin, hand: Hand) -> Text {
    say!(
        "{}, pushing toward {} (as the pitcher sees it), {} active, gyro angle {}",
        rpm(spin.rpm),
        spin.clock.for_hand(hand),
        share(spin.active_fraction),
        degrees(spin.gyro_deg())
    )
}

fn dot_data(pitch: &str, spin: Spin, measured: bool, seams: Option<Movement>, hand: Hand) -> Data {
    object! {
        "pitch": pitch,
        "measured": measured,
        "spin_rpm": number(spin.rpm, 0),
        "active_fraction": number(spin.active_fraction, 3),
        "spin_clock": spin.clock.for_hand(hand).to_string(),
        "gyro_deg": number(spin.gyro_deg(), 1),
        "seam_shift_in": seams.map(seam_data),
        "dot": dots_data(spin.dot(), hand),
    }
}

/// What the seams add.
pub(crate) fn seam_data(seams: Movement) -> Data {
    object! { "vertical": number(seams.up_in, 1), "glove_side": number(seams.glove_side_in, 1) }
}

/// Both faces.
pub(crate) fn dots_data(dots: Dots, hand: Hand) -> Data {
    let place = |dot: Dot| {
        object! { "clock": dot.clock.for_hand(hand).to_string(), "radius": number(dot.radius, 3) }
    };
    object! { "thrower": place(dots.thrower), "partner": place(dots.partner) }
}

//! The answer of `check`: what an athlete throws, how it spins, what the spin explains.

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::Family;
use crate::ball::flight::inverse::Shares;
use crate::ball::spin::MOST_RPM;
use crate::base::stats::Estimate;
use crate::decide::inspect::{Inspected, second_looks};

use super::super::content::amount::{degrees, feet, movement, pure, rpm, share, speed};
use super::super::content::data::{Data, list, number};
use super::super::content::{Answer, Command, Section, Step, Table, Text, Unit, columns, name, object, row, say, text};
use super::super::words::looks::LookWords;
use super::about::{about, assumed};

/// Every pitch; `elevation_ft` says where the restated shapes would be thrown, `file` where the profile lies.
pub fn check(profile: &Profile, inspected: &[Inspected], elevation_ft: f64, file: &str) -> Answer {
    let looks = second_looks(profile);
    let looks = || looks.iter().map(LookWords::of);
    about(profile, "What the athlete throws.")
        .with(averages(profile, inspected))
        .with(spins(profile, inspected))
        .with(shares(profile, inspected))
        .with(restated(profile, inspected, elevation_ft))
        .with(Section::new("Worth a second look").bullets(looks().map(LookWords::sentence)))
        .with(Section::next(vec![next(profile, file)]))
        .with(assumed(profile))
        .machine(object! {
            "athlete": &profile.athlete.name,
            "assumptions": list(&profile.assumptions),
            "restated_at_elevation_ft": number(elevation_ft, 4),
            "pitches": list(pitches(profile, inspected).map(|(pitch, seen)| pitch_data(profile, pitch, seen))),
            "worth_a_second_look": list(looks().map(look_data)),
        })
}

fn pitches<'a>(profile: &'a Profile, inspected: &'a [Inspected]) -> impl Iterator<Item = (&'a Pitch, &'a Inspected)> {
    profile.pitches.iter().zip(inspected)
}

fn averages(profile: &Profile, inspected: &[Inspected]) -> Section {
    let rows = pitches(profile, inspected).map(|(pitch, seen)| {
        let [mph, up, side] = seen.averages;
        row![name(&pitch.name), pitch.throws, speed(mph).half(), movement(up).half(), movement(side).half()]
    });
    let columns =
        columns!["pitch", "throws", ("speed", Unit::Mph), ("vertical", Unit::Inches), ("glove side", Unit::Inches)];
    Section::new("Averages (± half the 90 % interval)").table(Table::new(columns, rows)).paragraph(say!(
        "±: from throw to throw alone; {} adds what changes from day to day, so that its ± is wider.",
        Command::word("sort")
    ))
}

fn spins(profile: &Profile, inspected: &[Inspected]) -> Section {
    let hand = profile.athlete.throws;
    let rows = pitches(profile, inspected).map(|(pitch, seen)| {
        row![
            name(&pitch.name),
            if seen.measured { "measured" } else { "worked out" },
            rpm(seen.spin.rpm),
            share(seen.spin.active_fraction),
            seen.spin.clock.for_hand(hand),
            degrees(seen.spin.gyro_deg()),
            needed(seen.active_needed),
        ]
    });
    let columns = columns![
        "pitch",
        "spin",
        ("", Unit::Rpm),
        "active",
        "clock",
        ("gyro", Unit::Degrees),
        "active rpm that would do"
    ];
    let section = Section::new("How it spins").table(Table::new(columns, rows)).paragraph(
        "active rpm that would do: spin across the flight that gives this break without the seams, and between which \
         ends the lift laws and the seams' help put it; none: more than any arm gives.",
    );
    if inspected.iter().any(|seen| seen.shares.is_some()) {
        return section;
    }
    section.paragraph("No pitch has its spin fully measured, so movement is not divided between spin and seams.")
}

fn needed(active: Estimate) -> Text {
    let show = |value: f64| if value <= MOST_RPM { text![pure(value, 0)] } else { "none".into() };
    say!("{} ({} to {})", show(active.value), show(active.low), show(active.high))
}

fn shares(profile: &Profile, inspected: &[Inspected]) -> Option<Section> {
    let row = |(pitch, seen): (&Pitch, &Inspected)| {
        let Shares { spin_vertical_in, spin_glove_side_in, seam_vertical_in, seam_glove_side_in } = seen.shares?;
        let [a, b, c, d] = [spin_vertical_in, spin_glove_side_in, seam_vertical_in, seam_glove_side_in]
            .map(|inches| movement(inches).bare());
        Some(row![name(&pitch.name), a, b, c, d])
    };
    let rows: Vec<Vec<Text>> = pitches(profile, inspected).filter_map(row).collect();
    let columns = columns!["pitch", "spin: vertical", "spin: glove side", "left: vertical", "left: glove side"];
    let section = Section::new("Movement explained by the spin, and left over for the seams, in");
    (!rows.is_empty()).then(|| {
        section.table(Table::new(columns, rows)).paragraph(
            "Ranges are the spread of three published lift laws. What is left over holds the seams' push, errors of \
             measurement and whatever the laws get wrong.",
        )
    })
}

fn restated(profile: &Profile, inspected: &[Inspected], elevation_ft: f64) -> Section {
    let rows = pitches(profile, inspected).map(|(pitch, seen)| {
        row![name(&pitch.name), movement(seen.restated.vertical_break_in), movement(seen.restated.glove_side_break_in)]
    });
    Section::new(say!("The same throws in standard air at {}", feet(elevation_ft).places(0)))
        .table(Table::new(columns!["pitch", ("vertical", Unit::Inches), ("glove side", Unit::Inches)], rows))
}

/// The pitch to ask about: the first in common use that the athlete does not throw.
fn next(profile: &Profile, file: &str) -> Step {
    let wished = [Family::Sweeper, Family::Slider, Family::Changeup, Family::Cutter];
    let is_new = |family: &Family| profile.pitches.iter().all(|pitch| pitch.family != *family);
    let family = wished.into_iter().find(is_new).unwrap_or(Family::Sweeper);
    Step::ask(
        Command::arsenalfit(["advise", file, "--family", family.name()]),
        say!("whether to add a {} (or another family), in which shape, what it is worth", family),
    )
}

fn pitch_data(profile: &Profile, pitch: &Pitch, seen: &Inspected) -> Data {
    let [mph, up, side] = seen.averages;
    let push = |vertical: Estimate, side: Estimate| object! { "vertical": vertical, "glove_side": side };
    object! {
        "pitch": &pitch.name,
        "family": pitch.family.name(),
        "throws": pitch.throws,
        "speed_mph": mph,
        "vertical_break_in": up,
        "glove_side_break_in": side,
        "spin_measured": seen.measured,
        "spin_rpm": number(seen.spin.rpm, 0),
        "active_fraction": number(seen.spin.active_fraction, 3),
        "spin_clock": seen.spin.clock.for_hand(profile.athlete.throws).to_string(),
        "gyro_deg": number(seen.spin.gyro_deg(), 1),
        "active_rpm_that_would_do": seen.active_needed,
        "spin_break_in": seen.shares.map(|s| push(s.spin_vertical_in, s.spin_glove_side_in)),
        "seam_shift_in": seen.shares.map(|s| push(s.seam_vertical_in, s.seam_glove_side_in)),
        "restated_vertical_break_in": number(seen.restated.vertical_break_in, 1),
        "restated_glove_side_break_in": number(seen.restated.glove_side_break_in, 1),
    }
}

fn look_data(look: LookWords) -> Data {
    object! { "about": look.about, "found": look.found, "usual": look.usual, "check": look.check }
}

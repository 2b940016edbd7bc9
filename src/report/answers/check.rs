//! The answer of `check`: what an athlete throws, how it spins, what the spin explains.

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::spin::MOST_RPM;
use crate::ball::{Family, SeamPush};
use crate::base::Movement;
use crate::base::stats::Estimate;
use crate::decide::inspect::{Inspected, SpinSource, second_looks};

use super::super::content::amount::{degrees, feet, movement, pure, rpm, share, speed};
use super::super::content::data::{Data, list, maybe, number};
use super::super::content::{Answer, Command, Section, Step, Table, Text, Unit, columns, name, object, row, text};
use super::super::words::looks::{LookWords, spin_source};
use super::about::{about, assumed};

/// Every pitch; `elevation_ft` says where the restated shapes would be thrown, `file` where the profile lies.
pub fn check(profile: &Profile, inspected: &[Inspected], elevation_ft: f64, file: &str) -> Answer {
    let looks = second_looks(profile);
    let looks = || looks.iter().map(LookWords::of);
    about(profile, "What the athlete throws.")
        .with(averages(profile, inspected))
        .with(spins(profile, inspected))
        .with(explained(profile, inspected))
        .with(left_over(profile, inspected))
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
    let section = Section::new("Averages (± half the 90 % interval)").table(Table::new(columns, rows));
    let section = match as_written(profile, inspected) {
        Some(written) => section.paragraph(written),
        None => section,
    };
    section.paragraph(text![
        "±: from throw to throw alone; ",
        Command::word("sort"),
        " adds what changes from day to day, so that its ± is wider."
    ])
}

fn spins(profile: &Profile, inspected: &[Inspected]) -> Section {
    let hand = profile.athlete.throws;
    let rows = pitches(profile, inspected).map(|(pitch, seen)| {
        row![
            name(&pitch.name),
            spin_source(seen.source),
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
        "usual share: rate and clock measured, the active share is what is usual of the family. Worked out: from the \
         break, less what the seams usually give. Active rpm that would do: spin across the flight that gives this break \
         with the seams\u{2019} usual help, and between which ends the lift laws and the seams put it; none: more than \
         any arm gives.",
    );
    if inspected.iter().any(|seen| seen.shares.is_some()) {
        return section;
    }
    section.paragraph(
        "No pitch has the rate and the clock of its spin measured: movement is not divided between spin and seams.",
    )
}

fn needed(active: Estimate) -> Text {
    let show = |value: f64| if value <= MOST_RPM { text![pure(value, 0)] } else { "none".into() };
    text![show(active.value), " (", show(active.low), " to ", show(active.high), ")"]
}

fn explained(profile: &Profile, inspected: &[Inspected]) -> Option<Section> {
    let row = |(pitch, seen): (&Pitch, &Inspected)| {
        let shares = seen.shares?;
        let [up, side] = [shares.spin_vertical_in, shares.spin_glove_side_in].map(|inches| movement(inches).bare());
        Some(row![name(&pitch.name), up, side])
    };
    let rows: Vec<Vec<Text>> = pitches(profile, inspected).filter_map(row).collect();
    (!rows.is_empty()).then(|| {
        Section::new("Movement explained by the spin, in")
            .table(Table::new(columns!["pitch", "vertical", "glove side"], rows))
            .paragraph(
                "Ranges are the spread of five lift laws or, with a usual share, of that share between pitchers.",
            )
    })
}

fn left_over(profile: &Profile, inspected: &[Inspected]) -> Option<Section> {
    let row = |(pitch, seen): (&Pitch, &Inspected)| {
        let (left, look) = (seen.shares?.left(), seen.seams);
        let usual = |read: fn(Movement) -> f64| match look {
            Some(look) => text![movement(read(look.usual.mean)).bare(), " \u{b1}", pure(read(look.usual.sd), 1)],
            None => "not known".into(),
        };
        Some(row![
            name(&pitch.name),
            movement(left.up_in).bare(),
            usual(|movement| movement.up_in),
            movement(left.glove_side_in).bare(),
            usual(|movement| movement.glove_side_in),
            look.map(|look| pure(look.departure.abs(), 1))
        ])
    };
    let rows: Vec<Vec<Text>> = pitches(profile, inspected).filter_map(row).collect();
    let heads = columns!["pitch", "vertical", "usual", "glove side", "usual", "departure"];
    (!rows.is_empty()).then(|| {
        Section::new("Left over for the seams, beside what the family usually shows, in")
            .table(Table::new(heads, rows))
            .paragraph(
                "usual: mean of pitchers of the top league, \u{b1} their standard deviation. Departure: how many of these \
                 the left-over lies from the mean, across the spin\u{2019}s push; beyond 2 is out of the ordinary. What is \
                 left over also holds errors of measurement and, along the push, whatever the laws and the active share \
                 get wrong.",
            )
    })
}

/// What the profile's numbers are where they count movement against gravity alone.
fn as_written(profile: &Profile, inspected: &[Inspected]) -> Option<Text> {
    let told = pitches(profile, inspected).filter_map(|(pitch, seen)| {
        let read = seen.read?;
        let [up, side] = [read.vertical_break_in, read.glove_side_break_in].map(|inches| movement(inches).bare());
        Some(text![name(&pitch.name), " ", up, " and ", side])
    });
    let told: Vec<Text> = told.collect();
    (!told.is_empty()).then(|| {
        text![
            "Breaks here are against the same throw with no sideways force; as the profile counts them, against gravity \
             alone, up and to the glove side: ",
            Text::joined(told, ", "),
            "."
        ]
    })
}

fn restated(profile: &Profile, inspected: &[Inspected], elevation_ft: f64) -> Section {
    let rows = pitches(profile, inspected).map(|(pitch, seen)| {
        row![name(&pitch.name), movement(seen.restated.vertical_break_in), movement(seen.restated.glove_side_break_in)]
    });
    Section::new(text!["The same throws in standard air at ", feet(elevation_ft).places(0)])
        .table(Table::new(columns!["pitch", ("vertical", Unit::Inches), ("glove side", Unit::Inches)], rows))
}

/// The pitch to ask about: the first in common use that the athlete does not throw.
fn next(profile: &Profile, file: &str) -> Step {
    let wished = [Family::Sweeper, Family::Slider, Family::Changeup, Family::Cutter];
    let is_new = |family: &Family| profile.pitches.iter().all(|pitch| pitch.family != *family);
    let family = wished.into_iter().find(is_new).unwrap_or(Family::Sweeper);
    Step::ask(
        Command::arsenalfit(["advise", file, "--family", family.name()]),
        text!["whether to add a ", family, " (or another family), in which shape, what it is worth"],
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
        "against": pitch.against.unwrap_or_default().name(),
        "vertical_break_as_written_in": maybe(seen.read.map(|read| read.vertical_break_in), 2),
        "glove_side_break_as_written_in": maybe(seen.read.map(|read| read.glove_side_break_in), 2),
        "spin_measured": seen.source == SpinSource::Measured,
        "spin_source": spin_source(seen.source),
        "spin_rpm": number(seen.spin.rpm, 0),
        "active_fraction": number(seen.spin.active_fraction, 3),
        "spin_clock": seen.spin.clock.for_hand(profile.athlete.throws).to_string(),
        "gyro_deg": number(seen.spin.gyro_deg(), 1),
        "active_rpm_that_would_do": seen.active_needed,
        "spin_break_in": seen.shares.map(|s| push(s.spin_vertical_in, s.spin_glove_side_in)),
        "seam_shift_in": seen.shares.map(|s| push(s.seam_vertical_in, s.seam_glove_side_in)),
        "usual_seam_shift_in": seen.seams.map(|look| {
            let SeamPush { mean, sd, .. } = look.usual;
            push(Estimate::from_sd(mean.up_in, sd.up_in), Estimate::from_sd(mean.glove_side_in, sd.glove_side_in))
        }),
        "seam_shift_departure_sd": maybe(seen.seams.map(|look| look.departure), 2),
        "restated_vertical_break_in": number(seen.restated.vertical_break_in, 1),
        "restated_glove_side_break_in": number(seen.restated.glove_side_break_in, 1),
    }
}

fn look_data(look: LookWords) -> Data {
    object! { "about": look.about, "found": look.found, "usual": look.usual, "check": look.check }
}

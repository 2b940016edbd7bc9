//! The page of `check`.

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::Family;
use crate::ball::spin::MOST_RPM;
use crate::base::Movement;
use crate::base::stats::Estimate;
use crate::decide::inspect::{Inspected, second_looks};
use crate::files::visible;

use super::super::format::{percent, plain, signed, signed_range};
use super::super::second_look::second_look;
use super::super::words::spin_source;
use super::Page;

/// Every pitch; `elevation_ft` says where the restated shapes would be thrown, `file` where the profile lies.
pub fn check(profile: &Profile, inspected: &[Inspected], elevation_ft: f64, file: &str, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(profile);
    page.heading("What he throws (± half the 90 % interval of the average)");
    let rows = profile.pitches.iter().zip(inspected).map(|(pitch, seen)| {
        let [speed, up, side] = seen.averages;
        vec![
            pitch.name.clone(),
            pitch.throws.to_string(),
            format!("{} ±{}", plain(speed.value, 1), plain(speed.half_width(), 1)),
            format!("{} ±{}", signed(up.value, 1), plain(up.half_width(), 1)),
            format!("{} ±{}", signed(side.value, 1), plain(side.half_width(), 1)),
        ]
    });
    page.table(&["pitch", "throws", "speed, mph", "vertical, in", "glove side, in"], rows.collect());
    as_written(&mut page, profile, inspected);
    page.paragraph("±: from throw to throw alone; `sort` adds what changes from day to day, so that its ± is wider.");
    spins(&mut page, profile, inspected);
    page.heading(&format!("The same throws in standard air at {} ft", plain(elevation_ft, 0)));
    let rows = profile.pitches.iter().zip(inspected).map(|(pitch, seen)| {
        vec![
            pitch.name.clone(),
            signed(seen.restated.vertical_break_in, 1),
            signed(seen.restated.glove_side_break_in, 1),
        ]
    });
    page.table(&["pitch", "vertical, in", "glove side, in"], rows.collect());
    page.section("Worth a second look", second_looks(profile).iter().map(second_look));
    next(&mut page, profile, file);
    page.assumptions(profile);
    page.finish()
}

/// What the profile's numbers are where they count movement against gravity alone.
fn as_written(page: &mut Page, profile: &Profile, inspected: &[Inspected]) {
    let told = profile.pitches.iter().zip(inspected).filter_map(|(pitch, seen)| {
        let read = seen.read?;
        Some(format!(
            "{} {} and {}",
            pitch.name,
            signed(read.vertical_break_in, 1),
            signed(read.glove_side_break_in, 1)
        ))
    });
    let told: Vec<String> = told.collect();
    if !told.is_empty() {
        page.paragraph(&format!(
            "Breaks here are against the same throw with no sideways force; as the profile counts them, against gravity \
             alone, up and to the glove side: {}.",
            told.join(", ")
        ));
    }
}

/// The pitch to ask about: the first in common use that he does not throw.
fn next(page: &mut Page, profile: &Profile, file: &str) {
    let wished = [Family::Sweeper, Family::Slider, Family::Changeup, Family::Cutter];
    let is_new = |family: &Family| profile.pitches.iter().all(|pitch| pitch.family != *family);
    let family = wished.into_iter().find(is_new).unwrap_or(Family::Sweeper);
    let command = format!("arsenalfit advise {} --family {family}", visible(file));
    page.next_command(&command, "whether to add that pitch (or another family), in which shape, what it is worth");
}

fn spins(page: &mut Page, profile: &Profile, inspected: &[Inspected]) {
    page.heading("How it spins");
    let hand = profile.athlete.throws;
    let rows = profile.pitches.iter().zip(inspected).map(|(pitch, seen)| {
        vec![
            pitch.name.clone(),
            spin_source(seen.source).into(),
            plain(seen.spin.rpm, 0),
            percent(seen.spin.active_fraction),
            seen.spin.clock.for_hand(hand).to_string(),
            plain(seen.spin.gyro_deg(), 0),
            needed(seen.active_needed),
        ]
    });
    page.table(&["pitch", "spin", "rpm", "active", "clock", "gyro deg", "active rpm that would do"], rows.collect());
    page.paragraph(
        "usual share: rate and clock measured, the active share is what is usual of the family. Worked out: from the \
         break, less what the seams usually give. Active rpm that would do: spin across the flight that gives this break \
         with the seams' usual help, and between which ends the lift laws and the seams put it; none: more than any arm \
         gives.",
    );
    shares(page, profile, inspected);
}

fn shares(page: &mut Page, profile: &Profile, inspected: &[Inspected]) {
    let row = |(pitch, seen): (&Pitch, &Inspected)| {
        let shares = seen.shares?;
        Some(vec![
            pitch.name.clone(),
            signed_range(shares.spin_vertical_in, 1),
            signed_range(shares.spin_glove_side_in, 1),
        ])
    };
    let shared: Vec<Vec<String>> = profile.pitches.iter().zip(inspected).filter_map(row).collect();
    if shared.is_empty() {
        page.paragraph(
            "No pitch has the rate and the clock of its spin measured: movement is not divided between spin and seams.",
        );
        return;
    }
    page.heading("Movement explained by the spin, in");
    page.table(&["pitch", "vertical", "glove side"], shared);
    page.paragraph("Ranges are the spread of five lift laws or, with a usual share, of that share between pitchers.");
    left_over(page, profile, inspected);
}

fn left_over(page: &mut Page, profile: &Profile, inspected: &[Inspected]) {
    let row = |(pitch, seen): (&Pitch, &Inspected)| {
        let (left, look) = (seen.shares?.left(), seen.seams);
        let usual = |read: fn(Movement) -> f64| {
            look.map_or("not known".into(), |look| {
                format!("{} ±{}", signed(read(look.usual.mean), 1), plain(read(look.usual.sd), 1))
            })
        };
        Some(vec![
            pitch.name.clone(),
            signed(left.up_in, 1),
            usual(|movement| movement.up_in),
            signed(left.glove_side_in, 1),
            usual(|movement| movement.glove_side_in),
            look.map_or(String::new(), |look| plain(look.departure.abs(), 1)),
        ])
    };
    page.heading("Left over for the seams, beside what the family usually shows, in");
    page.table(
        &["pitch", "vertical", "usual", "glove side", "usual", "departure"],
        profile.pitches.iter().zip(inspected).filter_map(row).collect(),
    );
    page.paragraph(
        "usual: mean of pitchers of the top league, ± their standard deviation. Departure: how many of these the left-over \
         lies from the mean, across the spin's push; beyond 2 is out of the ordinary. What is left over also holds errors \
         of measurement and, along the push, whatever the laws and the active share get wrong.",
    );
}

fn needed(rpm: Estimate) -> String {
    let show = |value: f64| if value <= MOST_RPM { plain(value, 0) } else { "none".into() };
    format!("{} ({} to {})", show(rpm.value), show(rpm.low), show(rpm.high))
}

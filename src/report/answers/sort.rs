//! The answer of `sort`: the pitches in some throws, the days, the rows not used, the labels.

use std::path::Path;

use crate::athlete::session::Session;
use crate::ball::Shape;
use crate::ball::flight::inverse::Shares;
use crate::base::geometry::Hand;
use crate::decide::inspect::second_looks_at;
use crate::files::visible;
use crate::throws::profile_text::{LineChange, ProfileUpdate};
use crate::throws::{Agreement, Cause, DayFinding, Group, Sorted, Treatment};

use super::super::content::amount::{degrees, movement, pure, rpm, share, speed};
use super::super::content::data::{Data, list, maybe, number};
use super::super::content::{Answer, Command, Section, Step, Table, Text, Unit, columns, name, object, row, say};
use super::super::words::looks::LookWords;
use super::super::words::rows::{first_of, place, set_aside, set_aside_data};
use super::super::words::sorting::{caution, days};

/// The whole answer; `written` is what was written to which profile.
pub fn sort(session: &Session, sorted: &Sorted, written: Option<(&ProfileUpdate, &Path)>) -> Answer {
    let doubts = doubts(session, sorted);
    Answer::new("", "", headline(sorted))
        .with(groups(sorted))
        .with(spins(sorted))
        .with(Section::new("Days that were not like the others").bullets(days(sorted)))
        .with(set_aside(session, &sorted.set_aside))
        .with(sorted.agreement.as_ref().map(|agreement| against_labels(session, sorted, agreement)))
        .with(counts(sorted))
        .with(Section::new("Doubts").bullets(doubts.clone()))
        .with(written.map(|(update, _)| changes(update)))
        .with(Section::next(next(sorted, written.map(|(_, path)| path))))
        .machine(object! {
            "rows": sorted.rows(),
            "throws": session.throws.len(),
            "sorted": sorted.sorted(),
            "unsorted": sorted.unsorted(),
            "pitches": list(sorted.groups.iter().map(|group| group_data(session, group))),
            "days": list(sorted.days.iter().map(day_data)),
            "set_aside": set_aside_data(session, &sorted.set_aside),
            "adjusted_rand": maybe(sorted.agreement.as_ref().map(|agreement| agreement.adjusted_rand), 4),
            "cautions": list(doubts),
        })
}

fn headline(sorted: &Sorted) -> Text {
    say!(
        "{} rows read: {} sorted into {} pitches, {} fit none, {} set aside",
        sorted.rows(),
        sorted.sorted(),
        sorted.groups.len(),
        sorted.unsorted(),
        sorted.set_aside.len()
    )
}

fn doubts(session: &Session, sorted: &Sorted) -> Vec<Text> {
    let looks = second_looks_at(sorted);
    let looks = looks.iter().map(|look| LookWords::of(look).sentence());
    session.notes.iter().map(|note| name(note)).chain(sorted.cautions.iter().map(caution)).chain(looks).collect()
}

fn groups(sorted: &Sorted) -> Section {
    // Spin has its place in the second table: eight columns are too many for 80.
    let columns = columns![
        "pitch",
        "sure",
        "throws",
        ("", Unit::Mph),
        ("vertical", Unit::Inches),
        ("glove", Unit::Inches),
        "clear"
    ];
    let rows = sorted.groups.iter().map(|group| {
        row![
            group.naming.family,
            share(group.naming.confidence),
            group.throws,
            speed(group.speed_mph).half(),
            movement(group.vertical_break_in).half(),
            movement(group.glove_side_break_in).half(),
            share(group.clearness),
        ]
    });
    Section::new("Pitches (± half the 90 % interval of the average)").table(Table::new(columns, rows)).paragraph(say!(
        "sure: chance that the name is right; clear: mean chance that its throws belong to it; ±: from \
         throw to throw and from day to day, so that a few days are never exact, however many throws ({} \
         counts the throws alone).",
        Command::word("check")
    ))
}

/// Spin, slot, what is left for the seams, and the shape in standard air: where they were measured.
fn spins(sorted: &Sorted) -> Section {
    let known = |group: &&Group| group.slot_deg.is_some() || group.spin_rpm.is_some() || group.at_sea_level.is_some();
    let row = |group: &Group| {
        row![
            group.naming.family,
            group.spin_rpm.map(|spin| rpm(spin.value)),
            group.slot_deg.map(|slot| degrees(slot).half()),
            group.shares.map(left_for_the_seams),
            group.at_sea_level.map(at_sea_level),
        ]
    };
    let rows: Vec<Vec<Text>> = sorted.groups.iter().filter(known).map(row).collect();
    let has_gaps = rows.iter().flatten().any(|cell| *cell == Text::from("-"));
    let columns =
        columns!["pitch", ("spin", Unit::Rpm), ("slot", Unit::Degrees), "left: up, glove", "sea level: up, glove"];
    let section = Section::new("Spin, slot, movement left for the seams, and shape in standard air at sea level")
        .table(Table::new(columns, rows));
    if !has_gaps {
        return section;
    }
    section.paragraph(
        "-: cannot be told. The slot needs the release point; what is left, spin, active fraction and clock; the shape \
         at sea level, the air of the day ([air] in a column map).",
    )
}

fn left_for_the_seams(shares: Shares) -> Text {
    pair(shares.seam_vertical_in.value, shares.seam_glove_side_in.value)
}

fn at_sea_level(shape: Shape) -> Text {
    pair(shape.vertical_break_in, shape.glove_side_break_in)
}

fn pair(up: f64, side: f64) -> Text {
    say!("{}, {}", movement(up).bare(), movement(side).bare())
}

fn against_labels(session: &Session, sorted: &Sorted, agreement: &Agreement) -> Section {
    let families = || sorted.groups.iter().map(|group| group.naming.family);
    let columns = columns!["label"].into_iter().chain(families().map(|family| family.name().into()));
    let rows = agreement.labels.iter().zip(&agreement.table).map(|(label, counts)| {
        std::iter::once(name(label)).chain(counts.iter().map(|&count| Text::from(count))).collect()
    });
    let wrong: Vec<_> = agreement.disagreements.iter().filter(|one| one.looks_mislabelled).collect();
    let looks_like = wrong.iter().map(|one| {
        let family = sorted.groups[one.group].naming.family;
        let label = name(&agreement.labels[one.label]);
        say!("{} says {}; it looks like a {} ({})", place(session, one.place), label, family, share(one.chance))
    });
    let section = Section::new("Against the labels in the file")
        .paragraph(say!(
            "Agreement over {} throws: {} (1 is the same division, 0 is what chance would give; adjusted \
             Rand index).",
            agreement.throws,
            pure(agreement.adjusted_rand, 3)
        ))
        .table(Table::new(columns, rows));
    first_of(section, looks_like)
}

fn counts(sorted: &Sorted) -> Section {
    let rows = sorted.candidates.iter().map(|one| row![one.groups, pure(one.icl, 0), pure(one.bic, 0)]);
    Section::new("How many pitches? (lower is better; misfit with doubt decides)")
        .table(Table::new(columns!["pitches", "misfit with doubt", "misfit alone"], rows))
        .paragraph(
            "misfit: how badly so many pitches describe the throws, and a charge for each pitch more (BIC); doubt: what \
             stays open about which pitch a throw is (ICL).",
        )
}

fn changes(update: &ProfileUpdate) -> Section {
    let line = |change: &LineChange| match change {
        LineChange::Removed(line) => format!("- {}", visible(line)),
        LineChange::Added(line) => format!("+ {}", visible(line)),
    };
    let section = Section::new("Written to the profile");
    if update.changes.is_empty() {
        return section.paragraph("Nothing changed.");
    }
    section.lines(update.changes.iter().map(line).collect())
}

/// The command to give next; nothing where no pitch was found.
fn next(sorted: &Sorted, written: Option<&Path>) -> Vec<Step> {
    let check = |path: &Path| Command::arsenalfit(["check", &path.to_string_lossy()]);
    match written {
        Some(path) => vec![Step::ask(check(path), "what these pitches are")],
        None if sorted.groups.is_empty() => Vec::new(),
        None => {
            let write = Command::words(["--write", "athlete.toml"]);
            vec![Step::ask(write, "added to this command, makes a profile of these pitches")]
        }
    }
}

fn group_data(session: &Session, group: &Group) -> Data {
    let hand = session.hand.unwrap_or(Hand::Right);
    object! {
        "family": group.naming.family.name(),
        "confidence": number(group.naming.confidence, 3),
        "throws": group.throws,
        "clearness": number(group.clearness, 3),
        "speed_mph": group.speed_mph,
        "vertical_break_in": group.vertical_break_in,
        "glove_side_break_in": group.glove_side_break_in,
        "spin_rpm": group.spin_rpm,
        "active_fraction": group.active_fraction,
        "spin_clock": group.spin_clock.map(|clock| clock.for_hand(hand).to_string()),
        "slot_deg": group.slot_deg,
    }
}

fn day_data(day: &DayFinding) -> Data {
    let treatment = match day.treatment {
        Treatment::AsMeasured => "as_measured",
        Treatment::Rezeroed => "rezeroed",
        Treatment::SetAside => "set_aside",
    };
    let cause = |cause| match cause {
        Cause::Sensor => "sensor",
        Cause::Arm => "arm",
    };
    object! {
        "day": &day.day,
        "throws": day.throws,
        "treatment": treatment,
        "cause": day.cause.map(cause),
        "vertical_offset_in": number(day.vertical_offset_in, 1),
        "glove_side_offset_in": number(day.glove_side_offset_in, 1),
    }
}

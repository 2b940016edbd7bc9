//! The page of `sort`, and the map that `sort --explain-columns` proposes.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;

use crate::athlete::session::{Session, SetAside};
use crate::base::stats::Estimate;
use crate::files::{Proposal, visible};
use crate::throws::profile_text::{LineChange, ProfileUpdate};
use crate::throws::{Cause, DayFinding, Group, Sorted, Treatment};

use super::super::format::{percent, plain, signed};
use super::Page;

/// Rows listed one by one; more are counted.
const MOST_LISTED: usize = 12;

/// The whole answer; `written` is what was written to which profile.
pub fn sort(session: &Session, sorted: &Sorted, written: Option<(&ProfileUpdate, &Path)>, width: u16) -> String {
    let mut page = Page::new(width);
    page.heading_line(&format!(
        "{} rows read: {} sorted into {} pitches, {} fit none, {} set aside",
        sorted.rows(),
        sorted.sorted(),
        sorted.groups.len(),
        sorted.unsorted(),
        sorted.set_aside.len(),
    ));
    groups(&mut page, sorted);
    days(&mut page, sorted);
    set_aside(&mut page, session, &sorted.set_aside);
    agreement(&mut page, session, sorted);
    counts(&mut page, sorted);
    let doubts: Vec<String> = session.notes.iter().chain(&sorted.cautions).cloned().collect();
    page.section("Doubts", doubts);
    if let Some((update, _)) = written {
        changes(&mut page, update);
    }
    next(&mut page, sorted, written.map(|(_, path)| path));
    page.finish()
}

fn groups(page: &mut Page, sorted: &Sorted) {
    page.heading("Pitches (± half the 90 % interval of the average)");
    // Spin has its place in the second table: eight columns are too many for 80.
    let show = |estimate: Estimate, places| {
        format!("{} ±{}", signed(estimate.value, places), plain(estimate.half_width(), places))
    };
    let rows = sorted.groups.iter().map(|group: &Group| {
        vec![
            group.naming.family.name().into(),
            percent(group.naming.confidence),
            group.throws.to_string(),
            format!("{} ±{}", plain(group.speed_mph.value, 1), plain(group.speed_mph.half_width(), 1)),
            show(group.vertical_break_in, 1),
            show(group.glove_side_break_in, 1),
            percent(group.clearness),
        ]
    });
    page.table(&["pitch", "sure", "throws", "mph", "vertical, in", "glove, in", "clear"], rows.collect());
    page.paragraph(
        "sure: chance that the name is right; clear: mean chance that its throws belong to it; ±: from throw to throw \
         and from day to day, so that a few days are never exact, however many throws (`check` counts the throws \
         alone).",
    );
    spins(page, sorted);
}

/// Spin, slot, what is left for the seams, and the shape in standard air: where they were measured.
fn spins(page: &mut Page, sorted: &Sorted) {
    let known = |group: &&Group| group.slot_deg.is_some() || group.spin_rpm.is_some() || group.at_sea_level.is_some();
    let pair = |up: f64, side: f64| format!("{}, {}", signed(up, 1), signed(side, 1));
    let rows: Vec<Vec<String>> = sorted
        .groups
        .iter()
        .filter(known)
        .map(|group| {
            vec![
                group.naming.family.name().into(),
                group.spin_rpm.map_or("-".into(), |rpm| plain(rpm.value, 0)),
                group
                    .slot_deg
                    .map_or("-".into(), |slot| format!("{} ±{}", plain(slot.value, 0), plain(slot.half_width(), 0))),
                group
                    .shares
                    .map_or("-".into(), |left| pair(left.seam_vertical_in.value, left.seam_glove_side_in.value)),
                group.at_sea_level.map_or("-".into(), |shape| pair(shape.vertical_break_in, shape.glove_side_break_in)),
            ]
        })
        .collect();
    if !rows.is_empty() {
        let has_gaps = rows.iter().flatten().any(|cell| cell == "-");
        page.heading("Spin, slot, movement left for the seams, and shape in standard air at sea level");
        page.table(&["pitch", "spin, rpm", "slot, deg", "left: up, glove", "sea level: up, glove"], rows);
        if has_gaps {
            page.paragraph(
                "-: cannot be told. The slot needs the release point; what is left, spin, active fraction and clock; \
                 the shape at sea level, the air of the day ([air] in a column map).",
            );
        }
    }
}

fn days(page: &mut Page, sorted: &Sorted) {
    let notable: Vec<String> = sorted.days.iter().filter_map(day).collect();
    let drifts = sorted.drifts.iter().map(|drift| {
        format!(
            "on {} the {} moved by itself, {} in up and {} in to the glove side, when the others did not: the arm, not \
             the unit",
            sorted.days[drift.day].day,
            sorted.groups[drift.group].naming.family,
            signed(drift.vertical_in.value, 1),
            signed(drift.glove_side_in.value, 1),
        )
    });
    let all: Vec<String> = notable.into_iter().chain(drifts).collect();
    if !all.is_empty() {
        page.heading("Days that were not like the others");
        page.list(all);
    }
}

fn day(day: &DayFinding) -> Option<String> {
    let what = match day.treatment {
        Treatment::AsMeasured => {
            return day.trend_in.map(|[up, side]| {
                format!(
                    "{}: movement drifted by {} in up and {} in to the glove side from the first throw to the last",
                    day.day,
                    signed(up, 1),
                    signed(side, 1)
                )
            });
        }
        Treatment::Rezeroed => "brought to the common zero to sort it; its movement does not count in the shapes",
        Treatment::SetAside => "set aside",
    };
    let cause = match day.cause {
        Some(Cause::Sensor) => "every pitch alike, speed and release as ever: the unit, not the arm",
        Some(Cause::Arm) => "speed or release changed too: perhaps the arm",
        None => "the cause is not clear",
    };
    Some(format!(
        "{}: measured from another zero, {} in up and {} in to the glove side; {cause}; {what}",
        day.day,
        signed(day.vertical_offset_in, 1),
        signed(day.glove_side_offset_in, 1),
    ))
}

/// Rows that are not used, with the reason of the first of them.
pub(super) fn set_aside(page: &mut Page, session: &Session, rows: &[SetAside]) {
    if rows.is_empty() {
        return;
    }
    page.heading("Rows set aside");
    let mut kinds: BTreeMap<&str, usize> = BTreeMap::new();
    for row in rows {
        *kinds.entry(row.reason.kind()).or_default() += 1;
    }
    let summary: Vec<String> = kinds.iter().map(|(kind, count)| format!("{count} {kind}")).collect();
    page.paragraph(&format!("{}.", summary.join(", ")));
    page.list(
        rows.iter().take(MOST_LISTED).map(|row| {
            format!("{}, row {}: {}", session.files[usize::from(row.place.file)], row.place.row, row.reason)
        }),
    );
    more(page, rows.len());
}

fn agreement(page: &mut Page, session: &Session, sorted: &Sorted) {
    let Some(agreement) = &sorted.agreement else {
        return;
    };
    page.heading("Against the labels in the file");
    page.paragraph(&format!(
        "Agreement over {} throws: {} (1 is the same division, 0 is what chance would give; adjusted Rand index).",
        agreement.throws,
        plain(agreement.adjusted_rand, 3),
    ));
    let names: Vec<&str> = sorted.groups.iter().map(|group| group.naming.family.name()).collect();
    let header: Vec<&str> = ["label"].into_iter().chain(names.iter().copied()).collect();
    let rows = agreement
        .labels
        .iter()
        .zip(&agreement.table)
        .map(|(label, row)| [label.clone()].into_iter().chain(row.iter().map(ToString::to_string)).collect());
    page.table(&header, rows.collect());
    let wrong: Vec<_> = agreement.disagreements.iter().filter(|one| one.looks_mislabelled).collect();
    page.list(wrong.iter().take(MOST_LISTED).map(|one| {
        format!(
            "{}, row {} says {}; it looks like a {} ({})",
            session.files[usize::from(one.place.file)],
            one.place.row,
            agreement.labels[one.label],
            names[one.group],
            percent(one.chance),
        )
    }));
    more(page, wrong.len());
}

fn counts(page: &mut Page, sorted: &Sorted) {
    page.heading("How many pitches? (lower is better; misfit with doubt decides)");
    let rows = sorted
        .candidates
        .iter()
        .map(|candidate| vec![candidate.groups.to_string(), plain(candidate.icl, 0), plain(candidate.bic, 0)]);
    page.table(&["pitches", "misfit with doubt", "misfit alone"], rows.collect());
    page.paragraph(
        "misfit: how badly so many pitches describe the throws, and a charge for each pitch more (BIC); doubt: what \
         stays open about which pitch a throw is (ICL).",
    );
}

fn changes(page: &mut Page, update: &ProfileUpdate) {
    page.heading("Written to the profile");
    if update.changes.is_empty() {
        page.paragraph("Nothing changed.");
    }
    for change in &update.changes {
        match change {
            LineChange::Removed(line) => page.verbatim(&format!("- {}\n", visible(line))),
            LineChange::Added(line) => page.verbatim(&format!("+ {}\n", visible(line))),
        }
    }
}

/// The command to give next; nothing where no pitch was found.
fn next(page: &mut Page, sorted: &Sorted, written: Option<&Path>) {
    match written {
        Some(path) => {
            let command = format!("arsenalfit check {}", visible(&path.to_string_lossy()));
            page.next_command(&command, "what these pitches are");
        }
        None if sorted.groups.is_empty() => {}
        None => page.next_command("--write athlete.toml", "added to this command, makes a profile of these pitches"),
    }
}

fn more(page: &mut Page, all: usize) {
    if all > MOST_LISTED {
        page.paragraph(&format!("... and {} more", all - MOST_LISTED));
    }
}

/// The proposed map as TOML, with what each column was taken for in comments above it.
pub fn columns(name: &str, proposal: &Proposal) -> String {
    let mut text = format!("# A proposal for {name}: check every line, above all signs and distances.\n");
    for (header, example, taken_for) in &proposal.columns {
        // Writing to a string cannot fail.
        let _ = writeln!(text, "# {header} (such as {example}): {taken_for}");
    }
    for quantity in &proposal.missing {
        let _ = writeln!(text, "# no column was found for {}", quantity.key());
    }
    text.push('\n');
    text.push_str(&proposal.map.to_toml());
    // Writing to a string cannot fail.
    let _ = writeln!(text, "\n# Save this as columns.toml, then: arsenalfit sort {name} --columns columns.toml");
    text
}

//! The answer of `compare`: two athletes beside each other, both as right-handers.

use crate::base::geometry::{Hand, Side};
use crate::base::stats::Estimate;
use crate::decide::compare::{Compared, Comparison, Difference, Swap};
use crate::decide::verdict::TRY;

use super::super::charts::{Change, RangeRow, inks, ranges, slots, usage_change};
use super::super::content::amount::{chance, runs, share, speed};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, row, text};
use super::super::words::advice::command;
use super::super::words::health::{UNTIL_CLEARED, unwell};
use super::compare_data::data;
use super::compare_facts::facts;
use super::dot::breaks;
use super::found::map_target;
use super::mix::{todays_inks, todays_map, todays_names};
use super::rates::whole_percent;

/// Below this chance to gain more, two gain about the same.
const CLEARLY: f64 = 0.6;

/// Two athletes; `files` are where their profiles lie.
pub fn compare(comparison: &Comparison, files: [&str; 2]) -> Answer {
    let [one, other] = &comparison.both;
    let who = text![called(one), " and ", called(other)];
    let about = format!("both as right-handers; numbers {}", command(comparison.command));
    let (summary, reasons) = (headline(comparison), reasons(comparison));
    let unwell = comparison.both.iter().flat_map(unwell_with_name).collect();
    Answer::new(who, about, summary.clone())
        .before(unwell)
        .lead(comparison.both.iter().map(|arm| worth_sentence(comparison, arm)).chain(chances(comparison)).collect())
        .with(Section::new(text!["What a ", comparison.family, " is worth to each"]).picture(worth_picture(comparison)))
        .with(Section::new("Why they differ").bullets(reasons.clone()).beside())
        .with(facts(comparison))
        .with(
            Section::new("How their pitches move")
                .pictures(comparison.both.iter().map(|arm| map(comparison, arm)))
                .picture(slots([one, other].map(|arm| (arm.profile.athlete.name.as_str(), arm.profile.release)))),
        )
        .with_all(
            comparison.both.iter().map(mix).enumerate().map(|(n, part)| if n == 0 { part } else { part.beside() }),
        )
        .with(Section::next(next(comparison, files)))
        .with(how_to_read(comparison))
        .machine(data(comparison, &summary, &reasons))
}

fn called(arm: &Compared) -> Text {
    name(&arm.profile.athlete.name)
}

fn worth(arm: &Compared) -> Option<Estimate> {
    arm.candidate.as_ref().map(|candidate| candidate.worth.overall)
}

fn unwell_with_name(arm: &Compared) -> Vec<Text> {
    unwell(arm.profile).into_iter().map(|said| text![called(arm), ": ", said]).collect()
}

/// Who gains more, in one line.
fn headline(comparison: &Comparison) -> Text {
    let family = comparison.family;
    let [one, other] = &comparison.both;
    let Some([first, second]) = comparison.gains_more else {
        return match (&one.candidate, &other.candidate) {
            (Some(_), None) => text!["Only ", called(one), " may throw a ", family, "."],
            (None, Some(_)) => text!["Only ", called(other), " may throw a ", family, "."],
            _ => text!["A ", family, " is for neither."],
        };
    };
    let gain = |arm: &Compared| worth(arm).map_or(0.0, |worth| worth.value);
    if gain(one).max(gain(other)) < TRY {
        text!["A ", family, " is worth next to nothing to either."]
    } else if first.max(second) < CLEARLY {
        text!["A ", family, " is worth about the same to both."]
    } else {
        text![called(if first > second { one } else { other }), " gains more from a ", family, "."]
    }
}

/// The chance behind the headline, with names.
fn chances(comparison: &Comparison) -> Option<Text> {
    let [first, second] = comparison.gains_more?;
    let [one, other] = &comparison.both;
    Some(text![
        called(one),
        " gains more in ",
        chance(first),
        " simulations of what is not known, ",
        called(other),
        " in ",
        chance(second)
    ])
}

/// Worth and target of one of them.
fn worth_sentence(comparison: &Comparison, arm: &Compared) -> Text {
    let family = comparison.family;
    let Some(candidate) = &arm.candidate else {
        return text![
            "to ",
            called(arm),
            " a ",
            family,
            " is not asked for: it may not be thrown, or no arm is known to throw it"
        ];
    };
    let shape = candidate.target.shape;
    let shape = text![speed(shape.speed_mph), ", ", breaks(shape.vertical_break_in, shape.glove_side_break_in)];
    let owned = if candidate.is_new() { "" } else { ", as another shape of the one thrown already" };
    let worth = runs(candidate.worth.overall);
    text!["to ", called(arm), " the ", family, " to chase (", shape, ") is worth ", worth, owned]
}

/// Why they differ: each swap that would change a gain by more than what is too small to matter.
fn reasons(comparison: &Comparison) -> Vec<Text> {
    let mut reasons = Vec::new();
    for (index, swaps) in comparison.swaps.iter().enumerate() {
        let (own, lender) = (&comparison.both[index], &comparison.both[1 - index]);
        reasons.extend(swaps.iter().filter_map(|swap| reason(swap, own, lender)));
    }
    if reasons.is_empty() {
        let change = "nothing of the other\u{2019}s (arm, command, pitches, hitters) would change either gain by as much \
                      as matters (";
        reasons.push(text![change, runs(TRY), " per 100 pitches)"]);
    }
    reasons
}

fn reason(swap: &Swap, own: &Compared, lender: &Compared) -> Option<Text> {
    let today = worth(own).map(|worth| worth.value);
    let change = swap.gain.unwrap_or(0.0) - today.unwrap_or(0.0);
    if change.abs() < TRY {
        return None;
    }
    let told = |gain: Option<f64>| gain.map_or("not asked for".into(), |gain| text![runs(gain).bare()]);
    let with = text!["with ", called(lender), thing(swap.difference), ", "];
    Some(text![with, called(own), " would gain ", told(swap.gain), " instead of ", told(today)])
}

/// A thing of the other's, after the name.
fn thing(difference: Difference) -> &'static str {
    match difference {
        Difference::Release => "\u{2019}s arm (slot, release, turn of the hand)",
        Difference::Command => "\u{2019}s command",
        Difference::Pitches => "\u{2019}s pitches and limits",
        Difference::Hitters => "\u{2019}s hitters (level, sides)",
    }
}

fn worth_picture(comparison: &Comparison) -> Picture {
    let ink = inks([comparison.family])[0];
    let rows: Vec<RangeRow> = comparison
        .both
        .iter()
        .map(|arm| {
            let candidate = arm.candidate.as_ref();
            let mph = candidate.map(|one| text![speed(one.target.shape.speed_mph).places(0)].to_string());
            RangeRow {
                name: arm.profile.athlete.name.clone(),
                ink,
                worth: worth(arm),
                effort: candidate.map_or(0.0, |candidate| candidate.target.effort()),
                note: mph.unwrap_or_default(),
            }
        })
        .collect();
    let told = |arm: &Compared| worth(arm).map_or("not asked for".into(), |worth| text![runs(worth).bare()]);
    let table = comparison.both.iter().map(|arm| row![called(arm), told(arm)]);
    ranges(
        format!("Runs saved per 100 pitches, {}", command(comparison.command)),
        &rows,
        "Mark: best guess; bar: 90 % interval; grey band: too small to matter.",
        Table::new(columns!["athlete", "worth"], table),
    )
}

fn map(comparison: &Comparison, arm: &Compared) -> Picture {
    let families = arm.profile.pitches.iter().map(|pitch| pitch.family);
    let inks = inks(families.chain([comparison.family]));
    let mut map = todays_map(arm.profile, called(arm), &inks);
    map.hand = Hand::Right;
    let found = arm.candidate.as_ref().zip(inks.last());
    map.target = found.map(|(candidate, &ink)| map_target(candidate, comparison.family.name(), ink));
    map.picture()
}

/// The recommended use against same-side hitters, walking to the one against opposite-side hitters.
fn mix(arm: &Compared) -> Section {
    let names = todays_names(arm.profile);
    let [same, opposite] =
        Side::BOTH.map(|side| whole_percent(arm.usage.sides.on(side).best.pitches.iter().map(|pitch| pitch.share)));
    let changes: Vec<Change> = names
        .iter()
        .zip(todays_inks(arm.profile))
        .enumerate()
        .map(|(index, (&name, ink))| Change { name, ink, before: Some(same[index]), after: opposite[index] })
        .collect();
    let rows = names.iter().enumerate().map(|(n, pitch)| row![name(pitch), share(same[n]), share(opposite[n])]);
    let table = Table::new(columns!["pitch", "against same-side", "against opposite-side"], rows);
    let legend = "Hollow: against same-side hitters. Filled: against opposite-side hitters.";
    let picture = usage_change(called(arm), &changes, legend, table).with_numbers_in_text();
    Section::new(text!["The recommended use of ", called(arm)]).picture(picture)
}

fn next(comparison: &Comparison, files: [&str; 2]) -> Vec<Step> {
    let family = comparison.family.name();
    let step = |(arm, file): (&Compared, &str)| {
        if unwell(arm.profile).is_empty() {
            let ask = Command::arsenalfit(["advise", file, "--family", family]);
            Step::ask(ask, text!["whether ", called(arm), " should add it, with the reasons"])
        } else {
            Step::act(text![called(arm), ": ", UNTIL_CLEARED])
        }
    };
    comparison.both.iter().zip(files).map(step).collect()
}

fn how_to_read(comparison: &Comparison) -> Section {
    Section::new("How to read this").bullets([
        format!("worth: runs saved per 100 pitches, {}, with the 90 % interval", command(comparison.command)),
        "why: one thing of the other\u{2019}s is put in the place of the athlete\u{2019}s own and the pitch is searched \
         again; the changes need not add up"
            .into(),
    ])
}

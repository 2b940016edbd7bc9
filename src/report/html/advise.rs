//! The page of `advise`: verdict and reasons, the shape to chase, what the hitter sees, use, worth.

use crate::athlete::profile::PerSide;
use crate::base::geometry::Side;
use crate::decide::advice::{Advice, Alternative};
use crate::former::evaluate::SideOutlook;
use crate::former::search::{Candidate, SideWorth};
use crate::former::sight::Sight;

use super::super::charts::{
    Change, Ink, MapTarget, Picture, RangeRow, Table, faces, hitter_view, inks, ranges, usage_change,
};
use super::super::format::{in_hundred, percent, plain, signed, signed_range};
use super::super::words;
use super::{Page, about, todays_map};

/// The whole answer as one page. `sights` are of today's pitches and, last, the target.
pub fn advise(advice: &Advice, sights: Option<&PerSide<Sight>>) -> String {
    let profile = advice.profile;
    let mut page = Page::new(&profile.athlete.name, &words::headline(advice), &capital_about(advice));
    if let Some(target) = &advice.target {
        page.facts(facts(advice, target));
    }
    page.list("Why", advice.reasons.iter().map(words::reason));
    let inks = all_inks(advice);
    if let Some(target) = &advice.target {
        page.pictures(
            &words::shape_heading(advice, target),
            "shape",
            [shape_map(advice, target, &inks), faces(target.recipe.spin, profile.athlete.throws)],
        );
        if let Some(sights) = sights {
            let names = all_names(advice);
            let views = Side::BOTH.map(|side| hitter_view(sights.on(side), &names, &inks, profile.athlete.throws));
            page.pictures("What hitters see", "sight", views);
        }
        let worth = &target.worth;
        let uses = Side::BOTH.map(|side| usage(advice, side, worth.sides.on(side), &inks));
        page.pictures("How it would be used", "usage", uses);
    }
    let cautions = advice.cautions.iter().map(|&caution| words::caution(caution));
    if advice.target.is_none() && advice.alternatives.is_empty() {
        page.list("Cautions", cautions);
    } else {
        page.beside("What each pitch would be worth", ("worth", &worth_by_family(advice)), ("Cautions", cautions));
    }
    page.assumptions(profile);
    page.finish()
}

fn capital_about(advice: &Advice) -> String {
    format!("{}; numbers {}", about(advice.profile), words::command(advice.question.command))
}

fn facts(advice: &Advice, target: &Candidate) -> Vec<(String, String)> {
    let shape = target.recipe.shape;
    let spin = target.recipe.spin;
    let worth = &target.worth;
    vec![
        ("speed".into(), format!("{} mph", plain(shape.speed_mph, 1))),
        ("vertical break".into(), format!("{} in", signed(shape.vertical_break_in, 1))),
        ("glove-side break".into(), format!("{} in", signed(shape.glove_side_break_in, 1))),
        (
            "spin".into(),
            format!(
                "{} rpm toward {}, {} active",
                plain(spin.rpm, 0),
                spin.clock.for_hand(advice.profile.athlete.throws),
                percent(spin.active_fraction)
            ),
        ),
        ("saves per 100 pitches".into(), format!("{} runs", signed_range(worth.overall, 2))),
    ]
}

/// Today's inks and, last, the target's.
fn all_inks(advice: &Advice) -> Vec<Ink> {
    let today = advice.profile.pitches.iter().map(|pitch| pitch.family);
    inks(today.chain(advice.target.as_ref().map(|target| target.family)))
}

fn all_names<'a>(advice: &'a Advice) -> Vec<&'a str> {
    let today = advice.profile.pitches.iter().map(|pitch| pitch.name.as_str());
    today.chain(advice.target.as_ref().map(|target| new_name(advice, target))).collect()
}

/// What the target is called beside today's pitches: its family, unless one of them is called so.
fn new_name(advice: &Advice, target: &Candidate) -> &'static str {
    let name = target.family.name();
    if advice.profile.pitches.iter().any(|pitch| pitch.name == name) { "new pitch" } else { name }
}

fn shape_map(advice: &Advice, target: &Candidate, inks: &[Ink]) -> Picture {
    let mut map =
        todays_map(advice.profile, format!("How his pitches move, and the best {} in reach", target.family), inks);
    map.target = inks.last().map(|&ink| MapTarget {
        name: new_name(advice, target),
        ink,
        shape: target.recipe.shape,
        window: target.window,
    });
    map.picture()
}

fn usage(advice: &Advice, side: Side, worth: &SideWorth, inks: &[Ink]) -> Picture {
    let names = all_names(advice);
    let shares = |outlook: &SideOutlook, index: usize| outlook.pitches.get(index).map(|pitch| pitch.share);
    let changes: Vec<Change> = names
        .iter()
        .zip(inks)
        .enumerate()
        .map(|(index, (&name, &ink))| Change {
            name,
            ink,
            before: shares(&worth.before, index),
            after: shares(&worth.after, index).unwrap_or(0.0),
        })
        .collect();
    let title =
        format!("Against {} hitters: {} runs per 100 pitches saved", words::side(side), signed_range(worth.gain, 2));
    let legend = "Hollow: the best mix without the new pitch. Filled: with it.";
    usage_change(title, &changes, legend, outcomes(&names, &worth.after))
}

/// What comes of each pitch, chances per hundred.
pub(super) fn outcomes(names: &[&str], outlook: &SideOutlook) -> Table {
    let rows = names.iter().zip(&outlook.pitches).map(|(&name, pitch)| {
        let mut row = words::outcome_cells(pitch);
        row.insert(0, name.to_owned());
        row
    });
    Table::new(&["pitch", "share", "aim", "miss", "weak", "solid", "take"], rows.collect())
}

fn worth_by_family(advice: &Advice) -> Picture {
    let target = advice.target.iter().map(|target| (target.family, Some(target)));
    let others = advice.alternatives.iter().map(|Alternative { family, candidate }| (*family, candidate.as_ref()));
    let all: Vec<_> = target.chain(others).collect();
    let marks = inks(all.iter().map(|(family, _)| *family));
    let rows: Vec<RangeRow> = all
        .iter()
        .zip(marks)
        .map(|((family, candidate), ink)| {
            let worth = candidate.map(|candidate| &candidate.worth);
            RangeRow {
                name: family.name().into(),
                ink,
                worth: worth.map(|worth| worth.overall),
                effort: candidate.map_or(0.0, |candidate| candidate.effort),
                note: candidate
                    .map_or(String::new(), |candidate| format!("{} mph", plain(candidate.recipe.shape.speed_mph, 0))),
            }
        })
        .collect();
    let table = all.iter().map(|(family, candidate)| family_row(family.name(), *candidate)).collect();
    ranges(
        format!("Runs saved per 100 pitches, {}", words::command(advice.question.command)),
        &rows,
        "Mark: best guess; bar: 90 % interval; grey band: too little to matter. A stone of effort is about a three-hour \
         turn of the axis from a pitch he throws.",
        Table::new(&["pitch", "mph, vertical, glove side", "worth", "real", "effort"], table),
    )
}

fn family_row(name: &str, candidate: Option<&Candidate>) -> Vec<String> {
    let Some(candidate) = candidate else {
        return vec![name.into(), "out of reach".into(), "-".into(), "-".into(), "-".into()];
    };
    let (shape, worth) = (candidate.recipe.shape, &candidate.worth);
    vec![
        name.into(),
        format!(
            "{}, {}, {}",
            plain(shape.speed_mph, 0),
            signed(shape.vertical_break_in, 0),
            signed(shape.glove_side_break_in, 0)
        ),
        signed_range(worth.overall, 2),
        in_hundred(worth.chance_real),
        plain(candidate.effort, 1),
    ]
}

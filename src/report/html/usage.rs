//! The page of `usage`.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::decide::usage::UsageSide;

use super::super::charts::{Change, Ink, Picture, Table, usage_change};
use super::super::follow::health;
use super::super::format::{percent, signed_range};
use super::super::{staff, words};
use super::{Page, about, todays_inks, todays_map, todays_names};

/// Both sides, and the pitches they are made of.
pub fn usage(profile: &Profile, sides: &PerSide<UsageSide>) -> String {
    let mut page = Page::new(&profile.athlete.name, "How to use what he throws.", &about(profile));
    let inks = todays_inks(profile);
    page.list("Before anything else", health(profile));
    page.list("What it comes to", Side::BOTH.map(|side| summary(side, sides.on(side))));
    page.pictures(
        "The best mix against each side",
        "usage",
        Side::BOTH.map(|side| mix(profile, side, sides.on(side), &inks)),
    );
    page.pictures("What he throws", "shape", [todays_map(profile, "How his pitches move".into(), &inks).picture()]);
    page.list("Next", staff::after_usage(profile));
    page.list(
        "How to read this",
        [
            "shares are the best mix against a hitter who knows it, within the limits of the profile".into(),
            "miss, weak and solid contact, take: chances per 100 of that pitch thrown, ± half the 90 % interval".into(),
            "own: how much the athlete's own results weigh in that pitch's chances; the rest is the model".into(),
            "runs are what hitters gain per 100 pitches: lower is better for the pitcher".into(),
        ],
    );
    page.assumptions(profile);
    page.finish()
}

fn summary(side: Side, usage: &UsageSide) -> String {
    let best = format!(
        "against {} hitters the best mix allows {} runs per 100 pitches",
        words::side(side),
        signed_range(usage.best.runs_per_100, 2)
    );
    match usage.left {
        Some(left) => format!("{best}; today\u{2019}s mix leaves {} on the table", signed_range(left, 2)),
        None => format!("{best}; today\u{2019}s mix is not given"),
    }
}

fn mix(profile: &Profile, side: Side, usage: &UsageSide, inks: &[Ink]) -> Picture {
    let names = todays_names(profile);
    let changes: Vec<Change> = names
        .iter()
        .zip(inks)
        .enumerate()
        .map(|(index, (&name, &ink))| Change {
            name,
            ink,
            before: usage.today.as_ref().map(|today| today.pitches[index].share),
            after: usage.best.pitches[index].share,
        })
        .collect();
    let legend = if usage.today.is_some() { "Hollow: today. Filled: the best mix." } else { "Filled: the best mix." };
    usage_change(format!("Against {} hitters", words::side(side)), &changes, legend, outcomes(&names, usage))
}

/// The chances of each pitch in the best mix, and how much of them is his own results.
fn outcomes(names: &[&str], usage: &UsageSide) -> Table {
    let rows = names.iter().enumerate().map(|(index, &name)| {
        let own = usage.data_weights[index].map_or("-".into(), percent);
        [vec![name.to_owned()], words::outcome_cells(&usage.best.pitches[index]), vec![own]].concat()
    });
    Table::new(&["pitch", "share", "aim", "miss", "weak", "solid", "take", "own"], rows.collect())
}

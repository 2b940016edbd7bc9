//! The page of `compare`.

use crate::base::geometry::{Hand, Side};
use crate::decide::compare::{Arm, Comparison};

use super::super::charts::{Change, MapTarget, Picture, RangeRow, Table, inks, ranges, slots, usage_change};
use super::super::format::{percent, plain, signed_range};
use super::super::{staff, words};
use super::{Page, todays_inks, todays_map, todays_names};

/// Two athletes beside each other, both as right-handers.
pub fn compare(comparison: &Comparison) -> String {
    let [one, other] = [&comparison.arms[0], &comparison.arms[1]];
    let mut page = Page::new(
        &format!("{} and {}", staff::name(one), staff::name(other)),
        &staff::headline(comparison),
        &format!("both as right-handers; numbers {}", words::command(comparison.command)),
    );
    page.list("Before anything else", staff::health_of_both(comparison));
    let sentences = comparison.arms.iter().map(|arm| staff::worth_sentence(comparison, arm));
    page.list("What it comes to", sentences.chain(staff::chance(comparison)));
    page.beside(
        &format!("What a {} is worth to each", comparison.family),
        ("worth", &worth(comparison)),
        ("Why they differ", staff::reasons(comparison).into_iter()),
    );
    page.pictures("How their pitches move", "shape", comparison.arms.iter().map(|arm| map(comparison, arm)));
    page.pictures("The best mix of what they throw", "usage", comparison.arms.iter().map(mix));
    let arms = [one, other].map(|arm| (staff::name(arm), arm.profile.release));
    page.pictures("Slots", "slot", [slots(arms)]);
    page.table("Side by side", &Table::new(&["", staff::name(one), staff::name(other)], staff::facts(comparison)));
    page.list("Next", staff::after_compare(comparison));
    page.finish()
}

fn worth(comparison: &Comparison) -> Picture {
    let ink = inks([comparison.family])[0];
    let rows: Vec<RangeRow> = comparison
        .arms
        .iter()
        .map(|arm| RangeRow {
            name: staff::name(arm).to_owned(),
            ink,
            worth: staff::worth(arm),
            effort: arm.candidate.as_ref().map_or(0.0, |candidate| candidate.effort),
            note: arm
                .candidate
                .as_ref()
                .map_or(String::new(), |candidate| format!("{} mph", plain(candidate.recipe.shape.speed_mph, 0))),
        })
        .collect();
    let table = comparison.arms.iter().map(|arm| {
        let worth = staff::worth(arm).map_or("out of reach".into(), |worth| signed_range(worth, 2));
        vec![staff::name(arm).to_owned(), worth]
    });
    ranges(
        format!("Runs saved per 100 pitches, {}", words::command(comparison.command)),
        &rows,
        "Mark: best guess; bar: 90 % interval; grey band: too little to matter.",
        Table::new(&["athlete", "worth"], table.collect()),
    )
}

fn map(comparison: &Comparison, arm: &Arm) -> Picture {
    let families = arm.profile.pitches.iter().map(|pitch| pitch.family);
    let inks = inks(families.chain([comparison.family]));
    let mut map = todays_map(arm.profile, staff::name(arm).to_owned(), &inks);
    map.hand = Hand::Right;
    map.target = arm.candidate.as_ref().zip(inks.last()).map(|(candidate, &ink)| MapTarget {
        name: comparison.family.name(),
        ink,
        shape: candidate.recipe.shape,
        window: candidate.window,
    });
    map.picture()
}

/// The best mix against same-side hitters, walking to the one against opposite-side hitters.
fn mix(arm: &Arm) -> Picture {
    let names = todays_names(arm.profile);
    let shares = |side: Side, index: usize| arm.usage.on(side).pitches[index].share;
    let changes: Vec<Change> = names
        .iter()
        .zip(todays_inks(arm.profile))
        .enumerate()
        .map(|(index, (&name, ink))| Change {
            name,
            ink,
            before: Some(shares(Side::Same, index)),
            after: shares(Side::Opposite, index),
        })
        .collect();
    let rows = changes
        .iter()
        .map(|change| vec![change.name.to_owned(), change.before.map_or("-".into(), percent), percent(change.after)]);
    let table = Table::new(&["pitch", "against same-side", "against opposite-side"], rows.collect());
    let legend = "Hollow: against same-side hitters. Filled: against opposite-side hitters.";
    usage_change(staff::name(arm).to_owned(), &changes, legend, table)
}

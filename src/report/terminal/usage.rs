//! The page of `usage`.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::decide::usage::UsageSide;

use super::super::follow::health;
use super::super::format::{percent, signed_range};
use super::super::{staff, words};
use super::Page;

/// Both sides.
pub fn usage(profile: &Profile, sides: &PerSide<UsageSide>, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(profile);
    page.bars(health(profile));
    for side in Side::BOTH {
        one_side(&mut page, profile, side, sides.on(side));
    }
    page.heading("Next");
    page.list(staff::after_usage(profile));
    page.heading("How to read this");
    page.list([
        "shares are the best mix against a hitter who knows it, within the limits of the profile".into(),
        "miss, weak and solid contact, take: chances per 100 of that pitch thrown, ± half the 90 % interval".into(),
        "own: how much the athlete's own results weigh in that pitch's chances; the rest is the model".into(),
        "runs are what hitters gain per 100 pitches: lower is better for the pitcher".into(),
    ]);
    page.assumptions(profile);
    page.finish()
}

fn one_side(page: &mut Page, profile: &Profile, side: Side, usage: &UsageSide) {
    page.heading(&format!("Against {} hitters", words::side(side)));
    let rows = profile
        .pitches
        .iter()
        .enumerate()
        .map(|(index, pitch)| {
            let today = usage.today.as_ref().map_or("-".into(), |today| percent(today.pitches[index].share));
            let own = usage.data_weights[index].map_or("-".into(), percent);
            [vec![pitch.name.clone(), today], words::outcome_cells(&usage.best.pitches[index]), vec![own]].concat()
        })
        .collect();
    page.table(&["pitch", "today", "best", "aim", "miss", "weak", "solid", "take", "own"], rows);
    page.paragraph(&format!("Best mix: {} runs per 100 pitches.", signed_range(usage.best.runs_per_100, 2)));
    match (&usage.today, usage.left) {
        (Some(today), Some(left)) => page.paragraph(&format!(
            "Today's mix: {}; it leaves {} on the table.",
            signed_range(today.runs_per_100, 2),
            signed_range(left, 2)
        )),
        _ => page.paragraph("Today's mix is not given, so what it leaves on the table is not known."),
    }
}

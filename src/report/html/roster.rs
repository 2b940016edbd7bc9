//! The page of `roster`.

use crate::ball::Family;

use super::super::charts::{Picture, RangeRow, Table, inks, ranges};
use super::super::staff::{self, Member, Roster};
use super::super::terminal::{ROSTER_HEADER, roster_rows};
use super::super::words;
use super::Page;

/// The most athletes that are drawn; the table holds all.
const DRAWN: usize = 30;

/// Everybody, best first.
pub fn roster(roster: &Roster) -> String {
    let members = roster.members;
    let mut page = Page::new(
        &staff::count(roster),
        "Who gains most from a new pitch.",
        &format!(
            "ranked by what the best new pitch is worth {}. {}",
            words::command(roster.command),
            staff::worlds_used(roster)
        ),
    );
    if !members.is_empty() {
        page.pictures("The best new pitch for each", "roster", [picture(members)]);
    }
    page.table("Everybody", &Table::new(&ROSTER_HEADER, roster_rows(members)).with_words(3));
    page.list("Why not now", staff::against(members));
    page.list("Next", staff::after_roster(roster));
    page.finish()
}

fn picture(members: &[Member]) -> Picture {
    let drawn = &members[..members.len().min(DRAWN)];
    let rows: Vec<RangeRow> = drawn
        .iter()
        .map(|member| {
            let best = member.standing.best.as_ref();
            let family = best.map_or(Family::FourSeam, |best| best.family);
            RangeRow {
                name: staff::called(members, member),
                // A family keeps its mark, so each row is inked alone.
                ink: inks([family])[0],
                worth: best.map(|best| best.worth.overall),
                effort: best.map_or(0.0, |best| best.effort),
                note: best.map_or_else(
                    || staff::reason_against(member).unwrap_or_default(),
                    |best| format!("{}, {}", best.family, staff::verdict(member.standing.verdict)),
                ),
            }
        })
        .collect();
    let table = Table::new(&ROSTER_HEADER, roster_rows(drawn)).with_words(3);
    let legend = format!(
        "Mark: best guess, its shape the family; bar: 90 % interval; grey band: too little to matter. {}",
        if members.len() > DRAWN { format!("The first {DRAWN} are drawn.") } else { String::new() }
    );
    ranges("What it is worth".into(), &rows, legend.trim_end(), table)
}

//! The page of `roster`.

use super::super::format::signed;
use super::super::staff::{self, Member, Roster};
use super::super::words;
use super::Page;

/// Everybody, best first.
pub fn roster(roster: &Roster, width: u16) -> String {
    let mut page = Page::new(width);
    if roster.members.is_empty() {
        return String::new();
    }
    page.heading_line(&format!("{}, ranked by what the best new pitch is worth", staff::count(roster)));
    page.table(&HEADER, rows(roster.members));
    page.paragraph(&format!(
        "Worth: runs saved per 100 pitches, {}. Target: mph, vertical and glove-side break, in. {}",
        words::command(roster.command),
        staff::worlds_used(roster)
    ));
    page.section("Why not now", staff::against(roster.members));
    page.heading("Next");
    page.list(staff::after_roster(roster));
    page.finish()
}

/// Columns of a roster.
pub(in super::super) const HEADER: [&str; 6] = ["athlete", "verdict", "pitch", "target", "worth", "90 % interval"];

/// A row for each member, in order.
pub(in super::super) fn rows(members: &[Member]) -> Vec<Vec<String>> {
    let row = |(index, member): (usize, &Member)| {
        let best = member.standing.best.as_ref();
        let worth = best.map(|best| best.worth.overall);
        vec![
            format!("{}. {}", index + 1, staff::called(members, member)),
            staff::verdict(member.standing.verdict).into(),
            best.map_or("-", |best| best.family.name()).into(),
            staff::target(member),
            worth.map_or("-".into(), |worth| signed(worth.value, 2)),
            worth.map_or("-".into(), |worth| format!("{} to {}", signed(worth.low, 2), signed(worth.high, 2))),
        ]
    };
    members.iter().enumerate().map(row).collect()
}

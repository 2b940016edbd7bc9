//! The card a catcher can carry: how often each pitch in which state of the count, and where to.

use crate::athlete::profile::Profile;
use crate::base::geometry::Side;
use crate::decide::counts::Count;
use crate::decide::usage::Usage;

use super::super::content::amount::share;
use super::super::content::{Section, Table, Text, columns, name, row};
use super::super::words::sides::side_name;
use super::rates::{aim_words, in_count};

/// The recommended use of both sides, count by count.
pub(super) fn card(profile: &Profile, usage: &Usage) -> Section {
    Side::BOTH.into_iter().fold(Section::new("The catcher's card").card(), |section, side| {
        section.subheading(format!("To {} hitters", side_name(side))).table(table(profile, usage, side))
    })
}

fn table(profile: &Profile, usage: &Usage, side: Side) -> Table {
    let best = &usage.sides.on(side).best;
    let by_count = Count::ALL.map(|count| in_count(best, count, 100.0));
    let rows = profile.pitches.iter().zip(&best.pitches).enumerate().map(|(index, (owned, pitch))| {
        let shares = by_count.iter().map(|shares| share(shares[index]).into()).collect::<Vec<Text>>();
        let [aim, late] = aim_words(side, pitch);
        [row![name(&owned.name), aim, late], shares].concat()
    });
    let columns = columns!["pitch", "aim", "aim, two strikes", "first pitch", "behind", "even, ahead", "two strikes"];
    Table::new(columns, rows).with_words(3)
}

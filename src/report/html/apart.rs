//! The page of `apart`.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::former::separation::{DISGUISE_CAP, Pair};
use crate::former::sight::{Opening, Sight};

use super::super::charts::{Table, forks, hitter_view};
use super::super::follow::health;
use super::super::format::{plain, signed};
use super::super::staff;
use super::{Page, about, todays_inks, todays_map, todays_names};

/// Every pair, as each side sees it.
pub fn apart(profile: &Profile, pairs: &[Pair], openings: &[Opening], sights: Option<&PerSide<Sight>>) -> String {
    let mut page = Page::new(&profile.athlete.name, "How far apart his pitches are, to a hitter.", &about(profile));
    page.list("Before anything else", health(profile));
    let (inks, names) = (todays_inks(profile), todays_names(profile));
    let map = todays_map(profile, "How his pitches move".into(), &inks).picture();
    if pairs.is_empty() {
        page.list("One pitch", ["with a single pitch there is nothing to compare".to_owned()]);
        page.pictures("What he throws", "shape", [map]);
    } else {
        page.pictures("When two pitches part", "fork", [forks(pairs, openings, &names, &inks, Side::Same), map]);
    }
    if let Some(sights) = sights {
        let views = Side::BOTH.map(|side| hitter_view(sights.on(side), &names, &inks, profile.athlete.throws));
        page.pictures("What hitters see", "sight", views);
    }
    if !pairs.is_empty() {
        page.table("Every pair", &table(pairs, &names));
        page.list("Next", staff::after_apart(profile));
        page.list("How to read this", reading());
    }
    page.assumptions(profile);
    page.finish()
}

fn table(pairs: &[Pair], names: &[&str]) -> Table {
    let rows = pairs.iter().map(|pair| {
        vec![
            format!("{} / {}", names[pair.pitches.0], names[pair.pitches.1]),
            signed(pair.speed_gap_mph, 1),
            signed(pair.arrival_gap_ms, 0),
            plain(pair.movement_in, 1),
            plain(pair.scatter_distance, 1),
        ]
    });
    Table::new(&["pair", "speed, mph", "arrival, ms", "movement, in", "scatters"], rows.collect())
}

fn reading() -> [String; 3] {
    [
        "late: share of the gap at the plate that appears after he must decide".into(),
        format!(
            "disguise: inches at the plate for each inch he could tell apart in time (a release mismatch counts against \
             it); held to {DISGUISE_CAP}"
        ),
        "scatters: distance of the two shapes in units of their own throw-to-throw scatter".into(),
    ]
}

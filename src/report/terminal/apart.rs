//! The page of `apart`.

use crate::athlete::profile::Profile;
use crate::base::geometry::Side;
use crate::former::separation::{DISGUISE_CAP, Gaps, Pair};

use super::super::follow::health;
use super::super::format::{percent, plain, signed};
use super::super::{staff, words};
use super::Page;

/// Every pair.
pub fn apart(profile: &Profile, pairs: &[Pair], width: u16) -> String {
    let mut page = Page::new(width);
    page.title(profile);
    page.bars(health(profile));
    if pairs.is_empty() {
        page.paragraph("One pitch only: there is no pair to compare.");
        return page.finish();
    }
    let name = |pair: &Pair| {
        let of = |index: usize| profile.pitches[index].name.as_str();
        format!("{} / {}", of(pair.pitches.0), of(pair.pitches.1))
    };
    page.heading("How far apart the pitches are");
    page.table(
        &["pair", "speed, mph", "arrival, ms", "movement, in", "scatters"],
        pairs.iter().map(|pair| shapes(name(pair), pair)).collect(),
    );
    for side in Side::BOTH {
        for (title, read) in [
            ("leaving the hand on the same line", read_same as fn(&Pair, Side) -> Gaps),
            ("each at its best target", read_own),
        ] {
            page.heading(&format!("What {} hitters see, {title}", words::side(side)));
            page.table(
                &["pair", "told apart by", "at decision", "at the plate", "late", "disguise"],
                pairs.iter().map(|pair| seen(name(pair), pair, side, &read(pair, side))).collect(),
            );
        }
    }
    page.heading("Next");
    page.list(staff::after_apart(profile));
    page.heading("How to read this");
    page.list(legend());
    page.assumptions(profile);
    page.finish()
}

fn shapes(name: String, pair: &Pair) -> Vec<String> {
    vec![
        name,
        signed(pair.speed_gap_mph, 1),
        signed(pair.arrival_gap_ms, 0),
        plain(pair.movement_in, 1),
        plain(pair.scatter_distance, 1),
    ]
}

fn legend() -> [String; 4] {
    [
        "told apart by: the gap he could just resolve when he must decide, in; at decision: the gap there is, in and \
         degrees at his eye"
            .into(),
        "late: share of the gap at the plate that appears after he must decide".into(),
        format!(
            "disguise: inches at the plate for each inch he could tell apart in time (a release mismatch counts \
             against it); held to {DISGUISE_CAP}"
        ),
        "scatters: distance of the two shapes in units of their own throw-to-throw scatter".into(),
    ]
}

fn read_same(pair: &Pair, side: Side) -> Gaps {
    pair.seen.on(side).same_line
}

fn read_own(pair: &Pair, side: Side) -> Gaps {
    pair.seen.on(side).own_targets
}

fn seen(name: String, pair: &Pair, side: Side, gaps: &Gaps) -> Vec<String> {
    vec![
        name,
        plain(pair.seen.on(side).resolvable_in, 1),
        format!("{} / {}", plain(gaps.decision_in, 1), plain(gaps.decision_deg, 2)),
        plain(gaps.plate_in, 1),
        percent(gaps.late_share),
        plain(gaps.disguise, 1),
    ]
}

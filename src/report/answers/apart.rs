//! The answer of `apart`: how far apart the pitches are, to a hitter.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::former::separation::{DISGUISE_CAP, Gaps, Pair};
use crate::former::sight::{Opening, Sight};

use super::super::charts::{forks, hitter_view};
use super::super::content::amount::{inches, milliseconds, pure, share, speed};
use super::super::content::data::{Data, list, number};
use super::super::content::{Answer, Command, Section, Step, Table, Text, Unit, columns, object, row};
use super::super::words::health::{UNTIL_CLEARED, unwell};
use super::super::words::sides::side_name;
use super::about::{about, assumed};
use super::mix::{todays_inks, todays_map, todays_names};

/// What is drawn: when pairs part, and what hitters see of today's pitches.
#[derive(Debug, Clone, Copy)]
pub struct Views<'a> {
    /// One for each pair.
    pub openings: &'a [Opening],
    /// By side.
    pub sights: Option<&'a PerSide<Sight>>,
}

/// Every pair; `views` are for a page, `file` is where the profile lies.
pub fn apart(profile: &Profile, pairs: &[Pair], views: Option<Views>, file: &str) -> Answer {
    let names = todays_names(profile);
    let answer = about(profile, "How far apart the pitches are, to a hitter.").before(unwell(profile));
    let answer = if pairs.is_empty() {
        answer.with(Section::new("One pitch").paragraph("There is no pair to compare."))
    } else {
        answer.with(distances(pairs, &names))
    };
    let answer = match views {
        Some(views) => answer.with_all(pictures(profile, pairs, views)),
        None => answer,
    };
    let answer = if pairs.is_empty() {
        answer
    } else {
        answer.with_all(seen_by_side(pairs, &names)).with(Section::next(next(profile, file))).with(how_to_read())
    };
    answer.with(assumed(profile)).machine(object! {
        "athlete": &profile.athlete.name,
        "bars": list(unwell(profile)),
        "pairs": list(pairs.iter().map(|pair| pair_data(&names, pair))),
    })
}

fn called(names: &[&str], pair: &Pair) -> String {
    format!("{} / {}", names[pair.pitches.0], names[pair.pitches.1])
}

fn distances(pairs: &[Pair], names: &[&str]) -> Section {
    let rows = pairs.iter().map(|pair| {
        row![
            called(names, pair),
            speed(pair.speed_gap_mph).signed(),
            milliseconds(pair.arrival_gap_ms).signed(),
            inches(pair.movement_in),
            pure(pair.scatter_distance, 1),
        ]
    });
    let columns =
        columns!["pair", ("speed", Unit::Mph), ("arrival", Unit::Milliseconds), ("movement", Unit::Inches), "scatters"];
    Section::new("Every pair").table(Table::new(columns, rows))
}

fn pictures(profile: &Profile, pairs: &[Pair], views: Views) -> [Section; 2] {
    let (inks, names) = (todays_inks(profile), todays_names(profile));
    let forks = (!pairs.is_empty()).then(|| forks(pairs, views.openings, &names, &inks, Side::Same));
    let map = todays_map(profile, "How the pitches move", &inks).picture();
    let hand = profile.athlete.throws;
    let seen = views.sights.into_iter();
    let seen = seen.flat_map(|seen| Side::BOTH.map(|side| hitter_view(seen.on(side), &names, &inks, hand)));
    [
        Section::new("When two pitches part").pictures(forks.into_iter().chain([map])),
        Section::new("What hitters see").pictures(seen),
    ]
}

fn seen_by_side(pairs: &[Pair], names: &[&str]) -> Vec<Section> {
    let section = |side: Side, title: &str, read: &dyn Fn(&Pair) -> Gaps| {
        let rows = pairs.iter().map(|pair| seen(called(names, pair), pair, side, &read(pair)));
        let columns = columns!["pair", "told apart by", "at decision", "at the plate", "late", "disguise"];
        Section::new(format!("What {} hitters see, {title}", side_name(side))).table(Table::new(columns, rows))
    };
    let both = |side: Side| {
        [
            section(side, "leaving the hand on the same line", &|pair| pair.seen.on(side).same_line),
            section(side, "each at its best target", &|pair| pair.seen.on(side).own_targets),
        ]
    };
    Side::BOTH.into_iter().flat_map(both).collect()
}

fn seen(called: String, pair: &Pair, side: Side, gaps: &Gaps) -> Vec<Text> {
    let decision = format!("{} / {}", pure(gaps.decision_in, 1).figures(), pure(gaps.decision_deg, 2).figures());
    row![
        called,
        pure(pair.seen.on(side).resolvable_in, 1),
        decision,
        pure(gaps.plate_in, 1),
        share(gaps.late_share),
        pure(gaps.disguise, 1),
    ]
}

fn how_to_read() -> Section {
    Section::new("How to read this").bullets([
        "told apart by: the gap the hitter could just resolve when the swing must be decided, in; at decision: the gap \
         there is, in and degrees at the eye"
            .to_owned(),
        "late: share of the gap at the plate that appears after the decision".to_owned(),
        format!(
            "disguise: inches at the plate for each inch the hitter could tell apart in time (a release mismatch counts \
             against it); held to {DISGUISE_CAP}"
        ),
        "scatters: distance of the two shapes in units of their own throw-to-throw scatter".to_owned(),
    ])
}

fn next(profile: &Profile, file: &str) -> Vec<Step> {
    if !unwell(profile).is_empty() {
        return vec![Step::act(UNTIL_CLEARED)];
    }
    vec![
        Step::ask(Command::arsenalfit(["usage", file]), "how to use them against each side"),
        Step::ask(Command::arsenalfit(["advise", file]), "whether a new pitch would add to them"),
    ]
}

fn pair_data(names: &[&str], pair: &Pair) -> Data {
    let gaps = |gaps: &Gaps| {
        object! {
            "release_in": number(gaps.release_in, 2),
            "decision_in": number(gaps.decision_in, 2),
            "decision_deg": number(gaps.decision_deg, 3),
            "plate_in": number(gaps.plate_in, 2),
            "late_share": number(gaps.late_share, 3),
            "disguise": number(gaps.disguise, 2),
        }
    };
    let seen = |side: Side| {
        let seen = pair.seen.on(side);
        object! {
            "resolvable_in": number(seen.resolvable_in, 2),
            "same_line": gaps(&seen.same_line),
            "own_targets": gaps(&seen.own_targets),
        }
    };
    object! {
        "pitches": list([names[pair.pitches.0], names[pair.pitches.1]]),
        "speed_gap_mph": number(pair.speed_gap_mph, 1),
        "arrival_gap_ms": number(pair.arrival_gap_ms, 1),
        "movement_in": number(pair.movement_in, 1),
        "scatter_distance": number(pair.scatter_distance, 2),
        "same_side": seen(Side::Same),
        "opposite_side": seen(Side::Opposite),
    }
}

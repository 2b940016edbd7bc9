//! The answer of `apart`: how often a hitter takes one pitch for another, and how far apart the two are.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::decide::apart::{Pair, Parting, Seen};

use super::super::charts::forks;
use super::super::content::amount::{inches, milliseconds, pure, share, speed};
use super::super::content::data::{Data, list, number};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Unit, columns, object, row};
use super::super::words::health::{UNTIL_CLEARED, unwell};
use super::super::words::sides::side_name;
use super::about::{about, assumed};
use super::mix::{todays_inks, todays_map, todays_names};

/// Every pair; `partings` say how each comes apart on its way, for pictures; `file` is where the profile lies.
pub fn apart(profile: &Profile, pairs: &[Pair], partings: &PerSide<Vec<Parting>>, file: &str) -> Answer {
    let names = todays_names(profile);
    let answer = about(profile, "How often one pitch is taken for another.").before(unwell(profile));
    let map = Section::new("How the pitches move")
        .picture(todays_map(profile, "Every pitch", &todays_inks(profile)).picture());
    let answer = if pairs.is_empty() {
        answer.with(Section::new("One pitch").paragraph("There is no pair to compare.")).with(map)
    } else {
        let [same, opposite] = Side::BOTH.map(|side| one_side(profile, pairs, partings.on(side), side));
        answer
            .with(same)
            .with(opposite.beside())
            .with(distances(pairs, &names))
            .with(map)
            .with(Section::next(next(profile, file)))
            .with(how_to_read())
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

fn one_side(profile: &Profile, pairs: &[Pair], partings: &[Parting], side: Side) -> Section {
    let names = todays_names(profile);
    let table = seen_table(pairs, &names, side);
    Section::new(format!("To {} hitters, distances in inches", side_name(side)))
        .picture(drawn(profile, pairs, partings, side, table))
}

fn drawn(profile: &Profile, pairs: &[Pair], partings: &[Parting], side: Side, table: Table) -> Picture {
    let all: Vec<(&Pair, &Parting, Seen)> =
        pairs.iter().zip(partings).map(|(pair, parting)| (pair, parting, *pair.seen.on(side))).collect();
    let title = format!("How two pitches come apart, to {} hitters", side_name(side));
    forks(title, &all, &todays_names(profile), &todays_inks(profile), table).with_numbers_in_text()
}

fn seen_table(pairs: &[Pair], names: &[&str], side: Side) -> Table {
    let rows = pairs.iter().map(|pair| {
        let seen = pair.seen.on(side);
        row![
            called(names, pair),
            share(seen.first_for_second),
            share(seen.second_for_first),
            pure(seen.decision_in, 1),
            pure(seen.plate_in, 1),
            pure(seen.late_in, 1),
        ]
    });
    let columns = columns!["pair", "1st for 2nd", "2nd for 1st", "decision", "plate", "late"];
    Table::new(columns, rows)
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
    Section::new("Every pair by itself").table(Table::new(columns, rows))
}

fn how_to_read() -> Section {
    Section::new("How to read this").bullets([
        "1st for 2nd: how often a hitter takes the first pitch of the pair for the second when they must decide, with \
         fewer than two strikes and knowing how often each is thrown; 2nd for 1st the other way round. The rest of the \
         time they take it for what it is, or for a third pitch",
        "decision: how far apart the two balls are when the hitter must decide on the faster one; plate: how far \
         apart they arrive, each thrown to where it is aimed; late: how far their ways part in between",
        "being taken for another pitch is worth something only where the two then go apart; what that is worth stands \
         in usage and levers",
        "scatters: distance of the two shapes in units of their own throw-to-throw scatter",
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
    let seen = |side: Side| {
        let seen = pair.seen.on(side);
        object! {
            "first_taken_for_second": number(seen.first_for_second, 3),
            "second_taken_for_first": number(seen.second_for_first, 3),
            "own_targets": object! {
                "release_in": number(seen.release_in, 2),
                "decision_in": number(seen.decision_in, 2),
                "plate_in": number(seen.plate_in, 2),
                "late_in": number(seen.late_in, 2),
                "late_share": number(seen.late_share(), 3),
            },
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

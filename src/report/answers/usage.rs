//! The answer of `usage`: how today's pitches are best used against each side, where they go, and what comes of them.

use crate::athlete::profile::Profile;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::decide::usage::{Limit, Usage, UsageSide};
use crate::hitter::Zone;

use super::super::charts::{AimedPitch, Ink, Plate, ShareRow, aims, shares};
use super::super::content::amount::{chance, pure, share};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, row, text};
use super::super::words::counts::{BEHIND, counts_named};
use super::super::words::health::{UNTIL_CLEARED, unwell};
use super::super::words::season::{a_season, over_a_season};
use super::super::words::sides::side_name;
use super::about::{about, assumed};
use super::card::card;
use super::mix::{todays_inks, todays_map, todays_names};
use super::rates::{RATES, aim_words, rate_cells, whole_percent};
use super::usage_data::data;

/// Both sides, and the pitches they are made of; `file` is where the profile lies.
pub fn usage(profile: &Profile, usage: &Usage, file: &str) -> Answer {
    let map = todays_map(profile, "How the pitches move", &todays_inks(profile)).picture();
    let [same, opposite] = Side::BOTH.map(|side| one_side(profile, side, usage));
    about(profile, "How to use what is thrown.")
        .lead(worth(profile, usage))
        .before(unwell(profile))
        .with(same)
        .with(opposite.beside())
        .with(card(profile, usage))
        .with(what_comes(profile, usage))
        .with(Section::new("What is thrown").picture(map))
        .with(Section::next(next(profile, file)))
        .with(how_to_read())
        .with(assumed(profile))
        .machine(data(profile, usage))
}

/// Runs over a season below which nothing is told of.
const LEAST_TOLD: f64 = 0.05;

/// What leaning saves over today's use, and why it is little.
fn worth(profile: &Profile, usage: &Usage) -> Vec<Text> {
    let level = profile.athlete.level;
    let saved = over_a_season(usage.leaning.overall, level);
    if saved.value.abs() < LEAST_TOLD {
        return vec!["the recommended use is the customary one: leaning from it would save nothing".into()];
    }
    let over = pure(saved, 1).signed();
    let against = if is_told(usage) { "today's use" } else { "customary use" };
    let saved = text![
        "the recommended use saves ",
        over,
        format!(" runs over {} against {against}; it saves anything with a chance of ", a_season(level)),
        chance(usage.leaning.chance),
    ];
    let why = "it leans only a little away from custom: no model tried on real throws explains what pitchers throw \
               beyond custom, so big changes of use have no ground to stand on";
    vec![saved, why.into()]
}

fn is_told(usage: &Usage) -> bool {
    Side::BOTH.into_iter().any(|side| usage.sides.on(side).told.is_some())
}

fn one_side(profile: &Profile, side: Side, usage: &Usage) -> Section {
    let opposite = profile.opposite_share;
    let faced = match side {
        Side::Same => 1.0 - opposite,
        Side::Opposite => opposite,
    };
    Section::new(text![format!("Against {} hitters, ", side_name(side)), share(faced), " of those faced"])
        .picture(shares_drawn(profile, side, usage.sides.on(side)))
        .picture(aims_drawn(profile, side, usage.sides.on(side)))
        .bullets(outside_custom(profile, side, usage).into_iter().chain(held(profile, side, usage)))
}

fn shares_drawn(profile: &Profile, side: Side, usage: &UsageSide) -> Picture {
    let inks: Vec<Ink> = todays_inks(profile);
    let customary = whole_percent(usage.custom.iter().map(|band| band.value));
    let recommended = whole_percent(usage.best.pitches.iter().map(|pitch| pitch.share));
    let rows: Vec<ShareRow> = (0..inks.len())
        .map(|pitch| ShareRow {
            name: &profile.pitches[pitch].name,
            ink: inks[pitch],
            custom: Estimate { value: customary[pitch], ..usage.custom[pitch] },
            told: usage.told.as_ref().map(|told| told[pitch]),
            recommended: recommended[pitch],
        })
        .collect();
    let told = if usage.told.is_some() { " Hollow: what the profile tells." } else { "" };
    let legend = format!(
        "Grey: where four pitchers in five with such pitches are; dashed: what is customary.{told} Filled: recommended."
    );
    let title = format!("How often, against {} hitters", side_name(side));
    shares(title, &rows, &legend, shares_table(&rows))
}

fn shares_table(rows: &[ShareRow]) -> Table {
    let cells = rows.iter().map(|shown| {
        let band = share((shown.custom.low, shown.custom.high));
        let told = shown.told.map(share);
        row![name(shown.name), share(shown.custom.value), band, told, share(shown.recommended)]
    });
    Table::new(columns!["pitch", "customary", "four in five", "own", "recommended"], cells)
}

fn aims_drawn(profile: &Profile, side: Side, usage: &UsageSide) -> Picture {
    let inks = todays_inks(profile);
    let pitches: Vec<AimedPitch> = (0..inks.len())
        .map(|pitch| AimedPitch {
            name: &profile.pitches[pitch].name,
            ink: inks[pitch],
            spots: usage.best.pitches[pitch].spots,
            words: aim_words(side, &usage.best.pitches[pitch]),
        })
        .collect();
    let cells = pitches.iter().map(|pitch| {
        let [early, late] = &pitch.words;
        row![name(pitch.name), early.clone(), late.clone()]
    });
    let table = Table::new(columns!["pitch", "aim", "aim with two strikes"], cells).with_words(3);
    let plate = Plate { zone: Zone::TYPICAL, side, hand: profile.athlete.throws };
    aims(format!("Where to throw it to {} hitters", side_name(side)), &pitches, plate, table)
}

/// Told shares that few pitchers have.
fn outside_custom(profile: &Profile, side: Side, usage: &Usage) -> Vec<Text> {
    let on = usage.sides.on(side);
    let say = |pitch: usize| {
        let told = on.told.as_ref().map(|told| share(told[pitch]));
        let band = share((on.custom[pitch].low, on.custom[pitch].high));
        let pitch = name(&profile.pitches[pitch].name);
        text![pitch, " ", told, " is outside what four pitchers in five do (", band, "): a question, not an error"]
    };
    usage.outside_custom(side).into_iter().map(say).collect()
}

/// Where a limit of the profile holds the use.
fn held(profile: &Profile, side: Side, usage: &Usage) -> Vec<Text> {
    let say = |(limit, counts): (Limit, Vec<_>)| {
        let what = match limit {
            Limit::FastballFloor => "the profile's floor of ",
            Limit::BreakingCap => "the profile's cap of ",
        };
        let pitches = match limit {
            Limit::FastballFloor => " fastballs",
            Limit::BreakingCap => " breaking balls",
        };
        text![what, share(limit.share(profile)), pitches, " holds the recommended use: ", counts_named(&counts)]
    };
    usage.held(profile, side).into_iter().map(say).collect()
}

/// What comes of each pitch thrown as recommended.
fn what_comes(profile: &Profile, usage: &Usage) -> Section {
    let names = todays_names(profile);
    Side::BOTH.into_iter().fold(Section::new("What comes of each pitch, thrown as recommended"), |section, side| {
        let pitches = names.iter().zip(&usage.sides.on(side).best.pitches);
        let rows = pitches.map(|(pitch, outlook)| [row![name(pitch)], rate_cells(outlook)].concat());
        let columns = columns!["pitch", "strike", "chase", "miss/swing", "miss", "weak", "solid", "take"];
        section.subheading(format!("Against {} hitters", side_name(side))).table(Table::new(columns, rows))
    })
}

fn how_to_read() -> Section {
    let shares = [
        "customary: what pitchers with such pitches throw; four in five of them are within its band; own: what the \
         profile tells, where it tells it",
        BEHIND,
        "aims are where such pitches are customarily thrown, moved at most four inches by the model, or the profile's \
         own; in and away are the hitter's",
    ];
    Section::new("How to read this").bullets(shares.into_iter().chain(RATES))
}

fn next(profile: &Profile, file: &str) -> Vec<Step> {
    if !unwell(profile).is_empty() {
        return vec![Step::act(UNTIL_CLEARED)];
    }
    vec![
        Step::ask(Command::arsenalfit(["levers", file]), "what else would help, best first"),
        Step::ask(Command::arsenalfit(["advise", file]), "whether a new pitch would add to this"),
    ]
}

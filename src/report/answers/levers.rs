//! The answer of `levers`: what would help the athlete most, every single change in one table.

use crate::athlete::eligibility::reasons_against_throwing;
use crate::athlete::profile::Profile;
use crate::ball::Shape;
use crate::base::stats::Estimate;
use crate::decide::levers::{Lever, What, barred};
use crate::decide::verdict::TRY;

use super::super::charts::{Axis, Ink, RangeRow, inks, ranges_on};
use super::super::content::amount::{chance, pure};
use super::super::content::data::{Data, list, number};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, object, row, text};
use super::super::number::{plain, signed};
use super::super::words::health::{UNTIL_CLEARED, reason as barring};
use super::super::words::levers::{cautions, change, change_key};
use super::super::words::season::{a_season, over_a_season, season_pitches};
use super::about::{about, assumed};
use super::mix::todays_inks;

/// What a column of chances leaves out; how to read it is said below.
const IN_HUNDRED: &str = " in 100";
/// In how many draws the best change must beat another to be called clearly better.
const CLEARLY: f64 = 0.75;

/// Every change, best first; `file` is where the profile lies. An athlete who may not throw is shown none.
pub fn levers(profile: &Profile, levers: &[Lever], file: &str) -> Answer {
    let bars: Vec<Text> = reasons_against_throwing(profile.health, &profile.athlete).into_iter().map(barring).collect();
    let levers = if bars.is_empty() { levers } else { &[] };
    let data = data(profile, levers, &bars);
    let answer = if bars.is_empty() { free(profile, levers, file) } else { not_now(profile, bars) };
    answer.with(assumed(profile)).machine(data)
}

fn not_now(profile: &Profile, bars: Vec<Text>) -> Answer {
    about(profile, "No change of the arsenal now.").before(bars).with(Section::next(vec![Step::act(UNTIL_CLEARED)]))
}

fn free(profile: &Profile, levers: &[Lever], file: &str) -> Answer {
    about(profile, headline(profile, levers))
        .lead(how_sure(profile, levers))
        .with(Section::new("Every change, best first").picture(drawn(profile, levers)))
        .with(Section::new("Keep in mind").bullets(kept_in_mind(profile, levers)))
        .with(Section::new("Not weighed").bullets(not_weighed(profile)))
        .with(Section::next(next(levers, file)))
        .with(how_to_read(profile))
}

fn headline(profile: &Profile, levers: &[Lever]) -> Text {
    match told_first(levers) {
        Some(best) if best.worth.overall.value >= TRY => {
            text!["What would help most: ", change(profile, &best.what), "."]
        }
        _ => "No single change would help much.".into(),
    }
}

/// The best change that may be called so.
fn told_first(levers: &[Lever]) -> Option<&Lever> {
    levers.iter().find(|lever| may_be_told_first(lever))
}

/// A pitch dropped reads better than it is, for the model meets each pitch by itself: it is shown and never advised.
fn may_be_told_first(lever: &Lever) -> bool {
    !matches!(lever.what, What::Drop(_))
}

/// What the best change is worth, and which others are not told apart from it.
fn how_sure(profile: &Profile, levers: &[Lever]) -> Vec<Text> {
    let Some(best) = told_first(levers) else { return Vec::new() };
    let others = levers.iter().filter(|lever| may_be_told_first(lever) && !std::ptr::eq(*lever, best));
    let level = profile.athlete.level;
    let first = text![
        change(profile, &best.what),
        ": ",
        pure(over_a_season(best.worth.overall, level), 1).signed(),
        format!(" runs saved over {}; it saves anything with a chance of ", a_season(level)),
        chance(best.worth.chance),
    ];
    let close: Vec<Text> = others
        .filter(|other| other.worth.overall.value > 0.0)
        .filter(|other| best.worth.more_often_than(&other.worth) < CLEARLY)
        .map(|other| change(profile, &other.what))
        .collect();
    let and = (!close.is_empty()).then(|| text!["not clearly less: ", Text::joined(close, "; ")]);
    std::iter::once(first).chain(and).collect()
}

fn drawn(profile: &Profile, levers: &[Lever]) -> Picture {
    let level = profile.athlete.level;
    let marks = marks(profile, levers);
    let row = |(lever, ink): (&Lever, Ink)| RangeRow {
        name: change(profile, &lever.what).to_string(),
        ink,
        worth: Some(over_a_season(lever.worth.overall, level)),
        effort: effort(&lever.what).unwrap_or(0.0),
        note: String::new(),
    };
    let rows: Vec<RangeRow> = levers.iter().zip(marks).map(row).collect();
    let trifle = over_a_season(Estimate { value: TRY, low: TRY, high: TRY }, level).value;
    let axis = Axis { words: "runs saved over a season", nothing: trifle, places: 1 };
    let legend = "Every change by itself, with its 90 % interval. Grey: too little to work for. Stones: how far the shape \
                  lies from what such arms throw, one a standard deviation.";
    ranges_on(axis, "What each change would save".into(), &rows, legend, table(profile, levers)).with_numbers_in_text()
}

/// A mark for each change: that of its pitch, or of the first pitch where it concerns all.
fn marks(profile: &Profile, levers: &[Lever]) -> Vec<Ink> {
    let owned = todays_inks(profile);
    let new = levers.iter().filter_map(|lever| match &lever.what {
        What::Learn(target) => Some(target.family),
        _ => None,
    });
    let all = inks(profile.pitches.iter().map(|pitch| pitch.family).chain(new));
    let mut learnt = all.into_iter().skip(owned.len());
    let mark = |lever: &Lever| match lever.what {
        What::Learn(_) => learnt.next().unwrap_or(Ink::NEUTRAL),
        What::Reshape(pitch, _) | What::Drop(pitch) => owned[pitch],
        What::Faster | What::TighterCommand | What::UseAlone => Ink::NEUTRAL,
    };
    levers.iter().map(mark).collect()
}

fn table(profile: &Profile, levers: &[Lever]) -> Table {
    let rows = levers.iter().map(|lever| {
        let runs = pure(over_a_season(lever.worth.overall, profile.athlete.level), 1).signed();
        let effort = effort(&lever.what).map(|effort| pure(effort, 1));
        let to = shape(&lever.what).map(shape_words);
        let figures = chance(lever.worth.chance).figures();
        let chance = figures.trim_end_matches(IN_HUNDRED);
        row![change(profile, &lever.what), to, runs, chance, effort]
    });
    Table::new(columns!["change", "shape", "runs a season", "chance", "effort"], rows).with_words(2)
}

/// The shape a change asks for.
fn shape(what: &What) -> Option<Shape> {
    match what {
        What::Learn(target) | What::Reshape(_, target) => Some(target.shape),
        What::Drop(_) | What::Faster | What::TighterCommand | What::UseAlone => None,
    }
}

fn shape_words(shape: Shape) -> String {
    let Shape { speed_mph, vertical_break_in, glove_side_break_in } = shape;
    format!("{}, {}, {}", plain(speed_mph, 0), signed(vertical_break_in, 0), signed(glove_side_break_in, 0))
}

/// How far a shape lies from what such arms throw, in standard deviations; nothing where no shape changes.
fn effort(what: &What) -> Option<f64> {
    match what {
        What::Learn(target) | What::Reshape(_, target) => Some(target.effort()),
        What::Drop(_) | What::Faster | What::TighterCommand | What::UseAlone => None,
    }
}

/// Cautions, each once, with the changes it is about.
fn kept_in_mind(profile: &Profile, levers: &[Lever]) -> Vec<Text> {
    let mut said: Vec<(String, Vec<Text>)> = Vec::new();
    for lever in levers {
        for caution in cautions(profile, lever) {
            let (caution, about) = (caution.to_string(), change(profile, &lever.what));
            match said.iter_mut().find(|(known, _)| *known == caution) {
                Some((_, changes)) => changes.push(about),
                None => said.push((caution, vec![about])),
            }
        }
    }
    let general = [
        "every throw of a new or changed pitch counts as workload; pain stops the work",
        "the hitters are fitted to one day of the top league: chances of 60 to 80 in 100 are what one day can carry",
    ];
    let about = |(caution, changes): (String, Vec<Text>)| text![Text::joined(changes, ", "), ": ", caution];
    said.into_iter().map(about).chain(general.map(Text::from)).collect()
}

/// Families that may not be learnt, with the reason.
fn not_weighed(profile: &Profile) -> Vec<Text> {
    let say = |(family, bar): (crate::ball::Family, crate::athlete::eligibility::Bar)| {
        text!["a new ", family, ": ", Text::joined(bar.reasons.into_iter().map(barring), "; ")]
    };
    barred(profile).into_iter().map(say).collect()
}

fn next(levers: &[Lever], file: &str) -> Vec<Step> {
    let best = levers.iter().find_map(|lever| match &lever.what {
        What::Learn(target) if lever.worth.overall.value > 0.0 => Some(target.family.name()),
        _ => None,
    });
    let advise = best.map(|family| {
        let command = Command::arsenalfit(["advise", file, "--family", family]);
        Step::ask(command, "whether the best of the new pitches belongs in the arsenal, and why")
    });
    let usage = Step::ask(Command::arsenalfit(["usage", file]), "how to use today's pitches meanwhile");
    advise.into_iter().chain([usage]).collect()
}

fn how_to_read(profile: &Profile) -> Section {
    Section::new("How to read this").bullets([
        format!(
            "runs a season: runs saved over {}, with the 90 % interval; every change by itself, so they do not add up",
            a_season(profile.athlete.level)
        ),
        "shape: speed in mph, vertical and glove-side break in inches; a new pitch is counted once mastered".to_owned(),
        "reshaped: the best other shape found near what such arms throw; below zero the old one stays; 1 mph more and \
         tighter command are on every pitch"
            .to_owned(),
        "chance: in 100, of saving anything at all".to_owned(),
        "effort: how far the shape lies from what such arms throw, in standard deviations".to_owned(),
    ])
}

fn data(profile: &Profile, levers: &[Lever], bars: &[Text]) -> Data {
    object! {
        "athlete": &profile.athlete.name,
        "bars": list(bars),
        "pitches_per_season": season_pitches(profile.athlete.level),
        "levers": list(levers.iter().map(|lever| lever_data(profile, lever))),
    }
}

fn lever_data(profile: &Profile, lever: &Lever) -> Data {
    let pitch = match &lever.what {
        What::Learn(target) => Some(target.family.name().to_owned()),
        What::Reshape(pitch, _) | What::Drop(pitch) => Some(profile.pitches[*pitch].name.clone()),
        What::Faster | What::TighterCommand | What::UseAlone => None,
    };
    let shape = shape(&lever.what).map(|shape| {
        object! {
            "speed_mph": number(shape.speed_mph, 1),
            "vertical_break_in": number(shape.vertical_break_in, 1),
            "glove_side_break_in": number(shape.glove_side_break_in, 1),
        }
    });
    object! {
        "change": change_key(&lever.what),
        "pitch": pitch,
        "shape": shape,
        "runs_per_season": over_a_season(lever.worth.overall, profile.athlete.level),
        "runs_per_100": lever.worth.overall,
        "same_side": lever.worth.sides.same,
        "opposite_side": lever.worth.sides.opposite,
        "chance": number(lever.worth.chance, 3),
        "by_reading": list(lever.worth.by_reading.map(|runs| number(runs, 4))),
        "effort": effort(&lever.what).map(|effort| number(effort, 2)),
        "cautions": list(cautions(profile, lever)),
    }
}

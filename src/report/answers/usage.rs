//! The answer of `usage`: how today's pitches are best used against each side.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::decide::usage::UsageSide;

use super::super::charts::{Change, Ink, usage_change};
use super::super::content::amount::{runs, share};
use super::super::content::data::{Data, list, number};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, object, row, text};
use super::super::words::health::{UNTIL_CLEARED, unwell};
use super::super::words::sides::side_name;
use super::about::{about, assumed};
use super::mix::{OUTCOMES, outcome_cells, side_data, todays_inks, todays_map, todays_names, whole_shares};

/// Both sides, and the pitches they are made of; `file` is where the profile lies.
pub fn usage(profile: &Profile, sides: &PerSide<UsageSide>, file: &str) -> Answer {
    let map = todays_map(profile, "How the pitches move", &todays_inks(profile)).picture();
    let [same, opposite] = Side::BOTH.map(|side| one_side(profile, side, sides.on(side)));
    about(profile, "How to use what is thrown.")
        .before(unwell(profile))
        .with(same)
        .with(opposite.beside())
        .with(Section::new("What is thrown").picture(map))
        .with(Section::next(next(profile, file)))
        .with(how_to_read())
        .with(assumed(profile))
        .machine(object! {
            "athlete": &profile.athlete.name,
            "bars": list(unwell(profile)),
            "same_side": usage_data(profile, &sides.same),
            "opposite_side": usage_data(profile, &sides.opposite),
        })
}

fn one_side(profile: &Profile, side: Side, usage: &UsageSide) -> Section {
    Section::new(format!("Against {} hitters", side_name(side)))
        .picture(picture(profile, side, usage, &todays_inks(profile)))
        .paragraph(text!["Best mix: ", runs(usage.best.runs_per_100), "."])
        .paragraph(match (&usage.today, usage.left) {
            (Some(today), Some(left)) => {
                let today = runs(today.runs_per_100).bare();
                text!["Today's mix: ", today, "; it leaves ", runs(left).bare(), " on the table."]
            }
            _ => "Today's mix is not given, so what it leaves on the table is not known.".into(),
        })
}

fn picture(profile: &Profile, side: Side, usage: &UsageSide, inks: &[Ink]) -> Picture {
    let names = todays_names(profile);
    let changes: Vec<Change> = names
        .iter()
        .zip(inks)
        .enumerate()
        .map(|(index, (&name, &ink))| Change {
            name,
            ink,
            before: usage.today.as_ref().map(|today| today.pitches[index].share),
            after: usage.best.pitches[index].share,
        })
        .collect();
    let legend = if usage.today.is_some() { "Hollow: today. Filled: the best mix." } else { "Filled: the best mix." };
    let title = format!("The best mix against {} hitters", side_name(side));
    usage_change(title, &changes, legend, table(&names, usage)).with_numbers_in_text()
}

/// The chances of each pitch in the best mix, and how much of them is the athlete's own results.
fn table(names: &[&str], usage: &UsageSide) -> Table {
    let (best, today) = (whole_shares(&usage.best), usage.today.as_ref().map(whole_shares));
    let rows = names.iter().enumerate().map(|(index, pitch)| {
        let today = today.as_ref().map(|today| share(today[index]));
        let own: Text = usage.data_weights[index].map(share).into();
        [row![name(pitch), today, share(best[index])], outcome_cells(&usage.best.pitches[index]), vec![own]].concat()
    });
    Table::new(columns!["pitch", "today", "best", "aim", "miss", "weak", "solid", "take", "own"], rows)
}

fn how_to_read() -> Section {
    Section::new("How to read this").bullets([
        "shares are the best mix against a hitter who knows it, within the limits of the profile",
        OUTCOMES,
        "own: how much the athlete's own results weigh in that pitch's chances; the rest is the model",
        "runs are what hitters gain per 100 pitches: lower is better for the pitcher",
    ])
}

fn next(profile: &Profile, file: &str) -> Vec<Step> {
    if !unwell(profile).is_empty() {
        return vec![Step::act(UNTIL_CLEARED)];
    }
    vec![Step::ask(Command::arsenalfit(["advise", file]), "whether a new pitch would add to this")]
}

fn usage_data(profile: &Profile, usage: &UsageSide) -> Data {
    object! {
        "best": side_data(profile, None, &usage.best),
        "today": usage.today.as_ref().map(|today| side_data(profile, None, today)),
        "left_on_the_table_runs_per_100": usage.left,
        "gap_runs_per_100": number(usage.gap, 6),
    }
}

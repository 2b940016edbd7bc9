//! The answer of `roster`: a staff ranked by what the best new pitch is worth to each.

use std::path::Path;

use crate::athlete::profile::Profile;
use crate::ball::Family;
use crate::decide::advice::{Bar, FAMILIES, Question, Verdict, bar};
use crate::decide::roster::Standing;
use crate::former::search::{Candidate, Command as CommandOf, TRIFLE};

use super::super::charts::{RangeRow, inks, ranges};
use super::super::content::amount::{Amount, chance, runs};
use super::super::content::data::{Data, maybe, number};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, object, row, text};
use super::super::words::advice::{command, verdict, verdict_key};
use super::found::in_short;

/// The most athletes that are drawn; the table holds all.
const DRAWN: usize = 30;

/// An athlete of a roster.
#[derive(Debug, Clone)]
pub struct Member {
    /// The file the profile was read from.
    pub file: String,
    /// Who.
    pub profile: Profile,
    /// Where the athlete stands.
    pub standing: Standing,
}

/// A staff as it is shown.
#[derive(Debug, Clone, Copy)]
pub struct Roster<'a> {
    /// Everybody, best first.
    pub members: &'a [Member],
    /// Whose command the worth counts.
    pub command: CommandOf,
    /// How many files could not be read.
    pub unread: usize,
    /// In how many simulations each is judged.
    pub draws: usize,
}

/// Everybody, best first.
pub fn roster(roster: &Roster) -> Answer {
    let members = roster.members;
    Answer::new(count(roster), "ranked by what the best new pitch is worth", "Who gains most from a new pitch.")
        .with(Section::new("Everybody").table(table(members)).paragraph(key(roster)))
        .with((!members.is_empty()).then(|| Section::new("The best new pitch for each").picture(picture(members))))
        .with(Section::new("Why not now").bullets(against(members)))
        .with(Section::next(next(members)))
        .machine_lines(members.iter().enumerate().map(|(place, member)| member_data(place + 1, member)).collect())
}

/// "8 athletes, 2 files could not be read".
fn count(roster: &Roster) -> String {
    let several = |count: usize, one: &str| format!("{count} {one}{}", if count == 1 { "" } else { "s" });
    let athletes = several(roster.members.len(), "athlete");
    if roster.unread == 0 {
        return athletes;
    }
    format!("{athletes}, {} could not be read", several(roster.unread, "file"))
}

fn key(roster: &Roster) -> Text {
    let (draws, full) = (roster.draws, Question::DEFAULT.draws);
    let beside = if draws == full { Text::default() } else { text!["; ", Command::word("advise"), " makes ", full] };
    text![
        format!(
            "Worth: runs saved per 100 pitches, {}. Target: mph, vertical and glove-side break, in. Intervals: from {draws} \
             simulations of each athlete",
            command(roster.command)
        ),
        beside,
        "."
    ]
}

/// What a member is called: by name, with the file's where somebody else has the same.
fn called(members: &[Member], member: &Member) -> String {
    let name = &member.profile.athlete.name;
    if members.iter().filter(|other| other.profile.athlete.name == *name).count() < 2 {
        return name.clone();
    }
    let file = Path::new(&member.file).file_name().map_or(member.file.as_str().into(), |file| file.to_string_lossy());
    format!("{name} ({file})")
}

fn table(members: &[Member]) -> Table {
    let row = |(index, member): (usize, &Member)| {
        let best = member.standing.best.as_ref();
        let worth = |show: fn(&Candidate) -> Amount| best.map(|best| show(best).bare());
        row![
            text![index + 1, ". ", name(&called(members, member))],
            verdict(member.standing.verdict),
            best.map(|best| best.family),
            best.map(in_short),
            worth(|best| runs(best.worth.overall.value)),
            worth(|best| runs((best.worth.overall.low, best.worth.overall.high))),
        ]
    };
    let columns = columns!["athlete", "verdict", "pitch", "target", "worth", "90 % interval"];
    Table::new(columns, members.iter().enumerate().map(row)).with_words(3)
}

fn picture(members: &[Member]) -> Picture {
    let drawn = &members[..members.len().min(DRAWN)];
    let rows: Vec<RangeRow> = drawn
        .iter()
        .map(|member| {
            let best = member.standing.best.as_ref();
            let family = best.map_or(Family::FourSeam, |best| best.family);
            let told = |best: &Candidate| format!("{}, {}", best.family, verdict(member.standing.verdict));
            let against = || reason_against(member).unwrap_or_default().to_string();
            RangeRow {
                name: called(members, member),
                // A family keeps its mark, so each row is inked alone.
                ink: inks([family])[0],
                worth: best.map(|best| best.worth.overall),
                effort: best.map_or(0.0, |best| best.effort),
                note: best.map_or_else(against, told),
            }
        })
        .collect();
    let more = if members.len() > DRAWN { format!(" The first {DRAWN} are drawn.") } else { String::new() };
    let legend =
        format!("Mark: best guess, its shape the family; bar: 90 % interval; grey band: too small to matter.{more}");
    ranges("What it is worth".into(), &rows, &legend, table(drawn))
}

/// Why the answer about a member is "not now"; nothing when it is another.
fn reason_against(member: &Member) -> Option<Text> {
    if member.standing.verdict != Verdict::NotNow {
        return None;
    }
    let health = member.profile.health;
    Some(match &member.standing.best {
        _ if health.pain => "pain is reported".into(),
        _ if health.recent_injury => "a recent arm injury is reported".into(),
        None => too_young(member).unwrap_or_else(|| "no shape in reach".into()).into(),
        Some(best) if best.worth.overall.value < TRIFLE => {
            let young = too_young(member).map_or(String::new(), |young| format!("; {young}"));
            format!("gains too little to matter{young}").into()
        }
        Some(best) => text!["it saves runs worth having in only ", chance(best.worth.chance_real), " simulations"],
    })
}

/// What age forbids, when it forbids anything new.
fn too_young(member: &Member) -> Option<String> {
    let profile = &member.profile;
    let new = FAMILIES.into_iter().filter(|family| profile.pitches.iter().all(|pitch| pitch.family != *family));
    let barred = new.filter(|family| matches!(bar(profile, *family), Some(Bar::TooYoung(_) | Bar::BasicsFirst(_))));
    let barred: Vec<&str> = barred.map(Family::name).collect();
    (!barred.is_empty()).then(|| format!("too young for {}", barred.join(", ")))
}

/// A line for each member whose answer is "not now".
fn against(members: &[Member]) -> Vec<Text> {
    let line = |member: &Member| Some(text![name(&called(members, member)), ": ", reason_against(member)?]);
    members.iter().filter_map(line).collect()
}

fn next(members: &[Member]) -> Vec<Step> {
    let ask = |first: &Member| {
        let family = first.standing.best.iter().flat_map(|best| ["--family", best.family.name()]);
        let words = ["advise", first.file.as_str()].into_iter().chain(family);
        Step::ask(Command::arsenalfit(words), "gives the reasons for the first; the same for anybody else")
    };
    members.first().map(ask).into_iter().collect()
}

fn member_data(rank: usize, member: &Member) -> Data {
    let best = member.standing.best.as_ref();
    let target = best.map(|best| {
        let shape = best.recipe.shape;
        object! {
            "speed_mph": number(shape.speed_mph, 1),
            "vertical_break_in": number(shape.vertical_break_in, 1),
            "glove_side_break_in": number(shape.glove_side_break_in, 1),
        }
    });
    object! {
        "rank": rank,
        "file": &member.file,
        "athlete": &member.profile.athlete.name,
        "verdict": verdict_key(member.standing.verdict),
        "reason": reason_against(member),
        "family": best.map(|best| best.family.name()),
        "target": target,
        "gain_runs_per_100": best.map(|best| best.worth.overall),
        "chance_real": maybe(best.map(|best| best.worth.chance_real), 3),
        "effort": maybe(best.map(|best| best.effort), 2),
    }
}

//! The answer of `roster`: a staff ranked by what the best new pitch is worth to each.

use std::path::Path;

use crate::athlete::eligibility::{Eligibility, Reason};
use crate::athlete::profile::{Level, Profile};
use crate::ball::Family;
use crate::base::stats::Estimate;
use crate::decide::advice::{Candidate, FAMILIES};
use crate::decide::new_pitch::Command as CommandOf;
use crate::decide::roster::Standing;
use crate::decide::verdict::Verdict;

use super::super::charts::{RangeRow, inks, ranges};
use super::super::content::amount::runs;
use super::super::content::data::{Data, maybe, number};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, object, row, text};
use super::super::words::advice::{command, verdict, verdict_key};
use super::super::words::season::{over_a_season, season_pitches};
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
    format!(
        "Worth: runs saved in a season ({} pitches for a professional, fewer below), {}. Target: mph, vertical and \
         glove-side break, in. Intervals: from {} simulations of each athlete.",
        season_pitches(Level::Professional),
        command(roster.command),
        roster.draws
    )
    .into()
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
        row![
            text![index + 1, ". ", name(&called(members, member))],
            verdict(member.standing.verdict),
            best.map(|best| best.target.family),
            best.map(in_short),
            best.map(|best| runs(season(best, member).value).places(1).bare()),
            best.map(|best| runs((season(best, member).low, season(best, member).high)).places(1).bare()),
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
            let family = best.map_or(Family::FourSeam, |best| best.target.family);
            let told = |best: &Candidate| format!("{}, {}", best.target.family, verdict(member.standing.verdict));
            let against = || reason_against(member).unwrap_or_default().to_string();
            RangeRow {
                name: called(members, member),
                // A family keeps its mark, so each row is inked alone.
                ink: inks([family])[0],
                worth: best.map(|best| season(best, member)),
                effort: best.map_or(0.0, |best| best.target.effort()),
                note: best.map_or_else(against, told),
            }
        })
        .collect();
    let more = if members.len() > DRAWN { format!(" The first {DRAWN} are drawn.") } else { String::new() };
    let legend = format!("Mark: best guess, its shape the family; bar: 90 % interval.{more}");
    ranges("What it is worth".into(), &rows, &legend, table(drawn))
}

/// What the best new pitch saves a member in a season.
fn season(best: &Candidate, member: &Member) -> Estimate {
    over_a_season(best.worth.overall, member.profile.athlete.level)
}

/// Why the answer about a member is "not now"; nothing when it is another.
fn reason_against(member: &Member) -> Option<Text> {
    if member.standing.verdict != Verdict::NotNow {
        return None;
    }
    let barred = barred(&member.profile);
    Some(match &member.standing.best {
        None => barred.unwrap_or_else(|| "throws every pitch that is weighed".into()),
        Some(best) => {
            let little = text!["the best one saves only ", runs(season(best, member).value).places(1), " in a season"];
            barred.map_or_else(|| little.clone(), |barred| text![little.clone(), "; ", barred])
        }
    })
}

/// What health or age forbids, when it forbids any pitch that is weighed.
fn barred(profile: &Profile) -> Option<Text> {
    let bars = FAMILIES.into_iter().filter_map(|family| {
        let eligibility = Eligibility::of(profile, family);
        let reason = eligibility.bar()?.reasons.first().copied()?;
        Some((family, reason))
    });
    let bars: Vec<(Family, Reason)> = bars.collect();
    let (_, first) = bars.first()?;
    Some(match first {
        Reason::Pain => "pain is reported".into(),
        Reason::RecentInjury => "a recent arm injury is reported".into(),
        Reason::BelowTheTable { age } => text!["at ", *age, " there are no published limits to go by"],
        Reason::AgeNeeded => "age is needed: what may be thrown depends on it".into(),
        Reason::NoNewBreakingBall => "no new breaking ball is to be thrown".into(),
        Reason::BasicsOnly { .. } | Reason::BasicsFirst { .. } => {
            let names: Vec<&str> = bars.iter().map(|(family, _)| family.name()).collect();
            format!("too young for {}", names.join(", ")).into()
        }
    })
}

/// A line for each member whose answer is "not now".
fn against(members: &[Member]) -> Vec<Text> {
    let line = |member: &Member| Some(text![name(&called(members, member)), ": ", reason_against(member)?]);
    members.iter().filter_map(line).collect()
}

fn next(members: &[Member]) -> Vec<Step> {
    let ask = |first: &Member| {
        let family = first.standing.best.iter().flat_map(|best| ["--family", best.target.family.name()]);
        let words = ["advise", first.file.as_str()].into_iter().chain(family);
        Step::ask(Command::arsenalfit(words), "gives the reasons for the first; the same for anybody else")
    };
    members.first().map(ask).into_iter().collect()
}

fn member_data(rank: usize, member: &Member) -> Data {
    let best = member.standing.best.as_ref();
    let target = best.map(|best| {
        let shape = best.target.shape;
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
        "family": best.map(|best| best.target.family.name()),
        "target": target,
        "gain_runs_per_100": best.map(|best| best.worth.overall),
        "chance_real": maybe(best.map(|best| best.worth.chance), 3),
        "effort": maybe(best.map(|best| best.target.effort()), 2),
    }
}

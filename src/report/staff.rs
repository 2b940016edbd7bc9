//! Words and rows about several athletes, shared by text, page and JSON.

use std::path::Path;

use crate::athlete::profile::Profile;
use crate::base::geometry::Side;
use crate::decide::advice::{Bar, FAMILIES, Question, Verdict, bar};
use crate::decide::compare::{Arm, Comparison, Swap, Thing};
use crate::decide::roster::Standing;
use crate::former::search::{Command, TRIFLE};

use super::follow::health;
use super::format::{in_hundred, percent, plain, signed, signed_range};
use super::words;

/// An athlete of a roster.
#[derive(Debug, Clone)]
pub struct Member {
    /// The file he was read from.
    pub file: String,
    /// Who.
    pub profile: Profile,
    /// Where he stands.
    pub standing: Standing,
}

/// A staff as it is shown.
#[derive(Debug, Clone, Copy)]
pub struct Roster<'a> {
    /// Everybody, best first.
    pub members: &'a [Member],
    /// Whose command the worth counts.
    pub command: Command,
    /// How many files could not be read.
    pub unread: usize,
    /// In how many worlds each is judged.
    pub draws: usize,
}

/// "8 athletes, 2 files could not be read".
pub(super) fn count(roster: &Roster) -> String {
    let several = |count: usize, one: &str| format!("{count} {one}{}", if count == 1 { "" } else { "s" });
    let athletes = several(roster.members.len(), "athlete");
    if roster.unread == 0 {
        return athletes;
    }
    format!("{athletes}, {} could not be read", several(roster.unread, "file"))
}

/// How many worlds the intervals rest on, and how many the full answer would.
pub(super) fn worlds_used(roster: &Roster) -> String {
    let (draws, full) = (roster.draws, Question::DEFAULT.draws);
    let beside = if draws == full { String::new() } else { format!("; `arsenalfit advise` draws {full}") };
    format!("Intervals: from {draws} worlds drawn for each athlete (--draws){beside}.")
}

/// What a member is called: his name, with the file's where somebody else has the same.
pub(super) fn called(members: &[Member], member: &Member) -> String {
    let name = &member.profile.athlete.name;
    if members.iter().filter(|other| other.profile.athlete.name == *name).count() < 2 {
        return name.clone();
    }
    let file = Path::new(&member.file).file_name().map_or(member.file.as_str().into(), |file| file.to_string_lossy());
    format!("{name} ({file})")
}

/// Why the answer about a member is "not now"; nothing when it is another.
pub(super) fn reason_against(member: &Member) -> Option<String> {
    if member.standing.verdict != Verdict::NotNow {
        return None;
    }
    let health = member.profile.health;
    Some(match &member.standing.best {
        _ if health.pain => "pain is reported".into(),
        _ if health.recent_injury => "a recent arm injury is reported".into(),
        None => too_young(member).unwrap_or_else(|| "no shape in reach".into()),
        Some(best) if best.worth.overall.value < TRIFLE => {
            [Some("gains a trifle".into()), too_young(member)].into_iter().flatten().collect::<Vec<_>>().join("; ")
        }
        Some(best) => {
            format!("it saves runs worth having in only {} worlds", in_hundred(best.worth.chance_real))
        }
    })
}

/// What his age forbids, when it forbids anything new to him.
fn too_young(member: &Member) -> Option<String> {
    let profile = &member.profile;
    let new = FAMILIES.into_iter().filter(|family| profile.pitches.iter().all(|pitch| pitch.family != *family));
    let barred = new.filter(|family| matches!(bar(profile, *family), Some(Bar::TooYoung(_) | Bar::BasicsFirst(_))));
    let barred: Vec<&str> = barred.map(crate::ball::Family::name).collect();
    (!barred.is_empty()).then(|| format!("too young for {}", barred.join(", ")))
}

/// A line for each member whose answer is "not now".
pub(super) fn against(members: &[Member]) -> Vec<String> {
    let line = |member: &Member| Some(format!("{}: {}", called(members, member), reason_against(member)?));
    members.iter().filter_map(line).collect()
}

/// What to ask after a roster.
pub(super) fn after_roster(roster: &Roster) -> Vec<String> {
    let Some(first) = roster.members.first() else { return Vec::new() };
    let file =
        if first.file.contains(char::is_whitespace) { format!("\"{}\"", first.file) } else { first.file.clone() };
    let family = first.standing.best.as_ref().map_or(String::new(), |best| format!(" --family {}", best.family));
    vec![format!("`arsenalfit advise {file}{family}` gives the reasons for the first; the same for anybody else")]
}

/// What to ask after a comparison.
pub(super) fn after_compare(comparison: &Comparison) -> Vec<String> {
    let family = comparison.family;
    let unwell = comparison.arms.iter().filter(|arm| !health(arm.profile).is_empty());
    let first =
        unwell.map(|arm| format!("nothing new for {} until a licensed professional has cleared him", name(arm)));
    let ask = format!(
        "`arsenalfit advise --family {family}` says of each whether to add it, with the reasons; `arsenalfit plan \
         --family {family}` lays out the weeks"
    );
    first.chain([ask]).collect()
}

/// What to ask after the use of today's pitches.
pub(super) fn after_usage(profile: &Profile) -> Vec<String> {
    unless_unwell(
        profile,
        "`arsenalfit advise` says whether a new pitch would add to this, `arsenalfit plan` lays out its weeks",
    )
}

/// What to ask after how far apart they are.
pub(super) fn after_apart(profile: &Profile) -> Vec<String> {
    unless_unwell(
        profile,
        "`arsenalfit usage` says how to use them against each side, `arsenalfit advise` whether a new pitch would add \
         to them",
    )
}

/// `next`, unless nothing new is to be thrown at all.
fn unless_unwell(profile: &Profile, next: &str) -> Vec<String> {
    let unwell = !health(profile).is_empty();
    vec![if unwell { "nothing new until a licensed professional has cleared him".into() } else { next.into() }]
}

/// Pain and injuries of two athletes, each with his name.
pub(super) fn health_of_both(comparison: &Comparison) -> Vec<String> {
    let of =
        |arm: &Arm| health(arm.profile).into_iter().map(|said| format!("{}: {said}", name(arm))).collect::<Vec<_>>();
    comparison.arms.iter().flat_map(of).collect()
}

/// A verdict in a word or two, for a table.
pub(super) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Add => "add",
        Verdict::Trial => "trial first",
        Verdict::NotNow => "not now",
        Verdict::OtherPitch => "another pitch",
    }
}

/// A member's target as "79 -2 +13".
pub(super) fn target(member: &Member) -> String {
    member.standing.best.as_ref().map_or("-".into(), |best| {
        let shape = best.recipe.shape;
        format!(
            "{} {} {}",
            plain(shape.speed_mph, 0),
            signed(shape.vertical_break_in, 0),
            signed(shape.glove_side_break_in, 0)
        )
    })
}

/// Who gains more, in one line.
pub(super) fn headline(comparison: &Comparison) -> String {
    let family = comparison.family;
    let [one, other] = [&comparison.arms[0], &comparison.arms[1]];
    let Some([first, second]) = comparison.gains_more else {
        return match (&one.candidate, &other.candidate) {
            (Some(_), None) => format!("Only {} can reach a {family}.", name(one)),
            (None, Some(_)) => format!("Only {} can reach a {family}.", name(other)),
            _ => format!("A {family} is in reach for neither."),
        };
    };
    let gain = |arm: &Arm| worth(arm).map_or(0.0, |worth| worth.value);
    if gain(one).max(gain(other)) < TRIFLE {
        format!("A {family} is worth next to nothing to either.")
    } else if first.max(second) < 0.6 {
        format!("A {family} is worth about the same to both.")
    } else {
        format!("{} gains more from a {family}.", name(if first > second { one } else { other }))
    }
}

/// The chance behind [`headline`], with names.
pub(super) fn chance(comparison: &Comparison) -> Option<String> {
    let [first, second] = comparison.gains_more?;
    let [one, other] = [0, 1].map(|index: usize| name(&comparison.arms[index]));
    Some(format!(
        "{one} gains more in {} worlds drawn from what is not known, {other} in {}",
        in_hundred(first),
        in_hundred(second)
    ))
}

/// What the pitch is worth to one of them.
pub(super) fn worth(arm: &Arm) -> Option<crate::base::stats::Estimate> {
    arm.candidate.as_ref().map(|candidate| candidate.worth.overall)
}

/// Who.
pub(super) fn name<'a>(arm: &Arm<'a>) -> &'a str {
    &arm.profile.athlete.name
}

/// Worth and target of one of them as a sentence.
pub(super) fn worth_sentence(comparison: &Comparison, arm: &Arm) -> String {
    let (who, family) = (name(arm), comparison.family);
    let Some(candidate) = &arm.candidate else {
        return format!("to {who} a {family} is out of reach");
    };
    let shape = candidate.recipe.shape;
    let owned = if arm.throws_it { ", though he throws one already" } else { "" };
    format!(
        "to {who} the best reachable {family} ({} mph, vertical break {} in, glove-side break {} in) is worth {} runs \
         per 100 pitches{owned}",
        plain(shape.speed_mph, 1),
        signed(shape.vertical_break_in, 1),
        signed(shape.glove_side_break_in, 1),
        signed_range(candidate.worth.overall, 2),
    )
}

/// Why they differ: each swap that would change a gain by more than a trifle.
pub(super) fn reasons(comparison: &Comparison) -> Vec<String> {
    let mut reasons = Vec::new();
    for (index, swaps) in comparison.swaps.iter().enumerate() {
        let (own, lender) = (&comparison.arms[index], &comparison.arms[1 - index]);
        let today = worth(own).map(|worth| worth.value);
        reasons.extend(swaps.iter().filter_map(|swap| reason(swap, own, lender, today)));
    }
    if reasons.is_empty() {
        reasons.push(format!(
            "nothing of the other\u{2019}s (arm, command, pitches, hitters) would change either gain by more than a \
             trifle ({TRIFLE})"
        ));
    }
    reasons
}

fn reason(swap: &Swap, own: &Arm, lender: &Arm, today: Option<f64>) -> Option<String> {
    let change = swap.gain.unwrap_or(0.0) - today.unwrap_or(0.0);
    if change.abs() < TRIFLE {
        return None;
    }
    let then = swap.gain.map_or("out of reach".into(), |gain| signed(gain, 2));
    let now = today.map_or("out of reach".into(), |gain| signed(gain, 2));
    Some(format!("with {}{}, {} would gain {then} instead of {now}", name(lender), thing(swap.thing), name(own)))
}

/// A thing of the other's, after his name.
pub(super) fn thing(thing: Thing) -> &'static str {
    match thing {
        Thing::Release => "\u{2019}s arm (slot, release, turn of the hand)",
        Thing::Command => "\u{2019}s command",
        Thing::Pitches => "\u{2019}s pitches and limits",
        Thing::Hitters => "\u{2019}s hitters (level, sides)",
    }
}

/// A row for each fact that two athletes are laid side by side in: what, the first's, the second's.
pub(super) fn facts(comparison: &Comparison) -> Vec<Vec<String>> {
    let both = |what: &str, read: &dyn Fn(&Arm) -> String| {
        vec![what.to_owned(), read(&comparison.arms[0]), read(&comparison.arms[1])]
    };
    let release = |arm: &Arm| arm.profile.release;
    let mut rows = vec![
        both("throws", &|arm| arm.profile.athlete.throws.to_string()),
        both("slot, degrees", &|arm| plain(release(arm).slot_deg, 0)),
        both("release height, ft", &|arm| plain(release(arm).height_ft, 1)),
        both("release to the arm side, ft", &|arm| plain(release(arm).side_ft, 1)),
        both("pitches", &|arm| arm.profile.pitches.len().to_string()),
        both("command, in sideways / up and down", &|arm| {
            let [side, height] = crate::decide::compare::mean_command(arm.profile);
            format!("{} / {}", plain(side, 1), plain(height, 1))
        }),
        both("closest pair, in of movement", &|arm| closest(arm)),
    ];
    for side in Side::BOTH {
        rows.push(both(&format!("allows {} hitters, runs per 100", words::side(side)), &|arm| {
            signed_range(arm.usage.on(side).runs_per_100, 2)
        }));
        rows.push(both(&format!("most used against {}", words::side(side)), &|arm| most_used(arm, side)));
    }
    rows.push(both(&format!("worth of a {}", comparison.family), &|arm| {
        worth(arm).map_or("out of reach".into(), |worth| signed_range(worth, 2))
    }));
    rows
}

fn closest(arm: &Arm) -> String {
    let least = arm.pairs.iter().min_by(|a, b| a.movement_in.total_cmp(&b.movement_in));
    least.map_or("-".into(), |pair| {
        let pitch = |index: usize| arm.profile.pitches[index].name.as_str();
        format!("{} ({} / {})", plain(pair.movement_in, 1), pitch(pair.pitches.0), pitch(pair.pitches.1))
    })
}

fn most_used(arm: &Arm, side: Side) -> String {
    let pitches = arm.profile.pitches.iter().zip(&arm.usage.on(side).pitches);
    let most = pitches.max_by(|a, b| a.1.share.total_cmp(&b.1.share));
    most.map_or("-".into(), |(pitch, outlook)| format!("{} {}", pitch.name, percent(outlook.share)))
}

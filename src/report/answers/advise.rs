//! The answer of `advise`: verdict, worth and next step first; then the shape to chase, its spin, its use, other pitches.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::decide::advice::{Advice, Candidate, Reason};
use crate::decide::outlook::SideOutlook;
use crate::decide::verdict::Verdict;
use crate::decide::why::Leaning;

use super::super::charts::{Change, Ink, RangeRow, faces, inks, ranges as ranges_chart, usage_change};
use super::super::content::amount::{Amount, chance, degrees, movement, rate, rpm, runs, share, speed};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, row, text};
use super::super::words::advice::{caution, command, effort, headline, part, reason, shape_heading, work};
use super::super::words::season::{over_a_season, season_pitches};
use super::super::words::sides::side_name;
use super::about::{about, assumed};
use super::advise_data::data;
use super::found::{in_short, map_target, window};
use super::mix::todays_map;
use super::rates::{aim_words, whole_percent};

/// What the columns of the tables of use count.
const OUTCOMES: &str = "Miss, weak (hit, but not hard on a good line) and solid contact, take: chances per 100 of that \
                        pitch thrown, \u{b1} half the 90 % interval. Aim: before two strikes.";

/// What `advise` found, with what is shown of the pitch to chase.
#[derive(Debug)]
pub struct Advised<'a> {
    /// Whose.
    pub profile: &'a Profile,
    /// The answer.
    pub advice: &'a Advice,
    /// What the worth leans on, when that was asked.
    pub leaning: Option<&'a [Leaning]>,
    /// Where the profile lies, when there is one.
    pub file: Option<&'a str>,
}

/// The whole answer.
pub fn advise(advised: &Advised) -> Answer {
    let Advised { profile, advice, .. } = advised;
    let reasons: Vec<Text> = advice.reasons.iter().map(|one| reason(one, profile.athlete.level)).collect();
    let cautions: Vec<Text> = advice.cautions.iter().map(|&one| caution(one)).collect();
    let target = advice.to_chase();
    let facts = target.map(|target| facts(advised, target)).unwrap_or_default();
    let answer = about(profile, headline(advice)).facts(facts).lead(reasons.clone()).with(Section::next(next(advised)));
    let answer = match target {
        Some(target) => with_target(answer, advised, target),
        None => answer,
    };
    answer
        .with(advised.leaning.map(leans_on))
        .with(others(advised))
        .with(Section::new("Cautions").bullets(cautions.clone()).beside())
        .with(assumed(profile))
        .machine(data(advised, reasons, cautions))
}

/// What matters most, in short.
fn facts(advised: &Advised, target: &Candidate) -> Vec<(&'static str, Text)> {
    let level = advised.profile.athlete.level;
    let season = |gain: Estimate| runs(over_a_season(gain, level)).places(1);
    let sides = &target.worth.sides;
    if advised.advice.verdict == Verdict::NotNow {
        return vec![("would save in a season", text![season(target.worth.overall)])];
    }
    vec![
        ("saves in a season", text![season(target.worth.overall), format!(" in {} pitches", season_pitches(level))]),
        ("same side / opposite", text![season(sides.same), " / ", season(sides.opposite).bare()]),
        ("chance it saves anything", text![chance(target.worth.chance)]),
        ("shape to chase", text![in_short(target), " (mph, vertical, glove side)"]),
    ]
}

fn with_target(answer: Answer, advised: &Advised, target: &Candidate) -> Answer {
    let inks = all_inks(advised, target);
    answer.with(shape(advised, target, &inks)).with(worth(advised, target)).with_all(
        advised.advice.with.iter().flat_map(|with| Side::BOTH.map(|side| usage(advised, with, target, side, &inks))),
    )
}

fn shape(advised: &Advised, target: &Candidate, inks: &[Ink]) -> Section {
    let hand = advised.profile.athlete.throws;
    let family = target.target.family;
    let mut map = todays_map(advised.profile, text!["How the pitches move, and the ", family, " to chase"], inks);
    map.target = inks.last().map(|&ink| map_target(target, new_name(advised, target), ink));
    let section =
        Section::new(shape_heading(advised.advice, target)).paragraph(natural(target)).table(shape_table(target));
    match &target.target.recipe {
        Some(recipe) => section.paragraph(spun(advised, target)).pictures([map.picture(), faces(recipe.spin, hand)]),
        None => section.picture(map.picture()),
    }
}

/// "Arms like this throw a sweeper at 79 to 84 mph, -4 to +4 in up and +11 to +20 in to the glove side."
fn natural(target: &Candidate) -> Text {
    let natural = &target.target.natural;
    text![
        "Arms like this throw a ",
        target.target.family,
        " at ",
        speed(natural.speed_mph()).places(0),
        ", ",
        movement(natural.vertical_break_in()).places(0),
        " up and ",
        movement(natural.glove_side_break_in()).places(0),
        " to the glove side (eight arms in ten). ",
        effort(target)
    ]
}

fn shape_table(target: &Candidate) -> Table {
    let ranges = window(target).ranges();
    let numbers = target.target.shape.numbers();
    let show: [fn(super::super::content::amount::Shown) -> Amount; 3] =
        [|s| speed(s).places(0), |s| movement(s).places(0), |s| movement(s).places(0)];
    let rows = ["speed", "vertical break", "glove-side break"]
        .into_iter()
        .enumerate()
        .map(|(axis, label)| row![label, show[axis](numbers[axis].into()), show[axis](ranges[axis].into())]);
    Table::new(columns!["", "aim for", "still the pitch"], rows)
}

/// How it must spin.
fn spun(advised: &Advised, target: &Candidate) -> Text {
    let Some(recipe) = &target.target.recipe else { return Text::default() };
    let spin = recipe.spin;
    text![
        "Spin: ",
        rpm(spin.rpm),
        " pushing toward ",
        spin.clock.for_hand(advised.profile.athlete.throws),
        ", ",
        share(spin.active_fraction),
        " of it active (the axis tipped ",
        degrees(spin.gyro_deg()),
        " toward a bullet\u{2019}s). From the seams ",
        movement(recipe.seams.up_in),
        " up and ",
        movement(recipe.seams.glove_side_in),
        " to the glove side are expected, as pitches of this family usually get."
    ]
}

fn worth(advised: &Advised, target: &Candidate) -> Section {
    let (worth, level) = (&target.worth, advised.profile.athlete.level);
    let cells = |who: &'static str, gain: Estimate| {
        row![who, runs(over_a_season(gain, level)).places(1).bare(), runs(gain).bare()]
    };
    let rows = [
        cells("same-side hitters", worth.sides.same),
        cells("opposite-side hitters", worth.sides.opposite),
        cells("all hitters faced", worth.overall),
    ];
    let season = format!("runs saved in {} pitches", season_pitches(level));
    let heads = [columns!["against"].into_iter().next(), Some(season.as_str().into()), Some("per 100 pitches".into())];
    let readings = worth.by_reading.map(|gain| runs(gain).bare());
    let [shares, crowd] = readings;
    Section::new(format!("Worth, {}", command(advised.advice.command)))
        .table(Table::new(heads.into_iter().flatten(), rows))
        .paragraph(text![
            "In brackets the 90 % interval. Two readings of how hitters weigh how often a pitch comes give ",
            shares,
            " and ",
            crowd,
            " per 100. The hitters are known from one day of the top league: that carries chances of 60 to 80 in 100, \
             not 99."
        ])
}

fn usage(advised: &Advised, with: &PerSide<SideOutlook>, target: &Candidate, side: Side, inks: &[Ink]) -> Section {
    let section = Section::new(format!("Use against {} hitters, without and with it", side_name(side)))
        .picture(usage_picture(advised, with, target, side, inks));
    if side == Side::Opposite {
        section
            .paragraph(Text::from(
                "Without: as pitchers with such an arsenal are used, the athlete\u{2019}s own use in it.",
            ))
            .paragraph(OUTCOMES)
            .beside()
    } else {
        section
    }
}

fn mix_table(names: &[&str], without: &SideOutlook, with: &SideOutlook, side: Side) -> Table {
    let [before, after] = [without, with].map(|outlook| whole_percent(outlook.pitches.iter().map(|pitch| pitch.share)));
    let rows = names.iter().zip(&with.pitches).enumerate().map(|(index, (pitch, outlook))| {
        let old = before.get(index).map(|&part| share(part));
        let label = name(pitch).and(if old.is_none() { ", new" } else { "" });
        let [aim, _] = aim_words(side, outlook);
        let rates = &outlook.rates;
        row![
            label,
            old,
            share(after[index]),
            aim,
            rate(rates.swing_and_miss),
            rate(rates.weak_contact),
            rate(rates.solid_contact),
            rate(rates.take)
        ]
    });
    Table::new(columns!["pitch", "without", "with", "aim", "miss", "weak", "solid", "take"], rows)
}

fn usage_picture(
    advised: &Advised,
    with: &PerSide<SideOutlook>,
    target: &Candidate,
    side: Side,
    inks: &[Ink],
) -> Picture {
    let (without, with) = (advised.advice.without.on(side), with.on(side));
    let names = all_names(advised, target);
    let shares = |outlook: &SideOutlook, index: usize| outlook.pitches.get(index).map(|pitch| pitch.share);
    let changes: Vec<Change> = names
        .iter()
        .zip(inks)
        .enumerate()
        .map(|(index, (&name, &ink))| Change {
            name,
            ink,
            before: shares(without, index),
            after: shares(with, index).unwrap_or(0.0),
        })
        .collect();
    let gain = over_a_season(*target.worth.sides.on(side), advised.profile.athlete.level);
    let title = text!["Against ", side_name(side), " hitters: ", runs(gain).places(1), " saved in a season"];
    let legend = "Hollow: without the new pitch. Filled: with it.";
    usage_change(title, &changes, legend, mix_table(&names, without, with, side)).with_numbers_in_text()
}

fn leans_on(leanings: &[Leaning]) -> Section {
    let rows = leanings.iter().map(|leaning| {
        let turns = if leaning.worth.low < 0.0 && leaning.worth.high > 0.0 { "yes" } else { "no" };
        row![part(leaning.part), runs(leaning.worth.low).bare(), runs(leaning.worth.high).bare(), turns]
    });
    let heads = columns!["what is not known, alone over its 90 % range", "lowest", "highest", "turns it"];
    Section::new("What the worth leans on, most first")
        .table(Table::new(heads, rows))
        .paragraph("Runs saved per 100 pitches. Turns it: whether that alone decides between a loss and a gain.")
}

/// Every family weighed, the one to chase first.
fn others(advised: &Advised) -> Option<Section> {
    let (advice, level) = (advised.advice, advised.profile.athlete.level);
    let all: Vec<&Candidate> = advice.asked.iter().chain(&advice.others).collect();
    let marks = inks(all.iter().map(|candidate| candidate.target.family));
    let season = |candidate: &Candidate| over_a_season(candidate.worth.overall, level);
    let rows: Vec<RangeRow> = all
        .iter()
        .zip(marks)
        .map(|(candidate, ink)| RangeRow {
            name: candidate.target.family.name().into(),
            ink,
            worth: Some(season(candidate)),
            effort: candidate.target.effort(),
            note: text![speed(candidate.target.shape.speed_mph).places(0)].to_string(),
        })
        .collect();
    let cells = all.iter().map(|candidate| {
        row![
            candidate.target.family,
            in_short(candidate),
            runs(season(candidate)).places(1).bare(),
            chance(candidate.worth.chance),
            work(candidate),
        ]
    });
    let heads = columns!["pitch", "mph, vertical, glove side", "runs in a season", "chance", "effort"];
    let title = format!("Runs saved in {} pitches, {}", season_pitches(level), command(advice.command));
    let legend =
        "Mark: best guess; bar: 90 % interval. Stones: how far such arms must go from what they throw naturally.";
    let picture = ranges_chart(title, &rows, legend, Table::new(heads, cells)).with_numbers_in_text();
    (!all.is_empty()).then(|| Section::new("What each pitch would be worth").picture(picture))
}

/// What to do after reading the answer.
fn next(advised: &Advised) -> Vec<Step> {
    let advice = advised.advice;
    let is_barred = advice.reasons.iter().any(|one| matches!(one, Reason::Forbidden(_)));
    let family = advice.to_chase().map_or(advice.family, |target| target.target.family).name();
    let file = advised.file.unwrap_or("athlete.toml");
    match advice.verdict {
        Verdict::NotNow if is_barred => Vec::new(),
        Verdict::NotNow => vec![Step::ask(
            Command::arsenalfit(["levers", file]),
            "what would help more: every single change, best first",
        )],
        Verdict::Add | Verdict::Trial | Verdict::OtherPitch => vec![
            Step::ask(
                Command::arsenalfit(["trial", "TRIAL.csv", "--profile", file, "--family", family]),
                "throw a few grips, mark them in a file, and see which makes this shape",
            ),
            Step::ask(
                Command::arsenalfit(["plan", file, "--family", family, "--start", "FIRST-DAY", "--end", "LAST-DAY"]),
                "the off-season day by day",
            ),
        ],
    }
}

/// Today's inks and, last, the target's.
fn all_inks(advised: &Advised, target: &Candidate) -> Vec<Ink> {
    let new = target.is_new().then_some(target.target.family);
    inks(advised.profile.pitches.iter().map(|pitch| pitch.family).chain(new))
}

fn all_names<'a>(advised: &Advised<'a>, target: &Candidate) -> Vec<&'a str> {
    let today = advised.profile.pitches.iter().map(|pitch| pitch.name.as_str());
    today.chain(target.is_new().then(|| new_name(advised, target))).collect()
}

/// What the target is called beside today's pitches: its family, unless one of them is called so.
fn new_name(advised: &Advised, target: &Candidate) -> &'static str {
    let name = target.target.family.name();
    if advised.profile.pitches.iter().any(|pitch| pitch.name == name) { "new shape" } else { name }
}

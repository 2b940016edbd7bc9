//! The answer of `advise`: verdict and reasons, the shape to chase, its use, its worth.

use crate::athlete::profile::PerSide;
use crate::base::Range;
use crate::base::geometry::Side;
use crate::decide::advice::{Advice, Alternative, Bar, Reason, Verdict};
use crate::decide::why::{Lever, Why};
use crate::former::search::{Candidate, SideWorth, TRIFLE};
use crate::former::sight::Sight;

use super::super::charts::{Change, Ink, RangeRow, faces, hitter_view, inks, ranges as ranges_chart, usage_change};
use super::super::content::amount::{Amount, Shown, chance, degrees, inches, movement, pure, rpm, runs, share, speed};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, row, text};
use super::super::words::advice::{assumption, caution, command, headline, reason, shape_heading, too_small};
use super::super::words::sides::side_name;
use super::about::{about, assumed};
use super::advise_data::data;
use super::found::{in_short, map_target, ranges};
use super::mix::{OUTCOMES, outcome_cells, todays_map, whole_shares};

/// The whole answer. `leaning` is what the worth leans on, when that was asked; `sights` are of
/// today's pitches and, last, the target; `file` is where the profile lies, when there is one.
pub fn advise(advice: &Advice, leaning: Option<&Why>, sights: Option<&PerSide<Sight>>, file: Option<&str>) -> Answer {
    let reasons: Vec<Text> = advice.reasons.iter().map(|one| reason(one, advice.verdict)).collect();
    let cautions: Vec<Text> = advice.cautions.iter().map(|&one| caution(one)).collect();
    let facts = advice.target.as_ref().map(|target| facts(advice, target)).unwrap_or_default();
    let answer = about(advice.profile, headline(advice)).facts(facts).lead(reasons.clone());
    let answer = match &advice.target {
        Some(target) => with_target(answer, advice, target, sights),
        None => answer,
    };
    answer
        .with(leaning.map(leans_on))
        .with(alternatives(advice))
        .with(Section::new("Cautions").bullets(cautions.clone()).beside())
        .with(Section::next(next(advice, file)))
        .with(assumed(advice.profile))
        .machine(data(advice, leaning, reasons, cautions))
}

/// What it is worth and, where it is advised, the shape in short.
fn facts(advice: &Advice, target: &Candidate) -> Vec<(&'static str, Text)> {
    if advice.verdict == Verdict::NotNow {
        return vec![("would save", text![runs(target.worth.overall)])];
    }
    let (shape, spin) = (target.recipe.shape, target.recipe.spin);
    let spun = text![rpm(spin.rpm), " toward ", spin.clock.for_hand(advice.profile.athlete.throws)];
    vec![
        ("saves", text![runs(target.worth.overall)]),
        ("speed", text![speed(shape.speed_mph)]),
        ("vertical break", text![movement(shape.vertical_break_in)]),
        ("glove-side break", text![movement(shape.glove_side_break_in)]),
        ("spin", text![spun, ", ", share(spin.active_fraction), " active"]),
    ]
}

fn with_target(answer: Answer, advice: &Advice, target: &Candidate, sights: Option<&PerSide<Sight>>) -> Answer {
    let inks = all_inks(advice, target);
    let names = all_names(advice, target);
    let hand = advice.profile.athlete.throws;
    let views =
        sights.into_iter().flat_map(|seen| Side::BOTH.map(|side| hitter_view(seen.on(side), &names, &inks, hand)));
    answer
        .with(shape(advice, target, &inks))
        .with(Section::new("What hitters see").pictures(views))
        .with(worth(advice, target))
        .with_all(Side::BOTH.map(|side| usage(advice, target, side, &inks)))
}

fn shape(advice: &Advice, target: &Candidate, inks: &[Ink]) -> Section {
    let (shape, spin, seam_in) = (target.recipe.shape, target.recipe.spin, target.recipe.seam_in);
    let hand = advice.profile.athlete.throws;
    let mut map =
        todays_map(advice.profile, text!["How the pitches move, and the best ", target.family, " in reach"], inks);
    map.target = inks.last().map(|&ink| map_target(target, new_name(advice, target), ink));
    let spin = text![
        "Spin: ",
        rpm(spin.rpm),
        " pushing toward ",
        spin.clock.for_hand(hand),
        ", ",
        share(spin.active_fraction),
        " of it active (gyro angle ",
        degrees(spin.gyro_deg()),
        "); from the seams ",
        movement(seam_in[1]),
        " up and ",
        movement(seam_in[0]),
        " to the glove side. Effort ",
        pure(target.effort, 1),
        " (1 is about a three-hour turn of the axis from a pitch already thrown)."
    ];
    let numbers = [shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in];
    Section::new(shape_heading(advice, target))
        .table(window_table(numbers, ranges(target.window)))
        .paragraph(spin)
        .pictures([map.picture(), faces(target.recipe.spin, hand)])
}

fn window_table(numbers: [f64; 3], window: [Range; 3]) -> Table {
    let show: [fn(Shown) -> Amount; 3] = [|s| speed(s), |s| movement(s), |s| movement(s)];
    let rows = ["speed", "vertical break", "glove-side break"].into_iter().enumerate().map(|(axis, label)| {
        let (low, high) = (show[axis](window[axis].low.into()), show[axis](window[axis].high.into()));
        let is_one = low.figures() == high.figures();
        let kept = if is_one { "this only".into() } else { Text::from(show[axis](window[axis].into())) };
        row![label, show[axis](numbers[axis].into()), kept]
    });
    Table::new(columns!["", "best", "range that keeps 90 % of the gain"], rows)
}

fn worth(advice: &Advice, target: &Candidate) -> Section {
    let worth = &target.worth;
    let rows = [
        row!["same-side hitters", runs(worth.sides.same.gain).bare()],
        row!["opposite-side hitters", runs(worth.sides.opposite.gain).bare()],
        row!["all hitters faced", runs(worth.overall).bare()],
    ];
    Section::new(format!("Worth, in runs saved per 100 pitches, {}", command(advice.question.command)))
        .table(Table::new(columns!["against", "gain (90 % interval)"], rows))
}

fn usage(advice: &Advice, target: &Candidate, side: Side, inks: &[Ink]) -> Section {
    let (names, worth) = (all_names(advice, target), target.worth.sides.on(side));
    let section = Section::new(format!("Use against {} hitters, without and with it", side_name(side)))
        .picture(usage_picture(&names, worth, side, inks));
    if side == Side::Opposite { section.paragraph(Text::from(OUTCOMES).and(".")).beside() } else { section }
}

fn mix_table(names: &[&str], worth: &SideWorth) -> Table {
    let (before, after) = (whole_shares(&worth.before), whole_shares(&worth.after));
    let rows = names.iter().zip(&worth.after.pitches).enumerate().map(|(index, (pitch, outlook))| {
        let old = before.get(index).map(|&part| share(part));
        let label = name(pitch).and(if old.is_none() { ", new" } else { "" });
        [row![label, old, share(after[index])], outcome_cells(outlook)].concat()
    });
    Table::new(columns!["pitch", "without", "with", "aim", "miss", "weak", "solid", "take"], rows)
}

fn usage_picture(names: &[&str], worth: &SideWorth, side: Side, inks: &[Ink]) -> Picture {
    let (before, after) = (whole_shares(&worth.before), whole_shares(&worth.after));
    let changes: Vec<Change> = names
        .iter()
        .zip(inks)
        .enumerate()
        .map(|(index, (&name, &ink))| Change { name, ink, before: before.get(index).copied(), after: after[index] })
        .collect();
    let title = text!["Against ", side_name(side), " hitters: ", runs(worth.gain), " saved"];
    let legend = "Hollow: the best mix without the new pitch. Filled: with it.";
    usage_change(title, &changes, legend, mix_table(names, worth)).with_numbers_in_text()
}

fn leans_on(why: &Why) -> Section {
    let rows = why.levers.iter().map(|&Lever { assumption: what, worst, best }| {
        let turns = if worst < TRIFLE && best > TRIFLE { "yes" } else { "no" };
        row![assumption(what), runs(worst).bare(), runs(best).bare(), turns]
    });
    let limit = why.command_limit_in.map_or("Command alone, up to twice as loose, does not turn it.".into(), |most| {
        text!["It is when the new pitch scatters more than ", inches(most), " sideways about its target."]
    });
    let heads = columns!["assumption, one at a time over its 90 % range", "lowest", "highest", "turns it"];
    Section::new("What the worth leans on, most first").table(Table::new(heads, rows)).paragraph(text![
        "turns it: whether that alone decides between what is ",
        too_small(),
        " and more. ",
        limit
    ])
}

/// Every family weighed, the target first.
fn alternatives(advice: &Advice) -> Option<Section> {
    let target = advice.target.iter().map(|target| (target.family, Some(target)));
    let others = advice.alternatives.iter().map(|Alternative { family, candidate }| (*family, candidate.as_ref()));
    let all: Vec<_> = target.chain(others).collect();
    let marks = inks(all.iter().map(|(family, _)| *family));
    let rows: Vec<RangeRow> = all
        .iter()
        .zip(marks)
        .map(|((family, candidate), ink)| RangeRow {
            name: family.name().into(),
            ink,
            worth: candidate.map(|candidate| candidate.worth.overall),
            effort: candidate.map_or(0.0, |candidate| candidate.effort),
            note: candidate.map_or(String::new(), |one| text![speed(one.recipe.shape.speed_mph).places(0)].to_string()),
        })
        .collect();
    let cells = all.iter().map(|(family, candidate)| match candidate {
        Some(one) => row![
            *family,
            in_short(one),
            runs(one.worth.overall).bare(),
            chance(one.worth.chance_real),
            pure(one.effort, 1)
        ],
        None => row![*family, "out of reach", "-", "-", "-"],
    });
    let table = Table::new(columns!["pitch", "mph, up, glove", "worth", "real", "effort"], cells);
    let title = format!("Runs saved per 100 pitches, {}", command(advice.question.command));
    let legend = "Mark: best guess; bar: 90 % interval; grey band: too small to matter. A stone of effort is about a \
                  three-hour turn of the axis from a pitch already thrown.";
    let picture = ranges_chart(title, &rows, legend, table).with_numbers_in_text();
    (!all.is_empty()).then(|| Section::new("What each pitch would be worth").picture(picture))
}

/// What to do after reading the answer.
fn next(advice: &Advice, file: Option<&str>) -> Vec<Step> {
    let is_unwell = advice.reasons.iter().any(|one| matches!(one, Reason::Forbidden(Bar::Pain | Bar::Injury)));
    let family = advice.target.as_ref().map_or(advice.question.family, |target| target.family).name();
    let file = file.unwrap_or("athlete.toml");
    match advice.verdict {
        Verdict::NotNow if is_unwell => Vec::new(),
        Verdict::NotNow => vec![Step::ask(
            Command::arsenalfit(["usage", file]),
            "what a better mix of the pitches already thrown would bring",
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
fn all_inks(advice: &Advice, target: &Candidate) -> Vec<Ink> {
    inks(advice.profile.pitches.iter().map(|pitch| pitch.family).chain([target.family]))
}

fn all_names<'a>(advice: &'a Advice, target: &Candidate) -> Vec<&'a str> {
    let today = advice.profile.pitches.iter().map(|pitch| pitch.name.as_str());
    today.chain([new_name(advice, target)]).collect()
}

/// What the target is called beside today's pitches: its family, unless one of them is called so.
fn new_name(advice: &Advice, target: &Candidate) -> &'static str {
    let name = target.family.name();
    if advice.profile.pitches.iter().any(|pitch| pitch.name == name) { "new pitch" } else { name }
}

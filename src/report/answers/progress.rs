//! The answer of `progress`: findings first, most serious first, each with what it means and what to
//! try; then what comes next; then every watched quantity and the new pitch from outing to outing.

use crate::base::Range;
use crate::base::stats::Estimate;
use crate::learn::cues::{Cue, for_finding};
use crate::learn::plan::{Gate, Measured, Step as PlanStep, gates};
use crate::learn::progress::{Caution, Finding, Kind, OutingShape, Progress, Severity, Watch};

use super::super::charts::{Band, Moved, band};
use super::super::content::amount::{Amount, Shown, degrees, feet, inches, movement, pure, share, speed};
use super::super::content::{Answer, Command, Picture, Section, Step, Table, Text, columns, name, row, say, text};
use super::super::words::cues::{self, SOURCE};
use super::super::words::findings::{KEY, caution, headline, kind, quantity, state};
use super::super::words::steps;
use super::about::about;
use super::ground::{Ground, window_amounts};
use super::progress_data::data;

/// Outings told one by one: the first and the last of them.
const MOST_LISTED: usize = 8;

/// The whole answer.
pub fn progress(ground: &Ground, progress: &Progress) -> Answer {
    let cautions: Vec<Text> = progress.cautions.iter().map(|&doubt| caution(doubt)).collect();
    let mut findings = (0..progress.findings.len()).map(|place| finding_lines(ground, progress, place));
    about(ground.profile, verdict(ground, progress))
        .before(ground.bars())
        .lead_paragraph(over(ground, progress))
        .lead(findings.next().unwrap_or_default())
        .with_all(progress.findings.iter().skip(1).zip(findings).map(|(finding, lines)| {
            let lines = if lines.is_empty() { vec![kind(finding.kind).into()] } else { lines };
            Section::new(headline(finding)).bullets(lines)
        }))
        .with(Section::next(next(ground, progress)))
        .with(watched(progress))
        .with(by_outing(ground, progress))
        .with_all(ground.ending(cautions.clone()))
        .machine(data(ground, progress, cautions))
}

/// The worst finding, or why there is none.
fn verdict(ground: &Ground, progress: &Progress) -> Text {
    match progress.findings.first() {
        Some(finding) => format!("{}.", headline(finding)).into(),
        None if no_such_label(ground, progress).is_some() => {
            say!("No throw is labelled {}.", ground.target.family)
        }
        None => "Too little was thrown to say anything.".into(),
    }
}

/// Which outings were looked at.
fn over(ground: &Ground, progress: &Progress) -> Text {
    let new = say!("A new {}", ground.target.family);
    match progress.days.as_slice() {
        [] => new.and(", and no outing to judge it by."),
        [day] => say!("{}, one outing: {}.", new, name(day)),
        [first, .., last] => {
            let source = format!(". What to try is {SOURCE}.");
            say!("{} over {} outings, {} to {}{}", new, progress.days.len(), name(first), name(last), source)
        }
    }
}

/// What is said of a finding; what an earlier one has said about what to try is not said again.
fn finding_lines(ground: &Ground, progress: &Progress, place: usize) -> Vec<Text> {
    let finding = &progress.findings[place];
    let amount = finding_amount(ground, progress, finding);
    let outside = outside(ground, progress, finding);
    amount.into_iter().chain(outside).chain(tries(progress, finding, &progress.findings[..place])).collect()
}

/// How much, and since when.
fn finding_amount(ground: &Ground, progress: &Progress, finding: &Finding) -> Option<Text> {
    let amount = finding.amount?;
    let since = finding.since.and_then(|place| progress.days.get(place)).map(|day| say!("since {}", name(day)));
    Some(match finding.kind {
        Kind::ShapeDrifted | Kind::ShapeOnTheWay | Kind::ShapeArrived => say!(
            "{}{} of its last throws are in the window; centred, and scattered like the others, it would be \
             {}",
            since.map_or_else(Text::default, |since| since.and("; ")),
            share(amount),
            share(ground.target.chance_at_best())
        ),
        Kind::CommandNotComing => say!("it scatters by {} at the plate in its last outings", inches(amount)),
        kind => {
            let against = if since.is_some() { ", against what was before" } else { ", against the profile" };
            let since = since.map_or_else(Text::default, |since| say!(" {}", since));
            text![change(kind, amount), since, against]
        }
    })
}

/// A change in the unit of what it is a change of.
fn change(kind: Kind, amount: Estimate) -> Amount {
    let of = match kind {
        Kind::SlotDropping | Kind::NewPitchSlotLower => degrees(amount).places(1),
        Kind::FastballSlower => speed(amount),
        Kind::ReleaseLower | Kind::ReleaseSideMoved | Kind::ExtensionShorter => feet(amount).places(2),
        _ => inches(amount),
    };
    of.signed()
}

/// What of the shape is not wholly in the window over the last outings.
fn outside(ground: &Ground, progress: &Progress, finding: &Finding) -> Vec<Text> {
    let is_asked = matches!(finding.kind, Kind::ShapeDrifted | Kind::ShapeOnTheWay);
    let Some(shape) = progress.new_pitch.shape_now.filter(|_| is_asked) else { return Vec::new() };
    let ranges = ground.target.window.ranges();
    let amounts: [fn(Shown) -> Amount; 3] = [|s| speed(s), |s| movement(s), |s| movement(s)];
    let names = ["speed ", "vertical break ", "glove-side break "];
    let is_out = |axis: &usize| !(ranges[*axis].holds(shape[*axis].low) && ranges[*axis].holds(shape[*axis].high));
    let says = |axis: usize| {
        let Range { low, high } = ranges[axis];
        let end = |number: f64| amounts[axis](number.into()).bare();
        let now = amounts[axis](shape[axis].into());
        say!("{}{} is not wholly between {} and {}", names[axis], now, end(low), end(high))
    };
    (0..3).filter(is_out).map(says).collect()
}

fn tries(progress: &Progress, finding: &Finding, earlier: &[Finding]) -> Vec<Text> {
    let cue_of = |finding: &Finding| for_finding(finding.kind, &progress.new_pitch);
    let goes_on = finding.severity != Severity::Good || !progress.must_stop();
    let Some(cue) = cue_of(finding).filter(|_| goes_on) else { return Vec::new() };
    if earlier.iter().any(|earlier| cue_of(earlier) == Some(cue)) {
        return vec!["means and try: as above".into()];
    }
    said(cue, if finding.severity == Severity::Good { "next" } else { "try" }).to_vec()
}

fn said(cue: Cue, attempt: &str) -> [Text; 3] {
    let advice = cues::advice(cue);
    [
        format!("means: {}", advice.says).into(),
        format!("{attempt}: {}", advice.attempt).into(),
        format!("it must not cost: {}", advice.must_not_cost).into(),
    ]
}

/// Why no throw is judged, when the files have labels and none of them is the new pitch's.
fn no_such_label(ground: &Ground, progress: &Progress) -> Option<Text> {
    let is_thrown = progress.new_pitch.by_outing.iter().any(|outing| outing.throws > 0);
    let (family, labels) = (ground.target.family, &ground.session.labels);
    // A label that is there, with all of its throws set aside, is another matter.
    let is_named = labels.iter().any(|label| label.trim().eq_ignore_ascii_case(family.name()));
    (!is_thrown && !is_named && !labels.is_empty()).then(|| {
        let labels = Text::joined(labels.iter().map(|label| name(label.trim())), ", ");
        say!("no throw is labelled {}; the labels are: {}", family, labels)
    })
}

/// What to do next, and where the pitch stands at the gates of a plan.
fn next(ground: &Ground, progress: &Progress) -> Vec<Step> {
    let unlabelled = no_such_label(ground, progress);
    let worst = progress.findings.first().map(|finding| finding.severity);
    let go_on = match worst {
        Some(Severity::Stop) => {
            "leave the new pitch out, throw the fastball from its usual release, and ask again with that outing; the \
             gates below wait until nothing says stop"
        }
        Some(Severity::Watch) => "throw the next outing as it was meant, and look at the same things again",
        Some(Severity::Note | Severity::Good) => "nothing says stop: work on the first gate not passed",
        None => "too little was thrown to say anything: go on, and ask again after the next outing",
    };
    // Where nothing is labelled as the new pitch, that is why too little was thrown.
    let go_on = (worst.is_some() || unlabelled.is_none()).then(|| go_on.into());
    let label = unlabelled.is_some().then(|| name_the_label(ground));
    let first = unlabelled.into_iter().map(Step::act).chain(label);
    first.chain(go_on.into_iter().chain(gates_ahead(ground, progress)).map(Step::act)).collect()
}

fn name_the_label(ground: &Ground) -> Step {
    let target = ground.target_words();
    let files = ground.session.files.iter().chain(&target).map(String::as_str);
    let words = ["progress", ground.file].into_iter().chain(files).chain(["--pitch", "LABEL"]);
    Step::ask(
        Command::arsenalfit(words),
        "when one of them is the new pitch: its label in place of LABEL; when the labels stand in another column, name \
         that in a column map",
    )
}

/// The gates passed and the first that is not.
fn gates_ahead(ground: &Ground, progress: &Progress) -> Vec<Text> {
    let measured = Measured::from_progress(progress);
    let all = [PlanStep::Shape, PlanStep::Effort, PlanStep::Command]
        .map(|step| (step, gates(step, ground.target, &measured)));
    let passed = all.iter().take_while(|(_, gates)| gates.iter().all(|gate| gate.is_met() == Some(true))).count();
    all.iter().take(passed + 1).map(|(step, gates)| gate_line(*step, gates)).collect()
}

/// "shape in window: passed", or what is not.
fn gate_line(step: PlanStep, gates: &[Gate]) -> Text {
    let of = |says: &'static str, is_it: fn(&Gate) -> bool| {
        gates.iter().filter(move |gate| is_it(gate)).map(move |gate| text![says, steps::gate(gate)])
    };
    let open = of("not yet: ", |gate| gate.is_met() == Some(false));
    let said: Vec<Text> = open.chain(of("not measured: ", |gate| gate.now.is_none())).collect();
    let said = if said.is_empty() { "passed".into() } else { Text::joined(said, "; ") };
    text![format!("gate \"{}\": ", steps::step(step)), said]
}

fn watched(progress: &Progress) -> Section {
    let rows = progress.watches.iter().map(|watch| {
        let (name, unit, places) = quantity(watch.quantity);
        row![
            format!("{name}, {}", unit.head()),
            pure(watch.baseline, places).half(),
            watch.now.map(|now| pure(now, places).signed().half()),
            pure(watch.quantity.matters(), places),
            watch.state().map(state),
        ]
    });
    let pictures = progress.watches.iter().map(|watch| watch_band(watch, &progress.days));
    let section = Section::new("What it must not cost: the last three outings against the profile")
        .table(Table::new(columns!["", "profile", "last three", "matters", "so far"], rows));
    if progress.watches.is_empty() {
        return section;
    }
    section.bullets(["±: half the 90 % interval"].into_iter().chain(KEY)).pictures(pictures)
}

fn watch_band(watch: &Watch, days: &[String]) -> Picture {
    let (name, unit, places) = quantity(watch.quantity);
    let amount = |amount: Estimate| pure(amount, places).signed().figures();
    band(&Band {
        title: format!("{name}, {}: {}", unit.head(), watch.state().map_or("-", state)),
        name: "profile",
        level: Some(watch.baseline),
        ends: Range::about(watch.baseline.value, watch.quantity.matters()),
        days,
        values: watch.by_outing.clone(),
        moved: watch.change.map(|change| Moved { since: change.since, amount: amount(change.amount) }),
        places,
    })
}

fn by_outing(ground: &Ground, progress: &Progress) -> Option<Section> {
    if progress.days.is_empty() {
        return None;
    }
    let by_outing = &progress.new_pitch.by_outing;
    let skipped = by_outing.len().saturating_sub(MOST_LISTED);
    let is_told = |place: &usize| *place == 0 || *place > skipped;
    let rows = (0..by_outing.len()).filter(is_told).map(|place| outing(&progress.days[place], &by_outing[place]));
    let columns = columns!["", "mph", "vertical", "glove side", "in window, %", "scatter, in"];
    let left = if skipped > 0 { format!(" {skipped} outings after the first are not listed.") } else { String::new() };
    let [mph, up, side] = window_amounts(&ground.target.window);
    let key = say!(
        "±: half the 90 % interval. Window: {}, vertical {}, glove side {}. Scatter: at the plate, about \
         the middle of the outing.{}",
        mph,
        up,
        side,
        left
    );
    let pictures = (0..3).map(|axis| new_pitch_band(ground, progress, axis));
    let section = Section::new(say!("The {} from outing to outing", ground.target.family));
    Some(section.table(Table::new(columns, rows)).paragraph(key).pictures(pictures))
}

fn outing(day: &str, outing: &OutingShape) -> Vec<Text> {
    let [mph, up, side] = outing.shape;
    row![
        name(day),
        mph.map(|mph| speed(mph).bare().half()),
        up.map(|up| movement(up).bare().half()),
        side.map(|side| movement(side).bare().half()),
        outing.share_in_window.map(|inside| share(inside).bare()),
        outing.command_in.map(|scatter| pure(scatter, 0)),
    ]
}

/// The speed, the vertical or the glove-side break of the new pitch against its window.
fn new_pitch_band(ground: &Ground, progress: &Progress, axis: usize) -> Picture {
    let names = ["speed, mph", "vertical break, in", "glove-side break, in"];
    band(&Band {
        title: format!("{} {}", ground.target.family, names[axis]),
        name: "window",
        level: None,
        ends: ground.target.window.ranges()[axis],
        days: &progress.days,
        values: progress.new_pitch.by_outing.iter().map(|outing| outing.shape[axis]).collect(),
        moved: None,
        places: 1,
    })
}

/// A doubt about outings, in words.
pub fn doubt(doubt: Caution) -> String {
    caution(doubt).to_string()
}

//! Words of the follow-through: trial, progress and plan, shared by every form of output.
//!
//! What a page of this kind is about travels as a [`Ground`] or a [`Start`]. Findings and cues
//! have their own words ([`crate::learn::progress`], [`crate::learn::cues`]); here they are put into sentences.
//! Text that comes from a file (grips, days) is made one printable line first.

use crate::athlete::profile::Profile;
use crate::athlete::session::Session;
use crate::base::stats::Estimate;
use crate::decide::advice::{Advice, Verdict as Advised};
use crate::learn::plan::{Gate, Measured, Reason, Refusal, Step, gates};
use crate::learn::progress::{Finding, Kind, Progress, Quantity, Severity};
use crate::learn::target::Target;
use crate::learn::trial::{Grip, MOST_MORE, Next, SURE, Trial, Verdict};

use super::format::{in_hundred, percent, plain, signed, signed_range};
use super::words;

/// The target's window as cells of a table: speed, vertical break, glove-side break.
pub(super) fn window_cells(target: &Target, places: usize) -> [String; 3] {
    let window = target.window;
    let range = |(low, high): (f64, f64), show: fn(f64, usize) -> String| {
        format!("{} to {}", show(low, places), show(high, places))
    };
    [range(window.speed_mph, plain), range(window.vertical_break_in, signed), range(window.glove_side_break_in, signed)]
}

/// What an answer about throws is about.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'a> {
    /// Who threw.
    pub profile: &'a Profile,
    /// What is chased.
    pub target: &'a Target,
    /// What was read.
    pub session: &'a Session,
    /// What in health or age speaks against the work as such.
    pub bars: &'a [Reason],
    /// Doubts, one sentence each.
    pub cautions: &'a [String],
}

/// What a plan starts from.
#[derive(Debug, Clone, Copy)]
pub struct Start<'a> {
    /// Who is to learn.
    pub profile: &'a Profile,
    /// What was advised, when that was asked.
    pub advice: Option<&'a Advice<'a>>,
    /// What the last outings say must come first.
    pub stops: &'a [Finding],
    /// Files written beside the answer.
    pub written: &'a [String],
}

/// Why there is no plan.
#[derive(Debug, Clone, Copy)]
pub enum NoPlan<'a> {
    /// Health or age forbid it.
    Barred(&'a Refusal),
    /// The advice is against the pitch.
    Advised(&'a Advice<'a>),
}

/// A grip less likely than this to be the best is out of the running.
pub(super) const OUT: f64 = 0.05;

impl NoPlan<'_> {
    /// The refusal in one sentence.
    pub(super) fn headline(&self) -> String {
        match self {
            Self::Barred(refusal) => format!("There is {}.", refusal.refused),
            Self::Advised(advice) => format!("There is no plan for this pitch. {}", words::headline(advice)),
        }
    }

    /// Every reason, most serious first.
    pub(super) fn reasons(&self) -> Vec<String> {
        match self {
            Self::Barred(refusal) => refusal.reasons.iter().map(ToString::to_string).collect(),
            Self::Advised(advice) => advice.reasons.iter().map(words::reason).collect(),
        }
    }

    /// What can be asked next.
    pub(super) fn next(&self) -> Option<&'static str> {
        matches!(self, Self::Advised(_)).then_some(
            "to plan another pitch name it with --family; to plan a shape of your own all the same give it with --target",
        )
    }
}

/// One printable line of what a file says.
pub(super) fn one_line(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}

/// A grip's letter in tables, by its place.
pub(super) fn letter(place: usize) -> String {
    let alphabet = ('A'..='Z').nth(place % 26).unwrap_or('A');
    if place < 26 { alphabet.into() } else { format!("{alphabet}{}", place / 26 + 1) }
}

/// Whether there is a winner, as a headline.
pub(super) fn trial_headline(trial: &Trial) -> String {
    let first = trial.grips.first().map_or(String::new(), |grip| one_line(&grip.name));
    match trial.verdict {
        Verdict::Empty => "No throw names its grip, so there is nothing to compare.".into(),
        Verdict::OneGrip => format!("Only one grip was thrown ({first}), so there is nothing to compare it with."),
        Verdict::TooEarly { needed } => {
            format!("Too early to choose: every grip still in the running needs {needed} throws.")
        }
        Verdict::Open => format!("No winner yet. Ahead is: {first}."),
        Verdict::Settled => format!("Keep this grip: {first}."),
    }
}

/// What the leading grip's place rests on.
pub(super) fn trial_reasons(trial: &Trial, target: &Target) -> Vec<String> {
    let Some(first) = trial.grips.first() else { return Vec::new() };
    let lands = format!(
        "{} lands its next throw in the window with a chance of {}; a pitch in the middle of the window, scattered \
         like his others, would with {}",
        letter(0),
        chance_range(first.chance_next),
        percent(target.chance_at_best()),
    );
    let best = (trial.grips.len() > 1).then(|| {
        format!(
            "the chance that no other grip is better is {} (at {} the trial is over)",
            in_hundred(first.chance_best),
            plain(100.0 * SURE, 0)
        )
    });
    best.into_iter().chain([lands]).collect()
}

/// What to throw next.
pub(super) fn trial_next(trial: &Trial, next: Option<&Next>) -> Vec<String> {
    let Some(next) = next else {
        return match trial.verdict {
            Verdict::Settled => {
                vec!["throw this grip alone from now on, and watch it with `arsenalfit progress`".into()]
            }
            Verdict::OneGrip => vec!["throw a second grip, five throws or more, in turn with the first".into()],
            _ => vec!["write the grip of every throw in a column named grip, in plain words".into()],
        };
    };
    let grip = trial.grips.iter().position(|grip| grip.name == next.grip).map_or(String::new(), letter);
    let throw = format!("throw {grip} next: {}", one_line(&next.grip));
    [throw, more_throws(next.more_throws)].into_iter().chain(out_of_it(trial)).collect()
}

fn more_throws(more: Estimate) -> String {
    if more.value >= MOST_MORE {
        return format!(
            "more than {} further throws would be needed to part the best from the next: as far as the shape goes they \
             are equal, so let comfort, speed and slot decide",
            plain(MOST_MORE, 0)
        );
    }
    let high = if more.high >= MOST_MORE { format!("{} or more", plain(MOST_MORE, 0)) } else { plain(more.high, 0) };
    format!(
        "about {} more throws ({} to {high}), all grips together, until the best is known with {}",
        plain(more.value, 0),
        plain(more.low, 0),
        percent(SURE)
    )
}

/// `44 % (30 to 58 %)`.
pub(super) fn chance_range(chance: Estimate) -> String {
    format!("{} ({} to {})", percent(chance.value), plain(100.0 * chance.low, 0), percent(chance.high))
}

/// Where a grip's dot shows, as its thrower sees it.
pub(super) fn dot_of(grip: &Grip, ground: &Ground) -> String {
    match grip.dot {
        Some(dot) => format!("the dot is {}", dot.words(ground.profile.athlete.throws)),
        None => "where its dot should be is not known, or its spin was not measured".into(),
    }
}

/// The grips that are out of the running, when any is.
fn out_of_it(trial: &Trial) -> Option<String> {
    let out: Vec<String> =
        (0..trial.grips.len()).filter(|&place| trial.grips[place].chance_best < OUT).map(letter).collect();
    let has = if out.len() == 1 { "it has" } else { "each has" };
    (!out.is_empty())
        .then(|| format!("leave out {}: {has} less than {} to be the best", out.join(" and "), in_hundred(OUT)))
}

/// `0.04 (0.03 to 0.07)`.
pub(super) fn range(estimate: Estimate, places: usize) -> String {
    let show = |value| plain(value, places);
    format!("{} ({} to {})", show(estimate.value), show(estimate.low), show(estimate.high))
}

/// A finding as a headline.
pub(super) fn finding_headline(finding: &Finding) -> String {
    let call = match finding.severity {
        Severity::Stop => "Stop",
        Severity::Watch => "Look",
        Severity::Note => "So far",
        Severity::Good => "Good",
    };
    format!("{call}: {}", finding.kind)
}

/// What of the shape is not wholly in the window over the last outings.
pub(super) fn shape_outside(finding: &Finding, progress: &Progress, target: &Target) -> Vec<String> {
    let asked = matches!(finding.kind, Kind::ShapeDrifted | Kind::ShapeOnTheWay);
    let Some(shape) = progress.new_pitch.shape_now.filter(|_| asked) else { return Vec::new() };
    let names = [("speed", "mph"), ("vertical break", "in"), ("glove-side break", "in")];
    let out = shape
        .into_iter()
        .zip(target.ranges())
        .zip(names)
        .filter(|((e, (low, high)), _)| e.low < *low || e.high > *high);
    out.map(|((e, (low, high)), (name, unit))| {
        let show: fn(f64, usize) -> String = if unit == "mph" { plain } else { signed };
        let [value, from, to, low, high] = [e.value, e.low, e.high, low, high].map(|number| show(number, 1));
        format!("{name} {value} ({from} to {to}) {unit} is not wholly between {low} and {high}")
    })
    .collect()
}

/// How much, and since when.
pub(super) fn finding_amount(finding: &Finding, days: &[String], target: &Target) -> Option<String> {
    let amount = finding.amount?;
    let since = finding.since.and_then(|place| days.get(place)).map(|day| format!("since {}", one_line(day)));
    Some(match finding.kind {
        Kind::ShapeDrifted | Kind::ShapeOnTheWay | Kind::ShapeArrived => format!(
            "{}{} of its last throws are in the window; centred, and scattered like his others, it would be {}",
            since.map_or(String::new(), |since| format!("{since}; ")),
            chance_range(amount),
            percent(target.chance_at_best()),
        ),
        Kind::CommandNotComing => format!("it scatters by {} in at the plate in its last outings", range(amount, 1)),
        kind => {
            let against = if since.is_some() { "against what was before" } else { "against the profile" };
            let since = since.map_or(String::new(), |since| format!(" {since}"));
            format!("{} {}{since}, {against}", signed_range(amount, places(kind)), kind.unit())
        }
    })
}

fn places(kind: Kind) -> usize {
    if kind.unit() == "ft" { 2 } else { 1 }
}

/// A watched quantity with its unit, and the decimals it is shown with.
pub(super) fn quantity(quantity: Quantity) -> (&'static str, usize) {
    match quantity {
        Quantity::Slot => ("fastball slot, deg", 1),
        Quantity::NewPitchSlot => ("new pitch slot, deg", 1),
        Quantity::FastballSpeed => ("fastball, mph", 1),
        Quantity::FastballVertical => ("fastball vertical, in", 1),
        Quantity::FastballGloveSide => ("fastball glove side, in", 1),
        Quantity::ReleaseHeight => ("release height, ft", 2),
        Quantity::ReleaseSide => ("release side, ft", 2),
        Quantity::Extension => ("extension, ft", 2),
    }
}

/// Pain and a recent injury, as they stand before anything else in every answer about throwing.
pub(super) fn health(profile: &Profile) -> Vec<String> {
    let health = profile.health;
    let said = [health.pain.then_some(Reason::Pain), health.recent_injury.then_some(Reason::RecentInjury)];
    said.into_iter().flatten().map(|reason| reason.to_string()).collect()
}

/// Why no throw is judged, when the files have labels and none of them is the new pitch's.
pub(super) fn no_such_label(ground: &Ground, progress: &Progress) -> Option<String> {
    let thrown = progress.new_pitch.by_outing.iter().any(|outing| outing.throws > 0);
    let labels: Vec<String> = ground.session.labels.iter().map(|label| one_line(label.trim())).collect();
    let (family, listed) = (ground.target.family, labels.join(", "));
    // A label that is there, with all of its throws set aside, is another matter.
    let named = labels.iter().any(|label| label.eq_ignore_ascii_case(family.name()));
    (!thrown && !named && !labels.is_empty()).then(|| {
        format!(
            "no throw is labelled {family}; the labels are: {listed}. If one of them is the new pitch, name it with \
             --pitch LABEL; if they stand in another column, name that in a column map (--columns)"
        )
    })
}

/// What to do next, and where the pitch stands at the gates of a plan.
pub(super) fn progress_next(ground: &Ground, progress: &Progress) -> Vec<String> {
    let target = ground.target;
    let unlabelled = no_such_label(ground, progress);
    let worst = progress.findings.first().map(|finding| finding.severity);
    let first = match worst {
        Some(Severity::Stop) => {
            "leave the new pitch out, throw the fastball from its usual release, and ask again with that outing; the \
             gates below wait until nothing says stop"
        }
        Some(Severity::Watch) => "throw the next outing as it was meant, and look at the same things again",
        Some(Severity::Note | Severity::Good) => "nothing says stop: work on the first gate not passed",
        None => "too little was thrown to say anything: go on, and ask again after the next outing",
    };
    // Where nothing is labelled as the new pitch, that is why too little was thrown.
    let first = (worst.is_some() || unlabelled.is_none()).then(|| first.to_owned());
    let first = unlabelled.into_iter().chain(first);
    let measured = Measured::from_progress(progress);
    let steps = [Step::Shape, Step::Effort, Step::Command];
    let gates = steps.map(|step| (step, gates(step, target, &measured)));
    let passed = gates.iter().take_while(|(_, gates)| gates.iter().all(|gate| gate.is_met() == Some(true))).count();
    let shown = gates.iter().take(passed + 1).map(|(step, gates)| gate_line(*step, gates));
    first.chain(shown).collect()
}

/// "shape in window: passed", or what is not.
fn gate_line(step: Step, gates: &[Gate]) -> String {
    let open: Vec<String> =
        gates.iter().filter(|gate| gate.is_met() == Some(false)).map(|gate| format!("not yet: {gate}")).collect();
    let unknown: Vec<String> =
        gates.iter().filter(|gate| gate.now.is_none()).map(|gate| format!("not measured: {gate}")).collect();
    let said = [open, unknown].concat();
    format!("gate \"{step}\": {}", if said.is_empty() { "passed".into() } else { said.join("; ") })
}

/// What the advice says about the pitch that is planned, when it is not a plain yes.
pub(super) fn advised(advice: &Advice) -> Option<String> {
    match advice.verdict {
        Advised::Add => None,
        Advised::OtherPitch => {
            let better = advice.target.as_ref().map(|target| target.family.name()).unwrap_or_default();
            Some(format!("{} That would be planned with --family {better}", words::headline(advice)))
        }
        Advised::Trial | Advised::NotNow => Some(format!("{} `arsenalfit advise` says why", words::headline(advice))),
    }
}

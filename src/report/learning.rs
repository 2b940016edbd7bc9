//! Sentences and rows of a whole trial, watch or plan, for the terminal and for the page alike.
//!
//! [`super::follow`] has the single words; here they are put together into the lists both forms
//! show in the same order: what to try, what was looked at, what comes first, what ends a step.

use std::collections::BTreeMap;

use crate::athlete::session::Session;
use crate::base::stats::Estimate;
use crate::learn::cues::{Cue, SOURCE, cue, for_finding, for_grip, for_missing_sweep};
use crate::learn::plan::{GUIDELINE_RECORD, PhaseKind, Plan, Step};
use crate::learn::progress::{Finding, Kind, Progress, Severity};
use crate::learn::target::Target;
use crate::learn::trial::Trial;

use super::follow::{
    Ground, OUT, Start, advised, chance_range, finding_amount, finding_headline, letter, one_line, range, shape_outside,
};
use super::format::{plain, signed};

/// Most grips that get cues: one page is read, three are not.
const MOST_CUED: usize = 2;

/// What to try with the grips still in the running, each cue said once.
pub(super) fn tries(trial: &Trial, target: &Target) -> Vec<String> {
    let least_in = target.window.glove_side_break_in.0;
    let mut said: Vec<(&Cue, String)> = Vec::new();
    let running = trial.grips.iter().enumerate().filter(|(_, grip)| grip.chance_best >= OUT).take(MOST_CUED);
    for (place, grip) in running {
        for cue in for_grip(grip).into_iter().chain(for_missing_sweep(grip, least_in)) {
            match said.iter_mut().find(|(known, _)| *known == cue) {
                Some((_, letters)) => letters.extend([" and ".to_owned(), letter(place)]),
                None => said.push((cue, letter(place))),
            }
        }
    }
    let line = |(cue, letters): &(&Cue, String)| {
        format!("{letters}: {}. Try: {}. It must not cost: {}", cue.says, cue.attempt, cue.must_not_cost)
    };
    said.iter().map(line).collect()
}

/// How cleanly each grip's ball spins: letter, the dot's scatter in and out (radii) and around
/// (minutes), wobble.
pub(super) fn spin_rows(trial: &Trial) -> Vec<Vec<String>> {
    let show = |e: Option<Estimate>, places| e.map_or("-".into(), |e| range(e, places));
    let rows = trial.grips.iter().enumerate().map(|(place, grip)| {
        let clean = grip.clean;
        vec![
            letter(place),
            show(clean.active_fraction_spread, 2),
            show(clean.clock_spread_minutes, 0),
            clean.wobble.map_or("-".into(), chance_range),
        ]
    });
    rows.collect()
}

/// Which outings were looked at.
pub(super) fn over(ground: &Ground, progress: &Progress) -> String {
    let family = ground.target.family;
    match progress.days.as_slice() {
        [] => format!("A new {family}, and no outing to judge it by."),
        [day] => format!("A new {family}, one outing: {}.", one_line(day)),
        [first, .., last] => format!(
            "A new {family} over {} outings, {} to {}. What to try is {SOURCE}.",
            progress.days.len(),
            one_line(first),
            one_line(last)
        ),
    }
}

/// A finding below its headline; what an earlier one has said about what to try is not said again.
pub(super) fn finding_lines(ground: &Ground, progress: &Progress, place: usize) -> Vec<String> {
    let finding = &progress.findings[place];
    let amount = finding_amount(finding, &progress.days, ground.target);
    let outside = shape_outside(finding, progress, ground.target);
    amount.into_iter().chain(outside).chain(cue_lines(progress, finding, &progress.findings[..place])).collect()
}

fn cue_lines(progress: &Progress, finding: &Finding, earlier: &[Finding]) -> Vec<String> {
    let cue_of = |finding: &Finding| for_finding(finding.kind, &progress.new_pitch);
    let goes_on = finding.severity != Severity::Good || !progress.must_stop();
    let Some(cue) = cue_of(finding).filter(|_| goes_on) else { return Vec::new() };
    if earlier.iter().any(|earlier| cue_of(earlier) == Some(cue)) {
        return vec!["means and try: as above".to_owned()];
    }
    let next = if finding.severity == Severity::Good { "next" } else { "try" };
    vec![
        format!("means: {}", cue.says),
        format!("{next}: {}", cue.attempt),
        format!("it must not cost: {}", cue.must_not_cost),
    ]
}

/// What to keep in mind about the throws and the target.
pub(super) fn doubts(ground: &Ground) -> Vec<String> {
    let no_spin = ground.target.spin.is_none().then(|| {
        "no spin of his gives the target's shape by this project's reckoning, so its dot is not judged".to_owned()
    });
    ground.cautions.iter().chain(&ground.session.notes).cloned().chain(no_spin).collect()
}

/// How many rows are not used, by the kind of reason.
pub(super) fn set_aside(session: &Session) -> Vec<String> {
    let mut kinds: BTreeMap<&str, usize> = BTreeMap::new();
    for row in &session.set_aside {
        *kinds.entry(row.reason.kind()).or_default() += 1;
    }
    kinds.iter().map(|(kind, count)| format!("{count} {kind}")).collect()
}

/// The target of a plan and how to read its dates.
pub(super) fn plan_target(plan: &Plan) -> String {
    let shape = plan.target.shape;
    format!(
        "Target: {} mph, vertical break {} in, glove-side break {} in. Throwing on {}. Steps, volumes and gates are \
         {SOURCE}. A step is over when its gate is passed, not when its dates are.",
        plain(shape.speed_mph, 1),
        signed(shape.vertical_break_in, 1),
        signed(shape.glove_side_break_in, 1),
        plan.weekdays.to_string().replace(',', ", "),
    )
}

/// What comes before the first day of a plan.
pub(super) fn before(start: &Start) -> Vec<String> {
    let stops = start.stops.iter().map(|finding: &Finding| {
        format!("{}, by the outings given: the plan waits until nothing says stop", finding_headline(finding))
    });
    let drops = |finding: &Finding| matches!(finding.kind, Kind::SlotDropping | Kind::NewPitchSlotLower);
    let attempt = cue("slot-dropping").filter(|_| start.stops.iter().any(drops));
    stops.chain(start.advice.and_then(advised)).chain(attempt.map(|cue| format!("try: {}", cue.attempt))).collect()
}

/// Each step of a plan: its name, first and last day, throwing days, effort.
pub(super) fn step_rows(plan: &Plan) -> Vec<Vec<String>> {
    let rows = plan.phases.iter().map(|phase| {
        let (days, effort) = match phase.kind {
            PhaseKind::Rest => ("-".into(), "-".into()),
            PhaseKind::Step(step) => (
                plan.days.iter().filter(|day| day.step == step).count().to_string(),
                format!("{} %", step.work().effort_percent),
            ),
        };
        vec![phase.kind.to_string(), phase.span.start().to_string(), phase.span.end().to_string(), days, effort]
    });
    rows.collect()
}

/// What ends each step of a plan.
pub(super) fn gates_of(plan: &Plan) -> Vec<String> {
    let gated = plan.phases.iter().filter(|phase| !phase.gates.is_empty());
    gated
        .map(|phase| {
            let gates: Vec<String> = phase.gates.iter().map(ToString::to_string).collect();
            format!("{}: {}", phase.kind, gates.join("; "))
        })
        .collect()
}

/// What is done in each step, and what is written down.
pub(super) fn work(plan: &Plan) -> Vec<String> {
    let steps =
        Step::ALL.into_iter().filter(|&step| plan.phases.iter().any(|phase| phase.kind == PhaseKind::Step(step)));
    let said = steps.map(|step| {
        let work = step.work();
        format!("{step}: {}. Write down: {}", work.what, work.record.join(", "))
    });
    said.chain([format!("every throwing day: {}", GUIDELINE_RECORD.join("; "))]).collect()
}

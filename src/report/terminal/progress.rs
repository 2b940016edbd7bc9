//! The page of `progress`: findings first, most serious first, each with what it means and what
//! to try; then what comes next; then the numbers they rest on.

use crate::cues::{SOURCE, for_finding};
use crate::progress::{Finding, OutingShape, Progress, Severity, Watch};
use crate::stats::Estimate;

use super::super::follow::{
    Ground, finding_amount, finding_headline, one_line, progress_next, quantity, range, shape_outside,
};
use super::super::format::{plain, signed};
use super::Page;
use super::sort::set_aside;

/// Outings listed one by one: the first and the last of them.
const MOST_LISTED: usize = 8;

/// The whole answer.
pub fn progress(ground: &Ground, progress: &Progress, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(ground.profile);
    page.paragraph(&over(ground, progress));
    bars(&mut page, ground);
    for (place, finding) in progress.findings.iter().enumerate() {
        one(&mut page, ground, progress, finding, &progress.findings[..place]);
    }
    page.heading("Next");
    page.list(progress_next(progress, ground.target));
    watches(&mut page, progress);
    outings(&mut page, ground, progress);
    doubts(&mut page, ground);
    page.finish()
}

/// What was looked at.
fn over(ground: &Ground, progress: &Progress) -> String {
    let family = ground.target.family;
    match progress.days.as_slice() {
        [] => format!("A new {family}, and no outing to judge it by."),
        [day] => format!("A new {family}, one outing: {}.", one_line(day)),
        [first, .., last] => {
            format!(
                "A new {family} over {} outings, {} to {}. What to try is {SOURCE}.",
                progress.days.len(),
                one_line(first),
                one_line(last)
            )
        }
    }
}

/// What in health or age speaks against the work, before anything else.
pub(super) fn bars(page: &mut Page, ground: &Ground) {
    if !ground.bars.is_empty() {
        page.heading("Before anything else");
        page.list(ground.bars.iter().map(ToString::to_string));
    }
}

/// Rows not used, and what to keep in mind.
pub(super) fn doubts(page: &mut Page, ground: &Ground) {
    set_aside(page, ground.session, &ground.session.set_aside);
    let no_spin = ground.target.spin.is_none().then(|| {
        "no spin of his gives the target's shape by this project's reckoning, so its dot is not judged".to_owned()
    });
    let all: Vec<String> = ground.cautions.iter().chain(&ground.session.notes).cloned().chain(no_spin).collect();
    if !all.is_empty() {
        page.heading("Keep in mind");
        page.list(all);
    }
    page.assumptions(ground.profile);
}

/// A finding; what an `earlier` one has said about what to try is not said again.
fn one(page: &mut Page, ground: &Ground, progress: &Progress, finding: &Finding, earlier: &[Finding]) {
    page.heading(&finding_headline(finding));
    page.list(finding_amount(finding, &progress.days, ground.target));
    page.list(shape_outside(finding, progress, ground.target));
    let cue_of = |finding: &Finding| for_finding(finding.kind, &progress.new_pitch);
    let goes_on = finding.severity != Severity::Good || !progress.must_stop();
    let Some(cue) = cue_of(finding).filter(|_| goes_on) else { return };
    if earlier.iter().any(|earlier| cue_of(earlier) == Some(cue)) {
        page.list(["means and try: as above".to_owned()]);
        return;
    }
    let next = if finding.severity == Severity::Good { "next" } else { "try" };
    page.list([
        format!("means: {}", cue.says),
        format!("{next}: {}", cue.attempt),
        format!("it must not cost: {}", cue.must_not_cost),
    ]);
}

fn watches(page: &mut Page, progress: &Progress) {
    if progress.watches.is_empty() {
        return;
    }
    page.heading("The last three outings against the profile (± half the 90 % interval)");
    let rows = progress.watches.iter().map(|watch: &Watch| {
        let (name, places) = quantity(watch.quantity);
        let half = |e: Estimate| plain(e.half_width(), places);
        let before = format!("{} ±{}", plain_or_signed(watch.baseline.value, places), half(watch.baseline));
        let now = watch.now.map_or("-".into(), |now| format!("{} ±{}", signed(now.value, places), half(now)));
        let state = if watch.is_serious() || watch.change.is_some() { "moved" } else { "holds" };
        vec![name.into(), before, now, plain(watch.quantity.matters(), places), state.into()]
    });
    page.table(&["", "profile", "last three", "matters", ""], rows.collect());
}

/// Breaks to the arm side are negative; nothing else needs a sign.
fn plain_or_signed(value: f64, places: usize) -> String {
    if value < 0.0 { signed(value, places) } else { plain(value, places) }
}

fn outings(page: &mut Page, ground: &Ground, progress: &Progress) {
    let by_outing = &progress.new_pitch.by_outing;
    page.heading(&format!("The {} from outing to outing (± half the 90 % interval)", ground.target.family));
    let limits =
        |(low, high): (f64, f64), show: fn(f64, usize) -> String| format!("{} to {}", show(low, 0), show(high, 0));
    let window = ground.target.window;
    let mut rows = vec![vec![
        "window".into(),
        limits(window.speed_mph, plain),
        limits(window.vertical_break_in, signed),
        limits(window.glove_side_break_in, signed),
        String::new(),
        String::new(),
    ]];
    let skipped = by_outing.len().saturating_sub(MOST_LISTED);
    for (place, (day, outing)) in progress.days.iter().zip(by_outing).enumerate() {
        if place == 0 || place > skipped {
            rows.push(outing_row(day, outing));
        }
    }
    page.table(&["", "mph", "vertical", "glove side", "in window, %", "scatter, in"], rows);
    let left = if skipped > 0 { format!(" {skipped} outings after the first are not listed.") } else { String::new() };
    page.paragraph(&format!("scatter: at the plate, about the middle of the outing.{left}"));
}

fn outing_row(day: &str, outing: &OutingShape) -> Vec<String> {
    let show = |e: Option<Estimate>, show: fn(f64, usize) -> String| {
        e.map_or("-".into(), |e| format!("{} ±{}", show(e.value, 1), plain(e.half_width(), 1)))
    };
    let [speed, up, side] = outing.shape;
    vec![
        one_line(day),
        show(speed, plain),
        show(up, signed),
        show(side, signed),
        outing.share_in_window.map_or("-".into(), |share| range(share.map(|share| 100.0 * share), 0)),
        outing.command_in.map_or("-".into(), |scatter| range(scatter, 0)),
    ]
}

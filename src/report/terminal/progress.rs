//! The page of `progress`: findings first, most serious first, each with what it means and what
//! to try; then what comes next; then the numbers they rest on.

use crate::base::stats::Estimate;
use crate::learn::progress::{KEY, OutingShape, Progress, State, Watch};

use super::super::follow::{Ground, finding_headline, one_line, progress_next, quantity, range, window_cells};
use super::super::format::{plain, plain_or_signed, signed};
use super::super::learning::{self, finding_lines, over};
use super::Page;
use super::sort::set_aside;

/// Outings listed one by one: the first and the last of them.
const MOST_LISTED: usize = 8;

/// The whole answer.
pub fn progress(ground: &Ground, progress: &Progress, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(ground.profile);
    page.paragraph(&over(ground, progress));
    page.bars(ground.bars.iter().map(ToString::to_string));
    for (place, finding) in progress.findings.iter().enumerate() {
        page.heading(&finding_headline(finding));
        page.list(finding_lines(ground, progress, place));
    }
    page.heading("Next");
    page.list(progress_next(ground, progress));
    watches(&mut page, progress);
    outings(&mut page, ground, progress);
    doubts(&mut page, ground);
    page.finish()
}

/// Rows not used, and what to keep in mind.
pub(super) fn doubts(page: &mut Page, ground: &Ground) {
    set_aside(page, ground.session, &ground.session.set_aside);
    let all = learning::doubts(ground);
    page.section("Keep in mind", all);
    page.assumptions(ground.profile);
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
        let state = watch.state().map_or("-", State::words);
        vec![name.into(), before, now, plain(watch.quantity.matters(), places), state.into()]
    });
    page.table(&["", "profile", "last three", "matters", "so far"], rows.collect());
    page.list(KEY.map(str::to_owned));
}

fn outings(page: &mut Page, ground: &Ground, progress: &Progress) {
    let by_outing = &progress.new_pitch.by_outing;
    page.heading(&format!("The {} from outing to outing (± half the 90 % interval)", ground.target.family));
    let mut rows = Vec::new();
    let skipped = by_outing.len().saturating_sub(MOST_LISTED);
    for (place, (day, outing)) in progress.days.iter().zip(by_outing).enumerate() {
        if place == 0 || place > skipped {
            rows.push(outing_row(day, outing));
        }
    }
    page.table(&["", "mph", "vertical", "glove side", "in window, %", "scatter, in"], rows);
    let left = if skipped > 0 { format!(" {skipped} outings after the first are not listed.") } else { String::new() };
    // Beside the numbers of the outings the window with its decimals would not fit 80 columns.
    let [speed, up, side] = window_cells(ground.target, 1);
    page.paragraph(&format!(
        "Window: {speed} mph, vertical {up} in, glove side {side} in. Scatter: at the plate, about the middle of the \
         outing.{left}"
    ));
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

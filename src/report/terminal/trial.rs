//! The page of `trial`: who leads and how firmly, what to throw next, then what each grip does.
//!
//! Grips have long names, so tables carry letters: A is the one likeliest to be the best.

use crate::base::stats::Estimate;
use crate::learn::cues::SOURCE;
use crate::learn::trial::{Grip, Trial};

use super::super::follow::{Ground, dot_of, letter, one_line, trial_headline, trial_next, trial_reasons, window_cells};
use super::super::format::{in_hundred, plain, signed};
use super::super::learning::{spin_rows, tries};
use super::Page;
use super::progress::doubts;

/// The whole answer.
pub fn trial(ground: &Ground, trial: &Trial, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(ground.profile);
    page.bars(ground.bars.iter().map(ToString::to_string));
    page.heading(&trial_headline(trial));
    page.list(trial_reasons(trial, ground.target));
    page.heading("Next");
    page.list(trial_next(trial, trial.next.as_ref()));
    if !trial.grips.is_empty() {
        grips(&mut page, trial);
        numbers(&mut page, ground, trial);
        spins(&mut page, ground, trial);
        let tries = tries(trial, ground.target);
        if !tries.is_empty() {
            page.heading(&format!("What to try ({SOURCE})"));
            page.list(tries);
        }
    }
    doubts(&mut page, ground);
    page.finish()
}

fn grips(page: &mut Page, trial: &Trial) {
    page.heading("The grips, likeliest best first");
    page.list(
        trial.grips.iter().enumerate().map(|(place, grip)| format!("{}: {}", letter(place), one_line(&grip.name))),
    );
    page.verbatim("\n");
    let rows = trial.grips.iter().enumerate().map(|(place, grip)| {
        let next = grip.chance_next.map(|chance| 100.0 * chance);
        vec![
            letter(place),
            format!("{} of {}", grip.in_window.hits, grip.throws),
            format!("{} % ({} to {})", plain(next.value, 0), plain(next.low, 0), plain(next.high, 0)),
            in_hundred(grip.chance_best),
        ]
    });
    page.table(&["", "in the window", "next throw in it", "is the best"], rows.collect());
}

fn numbers(page: &mut Page, ground: &Ground, trial: &Trial) {
    page.heading("What each of them does (± half the 90 % interval of the average)");
    let [speed, up, side] = window_cells(ground.target, 1);
    let mut rows = vec![vec!["window".into(), speed, up, side, String::new()]];
    rows.extend(trial.grips.iter().enumerate().map(|(place, grip)| numbers_of(letter(place), grip)));
    page.table(&["", "mph", "vertical, in", "glove side, in", "slot, degrees"], rows);
    page.paragraph("slot: against the profile; - is lower.");
}

fn numbers_of(letter: String, grip: &Grip) -> Vec<String> {
    let show =
        |e: Estimate, show: fn(f64, usize) -> String| format!("{} ±{}", show(e.value, 1), plain(e.half_width(), 1));
    let slot = grip
        .slot_cost_deg
        .map_or("-".into(), |cost| show(Estimate { value: -cost.value, low: -cost.high, high: -cost.low }, signed));
    vec![
        letter,
        show(grip.speed_mph, plain),
        show(grip.vertical_break_in, signed),
        show(grip.glove_side_break_in, signed),
        slot,
    ]
}

fn spins(page: &mut Page, ground: &Ground, trial: &Trial) {
    page.heading("The dot, as the thrower sees it, and how cleanly the ball spins");
    page.list(
        trial.grips.iter().enumerate().map(|(place, grip)| format!("{}: {}", letter(place), dot_of(grip, ground))),
    );
    page.verbatim("\n");
    page.table(&["", "scatter in and out", "around, minutes", "wobble"], spin_rows(trial));
    page.paragraph("scatter in and out: of the dot, in radii of the ball; around: along the clock face.");
}

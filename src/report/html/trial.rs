//! The page of `trial`: who leads and how firmly, what to throw next, and the grips on the map.
//!
//! Grips have long names, so picture and tables carry letters, as in the terminal: A is the one
//! likeliest to be the best.

use crate::athlete::profile::Spread;
use crate::ball::{Family, Shape};
use crate::base::stats::Estimate;
use crate::learn::cues::SOURCE;
use crate::learn::trial::{Grip, Trial};

use super::super::charts::{HALF, Ink, MapPitch, MapTarget, Picture, ShapeMap, Table, inks};
use super::super::follow::{
    Ground, chance_range, dot_of, letter, one_line, trial_headline, trial_next, trial_reasons, window_cells,
};
use super::super::format::{in_hundred, plain, signed};
use super::super::learning::{doubts, set_aside, spin_rows, tries};
use super::{Page, about};

/// The whole answer.
pub fn trial(ground: &Ground, trial: &Trial) -> String {
    let profile = ground.profile;
    let mut page = Page::new(&profile.athlete.name, &trial_headline(trial), &about(profile));
    page.list("Before anything else", ground.bars.iter().map(ToString::to_string));
    page.list("Why", trial_reasons(trial, ground.target));
    page.list("Next", trial_next(trial, trial.next.as_ref()));
    if !trial.grips.is_empty() {
        let letters = trial.grips.iter().enumerate();
        page.list(
            "The grips, likeliest best first",
            letters.clone().map(|(place, grip)| format!("{}: {}", letter(place), one_line(&grip.name))),
        );
        page.table("How often each is in the window", &chances(trial));
        page.pictures("Where they land", "grips", [map(ground, trial)]);
        page.list(
            "The dot, as the thrower sees it",
            letters.map(|(place, grip)| format!("{}: {}", letter(place), dot_of(grip, ground))),
        );
        page.table("How cleanly the ball spins", &spins(trial));
        page.list(&format!("What to try ({SOURCE})"), tries(trial, ground.target));
    }
    page.list("Rows set aside", set_aside(ground.session));
    page.list("Keep in mind", doubts(ground));
    page.assumptions(profile);
    page.finish()
}

fn chances(trial: &Trial) -> Table {
    let rows = trial.grips.iter().enumerate().map(|(place, grip)| {
        vec![
            letter(place),
            format!("{} of {}", grip.in_window.hits, grip.throws),
            chance_range(grip.chance_next),
            in_hundred(grip.chance_best),
        ]
    });
    Table::new(&["grip", "in the window", "next throw in it", "is the best"], rows.collect())
}

fn spins(trial: &Trial) -> Table {
    Table::new(&["grip", "dot scatters in and out, radii", "around, minutes", "wobble"], spin_rows(trial))
}

/// Marks for the grips: none of them looks like the target, whatever the number of grips.
fn grip_inks(trial: &Trial, target: Family) -> Vec<Ink> {
    let others = Family::ALL.into_iter().filter(|&family| family != target).cycle();
    inks([target].into_iter().chain(others.take(trial.grips.len())))
}

fn map(ground: &Ground, trial: &Trial) -> Picture {
    let inks = grip_inks(trial, ground.target.family);
    let letters: Vec<String> = (0..trial.grips.len()).map(letter).collect();
    let grips = trial.grips.iter().zip(&letters).zip(&inks[1..]);
    let map = ShapeMap {
        title: "The grips against the window of the target".into(),
        hand: ground.profile.athlete.throws,
        pitches: grips
            .map(|((grip, letter), &ink)| MapPitch {
                name: letter,
                ink,
                shape: average(grip),
                spread: doubt(grip, ground.target.spread),
            })
            .collect(),
        target: Some(MapTarget {
            name: "target",
            ink: inks[0],
            shape: ground.target.shape,
            window: ground.target.window,
        }),
        throws: throws(ground, trial, &inks[1..]),
    };
    Picture {
        legend: "Seen by the pitcher; crosses stand 6 in apart. Small marks: throws. Large marks: the average of a grip; \
                 its ellipse reaches as far as the 90 % interval of the average along each axis. Dashed kite: the window."
            .into(),
        description: description(ground, trial),
        table: numbers(ground, trial),
        ..map.picture()
    }
}

fn average(grip: &Grip) -> Shape {
    Shape {
        speed_mph: grip.speed_mph.value,
        vertical_break_in: grip.vertical_break_in.value,
        glove_side_break_in: grip.glove_side_break_in.value,
    }
}

/// A spread whose ellipse on the map is the interval of the average.
fn doubt(grip: &Grip, other: Spread) -> Spread {
    let reach = |estimate: Estimate| estimate.half_width() / HALF;
    Spread {
        speed_mph: reach(grip.speed_mph),
        vertical_break_in: reach(grip.vertical_break_in),
        glove_side_break_in: reach(grip.glove_side_break_in),
        ..other
    }
}

fn throws(ground: &Ground, trial: &Trial, inks: &[Ink]) -> Vec<(Ink, Shape)> {
    let session = ground.session;
    let ink_of = |name: &str| trial.grips.iter().position(|grip| grip.name == name).map(|place| inks[place]);
    let of_grip = |grip: u16| session.grips.get(usize::from(grip)).and_then(|name| ink_of(name));
    session.throws.iter().filter_map(|throw| Some((of_grip(throw.grip?)?, throw.shape))).collect()
}

fn with_doubt(estimate: Estimate, show: fn(f64, usize) -> String) -> String {
    format!("{} ±{}", show(estimate.value, 1), plain(estimate.half_width(), 1))
}

fn description(ground: &Ground, trial: &Trial) -> String {
    let grips: Vec<String> = trial
        .grips
        .iter()
        .enumerate()
        .map(|(place, grip)| {
            format!(
                "{} ({}): vertical break {} in, glove-side break {} in, {} of {} throws in the window",
                letter(place),
                one_line(&grip.name),
                with_doubt(grip.vertical_break_in, signed),
                with_doubt(grip.glove_side_break_in, signed),
                grip.in_window.hits,
                grip.throws
            )
        })
        .collect();
    let shape = ground.target.shape;
    let target = [shape.vertical_break_in, shape.glove_side_break_in].map(|inches| signed(inches, 1));
    format!(
        "Each grip\u{2019}s throws and average as the pitcher sees them. Target: vertical break {} in, glove-side break \
         {} in. {}.",
        target[0],
        target[1],
        grips.join("; ")
    )
}

fn numbers(ground: &Ground, trial: &Trial) -> Table {
    let [speed, up, side] = window_cells(ground.target, 1);
    let mut rows = vec![vec!["window".into(), speed, up, side, String::new()]];
    rows.extend(trial.grips.iter().enumerate().map(|(place, grip)| {
        let slot = grip.slot_cost_deg.map(|cost| Estimate { value: -cost.value, low: -cost.high, high: -cost.low });
        vec![
            letter(place),
            with_doubt(grip.speed_mph, plain),
            with_doubt(grip.vertical_break_in, signed),
            with_doubt(grip.glove_side_break_in, signed),
            slot.map_or("-".into(), |slot| with_doubt(slot, signed)),
        ]
    }));
    Table::new(&["grip", "mph", "vertical, in", "glove side, in", "slot against the profile, degrees"], rows)
}

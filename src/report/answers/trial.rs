//! The answer of `trial`: who leads and how firmly, what to throw next, what each grip does.
//!
//! Grips have long names, so tables and the picture carry letters: A is the one likeliest to be the best.

use crate::base::geometry::Hand;
use crate::base::stats::Estimate;
use crate::learn::cues::{Cue, for_grip, for_missing_sweep};
use crate::learn::trial::{Grip, OUT, SURE, Trial, Verdict};

use super::super::content::amount::{chance, degrees, minutes, movement, pure, share, speed};
use super::super::content::data::{Data, list, number};
use super::super::content::{Answer, Command, Section, Table, Text, Unit, columns, name, object, row, say};
use super::super::words::cues::{self, SOURCE};
use super::super::words::grips::{caution, dot, dot_error, headline, letter, lettered, next};
use super::super::words::rows::set_aside_data;
use super::about::about;
use super::ground::{Ground, cues_data, target_data, window_amounts};
use super::trial_map::map;

/// Most grips that get cues: one page is read, three are not.
const MOST_CUED: usize = 2;

/// The whole answer.
pub fn trial(ground: &Ground, trial: &Trial) -> Answer {
    let cautions: Vec<Text> = trial.cautions.iter().map(|&doubt| caution(doubt)).collect();
    let target = ground.target_words();
    let asked = ["progress", ground.file, "SESSION.csv"].into_iter().chain(target.iter().map(String::as_str));
    let watch = Command::arsenalfit(asked);
    about(ground.profile, headline(trial))
        .before(ground.bars())
        .lead(reasons(ground, trial))
        .with(Section::next(next(trial, watch)))
        .with_all(if trial.grips.is_empty() { Vec::new() } else { of_grips(ground, trial) })
        .with_all(ground.ending(cautions.clone()))
        .machine(data(ground, trial, cautions))
}

/// What the leading grip's place rests on.
fn reasons(ground: &Ground, trial: &Trial) -> Vec<Text> {
    let Some(first) = trial.grips.first() else { return Vec::new() };
    let lands = say!(
        "{} lands its next throw in the window with a chance of {}; a pitch in the middle of the window, \
         scattered like the others, would with {}",
        letter(0),
        share(first.chance_next),
        share(ground.target.chance_at_best())
    );
    let best = (trial.grips.len() > 1).then(|| {
        let over = say!(" (at {} the trial is over)", share(SURE).bare());
        say!("the chance that no other grip is better is {}{}", chance(first.chance_best), over)
    });
    best.into_iter().chain([lands]).collect()
}

fn of_grips(ground: &Ground, trial: &Trial) -> Vec<Section> {
    let hand = ground.profile.athlete.throws;
    vec![
        Section::new("The grips, likeliest best first")
            .bullets(lettered(trial, |grip| name(&grip.name)))
            .table(chances(trial)),
        Section::new("What each of them does")
            .picture(map(ground, trial, numbers(ground, trial)))
            .paragraph("± half the 90 % interval of the average; slot: against the profile, - is lower."),
        Section::new("The dot, as the thrower sees it, and how cleanly the ball spins")
            .bullets(lettered(trial, |grip| dot(grip, hand)))
            .table(spins(trial))
            .paragraph("scatter in and out: of the dot, in radii of the ball; around: along the clock face."),
        Section::new(format!("What to try ({SOURCE})")).bullets(tries(ground, trial)),
    ]
}

/// A row for each grip, which begins with its letter.
fn by_grip<'t>(trial: &'t Trial, cells: impl Fn(&'t Grip) -> Vec<Text>) -> impl Iterator<Item = Vec<Text>> {
    trial.grips.iter().enumerate().map(move |(place, grip)| [row![letter(place)], cells(grip)].concat())
}

fn chances(trial: &Trial) -> Table {
    let cells = |grip: &Grip| {
        row![format!("{} of {}", grip.in_window.hits, grip.throws), share(grip.chance_next), chance(grip.chance_best)]
    };
    Table::new(columns!["grip", "in the window", "next throw in it", "is the best"], by_grip(trial, cells))
}

/// What the grips do, below the window they are to be in.
fn numbers(ground: &Ground, trial: &Trial) -> Table {
    let [mph, up, side] = window_amounts(&ground.target.window);
    let cells = |grip: &Grip| {
        row![
            speed(grip.speed_mph).half(),
            movement(grip.vertical_break_in).half(),
            movement(grip.glove_side_break_in).half(),
            grip.slot_cost_deg.map(|cost| degrees(negated(cost)).places(1).signed().half()),
        ]
    };
    let rows = std::iter::once(row!["window", mph, up, side, ""]).chain(by_grip(trial, cells));
    let columns = columns![
        "grip",
        ("", Unit::Mph),
        ("vertical", Unit::Inches),
        ("glove side", Unit::Inches),
        ("slot", Unit::Degrees)
    ];
    Table::new(columns, rows)
}

fn negated(estimate: Estimate) -> Estimate {
    Estimate { value: -estimate.value, low: -estimate.high, high: -estimate.low }
}

fn spins(trial: &Trial) -> Table {
    let cells = |grip: &Grip| {
        row![
            grip.clean.active_fraction_spread.map(|spread| pure(spread, 2)),
            grip.clean.clock_spread_minutes.map(minutes),
            grip.clean.wobble.map(share),
        ]
    };
    let columns = columns!["grip", "scatter in and out", ("around", Unit::Minutes), "wobble"];
    Table::new(columns, by_grip(trial, cells))
}

/// What to try with the grips still in the running, each cue said once.
fn tries(ground: &Ground, trial: &Trial) -> Vec<Text> {
    let least_in = ground.target.window.ranges()[2].low;
    let mut said: Vec<(Cue, Vec<Text>)> = Vec::new();
    let running = trial.grips.iter().enumerate().filter(|(_, grip)| grip.chance_best >= OUT).take(MOST_CUED);
    for (place, grip) in running {
        for cue in for_grip(grip).into_iter().chain(for_missing_sweep(grip, least_in)) {
            match said.iter_mut().find(|(known, _)| *known == cue) {
                Some((_, letters)) => letters.push(letter(place).into()),
                None => said.push((cue, vec![letter(place).into()])),
            }
        }
    }
    let line = |(cue, letters): (Cue, Vec<Text>)| {
        let cues::Advice { says, attempt, must_not_cost } = cues::advice(cue);
        let tells = format!(": {says}. Try: {attempt}. It must not cost: {must_not_cost}");
        Text::joined(letters, " and ").and(tells)
    };
    said.into_iter().map(line).collect()
}

fn data(ground: &Ground, trial: &Trial, cautions: Vec<Text>) -> Data {
    let verdict = match trial.verdict {
        Verdict::Empty => "empty",
        Verdict::OneGrip => "one_grip",
        Verdict::TooEarly { .. } => "too_early",
        Verdict::Open => "open",
        Verdict::Settled => "settled",
    };
    object! {
        "athlete": &ground.profile.athlete.name,
        "bars": list(ground.bars()),
        "verdict": verdict,
        "next_grip": trial.next.as_ref().map(|next| &next.grip),
        "more_throws": trial.next.as_ref().map(|next| next.more_throws),
        "target": target_data(ground.target),
        "grips": list(trial.grips.iter().map(|grip| grip_data(grip, ground.profile.athlete.throws))),
        "cautions": list(ground.noted(cautions)),
        "set_aside": set_aside_data(ground.session, &ground.session.set_aside),
        "assumptions": list(&ground.profile.assumptions),
    }
}

/// Angles of the dot are as the thrower sees them: plus is clockwise for either hand.
fn grip_data(grip: &Grip, hand: Hand) -> Data {
    let seen = |turn: Estimate| if hand == Hand::Right { turn } else { negated(turn) };
    let dot = grip.dot.map(|dot| {
        object! { "says": dot_error(&dot, hand), "radius": dot.radius, "turn_hours": seen(dot.turn_hours) }
    });
    object! {
        "grip": &grip.name,
        "throws": grip.throws,
        "in_window": grip.in_window.hits,
        "chance_next_in_window": grip.chance_next,
        "chance_best": number(grip.chance_best, 3),
        "speed_mph": grip.speed_mph,
        "vertical_break_in": grip.vertical_break_in,
        "glove_side_break_in": grip.glove_side_break_in,
        "speed_cost_mph": grip.speed_cost_mph,
        "slot_cost_deg": grip.slot_cost_deg,
        "active_fraction_spread": grip.clean.active_fraction_spread,
        "clock_spread_minutes": grip.clean.clock_spread_minutes,
        "wobble": grip.clean.wobble,
        "dot": dot,
        "cues": cues_data(for_grip(grip)),
    }
}

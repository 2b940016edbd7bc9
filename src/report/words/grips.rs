//! A trial of grips, in words.

use crate::base::geometry::Hand;
use crate::base::stats::Estimate;
use crate::learn::trial::{Caution, DotError, DotFault, Grip, MOST_MORE, OUT, SURE, Trial, Verdict};

use super::super::content::amount::{chance, pure, share};
use super::super::content::{Command, Step, Text, name, say, text};

/// A grip's letter in tables, by its place.
pub(crate) fn letter(place: usize) -> String {
    let alphabet = ('A'..='Z').nth(place % 26).unwrap_or('A');
    if place < 26 { alphabet.into() } else { format!("{alphabet}{}", place / 26 + 1) }
}

/// Each grip's letter with what is said of it.
pub(crate) fn lettered<'t>(trial: &'t Trial, say: impl Fn(&'t Grip) -> Text) -> Vec<Text> {
    trial.grips.iter().enumerate().map(|(place, grip)| say!("{}: {}", letter(place), say(grip))).collect()
}

/// Whether there is a winner.
pub(crate) fn headline(trial: &Trial) -> Text {
    let first = trial.grips.first().map_or_else(Text::default, |grip| name(&grip.name));
    match trial.verdict {
        Verdict::Empty => "No throw names its grip, so there is nothing to compare.".into(),
        Verdict::OneGrip => say!("Only one grip was thrown ({}), so there is nothing to compare it with.", first),
        Verdict::TooEarly { needed } => {
            say!("Too early to choose: every grip still in the running needs {} throws.", needed)
        }
        Verdict::Open => say!("No winner yet. Ahead is: {}.", first),
        Verdict::Settled => say!("Keep this grip: {}.", first),
    }
}

/// What to throw next; `watch` is the command that watches the outings.
pub(crate) fn next(trial: &Trial, watch: Command) -> Vec<Step> {
    let Some(next) = &trial.next else {
        return vec![match trial.verdict {
            Verdict::Settled => Step::ask(watch, "throw this grip alone from now on, and watch the outings"),
            Verdict::OneGrip => Step::act("throw a second grip, five throws or more, in turn with the first"),
            _ => Step::act("write the grip of every throw in a column named grip, in plain words"),
        }];
    };
    let grip = trial.grips.iter().position(|grip| grip.name == next.grip).map_or(String::new(), letter);
    let throw = say!("throw {} next: {}", grip, name(&next.grip));
    [throw, more_throws(next.more_throws)].into_iter().chain(out_of_it(trial)).map(Step::act).collect()
}

fn more_throws(more: Estimate) -> Text {
    if more.value >= MOST_MORE {
        return say!(
            "more than {} further throws would be needed to part the best from the next: as far as the shape \
             goes they are equal, so let comfort, speed and slot decide",
            pure(MOST_MORE, 0)
        );
    }
    let high = if more.high >= MOST_MORE { say!("{} or more", pure(MOST_MORE, 0)) } else { text![pure(more.high, 0)] };
    say!(
        "about {} more throws ({} to {}), all grips together, until the best is known with {}",
        pure(more.value, 0),
        pure(more.low, 0),
        high,
        share(SURE)
    )
}

/// The grips that are out of the running, when any is.
fn out_of_it(trial: &Trial) -> Option<Text> {
    let out: Vec<Text> = (0..trial.grips.len())
        .filter(|&place| trial.grips[place].chance_best < OUT)
        .map(|place| letter(place).into())
        .collect();
    let has = if out.len() == 1 { ": it has less than " } else { ": each has less than " };
    (!out.is_empty()).then(|| say!("leave out {}{}{} to be the best", Text::joined(out, " and "), has, chance(OUT)))
}

/// Where a grip's dot shows, as its thrower sees it.
pub(crate) fn dot(grip: &Grip, hand: Hand) -> Text {
    match grip.dot {
        Some(error) => say!("the dot is {}", dot_error(&error, hand)),
        None => "where its dot should be is not known, or its spin was not measured".into(),
    }
}

/// Where a dot is against where it should be, for the one who throws with `hand`.
pub(crate) fn dot_error(error: &DotError, hand: Hand) -> Text {
    let said: Vec<Text> = error.faults().into_iter().map(|fault| dot_fault(error, fault, hand)).collect();
    if said.is_empty() { "where it should be".into() } else { Text::joined(said, "; ") }
}

fn dot_fault(error: &DotError, fault: DotFault, hand: Hand) -> Text {
    let off = pure(error.radius.value.abs(), 2);
    let is_along = (error.turn_hours.value > 0.0) == (hand == Hand::Right);
    match fault {
        DotFault::TooCentral => say!("too near the middle by {} of the radius: too much bullet spin", off),
        DotFault::TooFarOut => say!("too far from the middle by {} of the radius: too little bullet spin", off),
        DotFault::Turned => say!(
            "turned {} of the clock face {} from where the thrower should see it",
            hours_and_minutes(error.turn_hours.value.abs()),
            if is_along { "clockwise" } else { "counter-clockwise" }
        ),
    }
}

fn hours_and_minutes(hours: f64) -> String {
    let minutes = (hours * 60.0).round();
    format!("{}:{:02}", (minutes / 60.0).floor(), minutes % 60.0)
}

/// A doubt about a trial.
pub(crate) fn caution(caution: Caution) -> Text {
    match caution {
        Caution::NoGrip { throws } => say!("{} throws name no grip and are not used", throws),
        Caution::BestIsFar => "even the best grip seldom lands in the window: look beyond the grip".into(),
        Caution::BestIsNotClean => "the best grip does not spin the same twice: clean spin comes first".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_turned_dot_is_said_as_the_thrower_sees_it_and_the_other_hand_sees_the_mirror() {
        let about = |value: f64| Estimate { value, low: value - 0.1, high: value + 0.1 };
        let turned = DotError { radius: Estimate { value: 0.0, low: -0.02, high: 0.02 }, turn_hours: about(-1.25) };
        let says = |hand| dot_error(&turned, hand).to_string();
        assert!(says(Hand::Right).starts_with("turned 1:15 of the clock face counter-clockwise"));
        assert!(says(Hand::Left).starts_with("turned 1:15 of the clock face clockwise"));
    }
}

//! The commands `fit` and `cross-validate`: the program's hitter fitted to the league day.

use std::error::Error;
use std::fmt::Write as _;
use std::path::Path;

use arsenalfit::base::stats::Estimate;
use arsenalfit::hitter::{Known, Reading, known};

use crate::constants::Constants;
use crate::evidence::{Evidence, FOLDS, fold, said_with};
use crate::fit::{Fit, Joint, Law, Prior, ProgramLaw, fit};
use crate::losses::{Losses, Said, table};
use crate::markdown;
use crate::meetings::Meeting;

/// Fits both readings, writes their posterior files and returns the table of parameters.
///
/// # Errors
/// When a file cannot be written.
pub fn fit_both(evidence: &Evidence, into: &Path) -> Result<String, Box<dyn Error>> {
    let mut text = String::new();
    for (reading, name) in Reading::ALL.into_iter().zip(["shares", "crowd"]) {
        let law = ProgramLaw::new(reading);
        let found = fit(&law, &evidence.meetings, None);
        std::fs::write(into.join(format!("posterior-{name}.csv")), posterior_file(name, &law, &found))?;
        let steps = found.steps;
        writeln!(text, "reading \"{name}\": {:.2} nats with the priors, after {steps} steps\n", found.nats)?;
        text += &parameter_table(&law, &found);
        text.push('\n');
    }
    Ok(text)
}

/// Name, mean and the covariance with this row and all before it.
fn posterior_file(name: &str, law: &ProgramLaw, found: &Fit) -> String {
    let head = format!(
        "# The fitted hitter, reading \"{name}\": the posterior of the transformed parameters (transforms in parameters.csv).\n\
         # One row a free parameter, in the order of parameters.csv: name, mean, then the covariance with it and all before it.\n\
         # Written by `cargo run --release -p arsenalfit-lab -- fit`.\n"
    );
    let row = |(row, prior): (usize, &Prior)| {
        let covariances: Vec<String> =
            (0..=row).map(|column| rounded(found.covariance[[row, column]]).to_string()).collect();
        format!("{},{},{}\n", prior.name, found.transformed[row], covariances.join(","))
    };
    head + &law.priors().iter().enumerate().map(row).collect::<String>()
}

/// Seven digits, which is more than the fit knows.
fn rounded(value: f64) -> f64 {
    format!("{value:.6e}").parse().unwrap_or(value)
}

/// The parameters: value, 90 % interval, and how much the throws narrowed the prior.
fn parameter_table(law: &ProgramLaw, found: &Fit) -> String {
    let row = |known: &Known| {
        let place = law.priors().iter().position(|prior| prior.name == known.name);
        let told = place.map_or_else(|| pinned(known), |place| fitted(known, found, place));
        [known.name.to_owned(), known.unit.to_owned()].into_iter().chain(told).collect()
    };
    let header = ["parameter", "unit", "value", "90 % interval", "sd against the prior's"];
    markdown::table(&header, known().iter().map(row))
}

fn fitted(known: &Known, found: &Fit, place: usize) -> [String; 3] {
    let sd = found.covariance[[place, place]].sqrt();
    let estimate = Estimate::from_sd(found.transformed[place], sd).map(|value| known.transform.back(value));
    let Estimate { value, low, high } = estimate;
    [format!("{value:.3}"), format!("{low:.3} to {high:.3}"), format!("{:.2}", sd / known.prior_sd)]
}

fn pinned(known: &Known) -> [String; 3] {
    [known.pinned.unwrap_or(known.prior).to_string(), "pinned".to_owned(), String::new()]
}

/// Losses on games left out, of both readings, their mean, and constants of the other games.
pub fn cross_validate(evidence: &Evidence) -> String {
    let by_reading = Reading::ALL.map(|reading| held_out(&ProgramLaw::new(reading), &evidence.meetings));
    let [shares, crowd] = &by_reading;
    let both: Vec<Joint> = shares.iter().zip(crowd).map(|(one, other)| Joint::mean([*one, *other])).collect();
    let said = |joints: &[Joint]| losses(&evidence.meetings, |place, meeting| said_with(joints[place], meeting));
    let constants: Vec<Constants> =
        (0..FOLDS).map(|part| Constants::of(&evidence.day, |throw| fold(throw.game) != part)).collect();
    let averages = losses(&evidence.meetings, |_, meeting| constants[fold(meeting.game)].said(evidence.throw(meeting)));
    table(&[
        ("reading \"shares\"", said(shares)),
        ("reading \"crowd\"", said(crowd)),
        ("both, as the program asks them", said(&both)),
        ("constants by pitch and side", averages),
    ])
}

/// Chances of every meeting by a hitter fitted to the other games.
pub fn held_out<L: Law>(law: &L, meetings: &[Meeting]) -> Vec<Joint> {
    let all = fit(law, meetings, None);
    let mut said = vec![Joint { swing: 0.0, contact: 0.0, solid: 0.0 }; meetings.len()];
    for part in 0..FOLDS {
        let others: Vec<Meeting> = meetings.iter().filter(|meeting| fold(meeting.game) != part).cloned().collect();
        // The fit to all games is only where the steps begin; where they end is up to the others.
        let hitter = law.hitter(&fit(law, &others, Some(&all.transformed)).transformed);
        for (said, meeting) in said.iter_mut().zip(meetings).filter(|(_, meeting)| fold(meeting.game) == part) {
            *said = law.meet(&hitter, meeting);
        }
    }
    said
}

fn losses(meetings: &[Meeting], said: impl Fn(usize, &Meeting) -> Said) -> Losses {
    Losses::of(meetings.iter().enumerate().map(|(place, meeting)| (said(place, meeting), meeting.seen)))
}

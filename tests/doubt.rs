//! Doubt held to account: intervals that hold what they claim on made-up athletes, and the table of
//! what a worth leans on.

use arsenalfit::decide::advice::{Question, advise};
use arsenalfit::decide::coverage::simulate;
use arsenalfit::decide::why::{Assumption, why};
use arsenalfit::files::read_profile;

/// 90 % nominal. With 40 athletes a true 90 % gives fewer than 30 or all 40 covered about once in a
/// hundred; `arsenalfit coverage` prints the figures for more.
#[test]
fn intervals_of_worth_hold_the_truth_about_as_often_as_they_claim() {
    let cases = simulate(40, 7);
    let covered = cases.iter().filter(|case| case.is_covered()).count();
    assert!(cases.len() >= 36, "a sweeper is in reach of nearly everybody: {}", cases.len());
    assert!(covered * 100 >= cases.len() * 78, "{covered} of {}", cases.len());
    assert_eq!(cases, simulate(40, 7), "the same seed makes up the same athletes");
}

#[test]
fn a_pitch_that_is_added_really_saves_runs() {
    let added: Vec<_> = simulate(40, 11).into_iter().filter(|case| case.verdict() == 2).collect();
    let right = added.iter().filter(|case| case.is_worth_it()).count();
    assert!(added.len() > 10 && right * 10 >= added.len() * 9, "{right} of {}", added.len());
}

#[test]
fn what_a_worth_leans_on_is_ranked_and_holds_the_worth_itself() {
    let profile = read_profile("profiles/three-quarter-right.toml".as_ref()).expect("a profile");
    let advice = advise(&profile, Question { draws: 32, ..Question::DEFAULT });
    let target = advice.target.as_ref().expect("a pitch to chase");
    let shown = target.worth.overall.value;
    let why = why(&advice).expect("a pitch to chase");
    let reach: Vec<f64> = why.levers.iter().map(|lever| lever.best - lever.worst).collect();
    assert!(reach.windows(2).all(|pair| pair[0] >= pair[1]), "{reach:?}");
    assert_eq!(why.levers.first().map(|lever| lever.assumption), Some(Assumption::NewCommand));
    let command = why.levers[0];
    assert!(command.worst < shown && shown < command.best, "{command:?} about {shown}");
    let limit = why.command_limit_in.expect("loose enough command makes it a trifle");
    assert!((9.5..19.0).contains(&limit), "{limit} in");
}

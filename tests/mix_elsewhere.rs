//! Mixes of real arsenals against an independent solver: scipy, which knows nothing of the model and
//! only asks for the runs of one mix after another (`data/solve_mixes.py`).
//!
//! Fifty problems: each shipped profile with each of five further pitches, against either side. The
//! answers are committed in `data/mixes_elsewhere.json`; after a change of the model write them anew
//! (needs Python with scipy, a few seconds) with
//! `cargo test --locked --test mix_elsewhere -- --ignored`.

#[expect(dead_code, reason = "other tests use the rest of it")]
#[path = "common/standard.rs"]
mod standard;

use std::io::{BufRead, BufReader, Write};
use std::process::{Command, Stdio};

use arsenalfit::ball::Family;
use arsenalfit::base::geometry::Side;
use arsenalfit::former::evaluate::{Chosen, SidePlan, Stage, Today};
use arsenalfit::former::mix::Bounds;
use serde::{Deserialize, Serialize};
use serde_json::json;

use standard::{shipped, typical};

const ANSWERS: &str = "tests/data/mixes_elsewhere.json";
const FAMILIES: [Family; 5] = [Family::Sweeper, Family::Slider, Family::Curveball, Family::Changeup, Family::Splitter];

/// What the other solver found.
#[derive(Debug, Serialize, Deserialize)]
struct Answer {
    problem: String,
    shares: Vec<f64>,
    runs_per_100: f64,
}

/// Every problem: its name, its bounds, and our answer with the means to ask for any mix's runs.
fn for_every_problem(mut visit: impl FnMut(&str, &Bounds, &Chosen)) {
    for (whose, profile) in shipped() {
        let stage = Stage::new(&profile);
        let today = Today::of(&stage);
        for (index, family) in FAMILIES.into_iter().enumerate() {
            let mut new = typical(&stage, family);
            // From sharper than his other pitches to looser, so that mixes differ.
            let command = 0.6 + 0.15 * f64::from(u8::try_from(index).expect("few families"));
            new.spread.command_side_in *= command;
            new.spread.command_height_in *= command;
            for side in Side::BOTH {
                let plan: &SidePlan = today.plans.on(side);
                let chosen = plan.choose(&stage, &new, plan.aim_for(&stage, &new));
                visit(&format!("{whose}, {family}, {side}"), &stage.bounds(Some(family)), &chosen);
            }
        }
    }
}

fn runs_per_100(chosen: &Chosen, shares: &[f64]) -> f64 {
    100.0 * (chosen.facing.expected(shares).runs + chosen.own.runs(shares))
}

/// Tolerance: 1e-4 of the value, as good as the answers are used.
#[test]
fn fifty_mixes_of_real_arsenals_are_what_an_independent_solver_found() {
    let text = std::fs::read_to_string(ANSWERS).expect("the committed answers");
    let mut answers = serde_json::from_str::<Vec<Answer>>(&text).expect("a list of answers").into_iter();
    for_every_problem(|problem, _, chosen| {
        let theirs = answers.next().expect("as many answers as problems");
        assert_eq!(theirs.problem, problem);
        let again = runs_per_100(chosen, &theirs.shares);
        assert!((again - theirs.runs_per_100).abs() < 1e-6, "{problem}: the model has changed; write the answers anew");
        let ours = 100.0 * chosen.mix.runs;
        assert!(
            (ours / again - 1.0).abs() < 1e-4,
            "{problem}: {ours} with {:?}, but {again} elsewhere with {:?}",
            chosen.mix.shares,
            theirs.shares
        );
    });
    assert!(answers.next().is_none());
}

#[test]
#[ignore = "writes the committed answers; needs Python with scipy and a few seconds"]
fn write_the_answers_of_the_other_solver() {
    let mut other = Command::new("python3")
        .arg("tests/data/solve_mixes.py")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("python3 runs");
    let mut tell = other.stdin.take().expect("a pipe");
    let mut lines = BufReader::new(other.stdout.take().expect("a pipe")).lines();
    let mut answers = Vec::new();
    for_every_problem(|problem, bounds, chosen| {
        let Bounds { caps, fastballs, breaking } = bounds;
        let rules = json!({
            "caps": caps,
            "fastballs": fastballs.members,
            "fastball_floor": fastballs.bound,
            "breaking": breaking.members,
            "breaking_cap": breaking.bound,
        });
        writeln!(tell, "{rules}").expect("the solver listens");
        let shares = loop {
            let line = lines.next().expect("the solver speaks").expect("text");
            let shares: Vec<f64> = line[2..].split(' ').map(|share| share.parse().expect("a number")).collect();
            if line.starts_with('=') {
                break shares;
            }
            writeln!(tell, "{:.17e}", chosen.facing.expected(&shares).runs + chosen.own.runs(&shares))
                .expect("it listens");
        };
        answers.push(Answer { problem: problem.to_owned(), runs_per_100: runs_per_100(chosen, &shares), shares });
    });
    drop(tell);
    assert!(other.wait().expect("the solver ends").success());
    let rows: Vec<String> = answers.iter().map(|answer| serde_json::to_string(answer).expect("JSON")).collect();
    std::fs::write(ANSWERS, format!("[\n{}\n]\n", rows.join(",\n"))).expect("written");
}

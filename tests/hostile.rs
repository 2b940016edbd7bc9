//! Files and command lines as people really send them, each with the end it must have. The table
//! stands in `tests/hostile/*.toml`; every case is a line of a shell in a folder of its own.
//!
//! A case says what stands in the folder (`files`, where `{name}` is a text of the same table), the
//! line to run, how it exits (0 unless said), words that must stand in the answer (`answers`) or on
//! standard error (`says`), words that must stand in neither (`never`), and what the folder holds
//! afterwards (`holds`, `gone`).
#![cfg(unix)]

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use serde::Deserialize;

/// What stands in every folder: shipped files by the names they have there.
const SHIPPED: [(&str, &str); 9] = [
    ("athlete.toml", include_str!("../profiles/three-quarter-right.toml")),
    ("left.toml", include_str!("../profiles/high-slot-left.toml")),
    ("young.toml", include_str!("../profiles/fourteen-year-old.toml")),
    ("throws.csv", include_str!("../demo-data/session-2031-02-03.csv")),
    ("trial.csv", include_str!("../demo-data/trial-four-grips.csv")),
    ("week.csv", include_str!("../demo-data/progress-week-1.csv")),
    ("week-4.csv", include_str!("../demo-data/progress-week-4.csv")),
    ("week-5.csv", include_str!("../demo-data/progress-week-5.csv")),
    ("week-6.csv", include_str!("../demo-data/progress-week-6.csv")),
];
/// What one case may take; a developer's build on a busy machine.
const PATIENCE: Duration = Duration::from_mins(1);
/// The least number of cases: the table only grows.
const CASES: usize = 300;

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Table {
    /// Texts that files of this table share.
    #[serde(default)]
    text: BTreeMap<String, String>,
    case: Vec<Case>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    name: String,
    #[serde(default)]
    files: BTreeMap<String, String>,
    run: String,
    #[serde(default)]
    exit: i32,
    #[serde(default)]
    answers: Vec<String>,
    #[serde(default)]
    says: Vec<String>,
    #[serde(default)]
    never: Vec<String>,
    #[serde(default)]
    holds: BTreeMap<String, String>,
    #[serde(default)]
    gone: Vec<String>,
}

/// Every case, with the texts of its table put in.
fn cases() -> Vec<Case> {
    let mut files: Vec<_> =
        fs::read_dir("tests/hostile").expect("the tables").map(|e| e.expect("one").path()).collect();
    files.sort();
    let mut cases = Vec::new();
    for file in files {
        let text = fs::read_to_string(&file).expect("a table");
        let table: Table = toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        for mut case in table.case {
            for text in case.files.values_mut() {
                for (name, shared) in &table.text {
                    *text = text.replace(&format!("{{{name}}}"), shared);
                }
            }
            cases.push(case);
        }
    }
    cases
}

fn run(case: &Case, folder: &Path) -> Output {
    for (name, text) in SHIPPED {
        fs::write(folder.join(name), text).expect("a file");
    }
    for (name, text) in &case.files {
        let path = folder.join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        fs::write(path, text).expect("a file");
    }
    let programs = assert_cmd::cargo::cargo_bin("arsenalfit").parent().expect("a folder").to_owned();
    let path = format!("{}:{}", programs.display(), std::env::var("PATH").unwrap_or_default());
    let mut bash = Command::new("bash");
    bash.args(["-o", "pipefail", "-c", &case.run]).current_dir(folder).stdin(std::process::Stdio::null());
    bash.env("PATH", path).env("COLUMNS", "80").env_remove("NO_COLOR").env_remove("RAYON_NUM_THREADS");
    bash.output().expect("bash runs")
}

/// What is wrong with how a case ended.
fn faults(case: &Case) -> Vec<String> {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let started = Instant::now();
    let output = run(case, folder.path());
    let mut faults = Vec::new();
    let mut hold = |holds: bool, fault: String| {
        if !holds {
            faults.push(fault);
        }
    };
    let (answer, said) = (text(&output.stdout), text(&output.stderr));
    let (flat_answer, flat_said) = (flat(&answer), flat(&said));
    hold(started.elapsed() < PATIENCE, format!("took {:?}", started.elapsed()));
    hold(output.status.code() == Some(case.exit), format!("exits with {:?}, not {}", output.status.code(), case.exit));
    for words in &case.answers {
        hold(flat_answer.contains(&flat(words)), format!("does not answer \"{words}\""));
    }
    for words in &case.says {
        hold(flat_said.contains(&flat(words)), format!("does not say \"{words}\""));
    }
    for words in case.never.iter().map(String::as_str).chain(["panicked", "NaN"]) {
        hold(!flat_answer.contains(&flat(words)) && !flat_said.contains(&flat(words)), format!("shows \"{words}\""));
    }
    for (name, words) in &case.holds {
        let found = fs::read_to_string(folder.path().join(name)).unwrap_or_default();
        hold(found.contains(words), format!("{name} does not hold \"{words}\""));
    }
    for name in &case.gone {
        hold(!folder.path().join(name).exists(), format!("{name} is there"));
    }
    for (stream, shown) in [("answer", &answer), ("standard error", &said)] {
        hold(!shown.contains(steers), format!("the {stream} steers the terminal"));
        hold(!has_minus_zero(shown), format!("the {stream} holds a -0"));
    }
    if case.exit == 2 {
        hold(said.contains("error: "), "no error is told".into());
        hold(said.contains("must be ") || said.contains("hint: "), "the error says no cure".into());
    }
    if !faults.is_empty() {
        faults.push(format!("$ {}\n{answer}\n{said}", case.run));
    }
    faults
}

/// Without spaces and ends of lines, which depend on the width.
fn flat(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace()).collect()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// Control characters, and those that turn a line around.
fn steers(c: char) -> bool {
    (c.is_control() && !matches!(c, '\n' | '\t'))
        || matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// A zero with a minus, such as -0, -0.0 or −0.
fn has_minus_zero(text: &str) -> bool {
    let is_zero = |rest: &str| {
        let number: String = rest.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
        let number = number.trim_end_matches('.');
        !number.is_empty() && number.chars().all(|c| matches!(c, '0' | '.'))
    };
    let starts = |at: usize| text[..at].chars().next_back().is_none_or(|before| !before.is_alphanumeric());
    text.match_indices(['-', '\u{2212}']).any(|(at, sign)| starts(at) && is_zero(&text[at + sign.len()..]))
}

#[test]
fn every_hostile_case_ends_as_the_table_says() {
    let cases = cases();
    let next = AtomicUsize::new(0);
    let work = || {
        let mut found = Vec::new();
        while let Some(case) = cases.get(next.fetch_add(1, Ordering::Relaxed)) {
            let faults = faults(case);
            if !faults.is_empty() {
                found.push(format!("## {}\n- {}", case.name, faults.join("\n- ")));
            }
        }
        found
    };
    let hands = std::thread::available_parallelism().map_or(1, usize::from);
    let found: Vec<String> = std::thread::scope(|scope| {
        let hands: Vec<_> = (0..hands).map(|_| scope.spawn(work)).collect();
        hands.into_iter().flat_map(|hand| hand.join().expect("a hand")).collect()
    });
    assert!(found.is_empty(), "{} of {} cases:\n{}", found.len(), cases.len(), found.join("\n"));
    assert!(cases.len() >= CASES, "{} cases", cases.len());
}

#[test]
fn no_two_cases_have_one_name() {
    let mut names: Vec<String> = cases().into_iter().map(|case| case.name).collect();
    names.sort();
    let twice: Vec<&String> = names.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| &pair[0]).collect();
    assert!(twice.is_empty(), "{twice:?}");
}

#[test]
fn a_minus_zero_is_seen() {
    for text in ["-0", "a -0.0 b", "(-0.00)", "\u{2212}0 in"] {
        assert!(has_minus_zero(text), "{text}");
    }
    for text in ["2031-02-03", "-0.5", "90-0", "-10", "a-0"] {
        assert!(!has_minus_zero(text), "{text}");
    }
}

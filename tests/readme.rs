//! What the README shows is what the program says, and what it tells to type works.

#[path = "common/shell.rs"]
mod shell;

use assert_cmd::Command;
use shell::{Place, lines_of};

/// Lines that build or test this very program: they run before, around or instead of this test.
const BUILDING: [&str; 2] = ["cargo test --locked", "cargo install --locked --path ."];
const RUNNING: &str = "cargo run --release --locked -- ";

fn readme() -> String {
    std::fs::read_to_string("README.md").expect("the README")
}

/// What stands in the fenced blocks of a kind.
fn blocks(kind: &str) -> Vec<String> {
    let (readme, opening) = (readme(), format!("```{kind}\n"));
    let opened = readme.split(opening.as_str()).skip(1);
    opened.filter_map(|rest| rest.split("```").next()).map(str::to_owned).collect()
}

#[test]
fn the_run_in_the_readme_is_what_the_program_prints_today() {
    let output = Command::cargo_bin("arsenalfit")
        .expect("the program")
        .env("COLUMNS", "80")
        .args(["advise", "profiles/three-quarter-right.toml"])
        .output()
        .expect("it runs");
    assert_eq!(blocks("text")[0], String::from_utf8_lossy(&output.stdout));
}

#[test]
fn the_profile_in_the_readme_is_a_valid_one() {
    arsenalfit::files::profile_from_toml(&blocks("toml")[0], "README.md").expect("it loads");
}

#[test]
fn the_column_map_in_the_readme_is_a_valid_one() {
    arsenalfit::files::ColumnMap::from_toml(&blocks("toml")[1], "README.md").expect("it loads");
}

#[test]
fn every_line_that_the_readme_tells_to_type_works() {
    let lines: Vec<String> = blocks("sh").iter().flat_map(|block| lines_of(block)).collect();
    let place = Place::new();
    let mut run = 0;
    for line in lines.iter().filter(|line| !BUILDING.contains(&line.as_str())) {
        let line = line.replace(RUNNING, "arsenalfit ");
        assert!(line.starts_with("arsenalfit "), "neither run nor known: {line}");
        place.run(&line);
        run += 1;
    }
    assert!(run >= 4, "only {run} lines were found");
}

#[test]
fn every_command_named_in_the_running_text_is_understood() {
    let readme = readme();
    let outside: String = readme.split("```").step_by(2).collect();
    let spans = outside.split('`').skip(1).step_by(2).filter(|span| span.starts_with("arsenalfit "));
    let place = Place::new();
    let ran: Vec<&str> = spans.inspect(|span| drop(place.run(span))).collect();
    assert!(!ran.is_empty(), "the README names no whole command");
}

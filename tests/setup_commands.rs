//! What the program says about itself: completions that the shells load, manual pages of every
//! command, the schema.

use std::fs;
use std::process::Command as Process;

use assert_cmd::Command;
use predicates::prelude::*;

fn arsenalfit(arguments: &[&str]) -> Command {
    let mut command = Command::cargo_bin("arsenalfit").expect("the program");
    command.args(arguments);
    command
}

fn answer(arguments: &[&str]) -> String {
    let output = arsenalfit(arguments).output().expect("it runs");
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success() && said.lines().all(|line| line.starts_with("wrote ")), "{said}");
    String::from_utf8(output.stdout).expect("text")
}

const COMMANDS: [&str; 15] = [
    "check",
    "sort",
    "apart",
    "usage",
    "advise",
    "dot",
    "compare",
    "roster",
    "new",
    "trial",
    "progress",
    "plan",
    "completions",
    "man",
    "schema",
];

#[test]
fn every_shell_gets_every_command_and_nothing_hidden() {
    for shell in ["bash", "zsh", "fish", "powershell", "elvish"] {
        let script = answer(&["completions", shell]);
        for word in COMMANDS.iter().chain(&["target", "report"]) {
            assert!(script.contains(word), "{shell}: {word}");
        }
        // These two shells complete no words of an option.
        let has_words = script.contains("four-seam") && script.contains("left");
        assert_eq!(has_words, !["powershell", "elvish"].contains(&shell), "{shell}");
        assert!(!script.contains("calibrate") && !script.contains("coverage"), "{shell}");
    }
    arsenalfit(&["completions", "tcsh"]).assert().code(2).stdout("");
}

/// What bash offers for a line whose last word is half typed.
fn offered_by_bash(words: &[&str]) -> Vec<String> {
    let (last, before) = words.split_last().expect("a word");
    let script = format!(
        "{}\nCOMP_WORDS=({} '{last}'); COMP_CWORD={}\n_arsenalfit arsenalfit '{last}' {}\nprintf '%s\\n' \"${{COMPREPLY[@]}}\"",
        answer(&["completions", "bash"]),
        before.join(" "),
        before.len(),
        before[before.len() - 1],
    );
    let output = Process::new("bash").args(["--norc", "-c", &script]).output().expect("bash runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8_lossy(&output.stdout).split_whitespace().map(str::to_owned).collect()
}

#[test]
fn bash_completes_commands_options_and_words() {
    assert_eq!(offered_by_bash(&["arsenalfit", "pl"]), ["plan"]);
    assert_eq!(offered_by_bash(&["arsenalfit", "advise", "--fam"]), ["--family"]);
    assert_eq!(
        offered_by_bash(&["arsenalfit", "advise", "--family", "s"]),
        ["sinker", "slider", "sweeper", "splitter"]
    );
    assert_eq!(offered_by_bash(&["arsenalfit", "dot", "--throws", "l"]), ["left"]);
}

#[test]
fn every_command_has_a_manual_page_with_its_question_and_examples() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let pages = folder.path().join("new/man1");
    let told = answer(&["man", "--dir", &pages.to_string_lossy()]);
    assert!(told.contains("arsenalfit.1"), "{told}");
    assert_eq!(fs::read_dir(&pages).expect("the pages").count(), COMMANDS.len() + 1, "one each, and the whole");
    for command in COMMANDS {
        let page = fs::read_to_string(pages.join(format!("arsenalfit-{command}.1"))).expect("a page");
        assert!(page.contains(&format!(".TH arsenalfit-{command} 1  \"arsenalfit ")), "{page}");
        assert!(page.contains('?') && page.contains("Examples:"), "{command}");
        assert_eq!(page, answer(&["man", command]), "{command} alone is the same page");
    }
    let whole = fs::read_to_string(pages.join("arsenalfit.1")).expect("the page of the whole");
    assert_eq!(whole, answer(&["man"]));
    assert!(!whole.contains("calibrate"), "what is hidden has no page");
}

#[test]
fn a_page_of_nothing_and_a_folder_that_cannot_be_are_told() {
    arsenalfit(&["man", "advice"]).assert().code(2).stdout("").stderr(predicate::str::contains("advise"));
    arsenalfit(&["man", "--dir", "Cargo.toml/man1"])
        .assert()
        .code(2)
        .stderr(predicate::str::contains("Cargo.toml/man1"));
}

#[test]
fn the_schema_is_json_that_names_its_draft() {
    let schema: serde_json::Value = serde_json::from_str(&answer(&["schema"])).expect("JSON");
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    assert!(schema["properties"]["pitch"]["items"]["properties"]["speed_mph"]["maximum"].is_number());
}

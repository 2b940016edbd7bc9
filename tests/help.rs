//! Each command's help: it opens with the question the command answers, fits the screen, ends in
//! examples, and every example runs on the shipped files.

#[path = "common/shell.rs"]
mod shell;

use assert_cmd::Command;
use shell::{Place, lines_of};

fn help(columns: u16, command: &[&str]) -> String {
    let mut program = Command::cargo_bin("arsenalfit").expect("the program");
    let output =
        program.env("COLUMNS", columns.to_string()).args(command).arg("--help").output().expect("the program runs");
    assert!(output.status.success() && output.stderr.is_empty(), "{command:?}");
    String::from_utf8(output.stdout).expect("text")
}

/// The commands that the main help lists, without `help` itself.
fn commands() -> Vec<String> {
    let main = help(80, &[]);
    let list = main.split("Commands:\n").nth(1).and_then(|rest| rest.split("\n\n").next()).expect("a list");
    let begins = list.lines().filter_map(|line| line.strip_prefix("  ").filter(|line| !line.starts_with(' ')));
    let names = begins.filter_map(|line| line.split_whitespace().next()).filter(|name| *name != "help");
    names.map(str::to_owned).collect()
}

/// The examples at the end of a help.
fn examples(help: &str) -> Vec<String> {
    let block = help.split("\nExamples:\n").nth(1).and_then(|rest| rest.split("\n\n").next()).unwrap_or_default();
    lines_of(block)
}

fn width(text: &str) -> usize {
    text.lines().map(|line| line.chars().count()).max().unwrap_or(0)
}

fn words(text: &str) -> Vec<&str> {
    text.split_whitespace().collect()
}

#[test]
fn every_help_opens_with_a_question_and_shows_examples() {
    let commands = commands();
    assert!(commands.len() >= 15, "{commands:?}");
    for command in commands {
        let text = help(80, &[&command]);
        let opening = text.split("\n\n").next().unwrap_or_default();
        assert!(opening.contains('?'), "{command} opens with no question: {opening}");
        assert!(!examples(&text).is_empty(), "{command} shows no example");
        insta::assert_snapshot!(format!("help-{command}-80"), text);
    }
}

#[test]
fn every_help_fits_a_narrow_and_a_wide_screen_and_says_the_same_on_both() {
    let mut each: Vec<Vec<String>> = commands().into_iter().map(|command| vec![command]).collect();
    each.push(Vec::new());
    for command in each {
        let command: Vec<&str> = command.iter().map(String::as_str).collect();
        let (narrow, wide) = (help(80, &command), help(120, &command));
        assert!(width(&narrow) <= 80, "{command:?}: {}", width(&narrow));
        assert!(width(&wide) <= 120, "{command:?}: {}", width(&wide));
        assert_eq!(words(&narrow), words(&wide), "{command:?}");
    }
}

#[test]
fn every_example_of_every_help_runs() {
    let mut shown = examples(&help(80, &[]));
    for command in commands() {
        let own = examples(&help(80, &[&command]));
        let begin = format!("arsenalfit {command} ");
        assert!(own.iter().all(|line| format!("{line} ").starts_with(&begin)), "{command}: {own:?}");
        shown.extend(own);
    }
    for line in shown {
        // A place of its own: an example may write a file that another finds there already.
        Place::new().run(&line);
    }
}

//! The program itself, run the way its users run it.

use assert_cmd::Command;

/// The program with these arguments, at so many columns.
pub(crate) fn arsenalfit(columns: u16, arguments: &[&str]) -> Command {
    let mut command = Command::cargo_bin("arsenalfit").expect("the program");
    command.env("COLUMNS", columns.to_string()).env_remove("NO_COLOR").args(arguments);
    command
}

/// Its answer, which must be one.
pub(crate) fn answer(columns: u16, arguments: &[&str]) -> String {
    let output = arsenalfit(columns, arguments).output().expect("it runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(said.lines().all(|line| line.starts_with("wrote ")), "an answer leaves standard error alone: {said}");
    String::from_utf8(output.stdout).expect("text")
}

/// Columns of the widest line; a command to give next stays on one line, however long, to be copied.
#[allow(dead_code, reason = "not every test measures")]
pub(crate) fn widest(text: &str) -> usize {
    let is_command = |line: &&str| line.starts_with("- `");
    text.lines().filter(|line| !is_command(line)).map(|line| line.chars().count()).max().unwrap_or(0)
}

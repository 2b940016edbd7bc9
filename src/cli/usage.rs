//! A command line the parser refused: its own words, set in the program's voice. What is wrong with a
//! value is told by the value's own reader.

use std::error::Error as _;

use clap::error::{ContextKind, ContextValue, Error, ErrorKind};

use super::Failure;

impl From<&Error> for Failure {
    fn from(error: &Error) -> Self {
        match error.kind() {
            ErrorKind::InvalidValue | ErrorKind::ValueValidation => wrong_value(error),
            _ => as_said(error),
        }
    }
}

/// The parser's first sentence, and its tip or else how the command is written.
fn as_said(error: &Error) -> Failure {
    let text = error.to_string();
    let parts: Vec<&str> = text.split("\n\n").map(str::trim).collect();
    let problem = parts.first().copied().unwrap_or_default().trim_start_matches("error: ");
    let problem = problem.split_whitespace().collect::<Vec<_>>().join(" ");
    let said =
        |begin: &str| parts.iter().find_map(|part| part.strip_prefix(begin)).and_then(|part| part.lines().next());
    let hint = match (said("tip: "), said("Usage: ")) {
        (Some(tip), _) => tip.to_owned(),
        (None, Some(usage)) => format!("write {usage}"),
        (None, None) => "--help lists what can be said".to_owned(),
    };
    Failure::request(problem, hint)
}

/// The value of an option is wrong or absent. Our own readers answer with what is allowed and, on a
/// second line, a hint.
fn wrong_value(error: &Error) -> Failure {
    let argument = context(error, ContextKind::InvalidArg);
    let argument = argument.split(" <").next().unwrap_or_default().trim_matches(['<', '>', '[', ']', '.']);
    let found = context(error, ContextKind::InvalidValue);
    let problem = if found.is_empty() { format!("{argument} is empty") } else { format!("{argument} is \"{found}\"") };
    let words = context(error, ContextKind::ValidValue);
    let of_reader = error.source().map(ToString::to_string).unwrap_or_default();
    let (allowed, hint) = of_reader.split_once('\n').unwrap_or((of_reader.as_str(), ""));
    let allowed = match (allowed, words.as_str()) {
        ("", "") => "followed by a value".to_owned(),
        ("", words) => format!("one of {words}"),
        (allowed, _) => allowed.to_owned(),
    };
    Failure::Request { problem, allowed, hint: hint.to_owned() }
}

/// One or more words of what was said.
fn context(error: &Error, kind: ContextKind) -> String {
    match error.get(kind) {
        Some(ContextValue::String(text)) => text.clone(),
        Some(ContextValue::Strings(texts)) => texts.join(", "),
        _ => String::new(),
    }
}

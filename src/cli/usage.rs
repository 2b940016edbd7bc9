//! A command line the parser refused, told in our own words.

use std::error::Error as _;

use clap::error::{ContextKind, ContextValue, Error, ErrorKind};

use super::Failure;

impl From<&Error> for Failure {
    fn from(error: &Error) -> Self {
        let said = Said(error);
        let argument = plain(&said.text(ContextKind::InvalidArg));
        match error.kind() {
            ErrorKind::InvalidValue | ErrorKind::ValueValidation => said.wrong_value(&argument),
            ErrorKind::MissingRequiredArgument => {
                Self::request(format!("{argument} is missing"), format!("write {}", said.usage()))
            }
            ErrorKind::UnknownArgument => {
                Self::request(format!("{argument} is not known here"), said.offer(ContextKind::SuggestedArg))
            }
            ErrorKind::InvalidSubcommand => {
                let found = said.text(ContextKind::InvalidSubcommand);
                let hint = said.offer(ContextKind::SuggestedSubcommand);
                Self::request(format!("{found} is not a known command"), hint)
            }
            ErrorKind::ArgumentConflict => {
                let other = plain(&said.text(ContextKind::PriorArg));
                let problem = if other == argument {
                    format!("{argument} is given twice")
                } else {
                    format!("{argument} is given beside {other}")
                };
                Self::request(problem, "leave one of them out")
            }
            _ => {
                let text = error.to_string();
                let first = text.lines().next().unwrap_or_default();
                Self::request(first.trim_start_matches("error: "), "--help lists what can be said")
            }
        }
    }
}

struct Said<'e>(&'e Error);

impl Said<'_> {
    /// The value of an option is wrong or absent. Our own parsers answer with what is allowed and,
    /// on a second line, a hint.
    fn wrong_value(&self, argument: &str) -> Failure {
        let found = self.text(ContextKind::InvalidValue);
        let problem =
            if found.is_empty() { format!("{argument} is empty") } else { format!("{argument} is \"{found}\"") };
        let names = self.text(ContextKind::ValidValue);
        let of_parser = self.0.source().map(ToString::to_string).unwrap_or_default();
        let (allowed, hint) = of_parser.split_once('\n').unwrap_or((of_parser.as_str(), ""));
        let allowed = match (allowed, names.as_str()) {
            ("", "") => "followed by a value".to_owned(),
            ("", names) => format!("one of {names}"),
            (allowed, _) => allowed.to_owned(),
        };
        Failure::Request { problem, allowed, hint: hint.to_owned() }
    }

    /// One or more words of what was said.
    fn text(&self, kind: ContextKind) -> String {
        match self.0.get(kind) {
            Some(ContextValue::String(text)) => text.clone(),
            Some(ContextValue::Strings(texts)) => texts.join(", "),
            Some(ContextValue::StyledStr(text)) => text.to_string(),
            _ => String::new(),
        }
    }

    fn offer(&self, kind: ContextKind) -> String {
        let near = self.text(kind);
        let nearest = near.split(", ").last().unwrap_or_default();
        if nearest.is_empty() { "--help lists what can be said".into() } else { format!("did you mean {nearest}?") }
    }

    fn usage(&self) -> String {
        self.text(ContextKind::Usage).trim_start_matches("Usage:").trim().to_owned()
    }
}

/// An argument as people call it: `--family <PITCH>` is --family, `<A|B>` is A or B.
fn plain(argument: &str) -> String {
    let name =
        |one: &str| one.split(" <").next().unwrap_or_default().trim_matches(['<', '>', '[', ']', '.']).to_owned();
    argument.split('|').map(name).collect::<Vec<_>>().join(" or ")
}

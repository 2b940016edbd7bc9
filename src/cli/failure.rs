//! Why a command gave no answer, in one voice, and the exit code that goes with it.

use std::io;
use std::path::Path;

use crate::files::{InputError, Told};

/// Why a command gave no answer.
#[derive(Debug)]
pub enum Failure {
    /// A file to mend.
    Input(InputError),
    /// A command line to mend.
    Request {
        /// What is wrong, with the value found.
        problem: String,
        /// What is allowed, completing "must be"; may be empty.
        allowed: String,
        /// How to mend it.
        hint: String,
    },
    /// Some files are to mend; the answer about the others stands.
    InPart {
        /// About the good ones.
        answer: String,
        /// What is wrong with the others.
        bad: Vec<InputError>,
    },
    /// A finding says stop, and `--strict` asks to fail then; the answer stands.
    Stop {
        /// The whole of it.
        answer: String,
    },
    /// The answer could not be written.
    Output(io::Error),
    /// The machine has no more threads, memory or file handles to give.
    Machine {
        /// What was asked for and not given.
        problem: String,
        /// What may help.
        hint: String,
    },
}

impl Failure {
    /// A request that cannot be met, and how to mend it.
    pub(super) fn request(problem: impl Into<String>, hint: impl Into<String>) -> Self {
        Self::Request { problem: problem.into(), allowed: String::new(), hint: hint.into() }
    }

    /// A file asked for could not be written.
    pub(super) fn unwritten(path: &Path, problem: &io::Error) -> Self {
        use io::ErrorKind as Kind;
        let here = "name a file in a folder that exists and that you may write to";
        let (problem, hint) = match problem.kind() {
            Kind::NotFound => ("there is no such folder".to_owned(), here),
            Kind::NotADirectory => ("a part of its path is no folder".to_owned(), here),
            Kind::PermissionDenied | Kind::ReadOnlyFilesystem => ("permission denied".to_owned(), here),
            Kind::IsADirectory => ("it is a directory".to_owned(), "name a file inside it"),
            Kind::StorageFull | Kind::QuotaExceeded => {
                ("the disk is full".to_owned(), "make room, or name a file on another disk")
            }
            Kind::InvalidInput => ("it is no ordinary file".to_owned(), "name a file of its own"),
            _ => (problem.to_string(), here),
        };
        Self::request(format!("cannot write {}: {problem}", path.display()), hint)
    }

    /// 1 for a finding that says stop, 3 for a machine that gives no more, 2 for everything that is to
    /// be mended.
    pub(super) fn exit_code(&self) -> u8 {
        match self {
            Self::Stop { .. } => 1,
            Self::Machine { .. } | Self::Input(InputError::Exhausted { .. }) => 3,
            _ => 2,
        }
    }

    /// The message as text with terminal colours.
    pub(super) fn render(&self) -> String {
        match self {
            Self::Input(error) => error.render(true),
            Self::InPart { bad, .. } => bad.iter().map(|error| error.render(true)).collect::<Vec<_>>().join("\n\n"),
            Self::Machine { problem, hint } => Told { problem, hint, ..Told::default() }.render(true),
            Self::Request { problem, allowed, hint } => Told { problem, allowed, hint, place: None }.render(true),
            Self::Stop { .. } => Told {
                problem: "a finding says stop",
                hint: "see the answer; --strict makes it an error",
                ..Told::default()
            }
            .render(true),
            Self::Output(error) => {
                let problem = format!("cannot write the answer: {error}");
                Told { problem: &problem, hint: "check where standard output goes", ..Told::default() }.render(true)
            }
        }
    }
}

impl From<InputError> for Failure {
    fn from(error: InputError) -> Self {
        Self::Input(error)
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        Self::Output(error)
    }
}

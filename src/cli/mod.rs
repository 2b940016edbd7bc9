//! The command line: reads the question, asks the library, writes the answer.
//!
//! Data goes to standard output, everything else to standard error. Exit 0: done; 1: something in
//! the input or the command line to mend; 2: our fault.

mod args;
mod args_follow;
mod args_setup;
mod commands;
mod examples;
mod files;
mod follow;
mod progress;
mod sessions;
mod setup;
mod page;
mod planning;
mod staff;
mod starter;
mod words;

use std::ffi::OsString;
use std::io::{self, Write};
use std::process::ExitCode;

use anstream::{AutoStream, ColorChoice};
use clap::Parser;

use args::{Cli, Color};

/// Why a command gave no answer.
#[derive(Debug, thiserror::Error)]
pub enum Failure {
    /// A file to mend.
    #[error(transparent)]
    Input(#[from] crate::input::InputError),
    /// A session or column map to mend.
    #[error("error: {0}")]
    Session(#[from] crate::input::SessionError),
    /// A command line to mend.
    #[error("error: {0}")]
    Request(String),
    /// A file asked for could not be written.
    #[error(
        "error: cannot write {path}: {problem}\nhint: name a file in a folder that exists and that you may write to"
    )]
    Unwritten {
        /// Where it should have gone.
        path: String,
        /// What stood in the way.
        problem: io::Error,
    },
    /// Some files are to mend; the answer about the others stands.
    #[error("{} files could not be used", bad.len())]
    InPart {
        /// About the good ones.
        answer: String,
        /// What is wrong with the others.
        bad: Vec<crate::input::InputError>,
    },
    /// A finding says stop, and `--strict` asks to fail then; the answer stands.
    #[error("a finding says stop (told by --strict): see the answer")]
    Stop {
        /// The whole of it.
        answer: String,
    },
    /// The answer could not be written.
    #[error("error: cannot write the answer: {0}")]
    Output(#[from] io::Error),
}

/// Runs one command line and returns its exit code.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> ExitCode {
    let cli = match Cli::try_parse_from(arguments) {
        Ok(cli) => cli,
        Err(usage) => return answer_usage(&usage),
    };
    match commands::answer(&cli)
        .and_then(|text| write_out(&text, cli.color))
        .or_else(|failure| partly(failure, cli.color))
    {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure::Output(error)) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(failure) => report(&failure, cli.color),
    }
}

/// An answer that comes with a failure is written out before that is told.
fn partly(failure: Failure, color: Color) -> Result<(), Failure> {
    if let Failure::InPart { answer, .. } | Failure::Stop { answer } = &failure {
        write_out(answer, color)?;
    }
    Err(failure)
}

/// Help and version are answers; anything else is a command line to mend.
fn answer_usage(usage: &clap::Error) -> ExitCode {
    // A closed pipe leaves nobody to tell.
    let _ = usage.print();
    ExitCode::from(u8::from(usage.use_stderr()))
}

fn write_out(text: &str, color: Color) -> Result<(), Failure> {
    let mut out = AutoStream::new(io::stdout().lock(), choice(color));
    out.write_all(text.as_bytes())?;
    Ok(out.flush()?)
}

fn report(failure: &Failure, color: Color) -> ExitCode {
    let mut err = AutoStream::new(io::stderr().lock(), choice(color));
    let text = match failure {
        Failure::Input(error) => error.render(true),
        Failure::InPart { bad, .. } => bad.iter().map(|error| error.render(true)).collect::<Vec<String>>().join("\n\n"),
        other => other.to_string(),
    };
    // Nothing is left to do when standard error is closed too.
    let _ = writeln!(err, "{text}");
    ExitCode::from(if matches!(failure, Failure::Output(_)) { 2 } else { 1 })
}

fn choice(color: Color) -> ColorChoice {
    match color {
        Color::Auto => ColorChoice::Auto,
        Color::Always => ColorChoice::Always,
        Color::Never => ColorChoice::Never,
    }
}

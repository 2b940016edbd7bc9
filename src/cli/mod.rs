//! The command line: reads the question, asks the library, writes the answer.
//!
//! Data goes to standard output, everything else to standard error. Exit 0: done; 1: a finding says
//! stop and `--strict` asks to fail then; 2: something in the input, the command line or the place
//! of the answer is to be mended; 3: our fault, or the machine has no more to give.

mod args;
mod args_follow;
mod args_levers;
mod args_read;
mod args_setup;
mod commands;
mod examples;
mod failure;
mod files;
mod follow;
mod outputs;
mod progress;
mod reading;
mod sessions;
mod setup;
mod page;
mod planning;
mod staff;
mod threads;
mod starter;
mod usage;
mod words;

use std::ffi::OsString;
use std::io::{self, Write};
use std::process::ExitCode;

use anstream::{AutoStream, ColorChoice};
use clap::Parser;
use clap::error::ErrorKind;

use args::{Cli, Color};
pub use failure::Failure;

/// Runs one command line and returns its exit code.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> ExitCode {
    let cli = match Cli::try_parse_from(arguments) {
        Ok(cli) => cli,
        Err(usage) => return answer_usage(&usage),
    };
    let done = threads::set().and_then(|()| commands::answer(&cli));
    match done.and_then(|text| write_out(&text, cli.color)).or_else(|failure| partly(failure, cli.color)) {
        Ok(()) => ExitCode::SUCCESS,
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

/// Help and version are answers, and help goes to whoever names no command; anything else is a
/// command line to mend.
fn answer_usage(usage: &clap::Error) -> ExitCode {
    let is_help = matches!(usage.kind(), ErrorKind::DisplayHelp | ErrorKind::DisplayVersion);
    if !is_help && usage.kind() != ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand {
        return report(&Failure::from(usage), Color::Auto);
    }
    // A closed pipe leaves nobody to tell.
    let _ = usage.print();
    if is_help { ExitCode::SUCCESS } else { ExitCode::from(2) }
}

/// Writes the answer; a reader who leaves early has read enough, whatever else there is to tell.
fn write_out(text: &str, color: Color) -> Result<(), Failure> {
    let mut out = AutoStream::new(io::stdout().lock(), choice(color));
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Err(error.into()),
        _ => Ok(()),
    }
}

fn report(failure: &Failure, color: Color) -> ExitCode {
    let mut err = AutoStream::new(io::stderr().lock(), choice(color));
    // Nothing is left to do when standard error is closed too.
    let _ = writeln!(err, "{}", failure.render());
    ExitCode::from(failure.exit_code())
}

fn choice(color: Color) -> ColorChoice {
    match color {
        Color::Auto => ColorChoice::Auto,
        Color::Always => ColorChoice::Always,
        Color::Never => ColorChoice::Never,
    }
}

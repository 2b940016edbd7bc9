//! The command line of the lab: each command prints what it found; tables go to standard output,
//! notes on the way to standard error.

#![expect(clippy::print_stdout, clippy::print_stderr, reason = "the command line is where the lab prints")]

use std::error::Error;
use std::io::{stderr, stdout};
use std::path::PathBuf;
use std::process::ExitCode;

use arsenalfit_lab::day::Day;
use arsenalfit_lab::evidence::Evidence;
use arsenalfit_lab::{calibration, fitting, laws, score, shrinkage};
use clap::{Parser, Subcommand};

/// Fits, scores and tables behind arsenalfit, for its developers.
#[derive(Parser)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
    /// The league day, where it is not the one kept with the tests.
    #[arg(long, global = true)]
    league: Option<PathBuf>,
}

#[derive(Subcommand)]
enum Command {
    /// Writes what the program says of every throw of a file with the league day's columns.
    Score {
        /// The throws.
        throws: PathBuf,
    },
    /// Fits the hitter to the league day, both readings, and writes what the program ships.
    Fit {
        /// Where the posterior files go.
        #[arg(long, default_value = "src/hitter")]
        into: PathBuf,
    },
    /// Fits the hitter on four fifths of the games and scores it on the others, in turn.
    CrossValidate,
    /// Sets what the program says beside what was seen, by kind of pitch, strikes and side.
    Calibration,
    /// Asks which share of said differences between a pitcher's pitches comes true.
    Shrinkage,
    /// Tells what single changes are worth to the invented arsenals.
    Laws {
        /// The folder of profiles.
        #[arg(default_value = "tests/arsenals")]
        folder: PathBuf,
    },
}

fn main() -> ExitCode {
    match run(Arguments::parse()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: Arguments) -> Result<(), Box<dyn Error>> {
    let league = arguments.league.unwrap_or_else(Day::league_path);
    match arguments.command {
        Command::Score { throws } => score::score(&throws, &league, &mut stdout().lock(), &mut stderr().lock())?,
        Command::Fit { into } => print!("{}", fitting::fit_both(&Evidence::league(&league)?, &into)?),
        Command::CrossValidate => print!("{}", fitting::cross_validate(&Evidence::league(&league)?)),
        Command::Calibration => print!("{}", calibration::calibration(&Evidence::league(&league)?)),
        Command::Shrinkage => print!("{}", shrinkage::shrinkage(&Evidence::league(&league)?)),
        Command::Laws { folder } => print!("{}", laws::laws(&folder)?),
    }
    Ok(())
}

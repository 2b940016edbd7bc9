//! What can be asked in the months after the decision: a trial of grips, a watch over outings, a
//! plan. The target is the one `advise` finds unless the coach gives another; everything else
//! about a command line is in [`super::args`].

use std::path::PathBuf;

use clap::Args;
use jiff::civil::Date;

use crate::ball::{Family, Shape};
use crate::learn::plan::{NotADay, Weekdays};

use super::args::{ProfileArg, shape};
use super::args_read::ReadingArgs;
use super::page::PageArg;
use super::words::families;

/// What is chased.
#[derive(Debug, Args)]
pub(super) struct TargetArgs {
    /// The pitch to chase, at the best shape in reach.
    #[arg(long, value_name = "PITCH", default_value = "sweeper", value_parser = families())]
    pub(super) family: Family,
    /// Chase this shape instead: speed in mph, vertical break and glove-side break in inches.
    #[arg(long, value_name = "SPEED,VERTICAL,GLOVE", allow_hyphen_values = true, value_parser = shape)]
    pub(super) target: Option<Shape>,
}

#[derive(Debug, Args)]
pub(super) struct TrialArgs {
    /// The throws (CSV), each with its grip in the column `grip`.
    #[arg(value_name = "TRIAL.csv")]
    pub(super) trial: PathBuf,
    /// The athlete's profile (TOML).
    #[arg(long, value_name = "PROFILE")]
    pub(super) profile: PathBuf,
    #[command(flatten)]
    pub(super) target: TargetArgs,
    #[command(flatten)]
    pub(super) reading: ReadingArgs,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct ProgressArgs {
    #[command(flatten)]
    pub(super) profile: ProfileArg,
    /// The outings (CSV, also gzipped), one day or many in a file.
    #[arg(value_name = "SESSION", required = true)]
    pub(super) sessions: Vec<PathBuf>,
    /// What the new pitch is called in the files, when it is not called by its family.
    #[arg(long, value_name = "LABEL")]
    pub(super) pitch: Option<String>,
    #[command(flatten)]
    pub(super) target: TargetArgs,
    #[command(flatten)]
    pub(super) reading: ReadingArgs,
    /// Exit with 1 when a finding says stop; the answer is written all the same.
    #[arg(long)]
    pub(super) strict: bool,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct PlanArgs {
    #[command(flatten)]
    pub(super) profile: ProfileArg,
    /// First day, such as 2031-11-03.
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub(super) start: Date,
    /// Last day.
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub(super) end: Date,
    /// Days of the week on which the athlete may throw.
    #[arg(long, value_name = "DAYS", default_value = "mon,wed,fri", value_parser = weekdays)]
    pub(super) days: Weekdays,
    #[command(flatten)]
    pub(super) target: TargetArgs,
    /// A trial of grips already thrown: it tells where the plan begins.
    #[arg(long, value_name = "TRIAL.csv")]
    pub(super) trial: Option<PathBuf>,
    /// Outings already thrown, likewise; may be given several times.
    #[arg(long, value_name = "SESSION")]
    pub(super) session: Vec<PathBuf>,
    /// What the new pitch is called in them, when it is not called by its family.
    #[arg(long, value_name = "LABEL", requires = "session")]
    pub(super) pitch: Option<String>,
    #[command(flatten)]
    pub(super) reading: ReadingArgs,
    /// Also write the plan as a calendar (iCalendar), to import on a phone.
    #[arg(long, value_name = "FILE.ics")]
    pub(super) ics: Option<PathBuf>,
    /// Also write the plan day by day as Markdown, to print or share.
    #[arg(long, value_name = "FILE.md")]
    pub(super) markdown: Option<PathBuf>,
    #[command(flatten)]
    pub(super) page: PageArg,
}

fn date(text: &str) -> Result<Date, String> {
    text.trim().parse().map_err(|_| "a day of the calendar, written like 2031-11-03".into())
}

fn weekdays(text: &str) -> Result<Weekdays, String> {
    text.parse().map_err(|NotADay { found }| {
        format!("some of mon, tue, wed, thu, fri, sat, sun, with commas between\n\"{found}\" is not a day")
    })
}

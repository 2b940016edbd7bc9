//! What can be asked, and how.

use std::fmt::Display;
use std::num::NonZeroUsize;
use std::path::PathBuf;
use std::str::FromStr;

use clap::{Args, Parser, Subcommand, ValueEnum};

use crate::ball::spin::MOST_RPM;
use crate::ball::{FASTEST_MPH, Family, SLOWEST_MPH, Shape};
use crate::base::geometry::Hand;
use crate::decide::draws::DRAWS;
use crate::decide::new_pitch::Command as CommandOf;
use crate::files::{family_of_word, hand_of_word, visible};

use super::args_follow::{PlanArgs, ProgressArgs, TrialArgs};
use super::args_levers::LeversArgs;
use super::args_read::SessionArgs;
use super::args_setup::{CompletionsArgs, ManArgs};
use super::examples;
use super::outputs::tell;
use super::page::PageArg;
use super::words::{families, hands};

const EVERYWHERE: &str = "Options of every command";

/// Decide whether a new pitch belongs in a pitcher's arsenal, which shape to chase and how to use it.
#[derive(Debug, Parser)]
#[command(version, about, max_term_width = 100, after_help = examples::ARSENALFIT)]
pub(super) struct Cli {
    /// How to write the answer.
    #[arg(long, global = true, value_enum, default_value_t = Format::Text, help_heading = EVERYWHERE)]
    pub(super) format: Format,
    /// Seed of everything random; the same seed gives the same bytes.
    #[arg(long, global = true, default_value_t = 1, value_name = "N", help_heading = EVERYWHERE, allow_negative_numbers = true, value_parser = seed)]
    pub(super) seed: u64,
    /// When to use bold type.
    #[arg(long, global = true, value_enum, default_value_t = Color::Auto, help_heading = EVERYWHERE)]
    pub(super) color: Color,
    #[command(subcommand)]
    pub(super) question: Question,
}

/// Form of the answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For people.
    Text,
    /// For programs.
    Json,
}

/// Use of bold type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Color {
    /// On a terminal, unless `NO_COLOR` is set.
    Auto,
    /// Always.
    Always,
    /// Never.
    Never,
}

/// The commands, each a question.
#[derive(Debug, Subcommand)]
pub(super) enum Question {
    /// What does the athlete have? Reads a profile, checks it, divides movement between spin and seams.
    #[command(after_help = examples::CHECK)]
    Check(CheckArgs),
    /// Which pitches are in these throws? Sorts tracking sessions and writes the profile.
    #[command(after_help = examples::SORT)]
    Sort(SortArgs),
    /// How far apart are the pitches, to a hitter?
    #[command(after_help = examples::APART)]
    Apart(PagedArgs),
    /// How should the pitches be used against each side?
    #[command(after_help = examples::USAGE)]
    Usage(PagedArgs),
    /// What would help most this off-season? Every single change, best first.
    #[command(after_help = examples::LEVERS)]
    Levers(LeversArgs),
    /// Should a pitch be added, which shape should be chased, and what is it worth?
    #[command(after_help = examples::ADVISE)]
    Advise(AdviseArgs),
    /// How must a pitch spin, and where does a mark on its spin pole show?
    #[command(after_help = examples::DOT)]
    Dot(DotArgs),
    /// Which of two athletes gains more from the same new pitch, and why?
    #[command(after_help = examples::COMPARE)]
    Compare(CompareArgs),
    /// Who of a folder of profiles gains most from a new pitch?
    #[command(after_help = examples::ROSTER)]
    Roster(RosterArgs),
    /// How does a profile begin? Writes a commented one, from flags or by asking.
    #[command(after_help = examples::NEW)]
    New(NewArgs),
    /// Which grip is to be kept? Judges a trial of several grips against the target.
    #[command(after_help = examples::TRIAL)]
    Trial(TrialArgs),
    /// Is it working, and what must it not cost? Watches the outings against the profile.
    #[command(after_help = examples::PROGRESS)]
    Progress(ProgressArgs),
    /// What is thrown on which day? Lays the steps to the new pitch over the calendar.
    #[command(after_help = examples::PLAN)]
    Plan(PlanArgs),
    /// How does the shell complete a command? Prints a script for it.
    ///
    /// Put it where the shell looks: for bash ~/.local/share/bash-completion/completions/arsenalfit,
    /// for zsh a file _arsenalfit in a folder of $fpath, for fish
    /// ~/.config/fish/completions/arsenalfit.fish.
    #[command(after_help = examples::COMPLETIONS)]
    Completions(CompletionsArgs),
    /// Where is the manual? Prints it, or a command's page, or writes all pages.
    #[command(after_help = examples::MAN)]
    Man(ManArgs),
    /// What may a profile hold? Prints a JSON schema, for editors and programs.
    ///
    /// Made from what the reader of profiles asks for. It tells keys, ranges and words; values that
    /// contradict each other only `check` can tell.
    #[command(after_help = examples::SCHEMA)]
    Schema,
}

#[derive(Debug, Args)]
pub(super) struct ProfileArg {
    /// The athlete's profile (TOML); - is standard input.
    #[arg(value_name = "PROFILE")]
    pub(super) profile: PathBuf,
}

/// A profile whose answer can also be had as a page.
#[derive(Debug, Args)]
pub(super) struct PagedArgs {
    #[command(flatten)]
    pub(super) profile: ProfileArg,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct CheckArgs {
    #[command(flatten)]
    pub(super) profile: ProfileArg,
    /// Restate the shapes in standard air at this elevation.
    #[arg(long, value_name = "FEET", default_value_t = 0.0, allow_negative_numbers = true, value_parser = elevation)]
    pub(super) elevation: f64,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct SortArgs {
    /// Session files (CSV, also gzipped); - is standard input.
    #[arg(value_name = "SESSION", required = true)]
    pub(super) sessions: Vec<PathBuf>,
    #[command(flatten)]
    pub(super) reading: SessionArgs,
    /// Propose a column map for the first file and stop.
    #[arg(long)]
    pub(super) explain_columns: bool,
    /// The most pitches looked for.
    #[arg(long, value_name = "N", default_value_t = 8, allow_negative_numbers = true, value_parser = most_pitches)]
    pub(super) most_pitches: u8,
    /// Write the pitches into this profile; comments and keys of your own stay.
    #[arg(long, value_name = "PROFILE")]
    pub(super) write: Option<PathBuf>,
    /// Name of the athlete, for a new profile.
    #[arg(long, value_name = "NAME", default_value = "unnamed athlete")]
    pub(super) name: String,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct AdviseArgs {
    /// The athlete's profile (TOML); with --session it may be left out.
    #[arg(value_name = "PROFILE", required_unless_present = "session")]
    pub(super) profile: Option<PathBuf>,
    /// Take the pitches from these throws (CSV), sorted first; may be given several times.
    #[arg(long, value_name = "SESSION")]
    pub(super) session: Vec<PathBuf>,
    #[command(flatten)]
    pub(super) reading: SessionArgs,
    /// The pitch asked about.
    #[arg(long, value_name = "PITCH", default_value = "sweeper", value_parser = families())]
    pub(super) family: Family,
    #[command(flatten)]
    pub(super) time: TimeArgs,
    /// Say which assumptions the worth leans on most.
    #[arg(long)]
    pub(super) why: bool,
    /// Simulations of what is not known; more give steadier intervals.
    #[arg(long, value_name = "N", default_value_t = DRAWS, allow_negative_numbers = true, value_parser = draws)]
    pub(super) draws: NonZeroUsize,
    #[command(flatten)]
    pub(super) page: PageArg,
}

/// Which command a new pitch is judged with.
#[derive(Debug, Args)]
pub(super) struct TimeArgs {
    /// Judge the pitch with the looser command of its first months.
    #[arg(long, conflicts_with = "mastered")]
    now: bool,
    /// Judge the pitch once mastered (the default).
    #[arg(long)]
    mastered: bool,
}

impl TimeArgs {
    pub(super) fn command(&self) -> CommandOf {
        if self.now && !self.mastered { CommandOf::Now } else { CommandOf::Mastered }
    }
}

#[derive(Debug, Args)]
#[command(group = clap::ArgGroup::new("what").required(true).args(["profile", "target"]))]
pub(super) struct DotArgs {
    /// The athlete's profile (TOML).
    #[arg(value_name = "PROFILE")]
    pub(super) profile: Option<PathBuf>,
    /// Only this pitch of the profile.
    #[arg(long, value_name = "NAME", conflicts_with = "target")]
    pub(super) pitch: Option<String>,
    /// A wished-for shape: speed in mph, vertical break and glove-side break in inches.
    #[arg(long, value_name = "SPEED,VERTICAL,GLOVE", allow_hyphen_values = true, value_parser = shape)]
    pub(super) target: Option<Shape>,
    /// Total spin of the wished-for shape.
    #[arg(long, value_name = "RPM", conflicts_with = "profile", default_value_t = 2400.0, allow_negative_numbers = true, value_parser = rpm)]
    pub(super) rpm: f64,
    /// Throwing hand for the wished-for shape.
    #[arg(long, value_name = "HAND", conflicts_with = "profile", default_value = "right", value_parser = hands())]
    pub(super) throws: Hand,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct CompareArgs {
    /// The first athlete's profile (TOML).
    #[arg(value_name = "A")]
    pub(super) first: PathBuf,
    /// The second athlete's profile (TOML).
    #[arg(value_name = "B")]
    pub(super) second: PathBuf,
    /// The new pitch both are asked about.
    #[arg(long, value_name = "PITCH", default_value = "sweeper", value_parser = families())]
    pub(super) family: Family,
    #[command(flatten)]
    pub(super) time: TimeArgs,
    /// Simulations of what is not known; more give steadier intervals.
    #[arg(long, value_name = "N", default_value_t = DRAWS, allow_negative_numbers = true, value_parser = draws)]
    pub(super) draws: NonZeroUsize,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct RosterArgs {
    /// A folder of profiles (*.toml).
    #[arg(value_name = "DIR")]
    pub(super) folder: PathBuf,
    #[command(flatten)]
    pub(super) time: TimeArgs,
    /// Simulations of what is not known; more give steadier intervals.
    #[arg(long, value_name = "N", default_value = "32", allow_negative_numbers = true, value_parser = draws)]
    pub(super) draws: NonZeroUsize,
    #[command(flatten)]
    pub(super) page: PageArg,
}

#[derive(Debug, Args)]
pub(super) struct NewArgs {
    /// The file to write; one that exists is left alone without --force.
    #[arg(value_name = "FILE")]
    pub(super) file: PathBuf,
    /// Write over a file that is there.
    #[arg(long)]
    pub(super) force: bool,
    /// Name of the athlete.
    #[arg(long)]
    pub(super) name: Option<String>,
    /// Throwing hand.
    #[arg(long, value_name = "HAND", value_parser = hands())]
    pub(super) throws: Option<Hand>,
    /// Years.
    #[arg(long, allow_negative_numbers = true, value_parser = age)]
    pub(super) age: Option<u8>,
    /// A pitch: family, speed in mph, vertical break and glove-side break in inches; may be repeated.
    #[arg(long = "pitch", value_name = "FAMILY SPEED VERTICAL GLOVE", value_parser = pitch)]
    pub(super) pitches: Vec<(Family, Shape)>,
}

/// A family by any of the trade's words; how a word for several was taken is told.
pub(super) fn family(text: &str) -> Result<Family, String> {
    let meant = family_of_word(text).ok_or_else(|| {
        let names = Family::ALL.map(Family::name);
        let nearest =
            names.into_iter().max_by(|a, b| strsim::jaro_winkler(text, a).total_cmp(&strsim::jaro_winkler(text, b)));
        format!("one of {}\ndid you mean {}?", names.join(", "), nearest.unwrap_or_default())
    })?;
    if meant.is_open {
        tell(&format!("\"{}\" is taken as {}", visible(text.trim()), meant.value));
    }
    Ok(meant.value)
}

/// A hand by any of the trade's words.
pub(super) fn hand(text: &str) -> Result<Hand, String> {
    hand_of_word(text).ok_or_else(|| Hand::ALL.map(Hand::name).join(" or "))
}

fn number(text: &str, what: &str, low: f64, high: f64) -> Result<f64, String> {
    let number = text.trim().parse().ok().filter(|value| (low..=high).contains(value));
    // A zero has no sign, whatever is typed.
    number.map(|value: f64| value + 0.0).ok_or_else(|| format!("{what} from {low} to {high}"))
}

fn whole<T: Copy + FromStr + PartialOrd + Display>(text: &str, low: T, high: T) -> Result<T, String> {
    let number = text.trim().parse().ok().filter(|value| (low..=high).contains(value));
    number.ok_or_else(|| format!("a whole number from {low} to {high}"))
}

fn seed(text: &str) -> Result<u64, String> {
    whole(text, 0, u64::MAX)
}

pub(super) fn draws(text: &str) -> Result<NonZeroUsize, String> {
    whole(
        text,
        const { NonZeroUsize::new(16).expect("not zero") },
        const { NonZeroUsize::new(4096).expect("not zero") },
    )
}

fn most_pitches(text: &str) -> Result<u8, String> {
    whole(text, 1, 8)
}

/// "20".
pub(super) fn age(text: &str) -> Result<u8, String> {
    whole(text, 5, 60)
}

/// "four-seam 91 16 -7"; commas may stand between the numbers.
pub(super) fn pitch(text: &str) -> Result<(Family, Shape), String> {
    let form = "a family and three numbers, such as four-seam 91 16 -7";
    let parts: Vec<&str> = text.split([' ', ',']).filter(|part| !part.is_empty()).collect();
    // A family may have several words, and a number among them: 4 seam.
    let (name, numbers) = parts.split_at_checked(parts.len().saturating_sub(3)).ok_or(form)?;
    if name.is_empty() {
        return Err(form.to_owned());
    }
    let shape = shape_of(numbers, form)?;
    Ok((family(&name.join(" "))?, shape))
}

fn elevation(text: &str) -> Result<f64, String> {
    number(text, "a number", -1500.0, 15_000.0)
}

fn rpm(text: &str) -> Result<f64, String> {
    number(text, "a number", 1.0, MOST_RPM)
}

pub(super) fn shape(text: &str) -> Result<Shape, String> {
    shape_of(&text.split(',').collect::<Vec<_>>(), "three numbers with commas between, such as 81,0,15")
}

fn shape_of(parts: &[&str], form: &str) -> Result<Shape, String> {
    let [speed, vertical, glove_side] = parts else {
        return Err(form.to_owned());
    };
    Ok(Shape {
        speed_mph: number(speed, "given with a speed", SLOWEST_MPH, FASTEST_MPH)?,
        vertical_break_in: number(vertical, "given with a vertical break", -40.0, 40.0)?,
        glove_side_break_in: number(glove_side, "given with a glove-side break", -40.0, 40.0)?,
    })
}

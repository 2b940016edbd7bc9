//! Each command: read, ask, set.

use std::num::NonZeroUsize;

use crate::athlete::eligibility::reasons_against_throwing;
use crate::athlete::profile::{PerSide, Profile};
use crate::ball::flight::Air;
use crate::ball::recipe::active_rpm_needed;
use crate::ball::{Ground, SeamPush, Shape, recipe};
use crate::base::geometry::{Side, Vec3};
use crate::base::units::FOOT;
use crate::decide::advice::Advice;
use crate::decide::apart::{pairs, partings};
use crate::decide::draws::DRAWS;
use crate::decide::inspect::{inspect, spin_of};
use crate::decide::levers::levers;
use crate::decide::model::Model;
use crate::decide::usage::Usage;
use crate::decide::why::why;
use crate::files::{is_same_name, read_profile};
use crate::report::Answer;
use crate::report::answers::{self, Advised, Spun};

use super::args::{AdviseArgs, CheckArgs, Cli, DotArgs, Format, PagedArgs, Question};
use super::args_levers::LeversArgs;
use super::page::PageArg;
use super::{Failure, follow, planning, setup, staff, starter};

/// The answer to a command line, as text to write out.
pub(super) fn answer(cli: &Cli) -> Result<String, Failure> {
    match &cli.question {
        Question::Check(args) => check(cli, args),
        Question::Sort(args) => super::sessions::sort(cli, args),
        Question::Apart(args) => apart(cli, args),
        Question::Usage(args) => usage_of(cli, args),
        Question::Levers(args) => levers_of(cli, args),
        Question::Advise(args) => advise_on(cli, args),
        Question::Dot(args) => dot(cli, args),
        Question::Compare(args) => staff::compare_two(cli, args),
        Question::Roster(args) => staff::roster(cli, args),
        Question::New(args) => starter::new(args),
        Question::Trial(args) => follow::trial(cli, args),
        Question::Progress(args) => follow::progress(cli, args),
        Question::Plan(args) => planning::plan(cli, args),
        Question::Completions(args) => Ok(setup::completions(args)),
        Question::Man(args) => setup::man(args),
        Question::Schema => Ok(setup::schema()),
    }
}

fn check(cli: &Cli, args: &CheckArgs) -> Result<String, Failure> {
    let path = &args.profile.profile;
    let profile = read_profile(path)?;
    let inspected = inspect(&profile, Air::standard(args.elevation * FOOT));
    let answer = answers::check(&profile, &inspected, args.elevation, &path.to_string_lossy());
    told(cli, &answer, Some(&args.page))
}

fn apart(cli: &Cli, args: &PagedArgs) -> Result<String, Failure> {
    let path = &args.profile.profile;
    args.page.check(&[path])?;
    let profile = read_profile(path)?;
    let model = Model::new(&profile, NonZeroUsize::MIN, cli.seed);
    let partings = PerSide::from_fn(|side: Side| partings(&model, side));
    told(cli, &answers::apart(&profile, &pairs(&model), &partings, &path.to_string_lossy()), Some(&args.page))
}

fn usage_of(cli: &Cli, args: &PagedArgs) -> Result<String, Failure> {
    let path = &args.profile.profile;
    args.page.check(&[path])?;
    let profile = read_profile(path)?;
    let usage = Usage::of(&Model::new(&profile, DRAWS, cli.seed));
    told(cli, &answers::usage(&profile, &usage, &path.to_string_lossy()), Some(&args.page))
}

/// An athlete who may not throw is not weighed at all.
fn levers_of(cli: &Cli, args: &LeversArgs) -> Result<String, Failure> {
    let path = &args.profile.profile;
    args.page.check(&[path])?;
    let profile = read_profile(path)?;
    let is_free = reasons_against_throwing(profile.health, &profile.athlete).is_empty();
    let found = if is_free { levers(&Model::new(&profile, args.draws, cli.seed)) } else { Vec::new() };
    told(cli, &answers::levers(&profile, &found, &path.to_string_lossy()), Some(&args.page))
}

fn advise_on(cli: &Cli, args: &AdviseArgs) -> Result<String, Failure> {
    let profile = match (&args.profile, args.session.as_slice()) {
        (Some(path), []) => {
            args.page.check(&[path])?;
            read_profile(path)?
        }
        _ => super::sessions::profile_of(args, cli.seed)?,
    };
    let model = Model::new(&profile, args.draws, cli.seed);
    let advice = Advice::of(&model, args.family, args.time.command());
    let chased = advice.to_chase();
    let leaning = chased.filter(|_| args.why).map(|target| why(&model, &target.target.change));
    let file = args.profile.as_ref().map(|path| path.to_string_lossy());
    let advised = Advised { profile: &profile, advice: &advice, leaning: leaning.as_deref(), file: file.as_deref() };
    told(cli, &answers::advise(&advised), Some(&args.page))
}

/// The answer in the form asked for, once its page is written, where one is.
pub(super) fn told(cli: &Cli, answer: &Answer, page: Option<&PageArg>) -> Result<String, Failure> {
    page.map_or(Ok(()), |page| page.write(|| answer.page()))?;
    Ok(match cli.format {
        Format::Text => answer.text(width()),
        Format::Json => answer.json(),
    })
}

fn dot(cli: &Cli, args: &DotArgs) -> Result<String, Failure> {
    match (&args.profile, args.target) {
        (_, Some(shape)) => dot_of_target(cli, args, shape),
        (Some(path), None) => dots_of_profile(cli, args, &read_profile(path)?),
        (None, None) => Err(Failure::request("PROFILE is missing", "name a profile, or a shape with --target")),
    }
}

fn dots_of_profile(cli: &Cli, args: &DotArgs, profile: &Profile) -> Result<String, Failure> {
    let wanted = args.pitch.as_deref();
    let chosen: Vec<_> =
        profile.pitches.iter().filter(|pitch| wanted.is_none_or(|name| is_same_name(&pitch.name, name))).collect();
    if chosen.is_empty() {
        let names: Vec<&str> = profile.pitches.iter().map(|pitch| pitch.name.as_str()).collect();
        let wanted = wanted.unwrap_or_default();
        return Err(Failure::Request {
            problem: format!("--pitch is \"{wanted}\", and no pitch of the profile is called so"),
            allowed: format!("one of {}", names.join(", ")),
            hint: String::new(),
        });
    }
    let spun: Vec<Spun> = chosen
        .into_iter()
        .map(|pitch| (pitch.name.as_str(), spin_of(profile, pitch).0, pitch.is_spin_measured()))
        .collect();
    told(cli, &answers::dots(profile, &spun), Some(&args.page))
}

/// A recipe for a shape alone: an ordinary release at sea level, the given total spin, the seams doing nothing.
fn dot_of_target(cli: &Cli, args: &DotArgs, shape: Shape) -> Result<String, Failure> {
    let rpm = args.rpm;
    let ground = Ground { release: Vec3::new(-2.0 * FOOT, 54.5 * FOOT, 5.8 * FOOT), air: Air::SEA_LEVEL };
    let needed = active_rpm_needed(shape, SeamPush::NONE, ground);
    if needed.value > rpm {
        let needs = if needed.value.is_finite() {
            format!("about {:.0} rpm of active spin", needed.value)
        } else {
            "more active spin than there is".into()
        };
        return Err(Failure::request(
            format!("that shape needs {needs} without help from the seams, and {rpm:.0} rpm are given"),
            "give more with --rpm, or ask for less movement",
        ));
    }
    let recipe = recipe(shape, rpm, SeamPush::NONE, ground);
    told(cli, &answers::dot_of_shape(&recipe, needed, args.throws), Some(&args.page))
}

/// Columns to set text in: `COLUMNS` when set, else the terminal's, else 80.
pub(super) fn width() -> u16 {
    let said = std::env::var("COLUMNS").ok().and_then(|text| text.parse().ok());
    let seen = || terminal_size::terminal_size().map(|(terminal_size::Width(columns), _)| columns);
    said.or_else(seen).unwrap_or(80)
}

//! Each command: read, ask, set.

use crate::athlete::profile::{PerSide, Profile};
use crate::ball::Shape;
use crate::ball::flight::Air;
use crate::ball::spin::Spin;
use crate::base::geometry::{Clock, Hand, Side, Vec3};
use crate::base::units::FOOT;
use crate::decide::advice::{self, Advice, Question as Asked, advise};
use crate::decide::coverage::simulate;
use crate::decide::inspect::inspect;
use crate::decide::usage::usage;
use crate::decide::why::why;
use crate::files::{ReadOptions, is_same_name, read_columns, read_profile, read_sessions};
use crate::former::calibrate::{Evidence, cross_validate, fit};
use crate::former::evaluate::{Stage, Thrown, Today};
use crate::former::search::reach::{Recipe, spin_of};
use crate::former::separation::pairs;
use crate::former::sight::{Sight, openings, sights};
use crate::report::{coverage, ensemble, html, json, terminal};
use crate::throws::{Options as SortOptions, sort};

use super::args::{AdviseArgs, CalibrateArgs, CheckArgs, Cli, DotArgs, Format, PagedArgs, Question};
use super::{Failure, follow, planning, setup, staff, starter};

/// The answer to a command line, as text to write out.
pub(super) fn answer(cli: &Cli) -> Result<String, Failure> {
    match &cli.question {
        Question::Check(args) => check(cli, args),
        Question::Sort(args) => super::sessions::sort(cli, args),
        Question::Apart(args) => apart(cli, args),
        Question::Usage(args) => usage_of(cli, args),
        Question::Advise(args) => advise_on(cli, args),
        Question::Dot(args) => dot(cli, args),
        Question::Calibrate(args) => calibrate(cli, args),
        Question::Coverage(args) => Ok(coverage(&simulate(args.athletes, cli.seed))),
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
    let profile = read_profile(&args.profile.profile)?;
    let inspected = inspect(&profile, Air::standard(args.elevation * FOOT));
    Ok(match cli.format {
        Format::Text => {
            let file = args.profile.profile.to_string_lossy();
            terminal::check(&profile, &inspected, args.elevation, &file, width())
        }
        Format::Json => json::check(&profile, &inspected, args.elevation),
    })
}

fn apart(cli: &Cli, args: &PagedArgs) -> Result<String, Failure> {
    args.page.check(&[&args.profile.profile])?;
    let profile = read_profile(&args.profile.profile)?;
    let stage = Stage::new(&profile);
    let today = Today::of(&stage);
    let aims = PerSide::from_fn(|side: Side| today.plans.on(side).aims.clone());
    let pairs = pairs(&stage, &aims);
    args.page.write(|| html::apart(&profile, &pairs, &openings(&stage), sights(&stage, &stage.pitches).as_ref()))?;
    Ok(match cli.format {
        Format::Text => terminal::apart(&profile, &pairs, width()),
        Format::Json => json::apart(&profile, &pairs),
    })
}

fn usage_of(cli: &Cli, args: &PagedArgs) -> Result<String, Failure> {
    args.page.check(&[&args.profile.profile])?;
    let profile = read_profile(&args.profile.profile)?;
    let sides = usage(&profile, Asked::DEFAULT.draws, cli.seed);
    args.page.write(|| html::usage(&profile, &sides))?;
    Ok(match cli.format {
        Format::Text => terminal::usage(&profile, &sides, width()),
        Format::Json => json::usage(&profile, &sides),
    })
}

fn advise_on(cli: &Cli, args: &AdviseArgs) -> Result<String, Failure> {
    let profile = match (&args.profile, args.session.as_slice()) {
        (Some(path), []) => {
            args.page.check(&[path])?;
            read_profile(path)?
        }
        _ => super::sessions::profile_of(args, cli.seed)?,
    };
    let question = advice::Question {
        family: args.family,
        command: args.time.command(),
        draws: args.draws as usize,
        seed: cli.seed,
    };
    let advice = advise(&profile, question);
    let reasons = args.why.then(|| why(&advice)).flatten();
    args.page.write(|| html::advise(&advice, sights_with_target(&advice).as_ref()))?;
    Ok(match cli.format {
        Format::Text => terminal::advise(&advice, reasons.as_ref(), width()),
        Format::Json => json::advise(&advice, reasons.as_ref()),
    })
}

fn calibrate(cli: &Cli, args: &CalibrateArgs) -> Result<String, Failure> {
    let map = read_columns(&args.columns)?;
    let options = ReadOptions { map, hand: None, progress: &mut |_| {} };
    let session = read_sessions(std::slice::from_ref(&args.session), options)?;
    let sorted = sort(&session, SortOptions::default());
    let evidence = Evidence::of(&session, &sorted);
    if evidence.cells.is_empty() {
        return Err(Failure::request(
            "no throw of the session has a place at the plate, a side and an outcome",
            "name those columns in the column map",
        ));
    }
    let fitted = fit(&evidence, |_| true, args.members, cli.seed);
    let checked = cross_validate(&evidence, cli.seed);
    Ok(ensemble(&session, &evidence, &fitted, &checked))
}

/// What hitters see of today's pitches and, last, the one to chase.
fn sights_with_target(advice: &Advice) -> Option<PerSide<Sight>> {
    let stage = Stage::new(advice.profile);
    let target = advice.target.iter().map(|target| target.pitch(&stage).thrown);
    let pitches: Vec<Thrown> = stage.pitches.iter().copied().chain(target).collect();
    sights(&stage, &pitches)
}

fn dot(cli: &Cli, args: &DotArgs) -> Result<String, Failure> {
    match (&args.profile, args.target) {
        (_, Some(shape)) => dot_of_target(cli, shape, args.rpm, args.throws),
        (Some(path), None) => dots_of_profile(cli, &read_profile(path)?, args.pitch.as_deref()),
        (None, None) => Err(Failure::request("PROFILE is missing", "name a profile, or a shape with --target")),
    }
}

fn dots_of_profile(cli: &Cli, profile: &Profile, wanted: Option<&str>) -> Result<String, Failure> {
    let stage = Stage::new(profile);
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
    let spins = chosen.iter().map(|pitch| (pitch.name.as_str(), spin_of(&stage, pitch), pitch.is_spin_measured()));
    Ok(match cli.format {
        Format::Text => {
            let pages: Vec<String> =
                spins.map(|(name, spin, measured)| terminal::dot(profile, name, spin, measured, width())).collect();
            pages.join("\n")
        }
        Format::Json => json::dots(spins, profile.athlete.throws),
    })
}

/// A recipe for a shape alone: an ordinary release at sea level, the given total spin, the seams
/// doing nothing.
fn dot_of_target(cli: &Cli, shape: Shape, rpm: f64, hand: Hand) -> Result<String, Failure> {
    let release = Vec3::new(-2.0 * FOOT, 54.5 * FOOT, 5.8 * FOOT);
    let needed = crate::ball::flight::inverse::active_spin_needed(shape, release, Air::SEA_LEVEL, 0.0);
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
    let clock = Clock::from_push(shape.glove_side_break_in, shape.vertical_break_in);
    let spin = Spin { rpm, active_fraction: needed.value / rpm, clock };
    Ok(match cli.format {
        Format::Text => terminal::recipe(&Recipe { shape, spin, seam_in: [0.0; 2] }, needed, hand, width()),
        Format::Json => json::dot("target", spin, Some([0.0; 2]), hand),
    })
}

/// Columns to set text in: `COLUMNS` when set, else the terminal's, else 80.
pub(super) fn width() -> u16 {
    let said = std::env::var("COLUMNS").ok().and_then(|text| text.parse().ok());
    let seen = || terminal_size::terminal_size().map(|(terminal_size::Width(columns), _)| columns);
    said.or_else(seen).unwrap_or(80)
}

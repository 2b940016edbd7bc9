//! The commands `trial` and `progress`, and what `plan` shares with them: the target that is
//! chased and the throws that are read. A throw that says nothing (a double, a lob, a stuck
//! reading) is set aside before anything is judged, as in `sort`.

use std::path::{Path, PathBuf};

use crate::athlete::profile::Profile;
use crate::athlete::session::Session;
use crate::files::{is_same_name, read_profile};
use crate::learn::plan::Refusal;
use crate::learn::progress::{outings, progress as watch};
use crate::learn::target::Target;
use crate::learn::trial::{attempts, trial as judge};
use crate::report::follow::Ground;
use crate::report::{html, json, terminal};
use crate::throws::screened;

use super::Failure;
use super::args::{Cli, Format};
use super::args_follow::{ProgressArgs, TargetArgs, TrialArgs};
use super::args_read::ReadingArgs;
use super::commands::width;
use super::outputs::Named;
use super::page::PageArg;
use super::reading::Reading;

/// The answer of `trial`.
pub(super) fn trial(cli: &Cli, args: &TrialArgs) -> Result<String, Failure> {
    let throws = std::slice::from_ref(&args.trial);
    named(&args.profile, &args.reading, throws, &args.page).check()?;
    let profile = read_profile(&args.profile)?;
    let target = target_of(&profile, &args.target)?;
    let session = screened(reading(&args.reading, &args.profile, &profile)?.throws(throws)?);
    let (attempts, unused) = attempts(&session);
    let trial = judge(&session.grips, &attempts, &profile, &target, cli.seed);
    let cautions: Vec<String> = trial.cautions.iter().chain(&unused).map(ToString::to_string).collect();
    let bars = bars(&profile, &target);
    let ground = Ground { profile: &profile, target: &target, session: &session, bars: &bars, cautions: &cautions };
    args.page.write(|| html::trial(&ground, &trial))?;
    Ok(match cli.format {
        Format::Text => terminal::trial(&ground, &trial, width()),
        Format::Json => json::trial(&ground, &trial),
    })
}

/// The answer of `progress`.
pub(super) fn progress(cli: &Cli, args: &ProgressArgs) -> Result<String, Failure> {
    let path = &args.profile.profile;
    named(path, &args.reading, &args.sessions, &args.page).check()?;
    let profile = read_profile(path)?;
    let target = target_of(&profile, &args.target)?;
    let session = screened(reading(&args.reading, path, &profile)?.throws(&args.sessions)?);
    if let Some(label) = &args.pitch {
        label_is_known(label, &session)?;
    }
    let (outings, doubts) = outings(&session, &profile, &target, args.pitch.as_deref());
    let progress = watch(&outings, &profile, &target);
    let cautions: Vec<String> = progress.cautions.iter().chain(&doubts).map(ToString::to_string).collect();
    let bars = bars(&profile, &target);
    let ground = Ground { profile: &profile, target: &target, session: &session, bars: &bars, cautions: &cautions };
    args.page.write(|| html::progress(&ground, &progress))?;
    let answer = match cli.format {
        Format::Text => terminal::progress(&ground, &progress, width()),
        Format::Json => json::progress(&ground, &progress),
    };
    if args.strict && progress.must_stop() { Err(Failure::Stop { answer }) } else { Ok(answer) }
}

/// The shape asked for, or else the best of the family in his reach.
pub(super) fn target_of(profile: &Profile, args: &TargetArgs) -> Result<Target, Failure> {
    let family = args.family;
    if let Some(shape) = args.target {
        return Ok(Target::wished(profile, family, shape));
    }
    Target::best(profile, family).ok_or_else(|| {
        Failure::request(
            format!("no {family} is in reach for {}", profile.athlete.name),
            "`arsenalfit advise` says why; choose another pitch with --family or give a shape with --target",
        )
    })
}

/// Everything a command line about throws and a profile names.
fn named<'a>(profile: &'a Path, args: &'a ReadingArgs, throws: &'a [PathBuf], page: &'a PageArg) -> Named<'a> {
    Named {
        texts: std::iter::once(profile).chain(args.columns.as_deref()).collect(),
        throws: throws.iter().map(PathBuf::as_path).collect(),
        outputs: page.output().into_iter().collect(),
    }
}

/// How to read the throws of the athlete whose profile is at `path`.
pub(super) fn reading(args: &ReadingArgs, path: &Path, profile: &Profile) -> Result<Reading, Failure> {
    Reading::of(args, None, Some((path, profile.athlete.throws)))
}

/// That some throw has the label asked for.
pub(super) fn label_is_known(label: &str, session: &Session) -> Result<(), Failure> {
    if session.labels.iter().any(|written| is_same_name(written, label)) {
        return Ok(());
    }
    let (allowed, hint) = if session.labels.is_empty() {
        (String::new(), "the files have no column of labels; leave --pitch out, or name the column in a column map")
    } else {
        (format!("one of {}", session.labels.join(", ")), "write the label as it stands in the files")
    };
    let problem = format!("--pitch is \"{label}\", and no throw is labelled so");
    Err(Failure::Request { problem, allowed, hint: hint.into() })
}

/// What speaks against the work as such.
fn bars(profile: &Profile, target: &Target) -> Vec<crate::learn::plan::Reason> {
    Refusal::of(profile, target.family).map(|refusal| refusal.reasons).unwrap_or_default()
}

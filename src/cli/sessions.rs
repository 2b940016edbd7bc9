//! Commands that read throws.

use std::path::{Path, PathBuf};

use crate::athlete::profile::Profile;
use crate::athlete::session::Session;
use crate::files::{Fault, InputError, profile_from_toml, read_proposal, read_text, shown_name, visible};
use crate::report::{answers, column_map};
use crate::throws::profile_text::{ProfileUpdate, updated_profile, written_hand};
use crate::throws::{Options, Sorted};

use super::Failure;
use super::args::{AdviseArgs, Cli, SortArgs};
use super::args_read::SessionArgs;
use super::commands::told;
use super::files::write_whole;
use super::outputs::{Named, Output, Standing, tell};
use super::reading::Reading;

/// The answer of `sort`.
pub(super) fn sort(cli: &Cli, args: &SortArgs) -> Result<String, Failure> {
    if args.explain_columns {
        return explain(&args.sessions[0]);
    }
    let output = args.write.as_deref().map(|path| Output { flag: "--write", path, force: args.page.force });
    named(&args.reading, &args.sessions, None, output).check()?;
    let old = output.map(old_text).transpose()?.unwrap_or_default();
    let reading = reading(&args.reading, args.write.as_deref(), &old)?;
    let session = reading.throws(&args.sessions)?;
    let sorted = crate::throws::sort(&session, options(cli.seed, args.most_pitches));
    let update = output.map(|output| write(output, &old, args, &session, &sorted)).transpose()?;
    let written = update.as_ref().zip(args.write.as_deref());
    told(cli, &answers::sort(&session, &sorted, written), Some(&args.page))
}

/// Everything the command line names.
fn named<'a>(
    args: &'a SessionArgs,
    sessions: &'a [PathBuf],
    profile: Option<&'a Path>,
    output: Option<Output<'a>>,
) -> Named<'a> {
    Named {
        texts: profile.into_iter().chain(args.reading.columns.as_deref()).collect(),
        throws: sessions.iter().map(PathBuf::as_path).collect(),
        outputs: output.into_iter().collect(),
    }
}

/// The profile that is brought up to date; nothing when there is none yet.
fn old_text(output: Output) -> Result<String, Failure> {
    if output.standing()? == Standing::Replaceable { Ok(read_text(output.path)?) } else { Ok(String::new()) }
}

/// How to read, with the hand that the profile's text tells.
fn reading(args: &SessionArgs, profile: Option<&Path>, text: &str) -> Result<Reading, Failure> {
    Reading::of(&args.reading, args.hand, profile.zip(written_hand(text)))
}

/// A profile whose pitches come from throws; what the throws do not tell comes from the profile at
/// `path`, when there is one.
pub(super) fn profile_of(args: &AdviseArgs, seed: u64) -> Result<Profile, Failure> {
    let path = args.profile.as_deref();
    named(&args.reading, &args.session, path, args.page.output()).check()?;
    let old = path.map(read_text).transpose()?.unwrap_or_default();
    let session = reading(&args.reading, path, &old)?.throws(&args.session)?;
    let sorted = crate::throws::sort(&session, options(seed, 8));
    let origin = path.map_or_else(|| "profile made from the session".into(), shown_name);
    let update = updated(&old, &origin, "unnamed athlete", &session, &sorted)?;
    let mut profile = read_back(&old, &update, &origin)?;
    profile.assumptions.extend(session.notes);
    Ok(profile)
}

fn options(seed: u64, most_pitches: u8) -> Options {
    Options { seed, most_pitches: usize::from(most_pitches) }
}

/// A column map for a file, as TOML, with what each column was taken for in comments.
fn explain(path: &Path) -> Result<String, Failure> {
    Ok(column_map(&shown_name(path), &read_proposal(path)?))
}

fn write(
    output: Output,
    old: &str,
    args: &SortArgs,
    session: &Session,
    sorted: &Sorted,
) -> Result<ProfileUpdate, Failure> {
    let origin = shown_name(output.path);
    let update = updated(old, &origin, &args.name, session, sorted)?;
    read_back(old, &update, &origin)?;
    write_whole(output, &update.text)?;
    Ok(update)
}

/// The profile that the new text is.
fn read_back(old: &str, update: &ProfileUpdate, origin: &str) -> Result<Profile, Failure> {
    for sentence in &update.notes {
        tell(&visible(sentence));
    }
    profile_from_toml(&update.text, origin).map_err(|error| match (error, profile_from_toml(old, origin)) {
        (InputError::Faulty { faults, .. }, before) => no_profile(&faults, before.err()),
        (other, _) => other.into(),
    })
}

/// What was wrong before is told in the text the user knows; what came with the throws is told without a
/// place, for that text was never written.
fn no_profile(faults: &[Fault], before: Option<InputError>) -> Failure {
    let is_new = |was: &Fault| faults.iter().all(|fault| fault.field != was.field || fault.found != was.found);
    if let Some(InputError::Faulty { origin, text, faults }) = before {
        let old: Vec<Fault> = faults.into_iter().filter(|was| !is_new(was)).collect();
        if !old.is_empty() {
            return InputError::Faulty { origin, text, faults: old }.into();
        }
    }
    let told = faults.first().map(|fault| {
        let hint = fault.hint.clone().unwrap_or_else(|| "check the hand, the units and the signs".into());
        (format!("{} is {}", fault.field, fault.found), fault.allowed.clone(), hint)
    });
    let (problem, allowed, hint) = told.unwrap_or_default();
    Failure::Request { problem: format!("the throws make no profile: {problem}"), allowed, hint }
}

/// The old profile with what the throws say; one that is no TOML is told as by every command.
fn updated(old: &str, origin: &str, name: &str, session: &Session, sorted: &Sorted) -> Result<ProfileUpdate, Failure> {
    if sorted.groups.is_empty() {
        let problem =
            format!("no pitch is found in {} throws, so there is nothing to make a profile of", sorted.rows());
        return Err(Failure::request(
            problem,
            "`arsenalfit sort` tells why; give more throws, or check the column map",
        ));
    }
    updated_profile(old, name, session, sorted).map_err(|error| match profile_from_toml(old, origin) {
        Err(fault) => fault.into(),
        Ok(_) => {
            Failure::request(format!("{origin} cannot be brought up to date: {error}"), "mend it, or leave it out")
        }
    })
}

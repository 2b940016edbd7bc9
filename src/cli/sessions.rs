//! Commands that read throws.

use std::path::{Path, PathBuf};

use crate::athlete::profile::Profile;
use crate::athlete::session::Session;
use crate::base::geometry::Hand;
use crate::files::{ColumnMap, ReadOptions, profile_from_toml, read_columns, read_proposal, read_sessions, read_text};
use crate::report::{answers, column_map};
use crate::throws::profile_text::{ProfileUpdate, updated_profile};
use crate::throws::{Options, Sorted};

use super::Failure;
use super::args::{Cli, SessionArgs, SortArgs};
use super::commands::told;
use super::files::write_whole;
use super::progress::Progress;

/// The answer of `sort`.
pub(super) fn sort(cli: &Cli, args: &SortArgs) -> Result<String, Failure> {
    if args.explain_columns {
        return explain(&args.sessions[0]);
    }
    let session = read(&args.sessions, &args.reading)?;
    let sorted = crate::throws::sort(&session, options(cli.seed, args.most_pitches));
    let update = args.write.as_deref().map(|path| write(path, args, &session, &sorted)).transpose()?;
    let written = update.as_ref().zip(args.write.as_deref());
    told(cli, &answers::sort(&session, &sorted, written), Some(&args.page))
}

/// A profile whose pitches come from throws; what the throws do not tell comes from the profile at
/// `path`, when there is one.
pub(super) fn profile_of(
    path: Option<&Path>,
    sessions: &[PathBuf],
    reading: &SessionArgs,
    seed: u64,
) -> Result<Profile, Failure> {
    let old = path.map(read_text).transpose()?.unwrap_or_default();
    let session = read(sessions, reading)?;
    let sorted = crate::throws::sort(&session, options(seed, 8));
    let origin = path.map_or_else(|| "profile made from the session".into(), |path| path.display().to_string());
    let update = updated(&old, &origin, "unnamed athlete", &session, &sorted)?;
    Ok(profile_from_toml(&update.text, &origin)?)
}

fn options(seed: u64, most_pitches: u8) -> Options {
    Options { seed, most_pitches: usize::from(most_pitches) }
}

/// The throws of some files.
pub(super) fn read(paths: &[PathBuf], reading: &SessionArgs) -> Result<Session, Failure> {
    let map = reading.columns.as_deref().map(read_columns).transpose()?.unwrap_or_else(ColumnMap::default);
    let total = paths.iter().filter_map(|path| std::fs::metadata(path).ok()).map(|file| file.len()).sum();
    let progress = Progress::new(total, "reading");
    let hand: Option<Hand> = reading.hand;
    Ok(read_sessions(paths, ReadOptions { map, hand, progress: &mut |done| progress.reach(done) })?)
}

/// A column map for a file, as TOML, with what each column was taken for in comments.
fn explain(path: &Path) -> Result<String, Failure> {
    Ok(column_map(&path.to_string_lossy(), &read_proposal(path)?))
}

fn write(path: &Path, args: &SortArgs, session: &Session, sorted: &Sorted) -> Result<ProfileUpdate, Failure> {
    let old = if path.exists() { read_text(path)? } else { String::new() };
    if !old.is_empty() && !args.force {
        return Err(Failure::request(
            format!("{} is there already", path.display()),
            "add --force to bring it up to date; your comments and keys stay",
        ));
    }
    let update = updated(&old, &path.to_string_lossy(), &args.name, session, sorted)?;
    profile_from_toml(&update.text, &path.to_string_lossy())?;
    write_whole(path, &update.text)?;
    Ok(update)
}

/// The old profile with what the throws say; one that is no TOML is told as by every command.
fn updated(old: &str, origin: &str, name: &str, session: &Session, sorted: &Sorted) -> Result<ProfileUpdate, Failure> {
    updated_profile(old, name, session, sorted).map_err(|error| match profile_from_toml(old, origin) {
        Err(fault) => fault.into(),
        Ok(_) => {
            Failure::request(format!("{origin} cannot be brought up to date: {error}"), "mend it, or leave it out")
        }
    })
}

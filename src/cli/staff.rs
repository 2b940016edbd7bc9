//! The commands about several athletes: `compare` and `roster`.

use std::io;
use std::path::{Path, PathBuf};

use rayon::prelude::*;

use crate::athlete::profile::Profile;
use crate::decide::compare::Comparison;
use crate::decide::roster::{Standing, ranking};
use crate::files::{InputError, read_profile, shown_name};
use crate::report::answers::{self, Member, Roster};

use super::Failure;
use super::args::{Cli, CompareArgs, RosterArgs};
use super::commands::told;
use super::outputs::tell;
use super::progress::Progress;

/// Two athletes beside each other.
pub(super) fn compare_two(cli: &Cli, args: &CompareArgs) -> Result<String, Failure> {
    args.page.check(&[&args.first, &args.second])?;
    let (mut first, mut second) = (read_profile(&args.first)?, read_profile(&args.second)?);
    if first.athlete.name == second.athlete.name {
        // Two athletes of one name are told apart by their files.
        for (profile, path) in [(&mut first, &args.first), (&mut second, &args.second)] {
            profile.athlete.name = format!("{} ({})", profile.athlete.name, shown_name(path));
        }
    }
    let comparison = Comparison::of([&first, &second], args.family, args.time.command(), args.draws, cli.seed);
    let files = [&args.first, &args.second].map(|path| path.to_string_lossy());
    told(cli, &answers::compare(&comparison, [&files[0], &files[1]]), Some(&args.page))
}

/// A folder of athletes, ranked. Bad profiles are told beside the answer.
pub(super) fn roster(cli: &Cli, args: &RosterArgs) -> Result<String, Failure> {
    let files = profiles_in(&args.folder)?;
    args.page.check(&files.iter().map(PathBuf::as_path).collect::<Vec<_>>())?;
    let command = args.time.command();
    let judge = |profile: &Profile| Standing::of(profile, command, args.draws, cli.seed);
    let (members, bad) = read_and_judge(&files, judge);
    let members = ranked(members);
    let roster = Roster { members: &members, command, unread: bad.len(), draws: args.draws.get() };
    let answer = told(cli, &answers::roster(&roster), Some(&args.page))?;
    let answer = if members.is_empty() { String::new() } else { answer };
    if bad.is_empty() { Ok(answer) } else { Err(Failure::InPart { answer, bad }) }
}

/// The profiles of a folder in the order of their names.
fn profiles_in(folder: &Path) -> Result<Vec<PathBuf>, Failure> {
    let unreadable = |error: &io::Error| {
        let problem = match error.kind() {
            io::ErrorKind::NotFound => "there is no such folder".to_owned(),
            io::ErrorKind::NotADirectory => "it is no folder".to_owned(),
            io::ErrorKind::PermissionDenied => "permission denied".to_owned(),
            _ => error.to_string(),
        };
        Failure::request(format!("cannot read {}: {problem}", folder.display()), "name a folder of profiles (*.toml)")
    };
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(|error| unreadable(&error))? {
        let path = entry.map_err(|error| unreadable(&error))?.path();
        if path.extension().is_none_or(|extension| !extension.eq_ignore_ascii_case("toml")) {
            continue;
        }
        // What cannot be looked at is left to the reading, which says why it fails.
        if path.metadata().is_ok_and(|file| !file.is_file()) {
            tell(&format!("skipped {}, which is no ordinary file", shown_name(&path)));
        } else {
            files.push(path);
        }
    }
    if files.is_empty() {
        return Err(Failure::request(
            format!("there is no profile (*.toml) in {}", folder.display()),
            "write one with `arsenalfit new`",
        ));
    }
    files.sort();
    Ok(files)
}

/// Everybody with their standing, and every file that could not be used, both in the order of files.
fn read_and_judge(files: &[PathBuf], judge: impl Fn(&Profile) -> Standing + Sync) -> (Vec<Member>, Vec<InputError>) {
    let progress = Progress::new(files.len() as u64, "judging");
    let judged: Vec<Result<Member, InputError>> = files
        .par_iter()
        .map(|file| {
            let profile = read_profile(file);
            let member = profile.map(|profile| Member { file: shown_name(file), standing: judge(&profile), profile });
            progress.step();
            member
        })
        .collect();
    drop(progress);
    let (mut members, mut bad) = (Vec::new(), Vec::new());
    for one in judged {
        match one {
            Ok(member) => members.push(member),
            Err(error) => bad.push(error),
        }
    }
    (members, bad)
}

fn ranked(members: Vec<Member>) -> Vec<Member> {
    let standings: Vec<_> = members.iter().map(|member| member.standing.clone()).collect();
    let mut members: Vec<Option<Member>> = members.into_iter().map(Some).collect();
    ranking(&standings).into_iter().filter_map(|place| members[place].take()).collect()
}

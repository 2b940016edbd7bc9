//! The commands about several athletes: `compare` and `roster`.

use std::io::{self, IsTerminal};
use std::path::{Path, PathBuf};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};
use rayon::prelude::*;

use crate::decide::advice::Question as Asked;
use crate::decide::compare::compare;
use crate::decide::roster::{ranking, standing};
use crate::files::{InputError, read_profile, shown_name};
use crate::report::staff::{Member, Roster};
use crate::report::{html, json, terminal};

use super::Failure;
use super::args::{Cli, CompareArgs, Format, RosterArgs};
use super::commands::width;
use super::outputs::tell;

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
    let (draws, command) = (args.draws as usize, args.time.command());
    let question = Asked { family: args.family, command, draws, seed: cli.seed };
    let comparison = compare([&first, &second], question);
    args.page.write(|| html::compare(&comparison))?;
    Ok(match cli.format {
        Format::Text => terminal::compare(&comparison, width()),
        Format::Json => json::compare(&comparison),
    })
}

/// A folder of athletes, ranked. Bad profiles are told beside the answer.
pub(super) fn roster(cli: &Cli, args: &RosterArgs) -> Result<String, Failure> {
    let files = profiles_in(&args.folder)?;
    args.page.check(&files.iter().map(PathBuf::as_path).collect::<Vec<_>>())?;
    let question = Asked { draws: args.draws as usize, seed: cli.seed, command: args.time.command(), ..Asked::DEFAULT };
    let (members, bad) = read_and_judge(&files, question);
    let members = ranked(members);
    let roster = Roster { members: &members, command: question.command, unread: bad.len(), draws: question.draws };
    args.page.write(|| html::roster(&roster))?;
    let answer = match cli.format {
        Format::Text => terminal::roster(&roster, width()),
        Format::Json => json::roster(&members),
    };
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

/// Everybody with his standing, and every file that could not be used, both in the order of files.
fn read_and_judge(files: &[PathBuf], question: Asked) -> (Vec<Member>, Vec<InputError>) {
    let progress = progress(files.len() as u64);
    let judged: Vec<Result<Member, InputError>> = files
        .par_iter()
        .map(|file| {
            let profile = read_profile(file);
            let member = profile.map(|profile| Member {
                file: shown_name(file),
                standing: standing(&profile, question),
                profile,
            });
            progress.inc(1);
            member
        })
        .collect();
    progress.finish_and_clear();
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

/// A bar on a terminal, nothing elsewhere.
fn progress(count: u64) -> ProgressBar {
    let target = if io::stderr().is_terminal() { ProgressDrawTarget::stderr() } else { ProgressDrawTarget::hidden() };
    let bar = ProgressBar::with_draw_target(Some(count), target);
    // A template that is wrong would show the default bar.
    match ProgressStyle::with_template("{wide_bar} {pos} of {len}") {
        Ok(style) => bar.with_style(style),
        Err(_) => bar,
    }
}

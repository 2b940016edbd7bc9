//! How a command reads throws: column map, hand and pitcher, settled once for all its files.
//!
//! Every input is opened once, so that a pipe serves as well as a file. The hand may be told in three
//! places; when they do not agree nobody guesses.

use std::path::{Path, PathBuf};

use crate::athlete::session::Session;
use crate::base::geometry::Hand;
use crate::files::{ColumnMap, ReadOptions, read_columns, read_sessions, shown_name};

use super::Failure;
use super::args_read::ReadingArgs;
use super::progress::Progress;

/// The way to read throws.
pub(super) struct Reading {
    map: ColumnMap,
    hand: Option<Hand>,
}

/// Who tells the throwing hand, and which.
type Told = (String, Hand);

impl Reading {
    /// From the options, and from the profile (as it is named) that tells the hand.
    pub(super) fn of(args: &ReadingArgs, flag: Option<Hand>, profile: Option<(&Path, Hand)>) -> Result<Self, Failure> {
        let path = args.columns.as_deref();
        let mut map = path.map(read_columns).transpose()?.unwrap_or_default();
        let of_profile = profile.map(|(path, hand)| (format!("the profile {}", shown_name(path)), hand));
        let of_map = path.zip(map.hand).map(|(path, hand)| (format!("the column map {}", shown_name(path)), hand));
        let of_flag = flag.map(|hand| ("--hand".to_owned(), hand));
        let told: Vec<Told> = [of_profile, of_map, of_flag].into_iter().flatten().collect();
        let hand = agreed(&told)?;
        map.pitcher = args.pitcher.clone().or(map.pitcher);
        Ok(Self { map, hand })
    }

    /// The throws of some files.
    pub(super) fn throws(&self, paths: &[PathBuf]) -> Result<Session, Failure> {
        let total = paths.iter().filter_map(|path| std::fs::metadata(path).ok()).map(|file| file.len()).sum();
        let progress = Progress::new(total, "reading");
        let options =
            ReadOptions { map: self.map.clone(), hand: self.hand, progress: &mut |done| progress.reach(done) };
        Ok(read_sessions(paths, options)?)
    }
}

/// The hand that all who tell it agree on.
fn agreed(told: &[Told]) -> Result<Option<Hand>, Failure> {
    let Some((_, first)) = told.first() else { return Ok(None) };
    if told.iter().all(|(_, hand)| hand == first) {
        return Ok(Some(*first));
    }
    let said: Vec<String> = told.iter().map(|(who, hand)| format!("{hand} in {who}")).collect();
    Err(Failure::Request {
        problem: format!("the throwing hand is {}", said.join(", ")),
        allowed: "the same wherever it is told".into(),
        hint: "correct the one that is wrong, or leave it out".into(),
    })
}

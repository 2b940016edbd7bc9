//! The files a command line names: each input once, each output its own file, and one rule for a file
//! that is there already.
//!
//! A file that is there is replaced when it says in its head that this program made it (pages,
//! calendars and manual pages do), or when `--force` is given; any other is left alone. All of it is
//! checked before any work is done, and again where the file takes its name.

use std::fs::File;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use crate::files::shown_name;

use super::Failure;

/// A file to write.
#[derive(Debug, Clone, Copy)]
pub(super) struct Output<'a> {
    /// The option that names it.
    pub(super) flag: &'static str,
    /// The name.
    pub(super) path: &'a Path,
    /// Whether `--force` is given.
    pub(super) force: bool,
}

/// What stands at an output's name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Standing {
    /// Nothing: the file must be the first of its name.
    Free,
    /// A file that may be replaced.
    Replaceable,
}

impl Output<'_> {
    /// What stands there, unless it must not be written.
    pub(super) fn standing(&self) -> Result<Standing, Failure> {
        let path = self.path;
        if path.as_os_str() == "-" {
            let hint = "standard output holds the answer itself";
            let problem = format!("{} is \"-\"", self.flag);
            return Err(Failure::Request { problem, allowed: "the name of a file".into(), hint: hint.into() });
        }
        if path.symlink_metadata().is_err() {
            return Ok(Standing::Free);
        }
        let Ok(file) = path.metadata() else {
            let problem = format!("{} is a link that leads to no file", path.display());
            return Err(Failure::request(problem, "remove the link, or choose another name"));
        };
        if file.is_dir() || !file.is_file() {
            // A device or a pipe must not be replaced by a file.
            let kind = if file.is_dir() { io::ErrorKind::IsADirectory } else { io::ErrorKind::InvalidInput };
            return Err(Failure::unwritten(path, &kind.into()));
        }
        if self.force || file.len() == 0 || is_ours(path) {
            return Ok(Standing::Replaceable);
        }
        Err(self.is_there())
    }

    /// A file of that name is there and is not ours.
    pub(super) fn is_there(&self) -> Failure {
        let problem = format!("{} is there already", self.path.display());
        let hint = match self.flag {
            "--write" => "add --force to bring it up to date; your comments and keys stay",
            _ => "choose another name, or add --force to write over it",
        };
        Failure::request(problem, hint)
    }
}

/// What pages, calendars and manual pages of this program have in their head.
const MARKS: [&[u8]; 3] =
    [b"<meta name=\"generator\" content=\"arsenalfit", b"PRODID:-//arsenalfit//", b"\n.TH arsenalfit"];
/// How far a head reaches.
const HEAD: u64 = 4096;

fn is_ours(path: &Path) -> bool {
    let mut head = Vec::new();
    let read = File::open(path).and_then(|file| file.take(HEAD).read_to_end(&mut head));
    read.is_ok() && MARKS.iter().any(|mark| head.windows(mark.len()).any(|part| part == *mark))
}

/// Everything a command line names.
#[derive(Debug, Default)]
pub(super) struct Named<'a> {
    /// What is read once as a whole: profiles and column maps.
    pub(super) texts: Vec<&'a Path>,
    /// Throws; each counts once.
    pub(super) throws: Vec<&'a Path>,
    /// What is written.
    pub(super) outputs: Vec<Output<'a>>,
}

impl Named<'_> {
    /// Refuses what would be read twice, written twice, or written over what is read.
    pub(super) fn check(&self) -> Result<(), Failure> {
        self.check_inputs()?;
        let mut written: Vec<(PathBuf, Output)> = Vec::new();
        let read: Vec<(PathBuf, &Path)> = self.inputs().map(|path| (place(path), path)).collect();
        for output in &self.outputs {
            let at = place(output.path);
            if let Some((_, input)) = read.iter().find(|(place, _)| *place == at) {
                let problem = format!("{} is {}, which this command reads", output.flag, shown_name(input));
                return Err(Failure::request(problem, "name another file to write"));
            }
            if let Some((_, other)) = written.iter().find(|(place, _)| *place == at) {
                let problem = format!("{} and {} are one file, {}", other.flag, output.flag, output.path.display());
                return Err(Failure::request(problem, "give each file its own name"));
            }
            output.standing()?;
            written.push((at, *output));
        }
        Ok(())
    }

    fn inputs(&self) -> impl Iterator<Item = &Path> {
        self.texts.iter().chain(&self.throws).copied()
    }

    fn check_inputs(&self) -> Result<(), Failure> {
        let twice =
            |path: &Path| Failure::request(format!("{} is given twice", shown_name(path)), "name every input once");
        let is_stream = |path: &&Path| [Path::new("-"), Path::new("/dev/stdin")].contains(path);
        if let Some(second) = self.inputs().filter(is_stream).nth(1) {
            return Err(twice(second));
        }
        let places: Vec<PathBuf> = self.throws.iter().map(|path| place(path)).collect();
        let again = (1..places.len()).find(|&later| places[..later].contains(&places[later]));
        again.map_or(Ok(()), |later| Err(twice(self.throws[later])))
    }
}

/// Where a path leads, however it is spelled.
fn place(path: &Path) -> PathBuf {
    let in_folder = || {
        let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
        Some(folder.canonicalize().ok()?.join(path.file_name()?))
    };
    path.canonicalize().ok().or_else(in_folder).unwrap_or_else(|| path.to_owned())
}

/// Files named of many.
const MOST_NAMED: usize = 4;

/// Tells on standard error which files were written.
pub(super) fn confirm(paths: &[&Path]) {
    let names: Vec<String> = paths.iter().take(MOST_NAMED).map(|path| shown_name(path)).collect();
    let more = paths.len().saturating_sub(MOST_NAMED);
    let rest = if more > 0 { format!(" and {more} more") } else { String::new() };
    if !names.is_empty() {
        tell(&format!("wrote {}{rest}", names.join(", ")));
    }
}

/// A word beside the answer.
pub(super) fn tell(text: &str) {
    // Nobody may be reading.
    let _ = writeln!(io::stderr().lock(), "{text}");
}

//! `--report`: an answer as a page, beside the text.
//!
//! A page replaces an older page and nothing else, so that a slip of the tongue costs nobody a file.

use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};

use clap::Args;
use clap::builder::{PathBufValueParser, TypedValueParser};

use super::Failure;
use super::files::{Ready, ready};

/// Where a page goes.
#[derive(Debug, Args)]
pub(super) struct PageArg {
    /// Also write a page with pictures: one self-contained HTML file, for screen, phone and print. An
    /// older page of that name is replaced.
    #[arg(long, value_name = "FILE.html", value_parser = PathBufValueParser::new().try_map(new_or_a_page))]
    pub(super) report: Option<PathBuf>,
}

impl PageArg {
    /// Writes the page that `make` sets, when one is asked for.
    pub(super) fn write(&self, make: impl FnOnce() -> String) -> Result<(), Failure> {
        self.ready(make)?.map_or(Ok(()), Ready::put)
    }

    /// The same page before it takes its name.
    pub(super) fn ready(&self, make: impl FnOnce() -> String) -> Result<Option<Ready<'_>>, Failure> {
        self.report.as_deref().map(|path| ready(path, &make())).transpose()
    }
}

/// A path where a page may go. What cannot be read is left to the writing, which says why it fails.
fn new_or_a_page(path: PathBuf) -> Result<PathBuf, String> {
    if holds_something_else(&path) {
        return Err("a new file, or a page to replace\nthat file is there and is no page: choose another name".into());
    }
    Ok(path)
}

fn holds_something_else(path: &Path) -> bool {
    const START: &[u8] = b"<!doctype html";
    let mut start = Vec::new();
    let is_file = path.metadata().is_ok_and(|file| file.is_file());
    let read = is_file.then(|| File::open(path).and_then(|file| file.take(START.len() as u64).read_to_end(&mut start)));
    read.is_some_and(|read| read.is_ok()) && !start.is_empty() && !start.eq_ignore_ascii_case(START)
}

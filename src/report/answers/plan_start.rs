//! What a plan starts from, or why there is none.

use crate::athlete::eligibility::Bar;
use crate::athlete::profile::Profile;
use crate::decide::advice::Advice;
use crate::decide::verdict::Verdict;
use crate::learn::plan::NoRest;
use crate::learn::progress::Finding;

use super::super::content::{Command, Text, text};
use super::super::words::advice::headline;

/// What a plan starts from.
#[derive(Debug, Clone, Copy)]
pub struct Start<'a> {
    /// Who is to learn.
    pub profile: &'a Profile,
    /// Where the profile lies.
    pub file: &'a str,
    /// What was advised, when that was asked.
    pub advice: Option<&'a Advice>,
    /// What the last outings say must come first.
    pub stops: &'a [Finding],
    /// Files written beside the answer.
    pub written: &'a [String],
}

/// Why there is no plan.
#[derive(Debug, Clone, Copy)]
pub enum NoPlan<'a> {
    /// Health or age forbid it.
    Barred(&'a Bar),
    /// The dates leave too little of the year without throwing.
    NoRest(NoRest),
    /// The advice is against the pitch.
    Advised(&'a Advice),
}

impl Start<'_> {
    /// What the advice says about the pitch that is planned, when it is not a plain yes.
    pub(crate) fn advised(&self) -> Option<Text> {
        let said = self.advice.filter(|said| said.verdict != Verdict::Add)?;
        let ask = Command::arsenalfit(["advise", self.file, "--family", said.family.name()]);
        Some(text![headline(said), " Why is said by ", ask])
    }
}

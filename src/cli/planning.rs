//! The command `plan`: asks whether there should be one at all, then lays it out and writes it.
//!
//! A plan that is refused is an answer like any other; then no file is written, and that is said.
//! Files that are there already are left alone unless `--force` is given.

use std::path::Path;

use crate::athlete::eligibility::Eligibility;
use crate::athlete::profile::Profile;
use crate::decide::advice::Advice;
use crate::decide::draws::DRAWS;
use crate::decide::model::Model;
use crate::decide::new_pitch::Command;
use crate::decide::verdict::Verdict;
use crate::files::{read_profile, visible};
use crate::learn::plan::{Answer, Measured, Plan, Request, Span, SpanError, plan as lay_out};
use crate::learn::progress::{Finding, Severity, outings, progress};
use crate::learn::target::Target;
use crate::learn::trial::{attempts, trial};
use crate::report::answers::{self, NoPlan, Start};
use crate::report::calendar;

use super::Failure;
use super::args::Cli;
use super::args_follow::PlanArgs;
use super::commands::told;
use super::files::{Ready, ready};
use super::follow::{target_of, throws};

/// The answer of `plan`.
pub(super) fn plan(cli: &Cli, args: &PlanArgs) -> Result<String, Failure> {
    each_its_own(args)?;
    for path in files(args) {
        leave_alone(path, args.force)?;
    }
    let span = Span::new(args.start, args.end).map_err(no_span)?;
    let profile = read_profile(&args.profile.profile)?;
    let family = args.target.family;
    if let Eligibility::Barred(bar) = Eligibility::of(&profile, family) {
        return no_plan(cli, args, &profile, &NoPlan::Barred(&bar));
    }
    let model = Model::new(&profile, DRAWS, cli.seed);
    let advice = args.target.target.is_none().then(|| Advice::of(&model, family, Command::Mastered));
    if let Some(advice) = advice.as_ref().filter(|advice| advice.verdict == Verdict::NotNow) {
        return no_plan(cli, args, &profile, &NoPlan::Advised(advice));
    }
    let target = target_of(&model, &args.target)?;
    let known = Known::read(cli, args, &profile, &target)?;
    let request = Request { profile: &profile, target: &target, span, weekdays: args.days, measured: known.measured };
    match lay_out(&request) {
        Answer::Refused(bar) => no_plan(cli, args, &profile, &NoPlan::Barred(&bar)),
        Answer::Plan(plan) => written(cli, args, &profile, &plan, &known, advice.as_ref()),
    }
}

fn files(args: &PlanArgs) -> impl Iterator<Item = &Path> {
    [&args.ics, &args.markdown].into_iter().flatten().map(std::path::PathBuf::as_path)
}

/// One file cannot hold two answers.
fn each_its_own(args: &PlanArgs) -> Result<(), Failure> {
    let asked: Vec<&Path> = files(args).chain(args.page.report.as_deref()).collect();
    let twice = (1..asked.len()).find(|&later| asked[..later].contains(&asked[later]));
    twice.map_or(Ok(()), |later| {
        Err(Failure::request(format!("{} is asked for twice", asked[later].display()), "give each file its own name"))
    })
}

fn leave_alone(path: &Path, force: bool) -> Result<(), Failure> {
    if force || !path.exists() {
        return Ok(());
    }
    let problem = format!("{} is there already", path.display());
    Err(Failure::request(problem, "choose another name, or add --force to write over it"))
}

fn no_span(error: SpanError) -> Failure {
    let hint = match error {
        SpanError::EndBeforeStart { .. } => "exchange --start and --end, or correct one of them",
        SpanError::TooLong { .. } => "choose an earlier --end; a further plan can follow",
    };
    Failure::request(error.to_string(), hint)
}

fn no_plan(cli: &Cli, args: &PlanArgs, profile: &Profile, why: &NoPlan) -> Result<String, Failure> {
    let unwritten: Vec<String> = files(args).map(|path| visible(&path.to_string_lossy())).collect();
    let file = args.profile.profile.to_string_lossy();
    told(cli, &answers::no_plan(profile, &file, why, &unwritten), Some(&args.page))
}

/// What throws already made say.
struct Known {
    measured: Measured,
    stops: Vec<Finding>,
}

impl Known {
    fn read(cli: &Cli, args: &PlanArgs, profile: &Profile, target: &Target) -> Result<Self, Failure> {
        let mut known = Self { measured: Measured::default(), stops: Vec::new() };
        if let Some(path) = &args.trial {
            let session = throws(std::slice::from_ref(path), &args.columns, profile)?;
            let trial = trial(&session.grips, &attempts(&session).0, profile, target, cli.seed);
            known.measured = Measured::from_trial(&trial);
        }
        if !args.session.is_empty() {
            let session = throws(&args.session, &args.columns, profile)?;
            let progress = progress(&outings(&session, profile, target, None).0, profile, target);
            known.measured = known.measured.and(Measured::from_progress(&progress));
            known.stops = progress.findings.into_iter().filter(|found| found.severity == Severity::Stop).collect();
        }
        Ok(known)
    }
}

fn written(
    cli: &Cli,
    args: &PlanArgs,
    profile: &Profile,
    plan: &Plan,
    known: &Known,
    advice: Option<&Advice>,
) -> Result<String, Failure> {
    let names: Vec<String> = files(args).map(|path| visible(&path.to_string_lossy())).collect();
    let file = args.profile.profile.to_string_lossy();
    let start = Start { profile, file: &file, advice, stops: &known.stops, written: &names };
    let answer = answers::plan(&start, plan);
    let calendar = args.ics.as_deref().map(|path| ready(path, &calendar(plan))).transpose()?;
    let sheet = args.markdown.as_deref().map(|path| ready(path, &answers::plan_sheet(plan).markdown())).transpose()?;
    let page = args.page.ready(|| answer.page())?;
    [calendar, sheet, page].into_iter().flatten().try_for_each(Ready::put)?;
    told(cli, &answer, None)
}

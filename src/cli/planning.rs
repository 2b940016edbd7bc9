//! The command `plan`: asks whether there should be one at all, then lays it out and writes it.
//!
//! A plan that is refused is an answer like any other; then no file is written, and that is said.

use std::path::PathBuf;

use crate::athlete::eligibility::Eligibility;
use crate::athlete::profile::Profile;
use crate::athlete::session::Session;
use crate::decide::advice::Advice;
use crate::decide::draws::DRAWS;
use crate::decide::model::Model;
use crate::decide::new_pitch::Command;
use crate::decide::verdict::Verdict;
use crate::files::{read_profile, shown_name};
use crate::learn::plan::{Answer, Measured, Plan, Request, Span, SpanError, plan as lay_out};
use crate::learn::progress::{Finding, Progress, Severity, outings, progress};
use crate::learn::target::Target;
use crate::learn::trial::{attempts, trial};
use crate::report;
use crate::report::answers::{self, NoPlan, Start};
use crate::throws::screened;

use super::Failure;
use super::args::Cli;
use super::args_follow::PlanArgs;
use super::commands::told;
use super::files::{put_all, ready};
use super::follow::{label_is_known, reading, target_of};
use super::outputs::{Named, Output};

/// The answer of `plan`.
pub(super) fn plan(cli: &Cli, args: &PlanArgs) -> Result<String, Failure> {
    named(args).check()?;
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
        Answer::NoRest(dates) => no_plan(cli, args, &profile, &NoPlan::NoRest(dates)),
        Answer::Plan(plan) => written(cli, args, &known.told_by(&profile), &plan, &known, advice.as_ref()),
    }
}

/// The calendar and the text, when they are asked for.
fn outputs(args: &PlanArgs) -> [Option<Output<'_>>; 2] {
    let force = args.page.force;
    [("--ics", &args.ics), ("--markdown", &args.markdown)]
        .map(|(flag, path)| path.as_deref().map(|path| Output { flag, path, force }))
}

/// Everything the command line names.
fn named(args: &PlanArgs) -> Named<'_> {
    Named {
        texts: std::iter::once(&args.profile.profile).chain(&args.reading.columns).map(PathBuf::as_path).collect(),
        throws: args.trial.iter().chain(&args.session).map(PathBuf::as_path).collect(),
        outputs: outputs(args).into_iter().flatten().chain(args.page.output()).collect(),
    }
}

fn names(args: &PlanArgs) -> Vec<String> {
    outputs(args).into_iter().flatten().map(|output| shown_name(output.path)).collect()
}

fn no_span(error: SpanError) -> Failure {
    let hint = match error {
        SpanError::FarOff { .. } => "correct --start or --end",
        SpanError::EndBeforeStart { .. } => "exchange --start and --end, or correct one of them",
        SpanError::TooLong { .. } => "choose an earlier --end; a further plan can follow",
    };
    Failure::request(error.to_string(), hint)
}

fn no_plan(cli: &Cli, args: &PlanArgs, profile: &Profile, why: &NoPlan) -> Result<String, Failure> {
    let unwritten = names(args);
    let file = args.profile.profile.to_string_lossy();
    told(cli, &answers::no_plan(profile, &file, why, &unwritten), Some(&args.page))
}

/// What throws already made say.
struct Known {
    measured: Measured,
    stops: Vec<Finding>,
    /// What could not be understood in them.
    notes: Vec<String>,
}

impl Known {
    fn read(cli: &Cli, args: &PlanArgs, profile: &Profile, target: &Target) -> Result<Self, Failure> {
        let mut known = Self { measured: Measured::default(), stops: Vec::new(), notes: Vec::new() };
        let reading = reading(&args.reading, &args.profile.profile, profile)?;
        if let Some(path) = &args.trial {
            let session = screened(reading.throws(std::slice::from_ref(path))?);
            let trial = trial(&session.grips, &attempts(&session).0, profile, target, cli.seed);
            known.measured = Measured::from_trial(&trial);
            known.notes.extend(session.notes);
        }
        if !args.session.is_empty() {
            let session = screened(reading.throws(&args.session)?);
            if let Some(label) = &args.pitch {
                label_is_known(label, &session)?;
            }
            let (outings, doubts) = outings(&session, profile, target, args.pitch.as_deref());
            let progress = progress(&outings, profile, target);
            known.notes.extend(none_is_new(&progress, &session, target));
            known.notes.extend(doubts.iter().map(|&doubt| answers::doubt(doubt)).chain(session.notes));
            known.measured = known.measured.and(Measured::from_progress(&progress));
            known.stops = progress.findings.into_iter().filter(|found| found.severity == Severity::Stop).collect();
        }
        Ok(known)
    }

    /// The profile with what could not be understood in the throws among what is assumed.
    fn told_by(&self, profile: &Profile) -> Profile {
        let mut told = profile.clone();
        told.assumptions.extend(self.notes.iter().cloned());
        told
    }
}

/// What to say when no throw of the outings is the new pitch's.
fn none_is_new(progress: &Progress, session: &Session, target: &Target) -> Option<String> {
    let is_thrown = progress.new_pitch.by_outing.iter().any(|outing| outing.throws > 0);
    let labels = session.labels.join(", ");
    (!is_thrown && !labels.is_empty()).then(|| {
        format!(
            "none of the throws is the new pitch's: none is labelled {}; the labels are {labels}. If one of them is, name \
             it with --pitch",
            target.family
        )
    })
}

fn written(
    cli: &Cli,
    args: &PlanArgs,
    profile: &Profile,
    plan: &Plan,
    known: &Known,
    advice: Option<&Advice>,
) -> Result<String, Failure> {
    let names = names(args);
    let file = args.profile.profile.to_string_lossy();
    let start = Start { profile, file: &file, advice, stops: &known.stops, written: &names };
    let answer = answers::plan(&start, plan);
    let [calendar, markdown] = outputs(args);
    let calendar = calendar.map(|output| ready(output, &report::calendar(plan))).transpose()?;
    let markdown = markdown.map(|output| ready(output, &answers::plan_sheet(plan).markdown())).transpose()?;
    let page = args.page.ready(|| answer.page())?;
    put_all([calendar, markdown, page].into_iter().flatten().collect())?;
    told(cli, &answer, None)
}

//! The decision: add the pitch, try it first, not now, or another pitch.
//!
//! Every verdict comes with the reasons that led to it, what would change it, and cautions. All are
//! values; their words are in [`crate::report`].

mod cautions;
mod reasons;

pub use cautions::Caution;
pub use reasons::Reason;

use rayon::prelude::*;

use crate::athlete::profile::Profile;
use crate::ball::Family;
use crate::base::stats::Estimate;
use crate::former::evaluate::{Stage, Today, World, draws, worlds};
use crate::former::search::{Candidate, Command, TRIFLE, best_of_family};

/// What to ask.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Question {
    /// The pitch asked about.
    pub family: Family,
    /// Whether the verdict counts the command of now or of once mastered.
    pub command: Command,
    /// Ways the world might be.
    pub draws: usize,
    /// Seed of the draws.
    pub seed: u64,
}

impl Question {
    /// A sweeper, once mastered, over 128 draws.
    pub const DEFAULT: Self = Self { family: Family::Sweeper, command: Command::Mastered, draws: 128, seed: 1 };
}

/// The answer in one word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Add it.
    Add,
    /// Try it before deciding.
    Trial,
    /// Do not add it now.
    NotNow,
    /// Another pitch is better.
    OtherPitch,
}

/// The whole answer.
#[derive(Debug, Clone)]
pub struct Advice<'p> {
    /// Who was asked about.
    pub profile: &'p Profile,
    /// What was asked.
    pub question: Question,
    /// The answer.
    pub verdict: Verdict,
    /// Why, weightiest first.
    pub reasons: Vec<Reason>,
    /// What to watch.
    pub cautions: Vec<Caution>,
    /// The pitch to chase: the one asked about, or the better one. Nothing when no shape is in reach or
    /// something forbids the pitch.
    pub target: Option<Candidate>,
    /// The other families that he may throw, best first.
    pub alternatives: Vec<Alternative>,
    /// Today at its best.
    pub today: Today,
}

/// Another family, or why there is none.
#[derive(Debug, Clone)]
pub struct Alternative {
    /// Which family.
    pub family: Family,
    /// Its best shape and worth; nothing when out of reach.
    pub candidate: Option<Candidate>,
}

/// What forbids new work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bar {
    /// Pain now.
    Pain,
    /// Coming back from an injury.
    Injury,
    /// A licensed professional said so.
    NoBreakingBall,
    /// Too young for a breaking ball, by the dated guideline.
    TooYoung(u8),
    /// Young, and without a fastball and a changeup yet.
    BasicsFirst(u8),
}

/// The families a coach would weigh.
pub const FAMILIES: [Family; 6] =
    [Family::Sweeper, Family::Slider, Family::Cutter, Family::Curveball, Family::Changeup, Family::Splitter];

/// Chance of a real gain from which a pitch is added.
pub const SURE: f64 = 0.85;
/// The same for a trial.
pub const WORTH_A_TRIAL: f64 = 0.65;
/// How much more (runs per 100 pitches) another pitch must bring to be called better.
const CLEARLY_MORE: f64 = 0.10;
/// Share of worlds in which it must bring more.
const MORE_OFTEN: f64 = 0.75;

/// Answers `question` for `profile`.
pub fn advise(profile: &Profile, question: Question) -> Advice<'_> {
    let stage = Stage::new(profile);
    let today = Today::of(&stage);
    let drawn = draws(profile.athlete.level, stage.pitches.len(), question.draws, question.seed);
    let worlds = worlds(&stage, &today, drawn);
    let bar = bar(profile, question.family);
    let (asked, mut alternatives) = rayon::join(
        // What may not be thrown is not looked for: a number beside a bar would tempt.
        || if bar.is_none() { Asked::of(&stage, &today, question, &worlds) } else { None },
        || alternatives(&stage, &today, question, &worlds),
    );
    let weighed = Weighed::of(profile, question, asked.as_ref(), &alternatives, bar);
    let asked = asked.map(|asked| asked.candidate);
    let target = match weighed.better {
        Some(family) => {
            alternatives.iter().position(|a| a.family == family).and_then(|i| alternatives[i].candidate.clone())
        }
        None => asked.clone(),
    };
    if let Some(better) = weighed.better {
        alternatives.retain(|alternative| alternative.family != better);
        alternatives.push(Alternative { family: question.family, candidate: asked });
        best_first(&mut alternatives);
    }
    let cautions = Caution::all_of(profile, target.as_ref(), weighed.verdict);
    Advice {
        profile,
        question,
        verdict: weighed.verdict,
        reasons: weighed.reasons,
        cautions,
        target,
        alternatives,
        today,
    }
}

/// The pitch asked about.
struct Asked {
    candidate: Candidate,
    /// What it gains with the command of its first months, where the verdict counts it once mastered.
    at_first: Option<Estimate>,
}

impl Asked {
    /// Nothing when no shape of it is in reach.
    fn of(stage: &Stage, today: &Today, question: Question, worlds: &[World]) -> Option<Self> {
        let candidate = best_of_family(stage, today, question.family, question.command, worlds).ok()?;
        let at_first =
            (question.command == Command::Mastered).then(|| candidate.worth_at_first(stage, today, worlds).overall);
        Some(Self { candidate, at_first })
    }
}

/// The best of each family he may throw and does not yet, best first, those out of reach last.
fn alternatives(stage: &Stage, today: &Today, question: Question, worlds: &[World]) -> Vec<Alternative> {
    let owned = |family: Family| stage.pitches.iter().any(|pitch| pitch.family == family);
    let mut all: Vec<Alternative> = FAMILIES
        .into_par_iter()
        .filter(|&family| family != question.family && !owned(family) && bar(stage.profile, family).is_none())
        .map(|family| Alternative {
            family,
            candidate: best_of_family(stage, today, family, question.command, worlds).ok(),
        })
        .collect();
    best_first(&mut all);
    all
}

/// What the guidelines say of a hard pitch at `age`, below 15.
pub fn guideline(age: u8) -> &'static str {
    if age < 13 {
        "a fastball and a changeup come first"
    } else {
        "a breaking ball comes only after a consistent fastball and changeup"
    }
}

fn best_first(alternatives: &mut [Alternative]) {
    let gain = |a: &Alternative| a.candidate.as_ref().map_or(f64::NEG_INFINITY, |c| c.worth.overall.value);
    alternatives.sort_by(|a, b| gain(b).total_cmp(&gain(a)));
}

struct Weighed {
    verdict: Verdict,
    reasons: Vec<Reason>,
    better: Option<Family>,
}

impl Weighed {
    fn of(
        profile: &Profile,
        question: Question,
        asked: Option<&Asked>,
        alternatives: &[Alternative],
        bar: Option<Bar>,
    ) -> Self {
        if let Some(bar) = bar {
            return Self { verdict: Verdict::NotNow, reasons: vec![Reason::Forbidden(bar)], better: None };
        }
        let mut reasons = match asked {
            Some(asked) => Reason::all_of(profile, asked),
            None => vec![Reason::out_of_reach(profile, question.family)],
        };
        let asked = asked.map(|asked| &asked.candidate);
        if let Some((better, chance)) = better(asked, alternatives) {
            let (family, gain) = (better.family, better.worth.overall);
            let mut first = vec![Reason::Better { family, gain, chance }];
            first.extend(Reason::to_try_first(profile, better));
            reasons.retain(|reason| !first.contains(reason));
            return Self { verdict: Verdict::OtherPitch, reasons: [first, reasons].concat(), better: Some(family) };
        }
        let verdict = asked.map_or(Verdict::NotNow, |candidate| verdict_on(profile, candidate));
        reasons.extend(asked.and_then(|candidate| Reason::short_of(verdict, candidate)));
        if verdict == Verdict::NotNow {
            // Why it would be tried first is no matter where it is not to be thrown at all.
            reasons.retain(|reason| !matches!(reason, Reason::StiffHand { .. } | Reason::Young(_)));
            reasons.push(Reason::NothingElse);
        }
        Self { verdict, reasons, better: None }
    }
}

/// What to do about `candidate` when no other pitch is weighed and nothing forbids it.
pub fn verdict_on(profile: &Profile, candidate: &Candidate) -> Verdict {
    let worth = &candidate.worth;
    if worth.chance_real < WORTH_A_TRIAL || worth.overall.value < TRIFLE {
        return Verdict::NotNow;
    }
    let sure = worth.chance_real >= SURE && Reason::to_try_first(profile, candidate).is_empty();
    if sure { Verdict::Add } else { Verdict::Trial }
}

/// Another family that is clearly better, if there is one, and the share of worlds in which
/// it gains more.
fn better<'a>(asked: Option<&Candidate>, alternatives: &'a [Alternative]) -> Option<(&'a Candidate, f64)> {
    let own = asked.map(|candidate| &candidate.worth);
    alternatives.iter().filter_map(|alternative| alternative.candidate.as_ref()).find_map(|candidate| {
        let worth = &candidate.worth;
        let more = worth.overall.value - own.map_or(0.0, |own| own.overall.value);
        let zero = vec![0.0; worth.by_world.len()];
        let against = own.map_or(&zero, |own| &own.by_world);
        let wins = worth.by_world.iter().zip(against).filter(|(a, b)| a > b).count();
        let chance = wins as f64 / zero.len().max(1) as f64;
        let good = worth.chance_real >= WORTH_A_TRIAL && more > CLEARLY_MORE && chance >= MORE_OFTEN;
        good.then_some((candidate, chance))
    })
}

/// What forbids this family to this athlete. Guidelines of USA Baseball and Major League Baseball,
/// copy of about 2015: age 8 and under fastball and changeup only; 13 to 14 breaking balls only
/// after a consistent fastball and changeup. Between them this project is as careful as at 8.
pub fn bar(profile: &Profile, family: Family) -> Option<Bar> {
    let throws = |wanted: fn(Family) -> bool| profile.pitches.iter().any(|pitch| wanted(pitch.family));
    let basics = throws(Family::is_fastball) && throws(|family| family == Family::Changeup);
    let hard_on_the_arm = family.is_breaking() || family == Family::Cutter || family == Family::Splitter;
    match profile.athlete.age {
        _ if profile.health.pain => Some(Bar::Pain),
        _ if profile.health.recent_injury => Some(Bar::Injury),
        _ if profile.health.no_new_breaking_ball && family.is_breaking() => Some(Bar::NoBreakingBall),
        Some(age) if age < 13 && hard_on_the_arm => Some(Bar::TooYoung(age)),
        Some(age) if age < 15 && hard_on_the_arm && !basics => Some(Bar::BasicsFirst(age)),
        _ => None,
    }
}

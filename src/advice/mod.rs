//! The decision: add the pitch, try it first, not now, or another pitch.
//!
//! Every verdict comes with the reasons that led to it, what would change it, and cautions. All are
//! values; their words are in [`crate::report`].

mod cautions;

pub use cautions::Caution;

use rayon::prelude::*;

use crate::evaluate::{Stage, Today, World, draws, worlds};
use crate::pitch::Family;
use crate::profile::{Profile, Supination};
use crate::search::{Candidate, Command, TRIFLE, best_of_family};
use crate::stats::Estimate;

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
    /// The pitch to chase: the one asked about, or the better one. Nothing when no shape is in reach.
    pub target: Option<Candidate>,
    /// The other families, best first.
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

/// A reason, with its numbers.
#[derive(Debug, Clone, PartialEq)]
pub enum Reason {
    /// The gain asked about, and the chance that it is more than a trifle.
    Gain {
        /// Which family.
        family: Family,
        /// Runs per 100 pitches.
        gain: Estimate,
        /// Share of worlds in which it is more than a trifle.
        chance: f64,
    },
    /// What it would be worth with the command of its first months.
    AtFirst {
        /// Runs per 100 pitches.
        gain: Estimate,
        /// Once mastered.
        mastered: f64,
    },
    /// No shape that goes by this name is in reach.
    OutOfReach {
        /// Which family.
        family: Family,
        /// The arm angle.
        slot_deg: f64,
        /// How he turns the hand.
        supination: Supination,
        /// Seams trusted, in.
        seam_in: f64,
    },
    /// The target leans on the seams.
    Seams {
        /// Inches they must add.
        inches: f64,
        /// The most they are trusted to add.
        trusted: f64,
    },
    /// It is close to a pitch he throws.
    Redundant {
        /// That pitch.
        pitch: String,
        /// Difference in speed, mph.
        speed_mph: f64,
        /// Distance between the breaks, in.
        movement_in: f64,
    },
    /// Another family gains more.
    Better {
        /// Which.
        family: Family,
        /// Its gain.
        gain: Estimate,
        /// Share of worlds in which it gains more than the one asked about.
        chance: f64,
    },
    /// No other family gains more than a trifle either.
    NothingElse,
    /// Something about health or age forbids it.
    Forbidden(Bar),
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
/// Seam help beyond this share of what is trusted asks for a trial first.
const LEANING: f64 = 0.6;
/// Closer than this to an own pitch (mph, in) is called redundant.
const NEAR_MPH: f64 = 3.5;
const NEAR_IN: f64 = 6.0;

/// Answers `question` for `profile`.
pub fn advise(profile: &Profile, question: Question) -> Advice<'_> {
    let stage = Stage::new(profile);
    let today = Today::of(&stage);
    let drawn = draws(profile.athlete.level, stage.pitches.len(), question.draws, question.seed);
    let worlds = worlds(&stage, &today, drawn);
    let (asked, mut alternatives) = rayon::join(
        || Asked::of(&stage, &today, question, &worlds),
        || alternatives(&stage, &today, question, &worlds),
    );
    let bar = bar(profile, question.family);
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
        alternatives.insert(0, Alternative { family: question.family, candidate: asked });
    }
    let cautions = Caution::all_of(profile, target.as_ref());
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

/// The best of each family he does not throw yet, best first, those out of reach last.
fn alternatives(stage: &Stage, today: &Today, question: Question, worlds: &[World]) -> Vec<Alternative> {
    let owned = |family: Family| stage.pitches.iter().any(|pitch| pitch.family == family);
    let mut all: Vec<Alternative> = FAMILIES
        .into_par_iter()
        .filter(|&family| family != question.family && !owned(family))
        .map(|family| Alternative {
            family,
            candidate: best_of_family(stage, today, family, question.command, worlds).ok(),
        })
        .collect();
    let gain = |a: &Alternative| a.candidate.as_ref().map_or(f64::NEG_INFINITY, |c| c.worth.overall.value);
    all.sort_by(|a, b| gain(b).total_cmp(&gain(a)));
    all
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
        let mut reasons = Vec::new();
        if let Some(bar) = bar {
            reasons.push(Reason::Forbidden(bar));
        }
        match asked {
            Some(asked) => reasons.extend(candidate_reasons(profile, asked)),
            None => reasons.push(out_of_reach(profile, question.family)),
        }
        let asked = asked.map(|asked| &asked.candidate);
        if bar.is_some() {
            return Self { verdict: Verdict::NotNow, reasons, better: None };
        }
        if let Some((better, reason)) = better(profile, asked, alternatives) {
            reasons.insert(0, reason);
            return Self { verdict: Verdict::OtherPitch, reasons, better: Some(better) };
        }
        let verdict = asked.map_or(Verdict::NotNow, |candidate| verdict_on(profile, candidate));
        if verdict == Verdict::NotNow {
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
    let leaning = candidate.recipe.seam_total_in() > LEANING * profile.limits.seam_shift_in;
    let young = profile.athlete.age.is_some_and(|age| age <= 14) && candidate.family.is_breaking();
    let hand = profile.release.supination == Supination::Hard && candidate.family.is_breaking();
    if worth.chance_real >= SURE && !leaning && !young && !hand { Verdict::Add } else { Verdict::Trial }
}

fn candidate_reasons(profile: &Profile, asked: &Asked) -> Vec<Reason> {
    let Asked { candidate, at_first } = asked;
    let worth = &candidate.worth;
    let mut reasons = vec![Reason::Gain { family: candidate.family, gain: worth.overall, chance: worth.chance_real }];
    if let Some(gain) = *at_first {
        reasons.push(Reason::AtFirst { gain, mastered: worth.overall.value });
    }
    let nearest = profile.pitches.iter().min_by(|a, b| {
        let far = |p: &crate::profile::Pitch| p.shape.movement_distance_in(candidate.recipe.shape);
        far(a).total_cmp(&far(b))
    });
    if let Some(pitch) = nearest {
        let movement_in = pitch.shape.movement_distance_in(candidate.recipe.shape);
        let speed_mph = (pitch.shape.speed_mph - candidate.recipe.shape.speed_mph).abs();
        if pitch.family == candidate.family || (movement_in < NEAR_IN && speed_mph < NEAR_MPH) {
            reasons.push(Reason::Redundant { pitch: pitch.name.clone(), speed_mph, movement_in });
        }
    }
    let inches = candidate.recipe.seam_total_in();
    if inches > LEANING * profile.limits.seam_shift_in {
        reasons.push(Reason::Seams { inches, trusted: profile.limits.seam_shift_in });
    }
    reasons
}

fn out_of_reach(profile: &Profile, family: Family) -> Reason {
    Reason::OutOfReach {
        family,
        slot_deg: profile.release.slot_deg,
        supination: profile.release.supination,
        seam_in: profile.limits.seam_shift_in,
    }
}

/// Another family that is allowed and clearly better, if there is one.
fn better(profile: &Profile, asked: Option<&Candidate>, alternatives: &[Alternative]) -> Option<(Family, Reason)> {
    let own = asked.map(|candidate| &candidate.worth);
    alternatives
        .iter()
        .filter(|alternative| bar(profile, alternative.family).is_none())
        .filter_map(|alternative| alternative.candidate.as_ref())
        .find_map(|candidate| {
            let worth = &candidate.worth;
            let more = worth.overall.value - own.map_or(0.0, |own| own.overall.value);
            let zero = vec![0.0; worth.by_world.len()];
            let against = own.map_or(&zero, |own| &own.by_world);
            let wins = worth.by_world.iter().zip(against).filter(|(a, b)| a > b).count();
            let chance = wins as f64 / zero.len().max(1) as f64;
            let good = worth.chance_real >= WORTH_A_TRIAL && more > CLEARLY_MORE && chance >= MORE_OFTEN;
            let reason = Reason::Better { family: candidate.family, gain: worth.overall, chance };
            good.then_some((candidate.family, reason))
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

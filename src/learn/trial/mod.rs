//! The grip trial: a few throws with each of several grips, and which to keep.
//!
//! [`trial`] judges every grip by the chance that its next throw lands in the target's window, and
//! says beside it what the grip costs in speed and slot, how cleanly it spins and where its dot
//! shows. With few throws it says "too early" rather than name a winner. Everything is a
//! right-hander's; nothing here reads a file or knows what a grip is called for.

mod choice;
mod cleanness;
mod model;

pub use choice::{MOST_MORE, SURE};
pub use cleanness::{CLEAN_FRACTION, CLEAN_MINUTES, Cleanness, DotError, DotFault};

use crate::athlete::profile::Profile;
use crate::athlete::session::{ReleaseReading, Session, SpinReading};
use crate::ball::Release;
use crate::ball::Shape;
use crate::base::stats::{Count, Estimate, Sample};
use crate::learn::slot::slot_deg;
use crate::learn::target::Target;

use choice::Qualities;
use model::{AXES, GripData, GripDraw, posterior};

/// One throw of a trial.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Attempt {
    /// Index into the grips' names.
    pub grip: usize,
    /// What the ball did.
    pub shape: Shape,
    /// How it spun.
    pub spin: SpinReading,
    /// Where it left the hand.
    pub release: ReleaseReading,
    /// Whether it wobbled, when somebody noted it.
    pub wobble: Option<bool>,
}

/// What a trial found.
#[derive(Debug, Clone, PartialEq)]
pub struct Trial {
    /// Every grip thrown, likeliest best first.
    pub grips: Vec<Grip>,
    /// Whether there is a winner.
    pub verdict: Verdict,
    /// What to throw next; nothing when the trial is over or empty.
    pub next: Option<Next>,
    /// What to keep in mind.
    pub cautions: Vec<Caution>,
}

/// One grip's results.
#[derive(Debug, Clone, PartialEq)]
pub struct Grip {
    /// As written.
    pub name: String,
    /// Throws with it.
    pub throws: u32,
    /// Average speed, borrowing from the other grips what its own throws lack.
    pub speed_mph: Estimate,
    /// Average vertical break, likewise.
    pub vertical_break_in: Estimate,
    /// Average glove-side break, likewise.
    pub glove_side_break_in: Estimate,
    /// Throws that landed in the window.
    pub in_window: Count,
    /// Chance that the next throw does.
    pub chance_next: Estimate,
    /// Chance that no other grip is better.
    pub chance_best: f64,
    /// How much slower than the target it is.
    pub speed_cost_mph: Estimate,
    /// How far the slot drops with it against the profile; nothing when release was not measured.
    pub slot_cost_deg: Option<Estimate>,
    /// How cleanly it spins.
    pub clean: Cleanness,
    /// Where its dot is against the target's; nothing when either spin is not known.
    pub dot: Option<DotError>,
}

/// Whether there is a winner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Verdict {
    /// No throw carries a grip.
    Empty,
    /// There is nothing to choose from.
    OneGrip,
    /// Some grip that may yet be the best has too few throws.
    TooEarly {
        /// Throws that every grip still in the running needs.
        needed: u32,
    },
    /// The first grip leads, and it is not yet firm.
    Open,
    /// The first grip is the best with a chance of at least [`SURE`].
    Settled,
}

/// What to throw next.
#[derive(Debug, Clone, PartialEq)]
pub struct Next {
    /// With which grip.
    pub grip: String,
    /// Throws, all grips together, until the best is [`SURE`] to be the best. [`MOST_MORE`] stands
    /// for "that many or more": the grips are then as good as equal.
    pub more_throws: Estimate,
}

/// A doubt about a trial.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caution {
    /// Throws without a grip are not used.
    NoGrip {
        /// How many.
        throws: u32,
    },
    /// Even the best grip seldom lands in the window: the grip may not be what is missing.
    BestIsFar,
    /// The best grip scatters so much that the marked ball should come first.
    BestIsNotClean,
}

/// Fewest throws with every grip that may yet be the best.
const LEAST_THROWS: u32 = 5;
/// A grip less likely than this to be the best is out of the running.
pub const OUT: f64 = 0.05;
/// A best grip whose whole interval lies below this share of what is possible is far from the window.
const FAR: f64 = 0.5;
/// Draws of the posterior.
const DRAWS: usize = 2000;

/// The throws of `session` that can be used, and what to say about the others.
pub fn attempts(session: &Session) -> (Vec<Attempt>, Vec<Caution>) {
    let attempt = |throw: &crate::athlete::session::Throw| {
        let (shape, spin, release) = (throw.shape, throw.spin, throw.release);
        Some(Attempt { grip: usize::from(throw.grip?), shape, spin, release, wobble: throw.wobble })
    };
    let attempts: Vec<Attempt> = session.throws.iter().filter_map(attempt).collect();
    let without = u32::try_from(session.throws.len() - attempts.len()).unwrap_or(u32::MAX);
    let cautions = (without > 0).then_some(Caution::NoGrip { throws: without });
    (attempts, Vec::from_iter(cautions))
}

/// Judges `attempts` against `target`. Grips in `names` that were never thrown are left out.
pub fn trial(names: &[String], attempts: &[Attempt], profile: &Profile, target: &Target, seed: u64) -> Trial {
    trial_with(names, attempts, profile, target, Effort { draws: DRAWS, seed })
}

/// How finely the posterior is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Effort {
    /// Draws.
    pub draws: usize,
    /// Seed.
    pub seed: u64,
}

/// As [`trial`], drawing the posterior as finely as `effort` says.
pub fn trial_with(names: &[String], attempts: &[Attempt], profile: &Profile, target: &Target, effort: Effort) -> Trial {
    let thrown = Thrown::by_grip(names, attempts);
    let data: Vec<GripData> = thrown.iter().map(Thrown::data).collect();
    let draws = posterior(&data, target, effort.draws.max(1), effort.seed);
    let qualities = Qualities::of(&draws, target);
    let chance_best = qualities.chance_best();
    let mut grips: Vec<Grip> = thrown
        .iter()
        .enumerate()
        .map(|(place, thrown)| {
            let judged = Judged { chance_next: qualities.chance_next(place), chance_best: chance_best[place] };
            thrown.grip(&draws, place, &judged, profile.release, target)
        })
        .collect();
    let verdict = verdict(&grips);
    let next = next(&thrown, &qualities, &chance_best, verdict);
    grips.sort_by(|a, b| {
        b.chance_best.total_cmp(&a.chance_best).then(b.chance_next.value.total_cmp(&a.chance_next.value))
    });
    let cautions = cautions(&grips, target);
    Trial { grips, verdict, next, cautions }
}

/// The throws made with one grip.
struct Thrown<'a> {
    name: &'a str,
    attempts: Vec<&'a Attempt>,
}

/// What the comparison of grips says about one of them.
struct Judged {
    chance_next: Estimate,
    chance_best: f64,
}

impl<'a> Thrown<'a> {
    fn by_grip(names: &'a [String], attempts: &'a [Attempt]) -> Vec<Self> {
        let mut thrown: Vec<Self> = names.iter().map(|name| Self { name, attempts: Vec::new() }).collect();
        for attempt in attempts {
            if let Some(grip) = thrown.get_mut(attempt.grip) {
                grip.attempts.push(attempt);
            }
        }
        thrown.retain(|grip| !grip.attempts.is_empty());
        thrown
    }

    fn count(&self) -> u32 {
        u32::try_from(self.attempts.len()).unwrap_or(u32::MAX)
    }

    fn data(&self) -> GripData {
        std::array::from_fn(|axis| Sample::of(self.attempts.iter().map(|attempt| attempt.shape.numbers()[axis])))
    }

    fn grip(&self, draws: &[Vec<GripDraw>], place: usize, judged: &Judged, usual: Release, target: &Target) -> Grip {
        let [speed_mph, vertical_break_in, glove_side_break_in] = means(draws, place);
        let wanted = target.shape.speed_mph;
        let spins: Vec<SpinReading> = self.attempts.iter().map(|attempt| attempt.spin).collect();
        let wobbles: Vec<bool> = self.attempts.iter().filter_map(|attempt| attempt.wobble).collect();
        let hits = self.attempts.iter().filter(|attempt| target.window.holds(attempt.shape)).count();
        Grip {
            name: self.name.to_owned(),
            throws: self.count(),
            speed_mph,
            vertical_break_in,
            glove_side_break_in,
            in_window: Count { hits: u32::try_from(hits).unwrap_or(u32::MAX), tries: self.count() },
            chance_next: judged.chance_next,
            chance_best: judged.chance_best,
            speed_cost_mph: below(wanted, speed_mph),
            slot_cost_deg: self.slot(usual).mean_estimate().map(|slot| below(usual.slot_deg, slot)),
            clean: Cleanness::of(&spins, &wobbles),
            dot: target.spin.and_then(|wanted| DotError::of(&spins, wanted)),
        }
    }

    fn slot(&self, usual: Release) -> Sample {
        let slot = |reading: ReleaseReading| Some(slot_deg(usual, reading.height_ft?, reading.side_ft?));
        Sample::of(self.attempts.iter().filter_map(|attempt| slot(attempt.release)))
    }
}

/// How far `value` lies below `wanted`.
fn below(wanted: f64, value: Estimate) -> Estimate {
    Estimate { value: wanted - value.value, low: wanted - value.high, high: wanted - value.low }
}

fn means(draws: &[Vec<GripDraw>], place: usize) -> [Estimate; AXES] {
    std::array::from_fn(|axis| {
        let means: Vec<f64> = draws.iter().map(|draw| draw[place].mean[axis]).collect();
        Estimate::from_draws(means.iter().sum::<f64>() / means.len().max(1) as f64, &means)
    })
}

fn verdict(grips: &[Grip]) -> Verdict {
    let in_the_running = grips.iter().filter(|grip| grip.chance_best >= OUT);
    let leading = grips.iter().map(|grip| grip.chance_best).fold(0.0, f64::max);
    match grips.len() {
        0 => Verdict::Empty,
        1 => Verdict::OneGrip,
        _ if in_the_running.map(|grip| grip.throws).min().is_some_and(|throws| throws < LEAST_THROWS) => {
            Verdict::TooEarly { needed: LEAST_THROWS }
        }
        _ if leading >= SURE => Verdict::Settled,
        _ => Verdict::Open,
    }
}

fn next(thrown: &[Thrown], qualities: &Qualities, chance_best: &[f64], verdict: Verdict) -> Option<Next> {
    let throws: Vec<u32> = thrown.iter().map(Thrown::count).collect();
    let grip = match verdict {
        Verdict::Empty | Verdict::OneGrip | Verdict::Settled => return None,
        Verdict::Open => qualities.next(chance_best, &throws)?,
        Verdict::TooEarly { needed } => fewest_thrown(chance_best, &throws, needed)?,
    };
    Some(Next { grip: thrown[grip].name.to_owned(), more_throws: qualities.more_throws(&throws) })
}

/// Of the grips still in the running, the one with fewest throws; likeliest first among equals.
fn fewest_thrown(chance_best: &[f64], throws: &[u32], needed: u32) -> Option<usize> {
    let short = |&grip: &usize| throws[grip] < needed && chance_best[grip] >= OUT;
    let order = |&a: &usize, &b: &usize| throws[a].cmp(&throws[b]).then(chance_best[b].total_cmp(&chance_best[a]));
    (0..throws.len()).filter(short).min_by(order)
}

fn cautions(grips: &[Grip], target: &Target) -> Vec<Caution> {
    let Some(best) = grips.first() else { return Vec::new() };
    let far = best.chance_next.high < FAR * target.chance_at_best();
    let unclean = best.clean.active_fraction_spread.is_some_and(|spread| spread.low > CLEAN_FRACTION);
    [far.then_some(Caution::BestIsFar), unclean.then_some(Caution::BestIsNotClean)].into_iter().flatten().collect()
}

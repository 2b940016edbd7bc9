//! Two athletes beside each other, mirrored to one hand: what the same new pitch is worth to each,
//! who gains more with what chance, and why.
//!
//! Why is asked of the model itself: give the first athlete one thing of the second's (his arm, his
//! command, his pitches, his hitters), search the pitch again, and see what becomes of the gain.
//! The worlds of both come from one seed and one order of draws, so that hitters' eyes and
//! hands are the same in world *k* of either and luck does not decide who gains more.

use rayon::prelude::*;

use crate::athlete::profile::{PerSide, Pitch, Profile};
use crate::ball::Family;
use crate::base::geometry::Side;
use crate::decide::advice::Question;
use crate::former::evaluate::{SideOutlook, Stage, Today, draws, worlds};
use crate::former::search::{Candidate, Command, best_of_family, find};
use crate::former::separation::{Pair, pairs};

/// Two athletes, compared.
#[derive(Debug, Clone)]
pub struct Comparison<'p> {
    /// The pitch both are asked about.
    pub family: Family,
    /// Whether its worth counts the command of now or of once mastered.
    pub command: Command,
    /// The two, in the order given.
    pub arms: [Arm<'p>; 2],
    /// Share of worlds in which each gains more than the other; ties count for neither. Nothing
    /// unless both can reach the pitch.
    pub gains_more: Option<[f64; 2]>,
    /// What would become of the first one's gain with one thing of the second's, largest change
    /// first, and the same the other way about.
    pub swaps: [Vec<Swap>; 2],
}

/// One of the two.
#[derive(Debug, Clone)]
pub struct Arm<'p> {
    /// Who.
    pub profile: &'p Profile,
    /// His pairs of pitches.
    pub pairs: Vec<Pair>,
    /// The best mix of what he throws.
    pub usage: PerSide<SideOutlook>,
    /// The pitch asked about; nothing when out of reach.
    pub candidate: Option<Candidate>,
    /// Whether he throws the family already.
    pub throws_it: bool,
}

/// One thing of the other's.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Thing {
    /// Slot, release point, extension and the turn of the hand.
    Release,
    /// Scatter about the target.
    Command,
    /// The pitches he throws.
    Pitches,
    /// The hitters: their level and sides.
    Hitters,
}

impl Thing {
    /// Every thing, in the order they are asked about.
    pub const ALL: [Self; 4] = [Self::Release, Self::Command, Self::Pitches, Self::Hitters];
}

/// What a thing of the other's would change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swap {
    /// Which thing.
    pub thing: Thing,
    /// Runs saved per 100 pitches with it; nothing when the pitch is then out of reach.
    pub gain: Option<f64>,
}

/// Compares two athletes about the pitch of `question`.
pub fn compare(both: [&Profile; 2], question: Question) -> Comparison<'_> {
    let pitches = both.map(|profile| profile.pitches.len()).into_iter().max().unwrap_or(0);
    let [first, second] = both;
    let (one, other) = rayon::join(|| arm(first, question, pitches), || arm(second, question, pitches));
    let gains_more = gains_more(&one, &other);
    let swaps = [(first, second, &one), (second, first, &other)]
        .map(|(own, lender, arm)| swaps(own, lender, question, arm.candidate.as_ref()));
    Comparison { family: question.family, command: question.command, arms: [one, other], gains_more, swaps }
}

fn arm(profile: &Profile, question: Question, pitches: usize) -> Arm<'_> {
    let stage = Stage::new(profile);
    let today = Today::of(&stage);
    // As many pitches in the draws as the larger arsenal has, so that both see the same worlds.
    let worlds = worlds(&stage, &today, draws(stage.profile.athlete.level, pitches, question.draws, question.seed));
    let aims = PerSide::from_fn(|side| today.plans.on(side).aims.clone());
    Arm {
        profile,
        pairs: pairs(&stage, &aims),
        usage: PerSide::from_fn(|side: Side| {
            let plan = today.plans.on(side);
            SideOutlook::of(plan, &plan.mix.shares, &worlds)
        }),
        candidate: best_of_family(&stage, &today, question.family, question.command, &worlds).ok(),
        throws_it: profile.pitches.iter().any(|pitch| pitch.family == question.family),
    }
}

fn gains_more(one: &Arm, other: &Arm) -> Option<[f64; 2]> {
    let by_world = |arm: &Arm| arm.candidate.as_ref().map(|candidate| candidate.worth.by_world.clone());
    let (one, other) = (by_world(one)?, by_world(other)?);
    let share = |wins: fn(f64, f64) -> bool| {
        let won = one.iter().zip(&other).filter(|&(&a, &b)| wins(a, b)).count();
        won as f64 / one.len().max(1) as f64
    };
    Some([share(|a, b| a > b), share(|a, b| b > a)])
}

/// What becomes of `own`'s gain with each thing of `lender`'s, largest change first.
fn swaps(own: &Profile, lender: &Profile, question: Question, candidate: Option<&Candidate>) -> Vec<Swap> {
    let today = candidate.map_or(0.0, |candidate| candidate.worth.overall.value);
    let mut swaps: Vec<Swap> = Thing::ALL
        .into_par_iter()
        .map(|thing| Swap { thing, gain: gain(&with(own, lender, thing), question) })
        .collect();
    let change = |swap: &Swap| (swap.gain.unwrap_or(0.0) - today).abs();
    swaps.sort_by(|a, b| change(b).total_cmp(&change(a)));
    swaps
}

fn gain(profile: &Profile, question: Question) -> Option<f64> {
    let stage = Stage::new(profile);
    let today = Today::of(&stage);
    find(&stage, &today, question.family).ok().map(|found| found.gain(&stage, question.command))
}

/// `own` with one thing of `lender`'s.
fn with(own: &Profile, lender: &Profile, thing: Thing) -> Profile {
    let mut profile = own.clone();
    match thing {
        Thing::Release => {
            profile.release = lender.release;
            profile.pitches.iter_mut().for_each(leave_from_the_arm);
        }
        Thing::Command => {
            let [side, height] = mean_command(lender);
            for pitch in &mut profile.pitches {
                pitch.spread.command_side_in = side;
                pitch.spread.command_height_in = height;
            }
        }
        Thing::Pitches => {
            profile.pitches.clone_from(&lender.pitches);
            profile.pitches.iter_mut().for_each(leave_from_the_arm);
            profile.limits = lender.limits;
        }
        Thing::Hitters => {
            profile.athlete.level = lender.athlete.level;
            profile.opposite_share = lender.opposite_share;
        }
    }
    profile
}

/// A place of release of the pitch's own belongs to the arm it was measured on: beside another arm's
/// places it would tell the pitch apart.
fn leave_from_the_arm(pitch: &mut Pitch) {
    pitch.release_height_ft = None;
    pitch.release_side_ft = None;
}

/// Mean scatter (sideways, up and down; in) of a profile's pitches.
pub fn mean_command(profile: &Profile) -> [f64; 2] {
    let mean =
        |read: fn(&Pitch) -> f64| profile.pitches.iter().map(read).sum::<f64>() / profile.pitches.len().max(1) as f64;
    [mean(|pitch| pitch.spread.command_side_in), mean(|pitch| pitch.spread.command_height_in)]
}

//! Two athletes beside each other: what the same new pitch is worth to each, who gains more with what chance, and why.
//!
//! Why is asked of the model itself: the first athlete gets one thing of the second's (arm, command, pitches, hitters),
//! the pitch is looked for again, and what becomes of the gain is the answer. The draws of both come from one seed and
//! one order, so that luck does not decide who gains more.

use std::num::NonZeroUsize;

use rayon::prelude::*;

use crate::athlete::eligibility::Eligibility;
use crate::athlete::profile::{Pitch, Profile};
use crate::ball::Family;

use super::advice::Candidate;
use super::advice::work;
use super::apart::{Pair, pairs};
use super::chase::target;
use super::model::Model;
use super::new_pitch::Command;
use super::usage::Usage;

/// Two athletes, compared.
#[derive(Debug, Clone)]
pub struct Comparison<'p> {
    /// The pitch both are asked about.
    pub family: Family,
    /// Whether its worth counts the command of now or of once mastered.
    pub command: Command,
    /// The two, in the order given.
    pub both: [Compared<'p>; 2],
    /// Share of draws in which each gains more than the other; ties count for neither.
    pub gains_more: Option<[f64; 2]>,
    /// What would become of the first one's gain with one thing of the second's, largest change first, and the same the
    /// other way about.
    pub swaps: [Vec<Swap>; 2],
}

/// One of the two.
#[derive(Debug, Clone)]
pub struct Compared<'p> {
    /// Who.
    pub profile: &'p Profile,
    /// The pairs of pitches.
    pub pairs: Vec<Pair>,
    /// How the pitches are used.
    pub usage: Usage,
    /// The pitch asked about; nothing when it may not be thrown or no arm is known to throw it.
    pub candidate: Option<Candidate>,
}

/// One thing of the other's.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Difference {
    /// Slot, release point, extension and the turn of the hand.
    Release,
    /// Scatter about the target.
    Command,
    /// The pitches thrown.
    Pitches,
    /// The hitters: their level and sides.
    Hitters,
}

impl Difference {
    /// Every one, in the order they are asked about.
    pub const ALL: [Self; 4] = [Self::Release, Self::Command, Self::Pitches, Self::Hitters];
}

/// What a thing of the other's would change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swap {
    /// Which thing.
    pub difference: Difference,
    /// Runs saved per 100 pitches with it.
    pub gain: Option<f64>,
}

impl<'p> Comparison<'p> {
    /// Two athletes and the pitch both are asked about.
    pub fn of(both: [&'p Profile; 2], family: Family, command: Command, draws: NonZeroUsize, seed: u64) -> Self {
        let [first, second] = both;
        let of = |profile| Compared::of(profile, family, command, draws, seed);
        let (one, other) = rayon::join(|| of(first), || of(second));
        let gains_more = gains_more(&one, &other);
        let swaps = [(first, second, &one), (second, first, &other)].map(|(own, lender, compared)| {
            let today = compared.candidate.as_ref().map_or(0.0, Candidate::gain);
            swaps(own, lender, family, today, seed)
        });
        Self { family, command, both: [one, other], gains_more, swaps }
    }
}

impl<'p> Compared<'p> {
    fn of(profile: &'p Profile, family: Family, command: Command, draws: NonZeroUsize, seed: u64) -> Self {
        let model = Model::new(profile, draws, seed);
        let free = Eligibility::of(profile, family).bar().is_none();
        let families = free.then_some(family);
        let candidate = Candidate::all_of(&model, families.as_slice(), command).pop();
        Self { profile, pairs: pairs(&model), usage: Usage::of(&model), candidate }
    }
}

fn gains_more(one: &Compared, other: &Compared) -> Option<[f64; 2]> {
    let (one, other) = (one.candidate.as_ref()?, other.candidate.as_ref()?);
    Some([one.worth.more_often_than(&other.worth), other.worth.more_often_than(&one.worth)])
}

/// What becomes of `own`'s gain with each thing of `lender`'s, largest change first.
fn swaps(own: &Profile, lender: &Profile, family: Family, today: f64, seed: u64) -> Vec<Swap> {
    let swap = |difference| Swap { difference, gain: gain(&with(own, lender, difference), family, seed) };
    let mut swaps: Vec<Swap> = Difference::ALL.into_par_iter().map(swap).collect();
    let change = |swap: &Swap| (swap.gain.unwrap_or(0.0) - today).abs();
    swaps.sort_by(|a, b| change(b).total_cmp(&change(a)));
    swaps
}

/// Runs saved on the best guess; the draws do not matter to it.
fn gain(profile: &Profile, family: Family, seed: u64) -> Option<f64> {
    let model = Model::new(profile, NonZeroUsize::MIN, seed);
    Some(target(&model, family, work(profile, family))?.change.best_guess(&model))
}

/// `own` with one thing of `lender`'s.
fn with(own: &Profile, lender: &Profile, difference: Difference) -> Profile {
    let mut profile = own.clone();
    match difference {
        Difference::Release => {
            profile.release = lender.release;
            profile.pitches.iter_mut().for_each(leave_from_the_arm);
        }
        Difference::Command => {
            let ratio = [mean_command(lender), mean_command(own)];
            for pitch in &mut profile.pitches {
                pitch.spread.command_side_in *= ratio[0][0] / ratio[1][0];
                pitch.spread.command_height_in *= ratio[0][1] / ratio[1][1];
            }
        }
        Difference::Pitches => {
            profile.pitches.clone_from(&lender.pitches);
            profile.pitches.iter_mut().for_each(leave_from_the_arm);
            profile.limits = lender.limits;
        }
        Difference::Hitters => {
            profile.athlete.level = lender.athlete.level;
            profile.opposite_share = lender.opposite_share;
        }
    }
    profile
}

/// A place of release of the pitch's own belongs to the arm it was measured on: beside another arm's places it would tell
/// the pitch apart.
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

//! What a new pitch is worth: on the best guess, and in every draw of the unknown.
//!
//! The mixes before and after are chosen once, on the best guess. Each world then asks what those
//! two mixes would really have brought. So a world can come out negative: the plan was made for
//! another one. That is the doubt a coach has, and it is not flattered by re-planning in
//! hindsight.

use rayon::prelude::*;

use crate::athlete::profile::{Aim, PerSide};
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::former::evaluate::{Chosen, NewPitch, SideOutlook, Stage, Today, World};
use crate::former::hitter::Expected;

/// Worth of a new pitch in runs saved per 100 pitches.
#[derive(Debug, Clone)]
pub struct Worth {
    /// By side.
    pub sides: PerSide<SideWorth>,
    /// Weighted by the share of hitters on each side.
    pub overall: Estimate,
    /// Share of worlds in which it saves more than a [`TRIFLE`].
    pub chance_real: f64,
    /// Overall gain in every world, in order.
    pub by_world: Vec<f64>,
}

/// Worth against one side.
#[derive(Debug, Clone)]
pub struct SideWorth {
    /// Runs saved per 100 pitches.
    pub gain: Estimate,
    /// What today's best mix brings.
    pub before: SideOutlook,
    /// What the best mix with the new pitch brings; the new pitch is last.
    pub after: SideOutlook,
    /// How far the new mix may be from the best, runs per 100 pitches.
    pub gap: f64,
}

/// Less than this (runs per 100 pitches) is called a trifle: over a season of 2000 pitches it is
/// one run. This project's choice.
pub const TRIFLE: f64 = 0.05;

impl Worth {
    /// The worth of `pitch` beside `today`.
    pub fn of(stage: &Stage, today: &Today, pitch: &NewPitch, worlds: &[World]) -> Self {
        let (same, opposite) = rayon::join(
            || OneSide::of(stage, today, pitch, Side::Same, worlds),
            || OneSide::of(stage, today, pitch, Side::Opposite, worlds),
        );
        let share = |side| stage.side_share(side);
        let weigh = |a: f64, b: f64| share(Side::Same) * a + share(Side::Opposite) * b;
        let by_world: Vec<f64> = same.by_world.iter().zip(&opposite.by_world).map(|(&a, &b)| weigh(a, b)).collect();
        let real = by_world.iter().filter(|&&gain| gain > TRIFLE).count();
        Self {
            overall: Estimate::from_draws(weigh(same.worth.gain.value, opposite.worth.gain.value), &by_world),
            chance_real: real as f64 / by_world.len().max(1) as f64,
            by_world,
            sides: PerSide { same: same.worth, opposite: opposite.worth },
        }
    }

    /// Runs saved per 100 pitches in `world` by the two mixes that were chosen, with `pitch` as the new
    /// one; own results are left out.
    pub fn gain_in(&self, stage: &Stage, world: &World, pitch: &NewPitch) -> f64 {
        let on_side = |side: Side| {
            let after = &self.sides.on(side).after;
            let shares: Vec<f64> = after.pitches.iter().map(|pitch| pitch.share).collect();
            let aim = after.pitches.last().map_or(Aim::Middle, |pitch| pitch.aim);
            let with = world.expected_with(side, &shares, pitch, aim).runs;
            stage.side_share(side) * (world.today(side).runs - with)
        };
        100.0 * Side::BOTH.into_iter().map(on_side).sum::<f64>()
    }
}

struct OneSide {
    worth: SideWorth,
    by_world: Vec<f64>,
}

impl OneSide {
    fn of(stage: &Stage, today: &Today, pitch: &NewPitch, side: Side, worlds: &[World]) -> Self {
        let plan = today.plans.on(side);
        let chosen = plan.choose(stage, &pitch.thrown, plan.aim_for(stage, &pitch.thrown));
        let (old, new) = (&plan.mix.shares, &chosen.mix.shares);
        let before: Vec<&Expected> = worlds.iter().map(|world| world.today(side)).collect();
        let after: Vec<Expected> =
            worlds.par_iter().map(|world| world.expected_with(side, new, pitch, chosen.aim)).collect();
        let shift = chosen.own.runs(old) - chosen.own.runs(new);
        let by_world: Vec<f64> = before.iter().zip(&after).map(|(b, a)| 100.0 * (b.runs - a.runs + shift)).collect();
        let gain = 100.0 * (plan.mix.runs - chosen.mix.runs);
        let aims: Vec<Aim> = plan.aims.iter().copied().chain([chosen.aim]).collect();
        let worth = SideWorth {
            gain: Estimate::from_draws(gain, &by_world),
            before: SideOutlook::from_expected(side, &plan.own, old, &plan.aims, &plan.expected(old), &before, worlds),
            after: SideOutlook::from_expected(side, &chosen.own, new, &aims, &model_with(&chosen), &after, worlds),
            gap: 100.0 * chosen.mix.gap,
        };
        Self { worth, by_world }
    }
}

/// What the model expects of the chosen mix, own results included.
fn model_with(chosen: &Chosen) -> Expected {
    let shares = &chosen.mix.shares;
    let mut expected = chosen.facing.expected(shares);
    expected.runs += chosen.own.runs(shares);
    expected
}

//! What a new pitch is worth: on the best guess, and in every draw of the unknown.
//!
//! The mixes before and after are chosen once, on the best guess. Each draw then asks what those
//! two mixes would really have brought. So a draw can come out negative: the plan was made for
//! another world. That is the doubt a coach has, and it is not flattered by re-planning in
//! hindsight.

use rayon::prelude::*;

use crate::evaluate::{Chosen, Draw, NewPitch, SidePlan, Stage};
use crate::geometry::Side;
use crate::hitter::Rates;
use crate::mix::Effort;
use crate::pitch::Family;
use crate::profile::{Aim, PerSide};
use crate::stats::Estimate;

use super::Today;

/// Worth of a new pitch in runs saved per 100 pitches.
#[derive(Debug, Clone)]
pub struct Worth {
    /// By side.
    pub sides: PerSide<SideWorth>,
    /// Weighted by the share of hitters on each side.
    pub overall: Estimate,
    /// Share of draws in which it saves more than a trifle.
    pub chance_real: f64,
    /// Overall gain in every draw, in the order of the draws.
    pub draws: Vec<f64>,
}

/// Worth against one side.
#[derive(Debug, Clone)]
pub struct SideWorth {
    /// Runs saved per 100 pitches.
    pub gain: Estimate,
    /// Target, mix and hitter with the new pitch, last.
    pub chosen: Chosen,
    /// Outcome chances of every pitch under the new mix, the new one last.
    pub rates: Vec<Rates>,
}

/// Less than this (runs per 100 pitches) is called nothing: over a season of 2500 pitches it is
/// under one run. This project's choice.
pub const TRIFLE: f64 = 0.04;

impl Worth {
    /// The worth of `pitch` aimed at `aims` beside `today`.
    pub fn of(stage: &Stage, today: &Today, pitch: &NewPitch, aims: &PerSide<Aim>, draws: &[(Draw, Stage)]) -> Self {
        let chosen: PerSide<Chosen> =
            PerSide::from_fn(|side| today.plans.on(side).choose(stage, &pitch.thrown, *aims.on(side), Effort::SHOWN));
        let by_draw: Vec<PerSide<f64>> = draws
            .par_iter()
            .map(|(draw, drawn)| {
                PerSide::from_fn(|side| gain_in(draw, drawn, today.plans.on(side), chosen.on(side), pitch))
            })
            .collect();
        let share = |side| stage.side_share(side);
        let nominal = PerSide::from_fn(|side| 100.0 * (today.plans.on(side).mix.runs - chosen.on(side).mix.runs));
        let weigh = |gain: &PerSide<f64>| Side::BOTH.into_iter().map(|side| share(side) * gain.on(side)).sum::<f64>();
        let overall: Vec<f64> = by_draw.iter().map(weigh).collect();
        let real = overall.iter().filter(|&&gain| gain > TRIFLE).count();
        let side = |side: Side, chosen: Chosen| SideWorth {
            gain: Estimate::from_draws(
                *nominal.on(side),
                &by_draw.iter().map(|gain| *gain.on(side)).collect::<Vec<_>>(),
            ),
            rates: chosen.facing.expected(&chosen.mix.shares).rates,
            chosen,
        };
        Self {
            overall: Estimate::from_draws(weigh(&nominal), &overall),
            chance_real: real as f64 / overall.len().max(1) as f64,
            draws: overall,
            sides: PerSide { same: side(Side::Same, chosen.same), opposite: side(Side::Opposite, chosen.opposite) },
        }
    }
}

/// Runs saved per 100 pitches by the new plan over the old one in one draw.
fn gain_in(draw: &Draw, drawn: &Stage, plan: &SidePlan, chosen: &Chosen, pitch: &NewPitch) -> f64 {
    let (facing, decision) = plan.facing_in(drawn);
    let thrown = draw.realised(pitch);
    let law = drawn.law(&thrown, chosen.aim, plan.side, decision);
    let habit = drawn.habit(&thrown, plan.side, decision);
    let before = facing.expected(&plan.mix.shares).runs;
    let after = facing.with(&law, &habit).expected(&chosen.mix.shares).runs;
    let own = |shares: &[f64]| shares.iter().zip(&plan.own.corrections).map(|(m, c)| m * c).sum::<f64>();
    100.0 * (before + own(&plan.mix.shares) - after - own(&chosen.mix.shares))
}

/// Whether the athlete has no pitch of this family yet.
pub fn is_new(stage: &Stage, family: Family) -> bool {
    stage.pitches.iter().all(|pitch| pitch.family != family)
}

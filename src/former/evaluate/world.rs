//! Today's plans as they would turn out in each way the world might be.
//!
//! A world is built once and shared by everything that is judged in it: today's mix, the best mix
//! and every candidate.

use std::borrow::Borrow;

use rayon::prelude::*;

use crate::athlete::profile::{Aim, PerSide};
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::former::hitter::{Expected, Facing, Rates};

use super::{Draw, NewPitch, OwnResults, SidePlan, Stage, Today};

/// One way the world might be, with today's pitches in it.
#[derive(Debug, Clone)]
pub struct World<'p> {
    draw: Draw,
    stage: Stage<'p>,
    sides: PerSide<(Facing, f64)>,
    today: PerSide<Expected>,
}

/// Every draw as a world, in the order of the draws.
pub fn worlds<'p>(stage: &Stage<'p>, today: &Today, draws: Vec<Draw>) -> Vec<World<'p>> {
    draws.into_par_iter().map(|draw| World::of(stage, today, draw)).collect()
}

impl<'p> World<'p> {
    /// One draw as a world.
    pub fn of(stage: &Stage<'p>, today: &Today, draw: Draw) -> Self {
        let stage = stage.drawn(&draw);
        let sides = PerSide::from_fn(|side| today.plans.on(side).facing_in(&stage));
        let today = PerSide::from_fn(|side| sides.on(side).0.expected(&today.plans.on(side).mix.shares));
        Self { draw, stage, sides, today }
    }

    /// What today's best mix would bring here against `side`.
    pub fn today(&self, side: Side) -> &Expected {
        self.today.on(side)
    }

    /// What `shares` of today's pitches would bring here against `side`.
    pub fn expected(&self, side: Side, shares: &[f64]) -> Expected {
        self.sides.on(side).0.expected(shares)
    }

    /// What `shares` of today's pitches and, last, of `new` aimed at `aim` would bring here.
    pub fn expected_with(&self, side: Side, shares: &[f64], new: &NewPitch, aim: Aim) -> Expected {
        let (facing, decision) = self.sides.on(side);
        let thrown = self.draw.realised(new);
        let law = self.stage.law(&thrown, aim, side, *decision);
        let habit = self.stage.habit(&thrown, side, *decision);
        facing.with(&law, &habit).expected(shares)
    }
}

/// What a mix brings against one side, pitch by pitch, with doubt.
#[derive(Debug, Clone, PartialEq)]
pub struct SideOutlook {
    /// Runs the hitters gain per 100 pitches.
    pub runs_per_100: Estimate,
    /// By pitch, in the order of the shares.
    pub pitches: Vec<PitchOutlook>,
}

/// What one pitch of a mix brings against one side: chances per pitch thrown; the four sum to one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PitchOutlook {
    /// Its share of the mix.
    pub share: f64,
    /// Where it is aimed.
    pub aim: Aim,
    /// Swung at and missed.
    pub swing_and_miss: Estimate,
    /// Hit, not well.
    pub weak_contact: Estimate,
    /// Hit well.
    pub solid_contact: Estimate,
    /// Not swung at.
    pub take: Estimate,
}

impl SideOutlook {
    /// Of `plan`'s pitches under `shares`.
    pub fn of(plan: &SidePlan, shares: &[f64], worlds: &[World]) -> Self {
        let model = plan.expected(shares);
        let drawn: Vec<Expected> = worlds.iter().map(|world| world.expected(plan.side, shares)).collect();
        Self::from_expected(plan.side, &plan.own, shares, &plan.aims, &model, &drawn, worlds)
    }

    /// From what the model (own results included) and every world (without them) expect; own results
    /// are blended in.
    pub fn from_expected(
        side: Side,
        own: &OwnResults,
        shares: &[f64],
        aims: &[Aim],
        model: &Expected,
        drawn: &[impl Borrow<Expected>],
        worlds: &[World],
    ) -> Self {
        let correction = own.runs(shares);
        let runs: Vec<f64> = drawn.iter().map(|expected| 100.0 * (expected.borrow().runs + correction)).collect();
        let pitches = (0..shares.len()).map(|pitch| {
            let blend = own.blends.get(pitch).copied().flatten();
            let best = blend.map_or(model.rates[pitch], |blend| blend.rates(&model.rates[pitch]));
            let rates: Vec<Rates> = drawn
                .iter()
                .zip(worlds)
                .map(|(expected, world)| {
                    let rates = &expected.borrow().rates[pitch];
                    blend.map_or(*rates, |blend| blend.rates_at(rates, *world.draw.luck[pitch].on(side)))
                })
                .collect();
            PitchOutlook::of(shares[pitch], aims[pitch], &best, &rates)
        });
        Self { runs_per_100: Estimate::from_draws(100.0 * model.runs, &runs), pitches: pitches.collect() }
    }
}

impl PitchOutlook {
    fn of(share: f64, aim: Aim, best: &Rates, drawn: &[Rates]) -> Self {
        let estimate =
            |read: fn(&Rates) -> f64| Estimate::from_draws(read(best), &drawn.iter().map(read).collect::<Vec<f64>>());
        Self {
            share,
            aim,
            swing_and_miss: estimate(|rates| rates.swing_and_miss),
            weak_contact: estimate(|rates| rates.weak_contact),
            solid_contact: estimate(|rates| rates.solid_contact),
            take: estimate(|rates| rates.take()),
        }
    }
}

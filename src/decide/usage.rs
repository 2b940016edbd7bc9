//! How the pitches he has are best used against each side, and what today's use leaves.

use crate::athlete::profile::{PerSide, Profile};
use crate::base::stats::Estimate;
use crate::former::evaluate::{SideOutlook, SidePlan, Stage, Today, World, draws, worlds};

/// Usage of one side.
#[derive(Debug, Clone)]
pub struct UsageSide {
    /// The best mix.
    pub best: SideOutlook,
    /// Today's mix, when the profile gives it.
    pub today: Option<SideOutlook>,
    /// Runs per 100 pitches that today's mix leaves on the table.
    pub left: Option<Estimate>,
    /// How far the mix may be from the best, runs per 100 pitches.
    pub gap: f64,
    /// Weight of own results in the rates of each pitch, 0 to 1; nothing without results.
    pub data_weights: Vec<Option<f64>>,
}

/// Usage of both sides, over `count` draws from `seed`.
pub fn usage(profile: &Profile, count: usize, seed: u64) -> PerSide<UsageSide> {
    let stage = Stage::new(profile);
    let today = Today::of(&stage);
    let worlds = worlds(&stage, &today, draws(profile.athlete.level, stage.pitches.len(), count, seed));
    PerSide::from_fn(|side| {
        let plan = today.plans.on(side);
        let best = &plan.mix.shares;
        let now = plan.today(&stage);
        let left = now.as_ref().map(|now| {
            let shift = plan.own.runs(now) - plan.own.runs(best);
            let left_in = |world: &World| world.expected(side, now).runs - world.today(side).runs;
            let by_world: Vec<f64> = worlds.iter().map(|world| 100.0 * (left_in(world) + shift)).collect();
            Estimate::from_draws(100.0 * (plan.expected(now).runs - plan.mix.runs), &by_world)
        });
        UsageSide {
            best: SideOutlook::of(plan, best, &worlds),
            today: now.as_ref().map(|now| SideOutlook::of(plan, now, &worlds)),
            left,
            gap: 100.0 * plan.mix.gap,
            data_weights: data_weights(plan),
        }
    })
}

/// Mean weight of the data over the three rates.
fn data_weights(plan: &SidePlan) -> Vec<Option<f64>> {
    plan.own
        .blends
        .iter()
        .map(|blend| blend.map(|b| (b.take.data_weight + b.miss.data_weight + b.weak.data_weight) / 3.0))
        .collect()
}

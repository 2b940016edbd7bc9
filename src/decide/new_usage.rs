//! How the athlete's pitches are used against each side: what is customary, what the profile tells, what the model leans
//! to, and what that is worth.

use crate::athlete::profile::PerSide;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;

use super::leaning::recommended;
use super::model::Model;
use super::outlook::{SideOutlook, of_today};
use super::shares::Shares;
use super::worth::{Change, Worth, owned};

/// How the pitches are used.
#[derive(Debug, Clone)]
pub struct Usage {
    /// By side.
    pub sides: PerSide<UsageSide>,
    /// What leaning would save over today's use.
    pub leaning: Worth,
}

/// Use against one side.
#[derive(Debug, Clone)]
pub struct UsageSide {
    /// The customary share of each pitch, with the band that holds four pitchers in five.
    pub custom: Vec<Estimate>,
    /// The share the profile tells, by pitch, where it tells all of them.
    pub told: Option<Vec<f64>>,
    /// What the pitches bring thrown as today.
    pub today: SideOutlook,
    /// What they bring thrown as recommended.
    pub best: SideOutlook,
    /// What the recommended use saves on the best guess, runs per 100 pitches.
    pub saved: Estimate,
}

impl Usage {
    /// Of today's arsenal.
    pub fn of(model: &Model) -> Self {
        let leaned = recommended(model);
        let change = Change { pitches: owned(model), shares: leaned.clone(), novelty: 0.0 };
        let leaning = Worth::of(model, &change);
        let mut today = of_today(model, &model.shares);
        let mut best = of_today(model, &leaned);
        let side = |side: Side| UsageSide {
            custom: super::custom::bands(model.profile, side),
            told: told(model, side),
            today: take(&mut today, side),
            best: take(&mut best, side),
            saved: *leaning.sides.on(side),
        };
        Self { sides: PerSide::from_fn(side), leaning }
    }

    /// Pitches whose told share lies outside the band of what is customary against `side`.
    pub fn outside_custom(&self, side: Side) -> Vec<usize> {
        let on = self.sides.on(side);
        let told = on.told.iter().flatten().zip(&on.custom).enumerate();
        told.filter(|(_, (share, band))| !(band.low..=band.high).contains(share)).map(|(pitch, _)| pitch).collect()
    }
}

fn take(outlooks: &mut PerSide<SideOutlook>, side: Side) -> SideOutlook {
    outlooks.on(side).clone()
}

fn told(model: &Model, side: Side) -> Option<Vec<f64>> {
    model.profile.pitches.iter().map(|pitch| *pitch.usage.on(side)).collect()
}

//! How the athlete's pitches are used against each side: what is customary, what the profile tells, what the model leans
//! to, and what that is worth.

use crate::athlete::profile::{PerSide, Profile};
use crate::ball::Family;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;

use super::counts::Count;
use super::leaning::recommended;
use super::model::Model;
use super::outlook::{SideOutlook, of_today};
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
            custom: (0..model.arsenal.len()).map(|pitch| model.custom.band(side, pitch)).collect(),
            told: told(model, side),
            today: take(&mut today, side),
            best: take(&mut best, side),
            saved: *leaning.sides.on(side),
        };
        Self { sides: PerSide::from_fn(side), leaning }
    }

    /// Limits of the profile that hold the recommended use against `side` where it is, and in which states of the count.
    pub fn held(&self, profile: &Profile, side: Side) -> Vec<(Limit, Vec<Count>)> {
        let best = &self.sides.on(side).best;
        let held = |limit: Limit| {
            let counts = Count::ALL.into_iter().filter(|count| limit.is_met(profile, best, *count));
            (limit, counts.collect::<Vec<Count>>())
        };
        Limit::ALL.into_iter().map(held).filter(|(_, counts)| !counts.is_empty()).collect()
    }

    /// Pitches whose told share lies outside the band of what is customary against `side`.
    pub fn outside_custom(&self, side: Side) -> Vec<usize> {
        let on = self.sides.on(side);
        let told = on.told.iter().flatten().zip(&on.custom).enumerate();
        told.filter(|(_, (share, band))| !(band.low..=band.high).contains(share)).map(|(pitch, _)| pitch).collect()
    }
}

/// A limit of the profile on use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limit {
    /// Fastballs together at least a share.
    FastballFloor,
    /// Breaking balls together at most a share.
    BreakingCap,
}

/// How near its limit a share is held by it: less than a share is told to.
const AT_LIMIT: f64 = 0.001;

impl Limit {
    const ALL: [Self; 2] = [Self::FastballFloor, Self::BreakingCap];

    /// The share, 0 to 1.
    pub fn share(self, profile: &Profile) -> f64 {
        match self {
            Self::FastballFloor => profile.limits.fastball_floor,
            Self::BreakingCap => profile.limits.breaking_cap,
        }
    }

    fn is_met(self, profile: &Profile, outlook: &SideOutlook, count: Count) -> bool {
        let counts = match self {
            Self::FastballFloor => Family::is_fastball,
            Self::BreakingCap => Family::is_breaking,
        };
        let pitches = profile.pitches.iter().zip(&outlook.pitches).filter(|(pitch, _)| counts(pitch.family));
        let share: f64 = pitches.map(|(_, outlook)| outlook.by_count[count as usize]).sum();
        let limit = self.share(profile);
        0.0 < limit && limit < 1.0 && (share - limit).abs() < AT_LIMIT
    }
}

fn take(outlooks: &mut PerSide<SideOutlook>, side: Side) -> SideOutlook {
    outlooks.on(side).clone()
}

fn told(model: &Model, side: Side) -> Option<Vec<f64>> {
    model.profile.pitches.iter().map(|pitch| *pitch.usage.on(side)).collect()
}

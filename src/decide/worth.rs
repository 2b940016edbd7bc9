//! What a change of an arsenal is worth: the runs it saves, on the best guess and in every draw of what is not known.
//!
//! A change is a new pitch, another shape, a pitch dropped, more speed, tighter command or other use. Its worth is what
//! today's arsenal brings the hitters less what the changed one brings, each in the shares it would be thrown in.
//! Differences between pitches are shrunk, kinds of pitches have offsets, a new pitch has an unknown level
//! ([`Draw`]); both readings of the hitter count alike.

use rayon::prelude::*;

use crate::athlete::profile::PerSide;
use crate::ball::Shape;
use crate::ball::flight::Air;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::hitter::Hitter;

use super::draws::{Draw, Terms};
use super::facing::{Facing, Placed};
use super::model::Model;
use super::new_pitch::NewPitch;
use super::shares::{Outcomes, Shares, runs_of_arsenal};

/// An arsenal that might be instead of today's.
#[derive(Debug, Clone)]
pub struct Change {
    /// Its pitches.
    pub pitches: Vec<Source>,
    /// How they would be thrown.
    pub shares: Shares,
    /// How much of the last pitch is new to the athlete, 0 to 1: a twin of an owned pitch is not.
    pub novelty: f64,
}

/// Where a pitch of a changed arsenal comes from.
#[derive(Debug, Clone)]
pub enum Source {
    /// Thrown today, and as today.
    Owned(usize),
    /// Thrown today, but otherwise; how far off it is measured is known of today's.
    Changed(usize, Box<Placed>),
    /// To be learnt.
    New(Box<NewPitch>),
}

/// Runs a change saves per 100 pitches.
#[derive(Debug, Clone, PartialEq)]
pub struct Worth {
    /// By side.
    pub sides: PerSide<Estimate>,
    /// Weighted by how often each side is faced.
    pub overall: Estimate,
    /// Share of draws in which it saves anything.
    pub chance: f64,
    /// Overall, under each reading of the hitter.
    pub by_reading: [f64; 2],
    /// Overall in every draw, in order.
    pub by_draw: Vec<f64>,
}

impl Change {
    /// Today's arsenal with one more pitch.
    pub fn adding(model: &Model, new: NewPitch, shares: Shares) -> Self {
        let novelty = 1.0 - new.twin.likeness;
        let pitches = owned(model).into_iter().chain([Source::New(Box::new(new))]).collect();
        Self { pitches, shares, novelty }
    }

    /// Today's arsenal with one pitch changed in shape, thrown to the same places as often.
    pub fn reshaping(model: &Model, pitch: usize, shape: Shape) -> Self {
        let source = |index: usize| {
            if index == pitch {
                Source::Changed(index, Box::new(model.arsenal[index].reshaped(shape, &model.natural)))
            } else {
                Source::Owned(index)
            }
        };
        Self { pitches: (0..model.arsenal.len()).map(source).collect(), shares: model.shares.clone(), novelty: 0.0 }
    }

    /// Runs saved per 100 pitches on the best guess, over both sides and readings.
    pub fn best_guess(&self, model: &Model) -> f64 {
        let [one, other] = self.gains(model);
        model.over_sides(|side| f64::midpoint(*one.on(side), *other.on(side)))
    }

    /// The pitches on the best guess.
    pub fn placed(&self, model: &Model) -> Vec<Placed> {
        let placed = |source: &Source| match source {
            Source::Owned(pitch) => model.arsenal[*pitch].clone(),
            Source::Changed(_, placed) => (**placed).clone(),
            Source::New(new) => new.placed.clone(),
        };
        self.pitches.iter().map(placed).collect()
    }

    /// The pitches as they are in `draw`.
    pub fn placed_in(&self, draw: &Draw, model: &Model) -> Vec<Placed> {
        let placed = |source: &Source| match source {
            Source::Owned(pitch) => model.measured_in(draw, *pitch, &model.arsenal[*pitch]),
            Source::Changed(pitch, placed) => model.measured_in(draw, *pitch, placed),
            Source::New(new) => new.landed(draw, &model.natural),
        };
        self.pitches.iter().map(placed).collect()
    }

    /// Today's arsenal and the new pitch, when that is all that changes.
    fn added(&self) -> Option<&NewPitch> {
        let (last, before) = self.pitches.split_last()?;
        let untouched =
            before.iter().enumerate().all(|(index, source)| matches!(source, Source::Owned(i) if *i == index));
        match last {
            Source::New(new) if untouched => Some(new),
            Source::New(_) | Source::Owned(_) | Source::Changed(..) => None,
        }
    }

    /// Runs saved per 100 pitches on the best guess, under each reading of the hitter.
    pub fn gains(&self, model: &Model) -> [PerSide<f64>; 2] {
        let placed = self.placed(model);
        let facings = self.facings(model, &placed);
        std::array::from_fn(|reading| {
            let today = Brought { placed: &model.arsenal, facing: &model.today[reading], terms: Terms::LIKELIEST };
            self.gain_over(&today, &model.shares, &placed, &facings[reading])
        })
    }

    /// The changed arsenal, `placed`, against each of the likeliest hitters.
    pub fn facings(&self, model: &Model, placed: &[Placed]) -> [Facing; 2] {
        [0, 1].map(|reading: usize| self.facing(&model.today[reading], placed, &model.hitters[reading], model.air))
    }

    /// The changed arsenal against one hitter, before whom today's is `today`.
    fn facing(&self, today: &Facing, placed: &[Placed], hitter: &Hitter, air: Air) -> Facing {
        match (self.added(), placed.last()) {
            (Some(_), Some(new)) => today.with(hitter, new, air),
            (None, _) | (_, None) if self.is_today() => today.clone(),
            (None, _) | (_, None) => Facing::new(hitter, placed, air),
        }
    }

    /// Whether the pitches are today's, and only their shares change.
    fn is_today(&self) -> bool {
        self.pitches.iter().enumerate().all(|(index, source)| matches!(source, Source::Owned(i) if *i == index))
    }

    /// Runs saved per 100 pitches where today's arsenal brings `today` in `shares` and the changed one is `facing`.
    fn gain_over(&self, today: &Brought, shares: &Shares, placed: &[Placed], facing: &Facing) -> PerSide<f64> {
        let changed = Brought { placed, facing, terms: today.terms };
        PerSide::from_fn(|side| {
            let new_share = self.shares.mix(side).last().copied().unwrap_or(0.0);
            let unknown = self.novelty * new_share * today.terms.new_level;
            today.runs(shares, side) - changed.runs(&self.shares, side) - unknown
        })
    }
}

/// What `change` saves in `draw`, runs per 100 pitches.
pub fn gain_in(draw: &Draw, model: &Model, change: &Change) -> PerSide<f64> {
    gains_in(draw, model, std::slice::from_ref(change)).swap_remove(0)
}

/// Today's pitches, as today.
pub fn owned(model: &Model) -> Vec<Source> {
    (0..model.arsenal.len()).map(Source::Owned).collect()
}

/// What an arsenal brings one hitter.
pub struct Brought<'a> {
    /// The pitches.
    pub placed: &'a [Placed],
    /// Against the hitter.
    pub facing: &'a Facing,
    /// What is added to the model's runs.
    pub terms: Terms,
}

impl Brought<'_> {
    /// What comes of every pitch, the athlete's own results in it; `luck` is how far these may be off, by pitch.
    pub fn outcomes(&self, side: Side, mix: &[f64], luck: &[PerSide<[f64; 3]>]) -> Outcomes {
        let mut outcomes = self.facing.chances(side, mix);
        for (pitch, (chances, placed)) in outcomes.iter_mut().zip(self.placed).enumerate() {
            if let Some(own) = placed.own.on(side) {
                let luck = luck.get(pitch).map_or([0.0; 3], |luck| *luck.on(side));
                for chances in chances {
                    *chances = own.applied(chances, luck);
                }
            }
        }
        outcomes
    }

    /// Runs per 100 pitches thrown in `shares`, up to a constant that is the same for every arsenal.
    pub fn runs(&self, shares: &Shares, side: Side) -> f64 {
        let mix = shares.mix(side);
        let model = runs_of_arsenal(&self.outcomes(side, &mix, &[]), shares, side);
        let offset = |(placed, share): (&Placed, &f64)| share * self.terms.offsets.of(&placed.offering.likeness);
        self.terms.shrink * model + self.placed.iter().zip(&mix).map(offset).sum::<f64>()
    }
}

/// What each of `changes` saves in `draw`.
fn gains_in(draw: &Draw, model: &Model, changes: &[Change]) -> Vec<PerSide<f64>> {
    let placed: Vec<Placed> =
        model.arsenal.iter().enumerate().map(|(pitch, placed)| model.measured_in(draw, pitch, placed)).collect();
    let facing = Facing::new(&draw.hitter, &placed, model.air);
    let today = Brought { placed: &placed, facing: &facing, terms: draw.terms };
    let gain = |change: &Change| {
        let change = Change { shares: model.shares.toward(&change.shares, draw.share), ..change.clone() };
        let placed = change.placed_in(draw, model);
        let facing = change.facing(today.facing, &placed, &draw.hitter, model.air);
        change.gain_over(&today, &model.shares, &placed, &facing)
    };
    changes.iter().map(gain).collect()
}

impl Worth {
    /// What each of `changes` is worth, in the same draws.
    pub fn of_all(model: &Model, changes: &[Change]) -> Vec<Self> {
        let drawn: Vec<Vec<PerSide<f64>>> = model.draws.par_iter().map(|draw| gains_in(draw, model, changes)).collect();
        let worth = |(index, change): (usize, &Change)| {
            let by_draw: Vec<PerSide<f64>> = drawn.iter().map(|gains| gains[index]).collect();
            Self::from_gains(model, &change.gains(model), &by_draw)
        };
        changes.iter().enumerate().map(worth).collect()
    }

    /// What one change is worth.
    pub fn of(model: &Model, change: &Change) -> Self {
        Self::of_all(model, std::slice::from_ref(change)).swap_remove(0)
    }

    fn from_gains(model: &Model, best: &[PerSide<f64>; 2], drawn: &[PerSide<f64>]) -> Self {
        let overall = |gain: &PerSide<f64>| model.over_sides(|side| *gain.on(side));
        let by_reading = [overall(&best[0]), overall(&best[1])];
        let by_draw: Vec<f64> = drawn.iter().map(overall).collect();
        let on_side = |side: Side| {
            let value = f64::midpoint(*best[0].on(side), *best[1].on(side));
            Estimate::from_draws(value, &drawn.iter().map(|gain| *gain.on(side)).collect::<Vec<f64>>())
        };
        let saving = by_draw.iter().filter(|gain| **gain > 0.0).count();
        Self {
            sides: PerSide::from_fn(on_side),
            overall: Estimate::from_draws(f64::midpoint(by_reading[0], by_reading[1]), &by_draw),
            chance: saving as f64 / by_draw.len().max(1) as f64,
            by_reading,
            by_draw,
        }
    }
}

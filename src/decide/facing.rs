//! An arsenal against one hitter: every pitch met under the belief in every pitch, for both sides and every state of
//! the count. What comes of it in any shares is then a matter of weights.

use crate::athlete::natural::{NaturalShapes, alike};
use crate::athlete::profile::PerSide;
use crate::ball::Shape;
use crate::ball::flight::Air;
use crate::base::Location;
use crate::base::geometry::Side;
use crate::hitter::{Belief, Chances, CountGroup, Delivery, Hitter, Reading, Row, Scatter};

use super::offering::Offering;
use super::own_results::OwnResults;

/// Where a pitch is thrown to, and how widely it scatters about it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// The target.
    pub aim: Location,
    /// Standard deviations of places about it.
    pub scatter: Scatter,
}

/// Where a pitch is thrown to against one side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spots {
    /// With fewer than two strikes.
    pub early: Spot,
    /// With two strikes.
    pub two_strikes: Spot,
}

impl Spots {
    /// The one for a state of the count.
    pub fn at(&self, group: CountGroup) -> Spot {
        match group {
            CountGroup::TwoStrikes => self.two_strikes,
            CountGroup::Other | CountGroup::First | CountGroup::HitterAhead | CountGroup::ThreeNothing => self.early,
        }
    }
}

/// No pitch is placed more finely than this, in: best throwers' scatter about a target; common practice, no published
/// source.
const LEAST_SCATTER_IN: f64 = 4.0;

/// A pitch with its places.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// The pitch.
    pub offering: Offering,
    /// Where it goes.
    pub spots: PerSide<Spots>,
    /// What the athlete's own results say of it.
    pub own: PerSide<Option<OwnResults>>,
}

impl Placed {
    /// The same pitch with another shape, thrown to the same places.
    #[must_use]
    pub fn reshaped(&self, shape: Shape, natural: &NaturalShapes) -> Self {
        Self { offering: self.offering.reshaped(shape, natural), ..self.clone() }
    }

    /// The same pitch thrown to places `share` of the way to those of `other`.
    #[must_use]
    pub fn toward(self, other: &Self, share: f64) -> Self {
        let mix = |own: f64, other: f64| own + share * (other - own);
        let between = |own: Spot, other: Spot| Spot {
            aim: Location {
                glove_side_in: mix(own.aim.glove_side_in, other.aim.glove_side_in),
                height_in: mix(own.aim.height_in, other.aim.height_in),
            },
            scatter: Scatter {
                side_in: mix(own.scatter.side_in, other.scatter.side_in),
                height_in: mix(own.scatter.height_in, other.scatter.height_in),
            },
        };
        let spots = PerSide::from_fn(|side| {
            let (own, other) = (self.spots.on(side), other.spots.on(side));
            Spots { early: between(own.early, other.early), two_strikes: between(own.two_strikes, other.two_strikes) }
        });
        Self { spots, ..self }
    }

    /// The same pitch with its scatter about the target times `factor`; targets stay as mixed as they are.
    #[must_use]
    pub fn with_command(&self, factor: f64) -> Self {
        let command = self.offering.command;
        let more = factor.powi(2) - 1.0;
        let wider = |all: f64, own: f64| (all.powi(2) + own.powi(2) * more).max(LEAST_SCATTER_IN.powi(2)).sqrt();
        let spot = |spot: Spot| Spot {
            scatter: Scatter {
                side_in: wider(spot.scatter.side_in, command.side_in),
                height_in: wider(spot.scatter.height_in, command.height_in),
            },
            ..spot
        };
        let spots = PerSide::from_fn(|side| {
            let spots = self.spots.on(side);
            Spots { early: spot(spots.early), two_strikes: spot(spots.two_strikes) }
        });
        Self { offering: self.offering.clone().with_command(factor), spots, ..self.clone() }
    }
}

/// An arsenal against one hitter.
#[derive(Debug, Clone)]
pub struct Facing {
    hitter: Hitter,
    shapes: Vec<Shape>,
    sides: PerSide<SideFacing>,
}

#[derive(Debug, Clone)]
struct SideFacing {
    pitches: Vec<Met>,
    beliefs: Vec<Belief>,
}

/// A pitch in flight to its two places, and what comes of it in every state of the count.
#[derive(Debug, Clone)]
struct Met {
    spots: Spots,
    deliveries: [Delivery; 2],
    rows: Vec<Row>,
}

impl Facing {
    /// `arsenal` against `hitter`, in `air`.
    pub fn new(hitter: &Hitter, arsenal: &[Placed], air: Air) -> Self {
        Self {
            hitter: *hitter,
            shapes: arsenal.iter().map(|placed| placed.offering.shape).collect(),
            sides: PerSide::from_fn(|side| SideFacing::new(hitter, arsenal, air, side)),
        }
    }

    /// The same arsenal with one more pitch, last: only what is new is met.
    #[must_use]
    pub fn with(&self, hitter: &Hitter, new: &Placed, air: Air) -> Self {
        Self {
            hitter: *hitter,
            shapes: self.shapes.iter().copied().chain([new.offering.shape]).collect(),
            sides: PerSide::from_fn(|side| self.sides.on(side).with(hitter, new, air, side)),
        }
    }

    /// What comes of every pitch against hitters on `side` in every state of the count, when the hitter knows them to be
    /// thrown in the shares `mix`.
    pub fn chances(&self, side: Side, mix: &[f64]) -> Vec<[Chances; 5]> {
        let mix = self.as_crowds(mix);
        let all = |met: &Met| std::array::from_fn(|group| met.rows[group].chances(&mix));
        self.sides.on(side).pitches.iter().map(all).collect()
    }

    /// How often a hitter on `side` takes each pitch for each when he must decide, with fewer than two strikes.
    pub fn taken_for(&self, side: Side, mix: &[f64]) -> Vec<Vec<f64>> {
        let mix = self.as_crowds(mix);
        self.sides.on(side).pitches.iter().map(|met| met.rows[CountGroup::Other as usize].taken_for(&mix)).collect()
    }

    /// The shares to tell the hitter so that pitches that look alike make one crowd. A hitter who reads crowds weighs a
    /// share m as m / (m + h); look-alikes under two names must weigh together as they would under one, so each weighs
    /// m / (M + h), M the shares of all that look like it.
    fn as_crowds(&self, mix: &[f64]) -> Vec<f64> {
        if self.hitter.reading == Reading::Shares {
            return mix.to_vec();
        }
        let half = self.hitter.parameters.share_at_half;
        let crowd = |own: Shape| {
            let others = self.shapes.iter().zip(mix);
            others.map(|(other, share)| alike(own, *other) * share).sum::<f64>()
        };
        let told = |(own, share): (&Shape, &f64)| {
            let weight = share / (crowd(*own) + half);
            half * weight / (1.0 - weight)
        };
        self.shapes.iter().zip(mix).map(told).collect()
    }

    /// The pitches in flight to where they are aimed against hitters on `side` with fewer than two strikes.
    pub fn deliveries(&self, side: Side) -> impl Iterator<Item = &Delivery> {
        self.sides.on(side).pitches.iter().map(|met| &met.deliveries[0])
    }
}

impl SideFacing {
    fn new(hitter: &Hitter, arsenal: &[Placed], air: Air, side: Side) -> Self {
        let flown: Vec<[Delivery; 2]> = arsenal.iter().map(|placed| deliveries(placed, air, side)).collect();
        let beliefs: Vec<Belief> = flown.iter().map(|[early, _]| early.belief()).collect();
        let fastest_s = fastest(&beliefs);
        let pitches = arsenal.iter().zip(flown).map(|(placed, deliveries)| Met {
            rows: rows(hitter, placed.spots.on(side), &deliveries, &beliefs, fastest_s, side),
            spots: *placed.spots.on(side),
            deliveries,
        });
        Self { pitches: pitches.collect(), beliefs }
    }

    fn with(&self, hitter: &Hitter, new: &Placed, air: Air, side: Side) -> Self {
        let deliveries = deliveries(new, air, side);
        let belief = deliveries[0].belief();
        let beliefs: Vec<Belief> = self.beliefs.iter().copied().chain([belief]).collect();
        let fastest_s = fastest(&beliefs);
        let is_fastest = belief.flight_s < fastest(&self.beliefs);
        let mut pitches = self.pitches.clone();
        for met in &mut pitches {
            if is_fastest {
                met.rows = rows(hitter, &met.spots, &met.deliveries, &beliefs, fastest_s, side);
            } else {
                met.rows.iter_mut().for_each(|row| row.push(&belief));
            }
        }
        let spots = *new.spots.on(side);
        let rows = rows(hitter, &spots, &deliveries, &beliefs, fastest_s, side);
        pitches.push(Met { spots, deliveries, rows });
        Self { pitches, beliefs }
    }
}

fn deliveries(placed: &Placed, air: Air, side: Side) -> [Delivery; 2] {
    let spots = placed.spots.on(side);
    [spots.early, spots.two_strikes]
        .map(|spot| Delivery::of(placed.offering.shape, placed.offering.release, air, spot.aim))
}

fn rows(
    hitter: &Hitter,
    spots: &Spots,
    deliveries: &[Delivery; 2],
    beliefs: &[Belief],
    fastest_s: f64,
    side: Side,
) -> Vec<Row> {
    let row = |group: CountGroup| {
        let delivery = &deliveries[usize::from(group == CountGroup::TwoStrikes)];
        Row::of(hitter, delivery, spots.at(group).scatter, beliefs, fastest_s, side, group)
    };
    CountGroup::ALL.map(row).to_vec()
}

fn fastest(beliefs: &[Belief]) -> f64 {
    beliefs.iter().map(|belief| belief.flight_s).fold(f64::INFINITY, f64::min)
}

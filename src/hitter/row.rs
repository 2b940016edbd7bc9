//! A pitch met by a hitter of one side in one state of the count: all that can be worked out before it is known how
//! often each pitch is thrown and where exactly this one is aimed.

use std::sync::Arc;

use crate::base::Location;
use crate::base::geometry::Side;

use super::chances::Chances;
use super::meeting::{Across, Meeting};
use super::places::Lattice;
use super::umpire::Umpire;
use super::{Belief, CountGroup, Delivery, Hitter, Scatter, Spread, Struck};

/// A ball at one node met under one belief: the weight of the belief, and the swing, contact and solid contact that come
/// of it times that weight.
type Weighed = [f64; 4];

/// One pitch, one side, one state of the count: met under each belief at each node of a lattice of places.
#[derive(Debug, Clone)]
pub struct Row {
    hitter: Hitter,
    delivery: Delivery,
    fastest_s: f64,
    side: Side,
    group: CountGroup,
    lattice: Lattice,
    spread: Spread,
    umpire: Arc<Umpire>,
    met: Vec<Vec<Weighed>>,
}

impl Row {
    /// The pitch scattered about its aim, met by a hitter who knows the pitches of `beliefs`, the fastest of which takes
    /// `fastest_s`.
    pub fn of(
        hitter: &Hitter,
        delivery: &Delivery,
        scatter: Scatter,
        beliefs: &[Belief],
        fastest_s: f64,
        side: Side,
        group: CountGroup,
    ) -> Self {
        let lattice = Lattice::about(delivery.aim(), scatter, hitter.zone);
        let spread = lattice.spread(delivery.aim(), scatter);
        let umpire = Umpire::behind(hitter.zone, side, group);
        let (hitter, delivery) = (*hitter, *delivery);
        let mut row = Self { hitter, delivery, fastest_s, side, group, lattice, spread, umpire, met: Vec::new() };
        for belief in beliefs {
            row.push(belief);
        }
        row
    }

    /// One belief more: a pitch he gets to know. Nothing else is worked out again, so it must not be the fastest.
    pub fn push(&mut self, belief: &Belief) {
        let (hitter, delivery, lattice) = (&self.hitter, &self.delivery, &self.lattice);
        let meeting = Meeting::of(hitter, &delivery.aimed.course, belief, self.fastest_s, self.side, self.group);
        let heights = lattice.height.places().map(|place| meeting.height(hitter, delivery.height_at(place)));
        let across = lattice.across.places().map(|place| meeting.across(hitter, delivery.across_at(place)));
        let across: Vec<(f64, Across)> = across.map(|across| (across.log_weight.exp(), across)).collect();
        let mut met = Vec::with_capacity(lattice.height.count() * lattice.across.count());
        for height in heights {
            let up = meeting.log_weight(&height).exp();
            met.extend(
                across.iter().map(|(weight, across)| weighed(up * weight, meeting.struck(hitter, &height, across))),
            );
        }
        self.met.push(met);
    }

    /// Chances about its aim when the pitches are thrown in the shares `mix`, one for each belief and not all nought.
    pub fn chances(&self, mix: &[f64]) -> Chances {
        self.mixed(mix).chances(&self.spread)
    }

    /// For which pitch the hitter takes it when he must decide: a share for each belief, averaged over the places.
    pub fn taken_for(&self, mix: &[f64]) -> Vec<f64> {
        let shares: Vec<f64> = mix.iter().map(|share| self.hitter.weight_of_share(*share).0).collect();
        let mut taken = vec![0.0; self.met.len()];
        let places =
            self.spread.height.iter().flat_map(|height| self.spread.across.iter().map(move |across| height * across));
        for (node, place) in places.enumerate() {
            let weights: Vec<f64> = self.met.iter().zip(&shares).map(|(met, share)| share * met[node][0]).collect();
            let total: f64 = weights.iter().sum();
            taken.iter_mut().zip(&weights).for_each(|(taken, weight)| *taken += place * weight / total);
        }
        taken
    }

    /// Chances about its aim, and how each moves with each of the shares `mix`.
    pub fn chances_and_slopes(&self, mix: &[f64]) -> (Chances, Vec<Chances>) {
        let mixed = self.mixed(mix);
        (mixed.chances(&self.spread), mixed.slopes(&self.spread))
    }

    /// How its places are shared out about another aim, no farther than [`super::AIM_ALLOWANCE_IN`] from its own.
    pub fn spread(&self, aim: Location, scatter: Scatter) -> Spread {
        self.lattice.spread(aim, scatter)
    }

    /// What comes of the pitch at each node when the pitches are thrown in the shares `mix`; for many aims.
    pub fn mixed<'row>(&'row self, mix: &'row [f64]) -> Mixed<'row> {
        let mut total = vec![[0.0; 4]; self.lattice.height.count() * self.lattice.across.count()];
        for (met, share) in self.met.iter().zip(mix) {
            let weight = self.hitter.weight_of_share(*share).0;
            for (sum, at) in total.iter_mut().zip(met) {
                for (sum, at) in sum.iter_mut().zip(at) {
                    *sum += weight * at;
                }
            }
        }
        Mixed { row: self, mix, nodes: total.into_iter().map(|total| (1.0 / total[0], struck(total))).collect() }
    }
}

/// A row whose shares are known.
#[derive(Debug, Clone)]
pub struct Mixed<'row> {
    row: &'row Row,
    mix: &'row [f64],
    /// One over the weight of all beliefs, and what comes of the pitch, node by node.
    nodes: Vec<(f64, Struck)>,
}

impl Mixed<'_> {
    /// Chances when the places are shared out so.
    pub fn chances(&self, spread: &Spread) -> Chances {
        self.mean(spread, self.nodes.iter().map(|(_, struck)| *struck))
    }

    /// How those chances move with each share: exact, for the outcome at a node is a ratio of two sums that are linear in
    /// the weights of the beliefs.
    pub fn slopes(&self, spread: &Spread) -> Vec<Chances> {
        let still = self.mean(spread, std::iter::repeat(Struck::default()));
        let slope = |(met, share): (&Vec<Weighed>, &f64)| {
            let per_share = self.row.hitter.weight_of_share(*share).1;
            let moved = met.iter().zip(&self.nodes).map(|(met, (per_weight, mean))| {
                let by = |part: f64, mean: f64| per_share * per_weight * (part - mean * met[0]);
                Struck {
                    swing: by(met[1], mean.swing),
                    contact: by(met[2], mean.contact),
                    solid: by(met[3], mean.solid),
                }
            });
            self.mean(spread, moved) - still
        };
        self.row.met.iter().zip(self.mix).map(slope).collect()
    }

    /// The mean over the places of what is struck at each node, with what is called where nothing is.
    fn mean(&self, spread: &Spread, mut struck: impl Iterator<Item = Struck>) -> Chances {
        let Row { lattice, umpire, .. } = self.row;
        let mut chances = Chances::default();
        for (height, up) in lattice.height.numbers().zip(&spread.height) {
            for ((across, weight), struck) in lattice.across.numbers().zip(&spread.across).zip(&mut struck) {
                chances.add(up * weight, struck, umpire.at(height, across));
            }
        }
        chances
    }
}

/// No weight is nought, so that the mean of the beliefs stands even where all find a place absurd.
fn weighed(weight: f64, struck: Struck) -> Weighed {
    let weight = weight.max(f64::MIN_POSITIVE);
    [1.0, struck.swing, struck.contact, struck.solid].map(|part| weight * part)
}

fn struck([weight, swing, contact, solid]: Weighed) -> Struck {
    Struck { swing: swing / weight, contact: contact / weight, solid: solid / weight }
}

//! Where each pitch is best aimed: not far from where such pitches are thrown, and for that the better for the pitcher.
//!
//! A free search over the plate is not to be believed: the hitter is fitted to throws near their customary places. So an
//! aim moves at most [`MOST_MOVED_IN`] from the customary centre, and what it saves there is what the model may say.

use crate::athlete::profile::PerSide;
use crate::ball::flight::Air;
use crate::base::Location;
use crate::base::geometry::Side;
use crate::hitter::{Belief, CountGroup, Delivery, Hitter, Row};

use super::facing::{Placed, Spot, Spots};
use super::runs::runs;
use super::shares::Shares;

/// How far an aim may lie from where such pitches are customarily thrown, in.
pub const MOST_MOVED_IN: f64 = 4.0;
/// Steps in which aims are looked at, in.
const STEP_IN: f64 = 2.0;

/// A pitch at its customary places, aimed where it brings the hitters least beside the `known` pitches thrown in
/// `shares`; an athlete's own aims stay.
pub fn preferred(hitters: &[Hitter; 2], placed: &Placed, known: &[Placed], shares: &Shares, air: Air) -> Placed {
    let spots = PerSide::from_fn(|side| {
        let spots = *placed.spots.on(side);
        if placed.offering.own_aim(side).is_some() {
            return spots;
        }
        let plate = Plate { hitters, known, mix: &shares.mix(side), air, side };
        Spots {
            early: plate.best(placed, spots.early, CountGroup::Other),
            two_strikes: plate.best(placed, spots.two_strikes, CountGroup::TwoStrikes),
        }
    });
    Placed { spots, ..placed.clone() }
}

/// The plate against one side.
struct Plate<'a> {
    hitters: &'a [Hitter; 2],
    known: &'a [Placed],
    mix: &'a [f64],
    air: Air,
    side: Side,
}

impl Plate<'_> {
    fn best(&self, placed: &Placed, spot: Spot, group: CountGroup) -> Spot {
        let aims = around(spot.aim);
        let runs = self.runs(placed, spot, group, &aims);
        let least = aims.iter().zip(runs).min_by(|a, b| a.1.total_cmp(&b.1));
        Spot { aim: least.map_or(spot.aim, |(aim, _)| *aim), ..spot }
    }

    /// Runs that the pitch brings aimed at each of `aims`, added up over both readings of the hitter.
    fn runs(&self, placed: &Placed, spot: Spot, group: CountGroup, aims: &[Location]) -> Vec<f64> {
        let offering = &placed.offering;
        let delivery = Delivery::of(offering.shape, offering.release, self.air, spot.aim);
        let beliefs: Vec<Belief> = self.known.iter().map(|placed| self.belief(placed)).collect();
        let fastest_s = beliefs.iter().map(|belief| belief.flight_s).fold(f64::INFINITY, f64::min);
        let rows = self.hitters.map(|h| Row::of(&h, &delivery, spot.scatter, &beliefs, fastest_s, self.side, group));
        let mixed = [0, 1].map(|reading: usize| rows[reading].mixed(self.mix));
        let at = |aim: &Location| {
            let spread = rows[0].spread(*aim, spot.scatter);
            mixed.iter().map(|mixed| runs(&mixed.chances(&spread), group)).sum()
        };
        aims.iter().map(at).collect()
    }

    fn belief(&self, placed: &Placed) -> Belief {
        let offering = &placed.offering;
        Delivery::of(offering.shape, offering.release, self.air, placed.spots.on(self.side).early.aim).belief()
    }
}

/// Aims at most [`MOST_MOVED_IN`] from `centre`, itself first.
fn around(centre: Location) -> Vec<Location> {
    let steps = || (-2..=2).map(|step| f64::from(step) * STEP_IN);
    let moved = steps().flat_map(|x| steps().map(move |z| (x, z)));
    let within = moved.filter(|(x, z)| x.hypot(*z) <= MOST_MOVED_IN && (*x, *z) != (0.0, 0.0));
    let at = |(x, z)| Location { glove_side_in: centre.glove_side_in + x, height_in: centre.height_in + z };
    [centre].into_iter().chain(within.map(at)).collect()
}

//! Called strikes and the zone on the lattice of places.
//!
//! Both have edges sharper than a step of the lattice, which sampled at its nodes would be off by hundredths. What
//! they are averaged with is smooth: known at the nodes it is known between them by a sum of bells (sinc functions
//! under a normal bell: L. Qian 2003, Proc. Am. Math. Soc. 131, 1169). So each node carries, instead of the value
//! there, the integral of the sharp function times its bell.

use std::sync::{Arc, LazyLock};

use crate::ball::spin::BALL_RADIUS;
use crate::base::Location;
use crate::base::geometry::{PLATE_HALF_WIDTH, Side};
use crate::base::units::INCH;

use super::places::STEP_IN;
use super::{CountGroup, Zone, called_strike};

/// Nodes to each side of the middle that can see something of the zone.
const REACH: i32 = 10;
/// Fine places, an inch apart, on which the sharp functions are taken: so many to each side of the middle.
const FINE_REACH: i32 = 26;
/// Standard deviation of the normal bell over the sinc function, in steps.
const BELL_STEPS: f64 = 2.5;

/// What happens to a pitch that is not swung at, node by node.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Taken {
    /// Chance of a called strike.
    pub called_strike: f64,
    /// Share of places there at which some of the ball passes through the zone.
    pub inside: f64,
}

/// Called strikes and the zone, by height and place across.
#[derive(Debug)]
pub(super) struct Umpire {
    taken: Vec<Vec<Taken>>,
}

/// The umpire of the typical zone, by side and state of the count.
static TYPICAL: LazyLock<Vec<Arc<Umpire>>> = LazyLock::new(|| {
    let sides = Side::BOTH.into_iter();
    sides.flat_map(|side| CountGroup::ALL.map(|group| Arc::new(Umpire::of(Zone::TYPICAL, side, group)))).collect()
});

impl Umpire {
    /// The umpire of a zone, side and state of the count.
    pub(super) fn behind(zone: Zone, side: Side, group: CountGroup) -> Arc<Self> {
        if zone == Zone::TYPICAL {
            let groups = CountGroup::ALL.len();
            Arc::clone(&TYPICAL[side as usize * groups + group as usize])
        } else {
            Arc::new(Self::of(zone, side, group))
        }
    }

    fn of(zone: Zone, side: Side, group: CountGroup) -> Self {
        let bells: Vec<Vec<f64>> = (-REACH..=REACH).map(bells).collect();
        let see = |values: Vec<f64>| bells.iter().map(|bell| dot(bell, &values)).collect::<Vec<f64>>();
        let called = |up: f64, across: f64| {
            let place = Location { glove_side_in: across, height_in: zone.middle_in + up };
            called_strike(place, zone, side, group)
        };
        // By fine height and node across, then by node across and node in height.
        let rows: Vec<Vec<f64>> = fine().map(|up| see(fine().map(|across| called(up, across)).collect())).collect();
        let columns: Vec<Vec<f64>> =
            (0..bells.len()).map(|node| see(rows.iter().map(|row| row[node]).collect())).collect();
        let radius = BALL_RADIUS / INCH;
        let within = |half: f64| see(fine().map(|place| (half + 0.5 - place.abs()).clamp(0.0, 1.0)).collect());
        let (across, height) = (within(PLATE_HALF_WIDTH / INCH + radius), within(zone.half_in + radius));
        let taken = |up: usize| {
            let at = |node: usize| Taken { called_strike: columns[node][up], inside: height[up] * across[node] };
            (0..bells.len()).map(at).collect()
        };
        Self { taken: (0..bells.len()).map(taken).collect() }
    }

    /// At the node of these numbers.
    #[inline]
    pub(super) fn at(&self, height: i32, across: i32) -> Taken {
        let row = usize::try_from(height + REACH).ok().and_then(|row| self.taken.get(row));
        let node = usize::try_from(across + REACH).ok();
        row.zip(node).and_then(|(row, node)| row.get(node)).copied().unwrap_or_default()
    }
}

/// The fine places, in from the middle.
fn fine() -> impl Iterator<Item = f64> + Clone {
    (-FINE_REACH..=FINE_REACH).map(f64::from)
}

/// How much the node of this number sees of each fine place: a sinc function under a normal bell.
fn bells(node: i32) -> Vec<f64> {
    let bell = |place: f64| {
        let steps = place / STEP_IN - f64::from(node);
        let turn = std::f64::consts::PI * steps;
        let sinc = if turn.abs() < 1e-9 { 1.0 } else { turn.sin() / turn };
        sinc * (-0.5 * (steps / BELL_STEPS).powi(2)).exp() / STEP_IN
    };
    fine().map(bell).collect()
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

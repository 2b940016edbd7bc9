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
const REACH: i32 = 9;
const NODES: usize = 2 * REACH as usize + 1;
/// Fine places, an inch apart, on which the sharp functions are taken: so many to each side of the middle.
const FINE_REACH: i32 = 26;
const FINE: usize = 2 * FINE_REACH as usize + 1;
/// Standard deviation of the normal bell over the sinc function, in steps.
const BELL_STEPS: f64 = 1.5;

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
    taken: Vec<[Taken; NODES]>,
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
        let called: [[f64; FINE]; FINE] = std::array::from_fn(|up| {
            std::array::from_fn(|across| {
                let place = Location { glove_side_in: fine(across), height_in: zone.middle_in + fine(up) };
                called_strike(place, zone, side, group)
            })
        });
        let called = seen(&called.map(|row| seen(&row.map(|chance| [chance])).map(|[chance]| chance)));
        let radius = BALL_RADIUS / INCH;
        let inside_across = inside(PLATE_HALF_WIDTH / INCH + radius);
        let inside_height = inside(zone.half_in + radius);
        let row = |(called, up): (&[f64; NODES], f64)| {
            std::array::from_fn(|node| Taken { called_strike: called[node], inside: up * inside_across[node] })
        };
        Self { taken: called.iter().zip(inside_height).map(row).collect() }
    }

    /// At the node of these numbers.
    #[inline]
    pub(super) fn at(&self, height: i32, across: i32) -> Taken {
        let row = usize::try_from(height + REACH).ok().and_then(|row| self.taken.get(row));
        let node = usize::try_from(across + REACH).ok();
        row.zip(node).and_then(|(row, node)| row.get(node)).copied().unwrap_or_default()
    }
}

/// Offset of a fine place from the middle, in.
fn fine(index: usize) -> f64 {
    index as f64 - f64::from(FINE_REACH)
}

/// What the nodes see of values at the fine places: their sum under the bell of each node.
fn seen<const N: usize>(values: &[[f64; N]; FINE]) -> [[f64; N]; NODES] {
    std::array::from_fn(|node| {
        let place = (node as f64 - f64::from(REACH)) * STEP_IN;
        let mut sum = [0.0; N];
        for (index, row) in values.iter().enumerate() {
            let weight = bell((fine(index) - place) / STEP_IN) / STEP_IN;
            for (sum, value) in sum.iter_mut().zip(row) {
                *sum += weight * value;
            }
        }
        sum
    })
}

/// What the nodes see of the places within `half` of the middle.
fn inside(half: f64) -> [f64; NODES] {
    let share = |index: usize| [(half + 0.5 - fine(index).abs()).clamp(0.0, 1.0)];
    seen(&std::array::from_fn(share)).map(|[share]| share)
}

/// A sinc function under a normal bell, `steps` from its node.
fn bell(steps: f64) -> f64 {
    let turn = std::f64::consts::PI * steps;
    let sinc = if turn.abs() < 1e-9 { 1.0 } else { turn.sin() / turn };
    sinc * (-0.5 * (steps / BELL_STEPS).powi(2)).exp()
}

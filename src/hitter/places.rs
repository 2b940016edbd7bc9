//! Where a pitch ends up: places spread about an aim, and the lattice on which they are averaged.
//!
//! Places scatter normally, one spread an axis. Averages are sums over equal steps weighed by the normal density (the
//! trapezoidal rule, which for smooth functions converges faster than any power of the step: Trefethen and Weideman
//! 2014, SIAM Review 56, 385). The lattice is one for all pitches, fixed to the plate and to the middle of the zone, so
//! that another aim is another set of weights and what is called where stands on it once ([`super::umpire`]).

use crate::base::Location;

use super::Zone;

/// Step of the lattice, in.
pub(super) const STEP_IN: f64 = 5.0;
/// How far places are followed to each side of an aim, in standard deviations.
const REACH_SD: f64 = 3.5;
/// How far (in) another aim may lie from the one a lattice was laid about.
pub const AIM_ALLOWANCE_IN: f64 = 4.0;
/// Fewest nodes along an axis.
const FEWEST: f64 = 9.0;

/// Standard deviations of the places about their aim: targets mixed in and command together, in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scatter {
    /// To the glove side.
    pub side_in: f64,
    /// In height.
    pub height_in: f64,
}

/// Nodes along one axis, at whole steps from an origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Nodes {
    origin_in: f64,
    /// Number of the first one, counted from the origin.
    first: i32,
    /// Number past the last one.
    end: i32,
}

impl Nodes {
    /// The nodes that hold places of this spread about an aim.
    fn about(origin_in: f64, aim_in: f64, sd_in: f64) -> Self {
        let reach = (REACH_SD * sd_in + AIM_ALLOWANCE_IN).max(FEWEST * STEP_IN / 2.0);
        let (low, high) = ((aim_in - reach - origin_in) / STEP_IN, (aim_in + reach - origin_in) / STEP_IN);
        #[expect(clippy::cast_possible_truncation, reason = "aims lie within feet of the plate")]
        let (first, last) = (low.ceil() as i32, high.floor() as i32);
        Self { origin_in, first, end: last + 1 }
    }

    /// Their numbers, counted from the origin.
    pub(super) fn numbers(self) -> std::ops::Range<i32> {
        self.first..self.end
    }

    /// How many there are.
    pub(super) fn count(self) -> usize {
        self.numbers().len()
    }

    /// Their places, in.
    pub(super) fn places(self) -> impl ExactSizeIterator<Item = f64> + Clone {
        self.numbers().map(move |number| self.origin_in + STEP_IN * f64::from(number))
    }

    /// Their weights when places scatter by `sd_in` about an aim; they sum to one.
    fn weights(self, aim_in: f64, sd_in: f64) -> Vec<f64> {
        let density: Vec<f64> = self.places().map(|place| (-0.5 * ((place - aim_in) / sd_in).powi(2)).exp()).collect();
        let total: f64 = density.iter().sum();
        density.iter().map(|weight| weight / total).collect()
    }
}

/// The places at which a pitch is met.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lattice {
    pub across: Nodes,
    pub height: Nodes,
}

impl Lattice {
    /// Places of this scatter about an aim.
    pub(super) fn about(aim: Location, scatter: Scatter, zone: Zone) -> Self {
        Self {
            across: Nodes::about(0.0, aim.glove_side_in, scatter.side_in),
            height: Nodes::about(zone.middle_in, aim.height_in, scatter.height_in),
        }
    }

    /// The weights of its nodes when a pitch scatters about `aim`.
    pub(super) fn spread(&self, aim: Location, scatter: Scatter) -> Spread {
        Spread {
            across: self.across.weights(aim.glove_side_in, scatter.side_in),
            height: self.height.weights(aim.height_in, scatter.height_in),
        }
    }
}

/// How places are shared out over a lattice: one weight an axis and node, each axis summing to one.
#[derive(Debug, Clone, PartialEq)]
pub struct Spread {
    pub(super) across: Vec<f64>,
    pub(super) height: Vec<f64>,
}

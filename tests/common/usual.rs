//! What pitches of a family usually show, worked out from throws whose spin's push and rate were measured: the share of
//! the spin that is active, and the push that is left for the seams.

use std::collections::BTreeMap;

use arsenalfit::athlete::session::Throw;
use arsenalfit::ball::Family;
use arsenalfit::ball::flight::Air;
use arsenalfit::ball::flight::inverse::{break_of_spin, release_point};
use arsenalfit::ball::spin::{LiftLaw, Spin};
use arsenalfit::base::Movement;

use super::league_day::{Row, mean};

/// Fewest throws of a pitcher by which pitchers are compared.
const FEWEST: usize = 5;
/// Shares at which a throw's push is worked out; between them it is interpolated. A little more than all, for throws
/// beyond the lift law's envelope.
const NODES: usize = 25;
const NODE: f64 = 0.05;

/// One throw with measured spin.
pub(crate) struct Spun {
    pub(crate) game: u32,
    pub(crate) pitcher: u32,
    pub(crate) family: Family,
    /// Measured movement along the spin's push, in.
    pub(crate) along_in: f64,
    rpm_per_mph: f64,
    movement: Movement,
    /// The push as a unit vector (glove side, up).
    push: (f64, f64),
    /// What spin alone gives at each node's share.
    by_share: [Movement; NODES],
}

impl Spun {
    pub(crate) fn of(throw: &Throw, row: &Row) -> Option<Self> {
        let (rpm, clock) = (throw.spin.rpm?, throw.spin.clock?);
        let release = release_point(throw.release.or_ordinary());
        let at = |node: usize| {
            let spin = Spin { rpm, active_fraction: NODE * node as f64, clock };
            break_of_spin(spin, throw.shape.speed(), release, LiftLaw::DEFAULT, Air::SEA_LEVEL)
        };
        let (push, movement) = (clock.push(), throw.shape.movement());
        Some(Self {
            game: row.game,
            pitcher: row.pitcher,
            family: row.family(),
            along_in: along(movement, push),
            rpm_per_mph: rpm / throw.shape.speed_mph,
            movement,
            push,
            by_share: std::array::from_fn(at),
        })
    }

    fn given(&self, share: f64) -> Movement {
        let place = (share / NODE).clamp(0.0, (NODES - 1) as f64);
        let before = (1..NODES - 1).rev().find(|&node| node as f64 <= place).unwrap_or(0);
        let (a, b) = (self.by_share[before], self.by_share[before + 1]);
        a + (b - a) * (place - before as f64)
    }

    /// Movement along the push that the spin gives when this share of it is active, in.
    pub(crate) fn along_given(&self, share: f64) -> f64 {
        along(self.given(share), self.push)
    }

    /// What is left across the push, in, up turned toward the glove side counting as positive.
    fn across_left(&self, share: f64) -> f64 {
        let left = self.movement - self.given(share);
        left.glove_side_in * self.push.1 - left.up_in * self.push.0
    }

    fn seams(&self, share: f64) -> Movement {
        let across = self.across_left(share);
        Movement { glove_side_in: across * self.push.1, up_in: -across * self.push.0 }
    }
}

fn along(movement: Movement, push: (f64, f64)) -> f64 {
    movement.glove_side_in * push.0 + movement.up_in * push.1
}

/// The share at which the model's movement along the push, summed over these throws, is the measured one.
pub(crate) fn share_of(throws: &[&Spun]) -> f64 {
    let measured: f64 = throws.iter().map(|throw| throw.along_in).sum();
    let (mut low, mut high) = (0.0, NODE * (NODES - 1) as f64);
    for _ in 0..30 {
        let middle = f64::midpoint(low, high);
        let given: f64 = throws.iter().map(|throw| throw.along_given(middle)).sum();
        if given < measured { low = middle } else { high = middle }
    }
    low
}

/// A mean over pitchers and the standard deviation between them, what each one's throws leave open taken out.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Between {
    pub(crate) mean: f64,
    pub(crate) sd: f64,
}

impl Between {
    fn of(pitchers: &[Vec<f64>]) -> Self {
        let means: Vec<f64> = pitchers.iter().map(|values| mean(values.iter().copied())).collect();
        let open = pitchers.iter().map(|values| variance(values) / values.len() as f64);
        Self { mean: mean(means.iter().copied()), sd: (variance(&means) - mean(open)).max(0.0).sqrt() }
    }
}

fn variance(values: &[f64]) -> f64 {
    let middle = mean(values.iter().copied());
    values.iter().map(|value| (value - middle).powi(2)).sum::<f64>() / (values.len() - 1) as f64
}

/// What a family shows.
#[derive(Debug)]
pub(crate) struct Found {
    pub(crate) pitchers: usize,
    pub(crate) share: f64,
    pub(crate) share_sd: f64,
    pub(crate) glove_side: Between,
    pub(crate) up: Between,
    pub(crate) across: Between,
    pub(crate) rpm_per_mph: Between,
}

/// What these throws of one family show.
pub(crate) fn found(throws: &[&Spun]) -> Found {
    let mut by_pitcher: BTreeMap<u32, Vec<&Spun>> = BTreeMap::new();
    for throw in throws {
        by_pitcher.entry(throw.pitcher).or_default().push(throw);
    }
    by_pitcher.retain(|_, own| own.len() >= FEWEST);
    let share = share_of(throws);
    let each = |read: &dyn Fn(&Spun) -> f64| {
        let pitchers: Vec<Vec<f64>> = by_pitcher.values().map(|own| own.iter().map(|t| read(t)).collect()).collect();
        Between::of(&pitchers)
    };
    // A pitcher's share is known as well as his movement along the push is: what is left open is that, as a share.
    let along = each(&|throw| throw.along_in - throw.along_given(share));
    let per_share = mean(throws.iter().map(|throw| (throw.along_given(share + 0.1) - throw.along_given(share)) / 0.1));
    Found {
        pitchers: by_pitcher.len(),
        share,
        share_sd: along.sd / per_share,
        glove_side: each(&|throw| throw.seams(share).glove_side_in),
        up: each(&|throw| throw.seams(share).up_in),
        across: each(&|throw| throw.across_left(share)),
        rpm_per_mph: each(&|throw| throw.rpm_per_mph),
    }
}

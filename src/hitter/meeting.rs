//! A ball met under a belief, and under all the beliefs an arsenal gives: the outcome is linear in their weights.

use crate::base::geometry::Side;

use super::contact::{Bat, Miss, Timing};
use super::sight::Sight;
use super::{Along, Ball, Belief, CountGroup, Course, Hitter};

/// A ball met under one belief.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Met {
    /// Logarithm of the weight of the belief, without its share.
    pub log_weight: f64,
    /// What comes of it.
    pub struck: Struck,
}

/// Chances of what a hitter does with a pitch, each of all pitches thrown.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Struck {
    /// He swings.
    pub swing: f64,
    /// He swings and hits the ball.
    pub contact: f64,
    /// He swings and hits it hard on a good line (95 mph or more between -5 and 35 degrees in the throws fitted).
    pub solid: f64,
}

/// One ball met under one belief.
pub fn meet(hitter: &Hitter, ball: &Ball, belief: &Belief, fastest_s: f64, side: Side, group: CountGroup) -> Met {
    let meeting = Meeting::of(hitter, &ball.course, belief, fastest_s, side, group);
    let height = meeting.height(hitter, ball.arrival.height);
    let across = meeting.across(hitter, ball.arrival.across);
    Met {
        log_weight: meeting.log_weight(&height) + across.log_weight,
        struck: meeting.struck(hitter, &height, &across),
    }
}

/// What comes of a ball when the hitter knows these pitches (`beliefs`), thrown in the shares `mix`. One and only one
/// belief always weighs more than nothing: shares must not all be zero.
pub fn outcome(hitter: &Hitter, ball: &Ball, beliefs: &[Belief], mix: &[f64], side: Side, group: CountGroup) -> Struck {
    let fastest_s = beliefs.iter().map(|belief| belief.flight_s).fold(f64::INFINITY, f64::min);
    let met: Vec<Met> = beliefs.iter().map(|belief| meet(hitter, ball, belief, fastest_s, side, group)).collect();
    let heaviest = met.iter().map(|met| met.log_weight).fold(f64::NEG_INFINITY, f64::max);
    let weight = |(met, share): (&Met, &f64)| hitter.weight_of_share(*share).0 * (met.log_weight - heaviest).exp();
    let weights: Vec<f64> = met.iter().zip(mix).map(weight).collect();
    let total: f64 = weights.iter().sum();
    let mean = |part: fn(&Struck) -> f64| {
        met.iter().zip(&weights).map(|(met, weight)| part(&met.struck) * weight).sum::<f64>() / total
    };
    Struck { swing: mean(|s| s.swing), contact: mean(|s| s.contact), solid: mean(|s| s.solid) }
}

/// A pitch met under a belief, before its place is known: what all places share.
pub(super) struct Meeting {
    sight: Sight,
    bat: Bat,
}

/// What the height of a ball comes to.
pub(super) struct Height {
    /// Logarithm of how likely he thinks such a place worth a bet.
    log_weight: f64,
    swing: f64,
    miss: Miss,
}

/// What the place across of a ball comes to.
pub(super) struct Across {
    /// Logarithm of how likely he thinks such a place worth a bet.
    pub log_weight: f64,
    swing: f64,
    miss: Miss,
    timing: Timing,
}

impl Meeting {
    #[inline]
    pub(super) fn of(
        hitter: &Hitter,
        course: &Course,
        belief: &Belief,
        fastest_s: f64,
        side: Side,
        group: CountGroup,
    ) -> Self {
        let sight = Sight::of(hitter, course, belief, fastest_s, side, group);
        let bat = Bat::of(hitter, course, &sight, side, group);
        Self { sight, bat }
    }

    /// For a ball that ends so in height.
    #[inline]
    pub(super) fn height(&self, hitter: &Hitter, ball: Along) -> Height {
        let seen = self.sight.height.see(ball);
        let miss = self.bat.height(hitter, &seen, ball);
        Height { log_weight: seen.log_weight, swing: seen.chance, miss }
    }

    /// For a ball that ends so across.
    #[inline]
    pub(super) fn across(&self, hitter: &Hitter, ball: Along) -> Across {
        let seen = self.sight.across.see(ball);
        let (miss, timing) = self.bat.across(hitter, &seen, ball);
        Across { log_weight: seen.log_weight, swing: seen.chance, miss, timing }
    }

    /// Logarithm of the weight of the belief, without its share and without the place across.
    #[inline]
    pub(super) fn log_weight(&self, height: &Height) -> f64 {
        self.sight.log_weight + height.log_weight
    }

    /// What comes of it.
    #[inline]
    pub(super) fn struck(&self, hitter: &Hitter, height: &Height, across: &Across) -> Struck {
        let swing = self.sight.ceiling * height.swing * across.swing;
        let (contact, solid) = self.bat.meet(hitter, &height.miss, &across.miss, &across.timing);
        Struck { swing, contact: swing * contact, solid: swing * solid }
    }
}

//! What is fitted: a hitter with free parameters, each with its prior.

use crate::losses::LEAST_CHANCE;
use crate::meetings::Meeting;

/// A normal prior of one transformed parameter.
#[derive(Debug, Clone, PartialEq)]
pub struct Prior {
    /// The parameter.
    pub name: String,
    /// Mean.
    pub mean: f64,
    /// Standard deviation.
    pub sd: f64,
    /// Where a fit begins.
    pub start: f64,
}

/// Chances of one throw that build on each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Joint {
    /// A swing.
    pub swing: f64,
    /// A swing and contact.
    pub contact: f64,
    /// A swing and solid contact.
    pub solid: f64,
}

/// A hitter with free parameters.
pub trait Law: Sync {
    /// A hitter whose parameters are set.
    type Hitter: Sync;

    /// The free parameters, in order.
    fn priors(&self) -> &[Prior];

    /// The hitter with these transformed parameters.
    fn hitter(&self, transformed: &[f64]) -> Self::Hitter;

    /// What this hitter does with a throw.
    fn meet(&self, hitter: &Self::Hitter, meeting: &Meeting) -> Joint;
}

impl Joint {
    /// The mean of two.
    pub fn mean([one, other]: [Self; 2]) -> Self {
        Self {
            swing: f64::midpoint(one.swing, other.swing),
            contact: f64::midpoint(one.contact, other.contact),
            solid: f64::midpoint(one.solid, other.solid),
        }
    }

    /// Contact given a swing.
    pub fn contact_given_swing(self) -> f64 {
        (self.contact / self.swing.max(f64::MIN_POSITIVE)).clamp(0.0, 1.0)
    }

    /// Solid given contact.
    pub fn solid_given_contact(self) -> f64 {
        (self.solid / self.contact.max(f64::MIN_POSITIVE)).clamp(0.0, 1.0)
    }

    /// Chances of a swing, a miss given a swing, solid given contact.
    pub(super) fn by_question(self) -> [f64; 3] {
        let held = |chance: f64| chance.clamp(LEAST_CHANCE, 1.0 - LEAST_CHANCE);
        [held(self.swing), held(1.0 - self.contact_given_swing()), held(self.solid_given_contact())]
    }
}

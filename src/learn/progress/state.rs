//! What is known of a watched quantity: moved, holding, or not sure yet.
//!
//! It is read off the same two things the findings are made of: the detector, and the
//! interval of the last outings against what matters. A quantity that the interval cannot keep
//! inside what matters is never said to hold.

use super::watch::Watch;

/// Where a watched quantity stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum State {
    /// It has moved by as much as matters.
    Moved,
    /// It has moved; whether by as much as matters is not known.
    MayMatter,
    /// It has moved, by less than matters.
    TooLittle,
    /// It stays short of what matters.
    Holds,
    /// It may have moved by what matters, and may not.
    NotSure,
}

impl Watch {
    /// Where it stands; nothing when the last outings did not measure it.
    pub fn state(&self) -> Option<State> {
        let now = self.now?;
        let matters = self.quantity.matters();
        let reaches = now.low < -matters || (self.quantity.harmed_by_a_rise() && now.high > matters);
        Some(match self.change {
            _ if self.is_serious() => State::Moved,
            Some(change) if change.amount.low < -matters || change.amount.high > matters || reaches => State::MayMatter,
            Some(_) => State::TooLittle,
            None if reaches => State::NotSure,
            None => State::Holds,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::stats::Estimate;
    use crate::learn::progress::{Change, Quantity};

    fn state(quantity: Quantity, now: [f64; 3], change: Option<[f64; 3]>) -> Option<State> {
        let estimate = |[value, low, high]: [f64; 3]| Estimate { value, low, high };
        let change = change.map(|amount| Change { since: 0, rang_at: 0, amount: estimate(amount) });
        let baseline = estimate([90.0, 89.0, 91.0]);
        Watch { quantity, baseline, by_outing: Vec::new(), now: Some(estimate(now)), change }.state()
    }

    #[test]
    fn only_what_the_interval_keeps_short_of_what_matters_holds() {
        let speed = Quantity::FastballSpeed;
        assert_eq!(state(speed, [-0.8, -1.8, 0.2], None), Some(State::NotSure));
        assert_eq!(state(speed, [-0.3, -0.9, 0.3], None), Some(State::Holds));
        assert_eq!(state(speed, [2.0, 1.5, 2.5], None), Some(State::Holds), "faster does no harm");
        assert_eq!(state(speed, [-2.0, -2.8, -1.2], None), Some(State::Moved));
        assert_eq!(state(Quantity::FastballVertical, [1.0, -0.5, 2.5], None), Some(State::NotSure));
    }

    #[test]
    fn a_movement_smaller_than_matters_says_so() {
        let height = Quantity::ReleaseHeight;
        assert_eq!(state(height, [-0.15, -0.25, -0.05], Some([-0.16, -0.22, -0.09])), Some(State::MayMatter));
        assert_eq!(state(height, [-0.1, -0.15, -0.05], Some([-0.1, -0.15, -0.05])), Some(State::TooLittle));
        assert_eq!(state(height, [-0.2, -0.3, -0.1], Some([-0.25, -0.3, -0.2])), Some(State::Moved));
    }
}

//! Bounds that a profile sets on use: fastballs together at least a share, breaking balls together at most one.
//!
//! Shares that break a bound go to the nearest shares that keep it, in relative entropy: every group that a bound holds
//! gets exactly its bound, and the others share what is left in proportion.

use crate::athlete::profile::Profile;
use crate::ball::Family;

/// Bounds on the use of some pitches.
#[derive(Debug, Clone, PartialEq)]
pub struct Bounds {
    groups: Vec<Group>,
    fastball_floor: f64,
    breaking_cap: f64,
}

/// What a bound counts a pitch to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Group {
    Fastball,
    Breaking,
    Other,
}

impl Group {
    fn of(family: Family) -> Self {
        if family.is_fastball() {
            Self::Fastball
        } else if family.is_breaking() {
            Self::Breaking
        } else {
            Self::Other
        }
    }
}

impl Bounds {
    /// Those of `profile` on pitches of these families.
    pub fn of(profile: &Profile, families: impl Iterator<Item = Family>) -> Self {
        let limits = &profile.limits;
        Self {
            groups: families.map(Group::of).collect(),
            fastball_floor: limits.fastball_floor,
            breaking_cap: limits.breaking_cap,
        }
    }

    /// The nearest shares within the bounds; positive weights in, shares that sum to one out. Where no pitch is left to
    /// take what a bound leaves over, that bound gives way: there is nothing else to throw.
    pub fn nearest(&self, mut weights: Vec<f64>) -> Vec<f64> {
        let [fastball, breaking, other] = self.totals(&weights);
        let all = fastball + breaking + other;
        let mut wanted = [fastball, breaking, other].map(|total| total / all);
        let floor = if fastball > 0.0 { self.fastball_floor } else { 0.0 };
        if wanted[0] < floor {
            wanted = with_first(wanted, floor);
        }
        if wanted[1] > self.breaking_cap && fastball + other > 0.0 {
            let [capped, fastball, other] = with_first([breaking, fastball, other], self.breaking_cap);
            wanted = [fastball, capped, other];
            if wanted[0] < floor {
                let others = (1.0 - floor - capped).max(0.0);
                wanted = [floor.max(1.0 - capped - others), capped, others];
            }
        }
        let factors = [(wanted[0], fastball), (wanted[1], breaking), (wanted[2], other)]
            .map(|(wanted, now)| if now > 0.0 { wanted / now } else { 0.0 });
        weights.iter_mut().zip(&self.groups).for_each(|(weight, group)| *weight *= factors[*group as usize]);
        let sum: f64 = weights.iter().sum();
        weights.iter().map(|weight| weight / sum).collect()
    }

    fn totals(&self, weights: &[f64]) -> [f64; 3] {
        let mut totals = [0.0; 3];
        for (weight, group) in weights.iter().zip(&self.groups) {
            totals[*group as usize] += weight;
        }
        totals
    }
}

/// The first of three shares set to `bound`, the others in proportion; all of it when there are no others.
fn with_first([_, second, third]: [f64; 3], bound: f64) -> [f64; 3] {
    let others = second + third;
    if others <= 0.0 {
        return [1.0, 0.0, 0.0];
    }
    let kept = (1.0 - bound) / others;
    [bound, second * kept, third * kept]
}

#[cfg(test)]
mod tests {
    use super::*;

    const GROUPS: [Group; 4] = [Group::Fastball, Group::Fastball, Group::Breaking, Group::Other];

    fn bounds(fastball_floor: f64, breaking_cap: f64) -> Bounds {
        Bounds { groups: GROUPS.to_vec(), fastball_floor, breaking_cap }
    }

    fn divergence(shares: &[f64], weights: &[f64]) -> f64 {
        shares
            .iter()
            .zip(weights)
            .filter(|(share, _)| **share > 0.0)
            .map(|(share, weight)| share * (share / weight).ln())
            .sum()
    }

    /// Against a search over a fine grid of totals of the three groups.
    #[test]
    fn no_shares_within_the_bounds_are_nearer() {
        let weights = [0.2, 0.1, 0.5, 0.2];
        for (floor, cap) in [(0.0, 1.0), (0.5, 1.0), (0.0, 0.3), (0.5, 0.3), (0.45, 0.5), (0.6, 0.4)] {
            let found = bounds(floor, cap).nearest(weights.to_vec());
            assert!((found.iter().sum::<f64>() - 1.0).abs() < 1e-12, "{found:?}");
            assert!(found[0] + found[1] > floor - 1e-9 && found[2] < cap + 1e-9, "{floor} {cap} {found:?}");
            let mut least = f64::INFINITY;
            for fastball in (0..=400).map(|n| f64::from(n) / 400.0).filter(|share| *share >= floor - 1e-9) {
                for breaking in (0..=400).map(|n| f64::from(n) / 400.0).filter(|share| *share <= cap + 1e-9) {
                    let other = 1.0 - fastball - breaking;
                    if other >= -1e-9 {
                        let shares = [fastball * 2.0 / 3.0, fastball / 3.0, breaking, other.max(0.0)];
                        least = least.min(divergence(&shares, &weights));
                    }
                }
            }
            assert!(divergence(&found, &weights) < least + 1e-4, "{floor} {cap}: {found:?}");
        }
    }

    #[test]
    fn shares_within_the_bounds_stay() {
        let shares = vec![0.4, 0.2, 0.3, 0.1];
        let same = bounds(0.5, 0.4).nearest(shares.clone());
        assert!(same.iter().zip(&shares).all(|(a, b)| (a - b).abs() < 1e-12), "{same:?}");
    }
}

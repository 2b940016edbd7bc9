//! The coefficients of custom: how much a family weighs against a side of hitters in a state of the count.
//!
//! # Formula
//! u = family + s family-side + group-count + s group-count-side, s = +.5 same / -.5 opposite; groups are fast (four-seam,
//! sinker, cutter), breaking (slider, sweeper, curveball) and off-speed (changeup, splitter). Ridge softmax on the
//! pitchers of one day of the top league (R package abdwr3edata, CC0); bootstrap errors of a family .09 to .20, of its
//! side .13 to .23, of counts .03 to .05 (computed).

use std::collections::HashMap;
use std::sync::LazyLock;

use crate::athlete::natural::Likeness;
use crate::ball::Family;
use crate::base::geometry::Side;
use crate::decide::counts::Count;

static COEFFICIENTS: LazyLock<HashMap<&'static str, f64>> = LazyLock::new(|| {
    let rows = include_str!("table.csv").lines().skip(1).filter_map(|line| line.split_once(','));
    rows.map(|(key, value)| (key, value.parse().expect("the shipped table holds numbers"))).collect()
});

/// How much a pitch of this likeness weighs against hitters on `side` in `count`; only ratios mean anything.
pub(super) fn weight(likeness: &Likeness, side: Side, count: Count) -> f64 {
    likeness.mix(|family| utility(family, side, count).exp())
}

fn utility(family: Family, side: Side, count: Count) -> f64 {
    let sign = match side {
        Side::Same => 0.5,
        Side::Opposite => -0.5,
    };
    let group = if family.is_breaking() {
        "brk"
    } else if family.is_off_speed() {
        "off"
    } else {
        "fast"
    };
    let state = match count {
        Count::First => "first",
        Count::Behind => "behind",
        Count::Even => "even",
        Count::TwoStrikes => "two",
    };
    let of = |key: String| COEFFICIENTS.get(key.as_str()).copied().unwrap_or(0.0);
    of(format!("fam:{family}"))
        + sign * of(format!("famside:{family}"))
        + of(format!("grpcg:{group}:{state}"))
        + sign * of(format!("grpcgside:{group}:{state}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_family_side_and_count_finds_its_four_coefficients() {
        assert_eq!(COEFFICIENTS.len(), 40);
        for family in crate::athlete::natural::FAMILIES {
            for side in Side::BOTH {
                for count in Count::ALL {
                    assert!(utility(family, side, count) != 0.0, "{family} {side} {count:?}");
                }
            }
        }
    }
}

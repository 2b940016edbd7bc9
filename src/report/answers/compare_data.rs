//! `compare` for machines: both athletes, who gains more, and what each would gain with a thing of the
//! other's.

use crate::base::geometry::Side;
use crate::decide::compare::{Compared, Comparison, Difference, Swap};

use super::super::content::data::{Data, list, maybe, number};
use super::super::content::{Text, object};
use super::super::words::health::unwell;
use super::rates::use_data;

/// The whole answer.
pub(crate) fn data(comparison: &Comparison, summary: &Text, reasons: &[Text]) -> Data {
    let chance = |which: usize| maybe(comparison.gains_more.map(|chances| chances[which]), 3);
    object! {
        "family": comparison.family.name(),
        "summary": summary,
        "chance_first_gains_more": chance(0),
        "chance_second_gains_more": chance(1),
        "reasons": list(reasons),
        "athletes": list(comparison.both.iter().zip(&comparison.swaps).map(|(arm, swaps)| arm_data(arm, swaps))),
    }
}

fn arm_data(arm: &Compared, swaps: &[Swap]) -> Data {
    let side = |side: Side| {
        let on = arm.usage.sides.on(side);
        use_data(arm.profile, side, &on.best, &on.custom)
    };
    let closest = arm.pairs.iter().map(|pair| pair.movement_in).reduce(f64::min);
    object! {
        "athlete": &arm.profile.athlete.name,
        "bars": list(unwell(arm.profile)),
        "throws": arm.profile.athlete.throws.to_string(),
        "slot_deg": number(arm.profile.release.slot_deg, 1),
        "in_reach": arm.candidate.is_some(),
        "throws_it_already": arm.candidate.as_ref().is_some_and(|candidate| !candidate.is_new()),
        "gain_runs_per_100": arm.candidate.as_ref().map(|candidate| candidate.worth.overall),
        "with_the_others": list(swaps.iter().map(swap_data)),
        "closest_pair_movement_in": maybe(closest, 1),
        "same_side": side(Side::Same),
        "opposite_side": side(Side::Opposite),
    }
}

fn swap_data(swap: &Swap) -> Data {
    let thing = match swap.difference {
        Difference::Release => "release",
        Difference::Command => "command",
        Difference::Pitches => "pitches",
        Difference::Hitters => "hitters",
    };
    object! { "thing": thing, "gain_runs_per_100": maybe(swap.gain, 4) }
}

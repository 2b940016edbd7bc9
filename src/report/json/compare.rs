//! `compare`: both athletes, who gains more, and what each would gain with a thing of the other's.

use serde::Serialize;

use crate::base::geometry::Side;
use crate::decide::compare::{Arm, Comparison, Swap, Thing};

use super::super::{follow::health, staff};
use super::shared::{EstimateForm, SideForm};
use super::{pretty, round};

/// The comparison as one JSON object.
pub fn compare(comparison: &Comparison) -> String {
    let arm = |index: usize| ArmForm::of(&comparison.arms[index], &comparison.swaps[index]);
    pretty(&CompareForm {
        family: comparison.family.name(),
        summary: staff::headline(comparison),
        chance_first_gains_more: comparison.gains_more.map(|chances| round(chances[0], 3)),
        chance_second_gains_more: comparison.gains_more.map(|chances| round(chances[1], 3)),
        reasons: staff::reasons(comparison),
        athletes: [arm(0), arm(1)],
    })
}

#[derive(Serialize)]
struct CompareForm<'a> {
    family: &'static str,
    summary: String,
    chance_first_gains_more: Option<f64>,
    chance_second_gains_more: Option<f64>,
    reasons: Vec<String>,
    athletes: [ArmForm<'a>; 2],
}

#[derive(Serialize)]
struct ArmForm<'a> {
    athlete: &'a str,
    bars: Vec<String>,
    throws: String,
    slot_deg: f64,
    in_reach: bool,
    throws_it_already: bool,
    gain_runs_per_100: Option<EstimateForm>,
    with_the_others: Vec<SwapForm>,
    closest_pair_movement_in: Option<f64>,
    same_side: SideForm,
    opposite_side: SideForm,
}

#[derive(Serialize)]
struct SwapForm {
    thing: &'static str,
    gain_runs_per_100: Option<f64>,
}

impl<'a> ArmForm<'a> {
    fn of(arm: &Arm<'a>, swaps: &[Swap]) -> Self {
        let side = |side: Side| SideForm::of(arm.profile, None, arm.usage.on(side));
        Self {
            athlete: staff::name(arm),
            bars: health(arm.profile),
            throws: arm.profile.athlete.throws.to_string(),
            slot_deg: round(arm.profile.release.slot_deg, 1),
            in_reach: arm.candidate.is_some(),
            throws_it_already: arm.throws_it,
            gain_runs_per_100: staff::worth(arm).map(EstimateForm::of),
            with_the_others: swaps.iter().map(SwapForm::of).collect(),
            closest_pair_movement_in: arm
                .pairs
                .iter()
                .map(|pair| pair.movement_in)
                .reduce(f64::min)
                .map(|v| round(v, 1)),
            same_side: side(Side::Same),
            opposite_side: side(Side::Opposite),
        }
    }
}

impl SwapForm {
    fn of(swap: &Swap) -> Self {
        let thing = match swap.thing {
            Thing::Release => "release",
            Thing::Command => "command",
            Thing::Pitches => "pitches",
            Thing::Hitters => "hitters",
        };
        Self { thing, gain_runs_per_100: swap.gain.map(|gain| round(gain, 4)) }
    }
}

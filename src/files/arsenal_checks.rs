//! What the pitches cannot be together: names told apart, usage that adds up, limits that can be met.
//!
//! Only contradictions inside the file are faults. Whether a usage is wise is the model's matter.

use crate::base::geometry::Side;

use super::fields::{At, Faults};
use super::names::is_same_name;
use super::pitch_table::{PitchDraft, side_key};
use super::sections::LimitsDraft;

/// Every check across pitches. A check whose values could not be read passes.
pub(super) fn check_arsenal(pitches: &[PitchDraft], limits: &LimitsDraft, faults: &Faults) {
    check_names(pitches, faults);
    // A share that was refused would be missed in the sum, and reported a second time.
    if !faults.concern(|field| field == "pitch" || field.contains(".usage")) {
        for side in Side::BOTH {
            check_usage(pitches, side, faults);
        }
    }
    check_limits(pitches, limits, faults);
}

/// Two names that look the same would be one name to a reader.
fn check_names(pitches: &[PitchDraft], faults: &Faults) {
    let names: Vec<_> = pitches.iter().filter_map(|pitch| pitch.name.as_ref()).collect();
    for (index, name) in names.iter().enumerate() {
        let is_same = |earlier: &&&At<String>| is_same_name(&earlier.value, &name.value);
        if let Some(earlier) = names[..index].iter().find(is_same) {
            let fault = name.fault(format!("\"{}\", the same as {}", name.value, earlier.field), "a name used once");
            faults.add(fault.with_hint("tell them apart, for instance by speed or grip"));
        }
    }
}

/// How far the shares against one side may miss 1 before it is more than rounding.
const ROUNDING: f64 = 0.02;

fn check_usage(pitches: &[PitchDraft], side: Side, faults: &Faults) {
    let given: Vec<_> = pitches.iter().filter_map(|pitch| pitch.usage.on(side).as_ref()).collect();
    let Some(first) = given.first() else {
        return;
    };
    if let Some(pitch) = pitches.iter().find(|pitch| pitch.usage.on(side).is_none()) {
        let field = format!("{}.usage.{}", pitch.place.field, side_key(side));
        let missed = At { field, ..pitch.place.clone() };
        let fault = missed.fault("missing", "given for every pitch or for none");
        faults.add(fault.with_hint(format!("{} is given; write 0 for a pitch not thrown to that side", first.field)));
        return;
    }
    let total: f64 = given.iter().map(|share| share.value).sum();
    if (total - 1.0).abs() > ROUNDING {
        let shares: Vec<_> = given.iter().map(|share| share.value.to_string()).collect();
        let found = format!("{}, and all shares against the {side} sum to {total:.2}", first.value);
        let fault = first.fault(found, "part of a sum of 1");
        faults.add(fault.with_hint(format!("the sum is {}", shares.join(" + "))));
    }
}

/// A limit that was written must be one that the pitches thrown can meet.
fn check_limits(pitches: &[PitchDraft], limits: &LimitsDraft, faults: &Faults) {
    let families: Vec<_> = pitches.iter().filter_map(PitchDraft::family).collect();
    if families.is_empty() || families.len() < pitches.len() {
        return;
    }
    if let Some(floor) = &limits.fastball_floor
        && floor.value > 0.0
        && !families.iter().any(|family| family.is_fastball())
    {
        let fault = floor.fault(format!("{}, but no fastball is thrown", floor.value), "0 without a fastball");
        faults.add(fault.with_hint("fastballs are four-seam, two-seam and sinker; add one, or leave the floor out"));
    }
    if let Some(cap) = &limits.breaking_cap
        && cap.value < 1.0
        && families.iter().all(|family| family.is_breaking())
    {
        let fault =
            cap.fault(format!("{}, but only breaking balls are thrown", cap.value), "1 without any other pitch");
        faults
            .add(fault.with_hint(
                "breaking balls are slider, sweeper and curveball; add another pitch, or leave the cap out",
            ));
    }
}

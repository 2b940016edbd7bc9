//! `advise` for machines: the keys are a promise.

use crate::base::geometry::{Hand, Side};
use crate::decide::advice::{Advice, Alternative};
use crate::decide::why::Why;
use crate::former::search::Candidate;

use super::super::content::data::{Data, list, maybe, number};
use super::super::content::{Text, object};
use super::super::words::advice::{assumption, verdict_key};
use super::dot::{dots_data, seam_data};
use super::found::ranges;
use super::ground::window_data;
use super::mix::pitches_data;

/// The whole answer; what it leans on only when that was asked.
pub(crate) fn data(advice: &Advice, leaning: Option<&Why>, reasons: Vec<Text>, cautions: Vec<Text>) -> Data {
    let hand = advice.profile.athlete.throws;
    let target = advice.target.as_ref();
    let answer = object! {
        "athlete": &advice.profile.athlete.name,
        "verdict": verdict_key(advice.verdict),
        "reasons": list(reasons),
        "cautions": list(cautions),
        "assumptions": list(&advice.profile.assumptions),
        "target": target.map(|target| target_data(target, hand)),
        "gain_runs_per_100": target.map(gain_data),
        "chance_real": maybe(target.map(|target| target.worth.chance_real), 3),
        "usage": target.map(|target| usage_data(advice, target)),
        "alternatives": list(advice.alternatives.iter().map(alternative_data)),
    };
    match leaning {
        Some(why) => answer.with("why", why_data(why)),
        None => answer,
    }
}

fn target_data(target: &Candidate, hand: Hand) -> Data {
    let (shape, spin) = (target.recipe.shape, target.recipe.spin);
    object! {
        "family": target.family.name(),
        "speed_mph": number(shape.speed_mph, 1),
        "vertical_break_in": number(shape.vertical_break_in, 1),
        "glove_side_break_in": number(shape.glove_side_break_in, 1),
        "window": window_data(ranges(target.window)),
        "spin_rpm": number(spin.rpm, 0),
        "active_fraction": number(spin.active_fraction, 3),
        "spin_clock": spin.clock.for_hand(hand).to_string(),
        "gyro_deg": number(spin.gyro_deg(), 1),
        "seam_shift_in": seam_data(target.recipe.seam_in),
        "dot": dots_data(spin.dot(), hand),
    }
}

fn gain_data(target: &Candidate) -> Data {
    let worth = &target.worth;
    object! {
        "same_side": worth.sides.same.gain,
        "opposite_side": worth.sides.opposite.gain,
        "overall": worth.overall,
    }
}

fn usage_data(advice: &Advice, target: &Candidate) -> Data {
    let side = |side: Side| {
        let worth = target.worth.sides.on(side);
        object! {
            "before": pitches_data(advice.profile, None, &worth.before),
            "after": pitches_data(advice.profile, Some(target.family.name()), &worth.after),
        }
    };
    object! { "same_side": side(Side::Same), "opposite_side": side(Side::Opposite) }
}

fn alternative_data(alternative: &Alternative) -> Data {
    let candidate = alternative.candidate.as_ref();
    let of = |read: fn(&Candidate) -> f64, places| maybe(candidate.map(read), places);
    object! {
        "family": alternative.family.name(),
        "in_reach": candidate.is_some(),
        "speed_mph": of(|one| one.recipe.shape.speed_mph, 1),
        "vertical_break_in": of(|one| one.recipe.shape.vertical_break_in, 1),
        "glove_side_break_in": of(|one| one.recipe.shape.glove_side_break_in, 1),
        "gain_runs_per_100": candidate.map(|one| one.worth.overall),
        "chance_real": of(|one| one.worth.chance_real, 3),
        "effort": of(|one| one.effort, 2),
    }
}

fn why_data(why: &Why) -> Data {
    let levers = why.levers.iter().map(|lever| {
        object! {
            "assumption": assumption(lever.assumption),
            "lowest_gain_runs_per_100": number(lever.worst, 4),
            "highest_gain_runs_per_100": number(lever.best, 4),
        }
    });
    object! { "levers": list(levers), "command_limit_in": maybe(why.command_limit_in, 1) }
}

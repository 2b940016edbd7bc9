//! `advise` for machines: the keys are a promise.

use crate::athlete::natural::NaturalShape;
use crate::athlete::profile::Profile;
use crate::ball::Shape;
use crate::base::Range;
use crate::base::geometry::{Hand, Side};
use crate::base::stats::Estimate;
use crate::decide::advice::Candidate;
use crate::decide::outlook::SideOutlook;
use crate::decide::why::Leaning;
use crate::decide::worth::Worth;

use super::super::content::data::{Data, list, maybe, number};
use super::super::content::{Text, object};
use super::super::number::rounded_shares;
use super::super::words::advice::{part, verdict_key};
use super::super::words::season::{over_a_season, season_pitches};
use super::advise::Advised;
use super::dot::{dots_data, seam_data};
use super::found::window;
use super::ground::window_data;
use super::rates::aim_words;

/// The whole answer; what it leans on only when that was asked.
pub(crate) fn data(advised: &Advised, reasons: Vec<Text>, cautions: Vec<Text>) -> Data {
    let (profile, advice) = (advised.profile, advised.advice);
    let (hand, level) = (profile.athlete.throws, profile.athlete.level);
    let target = advice.to_chase();
    let answer = object! {
        "athlete": &profile.athlete.name,
        "verdict": verdict_key(advice.verdict),
        "reasons": list(reasons),
        "cautions": list(cautions),
        "assumptions": list(&profile.assumptions),
        "target": target.map(|target| target_data(target, hand)),
        "gain_runs_per_100": target.map(|target| gain_data(&target.worth)),
        "gain_runs_per_season": target.map(|target| over_a_season(target.worth.overall, level)),
        "season_pitches": season_pitches(level),
        "chance_real": maybe(target.map(|target| target.worth.chance), 3),
        "usage": target.and_then(|target| usage_data(advised, target)),
        "asked": advice.asked.as_ref().map(|asked| asked_data(asked, hand)),
        "alternatives": list(advice.others.iter().map(alternative_data)),
    };
    match advised.leaning {
        Some(leanings) => answer.with("why", why_data(leanings)),
        None => answer,
    }
}

fn target_data(candidate: &Candidate, hand: Hand) -> Data {
    let target = &candidate.target;
    let data = object! {
        "family": target.family.name(),
        "speed_mph": number(target.shape.speed_mph, 1),
        "vertical_break_in": number(target.shape.vertical_break_in, 1),
        "glove_side_break_in": number(target.shape.glove_side_break_in, 1),
        "window": window_data(window(candidate).ranges()),
    };
    let Some(recipe) = &target.recipe else { return data };
    data.with("spin_rpm", number(recipe.spin.rpm, 0))
        .with("active_fraction", number(recipe.spin.active_fraction, 3))
        .with("spin_clock", Data::from(recipe.spin.clock.for_hand(hand).to_string()))
        .with("gyro_deg", number(recipe.spin.gyro_deg(), 1))
        .with("seam_shift_in", seam_data(recipe.seams))
        .with("dot", dots_data(recipe.spin.dot(), hand))
}

fn gain_data(worth: &Worth) -> Data {
    object! {
        "same_side": worth.sides.same,
        "opposite_side": worth.sides.opposite,
        "overall": worth.overall,
    }
}

fn usage_data(advised: &Advised, target: &Candidate) -> Option<Data> {
    let with = advised.advice.with.as_ref()?;
    let new = target.is_new().then(|| target.target.family.name());
    let profile: &Profile = advised.profile;
    let side = |side: Side| {
        let (before, after): (&SideOutlook, &SideOutlook) = (advised.advice.without.on(side), with.on(side));
        object! {
            "before": pitches_data(profile, None, before, side),
            "after": pitches_data(profile, new, after, side),
        }
    };
    Some(object! { "same_side": side(Side::Same), "opposite_side": side(Side::Opposite) })
}

/// Pitches in use for machines; `new` is the name of a pitch behind today's.
pub(crate) fn pitches_data(profile: &Profile, new: Option<&str>, outlook: &SideOutlook, side: Side) -> Data {
    let names = profile.pitches.iter().map(|pitch| pitch.name.as_str()).chain(new);
    let shares: Vec<f64> = outlook.pitches.iter().map(|pitch| pitch.share).collect();
    let shares = rounded_shares(&shares, 1000.0);
    list(names.zip(&outlook.pitches).zip(shares).map(|((name, pitch), part)| {
        let [aim, aim_two_strikes] = aim_words(side, pitch);
        object! {
            "pitch": name,
            "share": number(part, 3),
            "aim": aim,
            "aim_two_strikes": aim_two_strikes,
            "swing_and_miss": pitch.rates.swing_and_miss,
            "weak_contact": pitch.rates.weak_contact,
            "solid_contact": pitch.rates.solid_contact,
            "take": pitch.rates.take,
        }
    }))
}

/// The family asked about, whatever the verdict.
fn asked_data(asked: &Candidate, hand: Hand) -> Data {
    object! {
        "family": asked.target.family.name(),
        "natural": natural_data(&asked.target.natural),
        "target": target_data(asked, hand),
        "effort": number(asked.target.effort(), 2),
        "gain_runs_per_100": asked.worth.overall,
    }
}

/// Where arms like the athlete's throw a family; from the 10th to the 90th of a hundred.
fn natural_data(natural: &NaturalShape) -> Data {
    let shape: Shape = natural.shape();
    let estimate = |value: f64, range: Range| Estimate { value, low: range.low, high: range.high };
    object! {
        "speed_mph": estimate(shape.speed_mph, natural.speed_mph()),
        "vertical_break_in": estimate(shape.vertical_break_in, natural.vertical_break_in()),
        "glove_side_break_in": estimate(shape.glove_side_break_in, natural.glove_side_break_in()),
    }
}

fn alternative_data(candidate: &Candidate) -> Data {
    let shape = candidate.target.shape;
    object! {
        "family": candidate.target.family.name(),
        "in_reach": true,
        "speed_mph": number(shape.speed_mph, 1),
        "vertical_break_in": number(shape.vertical_break_in, 1),
        "glove_side_break_in": number(shape.glove_side_break_in, 1),
        "gain_runs_per_100": candidate.worth.overall,
        "chance_real": number(candidate.worth.chance, 3),
        "effort": number(candidate.target.effort(), 2),
    }
}

fn why_data(leanings: &[Leaning]) -> Data {
    let levers = leanings.iter().map(|leaning| {
        object! {
            "assumption": part(leaning.part),
            "lowest_gain_runs_per_100": number(leaning.worth.low, 4),
            "highest_gain_runs_per_100": number(leaning.worth.high, 4),
        }
    });
    object! { "levers": list(levers) }
}

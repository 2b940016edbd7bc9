//! The answer of `usage` for machines.

use crate::athlete::profile::Profile;
use crate::base::geometry::Side;
use crate::decide::usage::{Limit, Usage};

use super::super::content::data::{Data, list, number};
use super::super::content::object;
use super::super::words::health::unwell;
use super::super::words::season::{over_a_season, season_pitches};
use super::rates::use_data;

/// Both sides, and what the recommended use is worth.
pub(super) fn data(profile: &Profile, usage: &Usage) -> Data {
    let level = profile.athlete.level;
    object! {
        "athlete": &profile.athlete.name,
        "bars": list(unwell(profile)),
        "pitches_per_season": season_pitches(level),
        "leaning": object! {
            "runs_per_season": over_a_season(usage.leaning.overall, level),
            "runs_per_100": usage.leaning.overall,
            "chance": number(usage.leaning.chance, 3),
        },
        "same_side": on_side(profile, usage, Side::Same),
        "opposite_side": on_side(profile, usage, Side::Opposite),
    }
}

fn on_side(profile: &Profile, usage: &Usage, side: Side) -> Data {
    let on = usage.sides.on(side);
    let outside = usage.outside_custom(side).into_iter().map(|pitch| &profile.pitches[pitch].name);
    object! {
        "best": use_data(profile, side, &on.best, &on.custom),
        "today": on.told.as_ref().map(|_| use_data(profile, side, &on.today, &on.custom)),
        "custom": custom(profile, usage, side),
        "left_on_the_table_runs_per_100": on.told.as_ref().map(|_| on.saved),
        // A use that leans is not a best answer to anything, so no distance from one is left; the key stays.
        "gap_runs_per_100": Data::Null,
        "outside_custom": list(outside),
        "held_by": list(usage.held(profile, side).into_iter().map(|(limit, _)| match limit {
            Limit::FastballFloor => "fastball_floor",
            Limit::BreakingCap => "breaking_cap",
        })),
    }
}

/// What is customary, and what the profile tells.
fn custom(profile: &Profile, usage: &Usage, side: Side) -> Data {
    let on = usage.sides.on(side);
    let pitches = profile.pitches.iter().zip(&on.custom).enumerate();
    object! {
        "pitches": list(pitches.map(|(index, (pitch, band))| object! {
            "pitch": &pitch.name,
            "share": number(band.value, 3),
            "share_low": number(band.low, 3),
            "share_high": number(band.high, 3),
            "told": on.told.as_ref().map(|told| number(told[index], 3)),
        })),
    }
}

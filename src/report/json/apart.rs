//! `apart`: every pair.

use serde::Serialize;

use crate::athlete::profile::Profile;
use crate::base::geometry::Side;
use crate::former::separation::Pair;

use super::super::follow::health;
use super::{pretty, round};

/// The pairs of `apart`.
pub fn apart(profile: &Profile, pairs: &[Pair]) -> String {
    let pairs = pairs.iter().map(|pair| PairForm::of(profile, pair)).collect();
    pretty(&PairsForm { athlete: &profile.athlete.name, bars: health(profile), pairs })
}

#[derive(Serialize)]
struct PairsForm<'a> {
    athlete: &'a str,
    bars: Vec<String>,
    pairs: Vec<PairForm<'a>>,
}

#[derive(Serialize)]
struct PairForm<'a> {
    pitches: [&'a str; 2],
    speed_gap_mph: f64,
    arrival_gap_ms: f64,
    movement_in: f64,
    scatter_distance: f64,
    same_side: SeenForm,
    opposite_side: SeenForm,
}

#[derive(Serialize)]
struct SeenForm {
    resolvable_in: f64,
    same_line: GapsForm,
    own_targets: GapsForm,
}

#[derive(Serialize)]
struct GapsForm {
    release_in: f64,
    decision_in: f64,
    decision_deg: f64,
    plate_in: f64,
    late_share: f64,
    disguise: f64,
}

impl<'a> PairForm<'a> {
    fn of(profile: &'a Profile, pair: &Pair) -> Self {
        let gaps = |gaps: &crate::former::separation::Gaps| GapsForm {
            release_in: round(gaps.release_in, 2),
            decision_in: round(gaps.decision_in, 2),
            decision_deg: round(gaps.decision_deg, 3),
            plate_in: round(gaps.plate_in, 2),
            late_share: round(gaps.late_share, 3),
            disguise: round(gaps.disguise, 2),
        };
        let seen = |side: Side| {
            let seen = pair.seen.on(side);
            SeenForm {
                resolvable_in: round(seen.resolvable_in, 2),
                same_line: gaps(&seen.same_line),
                own_targets: gaps(&seen.own_targets),
            }
        };
        Self {
            pitches: [&profile.pitches[pair.pitches.0].name, &profile.pitches[pair.pitches.1].name],
            speed_gap_mph: round(pair.speed_gap_mph, 1),
            arrival_gap_ms: round(pair.arrival_gap_ms, 1),
            movement_in: round(pair.movement_in, 1),
            scatter_distance: round(pair.scatter_distance, 2),
            same_side: seen(Side::Same),
            opposite_side: seen(Side::Opposite),
        }
    }
}

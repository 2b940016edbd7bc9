//! `usage`: both sides, best and today.

use serde::Serialize;

use crate::athlete::profile::{PerSide, Profile};
use crate::base::geometry::Side;
use crate::decide::usage::UsageSide;

use super::super::follow::health;
use super::pretty;
use super::shared::{EstimateForm, SideForm};

/// The answer of `usage`: one object with the sides.
pub fn usage(profile: &Profile, sides: &PerSide<UsageSide>) -> String {
    let side = |side: Side| UsageForm {
        best: SideForm::of(profile, None, &sides.on(side).best),
        today: sides.on(side).today.as_ref().map(|today| SideForm::of(profile, None, today)),
        left_on_the_table_runs_per_100: sides.on(side).left.map(EstimateForm::of),
        gap_runs_per_100: sides.on(side).gap,
    };
    pretty(&SidesForm {
        athlete: &profile.athlete.name,
        bars: health(profile),
        same_side: side(Side::Same),
        opposite_side: side(Side::Opposite),
    })
}

#[derive(Serialize)]
struct SidesForm<'a, T: Serialize> {
    athlete: &'a str,
    bars: Vec<String>,
    same_side: T,
    opposite_side: T,
}

#[derive(Serialize)]
struct UsageForm {
    best: SideForm,
    today: Option<SideForm>,
    left_on_the_table_runs_per_100: Option<EstimateForm>,
    gap_runs_per_100: f64,
}

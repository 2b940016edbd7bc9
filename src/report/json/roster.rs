//! `roster`: one object a line, best first.

use serde::Serialize;

use super::super::staff::{Member, reason_against};
use super::super::words;
use super::round;
use super::shared::EstimateForm;

/// Every member on a line of its own.
pub fn roster(members: &[Member]) -> String {
    let line = |(index, member): (usize, &Member)| {
        // Forms hold numbers, texts and lists only, so that writing them cannot fail.
        let mut line = serde_json::to_string(&MemberForm::of(index + 1, member)).unwrap_or_default();
        line.push('\n');
        line
    };
    members.iter().enumerate().map(line).collect()
}

#[derive(Serialize)]
struct MemberForm<'a> {
    rank: usize,
    file: &'a str,
    athlete: &'a str,
    verdict: &'static str,
    reason: Option<String>,
    family: Option<&'static str>,
    target: Option<TargetForm>,
    gain_runs_per_100: Option<EstimateForm>,
    chance_real: Option<f64>,
    effort: Option<f64>,
}

#[derive(Serialize)]
struct TargetForm {
    speed_mph: f64,
    vertical_break_in: f64,
    glove_side_break_in: f64,
}

impl<'a> MemberForm<'a> {
    fn of(rank: usize, member: &'a Member) -> Self {
        let best = member.standing.best.as_ref();
        Self {
            rank,
            file: &member.file,
            athlete: &member.profile.athlete.name,
            verdict: words::verdict_key(member.standing.verdict),
            reason: reason_against(member),
            family: best.map(|best| best.family.name()),
            target: best.map(|best| TargetForm {
                speed_mph: round(best.recipe.shape.speed_mph, 1),
                vertical_break_in: round(best.recipe.shape.vertical_break_in, 1),
                glove_side_break_in: round(best.recipe.shape.glove_side_break_in, 1),
            }),
            gain_runs_per_100: best.map(|best| EstimateForm::of(best.worth.overall)),
            chance_real: best.map(|best| round(best.worth.chance_real, 3)),
            effort: best.map(|best| round(best.effort, 2)),
        }
    }
}

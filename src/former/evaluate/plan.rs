//! An arsenal against hitters of one side: targets, mix, and what comes of them.

use crate::athlete::profile::{Aim, PerSide};
use crate::ball::Family;
use crate::base::geometry::Side;
use crate::former::hitter::{Expected, Facing, PitchLaw, Row};
use crate::former::mix::{Effort, Mix, best_mix};

use super::{BlendedRates, OwnResults, Stage, Thrown};

/// Today's arsenal against both sides.
#[derive(Debug, Clone)]
pub struct Today {
    /// The plan against each side.
    pub plans: PerSide<SidePlan>,
    /// The same plans on the rough ground, where shapes are compared.
    pub rough: PerSide<SidePlan>,
}

impl Today {
    /// Today's arsenal of `stage` at its best.
    pub fn of(stage: &Stage) -> Self {
        let rough = stage.rough();
        let both = |side| {
            let (aims, shares) = targets(stage, side);
            let fine = SidePlan::settled(stage, side, aims.clone(), shares.clone());
            (fine, SidePlan::settled(&rough, side, aims, shares))
        };
        let (same, opposite) = rayon::join(|| both(Side::Same), || both(Side::Opposite));
        Self {
            plans: PerSide { same: same.0, opposite: opposite.0 },
            rough: PerSide { same: same.1, opposite: opposite.1 },
        }
    }
}

/// Today's arsenal against hitters of one side, at its best.
#[derive(Debug, Clone)]
pub struct SidePlan {
    /// Which hitters.
    pub side: Side,
    /// Where each pitch is aimed.
    pub aims: Vec<Aim>,
    /// The hitter against the pitches so aimed.
    pub facing: Facing,
    /// What own results say.
    pub own: OwnResults,
    /// The best mix.
    pub mix: Mix,
    /// When he decides.
    pub decision: f64,
}

/// A new pitch beside a plan: its target and the best mix with it.
#[derive(Debug, Clone)]
pub struct Chosen {
    /// Where the new pitch is aimed.
    pub aim: Aim,
    /// The hitter against all pitches, the new one last.
    pub facing: Facing,
    /// What own results say, of the new pitch too.
    pub own: OwnResults,
    /// The best mix, the new pitch last.
    pub mix: Mix,
}

/// Share of its cap that a new pitch is likely to be thrown with: where the search for its mix starts.
const LIKELY_OF_CAP: f64 = 0.6;
/// How often the targets are gone through.
const SWEEPS: usize = 3;

impl SidePlan {
    /// Targets and mix for today's arsenal.
    pub fn new(stage: &Stage, side: Side) -> Self {
        let (aims, shares) = targets(stage, side);
        Self::settled(stage, side, aims, shares)
    }

    /// The best mix of today's pitches so aimed; `shares` is a good guess.
    fn settled(stage: &Stage, side: Side, aims: Vec<Aim>, shares: Vec<f64>) -> Self {
        let decision = stage.decision();
        let bounds = stage.bounds(None);
        let facing = facing(stage, side, &aims, decision);
        let own = own_results(stage, side, &facing, &shares);
        let starts = starts(&bounds, shares);
        let mix = best_mix(objective(&facing, &own.corrections), &bounds, &starts, Effort::SHOWN);
        Self { side, aims, facing, own, mix, decision }
    }

    /// Runs per pitch and outcome chances of `shares`, own results included.
    pub fn expected(&self, shares: &[f64]) -> Expected {
        corrected(self.facing.expected(shares), shares, &self.own.corrections)
    }

    /// Today's mix against this side, when the profile gives it.
    pub fn today(&self, stage: &Stage) -> Option<Vec<f64>> {
        todays_mix(stage, self.side)
    }

    /// The target at which a pinch of `new` beside today's best mix gives the fewest runs; where the
    /// profile gives its twin a target, that one.
    pub fn aim_for(&self, stage: &Stage, new: &Thrown) -> Aim {
        if let Some(given) = twin(stage, new).and_then(|index| *stage.profile.pitches[index].aim.on(self.side)) {
            return given;
        }
        let mix = self.with_share(new_start_share(stage));
        let habit = stage.habit(new, self.side, self.decision);
        let law = |aim| stage.law(new, aim, self.side, self.decision);
        let with_new = self.facing.with(&law(Aim::Middle), &habit);
        lowest(Aim::ALL, |&aim| with_new.runs_of(&with_new.row(&law(aim)), &mix)).unwrap_or(Aim::Middle)
    }

    /// The best mix with `new` aimed at `aim`. Never worse than today's: leaving the new pitch out
    /// is one of the starts.
    pub fn choose(&self, stage: &Stage, new: &Thrown, aim: Aim) -> Chosen {
        // The runs may have a hollow without the new pitch and another with much of it.
        let cap = stage.profile.limits.new_pitch_cap;
        let starts = [LIKELY_OF_CAP, 1.0, 0.2, 0.0].map(|of_cap| self.with_share(of_cap * cap));
        self.choose_from(stage, new, aim, &starts, Effort::SHOWN)
    }

    /// The mix that so much effort finds from `starts`, with `new` aimed at `aim`.
    pub fn choose_from(&self, stage: &Stage, new: &Thrown, aim: Aim, starts: &[Vec<f64>], effort: Effort) -> Chosen {
        let law = stage.law(new, aim, self.side, self.decision);
        let facing = self.facing.with(&law, &stage.habit(new, self.side, self.decision));
        let own = self.own_with(stage, new);
        let bounds = stage.bounds(Some(new.family));
        let starts: Vec<Vec<f64>> = starts.iter().map(|start| bounds.nearest(start.clone())).collect();
        let mix = best_mix(objective(&facing, &own.corrections), &bounds, &starts, effort);
        Chosen { aim, facing, own, mix }
    }

    /// Today's best mix with as much of a further pitch as it is likely to be thrown.
    pub fn with_likely_share(&self, stage: &Stage) -> Vec<f64> {
        self.with_share(LIKELY_OF_CAP * stage.profile.limits.new_pitch_cap)
    }

    /// What own results say with a further pitch: what they say of its twin, when he throws one.
    fn own_with(&self, stage: &Stage, new: &Thrown) -> OwnResults {
        let mut own = self.own.clone();
        own.blends.push(None);
        own.corrections.push(twin(stage, new).map_or(0.0, |index| self.own.corrections[index]));
        own
    }

    /// Today's best mix with `share` of a further pitch.
    fn with_share(&self, share: f64) -> Vec<f64> {
        self.mix.shares.iter().map(|old| old * (1.0 - share)).chain([share]).collect()
    }

    /// The same plan, targets and mix kept, with the stage as a draw has it.
    pub fn facing_in(&self, drawn: &Stage) -> (Facing, f64) {
        let decision = drawn.decision();
        (facing(drawn, self.side, &self.aims, decision), decision)
    }
}

/// Targets for today's pitches, and a good mix of them.
///
/// Targets given in the profile stay. The others start from the family's usual one and are gone
/// through in turn, each taking the target with the fewest expected runs while the rest stay; then
/// the mix is made good; three times over.
fn targets(stage: &Stage, side: Side) -> (Vec<Aim>, Vec<f64>) {
    let decision = stage.decision();
    let given: Vec<Option<Aim>> = stage.profile.pitches.iter().map(|pitch| *pitch.aim.on(side)).collect();
    let mut aims: Vec<Aim> =
        stage.pitches.iter().zip(&given).map(|(p, given)| given.unwrap_or(usual_aim(p.family))).collect();
    let bounds = stage.bounds(None);
    let mut shares = bounds_start(&bounds);
    let mut facing = facing(stage, side, &aims, decision);
    let free: Vec<usize> = (0..aims.len()).filter(|&pitch| given[pitch].is_none()).collect();
    let row = |pitch: usize, aim| (aim, facing.row(&stage.law(&stage.pitches[pitch], aim, side, decision)));
    let rows: Vec<[(Aim, Row); Aim::ALL.len()]> = free.iter().map(|&p| Aim::ALL.map(|aim| row(p, aim))).collect();
    for _ in 0..SWEEPS {
        for (&pitch, rows) in free.iter().zip(&rows) {
            let mix = leaning_on(pitch, &shares);
            if let Some((aim, row)) = lowest(rows, |(_, row)| facing.runs_of(row, &mix)) {
                facing.aim(pitch, row.clone());
                aims[pitch] = *aim;
            }
        }
        let starts = starts(&bounds, shares);
        shares = best_mix(objective(&facing, &vec![0.0; aims.len()]), &bounds, &starts, Effort::FIRST_LOOK).shares;
    }
    (aims, shares)
}

/// `shares` with a pinch more of one pitch, so that its target matters even where the mix leaves it out.
fn leaning_on(pitch: usize, shares: &[f64]) -> Vec<f64> {
    const PINCH: f64 = 0.15;
    let mut mix: Vec<f64> = shares.iter().map(|share| share * (1.0 - PINCH)).collect();
    mix[pitch] += PINCH;
    mix
}

/// The pitch of the same family he throws already, the nearest in movement.
fn twin(stage: &Stage, new: &Thrown) -> Option<usize> {
    let distance = |index: &usize| stage.pitches[*index].shape.movement_distance_in(new.shape);
    (0..stage.pitches.len())
        .filter(|&index| stage.pitches[index].family == new.family)
        .min_by(|a, b| distance(a).total_cmp(&distance(b)))
}

/// Where a search for the new pitch's share starts.
fn new_start_share(stage: &Stage) -> f64 {
    (0.15_f64).min(stage.profile.limits.new_pitch_cap)
}

fn facing(stage: &Stage, side: Side, aims: &[Aim], decision: f64) -> Facing {
    let laws: Vec<(PitchLaw, PitchLaw)> = stage
        .pitches
        .iter()
        .zip(aims)
        .map(|(pitch, &aim)| (stage.law(pitch, aim, side, decision), stage.habit(pitch, side, decision)))
        .collect();
    Facing::new(&laws, &stage.hitter, side, stage.points())
}

/// The first of the choices with the fewest runs.
fn lowest<T>(choices: impl IntoIterator<Item = T>, runs: impl Fn(&T) -> f64) -> Option<T> {
    let scored = choices.into_iter().map(|choice| (runs(&choice), choice));
    scored.min_by(|a, b| a.0.total_cmp(&b.0)).map(|best| best.1)
}

/// Where a family usually goes. Common practice, no published source.
fn usual_aim(family: Family) -> Aim {
    match family {
        Family::FourSeam => Aim::Up,
        Family::TwoSeam | Family::Sinker | Family::Changeup | Family::Splitter | Family::Knuckleball => Aim::Down,
        Family::Cutter => Aim::Away,
        Family::Slider | Family::Sweeper | Family::Curveball => Aim::DownAway,
    }
}

fn bounds_start(bounds: &crate::former::mix::Bounds) -> Vec<f64> {
    let count = bounds.caps.len();
    bounds.nearest(vec![1.0 / count as f64; count])
}

/// The mix so far, an even one, and one leaning on each pitch in turn.
fn starts(bounds: &crate::former::mix::Bounds, so_far: Vec<f64>) -> Vec<Vec<f64>> {
    let count = so_far.len();
    let leaning = (0..count).map(|favourite| {
        let even = 0.4 / count as f64;
        (0..count).map(|pitch| if pitch == favourite { 0.6 + even } else { even }).collect::<Vec<f64>>()
    });
    let mut all: Vec<Vec<f64>> = leaning.map(|start| bounds.nearest(start)).collect();
    all.push(bounds_start(bounds));
    all.push(so_far);
    all
}

/// The mixing objective: model runs plus what own results correct.
fn objective<'f>(facing: &'f Facing, corrections: &'f [f64]) -> impl Fn(&[f64]) -> (f64, Vec<f64>) + 'f {
    move |mix| {
        let (mut runs, mut slopes) = facing.runs_and_slopes(mix);
        for (pitch, correction) in corrections.iter().enumerate() {
            runs += mix[pitch] * correction;
            slopes[pitch] += correction;
        }
        (runs, slopes)
    }
}

fn corrected(mut expected: Expected, mix: &[f64], corrections: &[f64]) -> Expected {
    for (pitch, correction) in corrections.iter().enumerate() {
        expected.runs += mix[pitch] * correction;
        expected.pitch_runs[pitch] += correction;
    }
    expected
}

/// Blends own results with what the model expects under the mix they were got with (today's when
/// given, else the model's best).
fn own_results(stage: &Stage, side: Side, facing: &Facing, best: &[f64]) -> OwnResults {
    let reference = todays_mix(stage, side).unwrap_or_else(|| best.to_vec());
    let expected = facing.expected(&reference);
    let values = &stage.hitter.runs;
    let pitches = &stage.profile.pitches;
    let blends: Vec<Option<BlendedRates>> = pitches
        .iter()
        .zip(&expected.rates)
        .map(|(pitch, rates)| pitch.results.on(side).map(|results| BlendedRates::of(rates, &results)))
        .collect();
    let corrections = expected
        .rates
        .iter()
        .zip(&blends)
        .map(|(rates, blend)| blend.map_or(0.0, |blend| blend.rates(rates).runs(values) - rates.runs(values)))
        .collect();
    OwnResults { blends, corrections }
}

/// Today's mix against `side`, when the profile gives every share.
fn todays_mix(stage: &Stage, side: Side) -> Option<Vec<f64>> {
    stage.profile.pitches.iter().map(|pitch| *pitch.usage.on(side)).collect()
}

//! What the best mix of pitches must be, whatever the pitches are: within its bounds, as good as any
//! other solver finds, the same in every order.

#[path = "common/standard.rs"]
#[expect(dead_code, reason = "other tests use the rest of it")]
mod standard;

use arsenalfit::athlete::profile::{Aim, Limits, Profile};
use arsenalfit::ball::Family;
use arsenalfit::base::geometry::Side;
use arsenalfit::former::evaluate::{SidePlan, Stage, draws};
use arsenalfit::former::mix::{Bounds, Effort, best_mix};
use standard::{CHANGEUP, FOUR_SEAM, SLIDER, athlete, for_every_plan, per_100, shipped, typical};

#[test]
fn every_mix_sums_to_one_and_keeps_to_its_bounds() {
    for_every_plan(|whose, stage, plan| {
        for family in Family::ALL {
            let new = typical(stage, family);
            let mix = plan.choose(stage, &new, plan.aim_for(stage, &new)).mix;
            for shares in [&plan.mix.shares, &mix.shares] {
                assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12, "{whose}, {family}: {shares:?}");
                assert!(shares.iter().all(|share| (0.0..=1.0).contains(share)), "{whose}, {family}: {shares:?}");
            }
            let Limits { fastball_floor, new_pitch_cap, breaking_cap, .. } = stage.profile.limits;
            let total = |kind: fn(Family) -> bool| {
                let families = stage.pitches.iter().map(|pitch| pitch.family).chain([family]);
                families.zip(&mix.shares).filter(|(family, _)| kind(*family)).map(|(_, share)| share).sum::<f64>()
            };
            assert!(total(Family::is_fastball) > fastball_floor - 1e-9, "{whose}, {family}: {mix:?}");
            assert!(total(Family::is_breaking) < breaking_cap + 1e-9, "{whose}, {family}: {mix:?}");
            assert!(mix.shares[mix.shares.len() - 1] < new_pitch_cap + 1e-9, "{whose}, {family}: {mix:?}");
        }
    });
}

/// To 1e-4 runs per 100 pitches.
#[test]
fn todays_mix_is_the_best_to_a_ten_thousandth_of_a_run_per_100_pitches() {
    for_every_plan(|whose, _, plan| {
        assert!(per_100(plan.mix.gap) < 1e-4, "{whose}: {:?}", plan.mix);
    });
}

#[test]
fn the_mix_with_a_new_pitch_is_the_best_to_a_ten_thousandth_of_a_run_per_100_pitches() {
    let mut worst = Vec::new();
    for_every_plan(|whose, stage, plan| {
        for family in Family::ALL {
            for command in [0.6, 0.8, 1.0, 1.25] {
                let mut new = typical(stage, family);
                new.spread.command_side_in *= command;
                new.spread.command_height_in *= command;
                let mix = plan.choose(stage, &new, plan.aim_for(stage, &new)).mix;
                let bounds = stage.bounds(Some(family));
                let broken = broken_by(&bounds, &mix.shares);
                if per_100(mix.gap) >= 1e-4 || broken > 1e-6 {
                    let gap = per_100(mix.gap);
                    worst.push(format!(
                        "{whose}, {family}, command {command}: gap {gap:.1e}, bounds broken by {broken:.1e}"
                    ));
                }
            }
        }
    });
    assert!(worst.is_empty(), "{worst:#?}");
}

/// By how much a mix breaks its bounds at worst.
fn broken_by(bounds: &Bounds, shares: &[f64]) -> f64 {
    let total =
        |members: &[bool]| shares.iter().zip(members).filter(|(_, is)| **is).map(|(share, _)| share).sum::<f64>();
    let over_cap = shares.iter().zip(&bounds.caps).map(|(share, cap)| share - cap).fold(0.0, f64::max);
    let below_floor = bounds.fastballs.bound - total(&bounds.fastballs.members);
    over_cap.max(below_floor).max(total(&bounds.breaking.members) - bounds.breaking.bound)
}

/// All orders of the numbers below `count`.
fn orders(count: usize) -> Vec<Vec<usize>> {
    if count == 0 {
        return vec![Vec::new()];
    }
    let shorter = orders(count - 1);
    (0..count)
        .flat_map(|place| shorter.iter().map(move |order| [&order[..place], &[count - 1], &order[place..]].concat()))
        .collect()
}

#[test]
fn the_order_of_the_pitches_in_a_profile_does_not_matter() {
    for (name, profile) in shipped() {
        for order in orders(profile.pitches.len()) {
            let turned = Profile {
                pitches: order.iter().map(|&index| profile.pitches[index].clone()).collect(),
                ..profile.clone()
            };
            let (stage, other) = (Stage::new(&profile), Stage::new(&turned));
            for side in Side::BOTH {
                let (plan, turned) = (SidePlan::new(&stage, side), SidePlan::new(&other, side));
                assert!((plan.mix.runs - turned.mix.runs).abs() < 1e-7, "{name}, {side}, {order:?}");
                for (place, &index) in order.iter().enumerate() {
                    let (share, same) = (plan.mix.shares[index], turned.mix.shares[place]);
                    assert!((share - same).abs() < 1e-3, "{name}, {side}, {order:?}: {share} {same}");
                }
            }
        }
    }
}

/// The objective bends, so a local answer could be poor: every mix on a grid of fiftieths is tried,
/// for forty-eight hitters.
#[test]
fn no_mix_on_a_fine_grid_beats_the_best_mix() {
    const FIFTIETHS: u32 = 50;
    for (name, profile) in shipped().into_iter().filter(|(_, profile)| profile.pitches.len() == 3) {
        let stage = Stage::new(&profile);
        for draw in draws(stage.profile.athlete.level, 3, 8, 11) {
            let drawn = stage.drawn(&draw);
            for side in Side::BOTH {
                let plan = SidePlan::new(&drawn, side);
                let bounds = drawn.bounds(None);
                for first in 0..=FIFTIETHS {
                    for second in 0..=FIFTIETHS - first {
                        let shares = [first, second, FIFTIETHS - first - second].map(|n| f64::from(n) / 50.0);
                        let total = |members: &[bool]| {
                            shares.iter().zip(members).filter(|(_, is)| **is).map(|(share, _)| share).sum::<f64>()
                        };
                        let inside = total(&bounds.fastballs.members) >= bounds.fastballs.bound
                            && total(&bounds.breaking.members) <= bounds.breaking.bound;
                        if inside {
                            let runs = plan.expected(&shares).runs;
                            assert!(plan.mix.runs <= runs + 1e-6, "{name}, {side}: {shares:?} {runs} {:?}", plan.mix);
                        }
                    }
                }
            }
        }
    }
}

/// Fifty random convex problems with caps, floors and ceilings, solved to high precision with scipy by
/// `data/make_mix_problems.py`, which tells how. To 1e-4 of the value.
#[test]
fn fifty_problems_have_the_answers_an_independent_solver_found() {
    #[derive(serde::Deserialize)]
    struct Problem {
        curvature: Vec<Vec<f64>>,
        slope: Vec<f64>,
        caps: Vec<f64>,
        fastballs: Vec<bool>,
        fastball_floor: f64,
        breaking: Vec<bool>,
        breaking_cap: f64,
        value: f64,
    }
    let problems: Vec<Problem> =
        serde_json::from_str(include_str!("data/mix_problems.json")).expect("a list of problems");
    assert_eq!(problems.len(), 50);
    for (index, problem) in problems.iter().enumerate() {
        let dot = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        let objective = |mix: &[f64]| {
            let bend: Vec<f64> = problem.curvature.iter().map(|row| dot(row, mix)).collect();
            let slopes: Vec<f64> = bend.iter().zip(&problem.slope).map(|(b, s)| b + s).collect();
            (0.5 * dot(mix, &bend) + dot(mix, &problem.slope), slopes)
        };
        let bounds = Bounds {
            caps: problem.caps.clone(),
            fastballs: arsenalfit::former::mix::Group {
                members: problem.fastballs.clone(),
                bound: problem.fastball_floor,
            },
            breaking: arsenalfit::former::mix::Group { members: problem.breaking.clone(), bound: problem.breaking_cap },
        };
        let count = problem.slope.len();
        let start = bounds.nearest(vec![1.0 / count as f64; count]);
        let mix = best_mix(objective, &bounds, &[start], Effort::SHOWN);
        assert!((mix.runs / problem.value - 1.0).abs() < 1e-4, "problem {index}: {mix:?} against {}", problem.value);
    }
}

/// A coach may forbid a kind of pitch altogether.
#[test]
fn limits_of_nothing_and_of_everything_are_kept() {
    for (limits, breaking, fastballs) in [
        ("breaking_cap = 0.0", 0.0..1e-9, 0.0..1.0),
        ("fastball_floor = 1.0", 0.0..1e-9, 1.0 - 1e-9..1.1),
        ("new_pitch_cap = 0.0", 0.0..1.0, 0.0..1.1),
    ] {
        let profile = athlete(&[FOUR_SEAM, CHANGEUP, SLIDER], &format!("[limits]\n{limits}"));
        let stage = Stage::new(&profile);
        for side in Side::BOTH {
            let plan = SidePlan::new(&stage, side);
            let shares = &plan.mix.shares;
            assert!(breaking.contains(&shares[2]) && fastballs.contains(&shares[0]), "{limits}: {:?}", plan.mix);
            let new = typical(&stage, Family::Sweeper);
            let with = plan.choose(&stage, &new, Aim::DownAway).mix;
            assert!(with.runs.is_finite() && with.runs <= plan.mix.runs + 1e-9, "{limits}: {with:?}");
        }
    }
}

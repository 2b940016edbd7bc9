//! Use moved by evidence: from what is customary, as far as the model's evidence carries and no farther.
//!
//! Each share is multiplied with exp(A / [`RESERVE`]), A the runs per 100 pitches the pitch saves over the athlete's
//! average in that state of the count. No model tried on a league day explains what pitchers throw beyond custom (slope
//! -.03, -.10 to +.05; computed), so the use may lean, not leap. The profile's floors and caps apply last.

use crate::base::geometry::Side;

use super::bounds::Bounds;
use super::counts::Count;
use super::draws::Terms;
use super::model::Model;
use super::shares::{Shares, runs_of_pitch};
use super::worth::Brought;

/// Runs per 100 pitches that multiply a share with e: large, because the evidence is small.
pub const RESERVE: f64 = 20.0;

/// How the model would have today's pitches thrown.
pub fn recommended(model: &Model) -> Shares {
    let bounds = Bounds::of(model.profile, model.profile.pitches.iter().map(|pitch| pitch.family));
    Shares::from_fn(|side, count| {
        let runs = runs_of_pitches(model, side, count);
        let shares = model.shares.at(side, count);
        let mean: f64 = runs.iter().zip(shares).map(|(runs, share)| runs * share).sum();
        let leaned = shares.iter().zip(&runs).map(|(share, runs)| share * ((mean - runs) / RESERVE).exp());
        bounds.nearest(leaned.collect())
    })
}

/// Runs per 100 that each pitch brings the hitters in one state of the count, thrown as today, over both readings.
pub fn runs_of_pitches(model: &Model, side: Side, count: Count) -> Vec<f64> {
    let mix = model.shares.mix(side);
    let by_reading = model.today.each_ref().map(|facing| {
        let brought = Brought { placed: &model.arsenal, facing, terms: Terms::LIKELIEST };
        brought.outcomes(side, &mix, &[])
    });
    let runs = |pitch: usize| by_reading.iter().map(|all| runs_of_pitch(&all[pitch], count)).sum::<f64>() / 2.0;
    (0..model.arsenal.len()).map(runs).collect()
}

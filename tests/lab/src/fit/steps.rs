//! The steps of the fit, and what comes out.

use linfa_linalg::cholesky::{InverseC, SolveC};
use ndarray::{Array1, Array2};
use rayon::prelude::*;

use super::law::{Law, Prior};
use crate::meetings::Meeting;

/// The most steps.
const MOST_STEPS: usize = 16;
/// Steps end when one wins fewer nats than this.
const ENOUGH_NATS: f64 = 0.02;
/// The most a step may move a parameter, in standard deviations of its prior (or 1 where that is wider).
const LONGEST_STEP: f64 = 1.5;
/// How far a parameter is moved to see a slope.
const DIFFERENCE: f64 = 2e-3;

/// A fitted hitter.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// The likeliest transformed parameters.
    pub transformed: Vec<f64>,
    /// Their covariance, rows first (Laplace).
    pub covariance: Array2<f64>,
    /// Penalised loss, nats over all throws.
    pub nats: f64,
    /// Steps taken.
    pub steps: usize,
}

/// The likeliest parameters, from the starts of the priors or from `from`.
///
/// # Panics
/// When the curvature is not finite, which a law with finite chances cannot bring about.
pub fn fit<L: Law>(law: &L, meetings: &[Meeting], from: Option<&[f64]>) -> Fit {
    let priors = law.priors();
    let start = from.map_or_else(|| priors.iter().map(|prior| prior.start).collect(), <[f64]>::to_vec);
    let mut here = Point::of(law, meetings, start);
    let mut damping = 1e-2;
    let mut steps = 0;
    let mut curvature = Curvature::at(law, meetings, &here);
    while steps < MOST_STEPS {
        let Some((next, used)) = better(law, meetings, &here, &curvature, damping) else { break };
        let won = here.nats - next.nats;
        here = next;
        damping = (used / 5.0).max(1e-5);
        steps += 1;
        curvature = Curvature::at(law, meetings, &here);
        if won < ENOUGH_NATS {
            break;
        }
    }
    let covariance = curvature.matrix.invc().expect("a sum of squares and the priors is positive");
    Fit { transformed: here.transformed, covariance, nats: here.nats, steps }
}

/// A point with a lower loss and the damping it took; nothing when none is found.
fn better<L: Law>(
    law: &L,
    meetings: &[Meeting],
    here: &Point,
    curvature: &Curvature,
    mut damping: f64,
) -> Option<(Point, f64)> {
    for _ in 0..7 {
        let next = Point::of(law, meetings, curvature.step(law.priors(), &here.transformed, damping));
        if next.nats < here.nats {
            return Some((next, damping));
        }
        damping = (damping * 6.0).max(1e-3);
    }
    None
}

/// Parameters with the logits they give.
struct Point {
    transformed: Vec<f64>,
    /// Three a throw; nothing is asked where the throw does not answer.
    logits: Vec<[f64; 3]>,
    nats: f64,
}

impl Point {
    fn of<L: Law>(law: &L, meetings: &[Meeting], transformed: Vec<f64>) -> Self {
        let logits = logits(law, meetings, &transformed);
        let throws: f64 = meetings
            .iter()
            .zip(&logits)
            .flat_map(|(meeting, logits)| answers(meeting).into_iter().zip(logits))
            .filter_map(|(answer, &logit)| Some(softplus(logit) - if answer? { logit } else { 0.0 }))
            .sum();
        let prior: f64 = law
            .priors()
            .iter()
            .zip(&transformed)
            .map(|(prior, value)| 0.5 * ((value - prior.mean) / prior.sd).powi(2))
            .sum();
        Self { transformed, logits, nats: throws + prior }
    }
}

/// Slope and curvature of the penalised loss.
struct Curvature {
    matrix: Array2<f64>,
    slope: Array1<f64>,
}

impl Curvature {
    fn at<L: Law>(law: &L, meetings: &[Meeting], here: &Point) -> Self {
        let mut curvature = Self::of_priors(law.priors(), &here.transformed);
        let columns = slopes_of_logits(law, meetings, here);
        for (row, meeting) in meetings.iter().enumerate() {
            for (question, answer) in answers(meeting).into_iter().enumerate() {
                let Some(answer) = answer else { continue };
                let slopes: Vec<f64> = columns.iter().map(|column| column[row][question]).collect();
                curvature.add(&slopes, logistic(here.logits[row][question]), answer);
            }
        }
        curvature.mirror();
        curvature
    }

    fn of_priors(priors: &[Prior], transformed: &[f64]) -> Self {
        let precision: Array1<f64> = priors.iter().map(|prior| prior.sd.powi(-2)).collect();
        let slope = priors.iter().zip(transformed).map(|(prior, value)| (value - prior.mean) / prior.sd.powi(2));
        Self { slope: slope.collect(), matrix: Array2::from_diag(&precision) }
    }

    /// An answer that was given this chance, into the lower triangle.
    fn add(&mut self, slopes: &[f64], chance: f64, answer: bool) {
        let (error, weight) = (chance - f64::from(u8::from(answer)), chance * (1.0 - chance));
        for (i, slope) in slopes.iter().enumerate() {
            self.slope[i] += error * slope;
            for (j, other) in slopes[..=i].iter().enumerate() {
                self.matrix[[i, j]] += weight * slope * other;
            }
        }
    }

    /// Fills the upper triangle.
    fn mirror(&mut self) {
        for i in 0..self.slope.len() {
            for j in 0..i {
                self.matrix[[j, i]] = self.matrix[[i, j]];
            }
        }
    }

    /// Where the damped step leads.
    fn step(&self, priors: &[Prior], from: &[f64], damping: f64) -> Vec<f64> {
        let mut damped = self.matrix.clone();
        damped.diag_mut().mapv_inplace(|value| value * (1.0 + damping));
        let against = self.slope.mapv(|slope| -slope).insert_axis(ndarray::Axis(1));
        let step = damped.solvec(&against).expect("a damped positive matrix is positive");
        let size = |(step, prior): (&f64, &Prior)| (step / prior.sd.min(1.0)).abs();
        let longest = step.iter().zip(priors).map(size).fold(0.0, f64::max);
        let scale = (LONGEST_STEP / longest).min(1.0);
        from.iter().zip(&step).map(|(value, step)| value + scale * step).collect()
    }
}

/// How every logit moves with every parameter, parameter by parameter.
fn slopes_of_logits<L: Law>(law: &L, meetings: &[Meeting], here: &Point) -> Vec<Vec<[f64; 3]>> {
    (0..here.transformed.len())
        .into_par_iter()
        .map(|parameter| {
            let mut moved = here.transformed.clone();
            moved[parameter] += DIFFERENCE;
            let mut slopes = logits(law, meetings, &moved);
            for (slope, at) in slopes.iter_mut().zip(&here.logits) {
                for (slope, at) in slope.iter_mut().zip(at) {
                    *slope = (*slope - at) / DIFFERENCE;
                }
            }
            slopes
        })
        .collect()
}

fn logits<L: Law>(law: &L, meetings: &[Meeting], transformed: &[f64]) -> Vec<[f64; 3]> {
    let hitter = law.hitter(transformed);
    meetings
        .par_iter()
        .map(|meeting| law.meet(&hitter, meeting).by_question().map(|chance| (chance / (1.0 - chance)).ln()))
        .collect()
}

/// What the throw answers, in the order of the questions put.
fn answers(meeting: &Meeting) -> [Option<bool>; 3] {
    [meeting.seen.swing, meeting.seen.miss, meeting.seen.solid]
}

fn softplus(x: f64) -> f64 {
    x.max(0.0) + (-x.abs()).exp().ln_1p()
}

fn logistic(x: f64) -> f64 {
    1.0 / (1.0 + (-x).exp())
}

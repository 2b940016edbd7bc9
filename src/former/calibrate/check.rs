//! Log loss on games left out, beside two baselines.

use super::evidence::{CLASSES, class_chances};
use super::{Evidence, fit};

/// Blocks of games, each left out once.
const FOLDS: usize = 4;

/// Mean log loss per pitch (nats) of the outcome class, lower is better.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Losses {
    /// The model, fitted to the other games.
    pub model: f64,
    /// One set of constants for all pitches, from the other games.
    pub overall: f64,
    /// One set of constants for each pitch and side, from the other games.
    pub per_cell: f64,
    /// Pitches judged.
    pub pitches: u32,
}

/// Losses on the games left out.
#[derive(Debug, Clone, PartialEq)]
pub struct CrossValidation {
    /// Over everything.
    pub total: Losses,
    /// By cell, in the evidence's order.
    pub by_cell: Vec<Losses>,
    /// Chance said against share seen, in bands of the chance.
    pub calibration: Vec<Calibration>,
}

/// A band of predicted chances.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Calibration {
    /// Mean chance said.
    pub said: f64,
    /// Share seen.
    pub seen: f64,
    /// Chances in the band (pitches times classes).
    pub count: f64,
}

/// Fits to all blocks of games but one and judges the one, in turn.
pub fn cross_validate(evidence: &Evidence, seed: u64) -> CrossValidation {
    let mut sums = vec![Losses::default(); evidence.cells.len()];
    let mut bands = vec![Calibration::default(); BANDS];
    for fold in 0..FOLDS {
        let held_out = |game: usize| game * FOLDS / evidence.games.max(1) == fold;
        let fitted = fit(evidence, |game| !held_out(game), 1, seed).best.hitter();
        let expected = evidence.expected(&fitted);
        let overall = shares(evidence.cells.iter().map(|cell| cell.counts(|game| !held_out(game)).0));
        for ((cell, rates), sum) in evidence.cells.iter().zip(&expected).zip(&mut sums) {
            let counts = cell.counts(held_out);
            let own = shares([cell.counts(|game| !held_out(game)).0].into_iter());
            let chances = class_chances(rates);
            sum.model += loss(&counts.0, &chances);
            sum.overall += loss(&counts.0, &overall);
            sum.per_cell += loss(&counts.0, &own);
            sum.pitches += counts.pitches();
            fill_bands(&mut bands, &counts.0, &chances);
        }
    }
    let mut total = Losses::default();
    for sum in &sums {
        total.model += sum.model;
        total.overall += sum.overall;
        total.per_cell += sum.per_cell;
        total.pitches += sum.pitches;
    }
    CrossValidation {
        total: total.per_pitch(),
        by_cell: sums.into_iter().map(Losses::per_pitch).collect(),
        calibration: bands.into_iter().filter(|band| band.count > 0.0).map(Calibration::finished).collect(),
    }
}

impl Losses {
    fn per_pitch(self) -> Self {
        let count = f64::from(self.pitches.max(1));
        Self { model: self.model / count, overall: self.overall / count, per_cell: self.per_cell / count, ..self }
    }
}

impl Calibration {
    fn finished(self) -> Self {
        Self { said: self.said / self.count, seen: self.seen / self.count, ..self }
    }
}

const BANDS: usize = 6;

fn fill_bands(bands: &mut [Calibration], counts: &[u32; CLASSES], chances: &[f64; CLASSES]) {
    let total: u32 = counts.iter().sum();
    for (&count, &chance) in counts.iter().zip(chances) {
        // Bands of a tenth; the last holds everything above a half.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a chance times ten")]
        let band = ((chance * 10.0) as usize).min(BANDS - 1);
        bands[band].said += f64::from(total) * chance;
        bands[band].seen += f64::from(count);
        bands[band].count += f64::from(total);
    }
}

/// Shares of the classes, one imagined pitch spread evenly so that nothing is impossible.
fn shares(counts: impl Iterator<Item = [u32; CLASSES]>) -> [f64; CLASSES] {
    let mut sums = [1.0 / CLASSES as f64; CLASSES];
    for row in counts {
        for (sum, count) in sums.iter_mut().zip(row) {
            *sum += f64::from(count);
        }
    }
    let total: f64 = sums.iter().sum();
    sums.map(|sum| sum / total)
}

fn loss(counts: &[u32; CLASSES], chances: &[f64; CLASSES]) -> f64 {
    counts.iter().zip(chances).map(|(&count, chance)| -f64::from(count) * chance.max(1e-6).ln()).sum()
}

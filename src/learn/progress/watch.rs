//! One quantity watched over the outings, and the detector that rings when it moves.
//!
//! Each outing's mean x has variance v = s^2/n + d^2 (throws, and the day). What is believed of the
//! level starts at the profile's value with its own variance and is updated outing by outing, so
//! the standardised surprise z = (x - level) / sqrt(P + v) is standard normal and independent from
//! outing to outing as long as nothing moves. A one-sided cumulative sum C = max(0, C + z - k)
//! collects surprises in the bad direction and rings above h (self-starting CUSUM: D. M. Hawkins,
//! The Statistician 36 (1987) 299, from memory).
//!
//! k = 1/2 and h = 6: one chart rings falsely in about 0.8 % of runs of 30 outings, all eleven
//! together in fewer than 5 %, however often one looks (simulated below and in
//! `tests/progress_truth.rs`, with days that scatter as assumed here). It is bad at a change that
//! creeps in over dozens of outings.

use crate::athlete::profile::Profile;
use crate::athlete::session::Throw;
use crate::ball::Release;
use crate::base::stats::{Estimate, Sample, sd_estimate};
use crate::base::units::{DEGREE, FOOT, INCH};
use crate::learn::slot::slot_deg;

use super::outings::{Outing, fastball};

/// A watched quantity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// Slot of the fastball, degrees.
    Slot,
    /// Slot of the new pitch, degrees.
    NewPitchSlot,
    /// Fastball speed, mph.
    FastballSpeed,
    /// Fastball vertical break, in.
    FastballVertical,
    /// Fastball glove-side break, in.
    FastballGloveSide,
    /// Release height of the fastball, ft.
    ReleaseHeight,
    /// Release side of the fastball (arm side +), ft.
    ReleaseSide,
    /// Extension of the fastball, ft.
    Extension,
}

/// Which way a quantity must not move.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Bad {
    Down,
    Either,
}

/// What is assumed about a quantity.
struct Habit {
    bad: Bad,
    /// Standard deviation from day to day, beyond what the throws of a day scatter.
    day_sd: f64,
    /// A change of this size matters.
    matters: f64,
}

impl Quantity {
    /// All of them, in the order they are shown.
    pub const ALL: [Self; 8] = [
        Self::Slot,
        Self::NewPitchSlot,
        Self::FastballSpeed,
        Self::FastballVertical,
        Self::FastballGloveSide,
        Self::ReleaseHeight,
        Self::ReleaseSide,
        Self::Extension,
    ];

    /// Common practice, no published source.
    fn habit(self) -> Habit {
        let of = |bad, day_sd, matters| Habit { bad, day_sd, matters };
        match self {
            Self::Slot => of(Bad::Down, 1.2, 3.0),
            Self::NewPitchSlot => of(Bad::Down, 1.2, 4.0),
            Self::FastballSpeed => of(Bad::Down, 0.5, 1.0),
            Self::FastballVertical => of(Bad::Either, 0.7, 2.0),
            Self::FastballGloveSide => of(Bad::Either, 0.7, 2.5),
            Self::ReleaseHeight => of(Bad::Down, 0.05, 0.2),
            Self::ReleaseSide => of(Bad::Either, 0.06, 0.25),
            Self::Extension => of(Bad::Down, 0.08, 0.25),
        }
    }

    /// A change of this size matters to the pitcher (in the quantity's unit).
    pub fn matters(self) -> f64 {
        self.habit().matters
    }

    /// Whether a rise does harm as a drop does.
    pub(super) fn harmed_by_a_rise(self) -> bool {
        self.habit().bad == Bad::Either
    }

    fn read(self, throw: &Throw, usual: Release) -> Option<f64> {
        let release = throw.release;
        match self {
            Self::Slot | Self::NewPitchSlot => Some(slot_deg(usual, release.height_ft?, release.side_ft?)),
            Self::FastballSpeed => Some(throw.shape.speed_mph),
            Self::FastballVertical => Some(throw.shape.vertical_break_in),
            Self::FastballGloveSide => Some(throw.shape.glove_side_break_in),
            Self::ReleaseHeight => release.height_ft,
            Self::ReleaseSide => release.side_ft,
            Self::Extension => release.extension_ft,
        }
    }

    fn sample(self, outing: &Outing, usual: Release) -> Sample {
        let throws = if self == Self::NewPitchSlot { &outing.new_pitches } else { &outing.fastballs };
        Sample::of(throws.iter().filter_map(|throw| self.read(throw, usual)))
    }
}

/// Where a quantity stood before, and how well that is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Baseline {
    value: f64,
    variance: f64,
    throw_sd: f64,
}

/// How far a breaking ball's slot ordinarily lies from the fastball's, degrees. Common practice.
const NEW_PITCH_SLOT_SD: f64 = 1.5;
/// Scatter of extension from throw to throw, ft. Common practice.
const EXTENSION_SD_FT: f64 = 0.12;

impl Baseline {
    /// What `profile`, released as `usual` says, has for `quantity`; nothing without a fastball.
    fn of(quantity: Quantity, profile: &Profile, usual: Release) -> Option<Self> {
        let pitch = fastball(profile)?;
        let release_ft = pitch.spread.release_in * INCH / FOOT;
        let (value, throw_sd) = match quantity {
            Quantity::Slot | Quantity::NewPitchSlot => (usual.slot_deg, slot_sd(usual, release_ft)),
            Quantity::FastballSpeed => (pitch.shape.speed_mph, pitch.spread.speed_mph),
            Quantity::FastballVertical => (pitch.shape.vertical_break_in, pitch.spread.vertical_break_in),
            Quantity::FastballGloveSide => (pitch.shape.glove_side_break_in, pitch.spread.glove_side_break_in),
            Quantity::ReleaseHeight => (usual.height_ft, release_ft),
            Quantity::ReleaseSide => (usual.side_ft, release_ft),
            Quantity::Extension => (usual.extension_ft, EXTENSION_SD_FT),
        };
        let extra = if quantity == Quantity::NewPitchSlot { NEW_PITCH_SLOT_SD } else { 0.0 };
        let day = quantity.habit().day_sd;
        let variance = throw_sd * throw_sd / f64::from(pitch.throws.max(1)) + day * day + extra * extra;
        Some(Self { value, variance, throw_sd })
    }
}

/// What a scatter of the release in height and side makes of the slot, degrees.
fn slot_sd(usual: Release, release_ft: f64) -> f64 {
    let moved = slot_deg(usual, usual.height_ft + release_ft * (usual.slot_deg * DEGREE).cos(), usual.side_ft);
    (moved - usual.slot_deg).abs().max(release_ft)
}

/// One quantity over the outings.
#[derive(Debug, Clone, PartialEq)]
pub struct Watch {
    /// What is watched.
    pub quantity: Quantity,
    /// The profile's value.
    pub baseline: Estimate,
    /// Each outing's mean with its interval; nothing where it was not measured twice.
    pub by_outing: Vec<Option<Estimate>>,
    /// The last outings (three at most) against the baseline: plus is more than before.
    pub now: Option<Estimate>,
    /// The change the detector found, if it rang.
    pub change: Option<Change>,
}

/// A change the detector found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Change {
    /// The outing at which the movement began.
    pub since: usize,
    /// The outing at which the detector rang.
    pub rang_at: usize,
    /// The last outings (three at most, none from before it began) against everything before it
    /// began: plus is more than before.
    pub amount: Estimate,
}

/// The detector's slack and limit; see the head of this file.
const SLACK: f64 = 0.5;
const LIMIT: f64 = 6.0;
/// Outings that make up "now".
const NOW: usize = 3;
/// With this many outings the day-to-day scatter assumed is checked against the outings' own.
const ENOUGH_OUTINGS: usize = 6;

/// An outing's mean and its variance.
#[derive(Clone, Copy)]
struct Point {
    outing: usize,
    mean: f64,
    variance: f64,
}

impl Watch {
    /// Watches `quantity` over `outings`; nothing when no outing measured it or nothing is known
    /// to compare with.
    pub(super) fn of(quantity: Quantity, profile: &Profile, usual: Release, outings: &[Outing]) -> Option<Self> {
        let baseline = Baseline::of(quantity, profile, usual)?;
        let samples: Vec<Sample> = outings.iter().map(|outing| quantity.sample(outing, usual)).collect();
        let points = points(quantity, &baseline, &samples);
        (!points.is_empty()).then(|| Self {
            quantity,
            baseline: Estimate::from_sd(baseline.value, baseline.variance.sqrt()),
            by_outing: samples.iter().map(Sample::mean_estimate).collect(),
            now: now(&baseline, &points),
            change: change(quantity.habit().bad, &baseline, &points),
        })
    }

    /// Whether the last outings are off by more than matters, in a direction that does harm, by
    /// the detector's word or beyond what their interval can explain.
    pub fn is_serious(&self) -> bool {
        let habit = self.quantity.habit();
        let Some(now) = self.now else { return false };
        let harmful = habit.bad == Bad::Either || now.value < 0.0;
        let clear = now.high < -habit.matters || (habit.bad == Bad::Either && now.low > habit.matters);
        let moved = self.change.is_some_and(|change| change.amount.value.abs() >= habit.matters);
        (harmful && clear) || moved
    }
}

fn points(quantity: Quantity, baseline: &Baseline, samples: &[Sample]) -> Vec<Point> {
    let throw_variance = pooled_variance(samples).unwrap_or(baseline.throw_sd.powi(2));
    let day = quantity.habit().day_sd;
    let seen = samples.iter().enumerate().filter(|(_, sample)| sample.count > 0);
    let mut points: Vec<Point> = seen
        .map(|(outing, sample)| {
            let variance = throw_variance / f64::from(sample.count) + day * day;
            Point { outing, mean: sample.mean, variance }
        })
        .collect();
    let stretch = stretch(&points);
    for point in &mut points {
        point.variance *= stretch;
    }
    points
}

/// Variance of throws within a day, from all days together.
fn pooled_variance(samples: &[Sample]) -> Option<f64> {
    let freedom: u32 = samples.iter().map(|sample| sample.count.saturating_sub(1)).sum();
    let squares = samples.iter().map(|sample| sample.squares).sum();
    (freedom >= 10).then(|| sd_estimate(squares, f64::from(freedom))).flatten().map(|sd| sd.value * sd.value)
}

/// How much more the outings scatter than assumed, as a factor on variance; never below one.
///
/// Taken from the median step between neighbouring outings (which is 0.954 standard deviations of
/// one outing), because one true change moves only one step.
fn stretch(points: &[Point]) -> f64 {
    if points.len() < ENOUGH_OUTINGS {
        return 1.0;
    }
    let size =
        |pair: &[Point]| (pair[1].mean - pair[0].mean).powi(2) / f64::midpoint(pair[0].variance, pair[1].variance);
    let mut steps: Vec<f64> = points.windows(2).map(size).collect();
    steps.sort_by(f64::total_cmp);
    let median = f64::midpoint(steps[(steps.len() - 1) / 2], steps[steps.len() / 2]);
    (median / (0.954 * 0.954)).max(1.0)
}

/// The last outings against the baseline.
fn now(baseline: &Baseline, points: &[Point]) -> Option<Estimate> {
    let last = level(&points[points.len().saturating_sub(NOW)..])?;
    Some(difference(last, (baseline.value, baseline.variance)))
}

/// What `after` is more than `before`, each a mean and its variance.
fn difference(after: (f64, f64), before: (f64, f64)) -> Estimate {
    Estimate::from_sd(after.0 - before.0, (after.1 + before.1).sqrt())
}

/// The mean of some points and its variance; nothing of none.
fn level(points: &[Point]) -> Option<(f64, f64)> {
    let weight: f64 = points.iter().map(|point| 1.0 / point.variance).sum();
    let mean = points.iter().map(|point| point.mean / point.variance).sum::<f64>() / weight;
    (!points.is_empty()).then_some((mean, 1.0 / weight))
}

fn change(bad: Bad, baseline: &Baseline, points: &[Point]) -> Option<Change> {
    let surprises = surprises(baseline, points);
    let up = || if bad == Bad::Either { ring(&surprises, 1.0) } else { None };
    let (begins, rings) = ring(&surprises, -1.0).or_else(up)?;
    let last = points.len().saturating_sub(NOW).max(begins);
    let profile = Point { outing: 0, mean: baseline.value, variance: baseline.variance };
    let before: Vec<Point> = [profile].into_iter().chain(points[..begins].iter().copied()).collect();
    let amount = difference(level(&points[last..])?, level(&before)?);
    Some(Change { since: points[begins].outing, rang_at: points[rings].outing, amount })
}

/// Standardised surprises, independent standard normal while nothing moves.
fn surprises(baseline: &Baseline, points: &[Point]) -> Vec<f64> {
    let (mut level, mut variance) = (baseline.value, baseline.variance);
    let surprise = |point: &Point| {
        let total = variance + point.variance;
        let off = point.mean - level;
        level += variance / total * off;
        variance *= point.variance / total;
        off / total.sqrt()
    };
    points.iter().map(surprise).collect()
}

/// The places at which the movement in the direction of `sign` began and at which it rang.
fn ring(surprises: &[f64], sign: f64) -> Option<(usize, usize)> {
    let (mut sum, mut since) = (0.0_f64, 0);
    for (place, surprise) in surprises.iter().enumerate() {
        if sum <= 0.0 {
            since = place;
        }
        sum = (sum + sign * surprise - SLACK).max(0.0);
        if sum > LIMIT {
            return Some((since, place));
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use rand::{Rng, SeedableRng};
    use rand_distr::StandardNormal;
    use rand_xoshiro::Xoshiro256PlusPlus;

    /// Runs of 30 outings in which nothing moves: the rate stated at the head of this file.
    #[test]
    fn one_chart_rings_falsely_in_fewer_than_one_run_of_a_hundred() {
        const RUNS: usize = 40_000;
        let mut chance = Xoshiro256PlusPlus::seed_from_u64(1);
        let rang = (0..RUNS).filter(|_| {
            let surprises: Vec<f64> = (0..30).map(|_| chance.sample(StandardNormal)).collect();
            ring(&surprises, -1.0).is_some()
        });
        let rate = rang.count() as f64 / RUNS as f64;
        assert!((0.006..0.010).contains(&rate), "{rate}");
    }

    #[test]
    fn surprises_are_standard_normal_whatever_the_baseline_knows() {
        let mut chance = Xoshiro256PlusPlus::seed_from_u64(2);
        let mut squares = [0.0; 5];
        for _ in 0..4000 {
            let mut normal = || chance.sample::<f64, _>(StandardNormal);
            let baseline = Baseline { value: 2.0 * normal(), variance: 4.0, throw_sd: 1.0 };
            let points: Vec<Point> =
                (0..5).map(|outing| Point { outing, mean: 1.5 * normal(), variance: 2.25 }).collect();
            for (sum, surprise) in squares.iter_mut().zip(surprises(&baseline, &points)) {
                *sum += surprise * surprise / 4000.0;
            }
        }
        assert!(squares.iter().all(|mean| (mean - 1.0).abs() < 0.1), "{squares:?}");
    }
}

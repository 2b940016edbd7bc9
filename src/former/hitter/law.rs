//! One pitch as the hitter meets it: what it looks like at the decision instant, and where and
//! when it arrives, as one joint normal law.
//!
//! The flight is linearised about the pitch's mean: seven independent normal latents (where it is
//! aimed, speed, two breaks, release point), one perturbed flight for each. Nothing here knows
//! about other pitches.

use crate::athlete::profile::Spread;
use crate::ball::Shape;
use crate::ball::flight::inverse::throw_of_shape;
use crate::ball::flight::{Air, Throw};
use crate::base::Location;
use crate::base::geometry::{Side, Vec3};
use crate::base::stats::{Cholesky, Matrix};
use crate::base::units::{INCH, MPH};
use crate::former::eyes::Eyes;

use super::swing::ZONE;

/// What is seen at the decision instant: release x, z; place x, z; velocity x, z; closing speed.
pub const FEATURES: usize = 7;
/// What is met: plate x, plate z, arrival time.
const MET: usize = 3;
const LATENTS: usize = 7;

type Seen = [f64; FEATURES];

/// Where and how a pitch is thrown, and when the hitter must have decided.
#[derive(Debug, Clone, Copy)]
pub struct Setting {
    /// Release point, m.
    pub release: Vec3,
    /// The air.
    pub air: Air,
    /// Seconds after release at which the hitter decides.
    pub decision: f64,
}

/// The joint normal law of one pitch at one target for a hitter on one side.
#[derive(Debug, Clone)]
pub struct PitchLaw {
    /// Mean of what is seen.
    seen: Seen,
    /// Mean of what is met.
    met: [f64; MET],
    /// What a sight's distance from the mean explains, a column a feature: first the distance in
    /// standard deviations along independent directions (the inverse of the factor of the
    /// covariance of what is seen, the hitter's own noise included), then the regression of what is
    /// met on what is seen.
    explains: Matrix<FEATURES, { FEATURES + MET }>,
    /// Half the logarithm of the determinant of that covariance.
    half_log_det: f64,
    /// Columns that turn standard normals into sights: the first three are the directions that say
    /// most of height, side and arrival, so that the evenest coordinates of the set serve them.
    spread: Matrix<FEATURES, FEATURES>,
    /// Covariance of what is met once something has been seen.
    pub(super) left: Matrix<MET, MET>,
    /// One over the standard deviations of plate x and z once seen.
    per_place_sd: [f64; 2],
}

/// A prediction from what was seen: plate x, plate z, arrival, chance of a strike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Prediction {
    pub(super) x: f64,
    pub(super) z: f64,
    pub(super) time: f64,
    pub(super) strike: f64,
}

impl PitchLaw {
    /// The law of `shape` thrown with `spread` at `target`.
    pub fn new(shape: Shape, spread: &Spread, target: Location, setting: &Setting, side: Side, eyes: &Eyes) -> Self {
        let throw = throw_of_shape(shape, setting.release, target, setting.air);
        let slopes = Linearised::of(&throw, setting.decision);
        let variances = slopes.latent_variances(spread);
        let noise = slopes.sight_noise(side, &eyes.on(side));
        let seen_slopes = &slopes.seen;
        let met_slopes = &slopes.met;
        let mut seen_cov = product(seen_slopes, seen_slopes, &variances);
        for (i, sd) in noise.into_iter().enumerate() {
            seen_cov[i][i] += sd * sd;
        }
        let cross = product(met_slopes, seen_slopes, &variances);
        let met_cov = product(met_slopes, met_slopes, &variances);
        let factor = Cholesky::of(&seen_cov);
        let gain = cross.map(|row| factor.solve(&row));
        let left: Matrix<MET, MET> = std::array::from_fn(|r| {
            std::array::from_fn(|c| met_cov[r][c] - (0..FEATURES).map(|k| gain[r][k] * cross[c][k]).sum::<f64>())
        });
        let spread = aligned(&factor, &gain);
        let whiten = factor.inverse();
        let explains = std::array::from_fn(|k| {
            std::array::from_fn(|i| if i < FEATURES { whiten[i][k] } else { gain[i - FEATURES][k] })
        });
        let per_place_sd = [0, 1].map(|k| 1.0 / left[k][k].max(1e-8).sqrt());
        Self {
            seen: slopes.seen_mean,
            met: slopes.met_mean,
            explains,
            half_log_det: factor.half_log_det,
            spread,
            left,
            per_place_sd,
        }
    }

    /// Mean arrival time, s.
    pub fn arrival(&self) -> f64 {
        self.met[2]
    }

    /// What is seen at a point of the standard normal set.
    pub(super) fn sight(&self, point: &Seen) -> Seen {
        std::array::from_fn(|i| self.seen[i] + (0..FEATURES).map(|k| self.spread[i][k] * point[k]).sum::<f64>())
    }

    /// Log density of seeing `sight` (up to a constant common to all laws), and what this pitch, having
    /// been seen so, will do.
    #[inline]
    pub(super) fn explain(&self, sight: &Seen) -> (f64, Prediction) {
        let mut explained = [0.0; FEATURES + MET];
        for ((column, seen), mean) in self.explains.iter().zip(sight).zip(&self.seen) {
            let off = seen - mean;
            for (sum, per_unit) in explained.iter_mut().zip(column) {
                *sum += per_unit * off;
            }
        }
        let far: f64 = explained[..FEATURES].iter().map(|distance| distance * distance).sum();
        let [x, z, time] = std::array::from_fn(|k| self.met[k] + explained[FEATURES + k]);
        let strike = ZONE.chance([x, z], self.per_place_sd);
        (-self.half_log_det - 0.5 * far, Prediction { x, z, time, strike })
    }
}

/// A flight and its slopes in the seven latents: aim x, aim z (in metres at the plate), speed,
/// glove-side break, vertical break, release x, release z.
struct Linearised {
    seen_mean: Seen,
    met_mean: [f64; MET],
    seen: Matrix<FEATURES, LATENTS>,
    met: Matrix<MET, LATENTS>,
    place: Vec3,
    closing: f64,
}

impl Linearised {
    fn of(throw: &Throw, decision: f64) -> Self {
        let (seen_mean, met_mean, place) = read(throw, decision);
        let breaks = throw.movement();
        let breaks = [breaks.glove_side_in * INCH, breaks.up_in * INCH];
        let mut seen = [[0.0; LATENTS]; FEATURES];
        let mut met = [[0.0; LATENTS]; MET];
        for latent in 0..LATENTS {
            let (nudged, size) = nudged(throw, latent, met_mean[2], breaks);
            let (other_seen, other_met, _) = read(&nudged, decision);
            for i in 0..FEATURES {
                seen[i][latent] = (other_seen[i] - seen_mean[i]) / size;
            }
            for i in 0..MET {
                met[i][latent] = (other_met[i] - met_mean[i]) / size;
            }
        }
        Self { seen_mean, met_mean, seen, met, place, closing: seen_mean[6] }
    }

    /// Variances of the latents. Command is the whole scatter about the target at the plate, so
    /// the aim gets what speed, breaks and release do not explain, but at least a quarter of it.
    fn latent_variances(&self, spread: &Spread) -> [f64; LATENTS] {
        let square = |sd: f64| sd * sd;
        let release = square(spread.release_in * INCH);
        let mut variances = [
            0.0,
            0.0,
            square(spread.speed_mph * MPH),
            square(spread.glove_side_break_in * INCH),
            square(spread.vertical_break_in * INCH),
            release,
            release,
        ];
        let command = [square(spread.command_side_in * INCH), square(spread.command_height_in * INCH)];
        for axis in 0..2 {
            let explained: f64 = (2..LATENTS).map(|k| square(self.met[axis][k]) * variances[k]).sum();
            let slope = square(self.met[axis][axis]).max(1e-6);
            variances[axis] = (command[axis] - explained).max(0.25 * command[axis]) / slope;
        }
        variances
    }

    /// Standard deviations of the hitter's own noise in each feature.
    fn sight_noise(&self, side: Side, eyes: &Eyes) -> Seen {
        let (place_x, place_z) = eyes.place_sd(self.place, side);
        let velocity = eyes.velocity_sd(self.place, side);
        let closing = eyes.speed_weber * self.closing;
        [eyes.release_read, eyes.release_read, place_x, place_z, velocity, velocity, closing]
    }
}

/// What is seen at the decision instant, what is met, and where the ball is when seen.
fn read(throw: &Throw, decision: f64) -> (Seen, [f64; MET], Vec3) {
    let path = throw.fly();
    let ball = path.at(decision);
    let crossing = path.crossing();
    let seen = [
        throw.release.x,
        throw.release.z,
        ball.position.x,
        ball.position.z,
        ball.velocity.x,
        ball.velocity.z,
        -ball.velocity.y,
    ];
    (seen, [crossing.x, crossing.z, crossing.time], ball.position)
}

/// The throw with one latent changed a little, and by how much.
fn nudged(throw: &Throw, latent: usize, flight_time: f64, breaks: [f64; 2]) -> (Throw, f64) {
    const LENGTH: f64 = 0.5 * INCH;
    let mut changed = *throw;
    match latent {
        0 => changed.velocity.x += LENGTH / flight_time,
        1 => changed.velocity.z += LENGTH / flight_time,
        2 => changed.velocity = throw.velocity * (1.0 + 0.2 / throw.velocity.norm()),
        3 | 4 => changed.forces.side[latent - 3] += LENGTH * coefficient_per_metre(throw, breaks),
        5 => changed.release.x += LENGTH,
        _ => changed.release.z += LENGTH,
    }
    (changed, if latent == 2 { 0.2 } else { LENGTH })
}

/// Side-force coefficient per metre of break, from this very throw when it breaks, else from the
/// straight-flight rule.
fn coefficient_per_metre(throw: &Throw, breaks: [f64; 2]) -> f64 {
    let total = breaks[0].hypot(breaks[1]);
    let reach = throw.release.y - crate::base::geometry::PLATE_FRONT_Y;
    if total > INCH {
        throw.forces.side[0].hypot(throw.forces.side[1]) / total
    } else {
        2.0 / (throw.forces.per_metre * reach * reach).max(f64::MIN_POSITIVE)
    }
}

/// A square root of the covariance, `L Q`: Q is orthogonal, its first columns along the rows of
/// `gain × L` (Gram and Schmidt), the rest whatever completes them.
fn aligned(factor: &Cholesky<FEATURES>, gain: &Matrix<MET, FEATURES>) -> Matrix<FEATURES, FEATURES> {
    let axis = |k: usize| -> Seen { std::array::from_fn(|i| if i == k { 1.0 } else { 0.0 }) };
    let lower: [Seen; FEATURES] = std::array::from_fn(|k| factor.spread(&axis(k)));
    let dot = |a: &Seen, b: &Seen| (0..FEATURES).map(|i| a[i] * b[i]).sum::<f64>();
    let told = [1, 0, 2].map(|r| -> Seen { std::array::from_fn(|k| dot(&gain[r], &lower[k])) });
    let mut basis: Vec<Seen> = Vec::with_capacity(FEATURES);
    for candidate in told.into_iter().chain((0..FEATURES).rev().map(axis)) {
        let mut rest = candidate;
        for _ in 0..2 {
            for b in &basis {
                let along = dot(b, &rest);
                rest = std::array::from_fn(|i| rest[i] - along * b[i]);
            }
        }
        let size = dot(&rest, &rest).sqrt();
        if basis.len() < FEATURES && size > 1e-6 * dot(&candidate, &candidate).sqrt() {
            basis.push(rest.map(|x| x / size));
        }
    }
    std::array::from_fn(|i| std::array::from_fn(|k| (0..FEATURES).map(|j| lower[j][i] * basis[k][j]).sum()))
}

/// `A D Bᵀ` for a diagonal D.
fn product<const R: usize, const C: usize>(
    a: &Matrix<R, LATENTS>,
    b: &Matrix<C, LATENTS>,
    diagonal: &[f64; LATENTS],
) -> Matrix<R, C> {
    std::array::from_fn(|r| std::array::from_fn(|c| (0..LATENTS).map(|k| a[r][k] * diagonal[k] * b[c][k]).sum()))
}

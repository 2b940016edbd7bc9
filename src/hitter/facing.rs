//! A hitter on one side against a set of pitches: what he sees, believes, does and gets.
//!
//! A pitch really thrown follows its law about the target; the hitter, who knows the pitch but not
//! this throw's target, explains what he sees by each pitch's *habit*, the same law about all the
//! places it goes to.
//!
//! Everything that does not depend on the pitcher's mix is worked out once, for every pitch thrown
//! (i), every point of the fixed even set (s) and every pitch it might be (j): how well j explains
//! what he saw, and what j would do next. After that a mix costs one pass over the table, and a
//! further pitch one further row and column.

use crate::geometry::Side;

use super::Hitter;
use super::law::{FEATURES, PitchLaw, Prediction};
use super::outcome::Rates;
use super::swing::ErrorSpread;

/// A hitter against some pitches, ready to be asked about any mix of them.
#[derive(Debug, Clone)]
pub struct Facing {
    hitter: Hitter,
    side: Side,
    habits: Vec<PitchLaw>,
    points: Vec<[f64; FEATURES]>,
    /// For pitch thrown i: rows of `points` × pitches it might be.
    thrown: Vec<Thrown>,
}

#[derive(Debug, Clone)]
struct Thrown {
    sights: Vec<[f64; FEATURES]>,
    /// What the pitch will do, by s.
    truths: Vec<Prediction>,
    /// By s.
    spreads: Vec<ErrorSpread>,
    own_log_density: Vec<f64>,
    /// `[s][j]`, j fastest.
    might_be: Vec<MightBe>,
}

/// One explanation of one sight.
#[derive(Debug, Clone, Copy)]
struct MightBe {
    /// Likelihood relative to the density of the throw itself.
    likelihood: f64,
    prediction: Prediction,
}

/// What a mix leads to.
#[derive(Debug, Clone, PartialEq)]
pub struct Expected {
    /// Chances of each outcome, by pitch.
    pub rates: Vec<Rates>,
    /// Expected runs of each pitch under this mix.
    pub pitch_runs: Vec<f64>,
    /// Expected runs of a pitch drawn from the mix.
    pub runs: f64,
    /// Derivative of `runs` in each share (the hitter adapts his belief to the mix).
    pub gradient: Vec<f64>,
}

impl Facing {
    /// A `hitter` on `side` against `pitches`, each its law about its target and its habit, judged
    /// on `points`.
    pub fn new(pitches: &[(PitchLaw, PitchLaw)], hitter: &Hitter, side: Side, points: &[[f64; FEATURES]]) -> Self {
        let empty = Self { hitter: *hitter, side, habits: Vec::new(), points: points.to_vec(), thrown: Vec::new() };
        pitches.iter().fold(empty, |facing, (law, habit)| facing.with(law, habit))
    }

    /// The same with one more pitch, last.
    #[must_use]
    pub fn with(&self, law: &PitchLaw, habit: &PitchLaw) -> Self {
        let before = self.habits.len();
        let mut more = Self {
            hitter: self.hitter,
            side: self.side,
            habits: self.habits.clone(),
            points: self.points.clone(),
            thrown: self.thrown.iter().map(|old| old.with(habit, before)).collect(),
        };
        more.habits.push(habit.clone());
        more.thrown.push(more.thrown_row(law));
        more
    }

    /// The same with pitch `index` aimed by another law; its habit stays.
    #[must_use]
    pub fn aimed(&self, index: usize, law: &PitchLaw) -> Self {
        let mut other = self.clone();
        other.thrown[index] = other.thrown_row(law);
        other
    }

    fn thrown_row(&self, law: &PitchLaw) -> Thrown {
        let sights: Vec<_> = self.points.iter().map(|point| law.sight(point)).collect();
        let own_log_density: Vec<_> = sights.iter().map(|sight| law.log_density(sight)).collect();
        let truths: Vec<_> = sights.iter().map(|sight| law.predict(sight)).collect();
        let spreads = truths.iter().map(|truth| self.error_spread(law, truth)).collect();
        let might_be = sights
            .iter()
            .zip(&own_log_density)
            .flat_map(|(sight, &own)| self.habits.iter().map(move |habit| MightBe::new(habit, sight, own)))
            .collect();
        Thrown { sights, truths, spreads, own_log_density, might_be }
    }

    /// What stays uncertain after seeing, plus the hands' own noise where the ball will be. The
    /// bat's turn ties the arrival error to the distance along the bat.
    fn error_spread(&self, law: &PitchLaw, ball: &Prediction) -> ErrorSpread {
        let bat = &self.hitter.bat;
        let turn = bat.turn * self.side.away_sign();
        let left = &law.left;
        let arrival = left[2][2] + 2.0 * turn * left[0][2] + turn * turn * left[0][0];
        let hands = bat.hands_at(ball.x, ball.z);
        let with_hands = |variance: f64, sd: f64| (variance.max(0.0) + sd * sd).sqrt();
        ErrorSpread {
            height: with_hands(left[1][1], hands * bat.height_sd),
            away: with_hands(left[0][0], hands * bat.along_sd),
            arrival: with_hands(arrival, bat.timing_sd),
        }
    }

    /// Number of pitches.
    pub fn len(&self) -> usize {
        self.habits.len()
    }

    /// Whether there are no pitches.
    pub fn is_empty(&self) -> bool {
        self.habits.is_empty()
    }

    /// What happens under `mix` (one share a pitch) when the hitter knows it.
    pub fn expected(&self, mix: &[f64]) -> Expected {
        let count = self.habits.len();
        let mut all = Expected {
            rates: vec![Rates::default(); count],
            pitch_runs: Vec::new(),
            runs: 0.0,
            gradient: vec![0.0; count],
        };
        for (pitch, thrown) in self.thrown.iter().enumerate() {
            self.add_pitch(pitch, thrown, mix, &mut all);
        }
        all.pitch_runs = all.rates.iter().map(|rates| rates.runs(&self.hitter.runs)).collect();
        for (pitch, &runs) in all.pitch_runs.iter().enumerate() {
            all.runs += mix[pitch] * runs;
            all.gradient[pitch] += runs;
        }
        all
    }

    fn add_pitch(&self, pitch: usize, thrown: &Thrown, mix: &[f64], all: &mut Expected) {
        let weight = 1.0 / self.points.len() as f64;
        let rows = thrown.might_be.chunks_exact(self.habits.len());
        for ((row, truth), spread) in rows.zip(&thrown.truths).zip(&thrown.spreads) {
            let believed = Belief::of(row, mix);
            let moment = self.at_bat(truth, &believed.prediction, spread);
            all.rates[pitch].add(&moment.rates, weight);
            // d π_j / d m_k moves the prediction by L_k / Z times (prediction of k - prediction).
            let pull = mix[pitch] * weight / believed.total;
            for (gradient, other) in all.gradient.iter_mut().zip(row) {
                let p = &other.prediction;
                let q = &believed.prediction;
                *gradient += pull
                    * other.likelihood
                    * (moment.slope[0] * (p.x - q.x)
                        + moment.slope[1] * (p.z - q.z)
                        + moment.slope[2] * (p.time - q.time)
                        + moment.slope[3] * (p.strike - q.strike));
            }
        }
    }

    /// One sight: the pitch will do `truth`, the hitter expects `guess`.
    #[inline]
    fn at_bat(&self, truth: &Prediction, guess: &Prediction, spread: &ErrorSpread) -> Moment {
        let Hitter { choice, bat, runs, .. } = &self.hitter;
        let (swing, swing_slope) = choice.chance_and_slope(guess.strike);
        let away_sign = self.side.away_sign();
        let height = truth.z - guess.z;
        let away = (truth.x - guess.x) * away_sign;
        let arrival = truth.time - guess.time + bat.turn * away;
        let contact = bat.contact(height, away, arrival, spread);
        let rates = Rates {
            ball: (1.0 - swing) * (1.0 - truth.strike),
            called_strike: (1.0 - swing) * truth.strike,
            swing_and_miss: swing * (1.0 - contact.any),
            weak_contact: swing * (contact.any - contact.solid),
            solid_contact: swing * contact.solid,
        };
        let take_runs = truth.strike * runs.strike + (1.0 - truth.strike) * runs.ball;
        let any_worth = runs.weak_contact - runs.strike;
        let solid_worth = runs.solid_contact - runs.weak_contact;
        let swing_runs = runs.strike + contact.any * any_worth + contact.solid * solid_worth;
        // Derivatives of the runs in the three mean errors; errors fall as predictions rise.
        let [by_height, by_away, by_arrival] =
            std::array::from_fn(|k| swing * (contact.any_slope[k] * any_worth + contact.solid_slope[k] * solid_worth));
        let slope = [
            -away_sign * (by_away + bat.turn * by_arrival),
            -by_height,
            -by_arrival,
            swing_slope * (swing_runs - take_runs),
        ];
        Moment { rates, slope }
    }
}

/// Outcomes of one sight and the derivative of their runs in the predicted x, z, time and strike.
struct Moment {
    rates: Rates,
    slope: [f64; 4],
}

impl Thrown {
    fn with(&self, habit: &PitchLaw, before: usize) -> Self {
        let mut might_be = Vec::with_capacity(self.sights.len() * (before + 1));
        for (s, sight) in self.sights.iter().enumerate() {
            might_be.extend_from_slice(&self.might_be[s * before..(s + 1) * before]);
            might_be.push(MightBe::new(habit, sight, self.own_log_density[s]));
        }
        Self { might_be, ..self.clone() }
    }
}

impl MightBe {
    fn new(habit: &PitchLaw, sight: &[f64; FEATURES], own_log_density: f64) -> Self {
        // Held so that a very odd sight can neither overflow nor leave nothing to believe.
        let likelihood = (habit.log_density(sight) - own_log_density).clamp(-300.0, 300.0).exp();
        Self { likelihood, prediction: habit.predict(sight) }
    }
}

/// What the hitter expects after weighing every explanation by the mix.
struct Belief {
    total: f64,
    prediction: Prediction,
}

impl Belief {
    #[inline]
    fn of(row: &[MightBe], mix: &[f64]) -> Self {
        let (mut total, mut x, mut z, mut time, mut strike) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (other, &share) in row.iter().zip(mix) {
            let weight = share * other.likelihood;
            total += weight;
            x += weight * other.prediction.x;
            z += weight * other.prediction.z;
            time += weight * other.prediction.time;
            strike += weight * other.prediction.strike;
        }
        let per = 1.0 / total;
        Self { total, prediction: Prediction { x: x * per, z: z * per, time: time * per, strike: strike * per } }
    }
}

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

use std::sync::Arc;

use crate::base::geometry::Side;

use super::Hitter;
use super::law::{FEATURES, PitchLaw, Prediction};
use super::outcome::Rates;
use super::swing::Precision;

/// A hitter against some pitches, ready to be asked about any mix of them.
#[derive(Debug, Clone)]
pub struct Facing {
    hitter: Hitter,
    side: Side,
    habits: Vec<PitchLaw>,
    points: Arc<[[f64; FEATURES]]>,
    rows: Vec<Row>,
}

/// All that can be worked out about one pitch thrown at one target before the mix is known.
#[derive(Debug, Clone)]
pub struct Row {
    seen: Arc<[Sight]>,
    /// For each pitch it might be, by sight.
    might_be: Vec<Arc<[MightBe]>>,
}

/// One sight of a pitch.
#[derive(Debug, Clone, Copy)]
struct Sight {
    features: [f64; FEATURES],
    own_log_density: f64,
    /// What the pitch will do.
    truth: Prediction,
    precision: Precision,
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
}

impl Facing {
    /// A `hitter` on `side` against `pitches`, each its law about its target and its habit, judged
    /// on `points`.
    pub fn new(pitches: &[(PitchLaw, PitchLaw)], hitter: &Hitter, side: Side, points: &[[f64; FEATURES]]) -> Self {
        let empty = Self { hitter: *hitter, side, habits: Vec::new(), points: points.into(), rows: Vec::new() };
        pitches.iter().fold(empty, |facing, (law, habit)| facing.with(law, habit))
    }

    /// The same with one more pitch, last.
    #[must_use]
    pub fn with(&self, law: &PitchLaw, habit: &PitchLaw) -> Self {
        let mut more = self.clone();
        more.habits.push(habit.clone());
        for row in &mut more.rows {
            row.might_be.push(explained_by(habit, &row.seen));
        }
        more.rows.push(more.row(law));
        more
    }

    /// Aims pitch `index` as `row` has it; its habit stays.
    pub fn aim(&mut self, index: usize, row: Row) {
        self.rows[index] = row;
    }

    /// The row of one of these pitches thrown by `law`.
    pub fn row(&self, law: &PitchLaw) -> Row {
        let sight = |point: &[f64; FEATURES]| {
            let features = law.sight(point);
            let (own_log_density, truth) = law.explain(&features);
            Sight { features, own_log_density, truth, precision: self.precision(law, &truth) }
        };
        let seen: Arc<[Sight]> = self.points.iter().map(sight).collect();
        let might_be = self.habits.iter().map(|habit| explained_by(habit, &seen)).collect();
        Row { seen, might_be }
    }

    /// What stays uncertain after seeing, plus the hands' own noise where the ball will be. The
    /// bat's turn ties the arrival error to the distance along the bat.
    fn precision(&self, law: &PitchLaw, ball: &Prediction) -> Precision {
        let bat = &self.hitter.bat;
        let turn = bat.turn * self.side.away_sign();
        let left = &law.left;
        let arrival = left[2][2] + 2.0 * turn * left[0][2] + turn * turn * left[0][0];
        let hands = bat.hands_at(ball.x, ball.z);
        let with_hands = |variance: f64, sd: f64| 1.0 / (variance.max(0.0) + sd * sd).sqrt();
        Precision {
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
        let rates: Vec<Rates> = self.rows.iter().map(|row| self.rates_of(row, mix)).collect();
        let pitch_runs: Vec<f64> = rates.iter().map(|rates| rates.runs(&self.hitter.runs)).collect();
        let runs = mix.iter().zip(&pitch_runs).map(|(share, runs)| share * runs).sum();
        Expected { rates, pitch_runs, runs }
    }

    /// Expected runs of the pitch of `row` when the hitter expects `mix`. What the other pitches bring
    /// does not depend on where this one is aimed, so this is all that choosing a target needs.
    pub fn runs_of(&self, row: &Row, mix: &[f64]) -> f64 {
        self.rates_of(row, mix).runs(&self.hitter.runs)
    }

    fn rates_of(&self, row: &Row, mix: &[f64]) -> Rates {
        let weight = 1.0 / self.points.len() as f64;
        let mut rates = Rates::default();
        for (s, sight) in row.seen.iter().enumerate() {
            let believed = Belief::of(row.explanations(s), mix);
            rates.add(&self.at_bat(sight, &believed.prediction).rates, weight);
        }
        rates
    }

    /// Expected runs of a pitch drawn from `mix` when the hitter knows it, and their derivative in
    /// each share (he adapts his belief to the mix).
    pub fn runs_and_slopes(&self, mix: &[f64]) -> (f64, Vec<f64>) {
        let mut slopes = vec![0.0; mix.len()];
        let mut runs = 0.0;
        for (pitch, row) in self.rows.iter().enumerate() {
            let own = self.add_slopes(row, mix, mix[pitch], &mut slopes);
            slopes[pitch] += own;
            runs += mix[pitch] * own;
        }
        (runs, slopes)
    }

    /// Expected runs of the pitch of `row`, thrown with this `share`; adds what the hitter's belief
    /// about it changes to `slopes`.
    fn add_slopes(&self, row: &Row, mix: &[f64], share: f64, slopes: &mut [f64]) -> f64 {
        let weight = 1.0 / self.points.len() as f64;
        let mut runs = 0.0;
        for (s, sight) in row.seen.iter().enumerate() {
            let believed = Belief::of(row.explanations(s), mix);
            let moment = self.at_bat(sight, &believed.prediction);
            runs += weight * moment.runs;
            // d π_j / d m_k moves the prediction by L_k / Z times (prediction of k - prediction).
            let pull = share * weight / believed.total;
            let here = moment.along(&believed.prediction);
            for (slope, other) in slopes.iter_mut().zip(row.explanations(s)) {
                *slope += pull * other.likelihood * (moment.along(&other.prediction) - here);
            }
        }
        runs
    }

    /// What comes of one sight when the hitter expects `guess`.
    #[expect(clippy::inline_always, reason = "callers that need no slopes must not pay for them")]
    #[inline(always)]
    fn at_bat(&self, sight: &Sight, guess: &Prediction) -> Moment {
        let Sight { truth, precision, .. } = sight;
        let Hitter { choice, bat, runs, .. } = &self.hitter;
        let (swing, swing_slope) = choice.chance_and_slope(guess.strike);
        let away_sign = self.side.away_sign();
        let height = truth.z - guess.z;
        let away = (truth.x - guess.x) * away_sign;
        let arrival = truth.time - guess.time + bat.turn * away;
        let contact = bat.contact(height, away, arrival, precision);
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
        Moment { rates, runs: swing * swing_runs + (1.0 - swing) * take_runs, slope }
    }
}

/// Outcomes of one sight, their runs, and the derivative of these in the predicted x, z, time and
/// strike.
struct Moment {
    rates: Rates,
    runs: f64,
    slope: [f64; 4],
}

impl Moment {
    /// The slope times a prediction.
    #[inline]
    fn along(&self, p: &Prediction) -> f64 {
        self.slope[0] * p.x + self.slope[1] * p.z + self.slope[2] * p.time + self.slope[3] * p.strike
    }
}

impl Row {
    /// What sight `s` might be, by pitch.
    #[inline]
    fn explanations(&self, s: usize) -> impl Iterator<Item = &MightBe> {
        self.might_be.iter().map(move |column| &column[s])
    }
}

/// How well `habit` explains each sight, and what it would do.
fn explained_by(habit: &PitchLaw, seen: &[Sight]) -> Arc<[MightBe]> {
    seen.iter().map(|sight| MightBe::new(habit, sight)).collect()
}

impl MightBe {
    fn new(habit: &PitchLaw, sight: &Sight) -> Self {
        // Held so that a very odd sight can neither overflow nor leave nothing to believe.
        let (log_density, prediction) = habit.explain(&sight.features);
        Self { likelihood: (log_density - sight.own_log_density).clamp(-300.0, 300.0).exp(), prediction }
    }
}

/// What the hitter expects after weighing every explanation by the mix.
struct Belief {
    total: f64,
    prediction: Prediction,
}

impl Belief {
    #[inline]
    fn of<'r>(explanations: impl Iterator<Item = &'r MightBe>, mix: &[f64]) -> Self {
        let (mut total, mut x, mut z, mut time, mut strike) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (other, &share) in explanations.zip(mix) {
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

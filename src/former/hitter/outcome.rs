//! What can happen to a pitch, and what it is worth.

/// Chances of each outcome of one pitch; they sum to one.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rates {
    /// Taken outside the zone.
    pub ball: f64,
    /// Taken in the zone.
    pub called_strike: f64,
    /// Swung at and missed.
    pub swing_and_miss: f64,
    /// Hit, but not well.
    pub weak_contact: f64,
    /// Hit well.
    pub solid_contact: f64,
}

impl Rates {
    /// Not swung at.
    pub fn take(self) -> f64 {
        self.ball + self.called_strike
    }

    /// Swung at.
    pub fn swing(self) -> f64 {
        1.0 - self.take()
    }

    /// Misses among swings.
    pub fn miss_per_swing(self) -> f64 {
        self.swing_and_miss / self.swing().max(f64::MIN_POSITIVE)
    }

    /// Expected runs.
    pub fn runs(self, values: &RunValues) -> f64 {
        self.ball * values.ball
            + (self.called_strike + self.swing_and_miss) * values.strike
            + self.weak_contact * values.weak_contact
            + self.solid_contact * values.solid_contact
    }

    /// Each rate scaled by `factor` and added to `self`.
    pub(super) fn add(&mut self, other: &Self, factor: f64) {
        self.ball += factor * other.ball;
        self.called_strike += factor * other.called_strike;
        self.swing_and_miss += factor * other.swing_and_miss;
        self.weak_contact += factor * other.weak_contact;
        self.solid_contact += factor * other.solid_contact;
    }
}

/// Runs gained by the hitting side from one pitch, averaged over counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunValues {
    /// A ball.
    pub ball: f64,
    /// A strike, called or missed.
    pub strike: f64,
    /// Weak contact: as many fouls as soft balls in play.
    pub weak_contact: f64,
    /// Solid contact: one foul for four hard balls in play.
    pub solid_contact: f64,
}

/// Linear weights at four runs a game (DEVELOPERS.md, Sources 5): single .448, double .725,
/// home run 1.384, walk .295, strikeout -.256. An out in play counts as a strikeout.
const SINGLE: f64 = 0.448;
const DOUBLE: f64 = 0.725;
const HOME_RUN: f64 = 1.384;
const WALK: f64 = 0.295;
const OUT: f64 = -0.256;

/// A soft ball in play: one in five falls for a single. Start value, no published source.
const SOFT_IN_PLAY: f64 = 0.20 * SINGLE + 0.80 * OUT;
/// A hard ball in play: .35 single, .15 double, .09 home run. Start value, no published source.
const HARD_IN_PLAY: f64 = 0.35 * SINGLE + 0.15 * DOUBLE + 0.09 * HOME_RUN + 0.41 * OUT;
/// Share of balls in play that are hard, so that a plate appearance is worth about nothing.
const HARD_SHARE: f64 = 0.41;

impl RunValues {
    /// Averages over a count chain.
    ///
    /// With fixed chances of ball, strike, foul and ball in play, the value of each of the twelve
    /// counts follows backward from the linear weights, and how often each is visited follows
    /// forward from 0-0. A ball or strike is worth the change in count value, averaged over visits.
    /// The chances are rounded from the teaching data under `tests/data`. Checked in the tests
    /// against published values at 0-0 and 3-2 that were not used.
    pub fn published() -> Self {
        let counts = CountChain::solve();
        let mean = counts.averages();
        Self {
            ball: mean.ball,
            strike: mean.strike,
            weak_contact: 0.5 * mean.foul + 0.5 * (SOFT_IN_PLAY - mean.count),
            solid_contact: 0.2 * mean.foul + 0.8 * (HARD_IN_PLAY - mean.count),
        }
    }
}

const P_BALL: f64 = 0.36;
const P_STRIKE: f64 = 0.28;
const P_FOUL: f64 = 0.18;
const P_IN_PLAY: f64 = 0.18;

/// Values and visits of the counts, `[balls][strikes]`.
struct CountChain {
    value: [[f64; 3]; 4],
    visits: [[f64; 3]; 4],
}

/// Changes averaged over visits.
struct Averages {
    ball: f64,
    strike: f64,
    foul: f64,
    count: f64,
}

impl CountChain {
    fn solve() -> Self {
        let in_play = HARD_SHARE * HARD_IN_PLAY + (1.0 - HARD_SHARE) * SOFT_IN_PLAY;
        let mut chain = Self { value: [[0.0; 3]; 4], visits: [[0.0; 3]; 4] };
        for balls in (0..4).rev() {
            for strikes in (0..3).rev() {
                let after_ball = chain.after_ball(balls, strikes);
                let after_strike = chain.after_strike(balls, strikes);
                let sum = P_BALL * after_ball + P_STRIKE * after_strike + P_IN_PLAY * in_play;
                // A foul with two strikes leaves the count as it is.
                chain.value[balls][strikes] =
                    if strikes == 2 { sum / (1.0 - P_FOUL) } else { sum + P_FOUL * after_strike };
            }
        }
        chain.visits[0][0] = 1.0;
        for balls in 0..4 {
            for strikes in 0..3 {
                if strikes == 2 {
                    chain.visits[balls][strikes] /= 1.0 - P_FOUL;
                }
                let here = chain.visits[balls][strikes];
                if balls < 3 {
                    chain.visits[balls + 1][strikes] += here * P_BALL;
                }
                if strikes < 2 {
                    chain.visits[balls][strikes + 1] += here * (P_STRIKE + P_FOUL);
                }
            }
        }
        chain
    }

    fn after_ball(&self, balls: usize, strikes: usize) -> f64 {
        if balls == 3 { WALK } else { self.value[balls + 1][strikes] }
    }

    fn after_strike(&self, balls: usize, strikes: usize) -> f64 {
        if strikes == 2 { OUT } else { self.value[balls][strikes + 1] }
    }

    fn averages(&self) -> Averages {
        let mut sum = Averages { ball: 0.0, strike: 0.0, foul: 0.0, count: 0.0 };
        let total: f64 = self.visits.iter().flatten().sum();
        for balls in 0..4 {
            for strikes in 0..3 {
                let share = self.visits[balls][strikes] / total;
                let value = self.value[balls][strikes];
                let strike = self.after_strike(balls, strikes) - value;
                sum.ball += share * (self.after_ball(balls, strikes) - value);
                sum.strike += share * strike;
                sum.foul += if strikes == 2 { 0.0 } else { share * strike };
                sum.count += share * value;
            }
        }
        sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 0-0 strike -0.044, ball +0.038; 3-2 strike -0.349, ball +0.271 (Walsh 2008 via Marchi 2009).
    /// The chain ignores that pitchers and hitters change with the count, so 0.05 at 3-2.
    #[test]
    fn the_count_chain_comes_near_the_published_count_values() {
        let chain = CountChain::solve();
        let change = |balls: usize, strikes: usize| {
            let value = chain.value[balls][strikes];
            (chain.after_strike(balls, strikes) - value, chain.after_ball(balls, strikes) - value)
        };
        for (count, strike, ball, tolerance) in [((0, 0), -0.044, 0.038, 0.01), ((3, 2), -0.349, 0.271, 0.05)] {
            let (found_strike, found_ball) = change(count.0, count.1);
            assert!((found_strike - strike).abs() < tolerance, "{count:?} strike {found_strike}");
            assert!((found_ball - ball).abs() < tolerance, "{count:?} ball {found_ball}");
        }
        assert!(chain.value[0][0].abs() < 0.01, "an average plate appearance is worth about nothing");
    }

    #[test]
    fn outcomes_are_ordered_as_every_coach_orders_them() {
        let runs = RunValues::published();
        assert!(runs.strike < runs.weak_contact && runs.weak_contact < 0.0);
        assert!(0.0 < runs.ball && runs.ball < runs.solid_contact);
    }
}

//! Fitting groups and the zero of each day together.
//!
//! Model: throw i of day d and group k measures `x = a_d + b_d y`, y normal about
//! the group's mean.
//! Ordinary days have b = 1 and a small `a` (a unit set up anew, other air), normal with a spread
//! that is learned. Days that [`super::zero`] found elsewhere have a free `a`, and a free `b` too,
//! for a unit that measures over another distance also stretches movement. Expectation and
//! maximisation alternate: chances of each group, then groups, then days by weighted least squares.
//! Days elsewhere learn from the groups and never teach them: a corrected number cannot vouch for
//! itself. Speed is never corrected: a zero of movement says nothing about it.

use super::mixture::{Look, MOST_GROUPS, Mixture, Moments};

/// Rounds at most, and the change (in) of any day's zero that ends them.
const ROUNDS: usize = 40;
const STILL_IN: f64 = 0.01;
/// What is thought of the spread of ordinary days before seeing them: 1 in, worth four days.
const PRIOR_DAY_SD: f64 = 1.0;
const PRIOR_DAYS: f64 = 4.0;
/// How far from 1 the stretch of a day elsewhere is thought to be.
const STRETCH_SD: f64 = 0.3;

/// A zero this far from the others' is another zero, inches: more than an ordinary set-up gives.
pub(super) const FAR_IN: f64 = 6.0;

/// How one day's movement was measured, for (vertical, glove side).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct DayZero {
    /// Inches to take away, before dividing by the stretch.
    pub(super) offset: [f64; 2],
    /// Measured inches per inch.
    pub(super) stretch: [f64; 2],
    /// Whether the day was found elsewhere.
    pub(super) elsewhere: bool,
}

impl DayZero {
    pub(super) fn guessed(offset: [f64; 2]) -> Self {
        Self { offset, stretch: [1.0; 2], elsewhere: offset.iter().any(|a| *a != 0.0) }
    }

    /// The throw as the common zero would have measured it.
    #[inline]
    pub(super) fn corrected(&self, look: &Look) -> Look {
        [look[0], self.on_axis(0, look[1]), self.on_axis(1, look[2])]
    }

    #[inline]
    fn on_axis(&self, axis: usize, x: f64) -> f64 {
        (x - self.offset[axis]) / self.stretch[axis]
    }
}

/// Throws to fit: what was measured, and on which day.
pub(super) type Sample = [(Look, u16)];

/// A mixture with the days' zeros that go with it.
#[derive(Debug, Clone)]
pub(super) struct Fit {
    pub(super) mixture: Mixture,
    pub(super) days: Vec<DayZero>,
    /// Day-to-day standard deviation of the zero, ordinary days, (vertical, glove side), inches.
    pub(super) day_sd: [f64; 2],
}

/// Improves mixture and days together until the days stand still.
pub(super) fn polish(sample: &Sample, start: Mixture, days: Vec<DayZero>) -> Fit {
    let mut fit = Fit { mixture: start, days, day_sd: [PRIOR_DAY_SD; 2] };
    for _ in 0..ROUNDS {
        let (moments, lines) = expectation(sample, &fit);
        let moved = fit.maximise(&moments, &lines);
        if moved < STILL_IN {
            break;
        }
    }
    fit.mixture = fit.mixture.hardest_first();
    fit
}

type DayLines = Vec<[Line; 2]>;

fn expectation(sample: &Sample, fit: &Fit) -> ([Moments; MOST_GROUPS], DayLines) {
    let mut moments = [Moments::default(); MOST_GROUPS];
    let mut lines = vec![[Line::default(); 2]; fit.days.len()];
    for (look, day) in sample {
        let corrected = fit.days[usize::from(*day)].corrected(look);
        let chances = fit.mixture.membership(&corrected).chances;
        let teaches = !fit.days[usize::from(*day)].elsewhere;
        for (k, part) in fit.mixture.parts.iter().enumerate().filter(|(k, _)| chances[*k] > 1e-6) {
            if teaches {
                moments[k].add(&std::array::from_fn(|d| corrected[d] - part.mean[d]), chances[k]);
            }
            for (axis, line) in lines[usize::from(*day)].iter_mut().enumerate() {
                let weight = chances[k] / part.covariance[axis + 1][axis + 1];
                line.add(part.mean[axis + 1], look[axis + 1], weight);
            }
        }
    }
    (moments, lines)
}

impl Fit {
    /// New groups and days; how far the days moved, inches.
    fn maximise(&mut self, moments: &[Moments; MOST_GROUPS], lines: &DayLines) -> f64 {
        let total = moments.iter().map(|moments| moments.weight).sum::<f64>().max(1.0);
        for (part, moments) in self.mixture.parts.iter_mut().zip(moments) {
            *part = moments.part(&part.mean, total);
        }
        let before = self.days.clone();
        for axis in 0..2 {
            self.set_days(axis, lines);
            self.recentre(axis, lines);
            self.day_sd[axis] = self.spread_of_days(axis);
        }
        let moved = |(a, b): (&DayZero, &DayZero)| {
            (0..2).map(|axis| (a.offset[axis] - b.offset[axis]).abs()).fold(0.0, f64::max)
        };
        before.iter().zip(&self.days).map(moved).fold(0.0, f64::max)
    }

    fn set_days(&mut self, axis: usize, lines: &DayLines) {
        let pull = 1.0 / (self.day_sd[axis] * self.day_sd[axis]);
        for (day, line) in self.days.iter_mut().zip(lines) {
            if day.elsewhere {
                (day.offset[axis], day.stretch[axis]) = line[axis].offset_and_stretch();
            } else {
                day.offset[axis] = line[axis].offset(pull);
            }
        }
    }

    /// The ordinary days together define the zero: the mean of those near their middle one.
    fn recentre(&mut self, axis: usize, lines: &DayLines) {
        let days = self.days.iter().zip(lines).filter(|(day, _)| !day.elsewhere);
        let mut ordinary: Vec<(f64, f64)> = days.map(|(day, line)| (day.offset[axis], line[axis].weight)).collect();
        let middle = weighted_median(&mut ordinary);
        let near = || ordinary.iter().filter(|(offset, _)| (offset - middle).abs() <= FAR_IN / 2.0);
        let weight: f64 = near().map(|(_, weight)| weight).sum();
        let sum: f64 = near().map(|(offset, weight)| offset * weight).sum();
        let zero = if weight > 0.0 { sum / weight } else { middle };
        self.days.iter_mut().filter(|day| !day.elsewhere).for_each(|day| day.offset[axis] -= zero);
    }

    /// Days that turned out far from the others are elsewhere from here on.
    pub(super) fn part_far_days(&mut self) {
        for day in &mut self.days {
            day.elsewhere |= day.offset.iter().any(|offset| offset.abs() > FAR_IN);
        }
    }

    fn spread_of_days(&self, axis: usize) -> f64 {
        let squares: Vec<f64> =
            self.days.iter().filter(|day| !day.elsewhere).map(|day| day.offset[axis].powi(2)).collect();
        let prior = PRIOR_DAYS * PRIOR_DAY_SD * PRIOR_DAY_SD;
        ((prior + squares.iter().sum::<f64>()) / (PRIOR_DAYS + squares.len() as f64)).sqrt()
    }
}

/// The value half of the weight lies below; zero when there is nothing.
fn weighted_median(values: &mut [(f64, f64)]) -> f64 {
    values.sort_by(|a, b| a.0.total_cmp(&b.0));
    let half = values.iter().map(|(_, weight)| weight).sum::<f64>() / 2.0;
    let mut below = 0.0;
    let at_middle = |(_, weight): &&(f64, f64)| {
        below += weight;
        below >= half
    };
    values.iter().find(at_middle).map_or(0.0, |(value, _)| *value)
}

/// Sums of a weighted straight line from the groups' means to what a day measured.
#[derive(Debug, Clone, Copy, Default)]
struct Line {
    weight: f64,
    mean: f64,
    measured: f64,
    mean_squared: f64,
    product: f64,
}

impl Line {
    fn add(&mut self, mean: f64, measured: f64, weight: f64) {
        self.weight += weight;
        self.mean += weight * mean;
        self.measured += weight * measured;
        self.mean_squared += weight * mean * mean;
        self.product += weight * mean * measured;
    }

    /// The shift, held toward none with weight `pull`.
    fn offset(&self, pull: f64) -> f64 {
        (self.measured - self.mean) / (self.weight + pull)
    }

    /// Free offset and a stretch held loosely toward 1.
    fn offset_and_stretch(&self) -> (f64, f64) {
        if self.weight <= 0.0 {
            return (0.0, 1.0);
        }
        let (mean, measured) = (self.mean / self.weight, self.measured / self.weight);
        let pull = 1.0 / (STRETCH_SD * STRETCH_SD);
        let spread = self.mean_squared - self.weight * mean * mean;
        let joint = self.product - self.weight * mean * measured;
        let stretch = ((joint + pull) / (spread + pull)).clamp(0.25, 4.0);
        (measured - stretch * mean, stretch)
    }
}

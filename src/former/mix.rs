//! The best mix of pitches when the hitter knows the mix.
//!
//! Minimises expected runs per pitch over the shares of the pitches by mirror descent
//! (exponentiated gradient) with exact gradients: multiply each share by exp(-step × slope), bring
//! the result back inside the bounds by the nearest point in relative entropy, keep the move if it
//! lowers the runs, and take the next step from how the slopes changed on the way. The optimality gap reported is the
//! Frank-Wolfe gap: the most that any allowed mix could gain if the slopes held all the way.
//! Reference: A. Beck and M. Teboulle, Oper. Res. Lett. 31 (2003) 167, from memory.
//!
//! The objective bends (the hitter's belief reacts to the mix), so there may be several local
//! answers: the best of several starts is kept.

/// Bounds on a mix.
#[derive(Debug, Clone, PartialEq)]
pub struct Bounds {
    /// Largest share of each pitch.
    pub caps: Vec<f64>,
    /// Which pitches count as fastballs, and the least they take together.
    pub fastballs: Group,
    /// Which pitches count as breaking balls, and the most they take together.
    pub breaking: Group,
}

/// Pitches bounded together.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// Membership by pitch.
    pub members: Vec<bool>,
    /// The bound on their summed share.
    pub bound: f64,
}

impl Group {
    fn total(&self, mix: &[f64]) -> f64 {
        mix.iter().zip(&self.members).filter(|(_, member)| **member).map(|(share, _)| share).sum()
    }
}

impl Bounds {
    /// No bounds beyond being a mix of `count` pitches.
    pub fn free(count: usize) -> Self {
        let nobody = vec![false; count];
        Self {
            caps: vec![1.0; count],
            fastballs: Group { members: nobody.clone(), bound: 0.0 },
            breaking: Group { members: nobody, bound: 1.0 },
        }
    }

    /// The allowed mix with the lowest sum of share × slope.
    ///
    /// The fastball floor is filled first, cheapest fastball first; the rest goes to whatever is
    /// cheapest within its caps. An exchange argument shows that this greedy filling is optimal.
    pub fn cheapest(&self, slopes: &[f64]) -> Vec<f64> {
        let mut order: Vec<usize> = (0..slopes.len()).collect();
        order.sort_by(|&a, &b| slopes[a].total_cmp(&slopes[b]));
        let mut mix = vec![0.0; slopes.len()];
        let fastballs_first = order.iter().filter(|&&pitch| self.fastballs.members[pitch]);
        fill(&mut mix, fastballs_first, self.fastballs.bound, |_, pitch| self.caps[pitch]);
        let left = 1.0 - mix.iter().sum::<f64>();
        fill(&mut mix, order.iter(), left, |mix, pitch| {
            let room = self.caps[pitch] - mix[pitch];
            if self.breaking.members[pitch] { room.min(self.breaking.bound - self.breaking.total(mix)) } else { room }
        });
        mix
    }

    /// The allowed mix nearest to `weights`, which need not sum to one.
    pub fn nearest(&self, weights: Vec<f64>) -> Vec<f64> {
        let mut mix: Vec<f64> = weights.into_iter().map(|share| share.max(TRACE)).collect();
        self.bring_inside(&mut mix);
        mix
    }

    /// The allowed mix nearest to positive weights `mix` in relative entropy.
    ///
    /// At the nearest point every bound that binds multiplies its members by one common factor, so
    /// the factors are found in turn, each exactly given the others (coordinate ascent on the dual),
    /// until none moves any more.
    fn bring_inside(&self, mix: &mut [f64]) {
        const ROUNDS: usize = 200;
        let weights = mix.to_vec();
        let mut floor_factor = 1.0;
        let mut ceiling_factor = 1.0;
        let mut cap_factors = vec![1.0; mix.len()];
        for _ in 0..ROUNDS {
            let before = (floor_factor, ceiling_factor);
            for pitch in 0..mix.len() {
                let fastball = if self.fastballs.members[pitch] { floor_factor } else { 1.0 };
                let breaking = if self.breaking.members[pitch] { ceiling_factor } else { 1.0 };
                mix[pitch] = weights[pitch] * fastball * breaking * cap_factors[pitch];
            }
            let (inside, outside) = parts(mix, |pitch| self.fastballs.members[pitch]);
            floor_factor = factor_for(inside / floor_factor, outside, self.fastballs.bound).max(1.0);
            scale(mix, |pitch| self.fastballs.members[pitch], floor_factor / before.0);
            let (inside, outside) = parts(mix, |pitch| self.breaking.members[pitch]);
            ceiling_factor = factor_for(inside / ceiling_factor, outside, self.breaking.bound).min(1.0);
            scale(mix, |pitch| self.breaking.members[pitch], ceiling_factor / before.1);
            let mut moved = (floor_factor / before.0 - 1.0).abs().max((ceiling_factor / before.1 - 1.0).abs());
            for pitch in (0..mix.len()).filter(|&pitch| self.caps[pitch] < 1.0) {
                let (inside, outside) = parts(mix, |other| other == pitch);
                let factor = factor_for(inside / cap_factors[pitch], outside, self.caps[pitch]).min(1.0);
                moved = moved.max((factor / cap_factors[pitch] - 1.0).abs());
                mix[pitch] *= factor / cap_factors[pitch];
                cap_factors[pitch] = factor;
            }
            if moved < 1e-13 {
                break;
            }
        }
        let total: f64 = mix.iter().sum();
        for share in mix.iter_mut() {
            *share /= total;
        }
    }
}

/// Summed weights of the members and of the others.
fn parts(mix: &[f64], member: impl Fn(usize) -> bool) -> (f64, f64) {
    let inside = (0..mix.len()).filter(|&pitch| member(pitch)).map(|pitch| mix[pitch]).sum::<f64>();
    (inside, mix.iter().sum::<f64>() - inside)
}

fn scale(mix: &mut [f64], member: impl Fn(usize) -> bool, factor: f64) {
    for (_, share) in mix.iter_mut().enumerate().filter(|(pitch, _)| member(*pitch)) {
        *share *= factor;
    }
}

/// The factor that gives weights `inside` exactly the share `bound` beside weights `outside`;
/// one when there is nothing to share between.
fn factor_for(inside: f64, outside: f64, bound: f64) -> f64 {
    if inside > 0.0 && outside > 0.0 { bound.max(1e-12) * outside / ((1.0 - bound).max(1e-12) * inside) } else { 1.0 }
}

/// Pours `amount` into pitches in the given order, each up to its room.
fn fill<'a>(mix: &mut [f64], order: impl Iterator<Item = &'a usize>, amount: f64, room: impl Fn(&[f64], usize) -> f64) {
    let mut left = amount;
    for &pitch in order {
        let poured = room(mix, pitch).min(left).max(0.0);
        mix[pitch] += poured;
        left -= poured;
    }
}

/// A mix and how good it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Mix {
    /// One share a pitch, summing to one.
    pub shares: Vec<f64>,
    /// Expected runs per pitch.
    pub runs: f64,
    /// Frank-Wolfe gap, runs per pitch.
    pub gap: f64,
}

/// How hard to look.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Effort {
    /// Most moves from each start.
    pub moves: usize,
    /// Gap (runs per pitch) at which to stop.
    pub gap: f64,
}

impl Effort {
    /// For an answer that is shown: a gap of 5e-7 runs per pitch is 5e-5 per 100.
    pub const SHOWN: Self = Self { moves: 2000, gap: 5e-7 };
    /// For a first look from a start that may be far off.
    pub const FIRST_LOOK: Self = Self { moves: 7, gap: 2e-6 };
    /// For ranking shapes, from the best mix of a neighbouring shape.
    pub const RANKING: Self = Self { moves: 3, gap: 2e-6 };
}

/// The best mix found from `starts`, for an objective that returns runs per pitch and their slopes.
///
/// Every start is first followed for a few moves; only the two most promising are followed
/// to the end.
pub fn best_mix(
    objective: impl Fn(&[f64]) -> (f64, Vec<f64>),
    bounds: &Bounds,
    starts: &[Vec<f64>],
    effort: Effort,
) -> Mix {
    let quick = Effort { moves: effort.moves.min(Effort::FIRST_LOOK.moves), ..effort };
    let mut mixes: Vec<Mix> = starts.iter().map(|start| descend(&objective, bounds, start, quick)).collect();
    mixes.sort_by(|a, b| a.runs.total_cmp(&b.runs));
    if effort.moves > quick.moves {
        mixes.truncate(FINISHERS);
        mixes = mixes.into_iter().map(|mix| descend(&objective, bounds, &mix.shares, effort)).collect();
    }
    mixes.into_iter().min_by(|a, b| a.runs.total_cmp(&b.runs)).unwrap_or_else(|| Mix {
        shares: Vec::new(),
        runs: 0.0,
        gap: 0.0,
    })
}

/// Starts that are followed to the end.
const FINISHERS: usize = 2;

fn descend(objective: &impl Fn(&[f64]) -> (f64, Vec<f64>), bounds: &Bounds, start: &[f64], effort: Effort) -> Mix {
    let mut at = Point::at(objective, start.to_vec());
    let mut best = at.clone();
    let mut recent = [at.runs; MEMORY];
    let mut step = FIRST_STEP;
    for number in 1..=effort.moves {
        if at.gap(bounds) < effort.gap {
            best = at;
            break;
        }
        if number % ACROSS_EVERY == 0 {
            at = across(objective, bounds, best.clone());
        }
        step = f64::min(step, STEEPEST / range(&at.slopes));
        let moved = Point::at(objective, multiplied(bounds, &at, step));
        if moved.runs < recent.into_iter().fold(at.runs, f64::max) {
            step = spectral_step(&at, &moved).unwrap_or(step * LONGER);
            at = moved;
            recent[number % MEMORY] = at.runs;
        } else {
            step *= SHORTER;
        }
        if at.runs < best.runs {
            best = at.clone();
        }
    }
    Mix { gap: best.gap(bounds), shares: best.mix, runs: best.runs }
}

/// A move may raise the runs as long as they stay below those of one of so many moves before
/// (Grippo, Lampariello and Lucidi, SIAM J. Numer. Anal. 23 (1986) 707, from memory): the steps
/// below pay over several moves rather than at each.
const MEMORY: usize = 4;
/// The first step, in logarithms of shares per run a pitch, and its factors after a move that shows no
/// bend to go by and after one that was not made.
const FIRST_STEP: f64 = 20.0;
const LONGER: f64 = 1.6;
const SHORTER: f64 = 0.35;

/// The step at which the last move would have followed the bend of the runs: the ratio of the
/// change in log share to the change in slope, weighed by the change in share (Barzilai and
/// Borwein, IMA J. Numer. Anal. 8 (1988) 141, from memory, with the logarithm as the mirror).
/// Nothing where the runs do not bend upward.
fn spectral_step(from: &Point, to: &Point) -> Option<f64> {
    let (mut moved, mut bent) = (0.0, 0.0);
    for pitch in 0..from.mix.len() {
        let change = to.mix[pitch] - from.mix[pitch];
        moved += change * (to.mix[pitch].max(TRACE) / from.mix[pitch].max(TRACE)).ln();
        bent += change * (to.slopes[pitch] - from.slopes[pitch]);
    }
    (bent > 0.0 && moved > 0.0).then(|| moved / bent)
}

/// Moves between two steps across: multiplying brings a pitch back from next to nothing only slowly
/// when it is hardly better than the others.
const ACROSS_EVERY: usize = 20;

/// A Frank-Wolfe step: straight toward the allowed mix that the slopes like best, as far as it
/// pays, found by halving.
fn across(objective: &impl Fn(&[f64]) -> (f64, Vec<f64>), bounds: &Bounds, at: Point) -> Point {
    const HALVINGS: i32 = 14;
    let target = bounds.cheapest(&at.slopes);
    (1..=HALVINGS)
        .map(|halvings| 0.5_f64.powi(halvings))
        .map(|part| Point::at(objective, at.mix.iter().zip(&target).map(|(a, b)| a + part * (b - a)).collect()))
        .find(|moved| moved.runs < at.runs)
        .unwrap_or(at)
}

/// A mix with its runs and slopes.
#[derive(Clone)]
struct Point {
    mix: Vec<f64>,
    runs: f64,
    slopes: Vec<f64>,
}

impl Point {
    fn at(objective: &impl Fn(&[f64]) -> (f64, Vec<f64>), mix: Vec<f64>) -> Self {
        let (runs, slopes) = objective(&mix);
        Self { mix, runs, slopes }
    }

    /// The most any allowed mix could gain if the slopes held all the way.
    fn gap(&self, bounds: &Bounds) -> f64 {
        let target = bounds.cheapest(&self.slopes);
        self.mix.iter().zip(&target).zip(&self.slopes).map(|((share, other), slope)| slope * (share - other)).sum()
    }
}

/// The smallest share a move leaves, so that a pitch can come back; it costs less than is shown.
const TRACE: f64 = 1e-9;
/// The most one move multiplies two shares apart, as an exponent. Steeper moves would drown the
/// differences between pitches that a bound holds back.
const STEEPEST: f64 = 30.0;

fn range(slopes: &[f64]) -> f64 {
    let (low, high) = slopes.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), &s| (l.min(s), h.max(s)));
    (high - low).max(f64::MIN_POSITIVE)
}

/// Each share times exp(-step × slope), brought back inside the bounds.
fn multiplied(bounds: &Bounds, at: &Point, step: f64) -> Vec<f64> {
    let lowest = at.slopes.iter().copied().fold(f64::INFINITY, f64::min);
    let factor = |slope: f64| (-step * (slope - lowest)).exp();
    let weights: Vec<f64> =
        at.mix.iter().zip(&at.slopes).map(|(share, &slope)| share.max(TRACE) * factor(slope)).collect();
    bounds.nearest(weights)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Runs = Σ `a_i m_i²` has its minimum at shares proportional to `1 / a_i` (Lagrange), here 6/11,
    /// 3/11, 2/11.
    #[test]
    fn a_separable_problem_has_its_hand_worked_answer() {
        let weights = [1.0, 2.0, 3.0];
        let objective = |mix: &[f64]| -> (f64, Vec<f64>) {
            let runs: f64 = mix.iter().zip(weights).map(|(m, a)| a * m * m).sum();
            (runs, mix.iter().zip(weights).map(|(m, a)| 2.0 * a * m).collect())
        };
        let effort = Effort { moves: 2000, gap: 1e-10 };
        let mix = best_mix(objective, &Bounds::free(3), &[vec![1.0 / 3.0; 3]], effort);
        for (share, expected) in mix.shares.iter().zip([6.0, 3.0, 2.0]) {
            assert!((share - expected / 11.0).abs() < 1e-4, "{mix:?}");
        }
        assert!((mix.shares.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    }

    fn bounds() -> Bounds {
        Bounds {
            caps: vec![1.0, 1.0, 0.2, 1.0],
            fastballs: Group { members: vec![true, false, false, false], bound: 0.4 },
            breaking: Group { members: vec![false, true, true, false], bound: 0.5 },
        }
    }

    #[test]
    fn the_cheapest_mix_fills_the_floor_then_the_best_room() {
        let close = |found: Vec<f64>, expected: [f64; 4]| {
            assert!(found.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-12), "{found:?}");
        };
        close(bounds().cheapest(&[3.0, 2.0, 1.0, 4.0]), [0.5, 0.3, 0.2, 0.0]);
        close(bounds().cheapest(&[9.0, 2.0, 1.0, 4.0]), [0.4, 0.3, 0.2, 0.1]);
    }

    /// With runs = Σ (`a_i m_i²` + `b_i m_i`) and these bounds, the cap on the third pitch (0.2) and the ceiling on
    /// breaking balls (0.5) do not bind together with the floor; the gap says whether it is the best.
    #[test]
    fn binding_bounds_do_not_stop_the_descent_short_of_the_best() {
        let (squares, slopes) = ([1.0, 2.0, 0.5, 0.3], [0.5, 1.0, -0.3, -0.8]);
        let objective = |mix: &[f64]| -> (f64, Vec<f64>) {
            let terms = || mix.iter().zip(squares.iter().zip(slopes));
            (terms().map(|(m, (a, b))| a * m * m + b * m).sum(), terms().map(|(m, (a, b))| 2.0 * a * m + b).collect())
        };
        let start = bounds().nearest(vec![0.25; 4]);
        let mix = best_mix(objective, &bounds(), &[start], Effort { moves: 200, gap: 1e-10 });
        assert!(mix.gap < 1e-8, "{mix:?}");
    }

    #[test]
    fn bounds_hold_after_every_move() {
        let mut mix = vec![0.01, 0.5, 0.4, 0.09];
        bounds().bring_inside(&mut mix);
        assert!((mix.iter().sum::<f64>() - 1.0).abs() < 1e-9);
        assert!(mix[0] >= 0.4 - 1e-9 && mix[2] <= 0.2 + 1e-9 && mix[1] + mix[2] <= 0.5 + 1e-9, "{mix:?}");
    }
}

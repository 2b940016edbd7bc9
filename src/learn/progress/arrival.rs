//! The new pitch itself: is the shape in the window, did it stay there, does it go where it should.
//!
//! Shape is judged on two neighbouring outings together, so that one good day is no arrival. Command
//! is the scatter about each outing's own middle: where several targets were called on one day it
//! reads too wide.

use crate::athlete::session::Throw;
use crate::base::Range;
use crate::base::stats::{Count, Estimate, Sample, sd_estimate, share_estimate};
use crate::learn::target::Target;

use super::outings::Outing;

/// One outing of the new pitch.
#[derive(Debug, Clone, PartialEq)]
pub struct OutingShape {
    /// Throws of it.
    pub throws: u32,
    /// Mean speed, vertical break, glove-side break; nothing from fewer than two throws.
    pub shape: [Option<Estimate>; 3],
    /// Share of throws in the window; nothing when it was not thrown.
    pub share_in_window: Option<Estimate>,
    /// Scatter at the plate (root mean square of side and height), in; nothing when not measured.
    pub command_in: Option<Estimate>,
}

/// The new pitch over all outings.
#[derive(Debug, Clone, PartialEq)]
pub struct NewPitch {
    /// Outing by outing.
    pub by_outing: Vec<OutingShape>,
    /// Where its shape stands.
    pub state: ShapeState,
    /// Share of the throws of its last two outings in the window.
    pub share_now: Option<Estimate>,
    /// Mean speed, vertical break and glove-side break over its last two outings.
    pub shape_now: Option<[Estimate; 3]>,
    /// Scatter at the plate in the first and in the last third of its outings, in.
    pub command: Option<(Estimate, Estimate)>,
}

/// Where the new pitch's shape stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShapeState {
    /// Not thrown in two outings yet.
    Unknown,
    /// Not in the window yet.
    OnTheWay,
    /// In the window over the last two outings, and ever since this outing.
    Arrived {
        /// The first outing of the unbroken run.
        since: usize,
    },
    /// Was in the window and has left it.
    Drifted {
        /// Which number left: 0 speed, 1 vertical break, 2 glove-side break.
        axis: usize,
        /// Whether it is above the window.
        above: bool,
    },
}

/// Standard deviation from day to day: mph, in, in. Common practice, no published source.
const DAY_SD: [f64; 3] = [0.5, 0.7, 0.7];
/// Fewest throws in two outings for a judgement.
const LEAST_THROWS: u32 = 8;
/// Fewest outings with places at the plate for a judgement of command.
const LEAST_OUTINGS: usize = 4;

impl NewPitch {
    pub(super) fn of(outings: &[Outing], target: &Target) -> Self {
        let thrown: Vec<usize> = (0..outings.len()).filter(|&i| !outings[i].new_pitches.is_empty()).collect();
        let pairs: Vec<Pair> = thrown.windows(2).map(|two| Pair::of(outings, two[0], two[1], target)).collect();
        Self {
            by_outing: outings.iter().map(|outing| OutingShape::of(&outing.new_pitches, target)).collect(),
            state: state(&pairs, target),
            share_now: pairs.last().and_then(|pair| pair.share),
            shape_now: pairs.last().map(|pair| pair.shape),
            command: command(outings, &thrown),
        }
    }
}

impl OutingShape {
    fn of(throws: &[Throw], target: &Target) -> Self {
        let shape = std::array::from_fn(|axis| {
            Sample::of(throws.iter().map(|throw| throw.shape.numbers()[axis])).mean_estimate()
        });
        Self {
            throws: u32::try_from(throws.len()).unwrap_or(u32::MAX),
            shape,
            share_in_window: share(throws.iter(), target),
            command_in: scatter([throws]),
        }
    }
}

fn share<'t>(throws: impl Iterator<Item = &'t Throw>, target: &Target) -> Option<Estimate> {
    let mut seen = Count::default();
    for throw in throws {
        seen.tries += 1;
        seen.hits += u32::from(target.window.holds(throw.shape));
    }
    share_estimate(seen)
}

/// Two neighbouring outings of the new pitch taken together.
struct Pair {
    first: usize,
    throws: u32,
    shape: [Estimate; 3],
    share: Option<Estimate>,
}

impl Pair {
    fn of(outings: &[Outing], first: usize, second: usize, target: &Target) -> Self {
        let throws = || outings[first].new_pitches.iter().chain(&outings[second].new_pitches);
        let count = u32::try_from(throws().count()).unwrap_or(u32::MAX);
        let shape = std::array::from_fn(|axis| {
            let sample = Sample::of(throws().map(|throw| throw.shape.numbers()[axis]));
            let sd = sample.sd().unwrap_or(0.0).max(0.5 * target.scatter()[axis]);
            let variance = sd * sd / f64::from(count.max(1)) + DAY_SD[axis].powi(2) / 2.0;
            Estimate::from_sd(sample.mean, variance.sqrt())
        });
        Self { first, throws: count, shape, share: share(throws(), target) }
    }

    fn is_in(&self, target: &Target) -> bool {
        let inside = |(estimate, range): (&Estimate, Range)| range.holds(estimate.low) && range.holds(estimate.high);
        let enough = self.share.is_some_and(|share| share.value >= target.share_enough());
        self.throws >= LEAST_THROWS && enough && self.shape.iter().zip(target.window.ranges()).all(inside)
    }

    /// The number that has clearly left the window, farthest first.
    fn outside(&self, target: &Target) -> Option<(usize, bool)> {
        let beyond = |axis: usize| {
            let (Range { low, high }, estimate) = (target.window.ranges()[axis], self.shape[axis]);
            let far = (estimate.low - high).max(low - estimate.high) / target.scatter()[axis];
            (far > 0.0).then_some((axis, estimate.low > high, far))
        };
        let worst = (0..3).filter_map(beyond).max_by(|a, b| a.2.total_cmp(&b.2));
        worst.map(|(axis, above, _)| (axis, above))
    }
}

fn state(pairs: &[Pair], target: &Target) -> ShapeState {
    let Some(last) = pairs.last() else { return ShapeState::Unknown };
    let was_in = pairs.iter().any(|pair| pair.is_in(target));
    if let (true, Some((axis, above))) = (was_in, last.outside(target)) {
        return ShapeState::Drifted { axis, above };
    }
    let run = pairs.iter().rev().take_while(|pair| pair.is_in(target)).last();
    run.map_or(ShapeState::OnTheWay, |pair| ShapeState::Arrived { since: pair.first })
}

/// Scatter about each outing's own middle, root mean square of side and height.
fn scatter<'t>(outings: impl IntoIterator<Item = &'t [Throw]>) -> Option<Estimate> {
    let (mut squares, mut freedom) = (0.0, 0);
    for throws in outings {
        for place in [|throw: &Throw| throw.plate.side_in, |throw: &Throw| throw.plate.height_in] {
            let sample = Sample::of(throws.iter().filter_map(place));
            squares += sample.squares;
            freedom += sample.count.saturating_sub(1);
        }
    }
    (freedom >= 2).then(|| sd_estimate(squares, f64::from(freedom))).flatten()
}

fn command(outings: &[Outing], thrown: &[usize]) -> Option<(Estimate, Estimate)> {
    let placed: Vec<&[Throw]> = thrown
        .iter()
        .map(|&place| outings[place].new_pitches.as_slice())
        .filter(|throws| throws.iter().filter(|throw| throw.plate.side_in.is_some()).count() >= 2)
        .collect();
    let third = placed.len().div_ceil(3);
    let late = placed.len().checked_sub(third).filter(|_| placed.len() >= LEAST_OUTINGS)?;
    Some((scatter(placed[..third].iter().copied())?, scatter(placed[late..].iter().copied())?))
}

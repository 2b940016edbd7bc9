//! The fit of the table of natural shapes: real arms' mean shapes in, table out.
//!
//! Expectation and maximisation of a factor model by blocks (D. B. Rubin and D. T. Thayer, Psychometrika 47 (1982) 69,
//! from memory), with the noise of means over few throws inside and loads held toward zero:
//!
//! 1. Two **slot** factors: vertical break of every family, (lightly) spin, glove-side break of the two fastballs,
//!    release height, side and speed.
//! 2. One **run** factor: glove-side break of fastballs, cutter, changeup and splitter.
//! 3. Speed, glove-side break of slider, sweeper and curveball, and spin of curveball, changeup and splitter load on
//!    nothing: their means are plain means over arms with enough throws. Loads made errors on arms left out larger.
//! 4. Residual covariances between arms are held toward the one all families share.
//! 5. By regression afterwards: spin on the fastball's, a changeup's run on the fastball's push.
//!
//! Nothing here reads a file or prints.

use arsenalfit::athlete::natural::{
    ARM_SCALE, AXES, Arm, ArmBlock, Belief, Block, FACTORS, FAMILIES, Known, NaturalShapes, Reading, SCALE, Table,
    fastball_mph, place, push,
};
use arsenalfit::ball::{Family, Supination};
use arsenalfit::base::stats::{Cholesky, Matrix};

/// One real arm: its release, and every family it threw.
#[derive(Debug, Clone)]
pub(crate) struct ArmMeans {
    /// Mean release height, ft.
    pub height_ft: f64,
    /// Mean release distance to the arm side, ft.
    pub side_ft: f64,
    /// Mean shape and spin of each family thrown.
    pub pitches: Vec<Known>,
}

impl ArmMeans {
    /// The arm, its fastball to be found among its pitches.
    pub(crate) fn arm(&self) -> Arm {
        let (height_ft, side_ft) = (Some(self.height_ft), Some(self.side_ft));
        Arm { height_ft, side_ft, fastball_mph: None, supination: Supination::Ordinary }
    }
}

/// Throws from which an arm's mean counts in a plain mean over arms.
pub(crate) const ENOUGH: u32 = 5;
const ROUNDS: usize = 60;
/// Arms' worth of belief that loads are zero, by axis and factor; none where a load is not allowed.
const SLOT: f64 = 5.0;
const SLOT_SPIN: f64 = 30.0;
const RUN: f64 = 5.0;
const ARM: f64 = 2.0;
/// Arms' worth of belief that a family's residual covariance is the common one.
const COMMON_RESIDUAL: f64 = 10.0;
/// Arms' worth of belief that a regression's slope is zero.
const SLOPE: f64 = 2.0;

fn held(family: usize, axis: usize, factor: usize) -> Option<f64> {
    let is_fastball = family < 2;
    let runs = is_fastball || matches!(family, 2 | 6 | 7);
    match (axis, factor) {
        (1, 0 | 1) => Some(SLOT),
        (3, 0 | 1) => goes_with_fastball(family).then_some(SLOT_SPIN),
        (2, 0 | 1) => is_fastball.then_some(SLOT),
        (2, 2) => runs.then_some(RUN),
        _ => None,
    }
}

fn held_arm(factor: usize) -> Option<f64> {
    (factor < 2).then_some(ARM)
}

/// The table of these arms; those without a fastball are left out.
pub(crate) fn fit(arms: &[ArmMeans]) -> Table {
    let readings: Vec<Readings> = arms.iter().filter_map(Readings::of).collect();
    let plain: Plain = std::array::from_fn(|f| std::array::from_fn(|axis| plain_mean(&readings, f, axis)));
    let start = start(&plain, &readings);
    let table = (0..ROUNDS).fold(start, |table, _| round(&readings, &table, &plain));
    with_push(with_spin(turned(table), &readings), arms)
}

/// Plain means over arms with enough throws, by family and axis.
type Plain = [[f64; AXES]; FAMILIES.len()];

/// One arm in the units of the table.
struct Readings {
    arm: [f64; 3],
    families: [Option<Reading>; FAMILIES.len()],
}

impl Readings {
    fn of(arm: &ArmMeans) -> Option<Self> {
        let fastball = fastball_mph(&arm.pitches).filter(|_| arm.pitches.iter().any(|p| p.family.is_fastball()))?;
        let mut families = [None; FAMILIES.len()];
        for pitch in &arm.pitches {
            let axes = [
                Some(100.0 * pitch.shape.speed_mph / fastball),
                Some(pitch.shape.vertical_break_in),
                Some(pitch.shape.glove_side_break_in),
                pitch.spin_rpm.map(|rpm| rpm / 100.0),
            ];
            families[place(pitch.family)?] = Some(Reading { axes, throws: f64::from(pitch.throws) });
        }
        Some(Self { arm: [arm.height_ft, arm.side_ft, fastball], families })
    }

    /// How far the arm itself lies from the table's means, in units of scale.
    fn arm_away(&self, table: &Table) -> [f64; 3] {
        std::array::from_fn(|axis| (self.arm[axis] - table.arm.mean[axis]) / ARM_SCALE[axis])
    }
}

fn plain_mean(readings: &[Readings], f: usize, axis: usize) -> f64 {
    let of = |reading: &Reading| (reading.throws >= f64::from(ENOUGH)).then_some(reading.axes[axis]).flatten();
    let values: Vec<f64> = readings.iter().filter_map(|arm| of(arm.families[f].as_ref()?)).collect();
    values.iter().sum::<f64>() / values.len().max(1) as f64
}

/// Throw-to-throw standard deviations within an arm, by family: mph as % of a 94-mph fastball, in, in, 100 rpm.
/// Counted on the same day over arms with five or more throws.
const SCATTER: [[f64; AXES]; FAMILIES.len()] = [
    [1.07, 1.54, 1.89, 0.75],
    [0.96, 1.94, 1.80, 0.77],
    [1.02, 2.15, 1.78, 0.77],
    [1.17, 2.22, 2.26, 0.82],
    [1.04, 2.65, 2.61, 0.82],
    [1.17, 2.17, 2.17, 0.90],
    [1.03, 2.27, 1.75, 0.96],
    [1.05, 2.62, 2.32, 1.14],
];

/// Loads of different signs, so that the factors part; where they end does not depend on it.
fn start(plain: &Plain, readings: &[Readings]) -> Table {
    let loads = |held: &dyn Fn(usize, usize) -> Option<f64>, axis: usize| {
        std::array::from_fn(|factor| {
            held(axis, factor).map_or(0.0, |_| if (axis + factor).is_multiple_of(2) { 0.4 } else { -0.2 })
        })
    };
    let families = std::array::from_fn(|f| Block {
        arms: readings.iter().filter(|arm| arm.families[f].is_some()).count() as f64,
        mean: plain[f],
        loads: std::array::from_fn(|axis| loads(&|axis, factor| held(f, axis, factor), axis)),
        residual: diagonal(0.7),
        scatter: SCATTER[f],
        spin_slope: 0.0,
        spin_sd: 0.0,
    });
    let mean = std::array::from_fn(|axis| readings.iter().map(|a| a.arm[axis]).sum::<f64>() / readings.len() as f64);
    let arm = ArmBlock {
        mean,
        loads: std::array::from_fn(|axis| loads(&|_, factor| held_arm(factor), axis)),
        residual: diagonal(0.6),
    };
    Table { families, arm, changeup_per_push: 0.0, fastball_push: [0.0; 2] }
}

fn diagonal<const N: usize>(value: f64) -> Matrix<N, N> {
    std::array::from_fn(|row| std::array::from_fn(|column| if row == column { value } else { 0.0 }))
}

/// One expectation and one maximisation.
fn round(readings: &[Readings], table: &Table, plain: &Plain) -> Table {
    let mut arm = Sums::<3>::default();
    let mut families = [Sums::<AXES>::default(); FAMILIES.len()];
    for one in readings {
        let at = one.arm_away(table);
        let mut belief = Belief::PRIOR + Belief::evidence(&table.arm.loads, &table.arm.residual, &at.map(Some));
        for (block, reading) in table.families.iter().zip(&one.families) {
            belief = reading.iter().fold(belief, |belief, reading| belief + Belief::pitch(block, reading));
        }
        let factors = belief.factors();
        arm.add(&Truth::of(&table.arm.loads, &table.arm.residual, &diagonal(0.0), &at, &factors), &factors);
        for ((sums, block), reading) in families.iter_mut().zip(&table.families).zip(&one.families) {
            if let Some(reading) = reading {
                let (away, noise) = (away(block, reading), noise(block, reading));
                sums.add(&Truth::of(&block.loads, &block.residual, &noise, &away, &factors), &factors);
            }
        }
    }
    maximised(table, &arm, &families, plain)
}

fn away(block: &Block, reading: &Reading) -> [f64; AXES] {
    std::array::from_fn(|axis| reading.axes[axis].map_or(0.0, |y| (y - block.mean[axis]) / SCALE[axis]))
}

fn noise(block: &Block, reading: &Reading) -> Matrix<AXES, AXES> {
    let mut noise = diagonal(0.0);
    for axis in 0..AXES {
        let of_mean = (block.scatter[axis] / SCALE[axis]).powi(2) / reading.throws.max(1.0);
        noise[axis][axis] = reading.axes[axis].map_or(1e9, |_| of_mean);
    }
    noise
}

/// What is believed of one arm's true block, about the table's means: mean, covariance, covariance with the factors.
struct Truth<const N: usize> {
    mean: [f64; N],
    covariance: Matrix<N, N>,
    with_factors: Matrix<N, FACTORS>,
}

type Factors = ([f64; FACTORS], Matrix<FACTORS, FACTORS>);

impl<const N: usize> Truth<N> {
    /// With gain G = residual (residual + noise)⁻¹, given the factors: mean L z + G (y - L z), covariance residual - G
    /// residual; and the factors' own doubt through (1 - G) L.
    fn of(
        loads: &Matrix<N, FACTORS>,
        residual: &Matrix<N, N>,
        noise: &Matrix<N, N>,
        away: &[f64; N],
        (z, v): &Factors,
    ) -> Self {
        let sum: Matrix<N, N> = std::array::from_fn(|i| std::array::from_fn(|j| residual[i][j] + noise[i][j]));
        let factor = Cholesky::of(&sum);
        let gain: Matrix<N, N> = std::array::from_fn(|i| factor.solve(&residual[i]));
        let through: Matrix<N, FACTORS> = std::array::from_fn(|i| {
            std::array::from_fn(|k| loads[i][k] - (0..N).map(|j| gain[i][j] * loads[j][k]).sum::<f64>())
        });
        let with_factors = product(&through, v);
        let explained: [f64; N] = std::array::from_fn(|i| (0..FACTORS).map(|k| loads[i][k] * z[k]).sum());
        let mean =
            std::array::from_fn(|i| explained[i] + (0..N).map(|j| gain[i][j] * (away[j] - explained[j])).sum::<f64>());
        let covariance = std::array::from_fn(|i| {
            std::array::from_fn(|j| {
                let left = residual[i][j] - (0..N).map(|k| gain[i][k] * residual[k][j]).sum::<f64>();
                left + (0..FACTORS).map(|k| with_factors[i][k] * through[j][k]).sum::<f64>()
            })
        });
        Self { mean, covariance, with_factors }
    }
}

fn product<const R: usize, const K: usize, const C: usize>(a: &Matrix<R, K>, b: &Matrix<K, C>) -> Matrix<R, C> {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..K).map(|k| a[i][k] * b[k][j]).sum()))
}

/// Second moments over arms of the factors and a one, of both with the true blocks, and of these.
#[derive(Clone, Copy)]
struct Sums<const N: usize> {
    arms: f64,
    factors: Matrix<4, 4>,
    cross: Matrix<N, 4>,
    square: Matrix<N, N>,
}

impl<const N: usize> Default for Sums<N> {
    fn default() -> Self {
        Self { arms: 0.0, factors: [[0.0; 4]; 4], cross: [[0.0; 4]; N], square: [[0.0; N]; N] }
    }
}

impl<const N: usize> Sums<N> {
    fn add(&mut self, truth: &Truth<N>, (z, v): &Factors) {
        let one = [z[0], z[1], z[2], 1.0];
        for (k, row) in self.factors.iter_mut().enumerate() {
            for (l, sum) in row.iter_mut().enumerate() {
                *sum += one[k] * one[l] + if k < FACTORS && l < FACTORS { v[k][l] } else { 0.0 };
            }
        }
        for i in 0..N {
            for (k, one) in one.iter().enumerate() {
                self.cross[i][k] += truth.mean[i] * one + if k < FACTORS { truth.with_factors[i][k] } else { 0.0 };
            }
            for j in 0..N {
                self.square[i][j] += truth.mean[i] * truth.mean[j] + truth.covariance[i][j];
            }
        }
        self.arms += 1.0;
    }

    /// Loads and the shift of the mean, each axis by ridge regression on the factors it may load on; and the sum of
    /// squares that is left. A `fixed` shift belongs to an axis that loads on nothing.
    fn regression(&self, held: impl Fn(usize, usize) -> Option<f64>, fixed: &[f64; N]) -> (Matrix<N, 4>, Matrix<N, N>) {
        let slopes: Matrix<N, 4> = std::array::from_fn(|axis| {
            if (0..FACTORS).all(|factor| held(axis, factor).is_none()) {
                return [0.0, 0.0, 0.0, fixed[axis]];
            }
            let mut normal = self.factors;
            for (factor, row) in normal.iter_mut().enumerate().take(FACTORS) {
                row[factor] += held(axis, factor).unwrap_or(1e12);
            }
            Cholesky::of(&normal).solve(&self.cross[axis])
        });
        let moments = product(&slopes, &self.factors);
        let left = std::array::from_fn(|i| {
            std::array::from_fn(|j| {
                let dot = |a: &[f64; 4], b: &[f64; 4]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
                self.square[i][j] - dot(&slopes[i], &self.cross[j]) - dot(&slopes[j], &self.cross[i])
                    + dot(&moments[i], &slopes[j])
            })
        });
        (slopes, left)
    }
}

fn maximised(table: &Table, arm: &Sums<3>, families: &[Sums<AXES>; FAMILIES.len()], plain: &Plain) -> Table {
    let mut table = table.clone();
    let (slopes, left) = arm.regression(|_, factor| held_arm(factor), &[0.0; 3]);
    table.arm = ArmBlock {
        mean: std::array::from_fn(|axis| table.arm.mean[axis] + ARM_SCALE[axis] * slopes[axis][3]),
        loads: slopes.map(|[a, b, c, _]| [a, b, c]),
        residual: left.map(|row| row.map(|sum| sum / arm.arms)),
    };
    let fitted: [(Matrix<AXES, 4>, Matrix<AXES, AXES>); FAMILIES.len()] = std::array::from_fn(|f| {
        let shift = std::array::from_fn(|axis| (plain[f][axis] - table.families[f].mean[axis]) / SCALE[axis]);
        families[f].regression(|axis, factor| held(f, axis, factor), &shift)
    });
    let all: f64 = families.iter().map(|sums| sums.arms).sum();
    let common = |i: usize, j: usize| fitted.iter().map(|(_, left)| left[i][j]).sum::<f64>() / all;
    for ((block, (slopes, left)), sums) in table.families.iter_mut().zip(&fitted).zip(families) {
        block.mean = std::array::from_fn(|axis| block.mean[axis] + SCALE[axis] * slopes[axis][3]);
        block.loads = slopes.map(|[a, b, c, _]| [a, b, c].map(|load| if load.abs() < 1e-6 { 0.0 } else { load }));
        block.residual = std::array::from_fn(|i| {
            std::array::from_fn(|j| (left[i][j] + COMMON_RESIDUAL * common(i, j)) / (sums.arms + COMMON_RESIDUAL))
        });
    }
    table
}

/// The same table with its factors turned: release height loads on the first slot factor alone, upward, and a
/// four-seam's run on the run factor, toward the glove.
fn turned(mut table: Table) -> Table {
    let [a, b, _] = table.arm.loads[0];
    let length = a.hypot(b).max(1e-9);
    let (cos, sin) = (a / length, b / length);
    let side = if table.families[0].loads[2][2] < 0.0 { -1.0 } else { 1.0 };
    let turn = |[a, b, c]: [f64; FACTORS]| [cos * a + sin * b, cos * b - sin * a, side * c];
    table.arm.loads = table.arm.loads.map(turn);
    for block in &mut table.families {
        block.loads = block.loads.map(turn);
    }
    table
}

/// Families whose spin goes with the fastball's; that of the others is the same for every fastball on arms left out.
fn goes_with_fastball(f: usize) -> bool {
    f < 5
}

/// Spin of each family on the fastball's.
fn with_spin(mut table: Table, readings: &[Readings]) -> Table {
    let spin = |arm: &Readings, f: usize| Some((arm.families[f]?.axes[3]?, arm.families[f]?.throws));
    let means: [f64; FAMILIES.len()] = std::array::from_fn(|f| table.families[f].mean[3]);
    let over = |arm: &Readings, f: usize| {
        let fastballs = [0, 1].into_iter().filter(|other| *other != f);
        let known: Vec<(f64, f64)> = fastballs.filter_map(|o| spin(arm, o).map(|(x, n)| (x - means[o], n))).collect();
        let throws: f64 = known.iter().map(|(_, n)| n).sum();
        (throws > 0.0).then(|| known.iter().map(|(x, n)| x * n).sum::<f64>() / throws)
    };
    for (f, block) in table.families.iter_mut().enumerate() {
        let pairs = readings.iter().filter_map(|arm| Some((over(arm, f)?, spin(arm, f)?.0 - means[f])));
        let pairs: Vec<(f64, f64)> = pairs.collect();
        (block.spin_slope, block.spin_sd) = line(&pairs, goes_with_fastball(f));
        block.spin_sd *= 100.0;
    }
    table
}

/// Slope through the origin, held toward zero, and the standard deviation about it.
fn line(pairs: &[(f64, f64)], slopes: bool) -> (f64, f64) {
    let arms = pairs.len().max(1) as f64;
    let square: f64 = pairs.iter().map(|(x, _)| x * x).sum();
    let cross: f64 = pairs.iter().map(|(x, y)| x * y).sum();
    let slope = if slopes { cross / (square * (1.0 + SLOPE / arms)).max(1e-12) } else { 0.0 };
    let left: f64 = pairs.iter().map(|(x, y)| (y - slope * x).powi(2)).sum();
    (slope, (left / arms).sqrt())
}

/// A changeup's run on the fastball's push.
fn with_push(mut table: Table, arms: &[ArmMeans]) -> Table {
    let pushes = |arm: &ArmMeans, f: usize| {
        let pitch = arm.pitches.iter().find(|pitch| place(pitch.family) == Some(f))?;
        Some((push(pitch.shape, pitch.spin_rpm?), f64::from(pitch.throws)))
    };
    table.fastball_push = std::array::from_fn(|f| {
        let enough: Vec<f64> =
            arms.iter().filter_map(|arm| pushes(arm, f)).filter(|(_, n)| *n >= 3.0).map(|(p, _)| p).collect();
        enough.iter().sum::<f64>() / enough.len().max(1) as f64
    });
    let pair = |arm: &ArmMeans| {
        let known: Vec<(f64, f64)> =
            [0, 1].into_iter().filter_map(|f| pushes(arm, f).map(|(p, n)| (p - table.fastball_push[f], n))).collect();
        let throws: f64 = known.iter().map(|(_, n)| n).sum();
        let changeup = arm.pitches.iter().find(|pitch| pitch.family == Family::Changeup)?;
        let shapes = NaturalShapes::by_table(&table, &arm.arm(), &arm.pitches);
        let natural = shapes.family(Family::Changeup)?.shape();
        let left = changeup.shape.glove_side_break_in - natural.glove_side_break_in;
        (throws > 0.0).then(|| (known.iter().map(|(x, n)| x * n).sum::<f64>() / throws, left))
    };
    let pairs: Vec<(f64, f64)> = arms.iter().filter_map(pair).collect();
    table.changeup_per_push = line(&pairs, true).0;
    table
}

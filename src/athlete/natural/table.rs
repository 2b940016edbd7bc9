//! The table behind natural shapes: how families' shapes vary from arm to arm, and what of it goes together.
//!
//! Fitted on one day of the top league, 4,418 pitches of 135 arms, from the tests of the R package abdwr3edata,
//! companion of *Analyzing Baseball Data with R*, 3rd edition (Marchi, Albert, Baumer; CC0). The fit is
//! `tests/lab/src/natural_fit.rs`; a test holds the shipped numbers to it. What the numbers say of one arm is
//! in [`super::factors`].

use std::sync::LazyLock;

use crate::ball::Family;
use crate::base::stats::Matrix;

/// Families that have a natural shape. A two-seam is a sinker here; a knuckleball has none.
pub const FAMILIES: [Family; 8] = [
    Family::FourSeam,
    Family::Sinker,
    Family::Cutter,
    Family::Slider,
    Family::Sweeper,
    Family::Curveball,
    Family::Changeup,
    Family::Splitter,
];
/// Latent factors: two of the slot, one of the fastball's run.
pub const FACTORS: usize = 3;
/// What is known of a pitch: speed in % of the fastball's, vertical break and glove-side break in inches, spin in
/// hundreds of rpm.
pub const AXES: usize = 4;
/// Units in which loads and residuals are told, one for each of the axes.
pub const SCALE: [f64; AXES] = [2.5, 4.0, 4.0, 2.3];
/// What is known of an arm: release height and side in feet, fastball in mph; and the units of their loads.
pub const ARM_SCALE: [f64; 3] = [0.45, 0.75, 2.5];

/// Place of a family in [`FAMILIES`].
pub fn place(family: Family) -> Option<usize> {
    FAMILIES.iter().position(|listed| *listed == family.one_name())
}

/// All that the natural shape of an arm is worked out from.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// One for each of [`FAMILIES`], in their order.
    pub families: [Block; 8],
    /// The arm itself.
    pub arm: ArmBlock,
    /// Inches of a changeup's glove-side break for each unit of the fastball's push (below).
    pub changeup_per_push: f64,
    /// Mean push of four-seam and sinker: movement over what the spin would give if all of it were active.
    pub fastball_push: [f64; 2],
}

/// One family. Means are in the units of the axes, all else in units of [`SCALE`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Block {
    /// Arms behind it.
    pub arms: f64,
    /// Means over arms.
    pub mean: [f64; AXES],
    /// What one standard deviation of each factor does.
    pub loads: Matrix<AXES, FACTORS>,
    /// Covariance between arms of what no factor explains.
    pub residual: Matrix<AXES, AXES>,
    /// Throw-to-throw standard deviations.
    pub scatter: [f64; AXES],
    /// rpm of this pitch for each rpm of the fastball's spin over its mean.
    pub spin_slope: f64,
    /// Standard deviation between arms of the spin about that line.
    pub spin_sd: f64,
}

/// The arm itself, alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ArmBlock {
    /// Means: ft, ft, mph.
    pub mean: [f64; 3],
    /// What one standard deviation of each factor does.
    pub loads: Matrix<3, FACTORS>,
    /// Covariance of what no factor explains.
    pub residual: Matrix<3, 3>,
}

static SHIPPED: LazyLock<Table> = LazyLock::new(|| Table::from_csv(include_str!("factors.csv")));

impl Table {
    /// The fitted table.
    pub fn shipped() -> &'static Self {
        &SHIPPED
    }

    /// Reads what [`Table::to_csv`] wrote; a missing number is zero.
    fn from_csv(text: &str) -> Self {
        let rows: Vec<Vec<f64>> = text.lines().skip(1).map(numbers).collect();
        let row = |index: usize, column: usize| rows.get(index).and_then(|row| row.get(column)).copied().unwrap_or(0.0);
        let family = |f: usize| {
            let at = |axis: usize, column: usize| row(AXES * f + axis, column);
            Block {
                arms: at(0, 0),
                mean: std::array::from_fn(|axis| at(axis, 1)),
                loads: std::array::from_fn(|axis| std::array::from_fn(|k| at(axis, 2 + k))),
                residual: std::array::from_fn(|axis| std::array::from_fn(|k| at(axis, 5 + k))),
                scatter: std::array::from_fn(|axis| at(axis, 9)),
                spin_slope: at(3, 10),
                spin_sd: at(3, 11),
            }
        };
        let at = |axis: usize, column: usize| row(8 * AXES + axis, column);
        let arm = ArmBlock {
            mean: std::array::from_fn(|axis| at(axis, 1)),
            loads: std::array::from_fn(|axis| std::array::from_fn(|k| at(axis, 2 + k))),
            residual: std::array::from_fn(|axis| std::array::from_fn(|k| at(axis, 5 + k))),
        };
        let push = |index: usize| row(8 * AXES + 3 + index, 1);
        Self {
            families: std::array::from_fn(family),
            arm,
            changeup_per_push: push(2),
            fastball_push: [push(0), push(1)],
        }
    }

    /// The table as text, digits enough for what was fitted.
    pub fn to_csv(&self) -> String {
        let mut text = String::from(
            "block,variable,arms,mean,slot_1,slot_2,run,residual_1,residual_2,residual_3,residual_4,scatter,spin_slope,spin_sd\n",
        );
        for (block, family) in self.families.iter().zip(FAMILIES) {
            for (axis, name) in ["speed_percent", "vertical_in", "glove_side_in", "spin_100_rpm"].iter().enumerate() {
                let spin = if axis == 3 { [block.spin_slope, block.spin_sd] } else { [0.0; 2] };
                let numbers =
                    [&[block.mean[axis]][..], &block.loads[axis], &block.residual[axis], &[block.scatter[axis]], &spin];
                text += &line(family.name(), name, block.arms, &numbers.concat());
            }
        }
        for (axis, name) in ["release_height_ft", "release_side_ft", "fastball_mph"].iter().enumerate() {
            let arm = &self.arm;
            let numbers = [&[arm.mean[axis]][..], &arm.loads[axis], &arm.residual[axis], &[0.0; 4]];
            text += &line("arm", name, 0.0, &numbers.concat());
        }
        let push = [
            ("four-seam", self.fastball_push[0]),
            ("sinker", self.fastball_push[1]),
            ("changeup", self.changeup_per_push),
        ];
        push.into_iter()
            .fold(text, |text, (block, value)| text + &line(block, "push", 0.0, &[&[value][..], &[0.0; 10]].concat()))
    }
}

fn line(block: &str, variable: &str, arms: f64, numbers: &[f64]) -> String {
    let rounded = numbers.iter().map(|number| ((number * 1e4).round() / 1e4 + 0.0).to_string());
    let numbers: Vec<String> = rounded.collect();
    format!("{block},{variable},{arms},{}\n", numbers.join(","))
}

fn numbers(line: &str) -> Vec<f64> {
    line.split(',').skip(2).map(|cell| cell.parse().unwrap_or(0.0)).collect()
}

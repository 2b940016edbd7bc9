//! An arm as the league's table sees it: what is known of it, and how a slower or younger one is set beside grown ones.
//!
//! A slow arm is no small fast one. At the same ratio of spin to speed the spin factor S = r ω / v is the same, so is
//! the lift coefficient, and a coefficient moves the ball as far whatever its speed (0.01 over 55 ft is 0.98 in,
//! computed). So inches are kept, spin goes with speed, and breaks change only by `C_L(S) / C_L(S of the league)` where
//! an arm spins the ball out of the league's proportion. Its speed beyond the league's range says nothing of its slot,
//! and its release is set beside that of a grown man. These three are assumptions: no open data of young arms stand
//! behind them.

use super::table::{ARM_SCALE, FAMILIES, Table};
use crate::athlete::profile::Profile;
use crate::ball::spin::{BALL_RADIUS, LiftLaw};
use crate::ball::{Family, Shape, Supination};
use crate::base::units::{MPH, RPM};

/// Where the ball leaves the hand, and how fast; what is not known is none.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arm {
    /// Release height, ft.
    pub height_ft: Option<f64>,
    /// Release distance to the arm side, ft.
    pub side_ft: Option<f64>,
    /// Speed of the hardest fastball (four-seam, two-seam or sinker), mph.
    pub fastball_mph: Option<f64>,
    /// How easily the hand turns around the ball.
    pub supination: Supination,
}

/// A pitch that the athlete throws.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Known {
    /// What it is.
    pub family: Family,
    /// Its mean shape.
    pub shape: Shape,
    /// Its spin, when measured.
    pub spin_rpm: Option<f64>,
    /// Throws behind the means.
    pub throws: u32,
}

/// How far from the mean, in units of scale, an arm's speed still counts as the league's own.
const LEAGUE_REACH: f64 = 2.5;
/// Spin out of the league's proportion, rpm: three standard deviations between arms of the fastball's spin.
const MOST_SPIN_RPM: f64 = 550.0;
/// How much smaller a body is for each mph below the league's range, as a share: a boy of twelve throws some 60 mph and
/// is 0.78 of a grown pitcher's 6 ft 2 in, one of eighteen throws some 83 mph and is 0.94 (medians of growth charts and
/// usual speeds, both from memory).
const SMALLER_PER_MPH: f64 = 0.0078;
const SMALLEST: f64 = 0.7;

impl Arm {
    /// The arm of a profile.
    pub fn of(profile: &Profile) -> Self {
        let release = profile.release;
        Self {
            height_ft: Some(release.height_ft),
            side_ft: Some(release.side_ft),
            fastball_mph: fastball_mph(&Known::of(profile)),
            supination: release.supination,
        }
    }
}

impl Known {
    /// The pitches of a profile.
    pub fn of(profile: &Profile) -> Vec<Self> {
        let known = |pitch: &crate::athlete::profile::Pitch| Self {
            family: pitch.family,
            shape: pitch.shape,
            spin_rpm: pitch.spin_rpm,
            throws: pitch.throws,
        };
        profile.pitches.iter().map(known).collect()
    }
}

/// The speed of the hardest fastball; of an athlete without one, what the hardest pitch suggests by its family's usual
/// share.
pub fn fastball_mph(known: &[Known]) -> Option<f64> {
    // Two throws do not outweigh twenty.
    const FEW: u32 = 3;
    let hardest = |pitches: &mut dyn Iterator<Item = f64>| {
        pitches.fold(None, |most: Option<f64>, mph| Some(most.map_or(mph, |m| m.max(mph))))
    };
    let fastballs = |least: u32| {
        let these = known.iter().filter(move |pitch| pitch.family.is_fastball() && pitch.throws >= least);
        hardest(&mut these.map(|pitch| pitch.shape.speed_mph))
    };
    let table = Table::shipped();
    let share = |pitch: &Known| super::table::place(pitch.family).map_or(0.8, |f| table.families[f].mean[0] / 100.0);
    let suggested = || hardest(&mut known.iter().map(|pitch| pitch.shape.speed_mph / share(pitch)));
    fastballs(FEW).or_else(|| fastballs(0)).or_else(suggested)
}

/// How an arm stands beside the league's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Beside {
    /// The fastball, mph.
    pub(super) fastball_mph: f64,
    /// Height, side and speed away from the league's means, in units of scale.
    pub(super) away: [Option<f64>; 3],
    /// rpm of the league for each rpm of this arm.
    pub(super) spin: f64,
}

impl Beside {
    pub(super) fn of(arm: &Arm, table: &Table) -> Self {
        let usual = table.arm.mean;
        let mph = arm.fastball_mph.unwrap_or(usual[2]);
        let body = body(mph, table);
        let away = |axis: usize, feet: Option<f64>| feet.map(|feet| (feet / body - usual[axis]) / ARM_SCALE[axis]);
        let speed = within_league((mph - usual[2]) / ARM_SCALE[2]);
        Self {
            fastball_mph: mph,
            away: [away(0, arm.height_ft), away(1, arm.side_ft), arm.fastball_mph.map(|_| speed)],
            spin: (usual[2] + ARM_SCALE[2] * speed) / mph,
        }
    }
}

/// How tall the athlete is beside a grown one, from the speed of the fastball; 1 within the league's range.
pub(super) fn body(fastball_mph: f64, table: &Table) -> f64 {
    let slowest = table.arm.mean[2] - LEAGUE_REACH * ARM_SCALE[2];
    (1.0 - SMALLER_PER_MPH * (slowest - fastball_mph).max(0.0)).max(SMALLEST)
}

/// A speed as evidence: itself within the league's range, less and less beyond.
fn within_league(away: f64) -> f64 {
    let beyond = (away.abs() - LEAGUE_REACH).max(0.0);
    away.clamp(-LEAGUE_REACH, LEAGUE_REACH) / (1.0 + beyond * beyond)
}

/// What is left of a fastball's spin, `over` the mean by so many rpm of the league, as a factor on all spin, once the
/// part that the league knows is taken; and that part.
pub(super) fn out_of_proportion(over_rpm: f64, mean_rpm: f64) -> (f64, f64) {
    let known = over_rpm.clamp(-MOST_SPIN_RPM, MOST_SPIN_RPM);
    ((mean_rpm + over_rpm).max(0.0) / (mean_rpm + known), known)
}

/// `C_L(S) / C_L(S of the league)` of each family, for spin out of proportion by `factor`.
pub(super) fn lift_factors(factor: f64, table: &Table) -> [f64; FAMILIES.len()] {
    std::array::from_fn(|f| {
        let mean = &table.families[f].mean;
        let speed = mean[0] / 100.0 * table.arm.mean[2] * MPH;
        let s = BALL_RADIUS * 100.0 * mean[3] * RPM / speed;
        LiftLaw::Rational.coefficient(s * factor) / LiftLaw::Rational.coefficient(s)
    })
}

/// How much a fastball moves for its spin: movement over what all of the spin would give, were it active.
pub fn push(shape: Shape, spin_rpm: f64) -> f64 {
    /// Inches over a full flight for a coefficient of 1 (computed: 0.98 in for 0.01 over 55 ft, whatever the speed).
    const INCHES_PER_COEFFICIENT: f64 = 98.0;
    let s = BALL_RADIUS * spin_rpm * RPM / shape.speed();
    shape.vertical_break_in.hypot(shape.glove_side_break_in)
        / (INCHES_PER_COEFFICIENT * LiftLaw::Rational.coefficient(s).max(0.02))
}

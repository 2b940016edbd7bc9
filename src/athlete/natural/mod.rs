//! Natural shapes: where arms like this one throw each family, and which family a shape is on this arm.
//!
//! 1. `table`: how shapes go together between real arms.
//! 2. `arm`: what is known of this arm, set beside the league's.
//! 3. `factors`: what that says of the arm's latent factors, and so of each family.
//! 4. `shape`: the natural shape with its spread; effort, ranges, contour.
//! 5. `likeness`: weights over families for a shape; likeness of two shapes.
//!
//! Speed is the family's usual share of the fastball, and the glove-side break of slider, sweeper and curveball is the
//! family's own: on arms left out an arm predicts neither better. Nothing here knows what a pitch is worth.

mod arm;
mod arsenal;
mod factors;
mod likeness;
mod shape;
mod table;

pub use arm::{Arm, Known, fastball_mph, push};
pub use arsenal::{Unnamed, name_together};
pub use factors::{Belief, Reading};
pub use likeness::{Likeness, alike};
pub use shape::NaturalShape;
pub use table::{ARM_SCALE, AXES, ArmBlock, Block, FACTORS, FAMILIES, SCALE, Table, place};

use crate::athlete::profile::Profile;
use crate::ball::{Family, Shape, Supination};
use crate::base::stats::Matrix;

use arm::{Beside, lift_factors, out_of_proportion};

/// Held-out pitches lie farther out than the normal law's: with variances widened so, 90 % of them lie within the
/// ellipse that should hold 90 % (`tests/natural_truth.rs`).
const WIDER: f64 = 1.3;
/// How far supination moves a breaking ball and a cutter, and how much nearer or farther it makes them, in standard
/// deviations between arms: an assumption of moderate size; its direction is common practice, no published source.
const SUPINATION_SD: f64 = 1.0 / 3.0;

/// The natural shapes of every family for one arm.
#[derive(Debug, Clone, Copy)]
pub struct NaturalShapes {
    shapes: [NaturalShape; FAMILIES.len()],
}

impl NaturalShapes {
    /// For an arm and what it is known to throw. What is known of a family is not used for that family itself: its
    /// natural shape is what arms like this one make of it.
    pub fn of(arm: &Arm, known: &[Known]) -> Self {
        Self::by_table(Table::shipped(), arm, known)
    }

    /// For the athlete of a profile.
    pub fn of_profile(profile: &Profile) -> Self {
        Self::of(&Arm::of(profile), &Known::of(profile))
    }

    /// By another table than the shipped one.
    pub fn by_table(table: &Table, arm: &Arm, known: &[Known]) -> Self {
        let arm = Arm { fastball_mph: arm.fastball_mph.or_else(|| fastball_mph(known)), ..*arm };
        let league = League::of(table, &arm, known);
        Self { shapes: std::array::from_fn(|f| league.shape(f, arm.supination)) }
    }

    /// Of one family; a knuckleball has none.
    pub fn family(&self, family: Family) -> Option<&NaturalShape> {
        place(family).map(|f| &self.shapes[f])
    }

    /// All, in the order of [`FAMILIES`].
    pub fn iter(&self) -> impl Iterator<Item = &NaturalShape> {
        self.shapes.iter()
    }

    /// Which families a shape is like on this arm.
    pub fn likeness(&self, shape: Shape, spin_rpm: Option<f64>) -> Likeness {
        Likeness::of(&self.shapes, shape, spin_rpm)
    }
}

/// The arm and its pitches in the league's terms.
struct League<'a> {
    table: &'a Table,
    beside: Beside,
    all: Belief,
    pitches: Vec<Pitch>,
    /// A factor on all spin that is out of the league's proportion, and what it does to each family's breaks.
    spin: f64,
    lift: [f64; FAMILIES.len()],
}

/// One of them: its family's place, what it is, and what it says of the arm.
struct Pitch {
    place: usize,
    known: Known,
    evidence: Belief,
}

/// What the fastballs say of other pitches by their spin.
#[derive(Clone, Copy)]
struct Fastball {
    /// rpm of the league over the mean.
    over_rpm: f64,
    /// Push over the mean.
    over_push: f64,
}

impl<'a> League<'a> {
    fn of(table: &'a Table, arm: &Arm, known: &[Known]) -> Self {
        let beside = Beside::of(arm, table);
        let arm = Belief::evidence(&table.arm.loads, &table.arm.residual, &beside.away);
        let place_of =
            |known: &Known| Some(Pitch { place: place(known.family)?, known: *known, evidence: Belief::PRIOR });
        let pitches = known.iter().filter_map(place_of).collect();
        let mut league =
            Self { table, beside, all: Belief::PRIOR + arm, pitches, spin: 1.0, lift: [1.0; FAMILIES.len()] };
        if let Some(fastball) = league.fastball(FAMILIES.len()) {
            league.spin = out_of_proportion(fastball.over_rpm, 100.0 * table.families[0].mean[3]).0;
            league.lift = lift_factors(league.spin, table);
        }
        for index in 0..league.pitches.len() {
            let Pitch { place, known, .. } = league.pitches[index];
            let evidence = Belief::pitch(&table.families[place], &league.reading(place, &known));
            league.pitches[index].evidence = evidence;
            league.all = league.all + evidence;
        }
        league
    }

    fn reading(&self, place: usize, known: &Known) -> Reading {
        let spin = known.spin_rpm.map(|rpm| rpm * self.beside.spin / self.spin / 100.0);
        let Shape { speed_mph, vertical_break_in, glove_side_break_in } = known.shape;
        let percent = 100.0 * speed_mph / self.beside.fastball_mph;
        let inches = [vertical_break_in, glove_side_break_in].map(|inches| Some(inches / self.lift[place]));
        Reading { axes: [Some(percent), inches[0], inches[1], spin], throws: f64::from(known.throws) }
    }

    /// The mean over four-seam and sinker, but for the family at `without`, weighed by throws.
    fn fastball(&self, without: usize) -> Option<Fastball> {
        let (mut sum, mut weight) = (Fastball { over_rpm: 0.0, over_push: 0.0 }, 0.0);
        for pitch in self.pitches.iter().filter(|pitch| pitch.place < 2 && pitch.place != without) {
            let Some(rpm) = pitch.known.spin_rpm else { continue };
            let throws = f64::from(pitch.known.throws.max(1));
            sum.over_rpm += throws * (rpm * self.beside.spin - 100.0 * self.table.families[pitch.place].mean[3]);
            sum.over_push += throws * (push(pitch.known.shape, rpm) - self.table.fastball_push[pitch.place]);
            weight += throws;
        }
        (weight > 0.0).then(|| Fastball { over_rpm: sum.over_rpm / weight, over_push: sum.over_push / weight })
    }

    fn shape(&self, f: usize, supination: Supination) -> NaturalShape {
        let block = &self.table.families[f];
        let own = self.pitches.iter().filter(|pitch| pitch.place == f);
        let others = own.fold(self.all, |all, pitch| all - pitch.evidence);
        let predicted = others.predict(block);
        let mut mean: [f64; AXES] = std::array::from_fn(|i| block.mean[i] + SCALE[i] * predicted.mean[i]);
        let mut covariance = predicted.covariance;
        if let Some(fastball) = self.fastball(f) {
            let (_, over_rpm) = out_of_proportion(fastball.over_rpm, 100.0 * self.table.families[0].mean[3]);
            mean[3] = block.mean[3] + block.spin_slope * over_rpm / 100.0;
            let narrower = block.spin_sd / (100.0 * SCALE[3]) / covariance[3][3].sqrt();
            stretch(&mut covariance, 3, narrower);
            mean[2] +=
                if FAMILIES[f] == Family::Changeup { self.table.changeup_per_push * fastball.over_push } else { 0.0 };
        }
        let units = [1.0, self.lift[f], self.lift[f], self.spin / self.beside.spin];
        for axis in 0..AXES {
            mean[axis] *= units[axis];
            stretch(&mut covariance, axis, units[axis] * SCALE[axis] * WIDER.sqrt());
        }
        let ease = supinated(FAMILIES[f], supination, &mut mean, &covariance);
        NaturalShape::new(FAMILIES[f], mean, covariance, self.beside.fastball_mph, ease)
    }
}

/// One axis in another unit.
fn stretch(covariance: &mut Matrix<AXES, AXES>, axis: usize, factor: f64) {
    for entry in &mut covariance[axis] {
        *entry *= factor;
    }
    for row in covariance {
        row[axis] *= factor;
    }
}

/// Moves the mean of a pitch that wants the hand around the ball by what the athlete's does, vertical with glove side
/// as between arms; how much farther (+) or nearer (-) the pitch is.
fn supinated(family: Family, supination: Supination, mean: &mut [f64; AXES], covariance: &Matrix<AXES, AXES>) -> f64 {
    let sds = match supination {
        Supination::Easy => SUPINATION_SD,
        Supination::Ordinary => 0.0,
        Supination::Hard => -SUPINATION_SD,
    };
    if !(family.is_breaking() || family == Family::Cutter) {
        return 0.0;
    }
    let side = sds * covariance[2][2].sqrt();
    mean[2] += side;
    mean[1] += side * covariance[1][2] / covariance[2][2];
    -sds
}

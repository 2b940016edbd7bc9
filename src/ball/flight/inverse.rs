//! The way back: from a measured or wished-for shape to the throw, the spin and the seams' share.
//!
//! Breaks hardly depend on where a throw is aimed and are nearly proportional to the side-force
//! coefficient, and the crossing is nearly proportional to the launch direction; so Newton's
//! method with the slope of the aim of a straight throw, and that of the break from the last try,
//! is there after two or three corrections.

use super::{Air, Forces, GRAVITY, Throw};
use crate::ball::spin::{LiftLaw, Spin};
use crate::ball::{ActiveShare, Release, Shape};
use crate::base::geometry::{PLATE_FRONT_Y, RUBBER_Y, Vec3};
use crate::base::stats::Estimate;
use crate::base::units::{FOOT, INCH, MPH};
use crate::base::{Location, Movement};

/// The release point of a right-hander: the arm side is -x.
pub fn release_point(release: Release) -> Vec3 {
    Vec3::new(-release.side_ft * FOOT, RUBBER_Y - release.extension_ft * FOOT, release.height_ft * FOOT)
}

/// Where breaks are quoted for when nobody says otherwise: the middle of the plate, belt high.
pub const MIDDLE: Location = Location { glove_side_in: 0.0, height_in: 30.0 };

/// Most corrections of a throw: 80 mph takes two, 50 mph four, a lob of 40 mph six.
const CORRECTIONS: usize = 20;
/// How near (m) a throw must come to its target and its breaks: a thousandth of an inch.
const NEAR_ENOUGH: f64 = 0.001 * INCH;

/// The throw of this shape from this release that crosses the front of the plate at
/// `target`: release speed, aim and a constant side-force coefficient.
pub fn throw_of_shape(shape: Shape, release: Vec3, target: Location, air: Air) -> Throw {
    let wanted = [shape.glove_side_break_in, shape.vertical_break_in].map(|inches| inches * INCH);
    let target = metres(target);
    let reach = release.y - PLATE_FRONT_Y;
    let per_metre = Forces::sideways(air, [0.0; 2]).per_metre;
    // A coefficient C bends a straight path by C (ρA/2m) d² / 2, less a little for drag.
    let mut coefficient_per_metre = 2.0 / (per_metre * reach * reach);
    let drop = GRAVITY * (reach / shape.speed()).powi(2) / 2.0;
    let mut side = wanted.map(|w| w * coefficient_per_metre);
    let mut aim = [target[0] - wanted[0], target[1] - wanted[1] + drop];
    let mut throw = throw_toward(shape.speed(), release, aim, Forces::sideways(air, side));
    for _ in 0..CORRECTIONS {
        let crossing = throw.fly().crossing();
        let plain = throw.without_side_force().fly().crossing();
        let found = [crossing.x - plain.x, crossing.z - plain.z];
        let short = [wanted[0] - found[0], wanted[1] - found[1]];
        // The break of the corrected coefficient moves the crossing too: aim for what will be.
        let off = [target[0] - plain.x - wanted[0], target[1] - plain.z - wanted[1]];
        if [short, off].as_flattened().iter().all(|miss| miss.abs() < NEAR_ENOUGH) {
            break;
        }
        let bent = found[0].hypot(found[1]);
        if bent > INCH {
            coefficient_per_metre = side[0].hypot(side[1]) / bent;
        }
        side = [0, 1].map(|axis| side[axis] + short[axis] * coefficient_per_metre);
        aim = [aim[0] + off[0], aim[1] + off[1]];
        throw = throw_toward(shape.speed(), release, aim, Forces::sideways(air, side));
    }
    throw
}

fn metres(place: Location) -> [f64; 2] {
    [place.glove_side_in, place.height_in].map(|inches| inches * INCH)
}

/// A throw straight at a point of the plate's front plane; gravity and side forces bend it from there.
fn throw_toward(speed: f64, release: Vec3, aim: [f64; 2], forces: Forces) -> Throw {
    let direction = (Vec3::new(aim[0], PLATE_FRONT_Y, aim[1]) - release).unit();
    Throw { release, velocity: direction * speed, forces }
}

/// The shape of a throw.
pub fn shape_of_throw(throw: &Throw) -> Shape {
    let Movement { glove_side_in, up_in } = throw.movement();
    Shape { speed_mph: throw.velocity.norm() / MPH, vertical_break_in: up_in, glove_side_break_in: glove_side_in }
}

/// The same throw restated in other air: coefficients stay, density changes.
pub fn restated(shape: Shape, release: Vec3, from: Air, to: Air) -> Shape {
    let here = throw_of_shape(shape, release, MIDDLE, from);
    let there = Throw { forces: Forces::sideways(to, here.forces.side), ..here };
    Shape { speed_mph: shape.speed_mph, ..shape_of_throw(&there) }
}

/// The movement that `spin` alone gives a ball of this speed (m/s) and release.
pub fn break_of_spin(spin: Spin, speed: f64, release: Vec3, law: LiftLaw, air: Air) -> Movement {
    let plain = Forces::sideways(air, [0.0; 2]);
    let thrown_at = |aim: [f64; 2]| {
        let throw = throw_toward(speed, release, aim, plain);
        let angular_velocity = spin.angular_velocity(throw.velocity.unit());
        Throw { forces: Forces { angular_velocity, lift: law, ..plain }, ..throw }
    };
    // The axis is fixed as the ball leaves, so the break depends a little on where it is aimed: aim
    // so that it arrives in the middle, as everywhere else.
    let middle = metres(MIDDLE);
    let mut aim = middle;
    for _ in 0..2 {
        let crossing = thrown_at(aim).fly().crossing();
        aim = [aim[0] + middle[0] - crossing.x, aim[1] + middle[1] - crossing.z];
    }
    thrown_at(aim).movement()
}

/// A measured shape divided between the spin's push and what is left for the seams, inches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shares {
    /// What the spin explains: up.
    pub spin_vertical_in: Estimate,
    /// What the spin explains: glove side.
    pub spin_glove_side_in: Estimate,
    /// Movement left over: up.
    pub seam_vertical_in: Estimate,
    /// Movement left over: glove side.
    pub seam_glove_side_in: Estimate,
}

impl Shares {
    /// What is left for the seams.
    pub fn left(self) -> Movement {
        Movement { glove_side_in: self.seam_glove_side_in.value, up_in: self.seam_vertical_in.value }
    }
}

/// Divides `shape` given its measured `spin`. The intervals are the spread of the lift laws about the
/// default one; measurement error comes on top.
pub fn shares(shape: Shape, spin: Spin, release: Vec3, air: Air) -> Shares {
    divided(shape, &LiftLaw::ALL.map(|law| break_of_spin(spin, shape.speed(), release, law, air)))
}

/// Divides `shape` when the push and the rate of its spin were measured and the active share is what is usual, `usual`.
/// The intervals are the spread of that share between pitchers; the default law alone is used, by which the share was
/// counted.
pub fn usual_shares(shape: Shape, spin: Spin, usual: ActiveShare, release: Vec3, air: Air) -> Shares {
    let Estimate { value, low, high } = Estimate::from_sd(usual.mean, usual.sd);
    let given = |share: f64| {
        let spin = Spin { active_fraction: share.clamp(0.0, 1.0), ..spin };
        break_of_spin(spin, shape.speed(), release, LiftLaw::DEFAULT, air)
    };
    divided(shape, &[value, low, high].map(given))
}

/// Divides `shape`: the first of `pushes` is the spin's push, all of them its spread.
fn divided(shape: Shape, pushes: &[Movement]) -> Shares {
    let spread = |read: fn(Movement) -> f64| {
        let values: Vec<f64> = pushes.iter().map(|push| read(*push)).collect();
        let low = values.iter().copied().fold(f64::INFINITY, f64::min);
        let high = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        Estimate { value: values[0], low, high }
    };
    let left = |total: f64, spin: Estimate| Estimate {
        value: total - spin.value,
        low: total - spin.high,
        high: total - spin.low,
    };
    let (side, up) = (spread(|movement| movement.glove_side_in), spread(|movement| movement.up_in));
    Shares {
        spin_vertical_in: up,
        spin_glove_side_in: side,
        seam_vertical_in: left(shape.vertical_break_in, up),
        seam_glove_side_in: left(shape.glove_side_break_in, side),
    }
}

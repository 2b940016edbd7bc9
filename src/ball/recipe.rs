//! From a wished-for shape to how the ball must spin: which active share, which clock, and what the seams are expected
//! to add. Whether an arm can spin it so is asked elsewhere; here is only what the air wants.

use super::Shape;
use super::flight::Air;
use super::flight::inverse::{MIDDLE, break_of_spin, throw_of_shape};
use super::spin::{BALL_RADIUS, LiftLaw, Spin};
use super::usual::SeamPush;
use crate::base::Movement;
use crate::base::geometry::{Clock, Vec3};
use crate::base::stats::Estimate;
use crate::base::units::RPM;

/// How to spin a ball so that it takes a shape.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Recipe {
    /// The shape.
    pub shape: Shape,
    /// The spin.
    pub spin: Spin,
    /// What the spin gives.
    pub spin_push: Movement,
    /// What the seams must add: what pitches of this kind usually get, and whatever no spin gives.
    pub seams: Movement,
    /// How much of the shape the seams usually give, from which evidence.
    pub usual_seams: SeamPush,
    /// The active share, and between which shares the lift laws put it; each is cut at all of the spin.
    pub active_share: Estimate,
}

/// What is known of a throw besides its shape.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ground {
    /// Where the ball leaves the hand, m.
    pub release: Vec3,
    /// The air it flies through.
    pub air: Air,
}

/// The recipe for `shape` at `rpm` of total spin, with the seams' help that `seams` says is usual.
///
/// The spin must give what is left of the shape when the seams' usual push is taken away. Newton's method on the active
/// share to the glove side and up, since the bullet part gives a little movement of its own; to a hundredth of an inch.
/// Where even all of the spin does not do, it is all active and the seams are left with the rest.
pub fn recipe(shape: Shape, rpm: f64, seams: SeamPush, ground: Ground) -> Recipe {
    const ROUNDS: usize = 8;
    const NUDGE: f64 = 0.02;
    let wanted = shape.movement() - seams.mean;
    let rpm = rpm.max(1.0);
    let given = |active: [f64; 2]| {
        let spin = spin_of(active, rpm);
        break_of_spin(spin, shape.speed(), ground.release, LiftLaw::DEFAULT, ground.air)
    };
    let needed = active_rpm(shape, wanted, LiftLaw::DEFAULT, ground) / rpm;
    let (side, up) = Clock::from_push(wanted.glove_side_in, wanted.up_in).push();
    let mut active = held([side, up].map(|part| part * needed.clamp(0.02, 1.0)));
    let mut found = given(active);
    for _ in 0..ROUNDS {
        let short = wanted - found;
        if short.length() < 0.01 {
            break;
        }
        let slope = [[NUDGE, 0.0], [0.0, NUDGE]].map(|nudge| {
            let nudged = given([active[0] + nudge[0], active[1] + nudge[1]]);
            (nudged - found) * (1.0 / NUDGE)
        });
        active = held(solved(active, slope, short));
        found = given(active);
    }
    let spin = spin_of(active, rpm);
    let active_share = shares_by_law(spin, shape.speed());
    Recipe { shape, spin, spin_push: found, seams: shape.movement() - found, usual_seams: seams, active_share }
}

/// The active spin (rpm) that gives `shape` with the seams' usual help: the default law in the middle, ends from the
/// other laws and from seams that help as much more or less as one pitcher in ten or more does. Infinite where no spin
/// would do.
pub fn active_rpm_needed(shape: Shape, seams: SeamPush, ground: Ground) -> Estimate {
    let reach = Estimate::from_sd(0.0, 1.0).high;
    let wanted = shape.movement() - seams.mean;
    let value = active_rpm(shape, wanted, LiftLaw::DEFAULT, ground);
    let bent = [-reach, 0.0, reach].map(|sd| wanted - seams.sd * sd);
    let all = LiftLaw::ALL.into_iter().flat_map(|law| bent.map(|wanted| active_rpm(shape, wanted, law, ground)));
    all.fold(Estimate { value, low: value, high: value }, |range, rpm| Estimate {
        low: range.low.min(rpm),
        high: range.high.max(rpm),
        ..range
    })
}

/// The spin of an active share to the glove side and up.
fn spin_of(active: [f64; 2], rpm: f64) -> Spin {
    Spin { rpm, active_fraction: active[0].hypot(active[1]), clock: Clock::from_push(active[0], active[1]) }
}

/// At most all of the spin.
fn held(active: [f64; 2]) -> [f64; 2] {
    let length = active[0].hypot(active[1]);
    if length > 1.0 { active.map(|part| part / length) } else { active }
}

/// Where a linear law with these slopes is no longer `short`; unmoved where it says nothing.
fn solved(active: [f64; 2], slope: [Movement; 2], short: Movement) -> [f64; 2] {
    let [by_side, by_up] = slope;
    let area = by_side.glove_side_in * by_up.up_in - by_up.glove_side_in * by_side.up_in;
    if area.abs() < 1e-9 {
        return active;
    }
    [
        active[0] + (short.glove_side_in * by_up.up_in - by_up.glove_side_in * short.up_in) / area,
        active[1] + (by_side.glove_side_in * short.up_in - short.glove_side_in * by_side.up_in) / area,
    ]
}

/// The active spin whose lift, constant along the way, bends this throw by `wanted`.
fn active_rpm(shape: Shape, wanted: Movement, law: LiftLaw, ground: Ground) -> f64 {
    let bent = shape.with_movement(wanted);
    let side = throw_of_shape(bent, ground.release, MIDDLE, ground.air).forces.side;
    law.spin_parameter(side[0].hypot(side[1])) * mean_speed(shape) / BALL_RADIUS / RPM
}

/// Speed half-way, where the constant coefficient stands for the spin's changing one: a flight loses about a tenth of
/// its speed (R. Cross, Phys. Teach. 50 (2012) 80). Early force moves the ball most, so a third of the loss is taken.
fn mean_speed(shape: Shape) -> f64 {
    shape.speed() * (1.0 - 0.1 / 3.0)
}

/// The active shares at which the other laws give the lift that the default law gives.
fn shares_by_law(spin: Spin, speed: f64) -> Estimate {
    let parameter = spin.active_parameter(speed);
    let lift = LiftLaw::DEFAULT.coefficient(parameter);
    let share = |law: LiftLaw| (law.spin_parameter(lift) * spin.active_fraction / parameter.max(1e-9)).min(1.0);
    let value = spin.active_fraction;
    let all = LiftLaw::ALL.map(share);
    Estimate { value, low: all.into_iter().fold(value, f64::min), high: all.into_iter().fold(value, f64::max) }
}

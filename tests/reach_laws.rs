//! Which shapes an arm reaches, and that the spin a recipe names makes the shape it is for.

#[path = "common/standard.rs"]
#[expect(dead_code, reason = "other tests use the rest of it")]
mod standard;

use arsenalfit::ball::Supination;
use arsenalfit::ball::flight::inverse::{MIDDLE, break_of_spin, throw_of_shape};
use arsenalfit::ball::flight::{Forces, Throw};
use arsenalfit::ball::recipe::active_rpm_needed;
use arsenalfit::ball::spin::{LiftLaw, Spin};
use arsenalfit::ball::{Family, Ground, SeamPush, Shape};
use arsenalfit::base::geometry::Clock;
use arsenalfit::former::evaluate::{NewPitch, Stage};
use arsenalfit::former::search::reach::Reach;
use standard::{CHANGEUP, FOUR_SEAM, SLIDER, SWEEPER, athlete, shape};

fn reaches_a_sweeper(slot: f64, seam_in: f64, supination: Supination) -> bool {
    let name = supination.name();
    let sections =
        format!("[release]\nslot_deg = {slot}\nsupination = \"{name}\"\n[limits]\nseam_shift_in = {seam_in}");
    let profile = athlete(&[FOUR_SEAM, CHANGEUP, SLIDER], &sections);
    let stage = Stage::new(&profile);
    let reach = Reach::of(&stage, Family::Sweeper);
    let (slow, fast) = reach.speed_mph;
    (0..=4).any(|quarter| {
        let speed = slow + (fast - slow) * f64::from(quarter) / 4.0;
        (15..=20).any(|sweep| reach.recipe(&stage, shape(speed, 0.0, f64::from(sweep))).is_some())
    })
}

/// Common practice, no published source: no vertical break and fifteen inches or more of sweep can be had
/// from three-quarter and over-the-top slots when the seams help, else only from a low slot.
#[test]
fn a_flat_sweeper_needs_the_seams_or_a_low_slot() {
    for slot in [45.0, 75.0, 80.0] {
        assert!(reaches_a_sweeper(slot, 6.0, Supination::Ordinary), "{slot} with the seams");
        assert!(!reaches_a_sweeper(slot, 0.5, Supination::Ordinary), "{slot} without the seams");
    }
    for slot in [20.0, 25.0] {
        assert!(reaches_a_sweeper(slot, 0.5, Supination::Ordinary), "{slot} without the seams");
    }
}

#[test]
fn an_over_the_top_arm_that_will_not_turn_does_not_reach_a_flat_sweeper() {
    assert!(reaches_a_sweeper(78.0, 6.0, Supination::Ordinary));
    assert!(!reaches_a_sweeper(78.0, 6.0, Supination::Hard));
}

/// A grid of the shapes that go by a family's name, at its middle speed.
fn shapes_of(reach: &Reach, steps: u32) -> Vec<Shape> {
    let inches = |range: (f64, f64), step: u32| range.0 + (range.1 - range.0) * f64::from(step) / f64::from(steps);
    let speed = f64::midpoint(reach.speed_mph.0, reach.speed_mph.1);
    let of = |up: u32, side: u32| shape(speed, inches(reach.vertical_in, up), inches(reach.glove_side_in, side));
    (0..=steps).flat_map(|up| (0..=steps).map(move |side| of(up, side))).collect()
}

/// Supination is turning the hand around the outside of the ball; a hand that does it easily reaches
/// whatever a hand that does not.
#[test]
fn whatever_a_stiff_hand_reaches_an_easy_hand_reaches() {
    let mut lost = Vec::new();
    for family in [Family::Slider, Family::Sweeper, Family::Curveball, Family::Cutter] {
        let reached = |supination: Supination| -> Vec<bool> {
            let name = supination.name();
            let sections = format!("[release]\nslot_deg = 45\nsupination = \"{name}\"\n[limits]\nseam_shift_in = 1");
            let profile = athlete(&[FOUR_SEAM, CHANGEUP], &sections);
            let stage = Stage::new(&profile);
            let reach = Reach::of(&stage, family);
            shapes_of(&reach, 12).into_iter().map(|shape| reach.recipe(&stage, shape).is_some()).collect()
        };
        let pairs = reached(Supination::Hard).into_iter().zip(reached(Supination::Easy));
        let missing = pairs.filter(|(hard, easy)| *hard && !easy).count();
        if missing > 0 {
            lost.push(format!("{family}: {missing} shapes"));
        }
    }
    assert!(lost.is_empty(), "{lost:?}");
}

/// The throw of `shape` at the middle, its side force replaced by this spin's push.
fn spun(stage: &Stage, shape: Shape, spin: Spin) -> Throw {
    let throw = throw_of_shape(shape, stage.release, MIDDLE, stage.air);
    let angular_velocity = spin.angular_velocity(throw.velocity.unit());
    Throw { forces: Forces { angular_velocity, ..Forces::sideways(stage.air, [0.0; 2]) }, ..throw }
}

/// A pitch is aimed so that it crosses the plate; what its spin gives is asked there. A tenth of an inch and
/// 1 % of the break.
#[test]
fn the_break_of_a_spin_is_that_of_a_ball_that_reaches_the_plate() {
    let profile = athlete(&[FOUR_SEAM], "");
    let stage = Stage::new(&profile);
    let mut wrong = Vec::new();
    for (family, [speed, vertical, side]) in [FOUR_SEAM, CHANGEUP, SWEEPER, (Family::Curveball, [78.0, -22.0, 0.0])] {
        let shape = shape(speed, vertical, side);
        let ground = Ground { release: stage.release, air: stage.air };
        let rpm = active_rpm_needed(shape, SeamPush::NONE, ground).value;
        let spin = Spin { rpm, active_fraction: 1.0, clock: Clock::from_push(side, vertical) };
        let said = break_of_spin(spin, shape.speed(), stage.release, LiftLaw::DEFAULT, stage.air);
        let miss = said.distance(spun(&stage, shape, spin).movement());
        if miss > 0.1 + 0.01 * vertical.hypot(side) {
            wrong.push(format!("{family}: {miss:.2} in"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:?}");
}

/// What a recipe says the spin gives, flown with that spin, is what it said to a quarter of an inch.
#[test]
fn a_recipe_flown_makes_the_shape_it_is_for() {
    let profile = athlete(&[FOUR_SEAM, CHANGEUP, SLIDER], "[release]\nslot_deg = 45");
    let stage = Stage::new(&profile);
    let mut tried = 0;
    for family in [Family::Slider, Family::Sweeper, Family::Curveball, Family::Cutter, Family::Changeup] {
        let reach = Reach::of(&stage, family);
        let spread = stage.pitches[1].spread;
        for recipe in shapes_of(&reach, 4).into_iter().filter_map(|shape| reach.recipe(&stage, shape)) {
            tried += 1;
            let NewPitch { spin_break_in, .. } = recipe.pitch(&stage, family, spread);
            // Without the bullet part, whose late side force is not the recipe's matter.
            let spin = Spin { rpm: recipe.spin.active_rpm(), active_fraction: 1.0, ..recipe.spin };
            let flown = spun(&stage, recipe.shape, spin).movement();
            for (axis, found) in [flown.glove_side_in, flown.up_in].into_iter().enumerate() {
                let said = spin_break_in[axis];
                assert!((found - said).abs() < 0.25, "{family}, axis {axis}: flown {found:.2} in, said {said:.2} in");
            }
        }
    }
    assert!(tried > 20, "{tried} shapes reached");
}

//! Laws of flight that hold whatever the constants are.

use arsenalfit::ball::Shape;
use arsenalfit::ball::flight::inverse::{break_of_spin, restated, shape_of_throw, throw_of_shape};
use arsenalfit::ball::flight::{Air, Forces, GRAVITY, STEPS, State, Throw, integrate};
use arsenalfit::ball::spin::{LiftLaw, Spin};
use arsenalfit::base::geometry::{Clock, PLATE_FRONT_Y, Vec3};
use arsenalfit::base::units::{FOOT, INCH, MPH};
use arsenalfit::base::{Location, Movement};
use proptest::prelude::*;

const RELEASE: Vec3 = Vec3::new(-0.5, 55.0 * FOOT + PLATE_FRONT_Y, 1.8);

fn spun(spin: Spin, mph: f64, air: Air) -> Throw {
    let velocity = Vec3::new(0.0, -mph * MPH, 0.0);
    let forces = Forces { angular_velocity: spin.angular_velocity(velocity.unit()), ..Forces::sideways(air, [0.0; 2]) };
    Throw { release: RELEASE, velocity, forces }
}

#[test]
fn without_air_the_path_is_a_parabola() {
    let velocity = Vec3::new(1.0, -40.0, 0.5);
    let vacuum = Throw { release: RELEASE, velocity, forces: Forces::sideways(Air { density: 0.0 }, [0.3; 2]) };
    let crossing = vacuum.fly().crossing();
    let time = (RELEASE.y - PLATE_FRONT_Y) / 40.0;
    assert!((crossing.time - time).abs() < 1e-12);
    assert!((crossing.x - (RELEASE.x + time)).abs() < 1e-12);
    assert!((crossing.z - (RELEASE.z + 0.5 * time - GRAVITY * time * time / 2.0)).abs() < 1e-12);
}

#[test]
fn halving_the_step_divides_the_error_by_sixteen() {
    let throw = spun(Spin { rpm: 2600.0, active_fraction: 0.6, clock: Clock::from_hours(8.0) }, 82.0, Air::SEA_LEVEL);
    let end = |steps| {
        let mut last = State::default();
        let start = State { time: 0.0, position: throw.release, velocity: throw.velocity };
        integrate(start, PLATE_FRONT_Y, steps, |v| throw.forces.acceleration(v), |_, state| last = state);
        last.position
    };
    let truth = end(512);
    let ratio = (end(2) - truth).norm() / (end(4) - truth).norm();
    assert!((12.0..24.0).contains(&ratio), "fourth order means about 16, not {ratio}");
}

/// Whichever way the ball spins, from bullet to all active. The balls that fly nearly along their own axis are
/// the hardest: there the direction of the push turns quickly.
#[test]
fn the_steps_are_enough_for_every_pitch() {
    for (speeds, allowed_in) in [([60.0, 75.0, 90.0, 105.0], 0.011), ([38.0, 43.0, 48.0, 53.0], 0.15)] {
        for mph in speeds {
            for active_fraction in [0.0, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1.0] {
                for (rpm, hour) in [1200.0, 2100.0, 3000.0].into_iter().flat_map(|rpm| (0..12).map(move |h| (rpm, h))) {
                    let spin = Spin { rpm, active_fraction, clock: Clock::from_hours(f64::from(hour)) };
                    let mut throw = spun(spin, mph, Air::SEA_LEVEL);
                    throw.velocity.z += GRAVITY * 0.5 * 17.0 / (mph * MPH);
                    let mut truth = State::default();
                    let start = State { time: 0.0, position: throw.release, velocity: throw.velocity };
                    let forces = throw.forces;
                    integrate(start, PLATE_FRONT_Y, 64, |v| forces.acceleration(v), |_, state| truth = state);
                    let crossing = throw.fly().crossing();
                    let off_in = (crossing.x - truth.position.x).hypot(crossing.z - truth.position.z) / INCH;
                    assert!(off_in < allowed_in, "{mph} mph, {spin:?}: {off_in} in");
                }
            }
        }
    }
}

/// A flight and the force law itself, step by step: whatever acts on the ball.
#[test]
fn every_flight_follows_the_force_law() {
    let spin = Spin { rpm: 2600.0, active_fraction: 0.6, clock: Clock::from_hours(8.0) };
    for law in LiftLaw::ALL {
        for (side, is_spun) in [([0.0; 2], false), ([0.1, -0.2], false), ([0.0; 2], true), ([-0.1, 0.05], true)] {
            let mut throw = spun(spin, 84.0, Air::SEA_LEVEL);
            throw.velocity = throw.velocity + Vec3::new(1.5, 0.0, -1.0);
            let turns = if is_spun { throw.forces.angular_velocity } else { Vec3::default() };
            throw.forces = Forces { side, lift: law, angular_velocity: turns, ..throw.forces };
            let mut last = State::default();
            let start = State { time: 0.0, position: throw.release, velocity: throw.velocity };
            integrate(start, PLATE_FRONT_Y, STEPS, |v| throw.forces.acceleration(v), |_, state| last = state);
            let end = throw.fly().at(f64::INFINITY);
            assert!((end.position - last.position).norm() < 1e-12, "{law:?} {side:?} {is_spun}");
            assert!((end.velocity - last.velocity).norm() < 1e-12 && (end.time - last.time).abs() < 1e-14);
        }
    }
}

#[test]
fn reading_between_the_steps_is_as_good_as_the_steps() {
    let throw = spun(Spin { rpm: 2600.0, active_fraction: 0.6, clock: Clock::from_hours(8.0) }, 82.0, Air::SEA_LEVEL);
    let path = throw.fly();
    let mut states = Vec::new();
    let start = State { time: 0.0, position: throw.release, velocity: throw.velocity };
    integrate(start, PLATE_FRONT_Y, 512, |v| throw.forces.acceleration(v), |_, state| states.push(state));
    for truth in states {
        let read = path.at(truth.time);
        assert!((read.position - truth.position).norm() < 0.002 * INCH);
        assert!((read.velocity - truth.velocity).norm() < 0.005, "m/s");
    }
}

/// Bullet spin gives no lift (Nathan and Baldwin, Baseball Research Journal 36 (2007) 77), but with
/// the axis fixed in space a small side force grows as the path bends: 1.0 to 2.4 in at 84 mph,
/// 2400 rpm (computed with the rational law, DEVELOPERS.md, Sources 3).
#[test]
fn bullet_spin_moves_the_ball_only_a_little_and_late() {
    let mut bullet =
        spun(Spin { rpm: 2400.0, active_fraction: 0.0, clock: Clock::from_hours(9.0) }, 84.0, Air::SEA_LEVEL);
    bullet.forces.lift = LiftLaw::Rational;
    let Movement { glove_side_in: side, up_in: up } = bullet.movement();
    assert!((1.0..2.45).contains(&side), "{side} in");
    assert!(up.abs() < 0.3, "{up} in");
    let half = bullet.fly().at(bullet.fly().crossing().time / 2.0).position.x - RELEASE.x;
    assert!(half < 0.2 * side * INCH, "a force that grows leaves less than a fifth to the first half");
}

#[test]
fn breaks_scale_with_the_density_of_the_air() {
    let spin = Spin { rpm: 2300.0, active_fraction: 0.9, clock: Clock::from_hours(1.0) };
    let at = |density| spun(spin, 92.0, Air { density }).movement();
    let (full, half) = (at(1.225), at(0.6125));
    for ratio in [half.glove_side_in / full.glove_side_in, half.up_in / full.up_in] {
        assert!((ratio - 0.5).abs() < 0.01, "within 2 % of half: {half:?} {full:?}");
    }
}

#[test]
fn a_mirrored_throw_flies_the_mirrored_path() {
    let spin = Spin { rpm: 2500.0, active_fraction: 0.7, clock: Clock::from_hours(8.5) };
    let right = spun(spin, 81.0, Air::SEA_LEVEL);
    // The axis is a pseudovector: under x -> -x its y and z change sign and its x does not.
    let w = right.forces.angular_velocity;
    let left = Throw {
        release: Vec3::new(-right.release.x, right.release.y, right.release.z),
        forces: Forces { angular_velocity: Vec3::new(w.x, -w.y, -w.z), ..right.forces },
        ..right
    };
    let (a, b) = (right.fly().crossing(), left.fly().crossing());
    assert!((a.x + b.x).abs() < 1e-12 && (a.z - b.z).abs() < 1e-12 && (a.time - b.time).abs() < 1e-12);
}

proptest! {
    #[test]
    fn drag_never_adds_energy(
        mph in 50.0..105.0, rpm in 0.0..3500.0, active in 0.0..1.0, hours in 0.0..12.0, density in 0.0..1.4,
    ) {
        let throw = spun(Spin { rpm, active_fraction: active, clock: Clock::from_hours(hours) }, mph, Air { density });
        let path = throw.fly();
        let energy = |t: f64| {
            let state = path.at(t);
            state.velocity.dot(state.velocity) / 2.0 + GRAVITY * state.position.z
        };
        let end = path.crossing().time;
        let mut before = energy(0.0);
        for tenth in 1..=10 {
            let now = energy(end * f64::from(tenth) / 10.0);
            prop_assert!(now <= before + 1e-3, "{now} after {before}");
            before = now;
        }
    }

    /// From a child's lob to the fastest.
    #[test]
    fn a_shape_comes_back_from_its_own_throw(
        mph in 40.0..106.0, up in -22.0..22.0, side in -22.0..24.0, glove_side_in in -16.0..16.0, height_in in 8.0..51.0,
    ) {
        let shape = Shape { speed_mph: mph, vertical_break_in: up, glove_side_break_in: side };
        let target = Location { glove_side_in, height_in };
        let throw = throw_of_shape(shape, RELEASE, target, Air::SEA_LEVEL);
        let found = shape_of_throw(&throw);
        let place = throw.fly().crossing().location();
        prop_assert!((found.vertical_break_in - up).abs() < 1.1e-3, "{found:?}");
        prop_assert!((found.glove_side_break_in - side).abs() < 1.1e-3, "{found:?}");
        prop_assert!((found.speed_mph - mph).abs() < 1e-9);
        prop_assert!((place.glove_side_in - glove_side_in).abs() < 4e-3, "{place:?}");
        prop_assert!((place.height_in - height_in).abs() < 4e-3, "{place:?}");
    }
}

#[test]
fn a_shape_restated_in_other_air_and_back_is_itself() {
    let slider = Shape { speed_mph: 85.0, vertical_break_in: 2.0, glove_side_break_in: 6.0 };
    let thin = Air::standard(1600.0);
    let there = restated(slider, RELEASE, thin, Air::SEA_LEVEL);
    assert!((there.glove_side_break_in / 6.0 - 1.225 / thin.density).abs() < 0.02);
    let back = restated(there, RELEASE, Air::SEA_LEVEL, thin);
    assert!((back.glove_side_break_in - 6.0).abs() < 1e-3 && (back.vertical_break_in - 2.0).abs() < 1e-3);
}

#[test]
fn spin_pushes_where_its_clock_says() {
    for hours in [0.5, 3.0, 6.5, 9.0] {
        let clock = Clock::from_hours(hours);
        let spin = Spin { rpm: 2200.0, active_fraction: 1.0, clock };
        let push = break_of_spin(spin, 88.0 * MPH, RELEASE, LiftLaw::DEFAULT, Air::SEA_LEVEL);
        assert!(clock.hours_to(Clock::from_push(push.glove_side_in, push.up_in)).abs() < 0.1, "{hours}");
    }
}

//! How long a flight takes: `cargo bench --bench flight`.
//!
//! Everything above the flight model flies pitches by the hundred thousand, so one flight should
//! take half a microsecond or less. The item counter makes the printed throughput flights (or
//! shapes turned into throws) per second. `compare_flight.py` sets these figures beside the same
//! flight in plain C (`rk4_baseline.c`) and in scipy.

use arsenalfit::ball::Shape;
use arsenalfit::ball::flight::inverse::{MIDDLE, throw_of_shape};
use arsenalfit::ball::flight::{Air, Crossing, Forces, Throw};
use arsenalfit::ball::spin::Spin;
use arsenalfit::base::geometry::{Clock, Vec3};
use arsenalfit::base::units::MPH;
use divan::counter::ItemsCount;
use divan::{Bencher, black_box};

// The same throw as in rk4_baseline.c and compare_flight.py.
const RELEASE: Vec3 = Vec3::new(-0.6, 16.6, 1.8);
const VELOCITY: Vec3 = Vec3::new(1.2, -82.0 * MPH, 0.3);

fn main() {
    divan::main();
}

/// One flight per iteration of `throw`, hidden from the optimizer.
fn fly(bencher: Bencher, throw: Throw) {
    bencher.counter(ItemsCount::new(1_usize)).bench_local(|| -> Crossing { black_box(throw).fly().crossing() });
}

#[divan::bench]
fn spun_flight(bencher: Bencher) {
    let spin = Spin { rpm: 2500.0, active_fraction: 0.7, clock: Clock::from_hours(8.5) };
    let angular_velocity = spin.angular_velocity(VELOCITY.unit());
    let forces = Forces { angular_velocity, ..Forces::sideways(Air::SEA_LEVEL, [0.0; 2]) };
    fly(bencher, Throw { release: RELEASE, velocity: VELOCITY, forces });
}

#[divan::bench]
fn side_force_flight(bencher: Bencher) {
    let forces = Forces::sideways(Air::SEA_LEVEL, [0.15, -0.05]);
    fly(bencher, Throw { release: RELEASE, velocity: VELOCITY, forces });
}

#[divan::bench]
fn inverse(bencher: Bencher) {
    let sweeper = Shape { speed_mph: 82.0, vertical_break_in: 1.0, glove_side_break_in: 15.0 };
    bencher
        .counter(ItemsCount::new(1_usize))
        .bench_local(|| throw_of_shape(black_box(sweeper), black_box(RELEASE), MIDDLE, Air::SEA_LEVEL));
}

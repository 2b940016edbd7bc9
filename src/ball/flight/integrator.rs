//! Fourth-order Runge-Kutta over distance.
//!
//! A pitch is followed from plane to plane, so the step is in y, not in time: the plate is reached
//! exactly, without a search for the moment of crossing. Without air every state is a polynomial
//! in y of degree two, which the method follows without error.

use crate::base::geometry::Vec3;

/// A ball at one moment.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct State {
    /// Seconds since release.
    pub time: f64,
    /// Where it is.
    pub position: Vec3,
    /// Where it is going.
    pub velocity: Vec3,
}

/// Rate of change of a state per metre of y.
#[derive(Clone, Copy)]
struct Slope {
    time: f64,
    position: Vec3,
    velocity: Vec3,
}

/// The states at `steps` + 1 equally spaced planes from `start` to the plane at `end_y`, handed
/// one by one to `visit` (the start first). The ball must keep moving toward that plane.
pub fn integrate(
    start: State,
    end_y: f64,
    steps: usize,
    acceleration: impl Fn(Vec3) -> Vec3,
    mut visit: impl FnMut(usize, State),
) {
    let step = (end_y - start.position.y) / steps as f64;
    let mut state = start;
    visit(0, state);
    for index in 1..=steps {
        state = advance(state, step, &acceleration);
        state.position.y = start.position.y + step * index as f64;
        visit(index, state);
    }
}

#[inline]
fn advance(state: State, step: f64, acceleration: &impl Fn(Vec3) -> Vec3) -> State {
    let slope = |s: State| {
        let per_y = 1.0 / s.velocity.y;
        Slope { time: per_y, position: s.velocity * per_y, velocity: acceleration(s.velocity) * per_y }
    };
    let k1 = slope(state);
    let k2 = slope(moved(state, k1, step / 2.0));
    let k3 = slope(moved(state, k2, step / 2.0));
    let k4 = slope(moved(state, k3, step));
    let mean = Slope {
        time: (k1.time + 2.0 * (k2.time + k3.time) + k4.time) / 6.0,
        position: (k1.position + (k2.position + k3.position) * 2.0 + k4.position) * (1.0 / 6.0),
        velocity: (k1.velocity + (k2.velocity + k3.velocity) * 2.0 + k4.velocity) * (1.0 / 6.0),
    };
    moved(state, mean, step)
}

#[inline]
fn moved(state: State, slope: Slope, step: f64) -> State {
    State {
        time: state.time + slope.time * step,
        position: state.position + slope.position * step,
        velocity: state.velocity + slope.velocity * step,
    }
}

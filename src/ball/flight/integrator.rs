//! Fourth-order Runge-Kutta over distance.
//!
//! A pitch is followed from plane to plane, so the step is in y, not in time: the plate is reached
//! exactly, without a search for the moment of crossing. Without air every state is a polynomial
//! in y of degree two, which the method follows without error.

use super::rates::Rates;
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

/// The states at `steps` + 1 equally spaced planes from `start` to the plane at `end_y`, handed
/// one by one to `visit` (the start first). The ball must keep moving toward that plane.
pub fn integrate(
    start: State,
    end_y: f64,
    steps: usize,
    acceleration: impl Fn(Vec3) -> Vec3,
    visit: impl FnMut(usize, State),
) {
    integrate_rates(start, end_y, steps, |velocity| Rates::of(acceleration(velocity), velocity), visit);
}

/// As [`integrate`], from the rates per metre of y at a velocity.
#[inline]
pub(super) fn integrate_rates(
    start: State,
    end_y: f64,
    steps: usize,
    rates: impl Fn(Vec3) -> Rates,
    mut visit: impl FnMut(usize, State),
) {
    let step = (end_y - start.position.y) / steps as f64;
    let mut state = start;
    visit(0, state);
    for index in 1..=steps {
        state = advance(state, step, &rates);
        state.position.y = start.position.y + step * index as f64;
        visit(index, state);
    }
}

/// One step. What acts on the ball depends on its velocity alone, so only that is followed inside the step.
#[inline]
fn advance(state: State, step: f64, rates: &impl Fn(Vec3) -> Rates) -> State {
    let first = state.velocity;
    let k1 = rates(first);
    let second = first + k1.velocity * (step / 2.0);
    let k2 = rates(second);
    let third = first + k2.velocity * (step / 2.0);
    let k3 = rates(third);
    let fourth = first + k3.velocity * step;
    let k4 = rates(fourth);
    let sixth = step / 6.0;
    let way = first * k1.time + (second * k2.time + third * k3.time) * 2.0 + fourth * k4.time;
    State {
        time: state.time + (k1.time + 2.0 * (k2.time + k3.time) + k4.time) * sixth,
        position: state.position + way * sixth,
        velocity: first + (k1.velocity + (k2.velocity + k3.velocity) * 2.0 + k4.velocity) * sixth,
    }
}

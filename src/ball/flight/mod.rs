//! The flight of a pitch: forces, integration, and the way back from a shape to the throw.
//!
//! Force per mass = gravity + `(ρ A v² / 2m) (-C_D v̂ + C_L (ω̂_T × v̂) + side)`, with the spin axis
//! fixed in space. Forward: [`Throw::fly`]. Backward: [`inverse`].

mod against;
mod air;
mod forces;
mod integrator;
pub mod inverse;
mod rates;
mod trajectory;

pub use against::{Against, drag_share};
pub use air::{Air, saturation_pressure};
pub use forces::{BALL_AREA, BALL_MASS, DRAG_COEFFICIENT, Forces, GRAVITY};
pub use integrator::{State, integrate};
pub use trajectory::{Crossing, STEPS, Throw, Trajectory};

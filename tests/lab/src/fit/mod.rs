//! Fitting a hitter to throws: penalised maximum likelihood by Gauss-Newton steps.
//!
//! Three questions are put to every throw: a swing? a miss, given a swing? solid, given contact? The
//! chance of each is turned into a logit; the Jacobian of all logits in the free parameters is taken
//! by differences, and the step is that of a logistic regression on it, damped after Levenberg and
//! Marquardt (D. W. Marquardt, *J. SIAM* 11 (1963) 431, from memory). The priors are normal on the
//! transformed parameters, so the Hessian at the end is that of the posterior, and its inverse the
//! covariance of Laplace's approximation.

mod law;
mod program;
mod steps;

pub use law::{Joint, Law, Prior};
pub use program::{ProgramLaw, met};
pub use steps::{Fit, fit};

//! stub
use crate::hitter::{Chances, CountGroup};
pub fn runs(c: &Chances, group: CountGroup) -> f64 {
    let k = match group {
        CountGroup::Other => 0,
        CountGroup::First => 1,
        CountGroup::HitterAhead | CountGroup::ThreeNothing => 2,
        CountGroup::TwoStrikes => 3,
    };
    let ball = [0.046, 0.035, 0.133, 0.067][k];
    let called = [-0.056, -0.042, -0.064, -0.192][k];
    let miss = [-0.061, -0.045, -0.074, -0.234][k];
    let foul = [-0.060, -0.047, -0.064, 0.0][k];
    let contact = c.contact;
    let fouls = 0.484 * contact;
    let solid = c.solid; // in play
    let other = (contact - fouls - solid).max(0.0);
    ball * c.ball() + called * c.called_strike + miss * c.miss() + foul * fouls + 0.370 * solid - 0.069 * other
}

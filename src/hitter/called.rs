//! What is called a strike when nobody swings.
//!
//! A zone with round corners, fitted to 370,000 called pitches of a season (2012, by inch, batter's hand and count: R
//! package abdwr3edata, companion of Marchi, Albert and Baumer, *Analyzing Baseball Data with R*, CC0) and moved to
//! heights relative to the hitter's own zone on a league day of 2023 (same package): with r the distance from the
//! middle of the called zone in units of its reach in that direction, the chance is 1 / (1 + exp(-12.8 (1 - r))).

use crate::base::Location;
use crate::base::geometry::Side;

use super::{CountGroup, Zone};

/// How square the zone is: 2 would be an ellipse, infinity a rectangle.
const SQUARENESS: f64 = 3.99;
/// How firm its edge is.
const FIRMNESS: f64 = 12.8;
/// Half its width, in.
const HALF_WIDTH_IN: f64 = 10.62;
/// Half its height, as a factor on half the rule book's zone of this hitter.
const HALF_HEIGHT: f64 = 1.098;
/// Its middle: away from the hitter, in.
const AWAY_IN: f64 = 0.42;
/// Its middle: above the middle of the rule book's zone, in.
const ABOVE_IN: f64 = -0.255;

/// How much farther it reaches by count, in.
fn reach_in(group: CountGroup) -> f64 {
    match group {
        CountGroup::Other => 0.0,
        CountGroup::First => 0.44,
        CountGroup::HitterAhead | CountGroup::ThreeNothing => 0.46,
        CountGroup::TwoStrikes => -0.41,
    }
}

/// Chance that a pitch at `place` that is not swung at is called a strike.
pub fn called_strike(place: Location, zone: Zone, side: Side, group: CountGroup) -> f64 {
    let reach = reach_in(group);
    let across = (side.away_sign() * place.glove_side_in - AWAY_IN) / (HALF_WIDTH_IN + reach);
    let up = (place.height_in - zone.middle_in - ABOVE_IN) / (HALF_HEIGHT * zone.half_in + reach);
    let out = (across.abs().powf(SQUARENESS) + up.abs().powf(SQUARENESS)).powf(1.0 / SQUARENESS);
    1.0 / (1.0 + (-FIRMNESS * (1.0 - out)).exp())
}

//! What real pitches of a family show.

use crate::base::Location;

/// Where pitches cross the front of the plate on average, whoever the hitter.
pub const USUAL_PLACE: Location = Location { glove_side_in: 0.5, height_in: 26.9 };

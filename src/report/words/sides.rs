//! Sides of the plate, in words.

use crate::base::geometry::Side;

/// "same-side", as it stands before "hitters".
pub(crate) fn side_name(side: Side) -> &'static str {
    match side {
        Side::Same => "same-side",
        Side::Opposite => "opposite-side",
    }
}

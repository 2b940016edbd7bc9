//! Places at the plate, in words: up and away, low and in, off the plate.
//!
//! The zone is cut into three rows and the plate into three columns; beyond them a place is off the plate, above the
//! zone or below it. Away and in are as the hitter of that side sees them.

use crate::base::Location;
use crate::base::geometry::{PLATE_HALF_WIDTH, Side};
use crate::base::units::INCH;
use crate::hitter::Zone;

/// Where `place` is to a hitter of `side` with this zone.
pub(crate) fn place(place: Location, zone: Zone, side: Side) -> String {
    let height = Part::of(place.height_in - zone.middle_in, zone.half_in);
    let away = Part::of(side.away_sign() * place.glove_side_in, PLATE_HALF_WIDTH / INCH);
    let rows = ["below the zone", "low", "", "up", "above the zone"];
    let columns = ["off the plate in", "in", "", "away", "off the plate away"];
    let (row, column) = (rows[height as usize], columns[away as usize]);
    match (row, column) {
        ("", "") => "middle".into(),
        ("", only) | (only, "") => only.into(),
        _ if height.is_outside() || away.is_outside() => format!("{row}, {column}"),
        _ => format!("{row} and {column}"),
    }
}

/// A part of an axis, from its lower end.
#[derive(Debug, Clone, Copy)]
enum Part {
    Below,
    Low,
    Middle,
    High,
    Above,
}

impl Part {
    /// Of what lies `off_in` from the middle of thirds that end `half_in` to both sides of it.
    fn of(off_in: f64, half_in: f64) -> Self {
        match off_in {
            off if off < -half_in => Self::Below,
            off if off < -half_in / 3.0 => Self::Low,
            off if off <= half_in / 3.0 => Self::Middle,
            off if off <= half_in => Self::High,
            _ => Self::Above,
        }
    }

    fn is_outside(self) -> bool {
        matches!(self, Self::Below | Self::Above)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn away_from_one_side_is_in_on_the_other() {
        let at = |glove_side_in: f64, up_in: f64, side: Side| {
            let height_in = Zone::TYPICAL.middle_in + up_in;
            place(Location { glove_side_in, height_in }, Zone::TYPICAL, side)
        };
        assert_eq!(at(5.0, 6.0, Side::Same), "up and away");
        assert_eq!(at(5.0, 6.0, Side::Opposite), "up and in");
        assert_eq!(at(-10.0, -6.0, Side::Opposite), "low, off the plate away");
        assert_eq!(at(0.0, -12.0, Side::Same), "below the zone");
        assert_eq!(at(1.0, 1.0, Side::Same), "middle");
    }
}

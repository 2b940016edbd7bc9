//! Where pitches of a shape are customarily thrown: centre and spread at the plate, by side of hitter and strikes.
//!
//! Counted on one day of the top league by family (R package abdwr3edata, CC0; `places.csv`: inches away from the hitter
//! and up from the middle of the zone, targets mixed in) and blended by what the shape is like on this arm, not by its
//! name: a twin under another name goes where its twin goes. The spread is the customary one with the athlete's command in
//! the place of a professional's: spread^2 = customary^2 + command^2 - 6.5^2.

use std::sync::LazyLock;

use crate::athlete::PROFESSIONAL_COMMAND_IN;
use crate::athlete::natural::Likeness;
use crate::athlete::profile::PerSide;
use crate::ball::Family;
use crate::base::Location;
use crate::base::geometry::Side;
use crate::hitter::{Scatter, Zone};

use super::facing::{Placed, Spot, Spots};
use super::offering::Offering;

/// Centre and spread of a family, in: away from the hitter, up from the middle of the zone.
#[derive(Debug, Clone, Copy)]
struct Place {
    family: Family,
    side: Side,
    two_strikes: bool,
    numbers: [f64; 4],
}

static PLACES: LazyLock<Vec<Place>> = LazyLock::new(|| include_str!("places.csv").lines().skip(1).map(place).collect());

/// No pitch is spread more finely than this over the plate, in.
const LEAST_SPREAD_IN: f64 = 5.0;

fn place(line: &str) -> Place {
    let cells: Vec<&str> = line.split(',').collect();
    let number = |column: usize| cells[column].parse().expect("the shipped table holds numbers");
    Place {
        family: Family::from_name(cells[0]).expect("the shipped table names families"),
        side: if cells[1] == "same" { Side::Same } else { Side::Opposite },
        two_strikes: cells[2] == "two",
        numbers: [number(3), number(4), number(5), number(6)],
    }
}

/// A pitch where such pitches are customarily thrown, or where the athlete aims it.
pub fn customary(offering: Offering) -> Placed {
    let spots = PerSide::from_fn(|side| Spots {
        early: spot(&offering, side, false),
        two_strikes: spot(&offering, side, true),
    });
    Placed { offering, spots, own: PerSide::default() }
}

fn spot(offering: &Offering, side: Side, two_strikes: bool) -> Spot {
    let [away, up, sd_away, sd_up] = blended(&offering.likeness, side, two_strikes);
    let customary = Location { glove_side_in: side.away_sign() * away, height_in: Zone::TYPICAL.middle_in + up };
    let aim = offering.own_aim(side).map_or(customary, |aim| {
        let (away, height_in) = aim.place_in();
        Location { glove_side_in: side.away_sign() * away, height_in }
    });
    let spread = |customary: f64, command: f64| {
        let squared = customary.powi(2) + command.powi(2) - PROFESSIONAL_COMMAND_IN.powi(2);
        squared.max(LEAST_SPREAD_IN.powi(2)).sqrt()
    };
    let command = offering.command;
    let scatter = Scatter { side_in: spread(sd_away, command.side_in), height_in: spread(sd_up, command.height_in) };
    Spot { aim, scatter }
}

fn blended(likeness: &Likeness, side: Side, two_strikes: bool) -> [f64; 4] {
    let mut sum = [0.0; 4];
    for place in PLACES.iter().filter(|place| (place.side, place.two_strikes) == (side, two_strikes)) {
        let weight = likeness.weight(place.family);
        sum.iter_mut().zip(place.numbers).for_each(|(sum, number)| *sum += weight * number);
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::athlete::natural::FAMILIES;

    #[test]
    fn every_family_has_a_place_for_each_side_and_number_of_strikes() {
        for family in FAMILIES {
            let rows = PLACES.iter().filter(|place| place.family == family).count();
            assert_eq!(rows, 4, "{family}");
        }
    }

    #[test]
    fn four_seams_go_up_and_breaking_balls_down_and_both_farther_with_two_strikes() {
        let up = |family: Family, two_strikes: bool| {
            let found = PLACES.iter().find(|p| (p.family, p.side, p.two_strikes) == (family, Side::Same, two_strikes));
            found.expect("a place").numbers[1]
        };
        assert!(up(Family::FourSeam, true) > up(Family::FourSeam, false) && up(Family::FourSeam, false) > 0.0);
        for family in [Family::Slider, Family::Sweeper, Family::Curveball] {
            assert!(up(family, true) < up(family, false) && up(family, false) < 0.0, "{family}");
        }
    }
}

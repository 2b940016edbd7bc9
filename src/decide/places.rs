//! stub
use super::facing::{Placed, Spot, Spots};
use super::offering::Offering;
use crate::athlete::profile::PerSide;
use crate::base::Location;
use crate::base::geometry::Side;
use crate::hitter::{Scatter, Zone};
pub fn customary(offering: Offering) -> Placed {
    let spots = PerSide::from_fn(|side| Spots {
        early: spot(&offering, side, "fewer"),
        two_strikes: spot(&offering, side, "two"),
    });
    Placed { offering, spots, own: PerSide::default() }
}
fn spot(o: &Offering, side: Side, strikes: &str) -> Spot {
    let mut m = [0.0; 4];
    let s = match side {
        Side::Same => "same",
        Side::Opposite => "opposite",
    };
    for line in include_str!("places.csv").lines().skip(1) {
        let c: Vec<&str> = line.split(',').collect();
        if c[1] != s || c[2] != strikes {
            continue;
        }
        let w = o.likeness.mix(|f| f64::from(f.name() == c[0]));
        for k in 0..4 {
            m[k] += w * c[3 + k].parse::<f64>().unwrap();
        }
    }
    let sp = |custom: f64, command: f64| (custom * custom + command * command - 42.25).max(36.0).sqrt();
    Spot {
        aim: Location { glove_side_in: side.away_sign() * m[0], height_in: Zone::TYPICAL.middle_in + m[1] },
        scatter: Scatter { side_in: sp(m[2], o.command.side_in), height_in: sp(m[3], o.command.height_in) },
    }
}

//! A pitch met by a hitter of one side in one state of the count: everything that can be worked out before it is known
//! how often each pitch is thrown and where exactly this one is aimed.

use std::sync::Arc;

use crate::base::Location;
use crate::base::geometry::Side;

use super::meeting::{Across, Height, Meeting};
use super::places::Lattice;
use super::umpire::{Taken, Umpire};
use super::{Belief, CountGroup, Delivery, Hitter, Met, Scatter, Spread, Struck};

/// What becomes of a pitch, averaged over the places it ends up at; shares of all pitches thrown.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Chances {
    /// He swings.
    pub swing: f64,
    /// He swings and hits the ball.
    pub contact: f64,
    /// He swings and hits it hard on a good line.
    pub solid: f64,
    /// He takes it and it is called a strike.
    pub called_strike: f64,
    /// No part of the ball passes through the zone.
    pub outside: f64,
    /// No part of it does, and he swings.
    pub swing_outside: f64,
}

impl Chances {
    /// He swings and misses.
    pub fn miss(&self) -> f64 {
        self.swing - self.contact
    }

    /// He takes it and it is called a ball.
    pub fn ball(&self) -> f64 {
        1.0 - self.swing - self.called_strike
    }

    /// Adds what a pitch does at a place of this weight.
    #[inline]
    fn add(&mut self, weight: f64, struck: &Struck, taken: Taken) {
        self.swing += weight * struck.swing;
        self.contact += weight * struck.contact;
        self.solid += weight * struck.solid;
        self.called_strike += weight * (1.0 - struck.swing) * taken.called_strike;
        self.outside += weight * (1.0 - taken.inside);
        self.swing_outside += weight * struck.swing * (1.0 - taken.inside);
    }
}

/// A ball at one place met under one belief: the weight of the belief and what comes of it, times that weight.
type Weighed = [f64; 4];

/// One pitch, one side, one state of the count: met under each belief at each place of a lattice.
#[derive(Debug, Clone)]
pub struct Row {
    hitter: Hitter,
    delivery: Delivery,
    fastest_s: f64,
    side: Side,
    group: CountGroup,
    lattice: Lattice,
    spread: Spread,
    umpire: Arc<Umpire>,
    met: Vec<Vec<Weighed>>,
}

impl Row {
    /// The pitch scattered about its aim, met by a hitter who knows the pitches of `beliefs`, the fastest of which takes
    /// `fastest_s`.
    pub fn of(
        hitter: &Hitter,
        delivery: &Delivery,
        scatter: Scatter,
        beliefs: &[Belief],
        fastest_s: f64,
        side: Side,
        group: CountGroup,
    ) -> Self {
        let lattice = Lattice::about(delivery.aim(), scatter, hitter.zone);
        let spread = lattice.spread(delivery.aim(), scatter);
        let umpire = Umpire::behind(hitter.zone, side, group);
        let (hitter, delivery) = (*hitter, *delivery);
        let mut row = Self { hitter, delivery, fastest_s, side, group, lattice, spread, umpire, met: Vec::new() };
        for belief in beliefs {
            row.push(belief);
        }
        row
    }

    /// One belief more: a pitch he gets to know. Nothing else is worked out again, so it must not be the fastest.
    pub fn push(&mut self, belief: &Belief) {
        let hitter = &self.hitter;
        let meeting = Meeting::of(hitter, &self.delivery.aimed.course, belief, self.fastest_s, self.side, self.group);
        let delivery = &self.delivery;
        let heights: Vec<Height> =
            self.lattice.height.places().map(|place| meeting.height(hitter, delivery.height_at(place))).collect();
        let across: Vec<Across> =
            self.lattice.across.places().map(|place| meeting.across(hitter, delivery.across_at(place))).collect();
        let met =
            heights.iter().flat_map(|height| across.iter().map(|across| weighed(meeting.met(hitter, height, across))));
        self.met.push(met.collect());
    }

    /// Chances where it is aimed, when the pitches are thrown in the shares `mix`.
    pub fn chances(&self, mix: &[f64]) -> Chances {
        self.mixed(mix).chances(&self.spread)
    }

    /// The same places with another aim and scatter.
    pub fn spread(&self, aim: Location, scatter: Scatter) -> Spread {
        self.lattice.spread(aim, scatter)
    }

    /// What comes of the pitch at each place when the pitches are thrown in the shares `mix`.
    pub fn mixed(&self, mix: &[f64]) -> Mixed<'_> {
        let mut total = vec![[0.0; 4]; self.lattice.across.count() * self.lattice.height.count()];
        for (met, share) in self.met.iter().zip(mix) {
            let weight = self.hitter.weight_of_share(*share).0;
            for (sum, at) in total.iter_mut().zip(met) {
                for (sum, at) in sum.iter_mut().zip(at) {
                    *sum += weight * at;
                }
            }
        }
        let struck = |[weight, swing, contact, solid]: [f64; 4]| {
            let per = 1.0 / weight;
            Struck { swing: swing * per, contact: contact * per, solid: solid * per }
        };
        Mixed { row: self, struck: total.into_iter().map(struck).collect() }
    }
}

/// A row whose shares are known.
#[derive(Debug, Clone)]
pub struct Mixed<'row> {
    row: &'row Row,
    struck: Vec<Struck>,
}

impl Mixed<'_> {
    /// Chances when the places are shared out so.
    pub fn chances(&self, spread: &Spread) -> Chances {
        let lattice = &self.row.lattice;
        let mut chances = Chances::default();
        let mut struck = self.struck.iter();
        for (height, up) in lattice.height.numbers().zip(&spread.height) {
            for ((across, weight), struck) in lattice.across.numbers().zip(&spread.across).zip(&mut struck) {
                chances.add(up * weight, struck, self.row.umpire.at(height, across));
            }
        }
        chances
    }
}

fn weighed(met: Met) -> Weighed {
    let Struck { swing, contact, solid } = met.struck;
    let weight = met.log_weight.exp();
    [1.0, swing, contact, solid].map(|part| weight * part)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::athlete::profile::Level;
    use crate::ball::Shape;
    use crate::ball::flight::Air;
    use crate::base::geometry::Vec3;
    use crate::hitter::{Reading, called_strike, outcome};

    #[test]
    fn explore() {
        let hitter = Hitter::best(Level::Professional, Reading::Shares);
        let release = Vec3::new(-0.55, 16.5, 1.78);
        let shape = |s, v, g| Shape { speed_mph: s, vertical_break_in: v, glove_side_break_in: g };
        let shapes =
            [shape(94.3, 14.7, -7.4), shape(85.1, -0.2, 4.8), shape(79.3, -12.4, 9.6), shape(85.9, 4.0, -14.5)];
        let aims = [(1.0, 32.5), (4.0, 24.0), (-3.0, 20.0), (2.0, 36.0), (6.0, 28.0)];
        let mut worst = [0.0_f64; 6];
        let mut sum = [0.0_f64; 6];
        let mut shift = [0.0_f64; 3];
        let mut n = 0;
        for sd in [(6.5, 6.5), (8.4, 9.7), (10.0, 12.0)] {
            let scatter = Scatter { side_in: sd.0, height_in: sd.1 };
            for group in CountGroup::ALL {
                for side in Side::BOTH {
                    for s in shapes {
                        for aim in aims {
                            let aim = Location { glove_side_in: aim.0, height_in: aim.1 };
                            let flown: Vec<Delivery> =
                                shapes.iter().map(|s| Delivery::of(*s, release, Air::SEA_LEVEL, aim)).collect();
                            let beliefs: Vec<Belief> = flown.iter().map(Delivery::belief).collect();
                            let d = Delivery::of(s, release, Air::SEA_LEVEL, aim);
                            let mix = [0.4, 0.3, 0.15, 0.15];
                            let row = Row::of(&hitter, &d, scatter, &beliefs, beliefs[0].flight_s, side, group);
                            let a = row.chances(&mix);
                            let mut b = [0.0; 6];
                            let mut total = 0.0;
                            let m = 61;
                            for i in 0..m {
                                for k in 0..m {
                                    let at = |i: i32| (f64::from(i) + 0.5) / f64::from(m) * 9.6 - 4.8;
                                    let (u, v) = (at(i), at(k));
                                    let w = (-0.5 * (u * u + v * v)).exp();
                                    let place = Location {
                                        glove_side_in: aim.glove_side_in + u * sd.0,
                                        height_in: aim.height_in + v * sd.1,
                                    };
                                    let o = outcome(&hitter, &d.ball_at(place), &beliefs, &mix, side, group);
                                    let hw = 8.5 + 1.4523;
                                    let hh = hitter.zone.half_in + 1.4523;
                                    let (hx, hz) = (sd.0 * 9.6 / f64::from(m) / 2.0, sd.1 * 9.6 / f64::from(m) / 2.0);
                                    let part = |x: f64, h: f64, half: f64| {
                                        (((x + h).min(half) - (x - h).max(-half)) / (2.0 * h)).clamp(0.0, 1.0)
                                    };
                                    let out = 1.0
                                        - part(place.glove_side_in, hx, hw)
                                            * part(place.height_in - hitter.zone.middle_in, hz, hh);
                                    total += w;
                                    for (b, v) in b.iter_mut().zip([
                                        o.swing,
                                        o.contact,
                                        o.solid,
                                        (1.0 - o.swing) * called_strike(place, hitter.zone, side, group),
                                        out,
                                        o.swing * out,
                                    ]) {
                                        *b += w * v;
                                    }
                                }
                            }
                            for v in &mut b {
                                *v /= total;
                            }
                            for (i, (x, y)) in
                                [a.swing, a.contact, a.solid, a.called_strike, a.outside, a.swing_outside]
                                    .into_iter()
                                    .zip(b)
                                    .enumerate()
                            {
                                worst[i] = worst[i].max((x - y).abs());
                                sum[i] += (x - y).abs();
                            }
                            // moved aim
                            let other =
                                Location { glove_side_in: aim.glove_side_in - 4.0, height_in: aim.height_in + 4.0 };
                            let moved = row.mixed(&mix).chances(&row.spread(other, scatter));
                            let real = Row::of(
                                &hitter,
                                &Delivery::of(s, release, Air::SEA_LEVEL, other),
                                scatter,
                                &beliefs,
                                beliefs[0].flight_s,
                                side,
                                group,
                            )
                            .chances(&mix);
                            for (w, (x, y)) in shift.iter_mut().zip([
                                (moved.swing, real.swing),
                                (moved.contact, real.contact),
                                (moved.called_strike, real.called_strike),
                            ]) {
                                *w = w.max((x - y).abs());
                            }
                            n += 1;
                        }
                    }
                }
            }
        }
        println!("worst {worst:.5?} mean {:.6?} moved {shift:.5?}", sum.map(|s| s / f64::from(n)));
    }
}

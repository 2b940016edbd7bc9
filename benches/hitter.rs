//! How long the hitter takes: `cargo bench --bench hitter`. `compare_hitter.py` sets the first figure beside the same
//! sums in plain Python and in numpy.
//!
//! One ball met under one belief; one pitch met under four beliefs over its places; and all that the use of a
//! four-pitch arsenal needs: two sides, five states of the count and 64 likely hitters, on all cores.

use arsenalfit::athlete::profile::Level;
use arsenalfit::ball::Shape;
use arsenalfit::ball::flight::Air;
use arsenalfit::base::Location;
use arsenalfit::base::geometry::{Side, Vec3};
use arsenalfit::hitter::{Belief, CountGroup, Delivery, Hitter, Reading, Row, Scatter, meet};
use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use rayon::prelude::*;

fn main() {
    divan::main();
}

const RELEASE: Vec3 = Vec3::new(-0.55, 16.5, 1.78);
const SCATTER: Scatter = Scatter { side_in: 8.4, height_in: 9.7 };
const MIX: [f64; 4] = [0.45, 0.2, 0.15, 0.2];

/// About the league's four-seam, slider, curveball and changeup, each with an aim.
fn arsenal() -> [Delivery; 4] {
    let pitches = [
        ((94.3, 14.7, -7.4), (1.0, 32.5)),
        ((85.1, -0.2, 4.8), (4.0, 25.0)),
        ((79.3, -12.4, 9.6), (3.0, 22.0)),
        ((85.9, 4.0, -14.5), (-3.0, 22.0)),
    ];
    pitches.map(|((speed_mph, vertical_break_in, glove_side_break_in), (glove_side_in, height_in))| {
        let shape = Shape { speed_mph, vertical_break_in, glove_side_break_in };
        Delivery::of(shape, RELEASE, Air::SEA_LEVEL, Location { glove_side_in, height_in })
    })
}

#[divan::bench]
fn pair(bencher: Bencher) {
    let hitter = Hitter::best(Level::Professional, Reading::Shares);
    let [fastball, slider, ..] = arsenal();
    let (ball, belief, fastest_s) = (slider.aimed, fastball.belief(), fastball.belief().flight_s);
    bencher
        .counter(ItemsCount::new(1_usize))
        .bench_local(|| meet(&hitter, black_box(&ball), black_box(&belief), fastest_s, Side::Same, CountGroup::Other));
}

#[divan::bench]
fn row_of_four_beliefs(bencher: Bencher) {
    let hitter = Hitter::best(Level::Professional, Reading::Shares);
    let pitches = arsenal();
    let beliefs = pitches.map(|pitch| pitch.belief());
    let row = |pitch: &Delivery| {
        Row::of(&hitter, pitch, SCATTER, &beliefs, beliefs[0].flight_s, Side::Same, CountGroup::Other)
    };
    bencher.counter(ItemsCount::new(1_usize)).bench_local(|| row(black_box(&pitches[1])));
}

#[divan::bench]
fn chances_of_a_row(bencher: Bencher) {
    let hitter = Hitter::best(Level::Professional, Reading::Shares);
    let pitches = arsenal();
    let beliefs = pitches.map(|pitch| pitch.belief());
    let row = Row::of(&hitter, &pitches[1], SCATTER, &beliefs, beliefs[0].flight_s, Side::Same, CountGroup::Other);
    bencher.counter(ItemsCount::new(1_usize)).bench_local(|| row.chances(black_box(&MIX)));
}

#[divan::bench]
fn use_of_four_pitches(bencher: Bencher) {
    let hitters = Hitter::draws(Level::Professional, Reading::Shares);
    let pitches = arsenal();
    let beliefs = pitches.map(|pitch| pitch.belief());
    bencher
        .counter(ItemsCount::new(hitters.len()))
        .bench_local(|| hitters.par_iter().map(|hitter| misses(hitter, black_box(&pitches), &beliefs)).sum::<f64>());
}

/// Misses of all pitches against both sides in all states of the count.
fn misses(hitter: &Hitter, pitches: &[Delivery], beliefs: &[Belief]) -> f64 {
    let mut sum = 0.0;
    for side in Side::BOTH {
        for group in CountGroup::ALL {
            for (pitch, share) in pitches.iter().zip(MIX) {
                let row = Row::of(hitter, pitch, SCATTER, beliefs, beliefs[0].flight_s, side, group);
                sum += share * row.chances(&MIX).miss();
            }
        }
    }
    sum
}

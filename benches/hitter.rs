//! How long the hitter takes: `cargo bench --bench hitter`.
//!
//! A piece of advice asks for some hundred thousand expectations, a plan for each side and the best
//! shape of several families, all over again in every draw of the unknown; these are its three sizes of
//! work. The profile is a shipped one with a changeup and a slider
//! added, so that he throws four pitches.

use arsenalfit::athlete::profile::{Aim, Profile};
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::Side;
use arsenalfit::base::stats::normal_points;
use arsenalfit::files::profile_from_toml;
use arsenalfit::former::evaluate::{SidePlan, Stage, Thrown, Today};
use arsenalfit::former::hitter::Facing;
use arsenalfit::former::search::{Command, best_of_family};
use divan::counter::ItemsCount;
use divan::{Bencher, black_box};

const FOUR_PITCHES: &str = concat!(
    include_str!("../profiles/high-slot-left.toml"),
    "[[pitch]]\nname = \"changeup\"\nfamily = \"changeup\"\nspeed_mph = 82\n",
    "vertical_break_in = 11\nglove_side_break_in = -11\nusage = { same_side = 0, opposite_side = 0 }\n",
    "[[pitch]]\nname = \"slider\"\nfamily = \"slider\"\nspeed_mph = 83\n",
    "vertical_break_in = 1\nglove_side_break_in = 4\nusage = { same_side = 0, opposite_side = 0 }\n",
);

fn main() {
    divan::main();
}

fn four_pitches() -> Profile {
    profile_from_toml(FOUR_PITCHES, "four pitches").unwrap_or_else(|error| panic!("{error}"))
}

/// One mix of five pitches judged on sixty-four points.
#[divan::bench]
fn expectation(bencher: Bencher) {
    let profile = four_pitches();
    let stage = Stage::new(&profile);
    let shape = Shape { speed_mph: 80.0, vertical_break_in: 0.0, glove_side_break_in: 14.0 };
    let sweeper = Thrown { family: Family::Sweeper, shape, ..stage.pitches[3] };
    let decision = stage.decision();
    let laws: Vec<_> = stage
        .pitches
        .iter()
        .chain([&sweeper])
        .map(|pitch| (stage.law(pitch, Aim::Down, Side::Same, decision), stage.habit(pitch, Side::Same, decision)))
        .collect();
    let facing = Facing::new(&laws, &stage.hitter, Side::Same, &normal_points(64, 0.0));
    let mix = [0.4, 0.2, 0.1, 0.1, 0.2];
    bencher.counter(ItemsCount::new(1_usize)).bench_local(|| facing.expected(black_box(&mix)).runs);
}

/// Targets and mix of four pitches against one side.
#[divan::bench]
fn side_plan(bencher: Bencher) {
    let profile = four_pitches();
    let stage = Stage::new(&profile);
    bencher.counter(ItemsCount::new(1_usize)).bench_local(|| SidePlan::new(black_box(&stage), Side::Same).mix.runs);
}

/// The best reachable sweeper and its window, without the draws of the unknown.
#[divan::bench]
fn best_sweeper(bencher: Bencher) {
    let profile = four_pitches();
    let stage = Stage::new(&profile);
    let today = Today::of(&stage);
    bencher
        .counter(ItemsCount::new(1_usize))
        .bench_local(|| best_of_family(black_box(&stage), &today, Family::Sweeper, Command::Mastered, &[]).is_ok());
}

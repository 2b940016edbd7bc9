//! The whole decision: four pitches, five new families, both sides, 64 and 128 draws; use; every single change.

use arsenalfit::ball::Family;
use std::num::NonZeroUsize;

use arsenalfit::decide::advice::Advice;
use arsenalfit::decide::draws::DRAWS;
use arsenalfit::decide::levers::levers;
use arsenalfit::decide::model::Model;
use arsenalfit::decide::new_pitch::Command;
use arsenalfit::decide::usage::Usage;
use arsenalfit::files::profile_from_toml;
use divan::Bencher;

fn main() {
    divan::main();
}

/// Invented: four pitches, so that five of the six families weighed are new to him.
const FOUR_PITCHES: &str = r#"
[athlete]
name = "Bench Athlete"
throws = "right"
age = 22
[[pitch]]
name = "four-seam"
family = "four-seam"
speed_mph = 93
vertical_break_in = 17
glove_side_break_in = -7
[[pitch]]
name = "sinker"
family = "sinker"
speed_mph = 92
vertical_break_in = 8
glove_side_break_in = -15
[[pitch]]
name = "two-seam"
family = "two-seam"
speed_mph = 92
vertical_break_in = 12
glove_side_break_in = -12
[[pitch]]
name = "changeup"
family = "changeup"
speed_mph = 84
vertical_break_in = 6
glove_side_break_in = -15
"#;

#[divan::bench(args = [64, 128], sample_count = 20)]
fn four_pitches_five_families(bencher: Bencher, draws: usize) {
    let profile = profile_from_toml(FOUR_PITCHES, "bench").expect("a valid profile");
    let draws = NonZeroUsize::new(draws).expect("some draws");
    bencher.bench(|| Advice::of(&Model::new(divan::black_box(&profile), draws, 1), Family::Sweeper, Command::Mastered));
}

#[divan::bench(sample_count = 20)]
fn usage_of_four_pitches(bencher: Bencher) {
    let profile = profile_from_toml(FOUR_PITCHES, "bench").expect("a valid profile");
    bencher.bench(|| Usage::of(&Model::new(divan::black_box(&profile), DRAWS, 1)));
}

#[divan::bench(sample_count = 10)]
fn levers_of_four_pitches(bencher: Bencher) {
    let profile = profile_from_toml(FOUR_PITCHES, "bench").expect("a valid profile");
    bencher.bench(|| levers(&Model::new(divan::black_box(&profile), DRAWS, 1)));
}

//! A whole staff: 50, 100 and 200 invented athletes, as `roster` judges them. Cost should grow with
//! their number and no faster.

use arsenalfit::athlete::profile::Profile;
use std::num::NonZeroUsize;

use arsenalfit::decide::new_pitch::Command;
use arsenalfit::decide::roster::{Standing, ranking};
use arsenalfit::files::profile_from_toml;
use divan::Bencher;
use rayon::prelude::*;

fn main() {
    divan::main();
}

/// An invented athlete; the number moves his speeds, breaks, slot and pitches about.
fn athlete(number: usize) -> Profile {
    let step = |modulus: usize| (number * 7 % modulus) as f64;
    let fastball = 87.0 + step(9);
    let mut text = format!(
        "[athlete]\nname = \"Invented {number}\"\nthrows = \"{}\"\nage = 22\n[release]\nslot_deg = {}\n",
        if number.is_multiple_of(3) { "left" } else { "right" },
        30.0 + step(31),
    );
    let mut pitch = |family: &str, speed: f64, vertical: f64, glove: f64| {
        let one = format!(
            "[[pitch]]\nname = \"{family}\"\nfamily = \"{family}\"\nspeed_mph = {speed}\nvertical_break_in = {vertical}\n\
             glove_side_break_in = {glove}\n"
        );
        text.push_str(&one);
    };
    pitch("four-seam", fastball, 13.5 + step(5), -9.0 + step(4));
    pitch("changeup", fastball - 8.0, 3.0 + step(6), -15.0 + step(3));
    if !number.is_multiple_of(3) {
        pitch("slider", fastball - 7.0, -1.0 + step(5), 2.5 + step(3));
    }
    if number % 5 > 2 {
        pitch("curveball", fastball - 14.0, -14.0 + step(5), 4.0 + step(4));
    }
    profile_from_toml(&text, "bench").expect("a valid profile")
}

#[divan::bench(args = [50, 100, 200], sample_count = 1, sample_size = 1)]
fn a_staff_ranked(bencher: Bencher, athletes: usize) {
    let profiles: Vec<Profile> = (0..athletes).map(athlete).collect();
    let draws = NonZeroUsize::new(32).expect("some draws");
    bencher.bench(|| {
        let standings: Vec<_> =
            profiles.par_iter().map(|profile| Standing::of(profile, Command::Mastered, draws, 1)).collect();
        ranking(&standings)
    });
}

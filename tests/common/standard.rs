//! Made-up athletes for the tests of the model, and hitters who face any pitches at any targets.

use arsenalfit::athlete::profile::{Aim, Profile};
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::Side;
use arsenalfit::base::stats::normal_points;
use arsenalfit::files::profile_from_toml;
use arsenalfit::former::evaluate::{SidePlan, Stage, Thrown};
use arsenalfit::former::hitter::Facing;
use arsenalfit::former::search::reach::Reach;

/// The profiles the project ships.
pub(crate) const SHIPPED: [(&str, &str); 5] = [
    ("fourteen-year-old", include_str!("../../profiles/fourteen-year-old.toml")),
    ("high-slot-left", include_str!("../../profiles/high-slot-left.toml")),
    ("low-slot-right-with-sweeper", include_str!("../../profiles/low-slot-right-with-sweeper.toml")),
    ("over-the-top-right", include_str!("../../profiles/over-the-top-right.toml")),
    ("three-quarter-right", include_str!("../../profiles/three-quarter-right.toml")),
];

pub(crate) fn read(name: &str, text: &str) -> Profile {
    profile_from_toml(text, name).unwrap_or_else(|error| panic!("{name}: {error}"))
}

pub(crate) fn shipped() -> Vec<(&'static str, Profile)> {
    SHIPPED.into_iter().map(|(name, text)| (name, read(name, text))).collect()
}

/// Every shipped profile against both sides, with its plan.
pub(crate) fn for_every_plan(mut check: impl FnMut(&str, &Stage, &SidePlan)) {
    for (name, profile) in shipped() {
        let stage = Stage::new(&profile);
        for side in Side::BOTH {
            check(&format!("{name}, {side}"), &stage, &SidePlan::new(&stage, side));
        }
    }
}

pub(crate) fn per_100(runs: f64) -> f64 {
    100.0 * runs
}

pub(crate) fn shape(speed_mph: f64, vertical_break_in: f64, glove_side_break_in: f64) -> Shape {
    Shape { speed_mph, vertical_break_in, glove_side_break_in }
}

/// Textbook shapes around a 93 mph fastball. Common practice, no published source.
pub(crate) const FOUR_SEAM: (Family, [f64; 3]) = (Family::FourSeam, [93.0, 17.0, -8.0]);
pub(crate) const CHANGEUP: (Family, [f64; 3]) = (Family::Changeup, [84.0, 7.0, -14.0]);
pub(crate) const SLIDER: (Family, [f64; 3]) = (Family::Slider, [86.0, 2.0, 4.0]);
pub(crate) const SWEEPER: (Family, [f64; 3]) = (Family::Sweeper, [82.0, 0.0, 15.0]);
pub(crate) const CURVEBALL: (Family, [f64; 3]) = (Family::Curveball, [79.0, -12.0, 6.0]);

/// Text of a right-hander's profile with these pitches; `sections` goes between them.
pub(crate) fn text_of(pitches: &[(Family, [f64; 3])], sections: &str) -> String {
    let head = format!("[athlete]\nname = \"Made Up\"\nthrows = \"right\"\nlevel = \"college\"\n{sections}\n");
    pitches.iter().fold(head, |text, (family, [speed, vertical, side])| {
        text + &format!(
            "[[pitch]]\nname = \"{family}\"\nfamily = \"{family}\"\nspeed_mph = {speed}\n\
             vertical_break_in = {vertical}\nglove_side_break_in = {side}\n"
        )
    })
}

pub(crate) fn athlete(pitches: &[(Family, [f64; 3])], sections: &str) -> Profile {
    read("made up", &text_of(pitches, sections))
}

/// Hitters on `side` against `pitches` at their targets, judged on `points` points.
pub(crate) fn facing(stage: &Stage, side: Side, pitches: &[(Thrown, Aim)], points: usize) -> Facing {
    let decision = stage.decision();
    let law =
        |&(pitch, aim): &(Thrown, Aim)| (stage.law(&pitch, aim, side, decision), stage.habit(&pitch, side, decision));
    Facing::new(&pitches.iter().map(law).collect::<Vec<_>>(), &stage.hitter, side, &normal_points(points, 0.0))
}

/// The middle of what goes by a family's name for this athlete, thrown like his last pitch.
pub(crate) fn typical(stage: &Stage, family: Family) -> Thrown {
    let reach = Reach::of(stage, family);
    let middle = |range: (f64, f64)| f64::midpoint(range.0, range.1);
    let shape = shape(middle(reach.speed_mph), middle(reach.vertical_in), middle(reach.glove_side_in));
    Thrown { family, shape, release: stage.release, spread: stage.pitches[stage.pitches.len() - 1].spread }
}

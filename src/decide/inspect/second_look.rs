//! What may have been misread: breaks far from, or on the other side of, what goes by a family's
//! name, and releases that look like metres. Hints only: margins are wide (common practice, no
//! published source), so that odd but real pitches pass.

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::{Against, Family, SeamPush, Shape};
use crate::base::{Movement, Range};
use crate::throws::Sorted;

use super::counted::looks_like_the_other;
use super::seam_look;
use super::spins::shares_of;

/// This far beyond the usual range, in, in either direction.
const FAR_IN: f64 = 10.0;
/// On the other side of none: this far from none and this far from the usual range, in.
const OTHER_SIDE_IN: (f64, f64) = (4.0, 6.0);
/// A fastball that runs further to the glove side is refused in a profile, in.
const MOST_FASTBALL_RUN_IN: f64 = 2.0;
/// Below this slot pitches turn over: a breaking ball may rise, a fastball sink.
const LOW_SLOT_DEG: f64 = 10.0;
/// Usual heights and extensions, ft, from a child to the tallest.
const HEIGHT_FT: (f64, f64) = (3.8, 7.5);
/// Lower than a submarine arm lets go, ft.
const LOWEST_FT: f64 = 2.2;
const EXTENSION_FT: (f64, f64) = (3.5, 7.8);
const FEET_PER_METRE: f64 = 1.0 / 0.3048;
const CM_PER_INCH: f64 = 2.54;

/// One thing worth a second look.
#[derive(Debug, Clone, PartialEq)]
pub struct SecondLook {
    /// What it is about.
    pub about: About,
    /// What was found, and what is usual.
    pub found: Found,
}

/// What a second look is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum About {
    /// The athlete's release.
    Release,
    /// A pitch of the profile, by its name.
    Pitch(String),
    /// Sorted throws, by the name guessed and, where that is another, by their label's.
    Group {
        /// As guessed.
        guessed: Family,
        /// As labelled, when the finding is about that name.
        labelled: Option<Family>,
    },
}

/// A number that may have been misread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Found {
    /// A break far from what goes by a family's name, or on the other side.
    Break {
        /// Whether it is the vertical break; else the glove-side break.
        is_vertical: bool,
        /// As found, in.
        inches: f64,
        /// Usual of the family, in.
        usual: Range,
        /// Which family.
        family: Family,
        /// What may be wrong.
        suspect: Suspect,
    },
    /// A height or an extension that no release has.
    Feet {
        /// Which of them.
        length: Length,
        /// As found, ft.
        feet: f64,
        /// Usual, ft.
        usual: Range,
        /// The same in feet when it was written in metres and is usual then.
        if_metres_ft: Option<f64>,
    },
    /// A four-seam whose movement looks as if it were counted against the other throw.
    Counted {
        /// The shape as written.
        read: Shape,
        /// What it looks to be counted against.
        rather: Against,
        /// The drag-free movement usual of a four-seam from that release.
        usual: Movement,
    },
    /// More left over for the seams than few pitchers show.
    LeftOver {
        /// The family.
        family: Family,
        /// What is left.
        left: Movement,
        /// What is usual.
        usual: SeamPush,
        /// How many standard deviations between pitchers it lies from the mean, across the spin's push.
        departure: f64,
    },
}

/// What may be wrong with a break.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Suspect {
    /// The unit; the same in inches when it was written in centimetres and is usual then.
    Unit {
        /// In.
        if_cm_in: Option<f64>,
    },
    /// The sign.
    Sign,
}

/// A length of a release.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Length {
    /// Its height.
    Height,
    /// Its distance in front of the rubber.
    Extension,
}

/// What of a profile is worth a second look.
pub fn second_looks(profile: &Profile) -> Vec<SecondLook> {
    let release = profile.release;
    let is_low = release.slot_deg < LOW_SLOT_DEG;
    let mut looks: Vec<SecondLook> =
        profile.pitches.iter().flat_map(|pitch| of_pitch(&pitch.name, pitch.family, pitch.shape, is_low)).collect();
    looks.extend(profile.pitches.iter().filter_map(|pitch| looks_like_the_other(profile, pitch)));
    looks.extend(profile.pitches.iter().filter_map(|pitch| left_over(profile, pitch)));
    let own =
        profile.pitches.iter().filter_map(|pitch| Some((About::Pitch(pitch.name.clone()), pitch.release_height_ft?)));
    for (about, height) in std::iter::once((About::Release, release.height_ft)).chain(own).filter(|_| !is_low) {
        looks.extend(feet(about, Length::Height, height));
    }
    looks.extend(feet(About::Release, Length::Extension, release.extension_ft));
    looks
}

/// A left-over for the seams that few pitchers show.
fn left_over(profile: &Profile, pitch: &Pitch) -> Option<SecondLook> {
    let look = seam_look(profile, pitch).filter(|look| look.is_out_of_the_ordinary())?;
    let left = shares_of(profile, pitch)?.left();
    let found = Found::LeftOver { family: pitch.family, left, usual: look.usual, departure: look.departure };
    Some(SecondLook { about: About::Pitch(pitch.name.clone()), found })
}

/// Breaks that go by a family's name, whoever throws it: vertical and glove side, in. Common practice, no published
/// source; wide enough for every arm.
fn usual_breaks(family: Family) -> [(f64, f64); 2] {
    match family {
        Family::FourSeam => [(10.0, 24.0), (-12.0, 2.0)],
        Family::TwoSeam => [(5.0, 14.0), (-20.0, -10.0)],
        Family::Sinker => [(0.0, 10.0), (-20.0, -10.0)],
        Family::Cutter => [(4.0, 11.0), (0.0, 7.0)],
        Family::Slider => [(-6.0, 5.0), (1.0, 9.0)],
        Family::Sweeper => [(-8.0, 5.0), (10.0, 22.0)],
        Family::Curveball => [(-22.0, -8.0), (0.0, 14.0)],
        Family::Changeup => [(0.0, 11.0), (-20.0, -9.0)],
        Family::Splitter => [(-3.0, 7.0), (-14.0, -3.0)],
        Family::Knuckleball => [(-4.0, 4.0), (-4.0, 4.0)],
    }
}

/// What of sorted throws is worth a second look: each group by the name guessed, or else by its label's.
pub fn second_looks_at(sorted: &Sorted) -> Vec<SecondLook> {
    let mut looks = Vec::new();
    for group in &sorted.groups {
        let is_low = group.slot_deg.is_some_and(|slot| slot.value < LOW_SLOT_DEG);
        let guessed = group.naming.family;
        let labelled = group.usual_label.as_deref().and_then(|label| Family::from_name(&label.to_lowercase()));
        let of = |family: Family| breaks(family, group.shape(), is_low);
        let by_label = labelled.filter(|family| *family != guessed && of(guessed).is_empty());
        let found = by_label.map_or_else(|| of(guessed), of);
        let about = |labelled| About::Group { guessed, labelled };
        looks.extend(found.into_iter().map(|found| SecondLook { about: about(by_label), found }));
        // The slot is worked out from the height here, so it cannot excuse one that looks like metres.
        if let Some(height) = group.release_height_ft.filter(|height| !is_low || height.value < LOWEST_FT) {
            looks.extend(feet(about(None), Length::Height, height.value));
        }
    }
    looks
}

fn of_pitch(name: &str, family: Family, shape: Shape, is_low: bool) -> impl Iterator<Item = SecondLook> + use<> {
    let about = About::Pitch(name.to_owned());
    breaks(family, shape, is_low).into_iter().map(move |found| SecondLook { about: about.clone(), found })
}

fn breaks(family: Family, shape: Shape, is_low: bool) -> Vec<Found> {
    let [vertical, glove] = usual_breaks(family).map(|(low, high)| Range::new(low, high));
    let runs_wrong = family.is_fastball() && shape.glove_side_break_in > MOST_FASTBALL_RUN_IN;
    let odd_up = is_odd(shape.vertical_break_in, vertical) && !is_low;
    let odd_side = runs_wrong || is_odd(shape.glove_side_break_in, glove);
    let up = odd_up.then(|| odd_break(family, true, shape.vertical_break_in, vertical));
    let side = odd_side.then(|| odd_break(family, false, shape.glove_side_break_in, glove));
    up.into_iter().chain(side).collect()
}

/// Whether a break lies far beyond its usual range, or clearly on the other side of none.
fn is_odd(inches: f64, usual: Range) -> bool {
    let beyond = (usual.low - inches).max(inches - usual.high);
    beyond > FAR_IN || (is_other_side(inches, usual) && beyond >= OTHER_SIDE_IN.1)
}

fn is_other_side(inches: f64, Range { low, high }: Range) -> bool {
    (low > 0.0 && inches <= -OTHER_SIDE_IN.0) || (high < 0.0 && inches >= OTHER_SIDE_IN.0)
}

fn odd_break(family: Family, is_vertical: bool, inches: f64, usual: Range) -> Found {
    let is_far = inches.abs() > FAR_IN + usual.low.abs().max(usual.high.abs());
    let if_cm_in = Some(inches / CM_PER_INCH).filter(|&converted| usual.holds(converted));
    let suspect = if is_far { Suspect::Unit { if_cm_in } } else { Suspect::Sign };
    Found::Break { is_vertical, inches, usual, family, suspect }
}

fn feet(about: About, length: Length, feet: f64) -> Option<SecondLook> {
    let (low, high) = if length == Length::Height { HEIGHT_FT } else { EXTENSION_FT };
    let usual = Range { low, high };
    let if_metres_ft = Some(feet * FEET_PER_METRE).filter(|&converted| usual.holds(converted));
    (!usual.holds(feet)).then_some(SecondLook { about, found: Found::Feet { length, feet, usual, if_metres_ft } })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(family: Family, up: f64, side: f64) -> usize {
        let shape = Shape { speed_mph: 85.0, vertical_break_in: up, glove_side_break_in: side };
        breaks(family, shape, false).len()
    }

    #[test]
    fn what_was_misread_is_told_and_an_odd_pitch_passes() {
        for (family, up, side) in [
            (Family::Changeup, 6.0, 15.0),
            (Family::Curveball, 10.0, 8.0),
            (Family::FourSeam, 38.0, -8.0),
            (Family::FourSeam, 16.0, 8.0),
            (Family::FourSeam, 43.7, -6.0),
        ] {
            assert_eq!(count(family, up, side), 1, "{family} {up} {side}");
        }
        for (family, up, side) in [
            (Family::Changeup, 14.0, -1.0),
            (Family::FourSeam, 4.0, -18.0),
            (Family::Slider, 10.0, -2.0),
            (Family::Sinker, -8.0, -16.0),
            (Family::Curveball, -2.0, 20.0),
        ] {
            assert_eq!(count(family, up, side), 0, "{family} {up} {side}");
        }
        let in_metres = feet(About::Release, Length::Height, 1.8).map(|look| look.found);
        assert!(
            matches!(in_metres, Some(Found::Feet { if_metres_ft: Some(feet), .. }) if (feet - 5.9).abs() < 0.05),
            "{in_metres:?}"
        );
    }
}

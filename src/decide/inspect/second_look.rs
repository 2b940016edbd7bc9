//! What may have been misread: breaks far from, or on the other side of, what goes by a family's
//! name, releases that look like metres, movement that looks as if it were counted otherwise, and
//! more left for the seams than pitchers show. Hints only: margins are wide (common practice, no
//! published source, unless a line says otherwise), so that odd but real pitches pass.

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::{Against, Family, SeamPush, Shape};
use crate::base::{Movement, Range};
use crate::former::search::reach::usual_breaks;
use crate::throws::Sorted;

use super::counted::looks_like_the_other;
use super::seam_look;
use super::spins::shares_of;

/// This far beyond the usual range, in, in either direction.
pub const FAR_IN: f64 = 10.0;
/// On the other side of none: this far from none and this far from the usual range, in.
const OTHER_SIDE_IN: (f64, f64) = (4.0, 6.0);
/// A fastball that runs further to the glove side is refused in a profile, in.
const MOST_FASTBALL_RUN_IN: f64 = 2.0;
/// Below this slot pitches turn over: a breaking ball may rise, a fastball sink.
const LOW_SLOT_DEG: f64 = 10.0;
/// Usual heights and extensions, ft, from a child to the tallest.
const HEIGHT_FT: Range = Range { low: 3.8, high: 7.5 };
/// Lower than a submarine arm lets go, ft.
const LOWEST_FT: f64 = 2.2;
const EXTENSION_FT: Range = Range { low: 3.5, high: 7.8 };

/// One thing worth a second look.
#[derive(Debug, Clone, PartialEq)]
pub struct SecondLook {
    /// What it is about: a pitch's name, or the release.
    pub about: String,
    /// What was found.
    pub found: Found,
}

/// What was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Found {
    /// A break that is odd for its family.
    Break {
        /// The family.
        family: Family,
        /// Up and down, or else sideways.
        is_vertical: bool,
        /// The break.
        inches: f64,
        /// What is usual.
        usual: Range,
    },
    /// A release that is odd for anybody.
    Release {
        /// Which of its measures.
        what: ReleaseMeasure,
        /// As written.
        feet: f64,
        /// What is usual.
        usual: Range,
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

/// A measure of the release.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReleaseMeasure {
    /// Height, of a profile.
    Height,
    /// Height, averaged over throws.
    MeanHeight,
    /// Distance in front of the rubber.
    Extension,
}

/// What of a profile is worth a second look.
pub fn second_looks(profile: &Profile) -> Vec<SecondLook> {
    let release = profile.release;
    let is_low = release.slot_deg < LOW_SLOT_DEG;
    let mut looks: Vec<SecondLook> =
        profile.pitches.iter().flat_map(|pitch| breaks(&pitch.name, pitch.family, pitch.shape, is_low)).collect();
    looks.extend(profile.pitches.iter().filter_map(|pitch| looks_like_the_other(profile, pitch)));
    looks.extend(profile.pitches.iter().filter_map(|pitch| left_over(profile, pitch)));
    let heights = profile.pitches.iter().filter_map(|pitch| Some((pitch.name.as_str(), pitch.release_height_ft?)));
    for (about, height) in std::iter::once(("release", release.height_ft)).chain(heights) {
        looks.extend((!is_low).then(|| feet(about, ReleaseMeasure::Height, height, HEIGHT_FT)).flatten());
    }
    looks.extend(feet("release", ReleaseMeasure::Extension, release.extension_ft, EXTENSION_FT));
    looks
}

/// A left-over for the seams that few pitchers show.
fn left_over(profile: &Profile, pitch: &Pitch) -> Option<SecondLook> {
    let look = seam_look(profile, pitch).filter(|look| look.is_out_of_the_ordinary())?;
    let left = shares_of(profile, pitch)?.left();
    let found = Found::LeftOver { family: pitch.family, left, usual: look.usual, departure: look.departure };
    Some(SecondLook { about: pitch.name.clone(), found })
}

/// What of sorted throws is worth a second look: each group by the name guessed, or else by its label's.
pub fn second_looks_at(sorted: &Sorted) -> Vec<SecondLook> {
    let mut looks = Vec::new();
    for group in &sorted.groups {
        let is_low = group.slot_deg.is_some_and(|slot| slot.value < LOW_SLOT_DEG);
        let guessed = group.naming.family;
        let labelled = group.usual_label.as_deref().and_then(|label| Family::from_name(&label.to_lowercase()));
        let of = |family: Family, about: &str| breaks(about, family, group.shape(), is_low);
        let mut found = of(guessed, guessed.name());
        if let Some(family) = labelled.filter(|family| found.is_empty() && *family != guessed) {
            found = of(family, &format!("{guessed}, labelled {family}"));
        }
        looks.extend(found);
        // The slot is worked out from the height here, so it cannot excuse one that looks like metres.
        if let Some(height) = group.release_height_ft.filter(|height| !is_low || height.value < LOWEST_FT) {
            looks.extend(feet(guessed.name(), ReleaseMeasure::MeanHeight, height.value, HEIGHT_FT));
        }
    }
    looks
}

fn breaks(about: &str, family: Family, shape: Shape, is_low: bool) -> Vec<SecondLook> {
    let [vertical, glove] = usual_breaks(family).map(|(low, high)| Range { low, high });
    let runs_wrong = family.is_fastball() && shape.glove_side_break_in > MOST_FASTBALL_RUN_IN;
    let odd_up = is_odd(shape.vertical_break_in, vertical) && !is_low;
    let odd_side = runs_wrong || is_odd(shape.glove_side_break_in, glove);
    let look = |is_vertical, inches, usual| SecondLook {
        about: about.to_owned(),
        found: Found::Break { family, is_vertical, inches, usual },
    };
    let up = odd_up.then(|| look(true, shape.vertical_break_in, vertical));
    let side = odd_side.then(|| look(false, shape.glove_side_break_in, glove));
    up.into_iter().chain(side).collect()
}

/// Whether a break lies far beyond its usual range, or clearly on the other side of none.
fn is_odd(inches: f64, usual: Range) -> bool {
    let beyond = (usual.low - inches).max(inches - usual.high);
    beyond > FAR_IN || (is_other_side(inches, usual) && beyond >= OTHER_SIDE_IN.1)
}

fn is_other_side(inches: f64, usual: Range) -> bool {
    (usual.low > 0.0 && inches <= -OTHER_SIDE_IN.0) || (usual.high < 0.0 && inches >= OTHER_SIDE_IN.0)
}

fn feet(about: &str, what: ReleaseMeasure, feet: f64, usual: Range) -> Option<SecondLook> {
    let found = Found::Release { what, feet, usual };
    (!usual.holds(feet)).then(|| SecondLook { about: about.to_owned(), found })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(family: Family, up: f64, side: f64) -> usize {
        let shape = Shape { speed_mph: 85.0, vertical_break_in: up, glove_side_break_in: side };
        breaks("x", family, shape, false).len()
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
        assert!(feet("release", ReleaseMeasure::Height, 1.8, HEIGHT_FT).is_some());
    }
}

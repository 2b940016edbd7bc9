//! What may have been misread: breaks far from, or on the other side of, what goes by a family's
//! name, and releases that look like metres. Hints only: margins are wide (common practice, no
//! published source), so that odd but real pitches pass.

use crate::athlete::profile::Profile;
use crate::ball::{Family, Shape};
use crate::former::search::reach::usual_breaks;
use crate::throws::Sorted;

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

/// One thing worth a second look.
#[derive(Debug, Clone, PartialEq)]
pub struct SecondLook {
    /// What it is about, such as a pitch's name.
    pub about: String,
    /// What was found.
    pub found: String,
    /// What is usual.
    pub usual: String,
    /// What to check.
    pub check: String,
}

impl std::fmt::Display for SecondLook {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}: {}; usual is {}; check {}", self.about, self.found, self.usual, self.check)
    }
}

/// What of a profile is worth a second look.
pub fn second_looks(profile: &Profile) -> Vec<SecondLook> {
    let release = profile.release;
    let is_low = release.slot_deg < LOW_SLOT_DEG;
    let mut looks: Vec<SecondLook> =
        profile.pitches.iter().flat_map(|pitch| breaks(&pitch.name, pitch.family, pitch.shape, is_low)).collect();
    let heights = profile.pitches.iter().filter_map(|pitch| Some((pitch.name.as_str(), pitch.release_height_ft?)));
    for (about, height) in std::iter::once(("release", release.height_ft)).chain(heights) {
        looks.extend((!is_low).then(|| feet(about, "a height", height, HEIGHT_FT)).flatten());
    }
    looks.extend(feet("release", "an extension", release.extension_ft, EXTENSION_FT));
    looks
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
            looks.extend(feet(guessed.name(), "a release height", height.value, HEIGHT_FT));
        }
    }
    looks
}

fn breaks(about: &str, family: Family, shape: Shape, is_low: bool) -> Vec<SecondLook> {
    let [vertical, glove] = usual_breaks(family);
    let runs_wrong = family.is_fastball() && shape.glove_side_break_in > MOST_FASTBALL_RUN_IN;
    let odd_up = is_odd(shape.vertical_break_in, vertical) && !is_low;
    let odd_side = runs_wrong || is_odd(shape.glove_side_break_in, glove);
    let up = odd_up.then(|| look(about, family, "vertical", shape.vertical_break_in, vertical));
    let side = odd_side.then(|| look(about, family, "glove-side", shape.glove_side_break_in, glove));
    up.into_iter().chain(side).collect()
}

/// Whether a break lies far beyond its usual range, or clearly on the other side of none.
fn is_odd(inches: f64, (low, high): (f64, f64)) -> bool {
    let beyond = (low - inches).max(inches - high);
    beyond > FAR_IN || (is_other_side(inches, (low, high)) && beyond >= OTHER_SIDE_IN.1)
}

fn is_other_side(inches: f64, (low, high): (f64, f64)) -> bool {
    (low > 0.0 && inches <= -OTHER_SIDE_IN.0) || (high < 0.0 && inches >= OTHER_SIDE_IN.0)
}

fn look(about: &str, family: Family, axis: &str, inches: f64, usual: (f64, f64)) -> SecondLook {
    let within = |value: f64| (usual.0..=usual.1).contains(&value);
    let check = if inches.abs() > FAR_IN + usual.0.abs().max(usual.1.abs()) {
        let converted = inches / 2.54;
        let written = if within(converted) { format!(" ({converted:+.1} if it is in cm)") } else { String::new() };
        format!("the unit{written}, and the family")
    } else if axis == "vertical" {
        "the sign, + is up against the same throw without spin; and the family".to_owned()
    } else {
        "the sign, + is to the glove side; the hand; and the family".to_owned()
    };
    SecondLook {
        about: about.to_owned(),
        found: format!("{inches:+.1} in of {axis} break"),
        usual: format!("{:+.0} to {:+.0} in for a {family}", usual.0, usual.1),
        check,
    }
}

fn feet(about: &str, what: &str, feet: f64, usual: (f64, f64)) -> Option<SecondLook> {
    let within = |value: f64| (usual.0..=usual.1).contains(&value);
    let metres = feet * FEET_PER_METRE;
    let written = if within(metres) { format!(" (if it is in metres, write {metres:.1})") } else { String::new() };
    (!within(feet)).then(|| SecondLook {
        about: about.to_owned(),
        found: format!("{what} of {feet:.1} ft"),
        usual: format!("{:.1} to {:.1} ft", usual.0, usual.1),
        check: format!("the unit{written}, and the slot"),
    })
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
        assert!(feet("release", "a height", 1.8, HEIGHT_FT).is_some_and(|look| look.check.contains("write 5.9")));
    }
}

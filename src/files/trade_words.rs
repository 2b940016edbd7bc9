//! The words of the trade for families, hands and sides, as people write them.
//!
//! Only words and abbreviations that the whole trade uses; capitals, spaces and hyphens do not
//! count. A word that the trade uses for more than one thing is taken for the commonest, and
//! whoever reads it says so. What is written and shown uses our own names alone. All of it is common
//! practice, no published source.

use crate::ball::Family;
use crate::base::geometry::{Hand, Side};

/// What a word was taken for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Meant<T> {
    /// The meaning.
    pub value: T,
    /// Whether it could mean something else, so that it must be said how it was taken.
    pub is_open: bool,
}

/// Other words for a family that leave no doubt, without spaces and hyphens.
const CLEAR: [(Family, &[&str]); 9] = [
    (
        Family::FourSeam,
        &["4seam", "fourseamer", "4seamer", "fourseamfastball", "4seamfastball", "fourseamball", "straightfastball"],
    ),
    (Family::TwoSeam, &["2seam", "twoseamer", "2seamer", "twoseamfastball", "2seamfastball", "runningfastball"]),
    (Family::Sinker, &["sinkingfastball"]),
    (Family::Cutter, &["cutfastball", "cutball"]),
    (Family::Slider, &["sl", "gyroslider", "hardslider"]),
    (Family::Sweeper, &["sweepingslider", "sweepingball"]),
    (Family::Curveball, &["curve", "cb", "knucklecurve", "spikecurve", "spikecurveball", "twelvesixcurve", "126curve"]),
    (Family::Changeup, &["change", "ch", "circlechange", "circlechangeup"]),
    (Family::Splitter, &["split", "splitfinger", "splitfingerfastball", "splitfingeredfastball", "splitchange"]),
];

/// Words for more than one family, with the one they are taken for.
const OPEN: [(Family, &[&str]); 4] = [
    (Family::FourSeam, &["fastball", "fb", "heater"]),
    (Family::Slider, &["slurve"]),
    (Family::Splitter, &["fork", "forkball"]),
    (Family::Knuckleball, &["knuckler"]),
];

/// The family that a word names.
pub fn family(word: &str) -> Option<Meant<Family>> {
    let plain = compact(word);
    let own = Family::ALL.into_iter().find(|family| compact(family.name()) == plain);
    let listed = |table: &[(Family, &[&str])]| {
        table.iter().find(|(_, words)| words.contains(&plain.as_str())).map(|(family, _)| *family)
    };
    let clear = own.or_else(|| listed(&CLEAR)).map(|value| Meant { value, is_open: false });
    clear.or_else(|| listed(&OPEN).map(|value| Meant { value, is_open: true }))
}

/// The hand that a word names.
pub fn hand(word: &str) -> Option<Hand> {
    match compact(word).as_str() {
        "r" | "rh" | "rhp" | "right" | "righty" | "righthand" | "righthanded" | "righthander"
        | "righthandedpitcher" => Some(Hand::Right),
        "l" | "lh" | "lhp" | "left" | "lefty" | "lefthand" | "lefthanded" | "lefthander" | "lefthandedpitcher"
        | "southpaw" => Some(Hand::Left),
        _ => None,
    }
}

/// Where a hitter stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stands {
    /// Told by the pitcher's throwing side.
    On(Side),
    /// Told by the hitter's own hand.
    Bats(Hand),
}

/// The side that a word about a hitter names.
pub(super) fn stands(word: &str) -> Option<Stands> {
    match compact(word).as_str() {
        "same" | "sameside" | "samehand" | "samehanded" => Some(Stands::On(Side::Same)),
        "opposite" | "oppositeside" | "oppositehand" | "oppositehanded" => Some(Stands::On(Side::Opposite)),
        "rhh" | "rhb" | "righthandedhitter" | "righthandedbatter" => Some(Stands::Bats(Hand::Right)),
        "lhh" | "lhb" | "lefthandedhitter" | "lefthandedbatter" => Some(Stands::Bats(Hand::Left)),
        "rhp" | "lhp" | "southpaw" => None,
        _ => hand(word).map(Stands::Bats),
    }
}

/// A word without capitals and without what stands between its parts.
pub(super) fn compact(word: &str) -> String {
    word.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn families_are_known_by_the_words_of_the_trade() {
        for (word, meant) in [
            ("Four-Seam", Family::FourSeam),
            ("4-seam", Family::FourSeam),
            ("two seam", Family::TwoSeam),
            ("curve", Family::Curveball),
            ("change", Family::Changeup),
            ("Change-Up", Family::Changeup),
            ("split", Family::Splitter),
            ("cut fastball", Family::Cutter),
            ("SWEEPER", Family::Sweeper),
        ] {
            assert_eq!(family(word), Some(Meant { value: meant, is_open: false }), "{word}");
        }
        for (word, meant) in [("fastball", Family::FourSeam), ("heater", Family::FourSeam), ("slurve", Family::Slider)]
        {
            assert_eq!(family(word), Some(Meant { value: meant, is_open: true }), "{word}");
        }
        for word in ["", "-", "sweper", "breaking ball", "screwball", "pitch"] {
            assert_eq!(family(word), None, "{word}");
        }
    }

    #[test]
    fn no_word_names_two_families() {
        let mut words: Vec<String> =
            CLEAR.iter().chain(&OPEN).flat_map(|(_, words)| *words).map(|w| compact(w)).collect();
        words.extend(Family::ALL.map(|family| compact(family.name())));
        let all = words.len();
        words.sort();
        words.dedup();
        assert_eq!(words.len(), all);
    }

    #[test]
    fn hands_and_sides_are_known_by_the_words_of_the_trade() {
        assert_eq!(["R", "right-handed", "RHP", "Righty"].map(hand), [Some(Hand::Right); 4]);
        assert_eq!(["L", "Left handed", "lefty", "southpaw"].map(hand), [Some(Hand::Left); 4]);
        assert_eq!(["both", "", "switch"].map(hand), [None; 3]);
        assert_eq!(["RHH", "r", "RHB"].map(stands), [Some(Stands::Bats(Hand::Right)); 3]);
        assert_eq!(stands("Opposite-side"), Some(Stands::On(Side::Opposite)));
        assert_eq!(["S", "switch", "LHP"].map(stands), [None; 3]);
    }
}

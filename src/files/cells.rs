//! What one cell says in words: a clock face, a side, an outcome, yes or no.
//!
//! Exporters write the same thing in many ways; each function here knows the usual ones and gives
//! up on the rest. Numbers are read in [`super::numbers`], days in [`super::dates`].

use std::collections::BTreeMap;

use super::trade_words::{self, Stands, compact};
use crate::athlete::session::Outcome;
use crate::base::geometry::{Clock, Hand, Side};

/// A cell that holds nothing, or something that is no number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct NotANumber;

/// Words that mean "not measured".
const NOTHING: [&[u8]; 8] = [b"na", b"n/a", b"nan", b"null", b"none", b"-", b"--", b"."];

/// Whether a cell, trimmed, says nothing.
pub(super) fn is_nothing(cell: &[u8]) -> bool {
    cell.is_empty() || NOTHING.iter().any(|word| cell.eq_ignore_ascii_case(word))
}

/// A clock face as `h:mm`, with or without seconds.
pub(super) fn clock(cell: &[u8]) -> Result<Option<Clock>, NotANumber> {
    if is_nothing(cell) {
        return Ok(None);
    }
    let text = std::str::from_utf8(cell).map_err(|_| NotANumber)?;
    if let Ok(clock) = text.parse() {
        return Ok(Some(clock));
    }
    let without_seconds = text.split(':').take(2).collect::<Vec<_>>().join(":");
    let hours_first = without_seconds.trim_start_matches('0');
    let midnight = hours_first.starts_with(':').then(|| format!("12{hours_first}"));
    midnight.as_deref().unwrap_or(hours_first).parse().map(Some).map_err(|_| NotANumber)
}

/// Where the hitter stood, by any of the trade's words.
pub(super) fn stands(cell: &[u8]) -> Option<Stands> {
    trade_words::stands(std::str::from_utf8(cell).ok()?)
}

/// The side of a hitter who bats so against this pitcher.
pub(super) fn side_of(bats: Hand, throws: Hand) -> Side {
    if bats == throws { Side::Same } else { Side::Opposite }
}

/// Yes or no.
pub(super) fn yes_or_no(cell: &[u8]) -> Option<bool> {
    let is = |word: &&str| cell.eq_ignore_ascii_case(word.as_bytes());
    let yes = ["yes", "y", "true", "1"].iter().any(is);
    (yes || ["no", "n", "false", "0"].iter().any(is)).then_some(yes)
}

/// The outcome, by the map's own words first and then by ours.
pub(super) fn outcome(cell: &[u8], words: &BTreeMap<String, Outcome>) -> Option<Outcome> {
    if !words.is_empty() {
        let lower = String::from_utf8_lossy(cell).to_lowercase();
        if let Some(&outcome) = words.get(&lower) {
            return Some(outcome);
        }
    }
    let word = compact(std::str::from_utf8(cell).ok()?);
    let ours = Outcome::ALL.into_iter().find(|outcome| compact(outcome.name()) == word);
    ours.or(match word.as_str() {
        "strikelooking" | "lookingstrike" | "takenstrike" => Some(Outcome::CalledStrike),
        "swingingstrike" | "strikeswinging" | "swingandamiss" | "swingmiss" | "missedswing" => {
            Some(Outcome::SwingAndMiss)
        }
        "foultip" | "foulball" | "bunt" | "foulbunt" => Some(Outcome::Foul),
        "ballinplay" | "putinplay" | "inplay" => Some(Outcome::InPlay),
        "hbp" | "hitbatter" | "hitbatsman" => Some(Outcome::HitByPitch),
        _ => None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clocks_are_read_with_leading_zeros_and_seconds() {
        for (text, shown) in [("1:15", "1:15"), ("01:15", "1:15"), ("01:15:00", "1:15"), ("00:30", "12:30")] {
            assert_eq!(clock(text.as_bytes()).ok().flatten().map(|c| c.to_string()), Some(shown.into()), "{text}");
        }
        assert_eq!(clock(b"quarter past"), Err(NotANumber));
    }

    #[test]
    fn a_left_handed_hitter_is_same_side_for_a_left_hander() {
        assert_eq!(stands(b"LHH"), Some(Stands::Bats(Hand::Left)));
        assert_eq!(side_of(Hand::Left, Hand::Left), Side::Same);
        assert_eq!(side_of(Hand::Right, Hand::Left), Side::Opposite);
    }

    #[test]
    fn outcomes_are_known_by_plain_words_and_what_is_open_is_not() {
        let of = |word: &str| outcome(word.as_bytes(), &BTreeMap::new());
        assert_eq!(of("Swinging strike"), Some(Outcome::SwingAndMiss));
        assert_eq!(of("foul ball"), Some(Outcome::Foul));
        assert_eq!(of("in-play"), Some(Outcome::InPlay));
        assert_eq!(["strike", "take", "out", ""].map(of), [None; 4]);
    }
}

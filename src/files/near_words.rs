//! Words as people write them against the words known here, and how a message repeats them.

/// Longest text accepted and longest value repeated in a message, in characters.
pub const LONGEST_TEXT: usize = 60;
/// Jaro-Winkler likeness from which a known word is offered for an unknown one.
const NEAR_ENOUGH: f64 = 0.85;

/// User text fit for a message: escaped, and cut if long.
pub(super) fn quoted(text: &str) -> String {
    let mut shown: String = text.chars().take(LONGEST_TEXT).flat_map(char::escape_debug).collect();
    if text.chars().nth(LONGEST_TEXT).is_some() {
        shown.push_str("...");
    }
    shown
}

/// Whether two words differ at most in capitals, spaces and hyphens.
pub(super) fn is_same_word(known: &str, written: &str) -> bool {
    let plain = |word: &str| word.trim().to_lowercase().replace(['_', '-'], " ");
    plain(known) == plain(written)
}

/// The known word most like `word`, if one is near enough or begins with it.
pub(super) fn nearest<'w>(word: &str, known: &[&'w str]) -> Option<&'w str> {
    let plain = |text: &str| text.to_lowercase().replace([' ', '-'], "_");
    let word = plain(word);
    let likeness = |candidate: &str| {
        let candidate = plain(candidate);
        let is_near = !word.is_empty() && candidate.starts_with(&word);
        Some(strsim::jaro_winkler(&word, &candidate)).filter(|likeness| is_near || *likeness >= NEAR_ENOUGH)
    };
    let near = known.iter().filter_map(|&candidate| Some((likeness(candidate)?, candidate)));
    near.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, candidate)| candidate)
}

#[cfg(test)]
mod tests {
    use super::{is_same_word, nearest};

    #[test]
    fn a_slip_of_the_pen_finds_its_word_and_a_stranger_finds_none() {
        let known = ["speed_mph", "spin_rpm", "vertical_break_in", "glove_side_break_in", "four-seam"];
        assert_eq!(nearest("speed", &known), Some("speed_mph"));
        assert_eq!(nearest("Four Seam", &known), Some("four-seam"));
        assert_eq!(nearest("vertical_brake", &known), Some("vertical_break_in"));
        assert_eq!(nearest("horizontal_break_in", &known), None);
        assert_eq!(nearest("", &known), None);
    }

    #[test]
    fn capitals_spaces_and_hyphens_make_no_other_word() {
        assert!(is_same_word("high-school", " High School") && is_same_word("up-in", "UP_IN"));
        assert!(!is_same_word("up-in", "upin"));
    }
}

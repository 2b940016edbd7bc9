//! Names as people see them: what only looks empty, and what looks the same.

/// Characters that show nothing: the default-ignorable code points of Unicode's
/// `DerivedCoreProperties.txt`, and the blank Braille pattern.
fn is_unseen(c: char) -> bool {
    matches!(
        c,
        '\u{ad}'
            | '\u{34f}'
            | '\u{61c}'
            | '\u{115f}'..='\u{1160}'
            | '\u{17b4}'..='\u{17b5}'
            | '\u{180b}'..='\u{180f}'
            | '\u{200b}'..='\u{200f}'
            | '\u{202a}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}'
            | '\u{2800}'
            | '\u{3164}'
            | '\u{fe00}'..='\u{fe0f}'
            | '\u{feff}'
            | '\u{ffa0}'
            | '\u{fff0}'..='\u{fff8}'
            | '\u{1bca0}'..='\u{1bca3}'
            | '\u{1d173}'..='\u{1d17a}'
            | '\u{e0000}'..='\u{e0fff}'
    )
}

/// Whether nobody could see the name.
pub fn looks_empty(name: &str) -> bool {
    name.chars().all(|c| c.is_whitespace() || is_unseen(c))
}

/// Whether two names are one to a reader: capitals, spaces around them and what shows nothing do not
/// count.
pub fn is_same_name(one: &str, other: &str) -> bool {
    let seen = |name: &str| name.trim().chars().filter(|&c| !is_unseen(c)).collect::<String>().to_lowercase();
    seen(one) == seen(other)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_of_blanks_and_joiners_looks_empty_and_one_with_letters_does_not() {
        for name in ["", " \t", "\u{3164}", "\u{2800}\u{2800}", "\u{200d}", "\u{ad} \u{ffa0}"] {
            assert!(looks_empty(name), "{name:?}");
        }
        for name in ["a", "0", "\u{645}\u{6cc}\u{200c}\u{631}\u{648}", "-", "\u{4e00}"] {
            assert!(!looks_empty(name), "{name:?}");
        }
    }

    #[test]
    fn names_that_look_the_same_are_the_same() {
        assert!(is_same_name("Slider", " sli\u{200d}der"));
        assert!(!is_same_name("slider", "slider 2"));
    }
}

//! Whether every number of a value is one: for tests that look at whole answers.

use std::fmt::Debug;

/// Fails when a number of `value`, wherever it stands, is not finite: outside the texts of its debug form
/// nothing may read `NaN` or `inf`.
pub(crate) fn assert_finite(value: &impl Debug) {
    let shown = format!("{value:?}");
    assert!(!has_odd_number(&without_texts(&shown)), "a number is not finite in {shown}");
}

/// Whether a text reads `NaN` or `inf` somewhere.
pub(crate) fn has_odd_number(text: &str) -> bool {
    text.split(|c: char| !c.is_alphanumeric() && c != '_').any(|word| word == "NaN" || word == "inf")
}

/// A debug form without what stands in double quotes.
fn without_texts(shown: &str) -> String {
    let (mut is_text, mut is_escaped) = (false, false);
    let mut plain = String::with_capacity(shown.len());
    for c in shown.chars() {
        let turns = c == '"' && !is_escaped;
        is_escaped = is_text && c == '\\' && !is_escaped;
        is_text ^= turns;
        if !is_text {
            plain.push(c);
        }
    }
    plain
}

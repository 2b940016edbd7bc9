//! Text that is not TOML at all: the first place where reading stopped, and the usual cure.
//!
//! The parser's own words are kept, since they say what it expected; the hint translates the
//! mistakes people make who seldom write TOML.

use std::ops::Range;

use super::error::Fault;

/// Words in the parser's message, and what to do then.
const CURES: [(&str, &str); 5] = [
    ("must be quoted", "text stands in double quotes"),
    ("basic string", "close the text with a double quote on the same line"),
    ("invalid time", "a clock position stands in double quotes, as \"1:30\""),
    ("duplicate key", "keep one of the two"),
    ("unclosed table", "a header stands alone on its line, as [athlete] or [[pitch]]"),
];

/// The fault for a text that the TOML parser refused.
pub(super) fn syntax_fault(text: &str, error: &toml::de::Error) -> Fault {
    let message = error.message().lines().collect::<Vec<_>>().join(", ");
    let span = error.span().unwrap_or(text.len()..text.len());
    let known = CURES.iter().find(|(words, _)| message.contains(words)).map(|(_, cure)| *cure);
    Fault {
        hint: known.or_else(|| cure_for_number(text, &span)).map(str::to_owned),
        span,
        field: "the file".into(),
        found: format!("not valid TOML: {message}"),
        allowed: "mended before the rest can be checked".into(),
    }
}

/// The cure for a number cut short by a decimal comma.
fn cure_for_number(text: &str, span: &Range<usize>) -> Option<&'static str> {
    let (before, after) = (text.get(..span.start)?, text.get(span.start..)?);
    let is_decimal_comma = before.ends_with(|c: char| c.is_ascii_digit()) && after.starts_with(',');
    is_decimal_comma.then_some("decimals are written with a point, as 93.5")
}

//! States of the count, in words.

use crate::decide::counts::Count;

/// What the columns of a card mean.
pub(crate) const BEHIND: &str = "behind: more balls than strikes, fewer than two strikes; even, ahead: every other count \
                                 with fewer than two strikes but the first pitch";

/// One state of the count.
fn count_name(count: Count) -> &'static str {
    match count {
        Count::First => "first pitch",
        Count::Behind => "behind",
        Count::Even => "even or ahead",
        Count::TwoStrikes => "two strikes",
    }
}

/// Several, one after the other; all of them in two words.
pub(crate) fn counts_named(counts: &[Count]) -> String {
    if counts.len() == Count::ALL.len() {
        return "every count".into();
    }
    counts.iter().map(|&count| count_name(count)).collect::<Vec<&str>>().join(", ")
}

//! Numbers as people read them.

use crate::base::stats::Estimate;

/// A signed number with `places` decimals; no "-0".
pub(super) fn signed(value: f64, places: usize) -> String {
    let text = format!("{value:+.places$}");
    if text.chars().all(|c| matches!(c, '-' | '0' | '.')) { text.replace('-', "+") } else { text }
}

/// An unsigned number with `places` decimals; no "-0".
pub(super) fn plain(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    if text.chars().all(|c| matches!(c, '-' | '0' | '.')) { text.replace('-', "") } else { text }
}

/// A number with a sign only when it is negative: breaks to the arm side are, little else is.
pub(super) fn plain_or_signed(value: f64, places: usize) -> String {
    if value < 0.0 { signed(value, places) } else { plain(value, places) }
}

/// A share as a whole percentage.
pub(super) fn percent(share: f64) -> String {
    format!("{} %", plain(100.0 * share, 0))
}

/// `value (low to high)`, signed.
pub(super) fn signed_range(estimate: Estimate, places: usize) -> String {
    let show = |value| signed(value, places);
    format!("{} ({} to {})", show(estimate.value), show(estimate.low), show(estimate.high))
}

/// A rate as `14 ±3`, per hundred: tables say so below them.
pub(super) fn rate(estimate: Estimate) -> String {
    format!("{} ±{}", plain(100.0 * estimate.value, 0), plain(100.0 * estimate.half_width(), 0))
}

/// A chance as "94 in 100"; a finite number of draws never shows a certainty.
pub(super) fn in_hundred(chance: f64) -> String {
    match chance {
        c if c > 0.99 => "over 99 in 100".into(),
        c if c < 0.01 => "under 1 in 100".into(),
        c => format!("{} in 100", plain(100.0 * c, 0)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_ever_minus_zero() {
        assert_eq!(signed(-0.004, 2), "+0.00");
        assert_eq!(plain(-0.2, 0), "0");
        assert_eq!(percent(0.614), "61 %");
    }
}

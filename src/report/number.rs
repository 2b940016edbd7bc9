//! One way to write a number, for every form of output: text, page, drawing, Markdown and JSON.

/// A number with `places` decimals; never "-0".
pub(crate) fn plain(value: f64, places: usize) -> String {
    without_minus_zero(format!("{value:.places$}"), "")
}

/// The same with its sign, also where it is not negative.
pub(crate) fn signed(value: f64, places: usize) -> String {
    without_minus_zero(format!("{value:+.places$}"), "+")
}

fn without_minus_zero(text: String, sign: &str) -> String {
    let is_minus_zero = text.starts_with('-') && text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if is_minus_zero { text.replace('-', sign) } else { text }
}

/// The number that is written with `places` decimals.
pub(crate) fn rounded(value: f64, places: usize) -> f64 {
    plain(value, places).parse().unwrap_or(value)
}

/// Shares of one whole, each a multiple of 1 in `parts`, that sum to what the shares sum to: the
/// parts left over go to the largest remainders, the first of equal ones first.
pub(crate) fn rounded_shares(shares: &[f64], parts: f64) -> Vec<f64> {
    let mut whole: Vec<f64> = shares.iter().map(|share| (share * parts).floor()).collect();
    let total = (shares.iter().sum::<f64>() * parts).round();
    let mut order: Vec<usize> = (0..shares.len()).collect();
    let rest = |place: usize| (shares[place] * parts).fract();
    order.sort_by(|&a, &b| rest(b).total_cmp(&rest(a)));
    let mut left = total - whole.iter().sum::<f64>();
    for place in order {
        if left < 0.5 {
            break;
        }
        whole[place] += 1.0;
        left -= 1.0;
    }
    whole.into_iter().map(|part| part / parts).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_ever_minus_zero() {
        assert_eq!(signed(-0.004, 2), "+0.00");
        assert_eq!(plain(-0.2, 0), "0");
        assert_eq!(plain(-10.0, 0), "-10");
        assert!(rounded(-0.004, 2).is_sign_positive());
    }

    #[test]
    fn rounded_shares_sum_to_the_whole() {
        let thirds = rounded_shares(&[1.0 / 3.0; 3], 100.0);
        assert_eq!(thirds, [0.34, 0.33, 0.33]);
        let seven = rounded_shares(&[0.145, 0.145, 0.145, 0.145, 0.145, 0.145, 0.13], 100.0);
        assert!((seven.iter().sum::<f64>() - 1.0).abs() < 1e-9, "{seven:?}");
        assert_eq!(rounded_shares(&[0.12, 0.4], 100.0), [0.12, 0.4]);
        assert!(rounded_shares(&[], 100.0).is_empty());
    }
}

//! Telling someone which unit a number is in, from the unit its key carries.
//!
//! Most wrong numbers are right numbers in another unit. When the value would be in range after
//! the usual conversion, the hint says what to write; otherwise it only names the unit.

use std::ops::RangeInclusive;

/// What the end of a key says about its number, completing "`key` is"; and the unit it is mistaken
/// for, with the factor that turns one of those into this.
struct Unit {
    suffix: &'static str,
    meaning: &'static str,
    mistaken_for: Option<(&'static str, f64)>,
}

/// Longer suffixes first; the last one ends every key.
const UNITS: [Unit; 10] = [
    Unit { suffix: "elevation_ft", meaning: "in feet", mistaken_for: None },
    Unit { suffix: "_mph", meaning: "in miles per hour", mistaken_for: Some(("kilometres per hour", 1.0 / 1.609_344)) },
    Unit { suffix: "_ft", meaning: "in feet", mistaken_for: Some(("centimetres", 1.0 / 30.48)) },
    Unit { suffix: "_in", meaning: "in inches", mistaken_for: Some(("centimetres", 1.0 / 2.54)) },
    Unit { suffix: "_inhg", meaning: "in inches of mercury", mistaken_for: Some(("hectopascals", 1.0 / 33.863_89)) },
    Unit { suffix: "_f", meaning: "in degrees Fahrenheit", mistaken_for: None },
    Unit { suffix: "_percent", meaning: "in percent", mistaken_for: None },
    Unit { suffix: "_deg", meaning: "in degrees, 0 for side-arm and 90 for straight over the top", mistaken_for: None },
    Unit { suffix: "_rpm", meaning: "in revolutions per minute", mistaken_for: None },
    Unit { suffix: "", meaning: "a share from 0 to 1", mistaken_for: Some(("percent", 0.01)) },
];

/// How to mend `value`, which is not in `range`, under this key.
pub(super) fn unit_hint(key: &str, value: f64, range: &RangeInclusive<f64>) -> Option<String> {
    if !value.is_finite() {
        return Some("write the number measured, or leave the key out if it is unknown".into());
    }
    let Unit { meaning, mistaken_for, .. } = UNITS.iter().find(|unit| key.ends_with(unit.suffix))?;
    let converted = mistaken_for.map(|(other, factor)| (other, round_to_three_digits(value * factor)));
    Some(match converted {
        Some((other, number)) if range.contains(&number) => {
            format!("`{key}` is {meaning}; if {value} is in {other}, write {number}")
        }
        _ => format!("`{key}` is {meaning}"),
    })
}

fn round_to_three_digits(value: f64) -> f64 {
    if value == 0.0 {
        return 0.0;
    }
    let scale = 10f64.powf(2.0 - value.abs().log10().floor());
    (value * scale).round() / scale
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_speed_in_the_wrong_unit_is_converted_and_a_nonsense_one_is_not() {
        let hint = |value| unit_hint("speed_mph", value, &(40.0..=110.0)).unwrap_or_default();
        assert_eq!(hint(150.0), "`speed_mph` is in miles per hour; if 150 is in kilometres per hour, write 93.2");
        assert_eq!(hint(-5.0), "`speed_mph` is in miles per hour");
        assert!(hint(f64::NAN).starts_with("write the number"));
    }

    #[test]
    fn a_share_in_percent_is_converted() {
        let hint = unit_hint("opposite_share", 45.0, &(0.0..=1.0));
        assert_eq!(hint.as_deref(), Some("`opposite_share` is a share from 0 to 1; if 45 is in percent, write 0.45"));
    }
}

//! What was found in sorted throws, in words: days that were not like the others, and doubts.

use crate::throws::{Cause, Caution, DayFinding, Naming, PitchDrift, Sorted, Treatment};

use super::super::content::amount::{movement, share};
use super::super::content::{Text, name, say};

/// Every day and every pitch that was not as usual.
pub(crate) fn days(sorted: &Sorted) -> Vec<Text> {
    sorted.days.iter().filter_map(day).chain(sorted.drifts.iter().map(|moved| drift(sorted, moved))).collect()
}

fn day(day: &DayFinding) -> Option<Text> {
    let what = match day.treatment {
        Treatment::AsMeasured => return day.trend_in.map(|trend| drifted(day, trend)),
        Treatment::Rezeroed => "brought to the common zero to sort it; its movement does not count in the shapes",
        Treatment::SetAside => "set aside",
    };
    let cause = match day.cause {
        Some(Cause::Sensor) => "every pitch alike, speed and release as ever: the unit, not the arm",
        Some(Cause::Arm) => "speed or release changed too: perhaps the arm",
        None => "the cause is not clear",
    };
    let by = up_and_side(day.vertical_offset_in, day.glove_side_offset_in);
    Some(say!("{}: measured from another zero, {}; {}; {}", name(&day.day), by, cause, what))
}

fn drifted(day: &DayFinding, [up, side]: [f64; 2]) -> Text {
    say!("{}: movement drifted by {} from the first throw to the last", name(&day.day), up_and_side(up, side))
}

fn drift(sorted: &Sorted, drift: &PitchDrift) -> Text {
    say!(
        "on {} the {} moved by itself, {}, when the others did not: the arm, not the unit",
        name(&sorted.days[drift.day].day),
        sorted.groups[drift.group].naming.family,
        up_and_side(drift.vertical_in.value, drift.glove_side_in.value)
    )
}

fn up_and_side(up: f64, side: f64) -> Text {
    say!("{} up and {} to the glove side", movement(up), movement(side))
}

/// A doubt about the whole.
pub(crate) fn caution(caution: &Caution) -> Text {
    match *caution {
        Caution::TooFew => "too few usable throws to sort; at least six are needed".into(),
        Caution::TwoZeros => "two days stand on different zeros; the one with more throws was believed".into(),
        Caution::UnsureName(Naming { family, confidence, runner_up }) => {
            say!("the {} could also be a {} ({} sure)", family, runner_up, share(confidence))
        }
        Caution::FewThrows { family, throws } => say!("the {} rests on {} throws only", family, throws),
        Caution::ManyUnsorted { unsorted, used } => say!("{} of {} throws fit no pitch", unsorted, used),
    }
}

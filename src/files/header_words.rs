//! What a header says in plain words: `Vertical Break (in)` is our `vertical_break_in`.
//!
//! A header is used only when it leaves nothing open: the quantity, and the unit where there is a
//! choice. One that merely sounds like ours is looked for too, so that it can be told.

use super::quantity::{Kind, Quantity, Unit};

/// The quantity and unit of a header that leaves nothing open.
pub(super) fn plain_header(header: &str) -> Option<(Quantity, Option<Unit>)> {
    let words = words_of(header);
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    (0..=2.min(words.len())).rev().find_map(|ending| {
        let (name, unit) = words.split_at(words.len() - ending);
        let quantity = named(&name.join(" "))?;
        let unit = unit_named(quantity.kind(), &unit.join("/"));
        match (ending, unit) {
            (0, _) => (!needs_unit(quantity.kind())).then_some((quantity, None)),
            (_, Some(unit)) => Some((quantity, Some(unit))),
            (_, None) => None,
        }
    })
}

/// Names of quantities that nobody takes for another; each with the spaces of its words.
const NAMES: [(Quantity, &[&str]); 18] = [
    (Quantity::Speed, &["speed", "velo", "velocity", "release speed", "pitch speed"]),
    (Quantity::VerticalBreak, &["vertical break", "vert break", "vb"]),
    (Quantity::GloveSideBreak, &["glove side break"]),
    (Quantity::Spin, &["spin", "spin rate", "total spin"]),
    (Quantity::ActiveFraction, &["active fraction", "active spin"]),
    (Quantity::SpinClock, &["spin clock"]),
    (Quantity::ReleaseHeight, &["release height", "rel height"]),
    (Quantity::ReleaseSide, &["release side", "rel side"]),
    (Quantity::Extension, &["extension", "ext"]),
    (Quantity::PlateSide, &["plate side"]),
    (Quantity::PlateHeight, &["plate height"]),
    (Quantity::Pitch, &["pitch", "pitch type", "pitch name"]),
    (Quantity::BatterSide, &["batter side", "hitter side", "bats"]),
    (Quantity::Outcome, &["outcome", "result", "pitch result"]),
    (Quantity::Date, &["date", "day", "session date", "game date"]),
    (Quantity::Grip, &["grip"]),
    (Quantity::Wobble, &["wobble"]),
    (Quantity::Pitcher, &["pitcher", "pitcher name"]),
];

fn named(words: &str) -> Option<Quantity> {
    NAMES.iter().find(|(_, names)| names.contains(&words)).map(|(quantity, _)| *quantity)
}

/// Whether numbers without a unit could be of several.
fn needs_unit(kind: Kind) -> bool {
    Unit::of_kind(kind).len() > 1 && kind != Kind::Clock
}

/// The unit by any of its words; a ratio such as km/h is two of them.
pub(super) fn unit_named(kind: Kind, words: &str) -> Option<Unit> {
    Unit::words_of_kind(kind).into_iter().find(|(word, _)| *word == words).map(|(_, unit)| unit)
}

/// The words of a header, lower case.
pub(super) fn words_of(header: &str) -> Vec<String> {
    let lower = header.to_lowercase().replace('%', " percent ");
    lower.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// Groups of words by which a header may be one for a quantity; it must have one of each group. Plain
/// words and abbreviations of the whole trade only.
pub(super) fn telling_words(quantity: Quantity) -> &'static [&'static [&'static str]] {
    const MOVES: &[&str] = &["break", "movement", "move", "shift"];
    const UP: &[&str] = &["vertical", "vert", "up", "rise", "ride", "drop"];
    const RELEASE: &[&str] = &["release", "rel"];
    const ACROSS: &[&str] = &["horizontal", "horz", "side", "glove", "arm", "right", "left", "run", "lateral"];
    const PLATE: &[&str] = &["plate", "location"];
    match quantity {
        Quantity::Speed => &[&["speed", "velocity", "velo", "mph", "kph", "kmh"]],
        Quantity::VerticalBreak => &[MOVES, UP],
        Quantity::GloveSideBreak => &[MOVES, ACROSS],
        Quantity::Spin => &[&["spin", "rpm"]],
        Quantity::ActiveFraction => &[&["active"]],
        Quantity::SpinClock => &[&["clock", "direction", "axis"]],
        Quantity::ReleaseHeight => &[RELEASE, &["height", "up"]],
        Quantity::ReleaseSide => &[RELEASE, &["side", "horizontal"]],
        Quantity::Extension => &[&["extension", "ext"]],
        Quantity::PlateSide => &[PLATE, &["side", "horizontal", "right", "left"]],
        Quantity::PlateHeight => &[PLATE, &["height", "vertical", "up"]],
        Quantity::Pitch => &[&["pitch", "type", "label"]],
        Quantity::BatterSide => &[&["batter", "hitter", "bats"]],
        Quantity::Outcome => &[&["outcome", "result"]],
        Quantity::Date => &[&["date", "day", "game", "session"]],
        Quantity::Grip => &[&["grip"]],
        Quantity::Wobble => &[&["wobble"]],
        Quantity::Pitcher => &[&["pitcher"]],
    }
}

/// Abbreviations of the whole trade that stand for several words.
const SHORT: [(&str, Quantity); 2] = [("vb", Quantity::VerticalBreak), ("hb", Quantity::GloveSideBreak)];

/// How well a header's words suit a quantity: twice the number of its groups found, none if one lacks.
pub(super) fn likeness(quantity: Quantity, header: &str) -> usize {
    let words = words_of(header);
    let has = |options: &[&str]| options.iter().any(|option| words.iter().any(|word| word == option));
    let groups = telling_words(quantity);
    let is_short = SHORT.iter().any(|(word, meant)| *meant == quantity && has(&[word]));
    if is_short {
        4
    } else if groups.iter().all(|group| has(group)) {
        groups.len() * 2 + usize::from(!has(&["plate", "end"]))
    } else {
        0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_header_that_leaves_nothing_open_is_ours() {
        for (header, quantity, unit) in [
            ("Speed (mph)", Quantity::Speed, Some(Unit::Mph)),
            ("Velo [km/h]", Quantity::Speed, Some(Unit::Kph)),
            ("vertical break (cm)", Quantity::VerticalBreak, Some(Unit::Centimetre)),
            ("VB in", Quantity::VerticalBreak, Some(Unit::Inch)),
            ("Spin Rate", Quantity::Spin, None),
            ("spin (rpm)", Quantity::Spin, Some(Unit::Rpm)),
            ("Active spin %", Quantity::ActiveFraction, Some(Unit::Percent)),
            ("Pitch Type", Quantity::Pitch, None),
            ("Pitcher", Quantity::Pitcher, None),
        ] {
            assert_eq!(plain_header(header), Some((quantity, unit)), "{header}");
        }
        for open in ["speed", "velo", "VB", "horizontal break (in)", "active spin", "spin axis", "batter", "x", ""] {
            assert_eq!(plain_header(open), None, "{open}");
        }
    }

    #[test]
    fn our_own_headers_are_plain() {
        for quantity in Quantity::ALL {
            let found = plain_header(quantity.header()).map(|(found, _)| found);
            // A fraction's header carries no unit, and is known by its own name alone.
            assert!(found == Some(quantity) || quantity == Quantity::ActiveFraction, "{}", quantity.header());
        }
    }
}

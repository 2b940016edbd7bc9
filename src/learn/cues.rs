//! What to try when something is found: one table of words, compiled in from `cues.toml`.
//!
//! Each cue says what the numbers mean, what to try, and what trying it must not cost. All of it
//! is common practice without a published source, in this project's own words. Medical matters
//! appear only as "stop, see a licensed professional". Which finding calls for which cue is here;
//! what was found is in [`crate::learn::trial`] and [`crate::learn::progress`].

use std::sync::LazyLock;

use toml::{Table, Value};

use crate::learn::progress::{Kind, NewPitch, ShapeState};
use crate::learn::trial::{DotFault, Grip};

/// Where every cue comes from, as shown beside it.
pub const SOURCE: &str = "common practice, no published source";

/// One cue.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cue {
    /// The finding it belongs to, such as `dot-too-central`.
    pub finding: String,
    /// What the numbers say.
    pub says: String,
    /// What to try.
    pub attempt: String,
    /// What trying it must not cost.
    pub must_not_cost: String,
}

static TABLE: LazyLock<Vec<Cue>> = LazyLock::new(|| {
    let table: Table = include_str!("cues.toml").parse().unwrap_or_default();
    table.get("cue").and_then(Value::as_array).into_iter().flatten().filter_map(read).collect()
});

/// One entry of the table; a test sees to it that every entry can be read.
fn read(entry: &Value) -> Option<Cue> {
    let text = |key: &str| Some(entry.get(key)?.as_str()?.to_owned());
    Some(Cue {
        finding: text("finding")?,
        says: text("says")?,
        attempt: text("try")?,
        must_not_cost: text("must_not_cost")?,
    })
}

/// Every cue, in the table's order.
pub fn all() -> &'static [Cue] {
    &TABLE
}

/// The cue for a finding's name.
pub fn cue(finding: &str) -> Option<&'static Cue> {
    TABLE.iter().find(|cue| cue.finding == finding)
}

/// The cue for a finding over the outings.
pub fn for_finding(kind: Kind, pitch: &NewPitch) -> Option<&'static Cue> {
    cue(match kind {
        Kind::SlotDropping | Kind::NewPitchSlotLower => "slot-dropping",
        Kind::FastballSlower => "fastball-slower",
        Kind::FastballVerticalChanged | Kind::FastballSidewaysChanged => "fastball-shape-changed",
        Kind::ReleaseLower | Kind::ReleaseSideMoved => "release-moved",
        Kind::ExtensionShorter => "extension-shorter",
        Kind::CommandNotComing => "command-not-coming",
        Kind::ShapeDrifted => drifted(pitch),
        Kind::ShapeOnTheWay => return None,
        Kind::ShapeArrived => "shape-arrived",
    })
}

fn drifted(pitch: &NewPitch) -> &'static str {
    match pitch.state {
        ShapeState::Drifted { axis: 0, above: false } => "too-slow",
        ShapeState::Drifted { axis: 1, above: false } => "too-much-depth",
        ShapeState::Drifted { axis: 1, above: true } => "too-much-ride",
        _ => "shape-drifted",
    }
}

/// Spreads above which a dot wanders, and a share of wobbling throws that is worth a word.
const WANDERING_FRACTION: f64 = 0.08;
const WANDERING_MINUTES: f64 = 30.0;
const WOBBLING: f64 = 0.3;

/// The cues for one grip of a trial, most basic first.
pub fn for_grip(grip: &Grip) -> Vec<&'static Cue> {
    let clean = &grip.clean;
    let wobbles = clean.wobble.is_some_and(|share| share.value > WOBBLING);
    let wanders = clean.active_fraction_spread.is_some_and(|spread| spread.value > WANDERING_FRACTION)
        || clean.clock_spread_minutes.is_some_and(|spread| spread.value > WANDERING_MINUTES);
    let faults = grip.dot.map(|dot| dot.faults()).unwrap_or_default();
    let dots = faults.into_iter().map(|fault| match fault {
        DotFault::TooCentral => "dot-too-central",
        DotFault::TooFarOut => "dot-too-far-out",
        DotFault::Turned => "dot-turned",
    });
    let basic = [wobbles.then_some("wobble"), wanders.then_some("dot-wandering")];
    basic.into_iter().flatten().chain(dots).filter_map(cue).collect()
}

/// The cue for a grip whose dot is right and whose sweep falls short of `least_in` all the same.
pub fn for_missing_sweep(grip: &Grip, least_in: f64) -> Option<&'static Cue> {
    let right = grip.dot.is_some_and(|dot| dot.faults().is_empty());
    (right && grip.glove_side_break_in.high < least_in).then(|| cue("spin-right-no-sweep")).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_complete_and_every_name_used_here_is_in_it() {
        assert_eq!(all().len(), include_str!("cues.toml").matches("[[cue]]").count());
        let names = [
            "dot-too-central",
            "dot-too-far-out",
            "dot-turned",
            "dot-wandering",
            "wobble",
            "spin-right-no-sweep",
            "too-much-depth",
            "too-much-ride",
            "too-slow",
            "slot-dropping",
            "fastball-slower",
            "fastball-shape-changed",
            "release-moved",
            "extension-shorter",
            "command-not-coming",
            "shape-drifted",
            "shape-arrived",
        ];
        for name in names {
            assert!(cue(name).is_some(), "{name}");
        }
        for cue in all() {
            assert!(names.contains(&cue.finding.as_str()), "{} is never called for", cue.finding);
            assert!(!cue.says.is_empty() && !cue.attempt.is_empty() && !cue.must_not_cost.is_empty());
        }
    }

    #[test]
    fn pain_is_only_ever_for_a_licensed_professional() {
        for cue in all() {
            let text = format!("{} {} {}", cue.says, cue.attempt, cue.must_not_cost);
            assert!(!text.contains("pain") || text.contains("stop and see a licensed professional"), "{}", cue.finding);
        }
    }
}

//! What must hold of the readers for any bytes: the bodies of the fuzz targets.
//!
//! `tests/fuzz/targets/` runs them under cargo-fuzz.

#[path = "finite.rs"]
mod finite;

use std::sync::LazyLock;

use std::num::NonZeroUsize;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::athlete::session::{FullFlight, Session, SetAside};
use arsenalfit::ball::flight::Air;
use arsenalfit::ball::spin::Spin;
use arsenalfit::ball::{Family, SLOWEST_MPH, Shape};
use arsenalfit::base::geometry::{Clock, Hand};
use arsenalfit::decide::inspect::{Inspected, inspect};
use arsenalfit::decide::model::Model;
use arsenalfit::files::{
    ColumnMap, InputError, ReadOptions, profile_from_toml, propose, session_from_bytes, text_from_bytes,
};
use arsenalfit::learn::target::Target as Chased;
use arsenalfit::learn::trial::{Effort, attempts, trial_with};
use arsenalfit::report::answers::{self, Ground};
use arsenalfit::report::{Answer, column_map};
use arsenalfit::throws::profile_text::updated_profile;
use arsenalfit::throws::{Assignment, Options, Sorted, screened, sort};
use finite::assert_finite;

/// What the bytes are taken for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Target {
    /// A profile.
    Profile,
    /// A column map.
    Columns,
    /// Throws, after a column map and a line of [`SPLIT`], or without.
    Session,
    /// A grip trial, written as a session is.
    Trial,
}

impl Target {
    /// Every target.
    #[allow(dead_code, reason = "the fuzz targets name the one they run")]
    pub(crate) const ALL: [Self; 4] = [Self::Profile, Self::Columns, Self::Session, Self::Trial];

    /// The name of its binary and of its folder of stored inputs.
    #[allow(dead_code, reason = "the fuzz targets name the one they run")]
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Profile => "profile",
            Self::Columns => "columns",
            Self::Session => "session",
            Self::Trial => "trial",
        }
    }
}

/// Reads `bytes` as what `target` says.
///
/// # Panics
/// When something that must hold does not.
pub(crate) fn run(target: Target, bytes: &[u8]) {
    match target {
        Target::Profile => profile(bytes),
        Target::Columns => columns(bytes),
        Target::Session => session(bytes),
        Target::Trial => trial(bytes),
    }
}

/// The line between the column map and the throws of an input.
const SPLIT: &[u8] = b"\n===\n";
/// The name inputs go by in messages.
const NAME: &str = "input.file";
/// Draws of a trial's posterior: enough for a verdict, few enough to run often.
const DRAWS: usize = 64;
/// Faults shown of a file, and lines each may take.
const MOST_SHOWN: usize = 30;
const LINES_EACH: usize = 10;

fn profile(bytes: &[u8]) {
    let text = match text_from_bytes(NAME, bytes.to_vec()) {
        Ok(text) => text,
        Err(error) => return check_input_error(&error),
    };
    let profile = match profile_from_toml(&text, NAME) {
        Ok(profile) => profile,
        Err(error) => return check_input_error(&error),
    };
    assert_finite(&profile);
    assert!((1..=12).contains(&profile.pitches.len()), "{} pitches", profile.pitches.len());
    check_rewriting(&text, &profile);
    let inspected = inspect(&profile, Air::SEA_LEVEL);
    assert_eq!(inspected.len(), profile.pitches.len());
    for seen in &inspected {
        let Inspected { averages, read, spin, source: _, shares, seams, active_needed, restated } = seen;
        assert_finite(&(averages, read, spin, shares, seams, restated));
        // No spin may be enough, and then it is infinite.
        assert!((0.0..).contains(&active_needed.low) && active_needed.low <= active_needed.value, "{seen:?}");
        assert!(active_needed.value <= active_needed.high, "{seen:?}");
    }
    check_answer(&answers::check(&profile, &inspected, 0.0, NAME));
}

/// A session without throws leaves a profile as it was: written back, it means the same.
fn check_rewriting(text: &str, profile: &Profile) {
    let nothing = Session::default();
    let sorted = sort(&nothing, Options::default());
    let written = updated_profile(text, "unnamed", &nothing, &sorted).expect("a profile that was read is TOML");
    let again = profile_from_toml(&written.text, NAME)
        .unwrap_or_else(|error| panic!("a profile written back is refused: {error}\n{}", written.text));
    assert_eq!(&again, profile, "a profile written back is another one:\n{}", written.text);
}

fn columns(bytes: &[u8]) {
    let text = match text_from_bytes(NAME, bytes.to_vec()) {
        Ok(text) => text,
        Err(error) => return check_input_error(&error),
    };
    let map = match ColumnMap::from_toml(&text, NAME) {
        Ok(map) => map,
        Err(error) => return check_input_error(&error),
    };
    assert_finite(&map);
    check_rewritten_map(&map);
    let full_flight = FullFlight::new(map.measured());
    for speed_mph in [SLOWEST_MPH, 61.3, 95.0, 110.0] {
        let (release_mph, vertical, glove_side) = full_flight.restore(speed_mph, 1.0, 1.0);
        assert!(release_mph.is_finite() && release_mph > speed_mph - 1e-9, "{speed_mph} mph from {release_mph} mph");
        assert!(vertical.is_finite() && vertical > 0.9, "an inch becomes {vertical} in");
        assert!(glove_side.is_finite() && glove_side > 0.9, "an inch becomes {glove_side} in");
    }
}

/// A map written out and read again names the same columns.
fn check_rewritten_map(map: &ColumnMap) {
    let written = map.to_toml();
    let again = ColumnMap::from_toml(&written, NAME)
        .unwrap_or_else(|error| panic!("a map written out is refused: {error}\n{written}"));
    assert_eq!(again.hand, map.hand, "{written}");
    for (quantity, column) in &map.columns {
        assert_eq!(again.columns.get(quantity), Some(column), "{written}");
    }
}

fn session(bytes: &[u8]) {
    let Some((map, rows)) = map_and_rows(bytes) else { return };
    check_proposal(rows);
    let Some(session) = throws(&map, rows, None) else { return };
    let sorted = sort(&session, Options { most_pitches: most_pitches(rows), ..Options::default() });
    check_sorted(&session, &sorted);
    check_answer(&answers::sort(&session, &sorted, None));
    check_written_profile(&session, &sorted);
}

/// Pitches looked for among `rows`. Looking for any takes nine tenths of a fuzzer's time and reads nothing more, so
/// that there one session in 64 is sorted in earnest.
#[allow(unexpected_cfgs, reason = "cargo-fuzz sets it for what it builds")]
fn most_pitches(rows: &[u8]) -> usize {
    let sum: usize = rows.iter().map(|&byte| usize::from(byte)).sum();
    if !cfg!(fuzzing) || sum.is_multiple_of(64) { 8 } else { 0 }
}

/// The map that stands before the rows, or our own names; nothing when it is no map.
fn map_and_rows(bytes: &[u8]) -> Option<(ColumnMap, &[u8])> {
    let Some(at) = bytes.windows(SPLIT.len()).position(|window| window == SPLIT) else {
        return Some((ColumnMap::default(), bytes));
    };
    let text = std::str::from_utf8(&bytes[..at]).ok()?;
    Some((ColumnMap::from_toml(text, NAME).ok()?, &bytes[at + SPLIT.len()..]))
}

/// The throws of `rows`, checked; a hand that is needed and not told is the left one.
fn throws(map: &ColumnMap, rows: &[u8], hand: Option<Hand>) -> Option<Session> {
    let read = |hand| session_from_bytes(NAME, rows, ReadOptions { map: map.clone(), hand, progress: &mut |_| {} });
    let session = read(hand).or_else(|error| {
        check_input_error(&error);
        read(hand.or(Some(Hand::Left)))
    });
    let session = session.inspect_err(check_input_error).ok()?;
    assert_finite(&session);
    for throw in &session.throws {
        let has = |index: Option<u16>, words: &[String]| index.is_none_or(|index| usize::from(index) < words.len());
        assert!(has(Some(throw.day), &session.days), "{throw:?}");
        assert!(has(throw.label, &session.labels) && has(throw.grip, &session.grips), "{throw:?}");
        assert!((SLOWEST_MPH..=110.0).contains(&throw.shape.speed_mph), "{throw:?}");
        let movement = [throw.shape.vertical_break_in, throw.shape.glove_side_break_in];
        assert!(movement.iter().all(|inches| inches.abs() <= 80.0), "{throw:?}");
        assert!(throw.spin.active_fraction.is_none_or(|active| (0.0..=1.0).contains(&active)), "{throw:?}");
        assert!(throw.spin.clock.is_none_or(|clock| (0.0..12.0).contains(&clock.hours())), "{throw:?}");
    }
    check_rows(&session.set_aside, rows);
    Some(session)
}

/// Rows stand inside the file and in its order.
fn check_rows(set_aside: &[SetAside], rows: &[u8]) {
    // A packed file has more lines than it shows.
    let lines = if rows.starts_with(&[0x1f, 0x8b]) { usize::MAX } else { lines_of(rows) };
    assert!(set_aside.is_sorted_by_key(|aside| aside.place), "{set_aside:?}");
    for SetAside { place, reason } in set_aside {
        assert!(place.row >= 1 && place.row as usize <= lines, "row {} of {lines}", place.row);
        check_line(&reason.to_string());
    }
}

/// Lines that end in a newline, in a carriage return, or in both count as the file's reader counts them at most.
fn lines_of(bytes: &[u8]) -> usize {
    1 + bytes.iter().filter(|&&byte| byte == b'\n' || byte == b'\r').count()
}

fn check_proposal(rows: &[u8]) {
    match propose(NAME, rows) {
        Ok(proposal) => {
            check_shown(&column_map(NAME, &proposal));
            check_rewritten_map(&proposal.map);
        }
        Err(error) => check_input_error(&error.into()),
    }
}

fn check_sorted(session: &Session, sorted: &Sorted) {
    assert_finite(sorted);
    assert_eq!(sorted.assignments.len(), session.throws.len());
    check_rows(&sorted.set_aside, &[b'\n'; 1 << 14]);
    let mut sizes = vec![0; sorted.groups.len()];
    for assignment in &sorted.assignments {
        if let Assignment::Group { index, chance } = *assignment {
            assert!((0.0..=1.0 + 1e-9).contains(&chance), "{chance}");
            sizes[index] += 1;
        }
    }
    let throws: Vec<usize> = sorted.groups.iter().map(|group| group.throws).collect();
    assert_eq!(throws, sizes, "throws of the groups");
    let aside = sorted.assignments.iter().filter(|assignment| matches!(assignment, Assignment::SetAside)).count();
    assert_eq!(aside + session.set_aside.len(), sorted.set_aside.len());
}

/// A profile made from throws is one that can be read, or is refused in words.
fn check_written_profile(session: &Session, sorted: &Sorted) {
    let written = updated_profile("", "unnamed", session, sorted).expect("nothing is TOML");
    match profile_from_toml(&written.text, NAME) {
        Ok(profile) => assert_finite(&profile),
        Err(error) => check_input_error(&error),
    }
}

/// The athlete who throws every trial, and what is chased.
static CHASE: LazyLock<(Profile, Chased)> = LazyLock::new(|| {
    let text = include_str!("../../profiles/three-quarter-right.toml");
    let profile = profile_from_toml(text, NAME).unwrap_or_else(|error| panic!("{error}"));
    let shape = Shape { speed_mph: 79.5, vertical_break_in: -2.5, glove_side_break_in: 13.5 };
    let spin = Spin { rpm: 2200.0, active_fraction: 0.39, clock: Clock::from_hours(8.75) };
    let target = Chased::about(&Model::new(&profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape).with_spin(spin);
    (profile, target)
});

fn trial(bytes: &[u8]) {
    let (profile, target) = &*CHASE;
    let Some((map, rows)) = map_and_rows(bytes) else { return };
    let Some(session) = throws(&map, rows, Some(profile.athlete.throws)) else { return };
    let session = screened(session);
    let (attempts, cautions) = attempts(&session);
    let mut trial = trial_with(&session.grips, &attempts, profile, target, Effort { draws: DRAWS, seed: 1 });
    assert_finite(&trial);
    let thrown: usize = trial.grips.iter().map(|grip| grip.throws as usize).sum();
    assert_eq!(thrown, attempts.len(), "every attempt counts once");
    let best: f64 = trial.grips.iter().map(|grip| grip.chance_best).sum();
    assert!(trial.grips.is_empty() || (best - 1.0).abs() < 1e-6, "the chances to be best sum to {best}");
    for grip in &trial.grips {
        assert!(grip.in_window.hits <= grip.in_window.tries, "{grip:?}");
        assert!((0.0..=1.0 + 1e-9).contains(&grip.chance_next.value), "{grip:?}");
    }
    trial.cautions.extend(cautions);
    let ground = Ground { profile, file: NAME, target, session: &session, is_wished: true, bars: &[] };
    check_answer(&answers::trial(&ground, &trial));
}

/// Every fault stands inside the text, in its order and in one line; the whole stays short.
fn check_input_error(error: &InputError) {
    let shown = error.render(false);
    assert!(shown.contains(NAME), "{shown}");
    assert!(shown.chars().all(|c| c == '\n' || !is_steering(c)), "{shown:?}");
    assert!(shown.lines().count() <= (MOST_SHOWN + 1) * LINES_EACH, "{} lines", shown.lines().count());
    if let InputError::Faulty { text, faults, .. } = error {
        assert!(!faults.is_empty(), "refused without a fault");
        assert!(faults.is_sorted_by_key(|fault| fault.span.start), "{faults:?}");
        for fault in faults {
            assert!(text.get(fault.span.clone()).is_some(), "{:?} in {} bytes", fault.span, text.len());
            for words in [&fault.field, &fault.found, &fault.allowed].into_iter().chain(&fault.hint) {
                assert!(!words.is_empty() && !words.contains('\n'), "{fault:?}");
            }
        }
    }
}

/// Every form of an answer is sound.
fn check_answer(answer: &Answer) {
    check_shown(&answer.text(80));
    check_json(&answer.json());
    assert!(answer.page().ends_with("</html>"), "the page is whole");
}

/// Text for a terminal holds no control characters but its own bold.
fn check_shown(shown: &str) {
    assert!(!shown.trim().is_empty(), "nothing is shown");
    for line in shown.lines() {
        check_line(&line.replace("\u{1b}[1m", "").replace("\u{1b}[0m", ""));
    }
}

fn check_line(line: &str) {
    assert!(!line.contains(is_steering), "{line:?} steers the terminal");
}

fn check_json(written: &str) {
    serde_json::from_str::<serde_json::Value>(written).unwrap_or_else(|error| panic!("{error}:\n{written}"));
}

/// Control characters but the tab, and those that change how a line is laid out.
fn is_steering(c: char) -> bool {
    (c.is_control() && c != '\t')
        || matches!(c, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

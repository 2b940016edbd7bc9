//! A sorted session as a profile: new TOML text from old text, and what changed.
//!
//! Comments, order and every key the user wrote stay; only what was measured is set. A pitch of
//! the session updates the pitch of that name or family in the profile, or is added; a pitch that
//! was not thrown is left as it was. Nothing is written to disk here, and what the profile means
//! is for [`crate::files`] to read back.

use similar::{ChangeTag, TextDiff};
use toml_edit::{ArrayOfTables, DocumentMut, InlineTable, Item, Table, TomlError, Value, value};

use super::profile_fit::leave_out_what_does_not_fit;
use crate::athlete::profile::{PerSide, Results};
use crate::athlete::session::Session;
use crate::ball::Against;
use crate::base::geometry::{Hand, Side};
use crate::base::stats::Estimate;
use crate::files::{LONGEST_TEXT, hand_of_word, is_same_name, looks_empty};
use crate::throws::{Group, Sorted};

/// Fewest throws of a pitch against a side for its results to be written.
const FEWEST_RESULTS: u32 = 10;

/// A new profile text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ProfileUpdate {
    /// The whole new text.
    pub text: String,
    /// Lines that changed, in file order.
    pub changes: Vec<LineChange>,
    /// What was measured and a profile cannot hold, and what was filled in, one sentence each.
    pub notes: Vec<String>,
}

/// One line that is not as it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LineChange {
    /// Only in the old text.
    Removed(String),
    /// Only in the new text.
    Added(String),
}

/// The profile text `old` (empty for a new profile) brought up to date with a sorted session.
/// `name` is the athlete's name for a profile that has none.
///
/// # Errors
/// When `old` is not TOML.
pub fn updated_profile(old: &str, name: &str, session: &Session, sorted: &Sorted) -> Result<ProfileUpdate, TomlError> {
    let before: DocumentMut = old.parse()?;
    let mut document = before.clone();
    let hand = set_athlete(&mut document, name, session.hand);
    set_release(&mut document, &sorted.groups);
    let in_profile = document.get("athlete").is_some_and(|athlete| athlete.get("against").is_some());
    let mut notes = set_pitches(&mut document, hand, session.against.is_some() || in_profile, &sorted.groups);
    notes.extend(leave_out_what_does_not_fit(&mut document, &before));
    let text = document.to_string();
    let changes = changes(old, &text);
    Ok(ProfileUpdate { text, changes, notes })
}

fn changes(old: &str, new: &str) -> Vec<LineChange> {
    let diff = TextDiff::from_lines(old, new);
    let line = |text: &str| text.trim_end_matches(['\r', '\n']).to_owned();
    let changed = diff.iter_all_changes().filter_map(|change| match change.tag() {
        ChangeTag::Equal => None,
        ChangeTag::Delete => Some(LineChange::Removed(line(change.value()))),
        ChangeTag::Insert => Some(LineChange::Added(line(change.value()))),
    });
    changed.collect()
}

/// The throwing hand that a profile's text tells.
pub fn written_hand(text: &str) -> Option<Hand> {
    let document: DocumentMut = text.strip_prefix('\u{feff}').unwrap_or(text).parse().ok()?;
    hand_of_word(document.get("athlete")?.as_table_like()?.get("throws")?.as_str()?)
}

/// Sets what is missing of the athlete; the hand that the profile or else the session tells.
fn set_athlete(document: &mut DocumentMut, name: &str, told: Option<Hand>) -> Hand {
    let athlete = section(document, "athlete");
    let written = athlete.get("throws").and_then(Item::as_str).and_then(hand_of_word);
    let hand = written.or(told).unwrap_or(Hand::Right);
    athlete.entry("name").or_insert_with(|| value(name));
    athlete.entry("throws").or_insert_with(|| value(hand.to_string()));
    hand
}

/// The section under `key`, made when it is not there.
fn section<'a>(document: &'a mut DocumentMut, key: &str) -> &'a mut dyn toml_edit::TableLike {
    let item = document.entry(key).or_insert_with(|| Item::Table(Table::new()));
    if !item.is_table_like() {
        *item = Item::Table(Table::new());
    }
    item.as_table_like_mut().expect("it has just been made one")
}

fn set_release(document: &mut DocumentMut, groups: &[Group]) {
    let mean = |of: fn(&Group) -> Option<Estimate>| {
        let measured = || groups.iter().filter_map(|group| of(group).map(|e| (e.value, group.throws as f64)));
        let throws: f64 = measured().map(|(_, throws)| throws).sum();
        (throws > 0.0).then(|| measured().map(|(value, throws)| value * throws).sum::<f64>() / throws)
    };
    let found = [
        ("slot_deg", mean(|g| g.slot_deg), 0),
        ("height_ft", mean(|g| g.release_height_ft), 2),
        ("side_ft", mean(|g| g.release_side_ft), 2),
        ("extension_ft", mean(|g| g.extension_ft), 2),
    ];
    if found.iter().all(|(_, value, _)| value.is_none()) {
        return;
    }
    let release = section(document, "release");
    for (key, found, digits) in found {
        // The slot is only a guess from the release point: one the user has written is better.
        if let Some(found) = found.filter(|_| key != "slot_deg" || !release.contains_key(key)) {
            set(release, key, number(found, digits));
        }
    }
}

/// Sets every pitch thrown; what was filled in beside it, one sentence each. The shapes of a session are drag-free; the
/// pitches say so where the session or the profile says what it counts against.
fn set_pitches(document: &mut DocumentMut, hand: Hand, against_is_told: bool, groups: &[Group]) -> Vec<String> {
    let item = document.entry("pitch").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    if !item.is_array_of_tables() {
        // Pitches written in one list, `pitch = [{ ... }]`, are kept: each becomes a section.
        *item = Item::ArrayOfTables(std::mem::take(item).into_array_of_tables().unwrap_or_default());
    }
    let Some(pitches) = item.as_array_of_tables_mut() else { return Vec::new() };
    let places = places_of(pitches, groups);
    let all_thrown = pitches.len() == groups.len();
    for (group, place) in groups.iter().zip(places) {
        if let Some(pitch) = pitches.get_mut(place) {
            set_pitch(pitch, hand, group);
            if against_is_told || pitch.contains_key("against") {
                set(pitch, "against", Against::DragFree.name().into());
            }
            if all_thrown {
                set_usage(pitch, groups, group);
            }
        }
    }
    complete_usage(pitches)
}

/// A pitch that is new to a profile with usage is one not used yet: usage is told of every pitch or of none.
fn complete_usage(pitches: &mut ArrayOfTables) -> Vec<String> {
    let mut notes = Vec::new();
    for side in Side::BOTH.map(side_key) {
        let is_told = |pitch: &Table| {
            pitch.get("usage").and_then(Item::as_table_like).is_some_and(|usage| usage.contains_key(side))
        };
        if pitches.iter().any(is_told) {
            for pitch in pitches.iter_mut().filter(|pitch| !is_told(pitch)) {
                set(inner(pitch, "usage"), side, 0.0.into());
                let name = pitch.get("name").and_then(Item::as_str).unwrap_or_default();
                notes.push(format!("usage.{side} of {name} is set to 0, because the others' is told and its is not"));
            }
        }
    }
    notes
}

/// The pitch of each group: that of its name and family, or else of its name, or else of its family, or else a new
/// one at the end. No two groups are one pitch, even if they have one label or one name once theirs are cut.
fn places_of(pitches: &mut ArrayOfTables, groups: &[Group]) -> Vec<usize> {
    let wanted: Vec<[(&str, String); 2]> =
        groups.iter().map(|g| [("name", name_of(g)), ("family", family(g))]).collect();
    let mut places = vec![None; groups.len()];
    for part in [0..2, 0..1, 1..2] {
        for (index, wanted) in wanted.iter().enumerate() {
            let is_free = |place: usize| !places.contains(&Some(place));
            let fits = |pitch: &Table| wanted[part.clone()].iter().all(|(key, word)| is_written(pitch, key, word));
            let found = || pitches.iter().enumerate().position(|(place, pitch)| is_free(place) && fits(pitch));
            places[index] = places[index].or_else(found);
        }
    }
    let new = |(place, [(_, name), (_, family)]): (Option<usize>, &[(&str, String); 2])| {
        place.unwrap_or_else(|| add_pitch(pitches, name, family))
    };
    places.into_iter().zip(&wanted).map(new).collect()
}

/// Whether a pitch has that word, as its reader compares them.
fn is_written(pitch: &Table, key: &str, word: &str) -> bool {
    let written = pitch.get(key).and_then(Item::as_str);
    written.is_some_and(|written| is_same_name(written, word))
}

fn family(group: &Group) -> String {
    group.naming.family.name().to_owned()
}

/// The usual label as a name that the profile's reader takes, or else the family.
fn name_of(group: &Group) -> String {
    let label = group.usual_label.as_deref().unwrap_or_default().replace('\t', " ");
    let name = cut(label.trim(), LONGEST_TEXT);
    if looks_empty(&name) { family(group) } else { name }
}

/// So many characters at most, without a space at the end.
fn cut(text: &str, most: usize) -> String {
    text.chars().take(most).collect::<String>().trim_end().to_owned()
}

/// Adds a pitch and tells its place; a name that is taken gets a number.
fn add_pitch(pitches: &mut ArrayOfTables, name: &str, family: &str) -> usize {
    let is_taken = |name: &String| pitches.iter().any(|pitch| is_written(pitch, "name", name));
    let (mut free, mut count) = (name.to_owned(), 1);
    while is_taken(&free) {
        count += 1;
        let number = format!(" {count}");
        free = cut(name, LONGEST_TEXT - number.len()) + &number;
    }
    let mut pitch = Table::new();
    pitch["name"] = value(free);
    pitch["family"] = value(family);
    pitches.push(pitch);
    pitches.len() - 1
}

fn set_pitch(pitch: &mut Table, hand: Hand, group: &Group) {
    set(pitch, "speed_mph", number(group.speed_mph.value, 1));
    set(pitch, "vertical_break_in", number(group.vertical_break_in.value, 1));
    set(pitch, "glove_side_break_in", number(group.glove_side_break_in.value, 1));
    if let Some(spin) = group.spin_rpm {
        set(pitch, "spin_rpm", number(spin.value, 0));
    }
    if let Some(active) = group.active_fraction {
        set(pitch, "active_fraction", number(active.value.clamp(0.0, 1.0), 2));
    }
    if let Some(clock) = group.spin_clock {
        set(pitch, "spin_clock", clock.for_hand(hand).to_string().into());
    }
    set(pitch, "throws", whole(group.throws));
    set_spread(pitch, group);
    set_results(pitch, &group.results);
}

fn set_spread(pitch: &mut Table, group: &Group) {
    let spread = &group.spread;
    let found = [
        ("speed_mph", Some(spread.speed_mph)),
        ("vertical_break_in", Some(spread.vertical_break_in)),
        ("glove_side_break_in", Some(spread.glove_side_break_in)),
        ("command_side_in", spread.plate_side_in),
        ("command_height_in", spread.plate_height_in),
        ("release_in", spread.release_in),
    ];
    let spread = inner(pitch, "spread");
    for (key, found) in found {
        if let Some(found) = found {
            set(spread, key, number(found, 1));
        }
    }
}

/// Each side's share of this pitch, when every pitch of the profile was thrown to hitters.
fn set_usage(pitch: &mut Table, groups: &[Group], group: &Group) {
    for side in Side::BOTH {
        let all: u32 = groups.iter().map(|group| *group.faced.on(side)).sum();
        if all >= FEWEST_RESULTS {
            let share = f64::from(*group.faced.on(side)) / f64::from(all);
            set(inner(pitch, "usage"), side_key(side), number(share, 3));
        }
    }
}

fn set_results(pitch: &mut Table, results: &PerSide<Results>) {
    for side in Side::BOTH {
        let Results { pitches, swings, misses, weak } = *results.on(side);
        if pitches < FEWEST_RESULTS {
            continue;
        }
        let mut table = InlineTable::new();
        for (key, count) in
            [("pitches", Some(pitches)), ("swings", Some(swings)), ("misses", Some(misses)), ("weak", weak)]
        {
            if let Some(count) = count {
                table.insert(key, i64::from(count).into());
            }
        }
        set(inner(pitch, "results"), side_key(side), table.into());
    }
}

fn side_key(side: Side) -> &'static str {
    match side {
        Side::Same => "same_side",
        Side::Opposite => "opposite_side",
    }
}

/// The table under `key` of a pitch, made in line when it is not there.
fn inner<'a>(pitch: &'a mut Table, key: &str) -> &'a mut dyn toml_edit::TableLike {
    let item = pitch.entry(key).or_insert_with(|| value(InlineTable::new()));
    if !item.is_table_like() {
        *item = value(InlineTable::new());
    }
    item.as_table_like_mut().expect("it has just been made one")
}

/// Sets a value and keeps the spaces and the comment around the old one.
fn set(table: &mut (impl toml_edit::TableLike + ?Sized), key: &str, new: Value) {
    let mut new = new;
    if let Some(old) = table.get(key).and_then(Item::as_value) {
        *new.decor_mut() = old.decor().clone();
    }
    table.insert(key, Item::Value(new));
}

/// A number rounded to so many digits after the point, written without needless ones.
fn number(x: f64, digits: i32) -> Value {
    let scale = 10_f64.powi(digits);
    let rounded = (x * scale).round() / scale;
    #[expect(clippy::cast_possible_truncation, reason = "spins and angles are small whole numbers here")]
    if digits == 0 { (rounded as i64).into() } else { (rounded + 0.0).into() }
}

fn whole(count: usize) -> Value {
    i64::try_from(count).unwrap_or(i64::MAX).into()
}

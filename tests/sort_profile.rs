//! From a sorted session to a profile: comments stay, numbers change, nothing else does.

#[path = "common/demo/mod.rs"]
mod demo;

use arsenalfit::athlete::session::Session;
use arsenalfit::throws::profile_text::{LineChange, updated_profile};
use arsenalfit::throws::{Options, Sorted, sort};
use demo::{session, six_weeks};

const OLD: &str = r#"# my own notes
[athlete]
name = "Sample Athlete"   # invented
throws = "left"

[[pitch]]
name = "hard one"
family = "four-seam"
speed_mph = 80.0 # to be measured
vertical_break_in = 1.0
glove_side_break_in = 2.0
aim = { same_side = "up-in" }

[[pitch]]
name = "knuckler"
family = "knuckleball"
speed_mph = 66.0
vertical_break_in = 0.0
glove_side_break_in = 0.0
"#;

fn sorted() -> (Session, Sorted) {
    let session = session(&six_weeks());
    let sorted = sort(&session, Options::default());
    (session, sorted)
}

#[test]
fn comments_and_foreign_keys_stay_and_measured_numbers_change() {
    let (session, sorted) = sorted();
    let update = updated_profile(OLD, "nobody", &session, &sorted).expect("it is TOML");
    for kept in
        ["# my own notes", "# invented", "# to be measured", "aim = { same_side = \"up-in\" }", "speed_mph = 66.0"]
    {
        assert!(update.text.contains(kept), "{kept} is lost from\n{}", update.text);
    }
    assert_eq!(update.text.matches("[[pitch]]").count(), 5, "three new pitches, two old");
    assert!(update.changes.contains(&LineChange::Removed("speed_mph = 80.0 # to be measured".into())));
    assert!(!update.text.contains("usage"), "shares are not known while one pitch was not thrown");
}

#[test]
fn writing_twice_changes_nothing_the_second_time() {
    let (session, sorted) = sorted();
    let once = updated_profile("", "Sample Athlete", &session, &sorted).expect("it is TOML");
    let twice = updated_profile(&once.text, "nobody", &session, &sorted).expect("it is TOML");
    assert_eq!(once.text, twice.text);
    assert!(twice.changes.is_empty());
    assert!(once.text.contains("usage"));
}

#[test]
fn a_left_handers_fastball_clock_is_before_noon() {
    let (session, sorted) = sorted();
    let update = updated_profile("", "Sample Athlete", &session, &sorted).expect("it is TOML");
    let line = update.text.lines().find(|line| line.starts_with("spin_clock")).expect("spin was measured");
    assert!(line.contains("\"11:"), "{line}");
}

#[test]
fn text_that_is_no_toml_is_refused_and_not_overwritten() {
    let (session, sorted) = sorted();
    assert!(updated_profile("[athlete", "nobody", &session, &sorted).is_err());
}

#[test]
fn pitches_written_in_one_list_are_kept() {
    let old = r#"pitch = [
    { name = "knuckler", family = "knuckleball", speed_mph = 66, vertical_break_in = 0, glove_side_break_in = 0 },
]
athlete = { name = "Sample Athlete", throws = "left" }
"#;
    let read = |text: &str| {
        let profile = arsenalfit::files::profile_from_toml(text, "list.toml");
        profile.unwrap_or_else(|error| panic!("{error}\n{text}"))
    };
    let nothing = Session::default();
    let same = updated_profile(old, "nobody", &nothing, &sort(&nothing, Options::default())).expect("it is TOML");
    assert_eq!(read(&same.text), read(old));
    let (session, sorted) = sorted();
    let update = updated_profile(old, "nobody", &session, &sorted).expect("it is TOML");
    let names: Vec<String> = read(&update.text).pitches.into_iter().map(|pitch| pitch.name).collect();
    assert!(names.len() == 5 && names.contains(&"knuckler".to_owned()), "{names:?}");
}

/// The names written for groups with these labels, by the profile's own reader.
fn names_of(old: &str, labels: &[&str]) -> Vec<String> {
    let (session, mut sorted) = sorted();
    sorted.groups.truncate(labels.len());
    for (group, label) in sorted.groups.iter_mut().zip(labels) {
        group.usual_label = Some((*label).to_owned());
    }
    let update = updated_profile(old, "Sample Athlete", &session, &sorted).expect("it is TOML");
    let profile = arsenalfit::files::profile_from_toml(&update.text, "written.toml");
    let profile = profile.unwrap_or_else(|error| panic!("{error}\n{}", update.text));
    let again = updated_profile(&update.text, "Sample Athlete", &session, &sorted).expect("it is TOML");
    assert_eq!(again.text, update.text, "the same groups are the same pitches");
    profile.pitches.into_iter().map(|pitch| pitch.name).collect()
}

#[test]
fn a_label_that_is_no_name_is_made_one() {
    let long = "é".repeat(70);
    assert_eq!(names_of("", &[&long, "in\ttwo words ", "\u{a0}"])[..2], [&"é".repeat(60), "in two words"]);
    assert_eq!(names_of("", &[&("hard ".repeat(12) + "one")])[0], "hard ".repeat(12).trim_end());
}

#[test]
fn two_groups_are_two_pitches_whatever_their_labels() {
    let long = "hard ".repeat(12);
    let cut = long.trim_end();
    assert_eq!(names_of("", &[&(long.clone() + "one"), &(long.clone() + "two")]), [cut, &format!("{} 2", &cut[..58])]);
    assert_eq!(names_of("", &["Slider", "slider", "curve"]), ["Slider", "slider 2", "curve"]);
    let old = r#"[athlete]
name = "Sample Athlete"
throws = "left"
[[pitch]]
name = "slider"
family = "changeup"
speed_mph = 80.0
vertical_break_in = 1.0
glove_side_break_in = 2.0
"#;
    assert_eq!(
        names_of(old, &["heater", "fader", "slider"]),
        ["slider", "heater", "fader"],
        "a name goes before a family"
    );
}

#[test]
fn what_is_written_is_a_profile_that_can_be_read() {
    let (session, sorted) = sorted();
    for old in ["", OLD] {
        let update = updated_profile(old, "Sample Athlete", &session, &sorted).expect("it is TOML");
        let profile = arsenalfit::files::profile_from_toml(&update.text, "written.toml");
        let profile = profile.unwrap_or_else(|error| panic!("{error}\n{}", update.text));
        assert_eq!(profile.pitches.len(), update.text.matches("[[pitch]]").count());
    }
}

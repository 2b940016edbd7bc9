//! Profiles as a coach writes them: the shipped ones load, wrong ones say where and why.
//!
//! Every file in `tests/bad_profiles` is invented and wrong in the way its name says. What the
//! reader is shown of it is a snapshot in `tests/snapshots`, and is meant to be read as prose.

use std::fs;
use std::path::{Path, PathBuf};

use arsenalfit::athlete::profile::{Level, Profile};
use arsenalfit::ball::flight::Air;
use arsenalfit::base::geometry::Hand;
use arsenalfit::decide::inspect::{SeamLook, inspect};
use arsenalfit::files::{InputError, profile_from_toml, read_profile};
use proptest::prelude::*;

const MINIMAL: &str = r#"
[athlete]
name = "Sample Athlete"
throws = "right"

[[pitch]]
name = "fastball"
family = "four-seam"
speed_mph = 88
vertical_break_in = 15
glove_side_break_in = -6
"#;

/// The TOML files of a directory of this repository, by name.
fn toml_files(directory: &str) -> Vec<PathBuf> {
    let directory = Path::new(env!("CARGO_MANIFEST_DIR")).join(directory);
    let entries = fs::read_dir(&directory).expect("the directory is part of the repository");
    let mut files: Vec<_> = entries.map(|entry| entry.expect("a readable entry").path()).collect();
    files.retain(|path| path.extension().is_some_and(|extension| extension == "toml"));
    files.sort();
    files
}

fn name_of(path: &Path) -> &str {
    path.file_stem().and_then(|stem| stem.to_str()).expect("names here are plain")
}

fn text_of(path: &Path) -> String {
    fs::read_to_string(path).expect("files here are readable text")
}

fn load(text: &str) -> Profile {
    profile_from_toml(text, "profile.toml").unwrap_or_else(|error| panic!("{error}"))
}

#[test]
fn every_bad_profile_is_refused_with_a_message_that_names_file_and_line() {
    let files = toml_files("tests/bad_profiles");
    assert!(files.len() >= 45, "only {} bad profiles", files.len());
    for path in files {
        let name = name_of(&path);
        let origin = format!("{name}.toml");
        let Err(error) = profile_from_toml(&text_of(&path), &origin) else {
            panic!("{name} was accepted");
        };
        let shown = error.render(false);
        assert!(shown.contains(&format!("--> {origin}:")), "{name} shows no line:\n{shown}");
        insta::assert_snapshot!(name, shown);
    }
}

#[test]
fn faults_come_in_file_order_and_inside_the_text() {
    for path in toml_files("tests/bad_profiles") {
        let Err(InputError::Faulty { text, faults, .. }) = profile_from_toml(&text_of(&path), "bad.toml") else {
            panic!("{} was accepted", name_of(&path));
        };
        assert!(!faults.is_empty());
        assert!(faults.is_sorted_by_key(|fault| fault.span.start), "{}", name_of(&path));
        assert!(faults.iter().all(|fault| fault.span.end <= text.len()), "{}", name_of(&path));
    }
}

#[test]
fn every_shipped_profile_loads_says_it_is_invented_and_tells_its_assumptions() {
    let files = toml_files("profiles");
    assert_eq!(files.len(), 5);
    for path in files {
        let profile = read_profile(&path).unwrap_or_else(|error| panic!("{error}"));
        assert!(text_of(&path).starts_with("# Invented"), "{}", path.display());
        insta::assert_snapshot!(format!("assumptions-{}", name_of(&path)), profile.assumptions.join("\n"));
    }
}

#[test]
fn every_shipped_shape_is_what_its_spin_gives_with_believable_help_from_the_seams() {
    for path in toml_files("profiles") {
        let profile = read_profile(&path).unwrap_or_else(|error| panic!("{error}"));
        for (pitch, seen) in profile.pitches.iter().zip(inspect(&profile, Air::SEA_LEVEL)) {
            let is_odd = seen.seams.is_some_and(SeamLook::is_out_of_the_ordinary);
            assert!(!is_odd, "{}, {}: {:?}", name_of(&path), pitch.name, seen.seams);
        }
    }
}

#[test]
fn a_full_profile_assumes_nothing_about_the_athlete() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("profiles/three-quarter-right.toml");
    let profile = read_profile(&path).unwrap_or_else(|error| panic!("{error}"));
    let subjects = ["athlete", "release", "air", "faces", "limits", "health", "four-seam"];
    for subject in subjects {
        assert!(!profile.assumptions.iter().any(|sentence| sentence.starts_with(subject)), "{subject}");
    }
}

#[test]
fn a_minimal_profile_loads_and_lists_what_was_assumed() {
    let profile = load(MINIMAL);
    assert_eq!(profile.athlete.level, Level::College);
    assert_eq!(profile.pitches[0].throws, 20);
    assert!(profile.pitches[0].spin_rpm.is_none());
    insta::assert_snapshot!("assumptions-minimal", profile.assumptions.join("\n"));
}

#[test]
fn limits_that_the_pitches_cannot_meet_give_way_when_they_are_only_defaults() {
    let text = MINIMAL.replace("four-seam", "curveball").replace("= 15", "= -15");
    let limits = load(&text).limits;
    assert!(limits.fastball_floor.abs() < f64::EPSILON);
    assert!((limits.breaking_cap - 1.0).abs() < f64::EPSILON);
}

#[test]
fn a_mirrored_left_hander_is_the_same_profile_as_the_right_hander() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("profiles/three-quarter-right.toml");
    let right = text_of(&path);
    let left = right
        .replace("throws = \"right\"", "throws = \"left\"")
        .replace("\"12:52\"", "\"11:08\"")
        .replace("\"2:25\"", "\"9:35\"")
        .replace("\"9:55\"", "\"2:05\"");
    let (right, mut left) = (load(&right), load(&left));
    assert_eq!(left.athlete.throws, Hand::Left);
    for (a, b) in right.pitches.iter().zip(&left.pitches) {
        let hours = |pitch: &arsenalfit::athlete::profile::Pitch| pitch.spin_clock.map(|clock| clock.to_string());
        assert_eq!(hours(a), hours(b));
    }
    left.athlete.throws = Hand::Right;
    for (a, b) in right.pitches.iter().zip(&mut left.pitches) {
        b.spin_clock = a.spin_clock; // equal to the minute, as just shown; not to the last bit
    }
    assert_eq!(left, right);
}

#[test]
fn usage_that_misses_one_by_rounding_is_made_to_sum_to_one() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("profiles/three-quarter-right.toml");
    let profile = load(&text_of(&path).replace("same_side = 0.4,", "same_side = 0.39,"));
    let total: f64 = profile.pitches.iter().filter_map(|pitch| pitch.usage.same).sum();
    assert!((total - 1.0).abs() < 1e-12);
}

#[test]
fn a_byte_order_mark_and_windows_line_ends_are_no_fault() {
    load(&format!("\u{feff}{}", MINIMAL.replace('\n', "\r\n")));
}

#[test]
fn a_path_that_is_no_readable_file_gives_one_clear_error() {
    let folder = std::env::temp_dir().join(format!("arsenalfit-profile-input-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a temporary folder can be made");
    let written = |name: &str, bytes: &[u8]| {
        let path = folder.join(name);
        fs::write(&path, bytes).expect("a temporary file can be written");
        path
    };
    let cases = [
        ("missing", folder.join("missing.toml")),
        ("directory", folder.clone()),
        ("latin", written("latin.toml", b"# ok\nname = \"Andr\xe9\"\n")),
        ("huge", written("huge.toml", &vec![b'#'; 1024 * 1024 + 1])),
    ];
    for (name, path) in cases {
        let shown = read_profile(&path).map(|_| ()).expect_err(name).render(false);
        let plain = shown.replace(&*folder.to_string_lossy(), "FOLDER");
        insta::assert_snapshot!(format!("unreadable-{name}"), plain);
    }
    fs::remove_dir_all(&folder).expect("the temporary folder can be removed");
}

#[test]
fn tables_may_be_written_in_every_way_toml_knows() {
    let usual = format!("{MINIMAL}usage = {{ same_side = 1 }}\nspread = {{ speed_mph = 1.5 }}\n");
    let headers = format!("{MINIMAL}[pitch.usage]\nsame_side = 1.0\n[pitch.spread]\nspeed_mph = 1.5\n");
    let dotted = format!("{MINIMAL}usage.same_side = 1\n\"spread\".speed_mph = 15e-1\n");
    assert_eq!(load(&usual), load(&headers));
    assert_eq!(load(&usual), load(&dotted));
}

#[test]
fn colours_are_only_written_when_asked_for() {
    let error = profile_from_toml("", "empty.toml").expect_err("an empty profile is refused");
    assert!(!error.render(false).contains('\u{1b}'));
    assert!(error.render(true).contains('\u{1b}'));
}

proptest! {
    #[test]
    fn no_change_of_bytes_makes_reading_panic(
        which in 0usize..5,
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>(), 0u8..3), 1..12),
    ) {
        let mut bytes = text_of(&toml_files("profiles")[which]).into_bytes();
        for (index, byte, kind) in changes {
            let at = index.index(bytes.len());
            match kind {
                0 => bytes[at] = byte,
                1 => bytes.insert(at, byte),
                _ => drop(bytes.remove(at)),
            }
        }
        if let Err(error) = profile_from_toml(&String::from_utf8_lossy(&bytes), "changed.toml") {
            prop_assert!(error.render(true).contains("changed.toml"));
        }
    }

    #[test]
    fn no_value_in_place_of_another_makes_reading_panic(
        which in 0usize..5,
        line in any::<prop::sample::Index>(),
        value in "(\"[ -~]{0,8}\"|-?[0-9]{1,25}|nan|-inf|[0-9]e[0-9]{1,3}|true|\\[\\]|\\{\\}|07:30:00|0x[0-9a-f]{1,9})",
    ) {
        let text = text_of(&toml_files("profiles")[which]);
        let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
        let at = line.index(lines.len());
        if let Some((key, _)) = lines[at].clone().split_once('=') {
            lines[at] = format!("{key}= {value}");
        }
        if let Err(error) = profile_from_toml(&lines.join("\n"), "changed.toml") {
            prop_assert!(error.render(false).contains("changed.toml"));
        }
    }
}

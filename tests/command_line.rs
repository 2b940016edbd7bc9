//! The program as its users meet it: every shipped profile through every command, texts as
//! snapshots, JSON by its promised keys, exit codes, and what goes to which stream.

use assert_cmd::Command;
use predicates::prelude::*;
use serde_json::Value;

const PROFILES: [&str; 5] =
    ["three-quarter-right", "high-slot-left", "low-slot-right-with-sweeper", "fourteen-year-old", "over-the-top-right"];

fn arsenalfit(columns: u16, arguments: &[&str]) -> Command {
    let mut command = Command::cargo_bin("arsenalfit").expect("the program");
    command.env("COLUMNS", columns.to_string()).env_remove("NO_COLOR").args(arguments);
    command
}

fn answer(columns: u16, arguments: &[&str]) -> String {
    let output = arsenalfit(columns, arguments).output().expect("it runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    assert!(output.stderr.is_empty(), "an answer leaves standard error alone");
    String::from_utf8(output.stdout).expect("text")
}

fn path(profile: &str) -> String {
    format!("profiles/{profile}.toml")
}

#[test]
fn every_shipped_profile_reads_well_at_80_columns() {
    for profile in PROFILES {
        for command in ["check", "apart", "usage", "advise", "dot"] {
            let text = answer(80, &[command, &path(profile)]);
            let widest = text.lines().map(|line| line.chars().count()).max().unwrap_or(0);
            assert!(widest <= 80, "{command} {profile}: {widest} columns");
            assert!(!text.contains('\u{1b}'), "no escape codes outside a terminal");
            insta::assert_snapshot!(format!("{command}-{profile}-80"), text);
        }
    }
}

#[test]
fn a_wide_terminal_is_used() {
    let text = answer(120, &["advise", &path("three-quarter-right")]);
    let widest = text.lines().map(|line| line.chars().count()).max().unwrap_or(0);
    assert!((81..=120).contains(&widest), "{widest} columns");
    insta::assert_snapshot!("advise-three-quarter-right-120", text);
}

#[test]
fn a_wished_for_shape_is_drawn_for_both_hands() {
    insta::assert_snapshot!("dot-target-right", answer(80, &["dot", "--target", "81,-4,14"]));
    insta::assert_snapshot!("dot-target-left", answer(80, &["dot", "--target", "81,-4,14", "--throws", "left"]));
}

#[test]
fn advise_keeps_the_promised_json_keys() {
    for profile in PROFILES {
        let text = answer(80, &["advise", &path(profile), "--format", "json", "--draws", "16"]);
        let json: Value = serde_json::from_str(&text).expect("JSON");
        let verdict = json["verdict"].as_str().expect("a verdict");
        assert!(["add", "trial", "not_now", "other_pitch"].contains(&verdict));
        for list in ["reasons", "cautions", "alternatives"] {
            assert!(json[list].as_array().is_some_and(|list| !list.is_empty()), "{profile}: {list}");
        }
        let target = &json["target"];
        for number in [
            "/speed_mph",
            "/vertical_break_in",
            "/glove_side_break_in",
            "/spin_rpm",
            "/active_fraction",
            "/gyro_deg",
            "/seam_shift_in/vertical",
            "/seam_shift_in/glove_side",
            "/dot/thrower/radius",
            "/dot/partner/radius",
            "/window/speed_mph/low",
            "/window/vertical_break_in/high",
            "/window/glove_side_break_in/low",
        ] {
            assert!(target.pointer(number).is_some_and(Value::is_number), "{profile}: {number}");
        }
        for clock in ["/spin_clock", "/dot/thrower/clock", "/dot/partner/clock"] {
            assert!(target.pointer(clock).is_some_and(Value::is_string), "{profile}: {clock}");
        }
        for side in ["same_side", "opposite_side", "overall"] {
            for end in ["value", "low", "high"] {
                assert!(json["gain_runs_per_100"][side][end].is_number(), "{profile}: {side} {end}");
            }
        }
        for side in ["same_side", "opposite_side"] {
            for when in ["before", "after"] {
                let list = json["usage"][side][when].as_array().expect("a list");
                let shares: f64 = list.iter().map(|pitch| pitch["share"].as_f64().expect("a share")).sum();
                assert!((shares - 1.0).abs() < 0.01, "{profile}: shares sum to {shares}");
                for pitch in list {
                    assert!(pitch["pitch"].is_string());
                    for rate in ["swing_and_miss", "weak_contact", "solid_contact", "take"] {
                        assert!(pitch[rate]["value"].is_number(), "{profile}: {rate}");
                    }
                }
            }
        }
    }
}

#[test]
fn the_same_seed_gives_the_same_bytes_and_another_seed_other_intervals() {
    let ask = |seed: &str| answer(80, &["advise", &path("high-slot-left"), "--format", "json", "--seed", seed]);
    assert_eq!(ask("3"), ask("3"));
    assert_ne!(ask("3"), ask("4"));
}

#[test]
fn the_athlete_who_owns_a_sweeper_is_told_that_another_adds_about_nothing() {
    let text = answer(80, &["advise", &path("low-slot-right-with-sweeper"), "--format", "json"]);
    let json: Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(json["verdict"], "not_now");
    assert!(json["gain_runs_per_100"]["overall"]["value"].as_f64().expect("a number").abs() < 0.05);
}

/// Guidelines of USA Baseball and Major League Baseball, copy of about 2015.
#[test]
fn a_fourteen_year_old_gets_the_youth_cautions_and_never_a_plain_yes() {
    let text = answer(120, &["advise", &path("fourteen-year-old")]);
    assert!(text.contains("at 14: at most 95 pitches a day"), "{text}");
    assert!(!text.contains("\nAdd a sweeper."), "{text}");
}

#[test]
fn pain_forbids_everything() {
    let profile = std::fs::read_to_string(path("three-quarter-right")).expect("a profile");
    let file = std::env::temp_dir().join(format!("arsenalfit-pain-{}.toml", std::process::id()));
    std::fs::write(&file, profile.replace("pain = false", "pain = true")).expect("a temporary file");
    let text = answer(120, &["advise", &file.to_string_lossy(), "--draws", "16"]);
    std::fs::remove_file(&file).expect("the temporary file goes");
    assert!(text.contains("Do not add a sweeper now.") && text.contains("stop throwing"), "{text}");
}

#[test]
fn a_file_to_mend_exits_with_one_and_an_empty_standard_output() {
    for arguments in [
        vec!["advise", "profiles/none.toml"],
        vec!["advise", "tests/bad_profiles"],
        vec!["advise"],
        vec!["advise", "profiles/high-slot-left.toml", "--family", "sweper"],
        vec!["dot", "profiles/high-slot-left.toml", "--pitch", "slider"],
        vec!["dot", "--target", "81,0"],
        vec!["dot", "--target", "81,30,30"],
        vec!["nonsense"],
    ] {
        arsenalfit(80, &arguments).assert().code(1).stdout("").stderr(predicate::str::is_empty().not());
    }
}

#[test]
fn bold_type_comes_only_when_asked_for_or_on_a_terminal() {
    let arguments = ["usage", "profiles/high-slot-left.toml", "--color"];
    let with = |choice| answer(80, &[&arguments[..], &[choice]].concat());
    assert!(with("always").contains('\u{1b}'));
    assert!(!with("never").contains('\u{1b}') && !with("auto").contains('\u{1b}'));
}

#[test]
fn help_names_only_commands_that_work() {
    let help = answer(80, &["--help"]);
    insta::assert_snapshot!("help", help);
}

//! `sort` and `advise --session` as a coach meets them, on the invented demo sessions.

use std::fs;
use std::path::PathBuf;
use std::process::Output;

use assert_cmd::Command;

const SESSIONS: [&str; 3] =
    ["demo-data/session-2031-02-03.csv", "demo-data/session-2031-02-24.csv", "demo-data/session-2031-03-17.csv"];

fn run(arguments: &[&str]) -> Output {
    let mut command = Command::cargo_bin("arsenalfit").expect("the program");
    command.env("COLUMNS", "80").args(arguments).output().expect("it runs")
}

fn answer(arguments: &[&str]) -> String {
    let output = run(arguments);
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).expect("text")
}

fn with_sessions<'a>(before: &[&'a str], after: &[&'a str]) -> Vec<&'a str> {
    [before, &SESSIONS[..], after].concat()
}

/// A folder of this test's own.
fn folder(name: &str) -> PathBuf {
    let folder = std::env::temp_dir().join(format!("arsenalfit-sort-{name}-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a temporary folder");
    folder
}

#[test]
fn three_sessions_are_sorted_and_their_faults_told() {
    let text = answer(&with_sessions(&["sort"], &["--hand", "left"]));
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    for found in
        ["four-seam", "2031-03-17", "the unit, not the arm", "duplicate", "impossible value", "looks like a slider"]
    {
        assert!(text.contains(found), "{found} in {text}");
    }
    insta::assert_snapshot!("sort-demo-80", text);
}

#[test]
fn the_same_seed_sorts_the_same_and_json_tells_the_same() {
    let ask = || answer(&with_sessions(&["sort"], &["--hand", "left", "--format", "json"]));
    let json: serde_json::Value = serde_json::from_str(&ask()).expect("JSON");
    assert_eq!(json["pitches"].as_array().map(Vec::len), Some(4));
    assert!(json["adjusted_rand"].as_f64().is_some_and(|index| index > 0.9));
    assert_eq!(ask(), ask());
}

#[test]
fn a_column_map_is_proposed_that_reads_the_file_it_is_for() {
    let map = answer(&["sort", SESSIONS[0], "--explain-columns"]);
    let folder = folder("map");
    let path = folder.join("map.toml");
    fs::write(&path, &map).expect("it is written");
    let text = answer(&["sort", SESSIONS[0], "--columns", &path.to_string_lossy(), "--hand", "left"]);
    assert!(text.contains("four-seam"), "{text}");
    fs::remove_dir_all(folder).expect("the folder goes");
}

#[test]
fn a_profile_is_written_once_and_changed_only_by_force_with_comments_kept() {
    let folder = folder("write");
    let path = folder.join("athlete.toml");
    let name = path.to_string_lossy().into_owned();
    let write = |extra: &[&str]| {
        let after = [&["--hand", "left", "--name", "Invented Writer", "--write", &name][..], extra].concat();
        run(&with_sessions(&["sort"], &after))
    };
    assert!(write(&[]).status.success());
    let first = fs::read_to_string(&path).expect("a profile");
    assert!(first.contains("Invented Writer") && first.contains("throws = \"left\""), "{first}");
    let refused = write(&[]);
    assert_eq!(refused.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&refused.stderr).contains("--force"));
    fs::write(&path, format!("# my own words\n{first}")).expect("it is written");
    assert!(write(&["--force"]).status.success());
    assert!(fs::read_to_string(&path).expect("a profile").starts_with("# my own words\n"));
    assert_eq!(fs::read_dir(&folder).expect("the folder").count(), 1, "nothing half-written is left");
    assert!(answer(&["check", &name]).contains("Invented Writer"));
    fs::remove_dir_all(folder).expect("the folder goes");
}

#[test]
fn advice_can_be_had_from_throws_alone() {
    let sessions: Vec<&str> = SESSIONS.iter().flat_map(|session| ["--session", session]).collect();
    let text = answer(&[&["advise", "--hand", "left", "--draws", "16"][..], &sessions].concat());
    assert!(text.contains("throws left") && text.contains("in a season"), "{text}");
}

#[test]
fn a_session_that_cannot_be_used_is_one_clear_error() {
    for (arguments, said) in [
        (vec!["sort", "demo-data/none.csv"], "no such file"),
        (vec!["sort", "profiles"], "directory"),
        (vec!["sort", "profiles/high-slot-left.toml"], "speed_mph"),
        (vec!["sort", SESSIONS[0], "--columns", "demo-data/none.toml"], "none.toml"),
    ] {
        let output = run(&arguments);
        let message = String::from_utf8_lossy(&output.stderr).into_owned();
        assert_eq!(output.status.code(), Some(2), "{arguments:?}: {message}");
        assert!(output.stdout.is_empty() && message.contains(said), "{arguments:?}: {message}");
    }
}

#[test]
fn the_wrong_hand_and_the_wrong_unit_are_doubted() {
    let folder = folder("misread");
    let text = fs::read_to_string(SESSIONS[0]).expect("a session");
    let turned = folder.join("turned.csv");
    let mut lines = text.lines();
    let mut all = vec![lines.next().expect("a header").to_owned()];
    all.extend(lines.map(|line| {
        let mut cells: Vec<String> = line.split(',').map(str::to_owned).collect();
        cells[2] = cells[2].parse::<f64>().map_or_else(|_| cells[2].clone(), |inches| (-inches).to_string());
        cells[5].clear();
        cells.join(",")
    }));
    fs::write(&turned, all.join("\n")).expect("it is written");
    let doubts = answer(&["sort", &turned.to_string_lossy(), "--hand", "left", "--format", "json"]);
    assert!(doubts.contains("the hand; and the family"), "{doubts}");
    let sound = answer(&["sort", SESSIONS[0], "--hand", "left", "--format", "json"]);
    assert!(!sound.contains("usual is"), "{sound}");
    let profile = fs::read_to_string("profiles/high-slot-left.toml").expect("a profile");
    let metres: String = profile
        .lines()
        .map(|line| if line.starts_with("height_ft") { "height_ft = 1.8\n".to_owned() } else { format!("{line}\n") })
        .collect();
    let path = folder.join("metres.toml");
    fs::write(&path, metres).expect("it is written");
    let told = answer(&["check", &path.to_string_lossy()]);
    assert!(told.contains("Worth a second look") && told.contains("write 5.9"), "{told}");
    fs::remove_dir_all(folder).expect("it goes");
}

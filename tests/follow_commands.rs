//! The months after, from the command line: `trial`, `progress` and `plan` on the invented demo
//! data as snapshots, their JSON by its keys, exit codes, refusals, and the files they write.

#[path = "common/program.rs"]
mod program;

use std::fs;
use std::path::Path;

use predicates::prelude::*;
use serde_json::Value;

use program::{answer, arsenalfit, widest};

const PROFILE: &str = "profiles/three-quarter-right.toml";
const TRIAL: &str = "demo-data/trial-four-grips.csv";
/// A wish of the coach's: so what is pinned here does not move with the search.
const WISH: [&str; 2] = ["--target", "79.5,-2.5,13.5"];
const DATES: [&str; 4] = ["--start", "2031-11-03", "--end", "2032-02-29"];

fn json(arguments: &[&str]) -> Value {
    let text = answer(80, &[arguments, &["--format", "json"]].concat());
    serde_json::from_str(&text).expect("JSON")
}

fn weeks(count: usize) -> Vec<String> {
    (1..=count).map(|week| format!("demo-data/progress-week-{week}.csv")).collect()
}

fn progress<'a>(profile: &'a str, files: &'a [String], more: &[&'a str]) -> Vec<&'a str> {
    let files: Vec<&str> = files.iter().map(String::as_str).collect();
    [&["progress", profile], files.as_slice(), more].concat()
}

fn plan<'a>(profile: &'a str, more: &[&'a str]) -> Vec<&'a str> {
    [&["plan", profile], DATES.as_slice(), more].concat()
}

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().expect("a temporary folder")
}

/// `text` in a file of `folder`.
fn file(folder: &Path, name: &str, text: &str) -> String {
    let path = folder.join(name);
    fs::write(&path, text).expect("the temporary folder can be written");
    path.to_string_lossy().into_owned()
}

fn profile_text() -> String {
    fs::read_to_string(PROFILE).expect("a profile")
}

#[test]
fn each_command_reads_well_at_80_columns() {
    let weeks = weeks(6);
    let commands = [
        ("trial", vec!["trial", TRIAL, "--profile", PROFILE]),
        ("progress", progress(PROFILE, &weeks, &[])),
        ("plan", plan(PROFILE, &[])),
        ("plan-measured", plan(PROFILE, &["--trial", TRIAL, "--session", &weeks[4], "--session", &weeks[5]])),
    ];
    for (name, arguments) in commands {
        let text = answer(80, &[arguments.as_slice(), &WISH].concat());
        assert!(widest(&text) <= 80, "{name}: {} columns", widest(&text));
        assert!(!text.contains('\u{1b}'), "no escape codes outside a terminal");
        insta::assert_snapshot!(format!("{name}-80"), text);
    }
}

#[test]
fn a_wide_terminal_is_used() {
    let weeks = weeks(6);
    for arguments in [vec!["trial", TRIAL, "--profile", PROFILE], progress(PROFILE, &weeks, &[]), plan(PROFILE, &[])] {
        let widest = widest(&answer(120, &arguments));
        assert!((81..=120).contains(&widest), "{arguments:?}: {widest} columns");
    }
}

#[test]
fn the_fourth_weeks_dropped_slot_is_the_first_finding_and_strict_fails_on_it() {
    let (all, before) = (weeks(6), weeks(3));
    let found = json(&progress(PROFILE, &all, &[]));
    assert_eq!(found["must_stop"], true);
    assert_eq!(found["findings"][0]["finding"], "slot_dropping");
    assert_eq!(found["findings"][0]["since"], "2031-02-10");
    let told = arsenalfit(80, &progress(PROFILE, &all, &["--strict"])).assert().code(1);
    told.stdout(predicate::str::contains("Stop: the arm slot is dropping"))
        .stderr(predicate::str::contains("--strict"));
    assert!(!answer(80, &progress(PROFILE, &before, &["--strict"])).contains("\nStop:"));
}

#[test]
fn trial_and_progress_keep_their_json_keys() {
    let trial = json(&[["trial", TRIAL, "--profile", PROFILE].as_slice(), &WISH].concat());
    assert_eq!(trial["verdict"], "open");
    assert_eq!(trial["grips"].as_array().map(Vec::len), Some(4));
    for key in ["/target/window/speed_mph/low", "/more_throws/high", "/grips/0/chance_best", "/grips/0/dot/radius/low"]
    {
        assert!(trial.pointer(key).is_some_and(Value::is_number), "{key}");
    }
    for key in ["/next_grip", "/grips/3/cues/0/try", "/grips/0/dot/says"] {
        assert!(trial.pointer(key).is_some_and(Value::is_string), "{key}");
    }
    let found = json(&progress(PROFILE, &weeks(6), &[]));
    let keys = ["/findings/0/amount/low", "/watched/0/profile/value", "/watched/0/change/amount/high"];
    for key in keys.into_iter().chain(["/new_pitch/outings/11/glove_side_break_in/high", "/watched/7/matters_from"]) {
        assert!(found.pointer(key).is_some_and(Value::is_number), "{key}");
    }
    assert!(found["findings"][0]["cue"]["must_not_cost"].as_str().is_some_and(|cost| cost.contains("licensed")));
}

#[test]
fn plan_keeps_its_json_keys_and_begins_where_the_throws_say() {
    let fresh = json(&plan(PROFILE, &[]));
    assert!(fresh["refused"].is_null());
    assert_eq!(fresh["phases"][0]["step"], "spin clean");
    for key in ["/days/0/throws", "/days/0/rest_days_after", "/phases/0/gates/0/at_most", "/target/speed_mph"] {
        assert!(fresh.pointer(key).is_some_and(Value::is_number), "{key}");
    }
    let week = weeks(6).pop().expect("six weeks");
    let later = json(&plan(PROFILE, &["--trial", TRIAL, "--session", &week]));
    assert_ne!(later["phases"][0]["step"], "spin clean");
    assert_eq!(later["stop_findings"][0], "slot_dropping");
}

/// Movement over the last 20 ft only: eight times as much over the whole flight.
#[test]
fn what_no_throw_can_have_is_set_aside_alike_by_all_that_read_throws() {
    let folder = folder();
    let header = "speed_mph,vertical_break_in,glove_side_break_in,grip,pitch,date\n";
    let usual =
        (0..20).map(|n| format!("{},{},{},a,four-seam,2031-02-03\n", 90 + n % 3, 1.7 + 0.02 * f64::from(n), -0.9));
    let rows = format!(
        "{header}{}91,11,0,a,four-seam,\n90,6,0,a,four-seam,\n109.9,1,0,a,four-seam,\n",
        usual.collect::<String>()
    );
    let rows = file(folder.path(), "late.csv", &rows);
    let map = "[columns]\nspeed = { header = \"speed_mph\", at_ft = 20 }\n\
               vertical_break = { header = \"vertical_break_in\", from_ft = 20 }\n\
               glove_side_break = { header = \"glove_side_break_in\", from_ft = 20 }\n";
    let map = file(folder.path(), "map.toml", map);
    for command in [vec!["sort", &rows], vec!["trial", &rows, "--profile", PROFILE], vec!["progress", PROFILE, &rows]] {
        let wish = if command[0] == "sort" { &[][..] } else { &WISH };
        let answered = json(&[&command, &["--columns", &map][..], wish].concat());
        let set_aside = answered["set_aside"].as_array().expect("rows");
        let told: Vec<(u64, &str)> = set_aside
            .iter()
            .map(|row| (row["row"].as_u64().expect("a row"), row["reason"].as_str().expect("a reason")))
            .collect();
        assert_eq!(told.len(), 3, "{command:?}: {told:?}");
        assert!(told[0].0 == 22 && told[0].1.starts_with("vertical_break_in is 11, which is "), "{told:?}");
        assert!(
            told[0].1.ends_with(" in over the whole flight; allowed is -80 to 80 in over the whole flight"),
            "{told:?}"
        );
        assert!(told[1].0 == 23 && told[1].1.contains("in of movement"), "{told:?}");
        assert!(
            told[2].0 == 24 && told[2].1.ends_with(" mph at release; allowed is 40 to 110 mph at release"),
            "{told:?}"
        );
        assert!(set_aside.iter().all(|row| row["file"] == *rows), "{set_aside:?}");
    }
}

#[test]
fn a_file_without_throws_is_refused_by_all_that_read_throws() {
    let folder = folder();
    let rows = file(folder.path(), "none.csv", "speed_mph,vertical_break_in,glove_side_break_in\n\n");
    let week = &weeks(1)[0];
    let commands = [
        vec!["sort", &rows],
        vec!["sort", week, &rows, "--hand", "right"],
        vec!["advise", "--session", &rows],
        vec!["trial", &rows, "--profile", PROFILE],
        vec!["progress", PROFILE, week, &rows],
        plan(PROFILE, &["--session", &rows]),
        plan(PROFILE, &["--trial", &rows]),
    ];
    for command in commands {
        let refused = arsenalfit(80, &command).assert().code(2).stdout("");
        refused
            .stderr(predicate::str::contains("no throws below the header").and(predicate::str::contains("none.csv")));
    }
    let piped =
        arsenalfit(80, &["sort", "-"]).write_stdin("speed_mph,vertical_break_in,glove_side_break_in\n").assert();
    piped.code(2).stderr(predicate::str::contains("standard input"));
}

#[test]
fn bad_rows_are_set_aside_with_their_reason_and_the_rest_is_judged() {
    let folder = folder();
    let rows = fs::read_to_string(TRIAL).expect("the trial");
    let last = rows.lines().last().expect("a row");
    let bad = format!("{rows}fast,1,2,,,,,,,,,,,,\n{last}\n40.0,1.0,2.0,2000,,,,,,,,,,,\n\n");
    let path = file(folder.path(), "bad.csv", &bad);
    let text = answer(80, &["trial", &path, "--profile", PROFILE]);
    assert!(text.contains("1 duplicate, 1 lob or warm-up, 1 unreadable value."), "{text}");
    assert!(text.contains("row 34: speed_mph is \"fast\""), "{text}");
    let asked = json(&["trial", &path, "--profile", PROFILE]);
    let throws: u64 = (0..4).filter_map(|place| asked["grips"][place]["throws"].as_u64()).sum();
    assert_eq!(throws, 32, "the good rows are judged");
    assert_eq!(asked["set_aside"].as_array().map(Vec::len), Some(3));
}

#[test]
fn throws_without_a_grip_and_a_single_grip_are_said_and_not_decided() {
    let folder = folder();
    let none = answer(80, &["trial", "demo-data/progress-week-1.csv", "--profile", PROFILE]);
    assert!(none.contains("No throw names its grip"), "{none}");
    let rows = fs::read_to_string(TRIAL).expect("the trial");
    let one: Vec<&str> = rows.lines().filter(|row| row.contains("light spike") || row.starts_with("speed")).collect();
    let path = file(folder.path(), "one.csv", &one.join("\n"));
    assert!(answer(80, &["trial", &path, "--profile", PROFILE]).contains("Only one grip was thrown"));
    let few: Vec<&str> = rows.lines().take(13).collect();
    let path = file(folder.path(), "few.csv", &few.join("\n"));
    assert!(answer(80, &["trial", &path, "--profile", PROFILE]).contains("Too early to choose"));
}

#[test]
fn pain_and_youth_are_answered_with_reasons_and_no_file() {
    let folder = folder();
    let pain = file(folder.path(), "pain.toml", &profile_text().replace("pain = false", "pain = true"));
    let boy = fs::read_to_string("profiles/fourteen-year-old.toml").expect("a profile");
    let without_changeup = boy.replace("\"changeup\"", "\"splitter\"");
    let young = file(folder.path(), "young.toml", &without_changeup);
    let ics = folder.path().join("plan.ics");
    let ics = ics.to_string_lossy();
    for (profile, says) in [(&pain, "licensed professional"), (&young, "fastball and a changeup")] {
        let text = answer(120, &plan(profile, &["--ics", &ics]));
        assert!(text.contains(says) && text.contains("plan.ics was not written"), "{text}");
        assert!(!Path::new(&*ics).exists());
        let refused = json(&plan(profile, &["--ics", &ics]));
        assert!(refused["refused"].is_string() && refused["not_written"][0].is_string());
    }
    let week = weeks(1);
    assert!(answer(80, &progress(&pain, &week, &[])).contains("Before anything else"));
    assert!(answer(80, &["trial", TRIAL, "--profile", &pain]).contains("Before anything else"));
}

#[test]
fn a_pitch_that_no_label_names_is_asked_for_by_its_label() {
    let folder = folder();
    let text = fs::read_to_string("demo-data/progress-week-1.csv").expect("a session");
    let others: Vec<&str> = text.lines().filter(|line| !line.contains(",sweeper,")).collect();
    let files = [file(folder.path(), "others.csv", &others.join("\n"))];
    let page = folder.path().join("page.html").to_string_lossy().into_owned();
    let text = answer(200, &progress(PROFILE, &files, &["--report", &page]));
    assert!(
        text.contains("no throw is labelled sweeper; the labels are: ") && text.contains("--pitch LABEL"),
        "{text}"
    );
    assert!(!text.contains("too little was thrown"), "{text}");
    assert!(fs::read_to_string(page).expect("a page").contains("No throw is labelled sweeper."));
    assert!(!answer(200, &progress(PROFILE, &weeks(1), &[])).contains("no throw is labelled"));
}

#[test]
fn progress_shows_its_window_to_the_tenth_and_says_of_each_quantity_what_is_known() {
    let all = weeks(6);
    let text = answer(120, &progress(PROFILE, &all, &WISH));
    assert!(
        text.contains("Window: 77.5 to 81.5 mph, vertical -5.8 to +0.8 in, glove side +9.2 to +17.8 in."),
        "{text}"
    );
    let found = json(&progress(PROFILE, &all, &WISH));
    let state = |quantity: &str| {
        let watched = found["watched"].as_array().expect("a list").iter();
        watched.filter(|watch| watch["quantity"] == quantity).map(|watch| watch["state"].clone()).next()
    };
    assert_eq!(state("release_height_ft"), Some("may_matter".into()));
    assert_eq!(state("fastball_speed_mph"), Some("not_sure".into()));
    assert_eq!(state("slot_deg"), Some("moved".into()));
}

#[test]
fn the_calendar_reads_back_and_is_not_written_over_unasked() {
    let folder = folder();
    let path = file(folder.path(), "plan.ics", "somebody's own calendar");
    let page = folder.path().join("plan.md");
    let page = page.to_string_lossy();
    let arguments = plan(PROFILE, &["--ics", &path, "--markdown", &page]);
    arsenalfit(80, &arguments).assert().code(2).stdout("").stderr(predicate::str::contains("--force"));
    assert_eq!(fs::read_to_string(&path).expect("it is there"), "somebody's own calendar");
    assert!(!Path::new(&*page).exists(), "nothing is written when one file is in the way");

    let answered = json(&[arguments.as_slice(), &["--force"]].concat());
    let calendar = fs::read_to_string(&path).expect("it is there");
    assert!(calendar.split("\r\n").all(|line| line.len() <= 75), "lines are folded at 75 octets");
    assert!(!calendar.replace("\r\n", "").contains(['\r', '\n']), "lines end with CR LF");
    let count = |list: &str| answered[list].as_array().map_or(0, Vec::len);
    let unfolded = calendar.replace("\r\n ", "");
    let events = unfolded.split("\r\n").filter(|line| *line == "BEGIN:VEVENT").count();
    assert_eq!(events, count("phases") + count("days"));
    let first = answered["days"][0]["date"].as_str().expect("a date").replace('-', "");
    assert!(unfolded.contains(&format!("DTSTART;VALUE=DATE:{first}")));
    assert!(fs::read_to_string(&*page).expect("it is there").starts_with("# Sample Athlete A: learning a sweeper"));
    assert_eq!(answered["written"].as_array().map(Vec::len), Some(2));
}

#[test]
fn a_command_line_to_mend_exits_with_two_and_an_empty_standard_output() {
    let weeks = weeks(1);
    for arguments in [
        vec!["trial", TRIAL],
        vec!["trial", "demo-data/none.csv", "--profile", PROFILE],
        vec!["progress", PROFILE],
        progress(PROFILE, &weeks, &["--pitch", "screwball"]),
        vec!["plan", PROFILE, "--start", "2031-11-03"],
        vec!["plan", PROFILE, "--start", "2031-02-29", "--end", "2031-03-29"],
        vec!["plan", PROFILE, "--start", "2031-03-29", "--end", "2031-02-20"],
        plan(PROFILE, &["--days", "mon,moonday"]),
        plan(PROFILE, &["--ics", "no/such/folder/plan.ics"]),
    ] {
        arsenalfit(80, &arguments).assert().code(2).stdout("").stderr(predicate::str::is_empty().not());
    }
}

#[test]
fn the_target_is_the_one_advise_finds_unless_the_coach_has_another() {
    let advised = json(&["advise", PROFILE]);
    let found = json(&["trial", TRIAL, "--profile", PROFILE]);
    for number in ["speed_mph", "vertical_break_in", "glove_side_break_in"] {
        assert_eq!(found["target"][number], advised["target"][number], "{number}");
    }
    let wished = json(&["trial", TRIAL, "--profile", PROFILE, "--target", "79.1,-1.5,13"]);
    assert_eq!(wished["target"]["speed_mph"], 79.1);
}

#[test]
fn what_is_not_advised_is_not_planned_unless_the_coach_gives_the_shape() {
    for name in ["three-quarter-right", "high-slot-left", "low-slot-right-with-sweeper", "over-the-top-right"] {
        let profile = format!("profiles/{name}.toml");
        let advised = json(&["advise", &profile]);
        let planned = json(&plan(&profile, &[]));
        assert_eq!(planned["refused"].is_string(), advised["verdict"] == "not_now", "{name}");
        assert!(json(&plan(&profile, &WISH))["refused"].is_null(), "{name}: a wish is planned");
    }
}

/// The mirrored clock of a `h:mm`.
fn mirrored(clock: &str) -> String {
    let (hours, minutes) = clock.split_once(':').expect("a clock");
    let total: u32 = hours.parse::<u32>().expect("hours") % 12 * 60 + minutes.parse::<u32>().expect("minutes");
    let other = (720 - total) % 720;
    format!("{}:{:02}", if other < 60 { 12 } else { other / 60 }, other % 60)
}

/// The file of a left-hander who throws the mirror image, written toward the catcher's right.
fn mirrored_file(folder: &Path, path: &str) -> String {
    let text = fs::read_to_string(path).expect("demo data");
    let row = |line: &str| -> String {
        let mut cells: Vec<String> = line.splitn(12, ',').map(str::to_owned).collect();
        for place in [2, 9] {
            cells[place] = format!("{:.1}", -cells[place].parse::<f64>().expect("a number"));
        }
        cells[5] = mirrored(&cells[5]);
        cells.join(",")
    };
    let rows: Vec<String> = text.lines().skip(1).map(row).collect();
    let name = Path::new(path).file_name().expect("a name").to_string_lossy();
    file(folder, &name, &format!("{}\n{}\n", text.lines().next().expect("a header"), rows.join("\n")))
}

const LEFT: &str = r#"
throws = "left"
[columns]
speed = { header = "speed_mph" }
vertical_break = { header = "vertical_break_in" }
glove_side_break = { header = "glove_side_break_in", positive = "catchers-right" }
spin = { header = "spin_rpm" }
active_fraction = { header = "active_fraction" }
spin_clock = { header = "spin_clock" }
release_height = { header = "release_height_ft" }
release_side = { header = "release_side_ft" }
extension = { header = "extension_ft" }
plate_side = { header = "plate_side_in", positive = "catchers-right" }
plate_height = { header = "plate_height_in" }
pitch = { header = "pitch" }
date = { header = "date" }
grip = { header = "grip" }
wobble = { header = "wobble" }
"#;

#[test]
fn a_mirrored_left_hander_gets_the_mirrored_answer() {
    let folder = folder();
    let mut profile = profile_text().replace("throws = \"right\"", "throws = \"left\"");
    for clock in ["12:52", "2:25", "9:55"] {
        profile = profile.replace(&format!("\"{clock}\""), &format!("\"{}\"", mirrored(clock)));
    }
    let left = file(folder.path(), "left.toml", &profile);
    let map = file(folder.path(), "map.toml", LEFT);
    let seen = |text: String| {
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ").replace("throws left", "throws right");
        text.replace("counter-clockwise", "the other way")
            .replace("clockwise", "counter-clockwise")
            .replace("the other way", "clockwise")
            .replace(&left, PROFILE)
    };
    let as_is = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let trial = mirrored_file(folder.path(), TRIAL);
    let mirror = answer(80, &["trial", &trial, "--profile", &left, "--columns", &map]);
    assert_eq!(seen(mirror), as_is(answer(80, &["trial", TRIAL, "--profile", PROFILE])));
    let right = weeks(6);
    let mirror: Vec<String> = right.iter().map(|path| mirrored_file(folder.path(), path)).collect();
    let mirror = answer(80, &progress(&left, &mirror, &["--columns", &map]));
    assert_eq!(seen(mirror), as_is(answer(80, &progress(PROFILE, &right, &[]))));
    let wrong = ["trial", &trial, "--profile", PROFILE, "--columns", &map];
    arsenalfit(80, &wrong).assert().code(2).stderr(predicate::str::contains("left in the column map"));
}

//! The same question gives the same bytes: asked twice, and on one thread as on two. Text, JSON,
//! pages, calendars, Markdown and profiles of every command.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use assert_cmd::Command;

const WISH: &str = "--target 79.5,-2.5,13.5";
const DATES: &str = "--start 2031-11-03 --end 2032-02-29";

/// A folder with the inputs of every command.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let place = folder.path();
    fs::create_dir(place.join("staff")).expect("a folder");
    for (from, to) in [("profiles", "staff"), ("demo-data", ".")] {
        for entry in fs::read_dir(from).expect("a shipped folder") {
            let path = entry.expect("an entry").path();
            fs::copy(&path, place.join(to).join(path.file_name().expect("a name"))).expect("a copy");
        }
    }
    for (from, to) in [
        ("profiles/three-quarter-right.toml", "a.toml"),
        ("profiles/high-slot-left.toml", "b.toml"),
        ("tests/data/league_day.csv", "league.csv"),
        ("tests/data/league_day_columns.toml", "league.toml"),
    ] {
        fs::copy(from, place.join(to)).expect("a copy");
    }
    folder
}

/// Every command line, with what it writes beside its answer.
fn questions() -> Vec<String> {
    let weeks: Vec<String> = (1..=6).map(|week| format!("progress-week-{week}.csv")).collect();
    vec![
        "check a.toml".into(),
        "apart a.toml --report page.html".into(),
        "usage a.toml --report page.html".into(),
        "advise a.toml --draws 16 --why --report page.html".into(),
        "advise --session session-2031-02-03.csv --hand left --draws 16".into(),
        "dot a.toml".into(),
        "compare a.toml b.toml --report page.html".into(),
        "roster staff --draws 16 --report page.html".into(),
        "sort league.csv --pitcher 53 --columns league.toml --write sorted.toml --force".into(),
        "sort session-2031-02-03.csv --explain-columns".into(),
        format!("trial trial-four-grips.csv --profile a.toml {WISH} --report page.html"),
        format!("progress a.toml {} {WISH} --report page.html", weeks.join(" ")),
        format!("plan a.toml {DATES} {WISH} --ics plan.ics --markdown plan.md --report page.html --force"),
    ]
}

/// The answer on `threads` threads and every file it wrote.
fn answer(folder: &Path, question: &str, format: &str, threads: &str) -> BTreeMap<String, Vec<u8>> {
    let mut command = Command::cargo_bin("arsenalfit").expect("the program");
    command.current_dir(folder).env("RAYON_NUM_THREADS", threads).env("COLUMNS", "80").args(["--format", format]);
    let output = command.args(question.split(' ')).output().expect("it runs");
    assert!(output.status.success(), "{question}: {}", String::from_utf8_lossy(&output.stderr));
    let mut written = BTreeMap::from([("standard output".to_owned(), output.stdout)]);
    for file in ["page.html", "plan.ics", "plan.md", "sorted.toml"] {
        let path = folder.join(file);
        if let Ok(bytes) = fs::read(&path) {
            fs::remove_file(path).expect("it goes");
            written.insert(file.into(), bytes);
        }
    }
    written
}

fn same_bytes(questions: &[String], format: &str) {
    let folder = folder();
    for question in questions {
        let (one, two) = (answer(folder.path(), question, format, "1"), answer(folder.path(), question, format, "2"));
        assert_eq!(one.keys().collect::<Vec<_>>(), two.keys().collect::<Vec<_>>(), "{question}");
        for (name, bytes) in &one {
            assert!(!bytes.is_empty() && bytes == &two[name], "{question}: {name} differs with the number of threads");
        }
    }
}

#[test]
fn text_and_files_are_the_same_on_one_thread_and_on_two() {
    same_bytes(&questions(), "text");
}

#[test]
fn json_is_the_same_on_one_thread_and_on_two() {
    same_bytes(&questions(), "json");
}

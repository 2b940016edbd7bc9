//! What a hostile word may do in an answer: nothing. Labels, grips, days, headers, file names and
//! comments that hold escape codes, turned text, formulas and markup go through the real program;
//! the answers are looked at as a terminal, a JSON reader, a browser and a calendar would.

use std::fs;
use std::path::Path;

use assert_cmd::Command;
use serde_json::Value;

/// Colours red, clears the screen, turns the text around, sets the window's title, rings.
const STEERING: &str = "\u{1b}[31m\u{1b}[2J\u{9b}31m\u{202e}\u{2066}\u{1b}]0;title\u{7}\u{7f}";
const MARKUP: &str = "<script>alert(1)</script><img src=x onerror=alert(1)>&\"'</title></svg>";
const WISH: [&str; 2] = ["--target", "79.5,-2.5,13.5"];
const DATES: [&str; 4] = ["--start", "2031-11-03", "--end", "2032-02-29"];

/// Standard output of a command that is to succeed.
fn answer(folder: &Path, arguments: &[&str]) -> String {
    let mut command = Command::cargo_bin("arsenalfit").expect("the program");
    let output = command.current_dir(folder).env("COLUMNS", "80").args(arguments).output().expect("it runs");
    assert!(output.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).expect("text")
}

/// Nothing but letters, line feeds and tabs reaches the terminal.
fn cannot_steer(text: &str, what: &str) {
    let steers = |c: &char| {
        (c.is_control() && !matches!(c, '\n' | '\t')) || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
    };
    assert_eq!(text.chars().find(steers), None, "{what}: {text:?}");
}

/// A folder whose files hold `word` wherever a word can stand, one of them in its name too.
fn folder(word: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let put = |from: &str, to: &str, change: &dyn Fn(String) -> String| {
        let text = fs::read_to_string(from).expect("a shipped file");
        fs::write(folder.path().join(to), change(text)).expect("a file");
    };
    let cell = format!("\"{}\"", word.replace('"', "\"\""));
    put("profiles/three-quarter-right.toml", "athlete.toml", &|text| text);
    put("demo-data/session-2031-02-03.csv", "throws.csv", &|text| {
        text.replace(",slider,", &format!(",{cell},"))
            .replace("2031-02-03", &cell)
            .replace("93.2,412.0,", &format!("{cell},1,"))
    });
    put("demo-data/trial-four-grips.csv", "trial.csv", &|text| {
        text.replace("two-seam, middle finger inside seam, no spike", &word.replace('"', "\"\""))
    });
    for week in 1..=6 {
        put(&format!("demo-data/progress-week-{week}.csv"), &format!("week-{week}.csv"), &|text| {
            text.replace(",slider,", &format!(",{cell},")).replace("2031-01-20", &cell)
        });
    }
    folder
}

/// Every answer about throws, in text or JSON.
fn answers(folder: &Path, format: &str) -> Vec<(&'static str, String)> {
    let weeks: Vec<String> = (1..=6).map(|week| format!("week-{week}.csv")).collect();
    let weeks: Vec<&str> = weeks.iter().map(String::as_str).collect();
    let form = ["--format", format];
    let ask = |arguments: &[&[&str]]| answer(folder, &[&arguments.concat()[..], &form].concat());
    vec![
        ("sort", ask(&[&["sort", "throws.csv", "--hand", "left"]])),
        ("trial", ask(&[&["trial", "trial.csv", "--profile", "athlete.toml", "--report", "trial.html"], &WISH])),
        ("progress", ask(&[&["progress", "athlete.toml", "--report", "progress.html"], &weeks, &WISH])),
        (
            "plan",
            ask(&[
                &["plan", "athlete.toml", "--trial", "trial.csv", "--session", "week-1.csv", "--force"],
                &["--ics", "plan.ics", "--markdown", "plan.md", "--report", "plan.html"],
                &DATES,
                &WISH,
            ]),
        ),
    ]
}

#[test]
fn cells_cannot_steer_a_terminal_and_json_stays_json() {
    for word in [STEERING, MARKUP, "=1+1", "\\\",;\u{2028}\u{feff}", "line\nfeed"] {
        let folder = folder(word);
        for (command, text) in answers(folder.path(), "text") {
            cannot_steer(&text, command);
        }
        for (command, text) in answers(folder.path(), "json") {
            cannot_steer(&text, command);
            serde_json::from_str::<Value>(&text).unwrap_or_else(|error| panic!("{command}: {error}"));
        }
        for page in ["trial.html", "progress.html", "plan.html", "plan.md", "plan.ics"] {
            let text = fs::read_to_string(folder.path().join(page)).expect("it is written");
            cannot_steer(&text.replace("\r\n", "\n"), page);
            let drawn = text.split("</style>").nth(1).unwrap_or(&text);
            assert!(!drawn.contains("<script") && !drawn.contains("<img"), "{page}: {word}");
        }
    }
}

#[test]
fn headers_file_names_and_old_comments_cannot_steer_a_terminal() {
    let folder = folder("slider");
    let place = folder.path();
    let throws = fs::read_to_string(place.join("throws.csv")).expect("a file");
    let header =
        throws.replace("spin_rpm", &format!("spin rpm {STEERING}\u{2028}")).replace("pitch", "\"pitch\nname\"");
    fs::write(place.join("odd.csv"), header).expect("a file");
    let map = answer(place, &["sort", "odd.csv", "--explain-columns"]);
    cannot_steer(&map, "a proposal");
    fs::write(place.join("map.toml"), &map).expect("a file");
    let sorted = answer(place, &["sort", "odd.csv", "--hand", "left", "--columns", "map.toml", "--format", "json"]);
    let sorted: Value = serde_json::from_str(&sorted).expect("JSON");
    assert!(sorted["pitches"][0]["spin_rpm"]["value"].is_number(), "the escaped header is found again: {map}");
    // File names on Unix may hold all this.
    if cfg!(unix) {
        let odd = format!("{STEERING}\n.csv");
        fs::write(place.join(&odd), throws.replace(",2031-02-03", ",")).expect("a file");
        for arguments in [
            vec!["sort", &odd, "--hand", "left"],
            vec!["sort", &odd, "--hand", "left", "--format", "json"],
            vec!["sort", &odd, "--explain-columns"],
            vec!["new", &format!("{STEERING}.toml"), "--throws", "right", "--pitch", "four-seam 91 16 -7"],
        ] {
            cannot_steer(&answer(place, &arguments), "a file's name");
        }
        fs::remove_file(place.join("map.toml")).expect("it goes");
        cannot_steer(&answer(place, &["roster", ".", "--draws", "16"]), "a roster");
    }
    let profile = fs::read_to_string("profiles/high-slot-left.toml").expect("a profile");
    let commented = profile.replace("[[pitch]]", "# \u{202e}\u{2066} said backwards\n[[pitch]]");
    let commented = commented.replace("speed_mph =", "speed_mph  = ").replace("\n[athlete]", "\n[athlete] # \u{202e}");
    fs::write(place.join("old.toml"), commented).expect("a file");
    let changes = ["sort", "throws.csv", "--hand", "left", "--write", "old.toml", "--force"];
    cannot_steer(&answer(place, &changes), "changes of a profile");
}

/// A name of each kind a profile allows, in every page and text that shows it.
#[test]
fn names_of_athletes_and_pitches_stay_names() {
    let profile = fs::read_to_string("profiles/three-quarter-right.toml").expect("a profile");
    for name in ["<b>|[x](javascript:a)![y](z)", "=HYPERLINK(1,2)", "a,b;c\\\\d:é世界", "| --- |", "&amp; # *x* `y`"]
    {
        let folder = folder("slider");
        let named =
            profile.replace("Sample Athlete A", name).replace("\"slider\"\nfamily", &format!("\"{name}\"\nfamily"));
        fs::write(folder.path().join("athlete.toml"), named).expect("a file");
        answers(folder.path(), "json");
        let advice = answer(folder.path(), &["advise", "athlete.toml", "--draws", "16", "--report", "advise.html"]);
        assert!(advice.contains(&name.replace("\\\\", "\\")), "{advice}");
        for page in ["advise.html", "plan.html", "progress.html"] {
            let page = fs::read_to_string(folder.path().join(page)).expect("a page");
            assert!(!page.contains("<b>") && !page.contains("href=") && !page.contains("<script"), "{name}");
        }
        let markdown = fs::read_to_string(folder.path().join("plan.md")).expect("a plan");
        assert!(!markdown.contains("<b>") && !markdown.contains("](") && !markdown.starts_with("# |"), "{markdown}");
        let rows = markdown.lines().filter(|line| line.starts_with('|'));
        assert!(rows.clone().count() > 10 && rows.clone().all(|row| row.matches('|').count() == 7), "{markdown}");
    }
}

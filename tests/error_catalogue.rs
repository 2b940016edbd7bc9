//! Every error the program can give outside a profile, in one voice: what is wrong with the value
//! found, where, what is allowed, how to mend it. The snapshots are meant to be read as prose.
//!
//! A case is a name and a command line. All run in one folder with sound files (`athlete.toml`,
//! `throws.csv`, `trial.csv`, `week.csv`) and the wrong files of the group. Wrong profiles are in
//! `profile_input.rs`, what a machine can do to files in `faults.rs`.

#[path = "common/folder.rs"]
mod folder;

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use assert_cmd::Command;

use folder::with_copies;

const HEADER: &str = "speed_mph,vertical_break_in,glove_side_break_in";
const NEW: &str = "new n.toml --throws right --pitch";
const PLAN: &str = "plan athlete.toml --start 2031-11-03 --end 2032-02-29";
const TRIAL: &str = "trial trial.csv --profile athlete.toml --target 79.5,-2.5,13.5";
const PROGRESS: &str = "progress athlete.toml week.csv --target 79.5,-2.5,13.5";

/// A folder with one of every sound file.
fn folder() -> tempfile::TempDir {
    let folder = with_copies(&[
        ("profiles/three-quarter-right.toml", "athlete.toml"),
        ("demo-data/session-2031-02-03.csv", "throws.csv"),
        ("demo-data/trial-four-grips.csv", "trial.csv"),
        ("demo-data/progress-week-1.csv", "week.csv"),
    ]);
    fs::create_dir(folder.path().join("empty")).expect("a folder");
    folder
}

/// The words of a command line; what stands between bars is one word.
fn words(line: &str) -> Vec<String> {
    let parts = line.split('|').enumerate();
    parts
        .flat_map(|(at, part)| {
            if at % 2 == 1 { vec![part.to_owned()] } else { part.split_whitespace().map(str::to_owned).collect() }
        })
        .collect()
}

/// What standard error says, after the checks that hold for each error.
fn told(folder: &Path, line: &str) -> String {
    let mut command = Command::cargo_bin("arsenalfit").expect("the program");
    let output = command.current_dir(folder).env("COLUMNS", "80").args(words(line)).output().expect("it runs");
    let said = String::from_utf8(output.stderr).expect("text");
    assert_eq!(output.status.code(), Some(2), "{line}: {said}");
    assert!(output.stdout.is_empty(), "{line} leaves standard output alone");
    assert!(said.starts_with("error: "), "{line}: {said}");
    assert!(said.contains("must be ") || said.contains("hint: "), "{line} says how to mend it: {said}");
    assert!(said.chars().all(|c| c == '\n' || !(c.is_control() || ('\u{202a}'..='\u{202e}').contains(&c))), "{said:?}");
    said
}

/// Runs all cases and sets what they say under one another.
fn catalogue(folder: &Path, cases: &[(&str, &str)]) -> String {
    let mut page = String::new();
    for (name, line) in cases {
        let shown = line.replace(|c: char| c.is_control() || c == '\u{202e}', "?");
        // Writing to a string cannot fail.
        let _ = writeln!(page, "## {name}\n$ arsenalfit {shown}\n{}", told(folder, line));
    }
    page
}

#[test]
fn command_lines() {
    let cases = [
        ("no such command", "advice athlete.toml"),
        ("nothing like a command", "nonsense"),
        ("manual of no command", "man advice"),
        ("completions for no shell", "completions tcsh"),
        ("no profile", "advise"),
        ("one profile of two", "compare athlete.toml"),
        ("no session", "sort"),
        ("unknown flag", "advise athlete.toml --sed 3"),
        ("one file too many", "usage athlete.toml another.toml"),
        ("flag without its value", "usage athlete.toml --report"),
        ("form of the answer", "check athlete.toml --format xml"),
        ("seed below zero", "check athlete.toml --seed -1"),
        ("seed that is no number", "check athlete.toml --seed lucky"),
        ("family misspelled", "advise athlete.toml --family sweper"),
        ("two flags that exclude each other", "advise athlete.toml --now --mastered"),
        ("the same flag twice", "advise athlete.toml --family slider --family cutter"),
        ("too few draws", "advise athlete.toml --draws 3"),
        ("draws that are no number", "roster . --draws many"),
        ("elevation", "check athlete.toml --elevation high"),
        ("elevation that is not a number", "check athlete.toml --elevation NaN"),
        ("dot of nothing", "dot"),
        ("two numbers for a shape", "dot --target 81,0"),
        ("a word in a shape", "dot --target 81,0,fast"),
        ("a shape nobody throws", "dot --target 200,0,0"),
        ("a shape no spin gives", "dot --target 81,30,30"),
        ("a shape that needs more spin", "dot --target 81,0,14 --rpm 500"),
        ("spin out of range", "dot --target 81,0,10 --rpm 9000"),
        ("spin for a profile", "dot athlete.toml --rpm 2000"),
        ("hand", "dot --target 81,0,10 --throws both"),
        ("a pitch he does not throw", "dot athlete.toml --pitch screwball"),
        ("a pitch named to steer the terminal", "dot athlete.toml --pitch |\u{1b}[31mred\u{202e}|"),
        ("too many pitches", "sort throws.csv --most-pitches 9"),
        ("force without write", "sort throws.csv --force"),
    ];
    insta::assert_snapshot!("errors-command-line", catalogue(folder().path(), &cases));
}

#[test]
fn new_profiles() {
    let with = |what: &str| format!("{NEW} {what}");
    let lines = [
        ("no file", "new".to_owned()),
        ("nothing said", "new n.toml".to_owned()),
        ("hand", "new n.toml --throws both".to_owned()),
        ("pitch without numbers", with("four-seam")),
        ("pitch with one number", with("|four-seam 91|")),
        ("pitch with a word", with("|four-seam fast 1 4|")),
        ("pitch misspelled", with("|sweper 80 1 4|")),
        ("a four-seam that falls", with("|four-seam 91 -16 0|")),
        ("age", with("|four-seam 91 16 0| --age 200")),
        ("empty name", with("|four-seam 91 16 0| --name ||")),
        ("a file that exists", "new athlete.toml --throws right --pitch |four-seam 91 16 0|".to_owned()),
        ("no such folder", "new no/n.toml --throws right --pitch |four-seam 91 16 0|".to_owned()),
    ];
    let lines: Vec<(&str, &str)> = lines.iter().map(|(name, line)| (*name, line.as_str())).collect();
    let folder = folder();
    insta::assert_snapshot!("errors-new", catalogue(folder.path(), &lines));
    assert!(!folder.path().join("n.toml").exists(), "nothing is written");
}

#[test]
fn files_that_are_not_there() {
    let cases = [
        ("profile", "check none.toml"),
        ("second profile", "compare athlete.toml none.toml"),
        ("profile is a folder", "check empty"),
        ("session", "sort none.csv"),
        ("session is a folder", "sort empty"),
        ("session to explain", "sort none.csv --explain-columns"),
        ("session to advise on", "advise --session none.csv"),
        ("profile beside a session", "advise none.toml --session throws.csv"),
        ("trial", "trial none.csv --profile athlete.toml --target 79.5,-2.5,13.5"),
        ("profile of a trial", "trial trial.csv --profile none.toml"),
        ("outing", "progress athlete.toml none.csv --target 79.5,-2.5,13.5"),
        ("column map", "sort throws.csv --columns none.toml"),
        ("column map is a folder", "sort throws.csv --columns empty"),
        ("folder of profiles", "roster none"),
        ("folder of profiles is a file", "roster athlete.toml"),
        ("folder without profiles", "roster empty"),
        ("a name that steers the terminal", "check |\u{1b}[31mred\u{202e}.toml|"),
        ("the same of a session", "sort |\u{1b}[31mred\u{202e}.csv|"),
    ];
    insta::assert_snapshot!("errors-no-file", catalogue(folder().path(), &cases));
}

#[test]
fn files_to_write() {
    let plan = |what: &str| format!("{PLAN} --target 79.5,-2.5,13.5 {what}");
    let lines = [
        ("page in no folder", "usage athlete.toml --report no/page.html".to_owned()),
        ("page below a file", "usage athlete.toml --report athlete.toml/page.html".to_owned()),
        ("page is a folder", "usage athlete.toml --report empty".to_owned()),
        ("page is a device", "usage athlete.toml --report /dev/null".to_owned()),
        ("page without a name", "usage athlete.toml --report ||".to_owned()),
        ("page is another file", "usage athlete.toml --report throws.csv".to_owned()),
        ("page over its own profile", "usage athlete.toml --report ./athlete.toml --force".to_owned()),
        ("page on standard output", "usage athlete.toml --report -".to_owned()),
        ("two answers in one file", plan("--ics plan.txt --markdown plan.txt")),
        ("calendar there already", plan("--ics trial.csv")),
        ("markdown there already", plan("--markdown trial.csv")),
        ("calendar in no folder", plan("--ics no/plan.ics")),
        ("markdown is a folder", plan("--markdown empty --force")),
        ("profile there already", "sort throws.csv --hand left --write athlete.toml".to_owned()),
        ("profile in no folder", "sort throws.csv --hand left --write no/n.toml".to_owned()),
        ("profile is a folder", "sort throws.csv --hand left --write empty".to_owned()),
        ("profile is no TOML", "sort throws.csv --hand left --write trial.csv --force".to_owned()),
    ];
    let lines: Vec<(&str, &str)> = lines.iter().map(|(name, line)| (*name, line.as_str())).collect();
    let folder = folder();
    let before = fs::read(folder.path().join("athlete.toml")).expect("a profile");
    insta::assert_snapshot!("errors-writing", catalogue(folder.path(), &lines));
    assert_eq!(fs::read(folder.path().join("athlete.toml")).expect("a profile"), before);
    assert_eq!(fs::read_dir(folder.path()).expect("the folder").count(), 5, "nothing is left behind");
}

#[test]
fn the_months_after() {
    let folder = folder();
    fs::write(folder.path().join("left.toml"), "throws = \"left\"\n").expect("a file");
    fs::copy("profiles/low-slot-right-with-sweeper.toml", folder.path().join("low.toml")).expect("a copy");
    let unlabelled = format!("{HEADER}\n90,15,-6\n91,15,-6\n");
    fs::write(folder.path().join("unlabelled.csv"), unlabelled).expect("a file");
    let lines = [
        ("trial without a profile", "trial trial.csv".to_owned()),
        ("outing given twice", "progress athlete.toml week.csv ./week.csv".to_owned()),
        ("column map of the other hand", format!("{TRIAL} --columns left.toml")),
        ("label that no throw has", format!("{PROGRESS} --pitch screwball")),
        ("label, and the files have none", "progress athlete.toml unlabelled.csv --pitch screwball".to_owned()),
        ("no outing", "progress athlete.toml".to_owned()),
        ("plan without an end", "plan athlete.toml --start 2031-11-03".to_owned()),
        ("a day that is not in the calendar", "plan athlete.toml --start 2031-02-29 --end 2031-11-03".to_owned()),
        ("a day in words", "plan athlete.toml --start yesterday --end 2031-11-03".to_owned()),
        ("before the calendar", "plan athlete.toml --start 1899-11-03 --end 1900-01-01".to_owned()),
        ("end before start", "plan athlete.toml --start 2031-11-03 --end 2031-01-01".to_owned()),
        ("longer than a year", "plan athlete.toml --start 2031-11-03 --end 2039-01-01".to_owned()),
        ("day of the week", format!("{PLAN} --days mon,moonday")),
        ("no day of the week", format!("{PLAN} --days ||")),
        ("trial that is not there", format!("{PLAN} --target 79.5,-2.5,13.5 --trial none.csv")),
        ("outing that is not there", format!("{PLAN} --target 79.5,-2.5,13.5 --session none.csv")),
    ];
    let lines: Vec<(&str, &str)> = lines.iter().map(|(name, line)| (*name, line.as_str())).collect();
    insta::assert_snapshot!("errors-months-after", catalogue(folder.path(), &lines));
}

/// What `sort` says of `throws.csv`, or of the file itself, for each text of a file.
fn of_texts(folder: &Path, file: &str, line: &str, cases: &[(&str, &str)]) -> String {
    let mut page = String::new();
    for (name, text) in cases {
        fs::write(folder.join(file), text).expect("a file");
        // Writing to a string cannot fail.
        let _ = writeln!(page, "## {name}\n{}", told(folder, line));
    }
    page
}

#[test]
fn column_maps() {
    let cases = [
        ("not TOML", "x = ["),
        ("hand", "throws = \"both\""),
        ("hand is a number", "throws = 3"),
        ("unknown section", "colums = 3"),
        ("unknown quantity", "[columns]\nsped = { header = \"v\" }"),
        ("column is a text", "[columns]\nspeed = \"v\""),
        ("header is a number", "[columns]\nspeed = { header = 3 }"),
        ("header is empty", "[columns]\nspeed = { header = \" \" }"),
        ("header misspelled", "[columns]\nspeed = { hedder = \"v\" }"),
        ("unknown unit", "[columns]\nspeed = { header = \"v\", unit = \"knots\" }"),
        ("unit of something else", "[columns]\nspeed = { header = \"v\", unit = \"cm\" }"),
        ("unit of a text", "[columns]\npitch = { header = \"v\", unit = \"cm\" }"),
        ("distance in quotes", "[columns]\nspeed = { header = \"v\", at_ft = \"far\" }"),
        ("distance too long", "[columns]\nspeed = { header = \"v\", at_ft = 400 }"),
        ("distance from which nothing can be told", "[columns]\nvertical_break = { header = \"v\", from_ft = 5 }"),
        ("distance that is not a number", "[columns]\nspeed = { header = \"v\", at_ft = nan }"),
        ("distance of a spin", "[columns]\nspin = { header = \"v\", at_ft = 40 }"),
        ("direction of a speed", "[columns]\nspeed = { header = \"v\", positive = \"down\" }"),
        ("unknown direction", "[columns]\nglove_side_break = { header = \"v\", positive = \"sideways\" }"),
        ("column given twice", "[columns]\nspeed = { header = \"v\" }\nspeed = { header = \"w\" }"),
        ("outcome misspelled", "[outcomes]\n\"x\" = \"bal\""),
        ("outcome is a number", "[outcomes]\n\"\\u001b[31m\" = 3"),
        ("order of dates", "[date]\norder = \"month\""),
        ("separator", "separator = \"pipe\""),
        ("decimal mark", "decimal = \"komma\""),
        ("air nobody breathes", "[air]\nelevation_ft = nan\npressure_inhg = 0\nhumidity_percent = -4"),
        ("a column that is not in the file", "[columns]\nspeed = { header = \"sped_mph\" }"),
        ("a column that holds something else", "[columns]\nvertical_break = { header = \"spin_rpm\" }"),
    ];
    let line = "sort throws.csv --hand left --columns map.toml";
    insta::assert_snapshot!("errors-column-map", of_texts(folder().path(), "map.toml", line, &cases));
}

#[test]
fn sessions() {
    let with = |text: &str| format!("{HEADER}{text}");
    let long = with(&format!("\n90,1,\"2{}", "90,1,2\n".repeat(200_000)));
    let labels = (0..5002).fold(String::new(), |rows, n| rows + &format!("90,1,2,label {n}\n"));
    let cases = [
        ("empty", String::new()),
        ("blank lines only", "\n\n\n".into()),
        ("header only", with("\n")),
        ("header and blank lines", with("\n,,\n\n")),
        ("no header of ours", "v,up\n90,2\n".into()),
        ("header that steers the terminal", "sp\u{1b}[31m\u{202e},v\n90,2\n".into()),
        ("header misspelled", with("\n").replace("speed", "sped")),
        ("column twice", with(",speed_mph\n90,2,3,4\n")),
        ("clock without a hand", with(",spin_clock\n90,2,3,1:15\n")),
        ("too slow", with("\n1,2,3\n")),
        ("too fast", with("\n150,2,3\n")),
        ("decimal commas between commas", with("\n90,5,16,2,-7,1\n")),
        ("comma in a text", with(",grip\n90.5,2,3,two-seam, light spike\n")),
        ("two pitchers", with(",pitcher\n90,2,3,Doe\n91,2,3,Roe\n")),
        ("dates in two orders", with(",date\n90,2,3,13/2/2031\n91,2,3,2/13/2031\n")),
        ("cell is missing", with("\n90,2\n")),
        ("cell is a word", with("\nfast,2,3\n")),
        ("cell that steers the terminal", with("\n\u{1b}[31mred\u{202e},2,3\n")),
        ("cell of a thousand letters", with(&format!("\n{},2,3\n", "x".repeat(1000)))),
        ("quotation mark never closed", long),
        ("too many labels", with(&format!(",pitch\n{labels}"))),
        ("spreadsheet", "PK\u{3}\u{4}".into()),
        ("bytes that are no text", "a\0b".into()),
    ];
    let cases: Vec<(&str, &str)> = cases.iter().map(|(name, text)| (*name, text.as_str())).collect();
    insta::assert_snapshot!("errors-session", of_texts(folder().path(), "s.csv", "sort s.csv", &cases));
}

/// Two faults of a map are told together, as those of a profile are.
#[test]
fn every_fault_of_a_column_map_is_told_at_once() {
    let folder = folder();
    fs::write(folder.path().join("map.toml"), "throws = \"both\"\n[columns]\nsped = { header = \"v\" }\n")
        .expect("a file");
    let said = told(folder.path(), "sort throws.csv --columns map.toml");
    assert_eq!(said.matches("error: ").count(), 2, "{said}");
    assert!(said.contains("map.toml:1:10") && said.contains("map.toml:3:1"), "{said}");
}

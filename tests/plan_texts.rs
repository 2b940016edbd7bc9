//! The plan as texts: Markdown to read, iCalendar to import.
//!
//! The calendar is also read back by an independent parser: this test leaves it in the target
//! directory, and `tests/data/check_calendar.py` (Python's `icalendar`) checks that file.

use std::num::NonZeroUsize;

use arsenalfit::ball::{Family, Shape};
use arsenalfit::decide::model::Model;
use arsenalfit::files::profile_from_toml;
use arsenalfit::learn::plan::{Answer, Measured, Plan, Request, Span, Weekdays, plan};
use arsenalfit::learn::target::Target;
use arsenalfit::report::answers::plan_sheet;
use arsenalfit::report::calendar;
use jiff::civil::date;

fn sample(name: &str) -> Plan {
    let text = include_str!("../profiles/three-quarter-right.toml");
    let mut profile = profile_from_toml(text, "profile.toml").unwrap_or_else(|error| panic!("{error}"));
    name.clone_into(&mut profile.athlete.name);
    let shape = Shape { speed_mph: 82.0, vertical_break_in: 0.5, glove_side_break_in: 15.0 };
    let target = Target::about(&Model::new(&profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape);
    let span = Span::new(date(2027, 11, 1), date(2028, 3, 5)).unwrap();
    let request = Request {
        profile: &profile,
        target: &target,
        span,
        weekdays: Weekdays::default(),
        measured: Measured::default(),
    };
    match plan(&request) {
        Answer::Plan(plan) => *plan,
        Answer::Refused(refusal) => panic!("{refusal:?}"),
        Answer::NoRest(dates) => panic!("too little rest: {dates:?}"),
    }
}

/// Content lines with folds undone.
fn unfolded(calendar: &str) -> Vec<String> {
    calendar.replace("\r\n ", "").split("\r\n").map(str::to_owned).collect()
}

#[test]
fn the_markdown_is_the_snapshot() {
    insta::assert_snapshot!("plan_markdown", plan_sheet(&sample("Sample Athlete A")).markdown());
}

#[test]
fn a_name_cannot_smuggle_markup_into_the_markdown() {
    let text = plan_sheet(&sample("A | B <script> # *x*")).markdown();
    assert!(text.starts_with("# A \\| B \\<script\\> \\# \\*x\\*: learning a sweeper"), "{text}");
}

#[test]
fn the_calendar_keeps_the_rules_of_rfc_5545() {
    let plan = sample("Zoë; \"Sample\", Athlete \\ with a long, long, long name");
    let text = calendar(&plan);
    assert!(text.split("\r\n").all(|line| line.len() <= 75), "lines are folded at 75 octets");
    assert!(!text.replace("\r\n", "").contains(['\r', '\n']), "lines end with CR LF");
    let lines = unfolded(&text);
    let events = plan.phases.len() + plan.days.len();
    for (line, count) in [("BEGIN:VEVENT", events), ("END:VEVENT", events), ("DTSTAMP:20271101T000000Z", events)] {
        assert_eq!(lines.iter().filter(|found| *found == line).count(), count, "{line}");
    }
    let mut identifiers: Vec<&String> = lines.iter().filter(|line| line.starts_with("UID:")).collect();
    identifiers.sort();
    identifiers.dedup();
    assert_eq!(identifiers.len(), events);
    assert!(lines.iter().all(|line| !line.starts_with("DTSTART") || line.starts_with("DTSTART;VALUE=DATE:20")));
    assert!(lines.iter().any(|line| line.contains("Zoë\\; \"Sample\"\\, Athlete \\\\ with")), "text is escaped");
    assert_eq!(text, calendar(&plan), "the same plan gives the same text");
    let path = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("plan.ics");
    std::fs::write(path, text).expect("the target directory can be written");
}

/// Text escaped by RFC 5545, section 3.3.11, back as it was.
fn unescaped(text: &str) -> String {
    let mut out = String::new();
    let mut letters = text.chars();
    while let Some(letter) = letters.next() {
        let escaped = if letter == '\\' { letters.next() } else { None };
        out.push(match escaped {
            Some('n' | 'N') => '\n',
            Some(other) => other,
            None => letter,
        });
    }
    out
}

#[test]
fn any_name_comes_back_from_the_calendar_as_it_was() {
    let names = [
        "a,b;c:d\\e\"f".to_owned(),
        "\\n is no line feed, \\, is no comma".to_owned(),
        "x".repeat(300),
        "é".repeat(300),
        "投手😀".repeat(100),
        "END:VEVENT".to_owned(),
        "=1+1".to_owned(),
    ];
    for name in names {
        let text = calendar(&sample(&name));
        assert!(text.split("\r\n").all(|line| line.len() <= 75), "{name} is folded at 75 octets");
        let lines = unfolded(&text);
        let title = lines.iter().find_map(|line| line.strip_prefix("X-WR-CALNAME:")).expect("a title");
        assert_eq!(unescaped(title), format!("{name}: sweeper"));
    }
    for breaking in ["a\r\nEND:VCALENDAR\r\nBEGIN:VALARM", "a\nb", "a\rb", "a\u{85}b\u{1b}[31m"] {
        let text = calendar(&sample(breaking));
        assert!(!text.replace("\r\n", "").contains(char::is_control), "{breaking:?}");
        assert_eq!(unfolded(&text).iter().filter(|line| *line == "END:VCALENDAR").count(), 1);
        assert!(!unfolded(&text).iter().any(|line| line == "BEGIN:VALARM"));
    }
}

#[test]
fn markdown_of_a_name_with_line_feeds_keeps_its_one_heading() {
    let text = plan_sheet(&sample("a\n\n| x |\n# b")).markdown();
    assert!(text.starts_with("# a  \\| x \\| \\# b: learning a sweeper\n"), "{text}");
    assert_eq!(text.lines().filter(|line| line.starts_with("# ")).count(), 1);
}

#[test]
fn two_athletes_never_share_an_event() {
    let (one, other) = (calendar(&sample("A")), calendar(&sample("B")));
    let of = |text: &str| unfolded(text).into_iter().filter(|line| line.starts_with("UID:")).collect::<Vec<_>>();
    assert!(of(&one).iter().all(|uid| !of(&other).contains(uid)));
}

//! The page without a browser: texts stay texts, nothing is fetched, every picture has words and a
//! table, and the drawings are what they were. What only a browser can tell is in `tests/browser`.

use std::fs;
use std::num::NonZeroUsize;

use arsenalfit::athlete::eligibility::Eligibility;
use arsenalfit::athlete::profile::{PerSide, Profile};
use arsenalfit::athlete::session::Session;
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::Hand;
use arsenalfit::decide::advice::Advice;
use arsenalfit::decide::apart::{pairs, partings};
use arsenalfit::decide::compare::Comparison;
use arsenalfit::decide::levers::levers;
use arsenalfit::decide::model::Model;
use arsenalfit::decide::new_pitch::Command;
use arsenalfit::decide::roster::Standing;
use arsenalfit::decide::usage::Usage;
use arsenalfit::files::{ColumnMap, ReadOptions, profile_from_toml, read_profile, read_sessions};
use arsenalfit::learn::plan::{Answer, Measured, Request, Span, plan};
use arsenalfit::learn::progress::{outings, progress};
use arsenalfit::learn::target::Target;
use arsenalfit::learn::trial::{attempts, trial};
use arsenalfit::report::answers::{self, Advised, Ground, Member, NoPlan, Roster, Start};

fn shipped(name: &str) -> Profile {
    read_profile(format!("profiles/{name}.toml").as_ref()).expect("a shipped profile")
}

fn advise_page(profile: &Profile) -> String {
    let model = Model::new(profile, FEW, 1);
    let advice = Advice::of(&model, Family::Sweeper, Command::Mastered);
    answers::advise(&Advised { profile, advice: &advice, leaning: None, file: None }).page()
}

/// A few draws: pages are looked at here, not intervals.
const FEW: NonZeroUsize = NonZeroUsize::new(4).expect("4 is not zero");

fn apart_page(profile: &Profile) -> String {
    let model = Model::new(profile, FEW, 1);
    let partings = PerSide::from_fn(|side| partings(&model, side));
    answers::apart(profile, &pairs(&model), &partings, "a.toml").page()
}

fn usage_page(profile: &Profile) -> String {
    answers::usage(profile, &Usage::of(&Model::new(profile, FEW, 1)), "a.toml").page()
}

fn levers_page(profile: &Profile) -> String {
    answers::levers(profile, &levers(&Model::new(profile, FEW, 1)), "a.toml").page()
}

/// Every page about `profile`, with what it is called.
fn pages(profile: &Profile) -> Vec<(&'static str, String)> {
    let other = shipped("high-slot-left");
    let member = Member {
        file: "a.toml".into(),
        profile: profile.clone(),
        standing: Standing::of(profile, Command::Mastered, FEW, 1),
    };
    let roster = Roster { members: &[member], command: Command::Mastered, unread: 0, draws: FEW.get() };
    let comparison = Comparison::of([profile, &other], Family::Sweeper, Command::Mastered, FEW, 1);
    vec![
        ("advise", advise_page(profile)),
        ("usage", usage_page(profile)),
        ("levers", levers_page(profile)),
        ("apart", apart_page(profile)),
        ("compare", answers::compare(&comparison, ["a.toml", "b.toml"]).page()),
        ("roster", answers::roster(&roster).page()),
    ]
}

/// The outer drawings of a page.
fn drawings(page: &str) -> Vec<&str> {
    page.split("<figure>")
        .skip(1)
        .map(|figure| {
            let start = figure.find("<svg viewBox").expect("a drawing");
            let end = figure.find("<p class=\"legend\">").expect("a legend");
            &figure[start..end]
        })
        .collect()
}

#[test]
fn whatever_a_name_holds_stays_text() {
    let names = [
        "<script>alert(1)</script>".to_owned(),
        "\"'`> onload=\"x".to_owned(),
        "&lt;b&gt; &amp; <!-- ]]> </title></style></svg>".to_owned(),
        "\u{202e}desrever \u{5e9}\u{5dc}\u{5d5}\u{5dd} \u{645}\u{631}\u{62d}\u{628}\u{627}".to_owned(),
        "long ".repeat(60),
        "x".repeat(300),
    ];
    for name in names {
        let mut profile = shipped("three-quarter-right");
        profile.athlete.name.clone_from(&name);
        profile.pitches[0].name.clone_from(&name);
        profile.assumptions.push(name.clone());
        for (page_name, page) in pages(&profile) {
            assert!(
                !page.contains("<script") && !page.contains("<b>") && !page.contains("<!--"),
                "{page_name}: {name}"
            );
            for closing in ["</style>", "</title></head>"] {
                assert!(page.matches(closing).count() <= 1, "{page_name}: {closing} comes once");
            }
            assert!(!page.contains("onload=\"x"), "{page_name}: {name}");
            let shown: String = name.chars().filter(|c| c.is_alphanumeric()).collect();
            let text: String =
                page.replace("&lt;", "").replace("&gt;", "").chars().filter(|c| c.is_alphanumeric()).collect();
            let start: String = shown.replace("ltbgt", "").replace("amp", "").chars().take(5).collect();
            assert!(text.contains(&start), "{page_name} shows {name}");
        }
    }
}

#[test]
fn nothing_is_fetched_and_nothing_runs() {
    for (name, page) in pages(&shipped("over-the-top-right")) {
        for forbidden in
            ["http", "src=", "href=", "<script", "@import", "url(", "javascript:", "<iframe", "<link", " on"]
        {
            let found = page.match_indices(forbidden).find(|(at, _)| forbidden != " on" || is_handler(&page[at + 1..]));
            assert!(
                found.is_none(),
                "{name} holds {forbidden}: {:?}",
                found.map(|(at, _)| &page[at..(at + 60).min(page.len())])
            );
        }
    }
}

/// Whether a text begins with an event handler such as `onclick="`.
fn is_handler(text: &str) -> bool {
    let name: String = text.chars().take_while(char::is_ascii_lowercase).collect();
    text[name.len()..].starts_with("=\"")
}

#[test]
fn behind_every_picture_stand_words_and_a_table() {
    for (name, page) in pages(&shipped("three-quarter-right")) {
        assert!(!drawings(&page).is_empty(), "{name} has pictures");
        for figure in page.split("<figure>").skip(1) {
            let figure = figure.split("</figure>").next().expect("a whole figure");
            assert!(figure.contains("role=\"img\" aria-labelledby="), "{name}: {figure}");
            for tag in ["title", "desc"] {
                let words = figure.split(&format!("<{tag} id=")).nth(1).and_then(|rest| rest.split(['>', '<']).nth(1));
                assert!(words.is_some_and(|words| words.len() > 10), "{name}: {tag}");
            }
            assert!(figure.contains("<details><summary>") && figure.contains("<tbody><tr>"), "{name}: a table");
        }
    }
}

#[test]
fn no_two_elements_of_a_page_share_an_id() {
    for (name, page) in pages(&shipped("three-quarter-right")) {
        let mut ids: Vec<&str> = page.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
        let all = ids.len();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), all, "{name}: {ids:?}");
    }
}

#[test]
fn every_tag_that_is_opened_is_closed() {
    const VOID: [&str; 1] = ["meta"];
    for (name, page) in pages(&shipped("low-slot-right-with-sweeper")) {
        let body = page.split("</style>").nth(1).expect("a body");
        let mut open: Vec<&str> = vec!["html", "head"];
        for tag in body.split('<').skip(1).filter_map(|rest| rest.split('>').next()) {
            let word = tag.trim_start_matches('/').split([' ', '/']).next().unwrap_or_default();
            if let Some(closed) = tag.strip_prefix('/') {
                assert_eq!(open.pop(), Some(closed), "{name}");
            } else if !tag.ends_with('/') && !VOID.contains(&word) {
                open.push(word);
            }
        }
        assert!(open.is_empty(), "{name} leaves {open:?} open");
    }
}

#[test]
fn the_same_answer_gives_the_same_page() {
    let profile = shipped("high-slot-left");
    assert_eq!(pages(&profile), pages(&profile));
}

#[test]
fn a_single_pitch_still_makes_every_page() {
    let text = "[athlete]\nname = \"One\"\nthrows = \"left\"\n[[pitch]]\nname = \"sinker\"\nfamily = \"sinker\"\n\
                speed_mph = 88\nvertical_break_in = 6\nglove_side_break_in = -14\n";
    for (name, page) in pages(&profile_from_toml(text, "one.toml").expect("it loads")) {
        assert!(page.ends_with("</html>") && page.contains("<figure>"), "{name}");
    }
}

/// The drawings that hold what is given and not what is searched.
#[test]
fn the_drawings_are_what_they_were() {
    let map = |profile: &str| drawings(&apart_page(&shipped(profile)))[2].replace('>', ">\n");
    insta::assert_snapshot!("svg-shape-map", map("three-quarter-right"));
    insta::assert_snapshot!("svg-shape-map-left", map("high-slot-left"));
}

/// The drawing with this title.
fn drawing_of<'p>(page: &'p str, title: &str) -> &'p str {
    drawings(page).into_iter().find(|drawing| drawing.contains(title)).expect("the picture")
}

#[test]
fn a_left_handers_aims_are_the_mirror_of_a_right_handers() {
    let right = shipped("three-quarter-right");
    let mut left = right.clone();
    left.athlete.throws = Hand::Left;
    let (right, left) = (usage_page(&right), usage_page(&left));
    let title = "Where to throw it to same-side hitters";
    let across = |page: &str| -> Vec<f64> {
        let ellipses = drawing_of(page, title).split("<ellipse cx=\"").skip(1);
        ellipses.map(|rest| rest.split('"').next().and_then(|x| x.parse().ok()).expect("a place")).collect()
    };
    let (right, left) = (across(&right), across(&left));
    assert!(right.len() >= 3, "{right:?}");
    for (right, left) in right.iter().zip(&left) {
        assert!((right + left - 360.0).abs() < 0.02, "{right} and {left} about the middle of a sheet 360 wide");
    }
}

/// What a file may hold in place of a grip or a day.
const NASTY: &str = "<script>alert(1)</script> </title></svg>";

/// The throws of some demo files, every `from` in them written as `to`.
fn demo_throws(files: &[&str], (from, to): (&str, &str)) -> Session {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let copy = |name: &&str| {
        let text = fs::read_to_string(format!("demo-data/{name}.csv")).expect("a demo file");
        let path = folder.path().join(format!("{name}.csv"));
        fs::write(&path, text.replace(from, to)).expect("the folder can be written");
        path
    };
    let paths: Vec<_> = files.iter().map(copy).collect();
    let options = ReadOptions { map: ColumnMap::default(), hand: Some(Hand::Right), progress: &mut |_| {} };
    read_sessions(&paths, options).expect("throws")
}

fn wish(profile: &Profile) -> Target {
    let shape = Shape { speed_mph: 79.5, vertical_break_in: -2.5, glove_side_break_in: 13.5 };
    Target::about(&Model::new(profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape)
}

fn ground<'a>(profile: &'a Profile, target: &'a Target, session: &'a Session) -> Ground<'a> {
    Ground { profile, file: "a.toml", target, session, is_wished: true, bars: &[] }
}

/// Texts stay texts, and words and a table stand behind each of `pictures` pictures.
fn is_sound(page: &str, pictures: usize, nasty: bool) {
    assert!(!page.contains("<script") && page.matches("</title><style>").count() == 1, "texts stay texts");
    assert_eq!(page.contains("&lt;script&gt;"), nasty, "what was written is shown");
    assert_eq!(drawings(page).len(), pictures);
    for figure in page.split("<figure>").skip(1).filter_map(|rest| rest.split("</figure>").next()) {
        assert!(figure.contains("role=\"img\" aria-labelledby=") && figure.contains("<desc id="), "{figure}");
        let rows = figure.split("<details>").nth(1).map_or(0, |details| details.matches("<tr>").count());
        assert!(rows >= 2, "a table: {figure}");
    }
}

#[test]
fn the_page_of_a_trial_shows_every_grip_as_text_with_its_numbers() {
    let profile = shipped("three-quarter-right");
    let target = wish(&profile);
    for (to, nasty) in [("no spike", false), (NASTY, true)] {
        let session = demo_throws(&["trial-four-grips"], ("no spike", to));
        let found = trial(&session.grips, &attempts(&session).0, &profile, &target, 1);
        let page = answers::trial(&ground(&profile, &target, &session), &found).page();
        is_sound(&page, 1, nasty);
        for letter in ["A", "B", "C", "D"] {
            assert!(page.contains(&format!("<bdi>{letter}</bdi>")), "grip {letter} has its row");
        }
    }
}

#[test]
fn the_page_of_progress_marks_since_when_the_slot_moved() {
    let profile = shipped("three-quarter-right");
    let target = wish(&profile);
    let weeks: Vec<String> = (1..=6).map(|week| format!("progress-week-{week}")).collect();
    let weeks: Vec<&str> = weeks.iter().map(String::as_str).collect();
    for (to, nasty) in [("2031-01-20", false), (NASTY, true)] {
        let session = demo_throws(&weeks, ("2031-01-20", to));
        let found = progress(&outings(&session, &profile, &target, None).0, &profile, &target);
        let page = answers::progress(&ground(&profile, &target, &session), &found).page();
        is_sound(&page, found.watches.len() + 3, nasty);
        let moved = found.watches.iter().filter(|watch| watch.change.is_some()).count();
        assert!(moved > 0 && page.matches(">moved since 2031").count() == moved, "one post for each change");
    }
}

#[test]
fn the_page_of_a_plan_shows_every_step_and_a_refusal_says_why() {
    let mut profile = shipped("three-quarter-right");
    profile.athlete.name = NASTY.into();
    let target = wish(&profile);
    let span = Span::new("2031-11-03".parse().expect("a day"), "2032-02-29".parse().expect("a day")).expect("a span");
    let weekdays = "mon,wed,fri".parse().expect("days");
    let request = Request { profile: &profile, target: &target, span, weekdays, measured: Measured::default() };
    let Answer::Plan(plan) = plan(&request) else { panic!("there is a plan") };
    let start = Start { profile: &profile, file: "a.toml", advice: None, stops: &[], written: &[] };
    let page = answers::plan(&start, &plan).page();
    is_sound(&page, 1, true);
    for step in ["spin clean", "shape in window", "shape at game effort", "command", "hitters"] {
        assert!(page.matches(step).count() >= 4, "{step}: legend, words, both tables");
    }
    profile.athlete.name = "Hurt".into();
    profile.health.pain = true;
    let eligibility = Eligibility::of(&profile, Family::Sweeper);
    let bar = eligibility.bar().expect("it is refused");
    let page = answers::no_plan(&profile, "a.toml", &NoPlan::Barred(bar), &["plan.ics".to_owned()]).page();
    is_sound(&page, 0, false);
    assert!(page.contains("<bdi>plan.ics</bdi> was not written"));
}

//! Progress and trial from files as they come: rows that cannot be used, days out of order, labels
//! of every kind, nothing measured but the shape.
//!
//! All throws are invented.

use std::fmt::Write as _;

use std::num::NonZeroUsize;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::athlete::session::Session;
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::Hand;
use arsenalfit::decide::model::Model;
use arsenalfit::files::{ColumnMap, ReadOptions, profile_from_toml, session_from_bytes};
use arsenalfit::learn::progress::{Caution, Kind, Outing, Quantity, ShapeState, outings, progress};
use arsenalfit::learn::target::Target;
use arsenalfit::learn::trial::{self, Verdict, attempts, trial};

fn ground() -> (Profile, Target) {
    let text = include_str!("../profiles/three-quarter-right.toml");
    let profile = profile_from_toml(text, "profile.toml").unwrap_or_else(|error| panic!("{error}"));
    let shape = Shape { speed_mph: 80.0, vertical_break_in: -1.0, glove_side_break_in: 14.0 };
    let target = Target::about(&Model::new(&profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape);
    (profile, target)
}

fn session(text: &str) -> Session {
    let options = ReadOptions { map: ColumnMap::default(), hand: Some(Hand::Right), progress: &mut |_| {} };
    session_from_bytes("throws.csv", text.as_bytes(), options).unwrap_or_else(|error| panic!("{error}"))
}

fn watched(text: &str, label: Option<&str>) -> (Vec<Outing>, Vec<Caution>) {
    let (profile, target) = ground();
    outings(&session(text), &profile, &target, label)
}

const SHAPES: &str = "speed_mph,vertical_break_in,glove_side_break_in,pitch,date\n";

#[test]
fn days_come_in_date_order_however_the_rows_stand() {
    let rows = "93,17,-8,four-seam,2031-02-03\n93,16,-8,four-seam,2030-12-30\n92.5,16.5,-7.5,four-seam,2031-01-15\n";
    let (outings, cautions) = watched(&format!("{SHAPES}{rows}"), None);
    let days: Vec<&str> = outings.iter().map(|outing| outing.day.as_str()).collect();
    assert_eq!((days, cautions), (vec!["2030-12-30", "2031-01-15", "2031-02-03"], vec![]));
}

#[test]
fn days_that_are_no_dates_keep_the_order_of_reading_and_say_so() {
    let rows = "93,17,-8,four-seam,week two\n93,16,-8,four-seam,2031-01-01\n93,16,-8.5,four-seam,\n";
    let (outings, cautions) = watched(&format!("{SHAPES}{rows}"), None);
    assert_eq!(outings[0].day, "week two");
    assert_eq!(cautions, [Caution::DaysNotDated]);
}

#[test]
fn labels_decide_and_shapes_decide_where_there_is_none() {
    let rows = "93,17,-8,FOUR-SEAM,2031-01-01\n80,-1,14,sweeper,2031-01-01\n80,-1,13,project,2031-01-01\n\
                86,3,4.6,slider,2031-01-01\n80,-1,14.5,,2031-01-01\n92.6,17.2,-8.3,,2031-01-01\n60,-50,40,,2031-01-01\n";
    let counts = |label| {
        let (outings, cautions) = watched(&format!("{SHAPES}{rows}"), label);
        let day = &outings[0];
        (day.fastballs.len(), day.new_pitches.len(), day.others, cautions)
    };
    assert_eq!(counts(Some("Project")), (2, 3, 2, vec![Caution::GivenToNearestShape { throws: 3 }]));
    assert_eq!(counts(None), (2, 3, 2, vec![Caution::GivenToNearestShape { throws: 4 }]));
}

#[test]
fn nothing_thrown_and_nothing_measured_but_the_shape_give_no_finding_and_no_panic() {
    let (profile, target) = ground();
    let empty = progress(&[], &profile, &target);
    assert!(empty.findings.is_empty() && empty.watches.is_empty());
    assert_eq!(empty.new_pitch.state, ShapeState::Unknown);
    let (outings, _) = watched(&format!("{SHAPES}93,17,-8,four-seam,2031-01-01\n80,-1,14,sweeper,2031-01-01\n"), None);
    let single = progress(&outings, &profile, &target);
    assert!(single.cautions.contains(&Caution::NoRelease));
    assert!(single.cautions.contains(&Caution::FewOutings { outings: 1 }));
    assert!(single.watch(Quantity::Slot).is_none() && single.watch(Quantity::FastballSpeed).is_some());
    assert_eq!(
        single.watch(Quantity::FastballSpeed).and_then(|watch| watch.by_outing[0]),
        None,
        "one throw has no interval"
    );
}

#[test]
fn a_release_that_cannot_be_the_profiles_is_replaced_and_said_and_is_no_finding() {
    let (profile, target) = ground();
    let mut text =
        String::from("speed_mph,vertical_break_in,glove_side_break_in,pitch,date,release_height_ft,release_side_ft\n");
    for day in 1..=6 {
        for throw in 0..8 {
            let wiggle = 0.02 * f64::from(throw % 3);
            let _ = writeln!(
                text,
                "{},{},-8,four-seam,2031-01-0{day},{},{}",
                93.0 + wiggle,
                16.8 + wiggle,
                4.9 + wiggle,
                2.6 + wiggle
            );
        }
    }
    let (outings, _) = outings(&session(&text), &profile, &target, None);
    let found = progress(&outings, &profile, &target);
    assert!(
        matches!(found.cautions[..], [Caution::ReleaseFromFirstOuting { apart_ft }] if apart_ft > 0.8),
        "{:?}",
        found.cautions
    );
    assert!(!found.findings.iter().any(|finding| finding.kind == Kind::SlotDropping));
}

#[test]
fn bad_rows_of_a_trial_are_set_aside_and_the_rest_is_judged() {
    let (profile, target) = ground();
    let mut text = String::from("speed_mph,vertical_break_in,glove_side_break_in,grip,wobble\n");
    for throw in 0..7 {
        let _ = writeln!(
            text,
            "{},-1.0,{},\"two-seam, light spike\",no",
            79.5 + 0.2 * f64::from(throw),
            13.0 + 0.3 * f64::from(throw)
        );
        let _ = writeln!(text, "{},-1.5,{},two-seam,YES", 79.5 + 0.2 * f64::from(throw), 5.0 + 0.3 * f64::from(throw));
    }
    text += "fast,-1,14,two-seam,no\n,-1,14,two-seam,no\n800,-1,14,two-seam,no\n80,-1,14,,maybe\n";
    let session = session(&text);
    assert_eq!(session.set_aside.len(), 3);
    let (attempts, cautions) = attempts(&session);
    assert_eq!(cautions, [trial::Caution::NoGrip { throws: 1 }]);
    let found = trial(&session.grips, &attempts, &profile, &target, 1);
    assert_eq!((found.verdict, found.grips[0].name.as_str()), (Verdict::Settled, "two-seam, light spike"));
    assert_eq!(found.grips.iter().map(|grip| grip.throws).collect::<Vec<_>>(), [7, 7]);
    assert!(found.grips[1].clean.wobble.is_some_and(|share| share.value > 0.99));
}

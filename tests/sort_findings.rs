//! Screening, and telling a unit that was moved from an arm that has changed.

use arsenalfit::athlete::session::{Place, Session};
use arsenalfit::ball::Family;
use arsenalfit::base::geometry::Hand;
use arsenalfit::files::{ColumnMap, ReadOptions, session_from_bytes};
use arsenalfit::former::demo::{Scenario, session, six_weeks, six_weeks_files};
use arsenalfit::throws::{Assignment, Cause, Caution, Options, Sorted, Treatment, sort};

/// Three ordinary days of the demo athlete.
fn ordinary() -> Session {
    let mut scenario = six_weeks();
    scenario.days[2].zero_in = [0.3, 0.2];
    session(&scenario)
}

fn sorted(session: &Session) -> Sorted {
    sort(session, Options::default())
}

#[test]
fn ordinary_days_are_left_as_measured() {
    let sorted = sorted(&ordinary());
    assert!(sorted.days.iter().all(|day| day.treatment == Treatment::AsMeasured), "{:?}", sorted.days);
    assert!(sorted.drifts.is_empty(), "{:?}", sorted.drifts);
    assert!(sorted.set_aside.is_empty(), "{:?}", sorted.set_aside);
}

#[test]
fn a_moved_unit_is_told_from_a_changed_arm() {
    let moved = |with_arm: bool| {
        let mut session = ordinary();
        for throw in session.throws.iter_mut().filter(|throw| throw.day == 2) {
            throw.shape.vertical_break_in -= 12.0;
            if with_arm {
                throw.release.height_ft = throw.release.height_ft.map(|feet| feet - 0.8);
            }
        }
        sorted(&session).days[2].clone()
    };
    let (unit, arm) = (moved(false), moved(true));
    assert_eq!((unit.treatment, unit.cause), (Treatment::Rezeroed, Some(Cause::Sensor)));
    assert!((unit.vertical_offset_in + 12.0).abs() < 1.0, "{unit:?}");
    assert_eq!(arm.cause, Some(Cause::Arm), "{arm:?}");
}

#[test]
fn a_sideways_zero_is_found_too() {
    let mut session = ordinary();
    session.throws.iter_mut().filter(|throw| throw.day == 1).for_each(|throw| throw.shape.glove_side_break_in += 14.0);
    let sorted = sorted(&session);
    assert_eq!(sorted.groups.len(), 4);
    let found: Vec<Treatment> = sorted.days.iter().map(|day| day.treatment).collect();
    assert_eq!(found, [Treatment::AsMeasured, Treatment::Rezeroed, Treatment::AsMeasured]);
}

#[test]
fn one_pitch_that_moves_on_its_own_is_the_arm() {
    let mut session = ordinary();
    let slider = session.labels.iter().position(|label| label == Family::Slider.name());
    for throw in session.throws.iter_mut().filter(|throw| throw.day == 2 && throw.label.map(usize::from) == slider) {
        throw.shape.vertical_break_in -= 6.0;
    }
    let sorted = sorted(&session);
    let [drift] = &sorted.drifts[..] else { panic!("one drift, not {:?}", sorted.drifts) };
    assert_eq!((drift.day, sorted.groups[drift.group].naming.family), (2, Family::Slider));
    assert!(drift.vertical_in.high < 0.0);
}

#[test]
fn movement_that_drifts_within_a_day_is_told() {
    let mut session = ordinary();
    let mut count = 0.0;
    for throw in session.throws.iter_mut().filter(|throw| throw.day == 1) {
        throw.shape.vertical_break_in += count * 0.04;
        count += 1.0;
    }
    let trend = sorted(&session).days[1].trend_in.expect("a drift of more than four inches");
    assert!((trend[0] - 4.4).abs() < 1.5, "{trend:?}");
}

#[test]
fn stuck_readings_doubles_lobs_and_outliers_are_set_apart() {
    let mut session = ordinary();
    let frozen = session.throws[20].shape;
    for throw in &mut session.throws[21..25] {
        throw.shape.vertical_break_in = frozen.vertical_break_in;
        throw.shape.glove_side_break_in = frozen.glove_side_break_in;
    }
    let twice = session.throws[50];
    session.throws.insert(60, arsenalfit::athlete::session::Throw { place: Place { file: 0, row: 9000 }, ..twice });
    session.throws[70].shape.speed_mph = 55.0;
    session.throws[80].shape.glove_side_break_in = 30.0;
    session.throws[90].shape.glove_side_break_in = 60.0;
    let sorted = sorted(&session);
    let kinds: Vec<&str> = sorted.set_aside.iter().map(|aside| aside.reason.kind()).collect();
    for (kind, count) in [("stuck reading", 5), ("duplicate", 1), ("lob or warm-up", 1), ("impossible movement", 1)] {
        assert_eq!(kinds.iter().filter(|found| **found == kind).count(), count, "{kind}: {kinds:?}");
    }
    assert_eq!(sorted.assignments[80], Assignment::Unsorted);
    assert_eq!(sorted.unsorted(), 1);
}

#[test]
fn too_little_to_sort_is_said_and_not_guessed() {
    let mut session = ordinary();
    session.throws.truncate(5);
    let none = sorted(&session);
    assert!(none.groups.is_empty(), "nothing is sorted");
    assert!(none.cautions.contains(&Caution::TooFew), "{:?}", none.cautions);
    session.throws.clear();
    assert!(sorted(&session).groups.is_empty());
}

#[test]
fn numbers_that_never_vary_do_not_break_the_sort() {
    let mut session = ordinary();
    let shape = session.throws[0].shape;
    for (index, throw) in session.throws.iter_mut().enumerate() {
        throw.shape = shape;
        throw.plate.side_in = Some(index as f64 / 10.0);
    }
    assert_eq!(sorted(&session).groups.len(), 1);
}

#[test]
fn a_short_bullpen_still_gives_its_pitches() {
    let mut scenario = Scenario { seed: 5, ..six_weeks() };
    scenario.days.truncate(1);
    scenario.days[0].throws = 40;
    let sorted = sorted(&session(&scenario));
    assert!((3..=4).contains(&sorted.groups.len()), "{}", sorted.groups.len());
    for group in &sorted.groups {
        assert!(group.speed_mph.half_width() > 0.2, "an interval of few throws is wide");
    }
}

/// The demo files as they are read and sorted: every planted fault comes out.
#[test]
fn the_demo_sessions_give_up_their_faults() {
    let files = six_weeks_files();
    let whole: String = files.iter().map(|(_, text)| text.as_str()).collect();
    let options = ReadOptions { map: ColumnMap::default(), hand: Some(Hand::Left), progress: &mut |_| {} };
    let session = session_from_bytes("demo", whole.as_bytes(), options).expect("demo files are sound");
    let sorted = sorted(&session);
    let families: Vec<Family> = sorted.groups.iter().map(|group| group.naming.family).collect();
    assert_eq!(families.len(), 4, "{families:?}");
    for family in [Family::FourSeam, Family::Slider, Family::Changeup, Family::Curveball] {
        assert!(families.contains(&family), "{families:?}");
    }
    assert_eq!(sorted.days[2].treatment, Treatment::Rezeroed);
    let mislabelled = sorted.agreement.expect("demo files have labels").disagreements;
    assert_eq!(mislabelled.iter().filter(|throw| throw.looks_mislabelled).count(), 9);
    let kinds: Vec<&str> = sorted.set_aside.iter().map(|aside| aside.reason.kind()).collect();
    for kind in ["impossible value", "duplicate", "lob or warm-up"] {
        assert!(kinds.contains(&kind), "{kinds:?}");
    }
}

/// `demo-data/` is what the generator makes. To write it anew: `WRITE_DEMO_DATA=1 cargo test --test sort_findings`.
#[test]
fn the_demo_data_in_the_repository_is_what_the_generator_makes() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data");
    for (name, text) in six_weeks_files() {
        let path = folder.join(name);
        if std::env::var_os("WRITE_DEMO_DATA").is_some() {
            std::fs::create_dir_all(&folder).expect("the folder is made");
            std::fs::write(&path, &text).expect("the file is written");
        }
        let kept = std::fs::read_to_string(&path).expect("demo data");
        assert!(kept == text, "{} is not what the generator makes; see above", path.display());
    }
}

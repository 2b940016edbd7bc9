//! The follow-through on the shipped demo: the trial knows its grip, the six weeks their fault.
//!
//! The files of `demo-data/` are invented by `demo-data/make_follow.py`, which says what is in them.

use std::path::{Path, PathBuf};

use std::num::NonZeroUsize;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::athlete::session::Session;
use arsenalfit::ball::spin::Spin;
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::geometry::{Clock, Hand};
use arsenalfit::decide::model::Model;
use arsenalfit::files::{ColumnMap, ReadOptions, profile_from_toml, read_sessions};
use arsenalfit::learn::cues::{self, Cue};
use arsenalfit::learn::plan::{Measured, Step, first_step};
use arsenalfit::learn::progress::{Kind, Progress, Severity, outings, progress};
use arsenalfit::learn::target::Target;
use arsenalfit::learn::trial::{DotFault, Trial, Verdict, attempts, trial};
use arsenalfit::learn::window::Window;

/// What progress is held against.
fn ground() -> (Profile, Target) {
    ground_about(Shape { speed_mph: 79.1, vertical_break_in: -1.5, glove_side_break_in: 13.0 })
}

fn ground_about(shape: Shape) -> (Profile, Target) {
    let text = include_str!("../profiles/three-quarter-right.toml");
    let profile = profile_from_toml(text, "profile.toml").unwrap_or_else(|error| panic!("{error}"));
    let spin = Spin { rpm: 2160.0, active_fraction: 0.4, clock: Clock::from_hours(8.77) };
    let mut target = Target::about(&Model::new(&profile, NonZeroUsize::MIN, 1), Family::Sweeper, shape).with_spin(spin);
    // Half widths of 1.5 mph, 4 in and 3 in, as wide as such arms differ.
    target.window = Window::about(shape, &[[2.25, 0.0, 0.0], [0.0, 16.0, 0.0], [0.0, 0.0, 9.0]]);
    (profile, target)
}

fn read(names: &[String]) -> Session {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data");
    let paths: Vec<PathBuf> = names.iter().map(|name| folder.join(name)).collect();
    let options = ReadOptions { map: ColumnMap::default(), hand: Some(Hand::Right), progress: &mut |_| {} };
    let session = read_sessions(&paths, options).unwrap_or_else(|error| panic!("{error}"));
    assert!(session.set_aside.is_empty(), "{:?}", session.set_aside);
    session
}

fn demo_trial() -> Trial {
    let session = read(&["trial-four-grips.csv".into()]);
    let (profile, target) = ground_about(Shape { speed_mph: 79.5, vertical_break_in: -2.5, glove_side_break_in: 13.5 });
    let (attempts, cautions) = attempts(&session);
    assert!(cautions.is_empty());
    trial(&session.grips, &attempts, &profile, &target, 1)
}

fn demo_progress(weeks: std::ops::RangeInclusive<usize>) -> Progress {
    let names: Vec<String> = weeks.map(|week| format!("progress-week-{week}.csv")).collect();
    let (profile, target) = ground();
    let (outings, cautions) = outings(&read(&names), &profile, &target, None);
    assert!(cautions.is_empty(), "{cautions:?}");
    progress(&outings, &profile, &target)
}

#[test]
fn the_trial_names_the_light_spike_and_says_what_is_wrong_with_the_others() {
    let trial = demo_trial();
    assert_eq!(trial.grips[0].name, "two-seam, middle finger inside seam, light spike");
    let spiked = trial.grips.iter().find(|grip| grip.name.contains("full spike")).expect("it was thrown");
    let said = cues::for_grip(spiked);
    assert!(said.contains(&Cue::DotWandering) && said.contains(&Cue::Wobble), "{said:?}");
    let four_seam = trial.grips.iter().find(|grip| grip.name.starts_with("four-seam")).expect("it was thrown");
    let faults = four_seam.dot.expect("spin was measured").faults();
    assert!(faults.contains(&DotFault::TooCentral), "{faults:?}");
    assert_eq!(trial.verdict, Verdict::Open, "eight throws a grip leave the first two close");
    let next = trial.next.expect("an open trial says what to throw");
    assert!(next.grip.starts_with("two-seam, middle finger") && next.more_throws.value < 60.0, "{next:?}");
}

#[test]
fn the_six_weeks_show_the_slot_dropping_first_and_the_shape_arriving_last() {
    let progress = demo_progress(1..=6);
    assert_eq!(progress.days.len(), 12);
    assert!(progress.must_stop());
    assert_eq!(progress.findings[0].kind, Kind::SlotDropping);
    assert!(progress.findings[0].since.is_some_and(|since| since.abs_diff(6) <= 1), "{:?}", progress.findings[0]);
    assert_eq!(progress.findings.last().map(|finding| finding.kind), Some(Kind::ShapeArrived));
    assert!(!progress.findings.iter().any(|finding| finding.kind == Kind::FastballSlower));
    let cue = cues::for_finding(progress.findings[0].kind, &progress.new_pitch);
    assert_eq!(cue, Some(Cue::SlotDropping));
}

#[test]
fn before_anything_goes_wrong_nothing_says_stop() {
    let progress = demo_progress(1..=3);
    assert!(!progress.must_stop(), "{:?}", progress.findings);
    assert!(progress.findings.iter().all(|finding| finding.severity > Severity::Watch), "{:?}", progress.findings);
}

#[test]
fn what_trial_and_progress_measured_tells_the_plan_where_to_begin() {
    let (_, target) = ground();
    let from_trial = Measured::from_trial(&demo_trial());
    assert!(from_trial.share_in_window.is_some() && from_trial.active_fraction_spread.is_some());
    assert_eq!(first_step(&target, &from_trial), Step::Effort, "{from_trial:?}");
    let both = from_trial.and(Measured::from_progress(&demo_progress(1..=3)));
    assert!(both.fastball_loss_mph.is_some() && both.slot_drop_deg.is_some() && both.command_in.is_some());
}

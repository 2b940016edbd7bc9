//! The page of `progress`: findings first, most serious first, then what comes next, then every
//! watched quantity and the new pitch from outing to outing, each against its band.

use crate::learn::progress::{KEY, OutingShape, Progress, State, Watch};

use super::super::charts::{Band, Moved, Picture, Table, band};
use super::super::follow::{Ground, finding_headline, no_such_label, one_line, progress_next, quantity, range};
use super::super::format::signed_range;
use super::super::learning::{doubts, finding_lines, over, set_aside};
use super::{Page, about};

/// The whole answer.
pub fn progress(ground: &Ground, progress: &Progress) -> String {
    let profile = ground.profile;
    let days: Vec<String> = progress.days.iter().map(|day| one_line(day)).collect();
    let headline = match progress.findings.first() {
        Some(finding) => format!("{}.", finding_headline(finding)),
        None if no_such_label(ground, progress).is_some() => format!("No throw is labelled {}.", ground.target.family),
        None => "Too little was thrown to say anything.".into(),
    };
    let mut page =
        Page::new(&profile.athlete.name, &headline, &format!("{}. {}", about(profile), over(ground, progress)));
    page.list("Before anything else", ground.bars.iter().map(ToString::to_string));
    for (place, finding) in progress.findings.iter().enumerate() {
        let lines = finding_lines(ground, progress, place);
        let lines = if lines.is_empty() { vec![finding.kind.to_string()] } else { lines };
        page.list(&finding_headline(finding), lines);
    }
    page.list("Next", progress_next(ground, progress));
    if !progress.watches.is_empty() {
        let watched = progress.watches.iter().map(|watch| watched(watch, &days));
        page.pictures("What it must not cost", "watch", watched);
        page.list("What these words mean", KEY.map(str::to_owned));
    }
    if !days.is_empty() {
        page.pictures(
            &format!("The {} from outing to outing", ground.target.family),
            "pitch",
            (0..3).map(|axis| new_pitch(ground, progress, &days, axis)),
        );
        page.table("In the window, and how it scatters at the plate", &landed(&days, &progress.new_pitch.by_outing));
    }
    page.list("Rows set aside", set_aside(ground.session));
    page.list("Keep in mind", doubts(ground));
    page.assumptions(profile);
    page.finish()
}

fn watched(watch: &Watch, days: &[String]) -> Picture {
    let (name, places) = quantity(watch.quantity);
    let matters = watch.quantity.matters();
    let moved = watch.change.map(|change| Moved { since: change.since, amount: signed_range(change.amount, places) });
    let state = watch.state().map_or("-", State::words);
    band(&Band {
        title: format!("{name}: {state}"),
        name: "profile",
        level: Some(watch.baseline),
        ends: (watch.baseline.value - matters, watch.baseline.value + matters),
        days,
        values: watch.by_outing.clone(),
        moved,
        places,
    })
}

/// The speed, the vertical or the glove-side break of the new pitch against its window.
fn new_pitch(ground: &Ground, progress: &Progress, days: &[String], axis: usize) -> Picture {
    let names = ["speed, mph", "vertical break, in", "glove-side break, in"];
    band(&Band {
        title: format!("{} {}", ground.target.family, names[axis]),
        name: "window",
        level: None,
        ends: ground.target.ranges()[axis],
        days,
        values: progress.new_pitch.by_outing.iter().map(|outing| outing.shape[axis]).collect(),
        moved: None,
        places: 1,
    })
}

fn landed(days: &[String], outings: &[OutingShape]) -> Table {
    let rows = days.iter().zip(outings).map(|(day, outing)| {
        vec![
            day.clone(),
            outing.throws.to_string(),
            outing.share_in_window.map_or("-".into(), |share| range(share.map(|share| 100.0 * share), 0)),
            outing.command_in.map_or("-".into(), |scatter| range(scatter, 0)),
        ]
    });
    Table::new(&["outing", "throws", "in window, %", "scatter, in"], rows.collect())
}

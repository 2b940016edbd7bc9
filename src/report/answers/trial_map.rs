//! The grips of a trial on the shape map, against the window as it is counted.

use crate::athlete::profile::Spread;
use crate::ball::{Family, Shape};
use crate::base::stats::Estimate;
use crate::learn::trial::{Grip, Trial};

use super::super::charts::{HALF, Ink, MapPitch, MapTarget, ShapeMap, inks};
use super::super::content::amount::movement;
use super::super::content::{InText, Picture, Table, name, say};
use super::super::words::grips::letter;
use super::dot::breaks;
use super::ground::Ground;

/// Every throw and the average of every grip; `numbers` are those behind it.
pub(crate) fn map(ground: &Ground, trial: &Trial, numbers: Table) -> Picture {
    let inks = grip_inks(trial, ground.target.family);
    let letters: Vec<String> = (0..trial.grips.len()).map(letter).collect();
    let grips = trial.grips.iter().zip(&letters).zip(&inks[1..]);
    let target = ground.target;
    let map = ShapeMap {
        title: "The grips against the window of the target".into(),
        hand: ground.profile.athlete.throws,
        pitches: grips.map(|((grip, letter), &ink)| map_pitch(grip, letter, ink, ground.target.spread)).collect(),
        target: Some(MapTarget {
            name: "target",
            ink: inks[0],
            shape: target.shape,
            contour: target.window.contour(),
            ranges: target.window.ranges(),
            line: "",
        }),
        throws: throws(ground, trial, &inks[1..]),
    };
    Picture {
        legend: "Seen by the pitcher; crosses stand 6 in apart. Small marks: throws. Large marks: the average of a grip; \
                 its ellipse reaches as far as the 90 % interval of the average along each axis. Dashed line: the window; \
                 a throw inside it counts when its speed is in the window too."
            .into(),
        description: description(ground, trial),
        table: numbers,
        in_text: InText::Table,
        ..map.picture()
    }
}

/// Marks for the grips: none of them looks like the target, whatever the number of grips.
fn grip_inks(trial: &Trial, target: Family) -> Vec<Ink> {
    let others = Family::ALL.into_iter().filter(|&family| family != target).cycle();
    inks([target].into_iter().chain(others.take(trial.grips.len())))
}

/// The average of a grip, with a spread whose ellipse on the map is the interval of the average.
fn map_pitch<'l>(grip: &Grip, letter: &'l str, ink: Ink, other: Spread) -> MapPitch<'l> {
    let reach = |estimate: Estimate| estimate.half_width() / HALF;
    let [mph, up, side] = [grip.speed_mph, grip.vertical_break_in, grip.glove_side_break_in];
    MapPitch {
        name: letter,
        ink,
        shape: Shape { speed_mph: mph.value, vertical_break_in: up.value, glove_side_break_in: side.value },
        spread: Spread {
            speed_mph: reach(mph),
            vertical_break_in: reach(up),
            glove_side_break_in: reach(side),
            ..other
        },
    }
}

fn throws(ground: &Ground, trial: &Trial, inks: &[Ink]) -> Vec<(Ink, Shape)> {
    let session = ground.session;
    let ink_of = |name: &str| trial.grips.iter().position(|grip| grip.name == name).map(|place| inks[place]);
    let of_grip = |grip: u16| session.grips.get(usize::from(grip)).and_then(|name| ink_of(name));
    session.throws.iter().filter_map(|throw| Some((of_grip(throw.grip?)?, throw.shape))).collect()
}

fn description(ground: &Ground, trial: &Trial) -> String {
    let grip = |(place, grip): (usize, &Grip)| {
        say!(
            "{} ({}): vertical break {}, glove-side break {}{}",
            letter(place),
            name(&grip.name),
            movement(grip.vertical_break_in).half(),
            movement(grip.glove_side_break_in).half(),
            format!(", {} of {} throws in the window", grip.in_window.hits, grip.throws)
        )
        .to_string()
    };
    let grips: Vec<String> = trial.grips.iter().enumerate().map(grip).collect();
    let target = breaks(ground.target.shape.vertical_break_in, ground.target.shape.glove_side_break_in);
    format!("Each grip\u{2019}s throws and average as the pitcher sees them. Target: {target}. {}.", grips.join("; "))
}

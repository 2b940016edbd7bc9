//! The facts that two athletes are laid side by side in.

use crate::athlete::profile::Pitch;
use crate::base::geometry::Side;
use crate::decide::compare::{Compared, Comparison, mean_command};

use super::super::content::amount::{feet, inches, movement, pure, runs, share, speed};
use super::super::content::{Column, Section, Table, Text, columns, name, row, text};
use super::super::words::sides::side_name;

/// Both, fact by fact, and what each throws.
pub(crate) fn facts(comparison: &Comparison) -> Section {
    let both = |what: String, read: &dyn Fn(&Compared) -> Text| {
        vec![what.into(), read(&comparison.both[0]), read(&comparison.both[1])]
    };
    let mut rows = vec![
        both("throws".into(), &|arm| arm.profile.athlete.throws.to_string().into()),
        both("slot, degrees".into(), &|arm| pure(arm.profile.release.slot_deg, 0).into()),
        both("release height".into(), &|arm| feet(arm.profile.release.height_ft).into()),
        both("release to the arm side".into(), &|arm| feet(arm.profile.release.side_ft).into()),
        both("command, in sideways / up and down".into(), &command),
        both("closest pair, movement".into(), &closest),
    ];
    for side in Side::BOTH {
        let allows = |arm: &Compared| runs(arm.usage.sides.on(side).best.runs_per_100).bare().into();
        rows.push(both(format!("allows {} hitters, runs per 100", side_name(side)), &allows));
        rows.push(both(format!("most used against {}", side_name(side)), &|arm| most_used(arm, side)));
    }
    let heads = comparison.both.iter().map(|arm| Column::from(arm.profile.athlete.name.as_str()));
    let pitches = comparison.both.iter().flat_map(|arm| arm.profile.pitches.iter().map(|pitch| shape(arm, pitch)));
    Section::new("Side by side, both as right-handers")
        .table(Table::new(columns![""].into_iter().chain(heads), rows))
        .table(Table::new(columns!["pitch", "mph", "vertical, in", "glove side, in"], pitches))
}

fn shape(arm: &Compared, pitch: &Pitch) -> Vec<Text> {
    row![
        text![name(&arm.profile.athlete.name), ": ", name(&pitch.name)],
        speed(pitch.shape.speed_mph).bare(),
        movement(pitch.shape.vertical_break_in).bare(),
        movement(pitch.shape.glove_side_break_in).bare(),
    ]
}

fn command(arm: &Compared) -> Text {
    let [side, height] = mean_command(arm.profile);
    text![pure(side, 1), " / ", pure(height, 1)]
}

fn closest(arm: &Compared) -> Text {
    let least = arm.pairs.iter().min_by(|a, b| a.movement_in.total_cmp(&b.movement_in));
    let pitch = |index: usize| name(&arm.profile.pitches[index].name);
    let said = |pair: &crate::decide::apart::Pair| {
        text![inches(pair.movement_in), " (", pitch(pair.pitches.0), " / ", pitch(pair.pitches.1), ")"]
    };
    least.map(said).into()
}

fn most_used(arm: &Compared, side: Side) -> Text {
    let pitches = arm.profile.pitches.iter().zip(&arm.usage.sides.on(side).best.pitches);
    let most = pitches.max_by(|a, b| a.1.share.total_cmp(&b.1.share));
    most.map(|(pitch, outlook)| text![name(&pitch.name), " ", share(outlook.share)]).into()
}

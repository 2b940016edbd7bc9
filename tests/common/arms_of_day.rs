//! The mean shapes of real arms: one day of the top league, by pitcher and label.
//!
//! Data: `tests/data/league_day.csv`, 4,418 pitches of 15 games, from the tests of the R package abdwr3edata, companion
//! of *Analyzing Baseball Data with R*, 3rd edition (Marchi, Albert, Baumer); CC0. Names removed, everything turned so
//! that every pitcher is a right-hander.

use std::collections::BTreeMap;

use arsenalfit::athlete::natural::Known;
use arsenalfit::ball::{Family, Shape};
use serde::Deserialize;

use crate::natural_fit::ArmMeans;

#[derive(Debug, Deserialize)]
struct Row {
    pitcher: u32,
    pitch: String,
    speed_mph: f64,
    release_height_ft: f64,
    release_side_ft: f64,
    spin_rpm: Option<f64>,
    vertical_break_in: f64,
    glove_side_break_in: f64,
}

/// Every arm of the day.
pub(crate) fn arms() -> Vec<ArmMeans> {
    let mut reader = csv::Reader::from_reader(&include_bytes!("../data/league_day.csv")[..]);
    let mut pitchers: BTreeMap<u32, Vec<Row>> = BTreeMap::new();
    for row in reader.deserialize::<Row>() {
        let row = row.expect("a sound row");
        pitchers.entry(row.pitcher).or_default().push(row);
    }
    pitchers.values().map(|rows| arm(rows)).collect()
}

fn arm(rows: &[Row]) -> ArmMeans {
    let mut by_label: BTreeMap<&str, Vec<&Row>> = BTreeMap::new();
    for row in rows {
        by_label.entry(&row.pitch).or_default().push(row);
    }
    ArmMeans {
        height_ft: mean(rows.iter().map(|row| row.release_height_ft)).expect("throws"),
        side_ft: mean(rows.iter().map(|row| row.release_side_ft)).expect("throws"),
        pitches: by_label.into_iter().filter_map(|(label, rows)| pitch(Family::from_name(label)?, &rows)).collect(),
    }
}

fn pitch(family: Family, rows: &[&Row]) -> Option<Known> {
    let of = |read: fn(&Row) -> f64| mean(rows.iter().map(|row| read(row)));
    let shape = Shape {
        speed_mph: of(|row| row.speed_mph)?,
        vertical_break_in: of(|row| row.vertical_break_in)?,
        glove_side_break_in: of(|row| row.glove_side_break_in)?,
    };
    let spin_rpm = mean(rows.iter().filter_map(|row| row.spin_rpm));
    Some(Known { family, shape, spin_rpm, throws: u32::try_from(rows.len()).ok()? })
}

fn mean(values: impl Iterator<Item = f64>) -> Option<f64> {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    (count > 0.0).then(|| sum / count)
}

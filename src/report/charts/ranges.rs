//! Estimates with their intervals, one under the other, and what each one asks.
//!
//! Used for the worth of each family, of one pitch to two athletes, of every change, and for a ranked roster. The
//! shaded band is what counts as nothing; stones to the right count effort, one a unit, the last
//! cut to the part.

use crate::base::stats::Estimate;
use crate::decide::verdict::TRY;

use super::super::content::amount::runs;
use super::super::content::{InText, Picture, Table};
use super::super::number::{plain, signed};
use super::super::svg::Tag;
use super::marks::Ink;
use super::scale::{Scale, range_of};
use super::sheet::{WIDTH, sheet, short};

/// One line of the picture.
#[derive(Debug, Clone)]
pub(crate) struct RangeRow {
    /// What it is about.
    pub(crate) name: String,
    /// How it is marked.
    pub(crate) ink: Ink,
    /// Runs saved, as the axis counts them; nothing when out of reach.
    pub(crate) worth: Option<Estimate>,
    /// Effort in units.
    pub(crate) effort: f64,
    /// A word beside the name.
    pub(crate) note: String,
}

const ROW: f64 = 50.0;
const TOP: f64 = 32.0;
const BOTTOM: f64 = 26.0;
const TRACK: (f64, f64) = (16.0, 268.0);
/// Where stones begin, the side of one, and the most that are drawn.
const STONES: f64 = 296.0;
const STONE: f64 = 10.0;
const MOST_STONES: f64 = 4.0;

/// What the axis counts.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Axis {
    /// Said above it.
    pub(crate) words: &'static str,
    /// Up to how much counts as nothing.
    pub(crate) nothing: f64,
    /// Decimals of a value.
    pub(crate) places: usize,
}

impl Axis {
    /// Runs saved per 100 pitches.
    pub(crate) const PER_100: Self = Self { words: "runs saved per 100 pitches", nothing: TRY, places: 2 };
}

/// The rows under a title, in runs per 100 pitches, with their table.
pub(crate) fn ranges(title: String, rows: &[RangeRow], legend: &str, table: Table) -> Picture {
    ranges_on(Axis::PER_100, title, rows, legend, table)
}

/// The rows on an axis of their own, with their table.
pub(crate) fn ranges_on(axis: Axis, title: String, rows: &[RangeRow], legend: &str, table: Table) -> Picture {
    let height = TOP + ROW * rows.len() as f64 + BOTTOM;
    let ends = rows.iter().filter_map(|row| row.worth).flat_map(|worth| [worth.low, worth.high]);
    let (low, high) = range_of(ends.chain([-axis.nothing, 2.0 * axis.nothing]));
    let free = 0.02 * (high - low);
    let scale = Scale::new((low - free, high + free), TRACK);
    let mut drawing = sheet(height);
    drawing.add_all(ground(axis, &scale, height));
    for (index, row) in rows.iter().enumerate() {
        drawing.add_all(line(axis, row, TOP + ROW * index as f64, &scale));
    }
    Picture {
        title: title.into(),
        description: description(axis, rows),
        drawing,
        legend: legend.into(),
        table,
        in_text: InText::Nothing,
    }
}

fn description(axis: Axis, rows: &[RangeRow]) -> String {
    let says = |row: &RangeRow| {
        let worth = row.worth.map_or("out of reach".into(), |worth| runs(worth).places(axis.places).figures());
        format!("{}: {worth}", row.name)
    };
    let all: Vec<String> = rows.iter().map(says).collect();
    format!("In {}, with 90 % intervals. {}.", axis.words, all.join("; "))
}

fn ground(axis: Axis, scale: &Scale, height: f64) -> Vec<Tag> {
    let (top, bottom) = (TOP - 4.0, height - BOTTOM + 4.0);
    let (left, right) = (scale.at(-axis.nothing), scale.at(axis.nothing));
    let mut tags = vec![Tag::rect((left, top), (right - left, bottom - top)).class("trifle")];
    let ticks = scale.ticks();
    let places = (axis.places - 1) + usize::from(ticks.iter().any(|&tick| is_fine(axis, tick)));
    for tick in ticks {
        let x = scale.at(tick);
        tags.push(Tag::line((x, top), (x, bottom)).class(if tick.abs() < 1e-9 { "hair on" } else { "hair" }));
        tags.push(Tag::text((x, height - 9.0), &signed(tick, places)).class("small mid"));
    }
    tags.push(Tag::text((TRACK.0, 19.0), axis.words).class("edge"));
    tags.push(Tag::text((WIDTH - 10.0, 19.0), "effort").class("edge end"));
    tags
}

/// Whether a tick needs as many decimals as a value.
fn is_fine(axis: Axis, tick: f64) -> bool {
    let coarse = if axis.places > 1 { 10.0 } else { 1.0 };
    ((tick * coarse).round() - tick * coarse).abs() > 1e-6
}

fn line(axis: Axis, row: &RangeRow, top: f64, scale: &Scale) -> Vec<Tag> {
    let words = top + 16.0;
    let y = top + 34.0;
    let note = Tag::span(&format!("  {}", short(&row.note, 20))).class("small");
    let mut tags = vec![Tag::text((TRACK.0, words), &short(&row.name, 22)).child(note).class("name")];
    let Some(worth) = row.worth else {
        tags.push(Tag::text((TRACK.0, y + 4.0), "out of reach").class("small"));
        return tags;
    };
    let (low, value, high) = (scale.at(worth.low), scale.at(worth.value), scale.at(worth.high));
    tags.push(Tag::line((low, y), (high, y)).class(&format!("reach {}", row.ink.stroke())));
    tags.push(row.ink.at((value, y), 7.0));
    tags.push(Tag::text((WIDTH - 10.0, words), &signed(worth.value, axis.places)).class("figures end"));
    if row.effort > 0.0 {
        tags.extend(stones(row.effort, y));
    }
    tags
}

fn stones(effort: f64, y: f64) -> Vec<Tag> {
    let mut tags = Vec::new();
    let (mut left, mut rest) = (STONES, effort.clamp(0.0, MOST_STONES));
    while rest > 0.04 {
        let part = rest.min(1.0);
        tags.push(Tag::rect((left, y - STONE / 2.0), (STONE * part, STONE)).class("stone"));
        rest -= part;
        left += STONE + 2.0;
    }
    tags.push(Tag::text((WIDTH - 10.0, y + 4.0), &plain(effort, 1)).class("small end"));
    tags
}

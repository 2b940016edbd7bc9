//! Use against one side: what is customary with the band that holds four pitchers in five, what the profile tells, and
//! what is recommended.

use crate::base::stats::Estimate;

use super::super::content::amount::share;
use super::super::content::{InText, Picture, Table, Text};
use super::super::svg::Tag;
use super::marks::Ink;
use super::scale::{Scale, range_of};
use super::sheet::{WIDTH, sheet, short};

/// How often one pitch is thrown, shares from 0 to 1.
#[derive(Debug, Clone)]
pub(crate) struct ShareRow<'a> {
    /// What it is called.
    pub(crate) name: &'a str,
    /// How it is drawn.
    pub(crate) ink: Ink,
    /// What is customary, with its band.
    pub(crate) custom: Estimate,
    /// What the profile tells.
    pub(crate) told: Option<f64>,
    /// What is recommended.
    pub(crate) recommended: f64,
}

const ROW: f64 = 36.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 26.0;
const TRACK: (f64, f64) = (112.0, 316.0);
/// Half the height of a band and of the line at what is customary.
const BAND: f64 = 7.0;
const LINE: f64 = 10.0;

/// The rows under a title, with their table.
pub(crate) fn shares(title: impl Into<Text>, rows: &[ShareRow], legend: &str, table: Table) -> Picture {
    let height = TOP + ROW * rows.len() as f64 + BOTTOM;
    let all = rows.iter().flat_map(|row| [row.custom.high, row.recommended, row.told.unwrap_or(0.0)]);
    let most = (range_of(all).1 * 5.0).ceil().clamp(2.0, 5.0) / 5.0;
    let scale = Scale::new((0.0, most), TRACK);
    let mut drawing = sheet(height);
    for tick in (0..=5).map(|step| f64::from(step) * 0.2).filter(|&tick| tick <= most + 1e-9) {
        let x = scale.at(tick);
        drawing.add(Tag::line((x, TOP), (x, height - BOTTOM + 4.0)).class("hair"));
        drawing.add(Tag::text((x, height - 9.0), &share(tick).figures()).class("small mid"));
    }
    for (index, row) in rows.iter().enumerate() {
        drawing.add_all(line(row, TOP + ROW * (index as f64 + 0.5), &scale));
    }
    Picture {
        title: title.into(),
        description: format!("{}.", rows.iter().map(said).collect::<Vec<String>>().join("; ")),
        drawing,
        legend: legend.into(),
        table,
        in_text: InText::Table,
    }
}

fn said(row: &ShareRow) -> String {
    let told = row.told.map_or(String::new(), |told| format!(", told {}", share(told).figures()));
    let (custom, recommended) = (share(row.custom).figures(), share(row.recommended).figures());
    format!("{}: customary {custom}{told}, recommended {recommended}", row.name)
}

fn line(row: &ShareRow, y: f64, scale: &Scale) -> Vec<Tag> {
    let (low, high) = (scale.at(row.custom.low), scale.at(row.custom.high));
    let custom = scale.at(row.custom.value);
    let mut tags = vec![
        row.ink.at((17.0, y), 6.0),
        Tag::text((30.0, y + 4.0), &short(row.name, 12)).class("name"),
        Tag::rect((low, y - BAND), (high - low, 2.0 * BAND)).class("trifle"),
        Tag::line((custom, y - LINE), (custom, y + LINE)).class("post"),
    ];
    tags.extend(row.told.map(|told| row.ink.hollow_at((scale.at(told), y), 6.5)));
    tags.push(row.ink.at((scale.at(row.recommended), y), 7.0));
    tags.push(Tag::text((WIDTH - 10.0, y + 4.0), &share(row.recommended).figures()).class("figures end"));
    tags
}

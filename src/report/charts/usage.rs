//! Usage before and after: each pitch walks from its old share to its new one.

use super::super::content::amount::share;
use super::super::content::{InText, Picture, Table, Text};
use super::super::svg::Tag;
use super::marks::Ink;
use super::scale::{Scale, range_of};
use super::sheet::{WIDTH, sheet, short};

/// One pitch's share before and after; nothing before when it is new or unknown.
#[derive(Debug, Clone)]
pub(crate) struct Change<'a> {
    /// What it is called.
    pub(crate) name: &'a str,
    /// How it is drawn.
    pub(crate) ink: Ink,
    /// Share before, 0 to 1.
    pub(crate) before: Option<f64>,
    /// Share after, 0 to 1.
    pub(crate) after: f64,
}

/// Height of a row, of the words above and of the scale below.
const ROW: f64 = 36.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 26.0;
/// Where the track begins and ends.
const TRACK: (f64, f64) = (112.0, 252.0);

/// The changes under a title, with the table of what comes of each pitch behind them.
pub(crate) fn usage_change(title: impl Into<Text>, changes: &[Change], legend: &str, table: Table) -> Picture {
    let height = TOP + ROW * changes.len() as f64 + BOTTOM;
    let most = range_of(changes.iter().flat_map(|change| [change.after, change.before.unwrap_or(0.0)])).1;
    let ends = (0.0, (most * 10.0).ceil().max(4.0) / 10.0);
    let scale = Scale::new(ends, TRACK);
    let mut drawing = sheet(height);
    let twenties = (0..=5).map(|step| f64::from(step) * 0.2).filter(|&share| share <= ends.1 + 1e-9);
    for tick in twenties {
        let x = scale.at(tick);
        drawing.add(Tag::line((x, TOP), (x, height - BOTTOM + 4.0)).class("hair"));
        drawing.add(Tag::text((x, height - 9.0), &share(tick).figures()).class("small mid"));
    }
    for (index, change) in changes.iter().enumerate() {
        drawing.add_all(row(change, TOP + ROW * (index as f64 + 0.5), &scale));
    }
    let words: Vec<String> = changes.iter().map(|change| format!("{} {}", change.name, shares(change))).collect();
    Picture {
        description: format!("Shares of each pitch. {}.", words.join("; ")),
        title: title.into(),
        drawing,
        legend: legend.into(),
        table,
        in_text: InText::Nothing,
    }
}

fn shares(change: &Change) -> String {
    match change.before {
        Some(before) => format!("{} \u{2192} {}", share(before).figures(), share(change.after).figures()),
        None => share(change.after).figures(),
    }
}

fn row(change: &Change, y: f64, scale: &Scale) -> Vec<Tag> {
    let to = scale.at(change.after);
    let mut tags = vec![
        change.ink.at((17.0, y), 6.0),
        Tag::text((30.0, y + 4.0), &short(change.name, 12)).class("name"),
        Tag::line((TRACK.0, y), (TRACK.1, y)).class("track"),
    ];
    if let Some(before) = change.before {
        let from = scale.at(before);
        if (to - from).abs() > 3.0 {
            tags.push(Tag::line((from, y), (to, y)).class(&format!("walk {}", change.ink.stroke())));
        }
        tags.push(change.ink.hollow_at((from, y), 6.5));
    }
    tags.push(change.ink.at((to, y), 7.5));
    tags.push(Tag::text((WIDTH - 10.0, y + 4.0), &shares(change)).class("figures end"));
    tags
}

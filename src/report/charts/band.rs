//! One quantity from outing to outing against a band it should stay in.
//!
//! The band is what does not matter about the profile's value, or the window of a shape. Each
//! outing is a mark with its interval; from the outing since which the quantity moved, a post
//! stands and the marks change their shape, so that the change is read without its colour.

use crate::base::Range;
use crate::base::stats::Estimate;

use super::super::content::amount::pure;
use super::super::content::{InText, Picture, Table, columns, name, row};
use super::super::number::plain;
use super::super::svg::{Point, Tag};
use super::scale::{Scale, range_of};
use super::sheet::{WIDTH, sheet, short};

/// What one picture shows.
#[derive(Debug, Clone)]
pub(crate) struct Band<'a> {
    /// The quantity with its unit.
    pub(crate) title: String,
    /// What the band is, such as "profile".
    pub(crate) name: &'a str,
    /// The profile's value; nothing for a window.
    pub(crate) level: Option<Estimate>,
    /// The band itself.
    pub(crate) ends: Range,
    /// The outings as they are called, in order.
    pub(crate) days: &'a [String],
    /// The value of each; nothing where it was not measured.
    pub(crate) values: Vec<Option<Estimate>>,
    /// The change, when there is one.
    pub(crate) moved: Option<Moved>,
    /// Decimals.
    pub(crate) places: usize,
}

/// A change in words and where it began.
#[derive(Debug, Clone)]
pub(crate) struct Moved {
    /// The outing since which it moved.
    pub(crate) since: usize,
    /// By how much, in words.
    pub(crate) amount: String,
}

const HEIGHT: f64 = 158.0;
const ACROSS: (f64, f64) = (62.0, 338.0);
const DOWN: (f64, f64) = (126.0, 32.0);

/// The picture with its table.
pub(crate) fn band(band: &Band) -> Picture {
    let known = band.values.iter().flatten().flat_map(|value| [value.low, value.high]);
    let (low, high) = range_of(known.chain([band.ends.low, band.ends.high]));
    let pad = 0.06 * (high - low);
    let upright = Scale::new((low - pad, high + pad), DOWN);
    let across = Scale::new((0.0, band.days.len().saturating_sub(1) as f64), ACROSS);
    let mut drawing = sheet(HEIGHT);
    drawing.add_all(ground(band, &upright));
    drawing.add_all(ends(band, &across));
    drawing.add_all(post(band, &across));
    for (place, value) in band.values.iter().enumerate() {
        let moved = band.moved.as_ref().is_some_and(|moved| place >= moved.since);
        drawing.add_all(value.iter().flat_map(|&value| outing(value, across.at(place as f64), &upright, moved)));
    }
    Picture {
        title: band.title.clone().into(),
        description: description(band),
        drawing,
        legend: legend(band),
        table: table(band),
        in_text: InText::Nothing,
    }
}

/// The band, its level and the scale beside it.
fn ground(band: &Band, upright: &Scale) -> Vec<Tag> {
    let (top, bottom) = (upright.at(band.ends.high), upright.at(band.ends.low));
    let (left, right) = (ACROSS.0 - 12.0, WIDTH - 10.0);
    let mut tags = vec![Tag::rect((left, top), (right - left, bottom - top)).class("trifle")];
    let ticks = upright.ticks();
    let fine = ticks.iter().any(|tick| ((tick * 10.0).round() - tick * 10.0).abs() > 1e-6);
    for tick in ticks {
        let y = upright.at(tick);
        tags.push(Tag::line((left, y), (right, y)).class("hair"));
        tags.push(Tag::text((left - 6.0, y + 4.0), &plain(tick, 1 + usize::from(fine))).class("small end"));
    }
    if let Some(level) = band.level {
        let y = upright.at(level.value);
        tags.push(Tag::line((left, y), (right, y)).class("tie"));
    }
    tags
}

/// The first and the last day below.
fn ends(band: &Band, across: &Scale) -> Vec<Tag> {
    let y = HEIGHT - 10.0;
    match band.days {
        [] => Vec::new(),
        [day] => vec![Tag::text((across.at(0.0), y), &short(day, 18)).class("small mid")],
        [first, .., last] => vec![
            Tag::text((ACROSS.0 - 12.0, y), &short(first, 18)).class("small"),
            Tag::text((WIDTH - 10.0, y), &short(last, 18)).class("small end"),
        ],
    }
}

/// Where the movement began.
fn post(band: &Band, across: &Scale) -> Vec<Tag> {
    let Some(moved) = &band.moved else { return Vec::new() };
    let step = if band.days.len() > 1 { across.at(1.0) - across.at(0.0) } else { 0.0 };
    let x = (across.at(moved.since as f64) - 0.5 * step).max(ACROSS.0 - 10.0);
    let day = band.days.get(moved.since).map_or(String::new(), |day| short(day, 18));
    let (at, class) = if x > WIDTH / 2.0 { (x - 5.0, "figures end") } else { (x + 5.0, "figures") };
    vec![
        Tag::line((x, 8.0), (x, DOWN.0 + 8.0)).class("since"),
        Tag::text((at, 18.0), &format!("moved since {day}")).class(class),
    ]
}

fn outing(value: Estimate, x: f64, upright: &Scale, moved: bool) -> Vec<Tag> {
    let [low, middle, high] = [value.low, value.value, value.high].map(|value| upright.at(value));
    let bar = Tag::line((x, low), (x, high)).class(if moved { "span moved" } else { "span" });
    vec![bar, if moved { diamond((x, middle)) } else { Tag::circle((x, middle), 4.2).class("mk still") }]
}

fn diamond((x, y): Point) -> Tag {
    Tag::polygon(&[(x, y - 6.5), (x + 6.0, y), (x, y + 6.5), (x - 6.0, y)]).class("mk dot")
}

fn legend(band: &Band) -> String {
    let grey = match band.level {
        Some(_) => format!("Grey band: too near the {} to matter; dashed: the {0}.", band.name),
        None => format!("Grey band: the {}.", band.name),
    };
    let moved = if band.moved.is_some() { " Diamonds, right of the post: since it moved." } else { "" };
    format!("Disc: an outing\u{2019}s average; bar: 90 % interval. {grey}{moved}")
}

fn show(value: Estimate, places: usize) -> String {
    pure(value, places).figures()
}

fn limits(band: &Band) -> String {
    pure(band.ends, band.places).figures()
}

fn description(band: &Band) -> String {
    let known = band.values.iter().zip(band.days).filter_map(|(value, day)| Some((day, (*value)?)));
    let said: Vec<String> = known.map(|(day, value)| format!("{day}: {}", show(value, band.places))).collect();
    let moved = band.moved.as_ref().map_or("no change found".into(), |moved| {
        let day = band.days.get(moved.since).map_or("", String::as_str);
        format!("moved since {day} by {}", moved.amount)
    });
    let said = if said.is_empty() { "no outing measured it".into() } else { said.join("; ") };
    format!("{} by outing, against {} ({}). {said}. It is judged: {moved}.", band.title, limits(band), band.name)
}

fn table(band: &Band) -> Table {
    let told = |value: Estimate| pure(value, band.places);
    let level = band.level.map_or_else(|| pure(band.ends, band.places), told);
    let mut rows = vec![row![band.name, level, ""]];
    if band.level.is_some() {
        rows.push(row!["does not matter", limits(band), ""]);
    }
    rows.extend(band.days.iter().zip(&band.values).enumerate().map(|(place, (day, value))| {
        let began = band.moved.as_ref().filter(|moved| moved.since == place);
        let note = began.map_or(String::new(), |moved| format!("moved since: {}", moved.amount));
        row![name(day), value.map(told), note]
    }));
    Table::new(columns!["outing", "average", ""], rows)
}

//! The weeks of a plan from left to right: what is thrown in each, and which step it belongs to.
//!
//! A bar is a week's throws, its filled foot the throws of the new pitch. The strip below carries
//! the number of the step beside its colour, a rest stays an empty gap, and a lighter week has a
//! ring above it.

use jiff::civil::Date;

use crate::base::Range;

use super::super::content::amount::pure;
use super::super::content::{InText, Picture, Table, columns, row, text};
use super::super::svg::Tag;
use super::scale::Scale;
use super::sheet::sheet;

/// A week, or the part of one that belongs to a step.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Week {
    /// First day.
    pub(crate) from: Date,
    /// Number of the step from 0; nothing in a rest.
    pub(crate) step: Option<usize>,
    /// Name of the step.
    pub(crate) name: &'static str,
    /// Days with throws.
    pub(crate) days: usize,
    /// Throws on one of them: the fewest and the most.
    pub(crate) daily: Range,
    /// All throws.
    pub(crate) throws: u32,
    /// Those of the new pitch.
    pub(crate) new: u32,
    /// Whether it is a lighter one.
    pub(crate) lighter: bool,
}

const HEIGHT: f64 = 226.0;
const ACROSS: (f64, f64) = (46.0, 350.0);
const DOWN: (f64, f64) = (158.0, 44.0);
const STRIP: (f64, f64) = (164.0, 28.0);

/// The strip under its bars, with the table of the weeks; `last` is the last day.
pub(crate) fn calendar(title: String, weeks: &[Week], last: Date) -> Picture {
    let most = weeks.iter().map(|week| week.throws).max().unwrap_or(0);
    let upright = Scale::new((0.0, f64::from(most.max(10))), DOWN);
    let mut drawing = sheet(HEIGHT);
    drawing.add_all(ground(&upright));
    let wide = (ACROSS.1 - ACROSS.0) / weeks.len().max(1) as f64;
    for (place, week) in weeks.iter().enumerate() {
        drawing.add_all(bar(week, ACROSS.0 + wide * place as f64, wide, &upright));
    }
    drawing.add_all(strip(weeks, wide));
    if let Some(first) = weeks.first() {
        drawing.add(Tag::text((ACROSS.0, HEIGHT - 12.0), &first.from.to_string()).class("small"));
        drawing.add(Tag::text((ACROSS.1, HEIGHT - 12.0), &last.to_string()).class("small end"));
    }
    Picture {
        title: title.into(),
        description: description(weeks),
        drawing,
        legend: legend(weeks),
        table: table(weeks),
        in_text: InText::Table,
    }
}

fn ground(upright: &Scale) -> Vec<Tag> {
    let mut tags = vec![Tag::text((12.0, 19.0), "throws in a week").class("edge")];
    for tick in upright.ticks() {
        let y = upright.at(tick);
        tags.push(Tag::line((ACROSS.0, y), (ACROSS.1, y)).class(if tick < 0.5 { "hair on" } else { "hair" }));
        tags.push(Tag::text((ACROSS.0 - 6.0, y + 4.0), &format!("{tick:.0}")).class("small end"));
    }
    tags
}

fn bar(week: &Week, left: f64, wide: f64, upright: &Scale) -> Vec<Tag> {
    let Some(step) = week.step else { return Vec::new() };
    let inset = 0.14 * wide;
    let (left, thick) = (left + inset, wide - 2.0 * inset);
    let (all, new, floor) = (upright.at(f64::from(week.throws)), upright.at(f64::from(week.new)), DOWN.0);
    let ring = week.lighter.then(|| {
        Tag::circle((left + thick / 2.0, all - 7.0), (thick / 3.0).clamp(1.5, 3.5)).class(&format!("hollow s{step}"))
    });
    [
        Tag::rect((left, all), (thick, floor - all)).class(&format!("hollow s{step}")),
        Tag::rect((left, new), (thick, floor - new)).class(&format!("f{step}")),
    ]
    .into_iter()
    .chain(ring)
    .collect()
}

/// One block for each run of weeks in the same step.
fn strip(weeks: &[Week], wide: f64) -> Vec<Tag> {
    let (mut tags, mut place) = (Vec::new(), 0);
    for run in weeks.chunk_by(|a, b| a.step == b.step) {
        let (left, width) = (ACROSS.0 + wide * place as f64, wide * run.len() as f64);
        place += run.len();
        let Some(step) = run[0].step else { continue };
        let block = Tag::rect((left + 1.0, STRIP.0), ((width - 2.0).max(1.0), STRIP.1)).set("rx", "4");
        tags.push(block.class(&format!("f{step} pale s{step}")));
        tags.push(Tag::text((left + width / 2.0, STRIP.0 + 18.5), &(step + 1).to_string()).class("name mid"));
    }
    tags
}

fn legend(weeks: &[Week]) -> String {
    let steps = weeks.chunk_by(|a, b| a.step == b.step).filter_map(|run| Some((run[0].step? + 1, run[0].name)));
    let mut names: Vec<String> = steps.map(|(number, name)| format!("{number} {name}")).collect();
    names.dedup();
    let rest = if weeks.iter().any(|week| week.step.is_none()) { " Gap: no throwing at all." } else { "" };
    let lighter = if weeks.iter().any(|week| week.lighter) { " Ring: a lighter week." } else { "" };
    format!("Whole bar: all throws; filled: the new pitch.{lighter}{rest} Steps: {}.", names.join(", "))
}

fn description(weeks: &[Week]) -> String {
    let runs = weeks.chunk_by(|a, b| a.step == b.step).map(|run| {
        let (low, high) = (run.iter().map(|week| week.throws).min(), run.iter().map(|week| week.throws).max());
        let (low, high) = (low.unwrap_or(0), high.unwrap_or(0));
        let weeks = if run.len() == 1 { "1 week".to_owned() } else { format!("{} weeks", run.len()) };
        match run[0].step {
            Some(_) => format!("{} from {}, {weeks} of {low} to {high} throws", run[0].name, run[0].from),
            None => format!("rest from {}, {weeks}", run[0].from),
        }
    });
    format!("The plan week by week. {}.", runs.collect::<Vec<String>>().join("; "))
}

fn table(weeks: &[Week]) -> Table {
    let rows = weeks.iter().map(|week| {
        let number = week.step.map_or(String::new(), |step| format!("{} ", step + 1));
        let note = if week.lighter { ", lighter" } else { "" };
        let daily = week.step.map(|_| text![pure(week.daily, 0), note]);
        row![week.from, format!("{number}{}", week.name), week.days, daily, week.throws, week.new]
    });
    Table::new(columns!["week from", "step", "days", "each day", "throws", "new"], rows).with_words(2)
}

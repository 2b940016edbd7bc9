//! Forks: how two pitches, each thrown to where it is aimed, come apart on the way to the plate.
//!
//! The handle is the hand; time runs to the right, evenly, until the faster of the two arrives. The width is the distance
//! between the two balls at that moment, across the line to the plate; all forks have one scale. The post is the moment
//! when the hitter must decide on the faster one.

use crate::decide::apart::{Pair, Parting, Seen};

use super::super::content::{InText, Picture, Table, Text};
use super::super::number::plain;
use super::super::svg::{Point, Tag};
use super::marks::Ink;
use super::scale::Scale;
use super::sheet::{sheet, short};

const ROW: f64 = 92.0;
const TOP: f64 = 26.0;
/// Where the hand is and where the faster ball arrives.
const FLIGHT: (f64, f64) = (26.0, 262.0);
/// Most a tine may leave the middle.
const HALF: f64 = 30.0;

/// Pairs as hitters of one side meet them: each with how it parts and what is seen of it.
pub(crate) fn forks(
    title: impl Into<Text>,
    pairs: &[(&Pair, &Parting, Seen)],
    names: &[&str],
    inks: &[Ink],
    table: Table,
) -> Picture {
    let height = TOP + ROW * pairs.len() as f64 + 8.0;
    let widest = pairs.iter().flat_map(|(_, parting, _)| parting.gaps_in.iter().copied()).fold(6.0, f64::max);
    let mut drawing = sheet(height);
    drawing.add(Tag::text((FLIGHT.0 - 12.0, 17.0), "hand").class("edge"));
    drawing.add(Tag::text((FLIGHT.1, 17.0), "plate").class("edge mid"));
    for (index, (_, parting, seen)) in pairs.iter().enumerate() {
        let middle = TOP + ROW * (index as f64 + 0.5) + 6.0;
        let fork = Fork { parting, seen, middle, per_inch: HALF / widest * 2.0 };
        drawing.add_all(fork.tags(names, inks, index == 0));
    }
    Picture {
        title: title.into(),
        description: description(pairs, names),
        drawing,
        legend: "The hand is to the left, the plate to the right, and time runs evenly between them. The wider the \
                 fork, the farther apart the two balls are at that moment, each thrown to where it is aimed, until the \
                 faster one arrives. At the post the hitter must decide on it. One scale for all."
            .into(),
        table,
        in_text: InText::Nothing,
    }
}

fn description(pairs: &[(&Pair, &Parting, Seen)], names: &[&str]) -> String {
    let says = |(pair, _, seen): &(&Pair, &Parting, Seen)| {
        format!(
            "{} and {}: {} in apart when the hitter must decide, {} in at the plate",
            names[pair.pitches.0],
            names[pair.pitches.1],
            plain(seen.decision_in, 1),
            plain(seen.plate_in, 0)
        )
    };
    format!("{}.", pairs.iter().map(says).collect::<Vec<String>>().join("; "))
}

struct Fork<'a> {
    parting: &'a Parting,
    seen: &'a Seen,
    middle: f64,
    per_inch: f64,
}

impl Fork<'_> {
    fn tags(&self, names: &[&str], inks: &[Ink], is_first: bool) -> Vec<Tag> {
        let Parting { pitches: (upper, lower), decision_s, arrival_s, ref gaps_in } = *self.parting;
        let scale = Scale::new((0.0, arrival_s), FLIGHT);
        let post = scale.at(decision_s);
        let last = gaps_in.len().saturating_sub(1).max(1) as f64;
        let tine = |sign: f64| -> Vec<Point> {
            let at = |(look, gap): (usize, &f64)| {
                (scale.at(arrival_s * look as f64 / last), self.middle + sign * gap / 2.0 * self.per_inch)
            };
            gaps_in.iter().enumerate().map(at).collect()
        };
        let (up, down) = (tine(-1.0), tine(1.0));
        let between: Vec<Point> = up.iter().copied().chain(down.iter().rev().copied()).collect();
        let ends = [up.last().copied().unwrap_or_default(), down.last().copied().unwrap_or_default()];
        let mut tags = vec![
            Tag::polygon(&between).class("between"),
            Tag::line((post, self.middle - HALF - 2.0), (post, self.middle + HALF + 2.0)).class("post"),
            Tag::polyline(&up).class(&format!("path {}", inks[upper].stroke())),
            Tag::polyline(&down).class(&format!("path {}", inks[lower].stroke())),
            inks[upper].at(ends[0], 6.0),
            inks[lower].at(ends[1], 6.0),
        ];
        if is_first {
            tags.push(Tag::text((post, 17.0), "must decide").class("edge mid"));
        }
        tags.extend(self.words([names[upper], names[lower]], post));
        tags
    }

    /// Names at the ends, inches at the post and at the end.
    fn words(&self, names: [&str; 2], post: f64) -> Vec<Tag> {
        let right = FLIGHT.1 + 14.0;
        let end_in = self.parting.gaps_in.last().copied().unwrap_or(0.0);
        let half = (end_in / 2.0 * self.per_inch).max(17.0);
        let decision = format!("{} in", plain(self.seen.decision_in, 1));
        vec![
            Tag::text((right, self.middle - half + 2.0), &short(names[0], 12)).class("name"),
            Tag::text((right, self.middle + 4.0), &format!("{} in", plain(end_in, 0))).class("figures"),
            Tag::text((right, self.middle + half + 7.0), &short(names[1], 12)).class("name"),
            Tag::text((post - 5.0, self.middle - HALF + 8.0), &decision).class("figures end"),
        ]
    }
}

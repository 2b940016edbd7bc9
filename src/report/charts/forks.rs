//! Forks: how a pair of pitches that leave on one line come apart on the way to the plate.
//!
//! The handle is the hand, the two tines end at the plate. While the fork is inside the grey strip
//! the hitter cannot tell the two apart; the post marks the moment a swing must be decided. Widths are
//! inches between the balls, all forks on one scale.

use crate::base::geometry::Side;
use crate::former::separation::Pair;
use crate::former::sight::Opening;

use super::super::content::amount::share;
use super::super::content::{InText, Picture, Table, columns, row};
use super::super::number::plain;
use super::super::svg::{Point, Tag};
use super::marks::Ink;
use super::scale::Scale;
use super::sheet::{sheet, short};

const ROW: f64 = 92.0;
const TOP: f64 = 26.0;
/// Where hand and plate stand.
const FLIGHT: (f64, f64) = (26.0, 262.0);
/// Most a tine may leave the middle.
const HALF: f64 = 30.0;

/// Every pair; what can be told apart is that of hitters of `side`, from whom those of the other
/// differ by a hair.
pub(crate) fn forks(pairs: &[Pair], openings: &[Opening], names: &[&str], inks: &[Ink], side: Side) -> Picture {
    let height = TOP + ROW * pairs.len() as f64 + 8.0;
    let widest = pairs.iter().map(|pair| pair.seen.on(side).same_line.plate_in).fold(6.0, f64::max);
    let mut drawing = sheet(height);
    drawing.add(Tag::text((FLIGHT.0 - 12.0, 17.0), "hand").class("edge"));
    drawing.add(Tag::text((FLIGHT.1, 17.0), "plate").class("edge mid"));
    for (index, (pair, opening)) in pairs.iter().zip(openings).enumerate() {
        let fork =
            Fork { pair, opening, side, middle: TOP + ROW * (index as f64 + 0.5) + 6.0, per_inch: HALF / widest * 2.0 };
        drawing.add_all(fork.tags(names, inks, index == 0));
    }
    Picture {
        title: "How two pitches come apart".into(),
        description: description(pairs, names, side),
        drawing,
        legend: "Both pitches of a pair leave the hand on one line, to the left. Inside the grey strip the hitter \
                 cannot tell them apart; at the post the swing must be decided. The wider the fork to the right of the post, the later they \
                 part. One scale for all."
            .into(),
        table: table(pairs, names, side),
        in_text: InText::Nothing,
    }
}

fn description(pairs: &[Pair], names: &[&str], side: Side) -> String {
    let says = |pair: &Pair| {
        let gaps = pair.seen.on(side).same_line;
        format!(
            "{} and {}: {} in apart at the decision, {} in at the plate",
            names[pair.pitches.0],
            names[pair.pitches.1],
            plain(gaps.decision_in, 1),
            plain(gaps.plate_in, 0)
        )
    };
    format!("{}.", pairs.iter().map(says).collect::<Vec<String>>().join("; "))
}

fn table(pairs: &[Pair], names: &[&str], side: Side) -> Table {
    let rows = pairs.iter().map(|pair| {
        let seen = pair.seen.on(side);
        let gaps = seen.same_line;
        row![
            format!("{} / {}", names[pair.pitches.0], names[pair.pitches.1]),
            plain(seen.resolvable_in, 1),
            plain(gaps.decision_in, 1),
            plain(gaps.plate_in, 1),
            share(gaps.late_share),
            plain(gaps.disguise, 1),
        ]
    });
    Table::new(columns!["pair", "can tell, in", "at decision, in", "at plate, in", "late", "disguise"], rows)
}

struct Fork<'a> {
    pair: &'a Pair,
    opening: &'a Opening,
    side: Side,
    middle: f64,
    per_inch: f64,
}

impl Fork<'_> {
    fn tags(&self, names: &[&str], inks: &[Ink], is_first: bool) -> Vec<Tag> {
        let scale = Scale::new((0.0, 1.0), FLIGHT);
        let gaps = self.pair.seen.on(self.side).same_line;
        let post = scale.at(self.opening.decision);
        let strip = self.pair.seen.on(self.side).resolvable_in * self.per_inch;
        let (upper, lower) = (self.pair.pitches.0, self.pair.pitches.1);
        let tine = |sign: f64| -> Vec<Point> {
            let at = |&(share, gap): &(f64, f64)| (scale.at(share), self.middle + sign * gap / 2.0 * self.per_inch);
            self.opening.gaps.iter().map(at).collect()
        };
        let (up, down) = (tine(-1.0), tine(1.0));
        let between: Vec<Point> = up.iter().copied().chain(down.iter().rev().copied()).collect();
        let ends = [up.last().copied().unwrap_or_default(), down.last().copied().unwrap_or_default()];
        let mut tags = vec![
            Tag::rect((FLIGHT.0, self.middle - strip / 2.0), (FLIGHT.1 - FLIGHT.0, strip)).class("trifle"),
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
        tags.extend(self.words(names, gaps.decision_in, gaps.plate_in, post));
        tags
    }

    /// Names at the ends, inches at the post and the plate.
    fn words(&self, names: &[&str], decision_in: f64, plate_in: f64, post: f64) -> Vec<Tag> {
        let right = FLIGHT.1 + 14.0;
        let half = (plate_in / 2.0 * self.per_inch).max(17.0);
        vec![
            Tag::text((right, self.middle - half + 2.0), &short(names[self.pair.pitches.0], 12)).class("name"),
            Tag::text((right, self.middle + 4.0), &format!("{} in", plain(plate_in, 0))).class("figures"),
            Tag::text((right, self.middle + half + 7.0), &short(names[self.pair.pitches.1], 12)).class("name"),
            Tag::text((post - 5.0, self.middle - HALF + 8.0), &format!("{} in", plain(decision_in, 1)))
                .class("figures end"),
        ]
    }
}

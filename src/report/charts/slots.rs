//! Two arms at release, seen from the plate, mirrored to one hand.

use crate::ball::Release;
use crate::base::units::DEGREE;

use super::super::content::{InText, Picture, Table, Text, columns, row};
use super::super::number::plain;
use super::super::svg::{Point, Tag};
use super::labels::Labels;
use super::sheet::{WIDTH, sheet, short};

const HEIGHT: f64 = 232.0;
/// Drawing units per foot.
const PER_FOOT: f64 = 46.0;
/// Length of an arm from shoulder to hand. Common practice, no published source.
const ARM_FT: f64 = 2.2;
/// Where the middle line of the plate and a height of three feet are drawn.
const MIDDLE: f64 = 262.0;
const THREE_FEET: f64 = 212.0;

/// The release points of two athletes; the first solid, the second dashed.
pub(crate) fn slots(arms: [(&str, Release); 2]) -> Picture {
    let mut drawing = sheet(HEIGHT);
    drawing.add_all(ground());
    let mut labels = Labels::within((6.0, 6.0), (WIDTH - 6.0, HEIGHT - 24.0));
    for (_, release) in &arms {
        labels.keep_free(at(release.side_ft, release.height_ft), 8.0);
    }
    for (index, (name, release)) in arms.iter().enumerate() {
        drawing.add_all(arm(release, index));
        let hand = at(release.side_ft, release.height_ft);
        let slot = format!("{}\u{b0}", plain(release.slot_deg, 0));
        let lines = [(&*short(name, 18), "name"), (&*slot, "small")];
        drawing.add_all(labels.left_of(hand, 8.0, &lines, 12.0));
    }
    Picture {
        title: "Where the ball leaves the hand".into(),
        description: format!("Seen from the plate, as right-handers. {}; {}.", says(&arms[0]), says(&arms[1])),
        drawing,
        legend:
            "Seen from the plate, both as right-handers. The first athlete\u{2019}s arm is solid, the second\u{2019}s \
                 dashed."
                .into(),
        table: Table::new(
            columns!["athlete", "slot, degrees", "height, ft", "arm side, ft", "in front of the rubber, ft"],
            arms.iter().map(|(name, release)| cells(name, release)),
        ),
        in_text: InText::Nothing,
    }
}

fn says((name, release): &(&str, Release)) -> String {
    format!(
        "{name}: {} degrees, {} ft high, {} ft to the arm side",
        plain(release.slot_deg, 0),
        plain(release.height_ft, 1),
        plain(release.side_ft, 1)
    )
}

fn cells(name: &str, release: &Release) -> Vec<Text> {
    row![
        name,
        plain(release.slot_deg, 0),
        plain(release.height_ft, 1),
        plain(release.side_ft, 1),
        plain(release.extension_ft, 1),
    ]
}

/// From the plate a right-hander's arm side is to the left.
fn at(side_ft: f64, height_ft: f64) -> Point {
    (MIDDLE - side_ft * PER_FOOT, THREE_FEET - (height_ft - 3.0) * PER_FOOT)
}

fn ground() -> Vec<Tag> {
    let mut tags = Vec::new();
    for feet in [4.0, 5.0, 6.0, 7.0] {
        let y = at(0.0, feet).1;
        tags.push(Tag::line((12.0, y), (WIDTH - 40.0, y)).class("hair"));
        tags.push(Tag::text((WIDTH - 10.0, y + 4.0), &format!("{} ft", plain(feet, 0))).class("small end"));
    }
    tags.push(Tag::line((MIDDLE, 12.0), (MIDDLE, THREE_FEET)).class("post"));
    tags.push(Tag::text((MIDDLE, HEIGHT - 8.0), "middle of the plate").class("edge mid"));
    tags
}

/// Trunk and head in the background, the arm, and the ball in the hand.
fn arm(release: &Release, index: usize) -> Vec<Tag> {
    let hand = at(release.side_ft, release.height_ft);
    let (sin, cos) = (release.slot_deg * DEGREE).sin_cos();
    let (side, height) = (release.side_ft - ARM_FT * cos, release.height_ft - ARM_FT * sin);
    // The trunk leans away from the arm, more the higher the slot.
    let lean = 0.35 * sin;
    let (neck, hip) = (at(side - 0.6 * cos, height + 0.6 * lean), at(side - 0.5 + lean, height - 1.6));
    let head = at(side - 0.75 - 0.3 * lean, height + 0.75);
    let class = if index == 0 { "arm" } else { "arm dashed" };
    vec![
        Tag::polyline(&[at(side, height), neck, hip]).num("stroke-width", 0.34 * PER_FOOT).class("figure faint"),
        Tag::circle(head, 0.36 * PER_FOOT).class("head faint"),
        Tag::line(at(side, height), hand).class(class),
        Tag::circle(hand, 7.0).class("leather"),
    ]
}

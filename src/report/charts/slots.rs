//! Two arms at release, seen from the plate, mirrored to one hand.

use crate::profile::Release;
use crate::units::DEGREE;

use super::super::format::plain;
use super::super::svg::{Drawing, Point, Tag};
use super::{Picture, Table, WIDTH, short};

const HEIGHT: f64 = 230.0;
/// Drawing units per foot.
const PER_FOOT: f64 = 28.0;
/// Length of an arm from shoulder to hand. Common practice, no published source.
const ARM_FT: f64 = 2.2;
/// Where the middle line of the plate and the level of the plate are drawn.
const MIDDLE: f64 = 180.0;
const GROUND: f64 = 205.0;

/// The release points of two athletes; the first solid, the second dashed.
pub(in super::super) fn slots(arms: [(&str, Release); 2]) -> Picture {
    let mut drawing = Drawing::new(WIDTH, HEIGHT);
    drawing.add(Tag::rect((0.0, 0.0), (WIDTH, HEIGHT)).set("rx", "10").class("sheet"));
    drawing.add(Tag::line((20.0, GROUND), (WIDTH - 20.0, GROUND)).class("hair on"));
    for feet in [2.0, 4.0, 6.0] {
        let y = GROUND - feet * PER_FOOT;
        drawing.add(Tag::line((20.0, y), (WIDTH - 20.0, y)).class("hair"));
        drawing.add(Tag::text((WIDTH - 12.0, y - 3.0), &format!("{} ft", plain(feet, 0))).class("small end"));
    }
    drawing.add(Tag::line((MIDDLE, 24.0), (MIDDLE, GROUND)).class("post"));
    drawing.add(Tag::text((MIDDLE, GROUND + 16.0), "middle of the plate").class("small mid"));
    for (index, (name, release)) in arms.iter().enumerate() {
        drawing.add_all(arm(name, release, index));
    }
    let says = |(name, release): &(&str, Release)| {
        format!(
            "{name}: {} degrees, {} ft high, {} ft to the arm side",
            plain(release.slot_deg, 0),
            plain(release.height_ft, 1),
            plain(release.side_ft, 1)
        )
    };
    Picture {
        title: "Where the ball leaves the hand".into(),
        description: format!("Seen from the plate, as right-handers. {}; {}.", says(&arms[0]), says(&arms[1])),
        drawing,
        legend:
            "Seen from the plate, both as right-handers. The first athlete\u{2019}s arm is solid, the second\u{2019}s \
                 dashed."
                .into(),
        table: Table::new(
            &["athlete", "slot, degrees", "height, ft", "arm side, ft", "in front of the rubber, ft"],
            arms.iter().map(|(name, release)| row(name, release)).collect(),
        ),
    }
}

fn row(name: &str, release: &Release) -> Vec<String> {
    vec![
        name.to_owned(),
        plain(release.slot_deg, 0),
        plain(release.height_ft, 1),
        plain(release.side_ft, 1),
        plain(release.extension_ft, 1),
    ]
}

fn arm(name: &str, release: &Release, index: usize) -> Vec<Tag> {
    // From the plate a right-hander's arm side is to the left.
    let at = |side_ft: f64, height_ft: f64| -> Point { (MIDDLE - side_ft * PER_FOOT, GROUND - height_ft * PER_FOOT) };
    let hand = at(release.side_ft, release.height_ft);
    let (sin, cos) = (release.slot_deg * DEGREE).sin_cos();
    let shoulder = at(release.side_ft - ARM_FT * cos, release.height_ft - ARM_FT * sin);
    let class = if index == 0 { "arm" } else { "arm dashed" };
    let words = format!("{}, {}\u{b0}", short(name, 18), plain(release.slot_deg, 0));
    let above = if index == 0 { -22.0 } else { 22.0 };
    vec![
        Tag::line(shoulder, hand).class(class),
        Tag::circle(shoulder, 3.0).class("pin"),
        Tag::circle(hand, 6.0).class("leather"),
        Tag::text((hand.0 - 12.0, hand.1 + above / 5.0 + 4.0), &words).class("name end"),
    ]
}

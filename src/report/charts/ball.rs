//! The ball with the mark on its spin pole, as thrower and partner see it.
//!
//! The clock stands around each face; the short arrow about the mark shows which way the ball turns
//! there. Bullet spin of a right-hander turns clockwise to the thrower, so to the partner the
//! other way about.

use crate::ball::spin::{Dot, Spin};
use crate::base::geometry::Hand;
use crate::base::units::DEGREE;

use super::super::content::amount::share;
use super::super::content::{InText, Picture, Table, columns, row};
use super::super::svg::{Point, Tag, number};
use super::characters::side_by_side;
use super::sheet::sheet;

/// Radius of a face, and where the two middles stand.
const RADIUS: f64 = 58.0;
const MIDDLES: [Point; 2] = [(89.0, 114.0), (271.0, 114.0)];
const HEIGHT: f64 = 226.0;

/// Both faces of a ball spun like `spin` by a pitcher of `hand`.
pub(crate) fn faces(spin: Spin, hand: Hand) -> Picture {
    let dots = spin.dot();
    let shown = |dot: Dot| Dot { clock: dot.clock.for_hand(hand), ..dot };
    let (thrower, partner) = (shown(dots.thrower), shown(dots.partner));
    let clockwise = hand == Hand::Right;
    let mut drawing = sheet(HEIGHT);
    drawing.add_all(face(MIDDLES[0], &thrower, clockwise, "the thrower sees"));
    drawing.add_all(face(MIDDLES[1], &partner, !clockwise, "the partner sees"));
    let says = |who: &str, dot: &Dot| {
        format!("the {who} sees it at {}, {} of the way from the middle to the rim", dot.clock, out(dot))
    };
    let said = [says("thrower", &thrower), says("partner", &partner)];
    let faces = side_by_side(("the thrower sees", &thrower), ("the partner sees", &partner));
    Picture {
        title: "Where the mark on the spin pole shows".into(),
        description: format!("On a marked ball {}; {}.", said[0], said[1]),
        drawing,
        legend:
            "Mark a pole of the ball\u{2019}s spin and play catch: a steady dot here means the spin is right. Nearer \
                 the middle is more bullet spin, nearer the rim more of the spin at work."
                .into(),
        table: Table::new(
            columns!["who", "clock", "middle to rim"],
            [("thrower", &thrower), ("partner", &partner)].map(|(who, dot)| row![who, dot.clock, share(dot.radius)]),
        ),
        in_text: InText::Characters(format!("{faces}{}\n{}\n", said[0], said[1])),
    }
}

fn out(dot: &Dot) -> String {
    share(dot.radius).figures()
}

fn face(middle: Point, dot: &Dot, clockwise: bool, who: &str) -> Vec<Tag> {
    let place = polar(middle, dot.clock.hours(), RADIUS * dot.radius.min(1.0) * 0.94);
    let mut tags = vec![Tag::circle(middle, RADIUS).class("leather")];
    tags.extend((0..12).map(|hour| {
        let hour = f64::from(hour);
        let long = if hour % 3.0 == 0.0 { 7.0 } else { 3.5 };
        Tag::line(polar(middle, hour, RADIUS + 4.0), polar(middle, hour, RADIUS + 4.0 + long)).class("hair on")
    }));
    tags.extend([("12", 0.0), ("3", 3.0), ("6", 6.0), ("9", 9.0)].map(|(words, hour)| {
        let (x, y) = polar(middle, hour, RADIUS + 20.0);
        Tag::text((x, y + 4.0), words).class("small mid")
    }));
    tags.push(Tag::line(middle, place).class("tie"));
    tags.push(Tag::circle(middle, 1.8).class("pin"));
    tags.extend(turn(place, clockwise));
    tags.push(Tag::circle(place, 8.5).class("dot"));
    let words = format!("{}, {} out", dot.clock, out(dot));
    tags.push(Tag::text((middle.0, HEIGHT - 9.0), &words).class("small mid"));
    tags.push(Tag::text((middle.0, 20.0), who).class("name mid"));
    tags
}

/// An arrow three quarters of the way around the mark.
fn turn(place: Point, clockwise: bool) -> Vec<Tag> {
    let radius = 14.5;
    let way = if clockwise { 1.0 } else { -1.0 };
    let (start, end) = (polar(place, way * 1.0, radius), polar(place, way * 9.0, radius));
    let sweep = u8::from(clockwise);
    let arc = format!(
        "M{},{}A{radius},{radius} 0 1 {sweep} {},{}",
        number(start.0),
        number(start.1),
        number(end.0),
        number(end.1)
    );
    let tip = polar(place, way * 10.1, radius);
    let barbs = [polar(place, way * 8.9, radius + 4.0), polar(place, way * 8.9, radius - 4.0)];
    vec![Tag::path(&arc).class("turn"), Tag::polygon(&[tip, barbs[0], barbs[1]]).class("tip")]
}

/// The place at a clock hour and a distance.
fn polar(middle: Point, hours: f64, distance: f64) -> Point {
    let (sin, cos) = (hours * 30.0 * DEGREE).sin_cos();
    (middle.0 + distance * sin, middle.1 - distance * cos)
}

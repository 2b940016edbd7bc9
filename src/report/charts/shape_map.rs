//! The shape map: how each pitch moves, how much that varies, and where the new one should be.
//!
//! A survey sheet rather than a graph: small crosses every six inches instead of a grid, words at
//! the edges instead of axes, and the ball that no spin moves in the middle. Seen by the pitcher,
//! so a right-hander's glove side is to the left.

use crate::athlete::profile::Spread;
use crate::ball::Shape;
use crate::base::geometry::Hand;
use crate::former::search::Window;

use super::super::format::{plain, signed};
use super::super::svg::{Drawing, Point, Tag};
use super::labels::Labels;
use super::marks::Ink;
use super::scale::range_of;
use super::{Picture, Table, WIDTH, short};

/// A pitch on the map.
#[derive(Debug, Clone)]
pub(in super::super) struct MapPitch<'a> {
    /// What it is called.
    pub(in super::super) name: &'a str,
    /// How it is drawn.
    pub(in super::super) ink: Ink,
    /// What it does.
    pub(in super::super) shape: Shape,
    /// How much that varies.
    pub(in super::super) spread: Spread,
}

/// The pitch to chase.
#[derive(Debug, Clone)]
pub(in super::super) struct MapTarget<'a> {
    /// What it is called.
    pub(in super::super) name: &'a str,
    /// How it is drawn.
    pub(in super::super) ink: Ink,
    /// What it does.
    pub(in super::super) shape: Shape,
    /// The window about it.
    pub(in super::super) window: Window,
}

/// What the map shows.
#[derive(Debug, Clone)]
pub(in super::super) struct ShapeMap<'a> {
    /// Heading.
    pub(in super::super) title: String,
    /// Whose hand.
    pub(in super::super) hand: Hand,
    /// Today's pitches.
    pub(in super::super) pitches: Vec<MapPitch<'a>>,
    /// The pitch to chase, if there is one.
    pub(in super::super) target: Option<MapTarget<'a>>,
    /// Single throws, small; with them there is no arrow, for nothing has to be changed into the target.
    pub(in super::super) throws: Vec<(Ink, Shape)>,
}

/// Radius, in standard deviations, of the ellipse that half of all throws fall in: for a round
/// normal scatter the share within r is 1 - exp(-r²/2).
pub(in super::super) const HALF: f64 = 1.177;
/// Inches between survey crosses.
const STEP: f64 = 6.0;
/// Room for words left and right, above and below.
const MARGIN: Point = (22.0, 26.0);
/// Size of a mark.
const MARK: f64 = 6.5;
/// Size of a single throw.
const SMALL: f64 = 2.6;

impl ShapeMap<'_> {
    /// The picture.
    pub(in super::super) fn picture(&self) -> Picture {
        let ground = Ground::of(self);
        let mut drawing = Drawing::new(WIDTH, ground.height());
        drawing.add_all(ground.sheet(self.hand));
        let mut labels = Labels::within((4.0, MARGIN.1 - 8.0), (WIDTH - 4.0, ground.height() - MARGIN.1 + 8.0));
        self.keep_marks_free(&ground, &mut labels);
        let goal = |labels: &mut Labels| -> Vec<Tag> {
            self.target.iter().flat_map(|t| target_mark(&ground, t, labels)).collect()
        };
        let among_throws: Vec<Tag> = if self.throws.is_empty() { Vec::new() } else { goal(&mut labels) };
        for pitch in &self.pitches {
            drawing.add(ground.scatter(pitch));
        }
        if let Some(target) = &self.target {
            drawing.add_all(self.chase(&ground, target));
        }
        drawing.add_all(among_throws);
        drawing.add_all(self.throws.iter().map(|&(ink, shape)| ink.hollow_at(ground.place(shape), SMALL)));
        for pitch in &self.pitches {
            let place = ground.place(pitch.shape);
            drawing.add(pitch.ink.at(place, MARK));
            let speed = format!("{} mph", plain(pitch.shape.speed_mph, 0));
            let lines = [(&*short(pitch.name, 16), "name"), (&*speed, "small")];
            drawing.add_all(labels.beside(place, ground.reach(pitch), &lines, 12.0));
        }
        if self.throws.is_empty() {
            drawing.add_all(goal(&mut labels));
        }
        Picture {
            title: self.title.clone(),
            description: self.description(),
            drawing,
            legend: self.legend(),
            table: self.table(),
        }
    }

    fn keep_marks_free(&self, ground: &Ground, labels: &mut Labels) {
        labels.keep_free(ground.spot(0.0, 0.0), 5.0);
        let targets = self.target.iter().map(|target| target.shape);
        for pitch in &self.pitches {
            labels.keep_free(ground.place(pitch.shape), ground.reach(pitch));
        }
        for &(_, shape) in &self.throws {
            labels.keep_free(ground.place(shape), SMALL + 1.5);
        }
        for end in self.target.iter().flat_map(|target| window_ends(ground, target)) {
            labels.keep_free(end, 4.0);
        }
        if let Some((nearest, target)) = self.target.as_ref().and_then(|t| Some((self.nearest(t.shape)?, t))) {
            let (from, to) = (ground.place(nearest.shape), ground.place(target.shape));
            for share in [0.35, 0.5, 0.65] {
                labels.keep_free((from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1)), 7.0);
            }
        }
        for shape in self.pitches.iter().map(|pitch| pitch.shape).chain(targets) {
            labels.keep_free(ground.place(shape), MARK + 2.0);
        }
    }

    /// The window, and the arrow from the nearest pitch of today.
    fn chase(&self, ground: &Ground, target: &MapTarget) -> Vec<Tag> {
        let mut tags = vec![Tag::polygon(&window_ends(ground, target)).class("window")];
        if let Some(nearest) = self.nearest(target.shape).filter(|_| self.throws.is_empty()) {
            tags.extend(arrow(ground.place(nearest.shape), ground.place(target.shape)));
        }
        tags
    }

    fn nearest(&self, shape: Shape) -> Option<&MapPitch<'_>> {
        let far = |pitch: &&MapPitch| pitch.shape.movement_distance_in(shape);
        self.pitches.iter().min_by(|a, b| far(a).total_cmp(&far(b)))
    }

    fn description(&self) -> String {
        let says = |name: &str, shape: Shape| {
            format!(
                "{name}: {} mph, vertical break {} in, glove-side break {} in",
                plain(shape.speed_mph, 1),
                signed(shape.vertical_break_in, 1),
                signed(shape.glove_side_break_in, 1)
            )
        };
        let mut parts: Vec<String> = self.pitches.iter().map(|pitch| says(pitch.name, pitch.shape)).collect();
        if let Some(target) = &self.target {
            let from = self.nearest(target.shape).map_or(String::new(), |near| {
                let far = near.shape.movement_distance_in(target.shape);
                format!(", {} in of movement from the nearest pitch, the {}", plain(far, 0), near.name)
            });
            parts.push(format!("to chase, {}{from}", says(target.name, target.shape)));
        }
        format!("Movement of each pitch as the pitcher sees it. {}.", parts.join("; "))
    }

    fn legend(&self) -> String {
        let today = "Seen by the pitcher. Crosses stand 6 in apart; the ring in the middle is a ball that nothing \
                     pushes sideways. Half of a pitch\u{2019}s throws fall in its ellipse.";
        if self.target.is_some() {
            format!("{today} The dashed kite ends where, along each axis alone, 90 % of the gain is kept.")
        } else {
            today.into()
        }
    }

    fn table(&self) -> Table {
        let row = |pitch: &MapPitch| {
            let with_spread = |value: f64, spread: f64| format!("{} ±{}", signed(value, 1), plain(spread, 1));
            vec![
                pitch.name.to_owned(),
                plain(pitch.shape.speed_mph, 1),
                with_spread(pitch.shape.vertical_break_in, pitch.spread.vertical_break_in),
                with_spread(pitch.shape.glove_side_break_in, pitch.spread.glove_side_break_in),
            ]
        };
        let mut rows: Vec<Vec<String>> = self.pitches.iter().map(row).collect();
        if let Some(target) = &self.target {
            rows.push(vec![
                format!("{} (target)", target.name),
                plain(target.shape.speed_mph, 1),
                signed(target.shape.vertical_break_in, 1),
                signed(target.shape.glove_side_break_in, 1),
            ]);
            let range = |(low, high): (f64, f64)| format!("{} to {}", signed(low, 1), signed(high, 1));
            let speed = target.window.speed_mph;
            rows.push(vec![
                "its window".into(),
                format!("{} to {}", plain(speed.0, 1), plain(speed.1, 1)),
                range(target.window.vertical_break_in),
                range(target.window.glove_side_break_in),
            ]);
        }
        Table::new(&["pitch", "mph", "vertical, in", "glove side, in"], rows)
    }
}

/// The four ends of the window, one along each axis.
fn window_ends(ground: &Ground, target: &MapTarget) -> [Point; 4] {
    let shape = target.shape;
    let (vertical, glove) = (target.window.vertical_break_in, target.window.glove_side_break_in);
    [
        ground.spot(glove.0, shape.vertical_break_in),
        ground.spot(shape.glove_side_break_in, vertical.1),
        ground.spot(glove.1, shape.vertical_break_in),
        ground.spot(shape.glove_side_break_in, vertical.0),
    ]
}

/// The target's own mark in its halo, with its words.
fn target_mark(ground: &Ground, target: &MapTarget, labels: &mut Labels) -> Vec<Tag> {
    let place = ground.place(target.shape);
    let speed = format!("{} mph", plain(target.shape.speed_mph, 0));
    let named = target.name.starts_with("new") || target.name == "target";
    let name = if named { target.name.into() } else { format!("{}, new", target.name) };
    let mut tags = vec![Tag::circle(place, MARK + 5.0).class("halo"), target.ink.at(place, MARK)];
    tags.extend(labels.beside(place, MARK + 5.0, &[(&*name, "name"), (&*speed, "small")], 12.0));
    tags
}

/// A bowed arrow that stops short of both marks.
fn arrow(from: Point, to: Point) -> Vec<Tag> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = dx.hypot(dy);
    if length < 4.0 * MARK {
        return Vec::new();
    }
    let (ux, uy) = (dx / length, dy / length);
    let along = |start: Point, by: f64, aside: f64| (start.0 + by * ux - aside * uy, start.1 + by * uy + aside * ux);
    let bow = length * 0.12;
    let control = along(from, length / 2.0, bow);
    let tip = along(to, -(MARK + 8.0), bow * 0.2);
    let (hx, hy) = (tip.0 - control.0, tip.1 - control.1);
    let reach = hx.hypot(hy).max(1e-9);
    let (hx, hy) = (hx / reach, hy / reach);
    let barb = |side: f64| (tip.0 - 9.0 * hx - side * 5.0 * hy, tip.1 - 9.0 * hy + side * 5.0 * hx);
    let base = (tip.0 - 7.0 * hx, tip.1 - 7.0 * hy);
    vec![
        Tag::curve(along(from, MARK + 4.0, bow * 0.2), control, base).class("arrow"),
        Tag::polygon(&[tip, barb(1.0), barb(-1.0)]).class("tip"),
    ]
}

/// Where inches of movement stand on the sheet.
#[derive(Debug, Clone, Copy)]
struct Ground {
    glove: (f64, f64),
    vertical: (f64, f64),
    per_inch: f64,
    glove_sign: f64,
}

impl Ground {
    /// Room for every pitch with its scatter, the target with its window, and the middle.
    fn of(map: &ShapeMap) -> Self {
        let reach = |pitch: &MapPitch| {
            let (g, v) = (HALF * pitch.spread.glove_side_break_in, HALF * pitch.spread.vertical_break_in);
            let shape = pitch.shape;
            [
                (shape.glove_side_break_in - g, shape.vertical_break_in - v),
                (shape.glove_side_break_in + g, shape.vertical_break_in + v),
            ]
        };
        let mut corners: Vec<Point> = map.pitches.iter().flat_map(reach).collect();
        if map.throws.is_empty() {
            corners.extend([(-7.0, -7.0), (7.0, 7.0)]);
        }
        corners.extend(map.throws.iter().map(|(_, shape)| (shape.glove_side_break_in, shape.vertical_break_in)));
        if let Some(target) = &map.target {
            let (vertical, glove) = (target.window.vertical_break_in, target.window.glove_side_break_in);
            corners.extend([(glove.0, vertical.0), (glove.1, vertical.1)]);
        }
        let pad = |(low, high): (f64, f64)| (low - 3.0, high + 3.0);
        let glove = pad(range_of(corners.iter().map(|corner| corner.0)));
        let vertical = pad(range_of(corners.iter().map(|corner| corner.1)));
        let per_inch = ((WIDTH - 2.0 * MARGIN.0) / (glove.1 - glove.0)).min(290.0 / (vertical.1 - vertical.0));
        let glove_sign = if map.hand == Hand::Right { -1.0 } else { 1.0 };
        Self { glove, vertical, per_inch, glove_sign }
    }

    fn height(&self) -> f64 {
        (self.vertical.1 - self.vertical.0) * self.per_inch + 2.0 * MARGIN.1
    }

    fn spot(&self, glove_in: f64, vertical_in: f64) -> Point {
        let middle = f64::midpoint(self.glove.0, self.glove.1);
        let x = WIDTH / 2.0 + self.glove_sign * (glove_in - middle) * self.per_inch;
        (x, MARGIN.1 + (self.vertical.1 - vertical_in) * self.per_inch)
    }

    fn place(&self, shape: Shape) -> Point {
        self.spot(shape.glove_side_break_in, shape.vertical_break_in)
    }

    /// How far from its middle words must stay to leave most of a scatter's ellipse free.
    fn reach(&self, pitch: &MapPitch) -> f64 {
        let wide = HALF * pitch.spread.glove_side_break_in.min(pitch.spread.vertical_break_in) * self.per_inch;
        (wide - 2.0).clamp(MARK, 22.0)
    }

    fn scatter(&self, pitch: &MapPitch) -> Tag {
        let radii = (
            HALF * pitch.spread.glove_side_break_in * self.per_inch,
            HALF * pitch.spread.vertical_break_in * self.per_inch,
        );
        Tag::ellipse(self.place(pitch.shape), radii).class(&format!(
            "scatter {} {}",
            pitch.ink.fill(),
            pitch.ink.stroke()
        ))
    }

    /// Crosses, the unmoved ball and the four words.
    fn sheet(&self, hand: Hand) -> Vec<Tag> {
        let mut tags = vec![Tag::rect((0.0, 0.0), (WIDTH, self.height())).set("rx", "10").class("sheet")];
        let half_width = (WIDTH / 2.0 - MARGIN.0 / 2.0) / self.per_inch;
        let middle = f64::midpoint(self.glove.0, self.glove.1);
        for glove in steps(middle - half_width, middle + half_width) {
            for vertical in steps(self.vertical.0, self.vertical.1) {
                tags.extend(self.survey_cross(glove, vertical));
            }
        }
        let seen = |(low, high): (f64, f64)| low <= 0.0 && high >= 0.0;
        if seen(self.glove) && seen(self.vertical) {
            tags.push(Tag::circle(self.spot(0.0, 0.0), 3.5).class("unmoved"));
        }
        let (left, right) = if hand == Hand::Right { ("glove side", "arm side") } else { ("arm side", "glove side") };
        let bottom = self.height() - 9.0;
        tags.extend([
            Tag::text((WIDTH / 2.0, 17.0), "stays up").class("edge mid"),
            Tag::text((WIDTH / 2.0, bottom), "drops").class("edge mid"),
            Tag::text((10.0, bottom), &format!("\u{2190} {left}")).class("edge"),
            Tag::text((WIDTH - 10.0, bottom), &format!("{right} \u{2192}")).class("edge end"),
        ]);
        tags
    }

    /// A cross, bolder on the two lines through the middle.
    fn survey_cross(&self, glove: f64, vertical: f64) -> Vec<Tag> {
        let on_line = glove.abs() < 0.1 || vertical.abs() < 0.1;
        if glove.abs() < 0.1 && vertical.abs() < 0.1 {
            return Vec::new();
        }
        let (x, y) = self.spot(glove, vertical);
        let arm = if on_line { 4.0 } else { 2.2 };
        let class = if on_line { "survey on" } else { "survey" };
        vec![Tag::line((x - arm, y), (x + arm, y)).class(class), Tag::line((x, y - arm), (x, y + arm)).class(class)]
    }
}

/// Multiples of [`STEP`] inside a range.
fn steps(low: f64, high: f64) -> Vec<f64> {
    (-10..=10).map(|step| f64::from(step) * STEP).filter(|value| (low..=high).contains(value)).collect()
}

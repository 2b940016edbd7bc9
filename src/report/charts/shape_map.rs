//! The shape map: how each pitch moves, how much that varies, and where the new one should be.
//! The sheet it is drawn on is in [`super::map_ground`].

use crate::athlete::profile::Spread;
use crate::ball::Shape;
use crate::base::geometry::Hand;
use crate::base::{Movement, Range};

use super::super::content::amount::{movement, speed};
use super::super::content::{InText, Picture, Table, Text, Unit, columns, name, row, say};
use super::super::number::{plain, signed};
use super::super::svg::{Point, Tag};
use super::labels::Labels;
use super::map_ground::{Ground, HALF, MARK, moved};
use super::marks::Ink;
use super::sheet::short;

/// A pitch on the map.
#[derive(Debug, Clone)]
pub(crate) struct MapPitch<'a> {
    /// What it is called.
    pub(crate) name: &'a str,
    /// How it is drawn.
    pub(crate) ink: Ink,
    /// What it does.
    pub(crate) shape: Shape,
    /// How much that varies.
    pub(crate) spread: Spread,
}

/// The pitch to chase.
#[derive(Debug, Clone)]
pub(crate) struct MapTarget<'a> {
    /// What it is called.
    pub(crate) name: &'a str,
    /// How it is drawn.
    pub(crate) ink: Ink,
    /// What it does.
    pub(crate) shape: Shape,
    /// The closed line around the movements that count as it, in order.
    pub(crate) contour: Vec<Movement>,
    /// Its ranges of speed, vertical break and glove-side break.
    pub(crate) ranges: [Range; 3],
    /// What the line is, in a sentence.
    pub(crate) line: &'static str,
}

/// What the map shows.
#[derive(Debug, Clone)]
pub(crate) struct ShapeMap<'a> {
    /// Heading.
    pub(crate) title: Text,
    /// Whose hand.
    pub(crate) hand: Hand,
    /// Today's pitches.
    pub(crate) pitches: Vec<MapPitch<'a>>,
    /// The pitch to chase, if there is one.
    pub(crate) target: Option<MapTarget<'a>>,
    /// Single throws, small; with them there is no arrow, for nothing has to be changed into the target.
    pub(crate) throws: Vec<(Ink, Shape)>,
}

/// Size of a single throw.
const SMALL: f64 = 2.6;

impl ShapeMap<'_> {
    /// The picture.
    pub(crate) fn picture(&self) -> Picture {
        let ground = Ground::holding(&self.extent(), self.hand);
        let mut drawing = ground.sheet();
        let mut labels = ground.labels();
        self.keep_marks_free(&ground, &mut labels);
        // Among throws the target's words come first, else those of today's pitches.
        let among_throws = if self.throws.is_empty() { Vec::new() } else { self.goal(&ground, &mut labels) };
        for pitch in &self.pitches {
            drawing.add(ground.scatter(pitch.ink, pitch.shape, pitch.spread));
        }
        drawing.add_all(self.target.iter().flat_map(|target| self.chase(&ground, target)));
        drawing.add_all(among_throws);
        drawing.add_all(self.throws.iter().map(|&(ink, shape)| ink.hollow_at(ground.place(shape), SMALL)));
        for pitch in &self.pitches {
            drawing.add_all(pitch_mark(&ground, pitch, &mut labels));
        }
        if self.throws.is_empty() {
            drawing.add_all(self.goal(&ground, &mut labels));
        }
        Picture {
            title: self.title.clone(),
            description: self.description(),
            drawing,
            legend: self.legend(),
            table: self.table(),
            in_text: InText::Nothing,
        }
    }

    /// What must have room: pitches with their scatter, throws, the window; without throws the middle too.
    fn extent(&self) -> Vec<Movement> {
        let reach = |pitch: &MapPitch| {
            let half = Movement {
                glove_side_in: HALF * pitch.spread.glove_side_break_in,
                up_in: HALF * pitch.spread.vertical_break_in,
            };
            [moved(pitch.shape) - half, moved(pitch.shape) + half]
        };
        let middle = [-7.0, 7.0].map(|inches| Movement { glove_side_in: inches, up_in: inches });
        let mut extent: Vec<Movement> = self.pitches.iter().flat_map(reach).collect();
        extent.extend(self.throws.iter().map(|&(_, shape)| moved(shape)));
        extent.extend(middle.into_iter().filter(|_| self.throws.is_empty()));
        extent.extend(self.target.iter().flat_map(|target| target.contour.iter().copied()));
        extent
    }

    fn goal(&self, ground: &Ground, labels: &mut Labels) -> Vec<Tag> {
        self.target.iter().flat_map(|target| target_mark(ground, target, labels)).collect()
    }

    fn keep_marks_free(&self, ground: &Ground, labels: &mut Labels) {
        labels.keep_free(ground.spot(Movement::default()), 5.0);
        let targets = self.target.iter().map(|target| target.shape);
        for pitch in &self.pitches {
            labels.keep_free(ground.place(pitch.shape), ground.reach(pitch.spread));
        }
        for &(_, shape) in &self.throws {
            labels.keep_free(ground.place(shape), SMALL + 1.5);
        }
        for end in self.target.iter().flat_map(|target| &target.contour) {
            labels.keep_free(ground.spot(*end), 4.0);
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
        let line: Vec<Point> = target.contour.iter().map(|&end| ground.spot(end)).collect();
        let mut tags = vec![Tag::polygon(&line).class("window")];
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
            let breaks =
                say!("{}, glove-side break {}", movement(shape.vertical_break_in), movement(shape.glove_side_break_in));
            format!("{name}: {}", say!("{}, vertical break {}", speed(shape.speed_mph), breaks))
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
        self.target.as_ref().map_or_else(|| today.to_owned(), |target| format!("{today} {}", target.line))
    }

    fn table(&self) -> Table {
        let of = |pitch: &MapPitch| {
            let with_spread = |inches: f64, spread: f64| format!("{} ±{}", signed(inches, 1), plain(spread, 1));
            row![
                name(pitch.name),
                speed(pitch.shape.speed_mph),
                with_spread(pitch.shape.vertical_break_in, pitch.spread.vertical_break_in),
                with_spread(pitch.shape.glove_side_break_in, pitch.spread.glove_side_break_in),
            ]
        };
        let of_target = |target: &MapTarget| {
            let (shape, [mph, up, side]) = (target.shape, target.ranges);
            [
                row![
                    format!("{} (target)", target.name),
                    speed(shape.speed_mph),
                    movement(shape.vertical_break_in),
                    movement(shape.glove_side_break_in),
                ],
                row!["its window", speed(mph), movement(up), movement(side)],
            ]
        };
        let rows = self.pitches.iter().map(of).chain(self.target.iter().flat_map(of_target));
        let columns = columns!["pitch", ("", Unit::Mph), ("vertical", Unit::Inches), ("glove side", Unit::Inches)];
        Table::new(columns, rows)
    }
}

/// The mark of a pitch of today, with its words.
fn pitch_mark(ground: &Ground, pitch: &MapPitch, labels: &mut Labels) -> Vec<Tag> {
    let place = ground.place(pitch.shape);
    let mph = format!("{} mph", plain(pitch.shape.speed_mph, 0));
    let lines = [(&*short(pitch.name, 16), "name"), (&*mph, "small")];
    let mut tags = vec![pitch.ink.at(place, MARK)];
    tags.extend(labels.beside(place, ground.reach(pitch.spread), &lines, 12.0));
    tags
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

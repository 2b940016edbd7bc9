//! The hitter's view: the pitches from the hitter's own eye, until the decision and a little beyond.
//!
//! Central projection on a plane square to the line of sight, as a photograph taken from there
//! would show it: balls grow as they come. At the decision each ball has its true size, so that
//! what can just be told apart can be judged by it; below stands the plate with where each ends.

use crate::ball::spin::BALL_RADIUS;
use crate::base::geometry::{Hand, PLATE_HALF_WIDTH, RUBBER_Y, Vec3};
use crate::base::units::{DEGREE, FOOT, INCH};
use crate::former::hitter::ZONE;
use crate::former::sight::{SeenPath, Sight};

use super::super::content::{InText, Picture, Table, columns, row};
use super::super::number::plain;
use super::super::svg::{Point, Tag};
use super::super::words::sides::side_name;
use super::marks::Ink;
use super::scale::range_of;
use super::sheet::{WIDTH, sheet, short};

/// Height of the scene and of the strip below it.
const SCENE: f64 = 216.0;
/// Room for one line of the list beside the plate, and where its columns end.
const ROW: f64 = 21.0;
const COLUMNS: [f64; 3] = [265.0, 306.0, 351.0];
/// Degrees of sight left free about what must be seen.
const FREE_DEG: f64 = 1.3;
/// Height of the mound (Official Baseball Rules 2.04: 10 in), and its radius, 9 ft.
const MOUND_HEIGHT: f64 = 10.0 * INCH;
const MOUND_RADIUS: f64 = 9.0 * FOOT;

/// `sight` drawn for a pitcher of `hand`; the names and inks follow its paths.
pub(crate) fn hitter_view(sight: &Sight, names: &[&str], inks: &[Ink], hand: Hand) -> Picture {
    let camera = Camera::of(sight, hand);
    let strip = (ROW * names.len() as f64 + 34.0).max(118.0);
    let mut drawing = sheet(SCENE + strip);
    drawing.add(scene(&camera, sight, inks));
    drawing.add_all(plate(sight, inks, hand, strip));
    drawing.add_all(list(sight, names, inks));
    Picture {
        title: format!("As {} hitters see it", side_name(sight.side)).into(),
        description: description(sight, names),
        drawing,
        legend: "From the hitter\u{2019}s eye, all pitches leaving the hand on one line. Solid until the decision, dashed \
                 beyond. Balls are drawn at their size then: two can just be told apart whose middles stand about a \
                 ball\u{2019}s radius apart. Below, the strike zone and where each ends; how far from the first each is \
                 at the decision, how many times what can be told that is, and how far at the plate."
            .into(),
        table: table(sight, names),
        in_text: InText::Nothing,
    }
}

fn description(sight: &Sight, names: &[&str]) -> String {
    let others = names.iter().zip(&sight.paths).skip(1).map(|(name, path)| {
        format!(
            "{name}: {} degrees from it at the decision, {} in at the plate",
            plain(path.gap_deg, 1),
            plain(path.plate_gap_in, 0)
        )
    });
    let line = names.first().copied().unwrap_or_default();
    format!(
        "All pitches leave the hand on the line of the {line}. The hitter can just tell {} degrees. {}.",
        plain(sight.resolvable_deg, 1),
        others.collect::<Vec<String>>().join("; ")
    )
}

fn table(sight: &Sight, names: &[&str]) -> Table {
    let rows = names.iter().zip(&sight.paths).map(|(&name, path)| {
        row![name, plain(path.gap_deg, 2), plain(path.gap_deg / sight.resolvable_deg, 1), plain(path.plate_gap_in, 1),]
    });
    let heads = columns!["pitch", "degrees apart at decision", "times what can be told", "in apart at the plate"];
    Table::new(heads, rows)
}

/// A camera at the hitter's eye.
#[derive(Debug, Clone, Copy)]
struct Camera {
    forward: Vec3,
    right: Vec3,
    up: Vec3,
    mirror: f64,
    scale: f64,
    shift: Point,
}

impl Camera {
    /// Looks at the middle of release and decision points, wide enough for all of them.
    fn of(sight: &Sight, hand: Hand) -> Self {
        let must_see: Vec<Vec3> = sight.paths.iter().flat_map(|path| [first(path), last(path)]).collect();
        let forward = must_see.iter().fold(Vec3::default(), |sum, &point| sum + point.unit()).unit();
        let right = forward.cross(Vec3::new(0.0, 0.0, 1.0)).unit();
        let up = right.cross(forward);
        let mirror = if hand == Hand::Right { 1.0 } else { -1.0 };
        let plain = Self { forward, right, up, mirror, scale: 1.0, shift: (0.0, 0.0) };
        let seen: Vec<Point> = must_see.iter().map(|&point| plain.project(point)).collect();
        let (across, down) = (range_of(seen.iter().map(|p| p.0)), range_of(seen.iter().map(|p| p.1)));
        let free = (FREE_DEG * DEGREE).tan();
        // More room below, where the balls go on to, and above for the pitcher's head.
        let (width, height) = (across.1 - across.0 + 3.4 * free, down.1 - down.0 + 3.4 * free);
        let scale = (WIDTH / width).min(SCENE / height).min(2100.0);
        let middle = (f64::midpoint(across.0, across.1), f64::midpoint(down.0, down.1));
        let shift = (WIDTH / 2.0 - scale * middle.0, SCENE * 0.45 - scale * middle.1);
        Self { scale, shift, ..plain }
    }

    /// Where a point (from the eye) is drawn.
    fn project(&self, point: Vec3) -> Point {
        let depth = point.dot(self.forward).max(0.05);
        let x = self.mirror * point.dot(self.right) / depth;
        let y = -point.dot(self.up) / depth;
        (self.shift.0 + self.scale * x, self.shift.1 + self.scale * y)
    }

    /// How large a length at a point is drawn.
    fn length(&self, point: Vec3, length: f64) -> f64 {
        self.scale * length / point.dot(self.forward).max(0.05)
    }
}

fn first(path: &SeenPath) -> Vec3 {
    path.until_decision.first().copied().unwrap_or_default()
}

fn last(path: &SeenPath) -> Vec3 {
    path.until_decision.last().copied().unwrap_or_default()
}

/// The field, the pitcher and the pitches, cut at the frame by a nested view box.
fn scene(camera: &Camera, sight: &Sight, inks: &[Ink]) -> Tag {
    let mut tags = field(camera, sight);
    tags.extend(pitcher(camera, sight));
    for (path, ink) in sight.paths.iter().zip(inks) {
        let line = |looks: &[Vec3]| looks.iter().map(|&look| camera.project(look)).collect::<Vec<Point>>();
        let beyond: Vec<Vec3> = path.after_decision.iter().copied().take_while(|look| look.y > 5.0 * FOOT).collect();
        tags.push(Tag::polyline(&line(&beyond)).class(&format!("beyond {}", ink.stroke())));
        tags.push(Tag::polyline(&line(&path.until_decision)).class(&format!("path {}", ink.stroke())));
    }
    for (path, ink) in sight.paths.iter().zip(inks) {
        tags.extend(ball_at_decision(camera, path, *ink));
    }
    // In the corner away from the hand nothing is drawn.
    let hand_is_left = sight.paths.first().is_some_and(|path| camera.project(first(path)).0 < WIDTH / 2.0);
    let (x, class) = if hand_is_left { (WIDTH - 10.0, "edge end") } else { (10.0, "edge") };
    tags.push(Tag::text((x, 18.0), "balls: at the decision").class(class));
    let window = format!("0 0 {WIDTH} {SCENE}");
    Tag::new("svg").set("viewBox", &window).num("width", WIDTH).num("height", SCENE).child(Tag::group(tags))
}

fn ball_at_decision(camera: &Camera, path: &SeenPath, ink: Ink) -> Vec<Tag> {
    let ball = last(path);
    let place = camera.project(ball);
    let radius = camera.length(ball, BALL_RADIUS);
    vec![Tag::circle(place, radius).class("leather"), ink.at(place, radius * 0.62)]
}

/// Grass to the horizon, the mound, the rubber.
fn field(camera: &Camera, sight: &Sight) -> Vec<Tag> {
    let ground = -sight.eye.z;
    let at = |x: f64, y: f64, z: f64| camera.project(Vec3::new(x - sight.eye.x, y - sight.eye.y, ground + z));
    let horizon = at(0.0, 900.0, 0.0).1;
    let centre = RUBBER_Y - 1.5 * FOOT;
    let rim: Vec<Point> = (0..32)
        .map(|step| {
            let (sin, cos) = (f64::from(step) / 32.0 * std::f64::consts::TAU).sin_cos();
            let rise = if sin > 0.0 { MOUND_HEIGHT * sin } else { 0.0 };
            at(MOUND_RADIUS * cos, centre + MOUND_RADIUS * sin * 0.8, rise)
        })
        .collect();
    let rubber = [-1.0, 1.0].map(|side| at(side * 1.0 * FOOT, RUBBER_Y, MOUND_HEIGHT));
    vec![
        Tag::rect((0.0, horizon), (WIDTH, (SCENE - horizon).max(0.0))).class("grass"),
        Tag::polygon(&rim).class("clay"),
        Tag::line(rubber[0], rubber[1]).class("rubber"),
    ]
}

/// A plain figure behind the release point, drawn from the feet up.
fn pitcher(camera: &Camera, sight: &Sight) -> Vec<Tag> {
    let Some(hand) = sight.paths.first().map(first) else {
        return Vec::new();
    };
    let y = hand.y + 0.5 * FOOT;
    let ground = -sight.eye.z;
    let body = -sight.eye.x - 0.3 * FOOT;
    let at = |x: f64, z: f64| Vec3::new(x, y, z);
    let (hip, neck) = (at(body, ground + 3.0 * FOOT), at(body - 0.15 * FOOT, ground + 4.75 * FOOT));
    let limb = |points: &[Vec3], thick: f64| {
        let places: Vec<Point> = points.iter().map(|&point| camera.project(point)).collect();
        Tag::polyline(&places).num("stroke-width", camera.length(hip, thick)).class("figure")
    };
    let head = neck + Vec3::new(0.15 * FOOT, 0.0, 0.55 * FOOT);
    let glove = at(body + 0.9 * FOOT, ground + 3.9 * FOOT);
    vec![
        limb(
            &[hip, at(body - 0.5 * FOOT, ground + 1.7 * FOOT), at(body - 0.9 * FOOT, ground + 1.6 * FOOT)],
            0.42 * FOOT,
        ),
        limb(
            &[hip, at(body + 0.45 * FOOT, ground + 1.7 * FOOT), at(body + 0.4 * FOOT, ground + 0.4 * FOOT)],
            0.46 * FOOT,
        ),
        limb(&[hip, neck], 0.85 * FOOT),
        limb(&[neck, at(body + 0.75 * FOOT, ground + 4.2 * FOOT), glove], 0.34 * FOOT),
        limb(&[neck, hand], 0.32 * FOOT),
        Tag::circle(camera.project(head), camera.length(head, 0.42 * FOOT)).class("head"),
    ]
}

/// The strike zone with where each pitch ends, as the hitter looks toward the pitcher.
fn plate(sight: &Sight, inks: &[Ink], hand: Hand, strip: f64) -> Vec<Tag> {
    let mirror = if hand == Hand::Right { 1.0 } else { -1.0 };
    let (left, top, width, height) = (14.0, SCENE + 12.0, 112.0, strip - 24.0);
    let half = ZONE.half_width / INCH;
    let (bottom, upper) = (ZONE.bottom / INCH, ZONE.top / INCH);
    let across = range_of(sight.paths.iter().map(|path| path.plate_in[0] * mirror).chain([-half, half]));
    let heights = range_of(sight.paths.iter().map(|path| path.plate_in[1]).chain([bottom, upper]));
    let scale = ((width - 16.0) / (across.1 - across.0)).min((height - 16.0) / (heights.1 - heights.0));
    let spot = |x: f64, z: f64| {
        let middle = (f64::midpoint(across.0, across.1), f64::midpoint(heights.0, heights.1));
        (left + width / 2.0 + scale * (x - middle.0), top + height / 2.0 - scale * (z - middle.1))
    };
    let corner = spot(-half, upper);
    let size = (2.0 * half * scale, (upper - bottom) * scale);
    let edge = PLATE_HALF_WIDTH / INCH;
    let mut tags = vec![
        Tag::line((0.0, SCENE), (WIDTH, SCENE)).class("hair"),
        Tag::rect(corner, size).class("zone"),
        Tag::line(spot(-edge, bottom - 2.0), spot(edge, bottom - 2.0)).class("rubber"),
    ];
    let place = |path: &SeenPath| spot(path.plate_in[0] * mirror, path.plate_in[1]);
    if let Some(origin) = sight.paths.first().map(place) {
        tags.extend(sight.paths.iter().skip(1).map(|path| Tag::line(origin, place(path)).class("tie")));
    }
    tags.extend(sight.paths.iter().zip(inks).map(|(path, ink)| ink.at(place(path), 5.5)));
    tags
}

/// What each pitch comes to, a line each under a header.
fn list(sight: &Sight, names: &[&str], inks: &[Ink]) -> Vec<Tag> {
    let header = SCENE + 20.0;
    let mut tags = vec![
        Tag::text((COLUMNS[0], header), "apart").class("edge end"),
        Tag::text((COLUMNS[1], header), "times").class("edge end"),
        Tag::text((COLUMNS[2], header), "plate").class("edge end"),
    ];
    for (index, ((name, ink), path)) in names.iter().zip(inks).zip(&sight.paths).enumerate() {
        let y = header + ROW * (index + 1) as f64;
        tags.push(ink.at((142.0, y - 4.0), 5.5));
        tags.push(Tag::text((153.0, y), &short(name, 11)).class("name"));
        let figures = [
            format!("{}\u{b0}", plain(path.gap_deg, 1)),
            format!("{}\u{d7}", plain(path.gap_deg / sight.resolvable_deg, 1)),
            format!("{} in", plain(path.plate_gap_in, 0)),
        ];
        if index == 0 {
            tags.push(Tag::text((COLUMNS[2], y), "sets the line").class("small end"));
        } else {
            tags.extend(figures.iter().zip(COLUMNS).map(|(words, x)| Tag::text((x, y), words).class("small end")));
        }
    }
    tags
}

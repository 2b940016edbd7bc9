//! Where to throw it: the zone as the catcher sees it, each pitch's aim, and the ellipse that holds half of its throws.

use crate::base::Location;
use crate::base::geometry::{Hand, PLATE_HALF_WIDTH, Side};
use crate::base::units::INCH;
use crate::decide::facing::{Spot, Spots};
use crate::hitter::Zone;

use super::super::content::{InText, Picture, Table, Text};
use super::super::svg::{Point, Tag};
use super::labels::Labels;
use super::marks::Ink;
use super::sheet::{WIDTH, sheet, short};

/// One pitch and where it goes against the side drawn.
#[derive(Debug, Clone)]
pub(crate) struct AimedPitch<'a> {
    /// What it is called.
    pub(crate) name: &'a str,
    /// How it is drawn.
    pub(crate) ink: Ink,
    /// Where it goes.
    pub(crate) spots: Spots,
    /// The same, in words: early, and with two strikes.
    pub(crate) words: [String; 2],
}

/// The plate that is drawn.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Plate {
    /// The hitter's zone.
    pub(crate) zone: Zone,
    /// Which hitters.
    pub(crate) side: Side,
    /// The pitcher's hand.
    pub(crate) hand: Hand,
}

const HEIGHT: f64 = 300.0;
/// Units of the picture to the inch.
const PER_INCH: f64 = 6.2;
/// Where the middle of the zone is drawn.
const MIDDLE: Point = (WIDTH / 2.0, 146.0);
/// Half axes of the ellipse that holds half of the throws, in standard deviations.
const HALF_OF_THROWS: f64 = 1.177;
const MARK: f64 = 7.0;

/// The aims before hitters of one side, under a title and with their table.
pub(crate) fn aims(title: impl Into<Text>, pitches: &[AimedPitch], plate: Plate, table: Table) -> Picture {
    let mut drawing = sheet(HEIGHT);
    let mut labels = Labels::within((8.0, 24.0), (WIDTH - 8.0, HEIGHT - 20.0));
    for pitch in pitches {
        drawing.add(plate.ellipse(pitch));
        labels.keep_free(plate.at(pitch.spots.early.aim), MARK + 2.0);
        labels.keep_free(plate.at(pitch.spots.two_strikes.aim), MARK);
    }
    drawing.add_all(plate.ground());
    for pitch in pitches {
        let (early, late) = (plate.at(pitch.spots.early.aim), plate.at(pitch.spots.two_strikes.aim));
        drawing.add(Tag::line(early, late).class("tie"));
        drawing.add(pitch.ink.hollow_at(late, MARK - 1.5));
        drawing.add(pitch.ink.at(early, MARK));
    }
    for pitch in pitches {
        let early = plate.at(pitch.spots.early.aim);
        drawing.add_all(labels.beside(early, MARK, &[(&short(pitch.name, 14), "name")], 12.0));
    }
    Picture {
        title: title.into(),
        description: format!("{}.", pitches.iter().map(said).collect::<Vec<String>>().join("; ")),
        drawing,
        legend: "As the catcher sees it, from behind the plate. Filled: where to aim with fewer than two strikes, in \
                 the ellipse where half of the throws end. Hollow: where to aim with two strikes."
            .into(),
        table,
        in_text: InText::Nothing,
    }
}

fn said(pitch: &AimedPitch) -> String {
    let [early, late] = &pitch.words;
    format!("{}: {early}; with two strikes {late}", pitch.name)
}

impl Plate {
    /// 1 where glove side is the catcher's right.
    fn right(self) -> f64 {
        if self.hand == Hand::Right { 1.0 } else { -1.0 }
    }

    fn at(self, place: Location) -> Point {
        let off = place.height_in - self.zone.middle_in;
        (MIDDLE.0 + PER_INCH * self.right() * place.glove_side_in, MIDDLE.1 - PER_INCH * off)
    }

    fn ellipse(self, pitch: &AimedPitch) -> Tag {
        let Spot { aim, scatter } = pitch.spots.early;
        let half = [scatter.side_in, scatter.height_in].map(|sd| PER_INCH * HALF_OF_THROWS * sd);
        let ink = pitch.ink;
        Tag::ellipse(self.at(aim), (half[0], half[1])).class(&format!("scatter {} {}", ink.fill(), ink.stroke()))
    }

    /// The zone in thirds, the plate below it, and on which side the hitter stands.
    fn ground(self) -> Vec<Tag> {
        let (half, tall) = (PER_INCH * PLATE_HALF_WIDTH / INCH, PER_INCH * self.zone.half_in);
        let (x, y) = MIDDLE;
        let upright = |share: f64| Tag::line((x + share * half, y - tall), (x + share * half, y + tall)).class("hair");
        let level = |share: f64| Tag::line((x - half, y + share * tall), (x + half, y + share * tall)).class("hair");
        let thirds = [-1.0, 1.0].into_iter().flat_map(|sign| [upright(sign / 3.0), level(sign / 3.0)]);
        let bottom = y + tall + 26.0;
        let stands = -self.side.away_sign() * self.right();
        let (edge, class) = if stands < 0.0 { (12.0, "edge") } else { (WIDTH - 12.0, "edge end") };
        let zone = Tag::rect((x - half, y - tall), (2.0 * half, 2.0 * tall)).class("zone");
        let rest = [
            zone,
            Tag::line((x - half, bottom), (x + half, bottom)).class("rubber"),
            Tag::text((edge, HEIGHT - 10.0), "the hitter stands here").class(class),
        ];
        thirds.chain(rest).collect()
    }
}

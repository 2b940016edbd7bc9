//! What hitters did with real pitches, by pitch and side, and what the model would have expected.

use crate::athlete::profile::{PerSide, Spread};
use crate::athlete::session::{Outcome, Session};
use crate::ball::flight::Air;
use crate::ball::flight::inverse::{MIDDLE, throw_of_shape};
use crate::ball::{Family, Shape};
use crate::base::Location;
use crate::base::geometry::{Side, Vec3};
use crate::base::stats::normal_points;
use crate::base::units::FOOT;
use crate::former::hitter::{Facing, Hitter, PitchLaw, Rates, Setting};
use crate::throws::{Assignment, Sorted};

/// Outcomes that the evidence tells apart: ball, called strike, miss, foul, in play.
pub(super) const CLASSES: usize = 5;

/// Real pitches of one athlete, by pitch, side and game.
#[derive(Debug, Clone, PartialEq)]
pub struct Evidence {
    /// Family and mean shape of each pitch, with its scatter.
    pub pitches: Vec<(Family, Shape, Spread)>,
    /// Every pitch and side that was thrown.
    pub cells: Vec<Cell>,
    /// Number of games.
    pub games: usize,
    release: Vec3,
}

/// One pitch against one side.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// Index into [`Evidence::pitches`].
    pub pitch: usize,
    /// The side.
    pub side: Side,
    /// Mean place at the plate (glove side, height), in.
    pub place_in: [f64; 2],
    /// Its standard deviations, in.
    pub scatter_in: [f64; 2],
    /// What happened, by game.
    pub by_game: Vec<Counts>,
}

/// Counts by class: ball, called strike, miss, foul, in play.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Counts(pub [u32; 5]);

impl Counts {
    /// All pitches.
    pub fn pitches(self) -> u32 {
        self.0.iter().sum()
    }

    /// Pitches swung at.
    pub fn swings(self) -> u32 {
        self.0[2] + self.0[3] + self.0[4]
    }

    fn add(&mut self, other: Self) {
        for (sum, count) in self.0.iter_mut().zip(other.0) {
            *sum += count;
        }
    }
}

/// Release assumed for the evidence, whose file has none: a tall pitcher's, common practice.
const RELEASE_HEIGHT_FT: f64 = 6.1;
const RELEASE_SIDE_FT: f64 = 1.8;
const RELEASE_Y_FT: f64 = 54.5;
/// Release scatter assumed, in.
const RELEASE_SCATTER_IN: f64 = 1.5;

impl Evidence {
    /// From a session and how it was sorted. Throws without a place at the plate, a batter's side or
    /// an outcome say nothing here.
    pub fn of(session: &Session, sorted: &Sorted) -> Self {
        let pitches = sorted.groups.iter().map(|group| {
            let spread = Spread {
                speed_mph: group.spread.speed_mph,
                vertical_break_in: group.spread.vertical_break_in,
                glove_side_break_in: group.spread.glove_side_break_in,
                command_side_in: 0.0,
                command_height_in: 0.0,
                release_in: RELEASE_SCATTER_IN,
            };
            (group.naming.family, group.shape(), spread)
        });
        let cells = (0..sorted.groups.len())
            .flat_map(|pitch| Side::BOTH.map(|side| cell(session, sorted, pitch, side)))
            .flatten()
            .collect();
        Self {
            pitches: pitches.collect(),
            cells,
            games: session.days.len(),
            release: Vec3::new(-RELEASE_SIDE_FT * FOOT, RELEASE_Y_FT * FOOT, RELEASE_HEIGHT_FT * FOOT),
        }
    }

    /// What the model expects in every cell, in order.
    pub fn expected(&self, hitter: &Hitter) -> Vec<Rates> {
        let sides = PerSide::from_fn(|side| self.expected_on(hitter, side));
        let mut places = PerSide::from_fn(|_| 0);
        self.cells
            .iter()
            .map(|cell| {
                let place = match cell.side {
                    Side::Same => &mut places.same,
                    Side::Opposite => &mut places.opposite,
                };
                *place += 1;
                sides.on(cell.side)[*place - 1]
            })
            .collect()
    }

    fn expected_on(&self, hitter: &Hitter, side: Side) -> Vec<Rates> {
        let cells: Vec<&Cell> = self.cells.iter().filter(|cell| cell.side == side).collect();
        let decision = self.decision(hitter);
        let laws: Vec<(PitchLaw, PitchLaw)> = cells
            .iter()
            .map(|cell| {
                let law = self.law(cell, decision, hitter);
                (law.clone(), law)
            })
            .collect();
        let total: f64 = cells.iter().map(|cell| f64::from(cell.counts(|_| true).pitches())).sum();
        let mix: Vec<f64> = cells.iter().map(|cell| f64::from(cell.counts(|_| true).pitches()) / total).collect();
        Facing::new(&laws, hitter, side, &normal_points(POINTS, 0.0)).expected(&mix).rates
    }

    /// The whole scatter at the plate is both how the pitch is thrown and how the hitter knows it.
    fn law(&self, cell: &Cell, decision: f64, hitter: &Hitter) -> PitchLaw {
        let (_, shape, spread) = self.pitches[cell.pitch];
        let spread = Spread { command_side_in: cell.scatter_in[0], command_height_in: cell.scatter_in[1], ..spread };
        let setting = Setting { release: self.release, air: Air::SEA_LEVEL, decision };
        let place = Location { glove_side_in: cell.place_in[0], height_in: cell.place_in[1] };
        PitchLaw::new(shape, &spread, place, &setting, cell.side, &hitter.eyes)
    }

    fn decision(&self, hitter: &Hitter) -> f64 {
        let arrival = |shape: Shape| throw_of_shape(shape, self.release, MIDDLE, Air::SEA_LEVEL).fly().crossing().time;
        self.pitches.iter().map(|&(_, shape, _)| arrival(shape)).fold(f64::INFINITY, f64::min)
            - hitter.eyes.decision_lead
    }
}

/// Points of the even set.
const POINTS: usize = 128;
/// Fewer pitches than this have no mean worth the name.
const FEWEST: u32 = 10;

fn cell(session: &Session, sorted: &Sorted, pitch: usize, side: Side) -> Option<Cell> {
    let mut by_game = vec![Counts::default(); session.days.len()];
    let mut places = Vec::new();
    for (throw, assignment) in session.throws.iter().zip(&sorted.assignments) {
        let is_here = matches!(assignment, Assignment::Group { index, .. } if *index == pitch);
        let class = throw.outcome.and_then(class);
        let (Some(class), Some(x), Some(z)) = (class, throw.plate.side_in, throw.plate.height_in) else {
            continue;
        };
        if is_here && throw.batter_side == Some(side) {
            by_game[usize::from(throw.day)].0[class] += 1;
            places.push([x, z]);
        }
    }
    let count = u32::try_from(places.len()).unwrap_or(u32::MAX);
    let mean = |axis: usize| places.iter().map(|place| place[axis]).sum::<f64>() / f64::from(count);
    let sd = |axis: usize| {
        let centre = mean(axis);
        (places.iter().map(|place| (place[axis] - centre).powi(2)).sum::<f64>() / f64::from(count - 1)).sqrt()
    };
    (count >= FEWEST).then(|| Cell { pitch, side, place_in: [mean(0), mean(1)], scatter_in: [sd(0), sd(1)], by_game })
}

fn class(outcome: Outcome) -> Option<usize> {
    match outcome {
        Outcome::Ball => Some(0),
        Outcome::CalledStrike => Some(1),
        Outcome::SwingAndMiss => Some(2),
        Outcome::Foul => Some(3),
        Outcome::WeakContact | Outcome::SolidContact | Outcome::InPlay => Some(4),
        Outcome::HitByPitch => None,
    }
}

impl Cell {
    /// Counts over the games that `keep` says.
    pub fn counts(&self, keep: impl Fn(usize) -> bool) -> Counts {
        let mut sum = Counts::default();
        for (_, counts) in self.by_game.iter().enumerate().filter(|(game, _)| keep(*game)) {
            sum.add(*counts);
        }
        sum
    }
}

/// Chances of the classes that the model's rates mean: half of weak contact and a fifth of solid
/// contact go foul, as in [`crate::former::hitter::RunValues`].
pub(super) fn class_chances(rates: &Rates) -> [f64; CLASSES] {
    [
        rates.ball,
        rates.called_strike,
        rates.swing_and_miss,
        0.5 * rates.weak_contact + 0.2 * rates.solid_contact,
        0.5 * rates.weak_contact + 0.8 * rates.solid_contact,
    ]
}

//! What hitters know of each pitcher of a day: his pitches as he throws them, and how often to each
//! side. Everything is taken from the day itself, small groups pulled toward the league.

use std::collections::HashMap;

use arsenalfit::base::Movement;
use arsenalfit::base::geometry::Side;

use crate::day::{Day, Throw};
use crate::league::League;

/// The league's movement counts as so many throws of a pitch.
const LEAGUE_THROWS: f64 = 2.0;
/// A pitcher's shares over both sides count as so many throws to a side.
const SHARE_THROWS: f64 = 6.0;
/// A release where none was measured: the league day's means, ft.
const USUAL_RELEASE_FT: (f64, f64) = (5.8, 1.9);

/// Throws of one pitcher with one label.
#[derive(Debug, Clone, Default)]
pub struct Group {
    /// The label.
    pub label: String,
    /// How many throws.
    pub throws: f64,
    /// Of these, to same-side and opposite-side hitters.
    pub to_side: [f64; 2],
    /// Means over the throws: release speed.
    pub speed_mph: f64,
    /// From release to the front of the plate.
    pub time_s: f64,
    /// Against gravity alone.
    pub movement: Movement,
    /// Release height.
    pub release_height_ft: f64,
    /// Release side, to the throwing arm.
    pub release_side_ft: f64,
}

/// One pitcher's pitches, in order of first mention.
#[derive(Debug, Clone, Default)]
pub struct Arsenal {
    /// His pitches.
    pub groups: Vec<Group>,
}

/// Every pitcher of a day.
#[derive(Debug, Clone, Default)]
pub struct Arsenals {
    by_pitcher: HashMap<String, Arsenal>,
}

/// What the means need of a throw; nothing when it was not measured.
pub fn is_usable(throw: &Throw) -> bool {
    throw.measured.is_some() && throw.flight.is_some()
}

/// Release height and side of a throw, ft.
pub fn release_ft(throw: &Throw) -> (f64, f64) {
    let measured = throw.measured.map(|measured| measured.release).unwrap_or_default();
    (measured.height_ft.unwrap_or(USUAL_RELEASE_FT.0), measured.side_ft.unwrap_or(USUAL_RELEASE_FT.1))
}

impl Arsenals {
    /// Of a day, with the movement of small groups pulled to the league's.
    pub fn of(day: &Day, league: &League) -> Self {
        let mut arsenals = Self::as_thrown(day);
        for group in arsenals.by_pitcher.values_mut().flat_map(|arsenal| &mut arsenal.groups) {
            let own = group.throws / (group.throws + LEAGUE_THROWS);
            group.movement = group.movement * own + league.movement(group) * (1.0 - own);
        }
        arsenals
    }

    /// The plain means.
    pub fn as_thrown(day: &Day) -> Self {
        let mut by_pitcher: HashMap<String, Arsenal> = HashMap::new();
        for throw in day.throws.iter().filter(|throw| is_usable(throw)) {
            by_pitcher.entry(throw.pitcher.clone()).or_default().add(throw);
        }
        for group in by_pitcher.values_mut().flat_map(|arsenal| &mut arsenal.groups) {
            group.turn_sums_to_means();
        }
        Self { by_pitcher }
    }

    /// The arsenal of this pitcher; nothing when none of his throws was measured.
    pub fn of_pitcher(&self, pitcher: &str) -> Option<&Arsenal> {
        self.by_pitcher.get(pitcher)
    }

    /// All groups of all pitchers, in the order of their names.
    pub fn groups(&self) -> Vec<Group> {
        let mut pitchers: Vec<_> = self.by_pitcher.iter().collect();
        pitchers.sort_by_key(|(name, _)| *name);
        pitchers.into_iter().flat_map(|(_, arsenal)| arsenal.groups.iter().cloned()).collect()
    }
}

impl Arsenal {
    /// The share of each pitch to a side.
    pub fn shares(&self, side: Side) -> Vec<f64> {
        let all: f64 = self.groups.iter().map(|group| group.throws).sum();
        let to_side: f64 = self.groups.iter().map(|group| group.to_side[index(side)]).sum();
        let share =
            |group: &Group| (group.to_side[index(side)] + SHARE_THROWS * group.throws / all) / (to_side + SHARE_THROWS);
        self.groups.iter().map(share).collect()
    }

    fn add(&mut self, throw: &Throw) {
        let place = self.groups.iter().position(|group| group.label == throw.label).unwrap_or_else(|| {
            self.groups.push(Group { label: throw.label.clone(), ..Group::default() });
            self.groups.len() - 1
        });
        self.groups[place].add(throw);
    }
}

impl Group {
    fn add(&mut self, throw: &Throw) {
        let (Some(measured), Some(flight)) = (throw.measured, throw.flight) else { return };
        let (height, side) = release_ft(throw);
        self.throws += 1.0;
        if let Some(side) = throw.side {
            self.to_side[index(side)] += 1.0;
        }
        self.speed_mph += measured.shape.speed_mph;
        self.time_s += flight.time_s;
        self.movement = self.movement + flight.movement_against_gravity();
        self.release_height_ft += height;
        self.release_side_ft += side;
    }

    fn turn_sums_to_means(&mut self) {
        let one = 1.0 / self.throws;
        self.speed_mph *= one;
        self.time_s *= one;
        self.movement = self.movement * one;
        self.release_height_ft *= one;
        self.release_side_ft *= one;
    }
}

fn index(side: Side) -> usize {
    match side {
        Side::Same => 0,
        Side::Opposite => 1,
    }
}

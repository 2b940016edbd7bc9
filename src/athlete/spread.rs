//! How much an athlete's throws scatter: measured, or what is usual for a pitch of a family at a level.

use super::profile::Level;
use crate::ball::Family;

/// Scatter of the release point, in, each of height and side: 1.0 and 1.6 in within professional pitchers on that day,
/// of every family about alike.
const USUAL_RELEASE_IN: f64 = 1.3;

/// Throw-to-throw standard deviations of one pitch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Release speed.
    pub speed_mph: f64,
    /// Vertical break.
    pub vertical_break_in: f64,
    /// Glove-side break.
    pub glove_side_break_in: f64,
    /// Where it crosses the plate, sideways, about its target: command alone, not the choice of targets.
    pub command_side_in: f64,
    /// Where it crosses the plate, up and down, about its target.
    pub command_height_in: f64,
    /// Release point, each of height and side.
    pub release_in: f64,
}

/// A professional's command, in, sideways and up and down alike and of every pitch: a default that differed from pitch
/// to pitch would decide between them. The scatter of real places about their mean, 8 to 10 in, mixes it with the choice
/// of targets, and how much is which is not in the data: an assumption.
pub const PROFESSIONAL_COMMAND_IN: f64 = 6.5;

impl Spread {
    /// What is usual at `level`. Of professionals: standard deviations within a pitcher, averaged over pitchers, on one
    /// day of the top league (R package abdwr3edata, CC0; 9 pitchers for the splitter to 83 for the four-seam). Other
    /// levels: wider by [`Spread::factor`]. A two-seam is taken for a sinker and a knuckleball for a splitter.
    pub fn usual(family: Family, level: Level) -> Self {
        let (speed_mph, vertical_break_in, glove_side_break_in) = match family {
            Family::FourSeam => (1.0, 1.5, 1.9),
            Family::TwoSeam | Family::Sinker => (0.9, 1.9, 1.8),
            Family::Cutter => (1.0, 2.2, 1.8),
            Family::Slider => (1.1, 2.2, 2.3),
            Family::Sweeper => (1.0, 2.7, 2.6),
            Family::Curveball => (1.1, 2.2, 2.2),
            Family::Changeup => (1.0, 2.3, 1.8),
            Family::Splitter | Family::Knuckleball => (1.0, 2.6, 2.3),
        };
        let professional = Self {
            speed_mph,
            vertical_break_in,
            glove_side_break_in,
            command_side_in: PROFESSIONAL_COMMAND_IN,
            command_height_in: PROFESSIONAL_COMMAND_IN,
            release_in: USUAL_RELEASE_IN,
        };
        professional.times(Self::factor(level))
    }

    /// How much wider throws scatter at a level than a professional's. Common practice, no published source: that
    /// younger arms scatter more is common knowledge, by how much is an assumption.
    pub fn factor(level: Level) -> f64 {
        match level {
            Level::Professional => 1.0,
            Level::College => 1.15,
            Level::HighSchool => 1.3,
            Level::Youth => 1.5,
        }
    }

    /// The scatter to expect of a pitch he has yet to learn: the mean over his `pitches` other than
    /// fastballs, or over all of them when he throws no other.
    pub fn to_expect<'s>(pitches: impl Iterator<Item = (Family, &'s Self)>) -> Self {
        let (fastballs, others): (Vec<_>, Vec<_>) = pitches.partition(|(family, _)| family.is_fastball());
        let from = if others.is_empty() { fastballs } else { others };
        let mean = |read: fn(&Self) -> f64| {
            from.iter().map(|(_, spread)| read(spread)).sum::<f64>() / from.len().max(1) as f64
        };
        Self {
            speed_mph: mean(|s| s.speed_mph),
            vertical_break_in: mean(|s| s.vertical_break_in),
            glove_side_break_in: mean(|s| s.glove_side_break_in),
            command_side_in: mean(|s| s.command_side_in),
            command_height_in: mean(|s| s.command_height_in),
            release_in: mean(|s| s.release_in),
        }
    }

    /// Every scatter times `factor`.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self {
            speed_mph: factor * self.speed_mph,
            vertical_break_in: factor * self.vertical_break_in,
            glove_side_break_in: factor * self.glove_side_break_in,
            command_side_in: factor * self.command_side_in,
            command_height_in: factor * self.command_height_in,
            release_in: factor * self.release_in,
        }
    }
}

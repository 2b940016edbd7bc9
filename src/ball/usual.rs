//! What real pitches of a family show: how much of their spin is active, what their seams add, how much they spin, where
//! they cross. The start for a pitch of which less is known, and the yardstick for one that was measured.
//!
//! Counted on the pitches with measured spin of one day of the top league (4,404 throws, 135 pitchers; R package
//! abdwr3edata, CC0), flown by this crate with the default lift law in standard air; standard deviations are between
//! pitchers with five throws or more, what their own throws leave open taken out. A test counts every number again.

use super::Family;
use crate::base::geometry::Clock;
use crate::base::{Location, Movement};

/// What pitches of a family usually show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Usual {
    /// Share of the spin that is active.
    pub active_share: ActiveShare,
    /// What is left for the seams.
    pub seams: SeamPush,
    /// Total spin per mph of release speed.
    pub rpm_per_mph: f64,
    /// Where pitches cross on average, both sides of hitters together.
    pub place: Location,
    /// Pitchers behind the spreads.
    pub pitchers: u16,
}

/// The share of the spin that is active, as the default lift law reads movement: the share at which the movement it
/// gives along the spin's push is the measured one, averaged over the family's throws. It is no measurement of an axis:
/// whatever else weakens the push along itself is inside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ActiveShare {
    /// The family's mean, 0 to 1.
    pub mean: f64,
    /// Standard deviation between pitchers.
    pub sd: f64,
}

/// Movement left when the spin's push is taken away: the seams' push, as far as it is measured. Only what lies across
/// the spin's push can be told from the spin's own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SeamPush {
    /// The mean over pitchers.
    pub mean: Movement,
    /// Standard deviations between pitchers.
    pub sd: Movement,
    /// The mean across the spin's push, in, positive where up turns toward the glove side.
    pub across_in: f64,
    /// Standard deviation of that between pitchers, in.
    pub across_sd_in: f64,
}

/// Where pitches cross the front of the plate on average, whatever they are.
pub const USUAL_PLACE: Location = Location { glove_side_in: 0.5, height_in: 26.9 };

impl Usual {
    /// What a family shows; nothing of the knuckleball, of which the day had none. A two-seam shows what a sinker does:
    /// the day's labels know one name for both.
    pub fn of(family: Family) -> Option<&'static Self> {
        match family {
            Family::FourSeam => Some(&FOUR_SEAM),
            Family::TwoSeam | Family::Sinker => Some(&SINKER),
            Family::Cutter => Some(&CUTTER),
            Family::Slider => Some(&SLIDER),
            Family::Sweeper => Some(&SWEEPER),
            Family::Curveball => Some(&CURVEBALL),
            Family::Changeup => Some(&CHANGEUP),
            Family::Splitter => Some(&SPLITTER),
            Family::Knuckleball => None,
        }
    }

    /// What a pitch shows that is so much of this family and so much of that: means mixed by weight, and spreads that
    /// hold both those of the families and how far apart these are. Nothing when no weight is on a family known here.
    pub fn blend(weights: &[(Family, f64)]) -> Option<Self> {
        let known: Vec<(&Self, f64)> = weights.iter().filter_map(|&(f, weight)| Some((Self::of(f)?, weight))).collect();
        let total: f64 = known.iter().map(|(_, weight)| weight).sum();
        if total <= 0.0 {
            return None;
        }
        let mean = |read: &dyn Fn(&Self) -> f64| known.iter().map(|(u, weight)| weight / total * read(u)).sum::<f64>();
        let sd = |middle: f64, read: &dyn Fn(&Self) -> (f64, f64)| {
            let squared = |u: &Self| read(u).1.powi(2) + (read(u).0 - middle).powi(2);
            mean(&squared).sqrt()
        };
        let (share, across) = (mean(&|u| u.active_share.mean), mean(&|u| u.seams.across_in));
        let (side, up) = (mean(&|u| u.seams.mean.glove_side_in), mean(&|u| u.seams.mean.up_in));
        Some(Self {
            active_share: ActiveShare { mean: share, sd: sd(share, &|u| (u.active_share.mean, u.active_share.sd)) },
            seams: SeamPush {
                mean: Movement { glove_side_in: side, up_in: up },
                sd: Movement {
                    glove_side_in: sd(side, &|u| (u.seams.mean.glove_side_in, u.seams.sd.glove_side_in)),
                    up_in: sd(up, &|u| (u.seams.mean.up_in, u.seams.sd.up_in)),
                },
                across_in: across,
                across_sd_in: sd(across, &|u| (u.seams.across_in, u.seams.across_sd_in)),
            },
            rpm_per_mph: mean(&|u| u.rpm_per_mph),
            place: Location {
                glove_side_in: mean(&|u| u.place.glove_side_in),
                height_in: mean(&|u| u.place.height_in),
            },
            pitchers: known.iter().map(|(u, _)| u.pitchers).min().unwrap_or(0),
        })
    }

    /// The same with the seams trusted for at most so many inches.
    #[must_use]
    pub fn with_seams_at_most(self, inches: f64) -> Self {
        Self { seams: self.seams.at_most(inches), ..self }
    }
}

impl ActiveShare {
    /// How many standard deviations between pitchers `share` lies above the mean.
    pub fn departure(self, share: f64) -> f64 {
        (share - self.mean) / self.sd
    }
}

impl SeamPush {
    /// Seams that do nothing, for certain.
    pub const NONE: Self = seams((0.0, 0.0), (0.0, 0.0), (0.0, 0.0));

    /// Nothing is known of the seams, as of a pitch nobody has measured; the spread is the widest of a family's here.
    pub const UNKNOWN: Self = seams((0.0, 2.9), (0.0, 2.7), (0.0, 3.7));

    /// How many standard deviations between pitchers what is `left` of a pitch whose spin pushes to `clock` lies from
    /// what is usual, across the push.
    pub fn departure(self, left: Movement, clock: Clock) -> f64 {
        let (glove_side, up) = clock.push();
        let across = left.glove_side_in * up - left.up_in * glove_side;
        (across - self.across_in) / self.across_sd_in
    }

    /// The same push, not longer than so many inches.
    #[must_use]
    pub fn at_most(self, inches: f64) -> Self {
        let length = self.mean.length();
        let share = if length > inches { inches / length } else { 1.0 };
        Self {
            mean: self.mean * share,
            sd: self.sd * share,
            across_in: self.across_in * share,
            across_sd_in: self.across_sd_in * share,
        }
    }
}

const FOUR_SEAM: Usual = Usual {
    active_share: ActiveShare { mean: 0.65, sd: 0.23 },
    seams: seams((1.4, 1.2), (1.1, 1.1), (1.8, 1.6)),
    rpm_per_mph: 24.3,
    place: place(-0.3, 33.8),
    pitchers: 83,
};
const SINKER: Usual = Usual {
    active_share: ActiveShare { mean: 0.61, sd: 0.21 },
    seams: seams((-4.3, 2.2), (-4.5, 1.9), (-6.4, 2.4)),
    rpm_per_mph: 22.8,
    place: place(-2.3, 27.6),
    pitchers: 41,
};
const CUTTER: Usual = Usual {
    active_share: ActiveShare { mean: 0.13, sd: 0.10 },
    seams: seams((3.0, 0.8), (0.1, 0.9), (3.2, 0.6)),
    rpm_per_mph: 26.9,
    place: place(4.9, 27.6),
    pitchers: 28,
};
const SLIDER: Usual = Usual {
    active_share: ActiveShare { mean: 0.10, sd: 0.10 },
    seams: seams((0.3, 1.9), (0.4, 2.7), (-0.4, 3.4)),
    rpm_per_mph: 28.4,
    place: place(5.2, 21.4),
    pitchers: 57,
};
const SWEEPER: Usual = Usual {
    active_share: ActiveShare { mean: 0.35, sd: 0.18 },
    seams: seams((2.6, 1.3), (4.3, 1.9), (-4.8, 2.4)),
    rpm_per_mph: 32.6,
    place: place(5.7, 22.7),
    pitchers: 18,
};
const CURVEBALL: Usual = Usual {
    active_share: ActiveShare { mean: 0.43, sd: 0.24 },
    seams: seams((-1.0, 2.9), (-1.1, 2.2), (1.6, 3.7)),
    rpm_per_mph: 30.0,
    place: place(0.2, 20.6),
    pitchers: 19,
};
const CHANGEUP: Usual = Usual {
    active_share: ActiveShare { mean: 0.61, sd: 0.22 },
    seams: seams((-3.1, 2.3), (-3.6, 2.6), (-4.8, 3.3)),
    rpm_per_mph: 20.7,
    place: place(-4.6, 21.8),
    pitchers: 35,
};
const SPLITTER: Usual = Usual {
    active_share: ActiveShare { mean: 0.52, sd: 0.10 },
    seams: seams((-2.4, 2.1), (-3.5, 1.7), (-4.4, 2.3)),
    rpm_per_mph: 14.8,
    place: place(-4.3, 18.9),
    pitchers: 9,
};

/// From (mean, sd) to the glove side, up, and across the spin's push.
const fn seams(glove_side: (f64, f64), up: (f64, f64), across: (f64, f64)) -> SeamPush {
    SeamPush {
        mean: Movement { glove_side_in: glove_side.0, up_in: up.0 },
        sd: Movement { glove_side_in: glove_side.1, up_in: up.1 },
        across_in: across.0,
        across_sd_in: across.1,
    }
}

const fn place(glove_side_in: f64, height_in: f64) -> Location {
    Location { glove_side_in, height_in }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_blend_of_one_family_is_that_family_and_of_two_lies_between() {
        let sinker = Usual::blend(&[(Family::Sinker, 2.0), (Family::Knuckleball, 1.0)]).expect("known");
        assert!((sinker.seams.across_sd_in - SINKER.seams.across_sd_in).abs() < 1e-12);
        assert!((sinker.active_share.mean - SINKER.active_share.mean).abs() < 1e-12);
        let both = Usual::blend(&[(Family::Slider, 0.5), (Family::Sweeper, 0.5)]).expect("known");
        assert!((both.seams.mean.up_in - 2.35).abs() < 1e-9, "{both:?}");
        assert!(both.seams.sd.up_in > 2.7, "families that differ leave more open: {both:?}");
        assert_eq!(Usual::blend(&[(Family::Knuckleball, 1.0)]), None);
    }

    #[test]
    fn what_is_usual_departs_by_nothing_and_the_seams_are_trusted_no_farther_than_told() {
        for family in [Family::Sinker, Family::Changeup, Family::Sweeper] {
            let seams = Usual::of(family).expect("known").seams;
            let clock = Clock::from_push(seams.mean.up_in, -seams.mean.glove_side_in);
            let across = Movement { glove_side_in: clock.push().1, up_in: -clock.push().0 } * seams.across_in;
            assert!(seams.departure(across, clock).abs() < 1e-9);
            assert!((seams.at_most(2.0).mean.length() - 2.0).abs() < 1e-9);
            assert_eq!(seams.at_most(40.0), seams);
        }
    }
}

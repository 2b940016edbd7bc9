//! Why the answer is what it is.

use crate::athlete::profile::{Pitch, Profile};
use crate::ball::Family;
use crate::ball::Supination;
use crate::base::stats::Estimate;
use crate::former::search::Candidate;
use crate::former::search::reach::trusted_seam_in;

use super::{Asked, Bar, SURE, Verdict, WORTH_A_TRIAL};

/// A reason, with its numbers.
#[derive(Debug, Clone, PartialEq)]
pub enum Reason {
    /// The gain asked about, and the chance that it is more than a trifle.
    Gain {
        /// Which family.
        family: Family,
        /// Runs per 100 pitches.
        gain: Estimate,
        /// Share of worlds in which it is more than a trifle.
        chance: f64,
    },
    /// What it would be worth with the command of its first months.
    AtFirst {
        /// Runs per 100 pitches.
        gain: Estimate,
        /// Once mastered.
        mastered: f64,
    },
    /// No shape that goes by this name is in reach.
    OutOfReach {
        /// Which family.
        family: Family,
        /// The arm angle.
        slot_deg: f64,
        /// How he turns the hand.
        supination: Supination,
        /// Seams trusted, in.
        seam_in: f64,
    },
    /// The target leans on the seams.
    Seams {
        /// Which family.
        family: Family,
        /// Inches they must add.
        inches: f64,
        /// The most they are trusted to add.
        trusted: f64,
    },
    /// The worlds in which it saves more than a trifle are too few for more than the verdict says.
    TooFewWorlds {
        /// The share of worlds from which on more would be said.
        needed: f64,
        /// What would be said then.
        then: Verdict,
    },
    /// His hand does not turn easily, and a breaking ball asks that of it.
    StiffHand {
        /// Which family.
        family: Family,
    },
    /// Young enough that a breaking ball is tried before it is added, whatever it is worth.
    Young(u8),
    /// It is close to a pitch he throws.
    Redundant {
        /// That pitch.
        pitch: String,
        /// Difference in speed, mph.
        speed_mph: f64,
        /// Distance between the breaks, in.
        movement_in: f64,
    },
    /// Another family gains more.
    Better {
        /// Which.
        family: Family,
        /// Its gain.
        gain: Estimate,
        /// Share of worlds in which it gains more than the one asked about.
        chance: f64,
    },
    /// No other family gains more than a trifle either.
    NothingElse,
    /// Something about health or age forbids it.
    Forbidden(Bar),
}

/// Seam help beyond this share of what is trusted asks for a trial first.
const LEANING: f64 = 0.6;
/// Closer than this to an own pitch (mph, in) is called redundant.
const NEAR_MPH: f64 = 3.5;
const NEAR_IN: f64 = 6.0;
/// Up to this age a breaking ball is tried before it is added. This project's choice.
const YOUNG: u8 = 14;

impl Reason {
    /// What speaks for and against the pitch asked about.
    pub(super) fn all_of(profile: &Profile, asked: &Asked) -> Vec<Self> {
        let Asked { candidate, at_first } = asked;
        let worth = &candidate.worth;
        let gain = Self::Gain { family: candidate.family, gain: worth.overall, chance: worth.chance_real };
        let at_first = at_first.map(|gain| Self::AtFirst { gain, mastered: worth.overall.value });
        [Some(gain), at_first, redundant(profile, candidate)]
            .into_iter()
            .flatten()
            .chain(Self::to_try_first(profile, candidate))
            .collect()
    }

    /// Why `candidate` would be tried before it is added, however much it saves.
    pub(super) fn to_try_first(profile: &Profile, candidate: &Candidate) -> Vec<Self> {
        let breaking = candidate.family.is_breaking();
        let (inches, trusted) = (candidate.recipe.seam_total_in(), trusted_seam_in(profile.limits));
        let seams = (inches > LEANING * trusted).then_some(Self::Seams { family: candidate.family, inches, trusted });
        let stiff = breaking && profile.release.supination == Supination::Hard;
        let hand = stiff.then_some(Self::StiffHand { family: candidate.family });
        let young = profile.athlete.age.filter(|&age| breaking && age <= YOUNG).map(Self::Young);
        [seams, hand, young].into_iter().flatten().collect()
    }

    /// How many worlds are missing for more than `verdict` says of `candidate`.
    pub(super) fn short_of(verdict: Verdict, candidate: &Candidate) -> Option<Self> {
        let (needed, then) = match verdict {
            Verdict::NotNow => (WORTH_A_TRIAL, Verdict::Trial),
            Verdict::Trial => (SURE, Verdict::Add),
            Verdict::Add | Verdict::OtherPitch => return None,
        };
        (candidate.worth.chance_real < needed).then_some(Self::TooFewWorlds { needed, then })
    }

    /// That no shape of `family` is in reach.
    pub(super) fn out_of_reach(profile: &Profile, family: Family) -> Self {
        Self::OutOfReach {
            family,
            slot_deg: profile.release.slot_deg,
            supination: profile.release.supination,
            seam_in: trusted_seam_in(profile.limits),
        }
    }
}

/// That `candidate` is of a family he throws, or close to one of his pitches.
fn redundant(profile: &Profile, candidate: &Candidate) -> Option<Reason> {
    let shape = candidate.recipe.shape;
    let far = |pitch: &Pitch| pitch.shape.movement_distance_in(shape);
    let pitch = profile.pitches.iter().min_by(|a, b| far(a).total_cmp(&far(b)))?;
    let (movement_in, speed_mph) = (far(pitch), (pitch.shape.speed_mph - shape.speed_mph).abs());
    let near = pitch.family == candidate.family || (movement_in < NEAR_IN && speed_mph < NEAR_MPH);
    near.then(|| Reason::Redundant { pitch: pitch.name.clone(), speed_mph, movement_in })
}

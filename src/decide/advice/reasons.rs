//! Why the answer is what it is.

use crate::athlete::eligibility::{self, Eligibility, Hesitation};
use crate::ball::Family;
use crate::base::stats::Estimate;
use crate::decide::chase::Work;
use crate::decide::model::Model;
use crate::decide::verdict::{Shortfall, Verdict};

use super::Candidate;

/// A reason, with its numbers; runs are per 100 pitches.
#[derive(Debug, Clone, PartialEq)]
pub enum Reason {
    /// Something about health or age forbids it.
    Forbidden(eligibility::Reason),
    /// No arm is known to throw it: there is no natural shape to look from.
    Unknown {
        /// Which family.
        family: Family,
    },
    /// Another family saves more.
    Better {
        /// Which.
        family: Family,
        /// What it saves.
        gain: Estimate,
        /// Share of draws in which it saves more.
        chance: f64,
    },
    /// What the pitch asked about saves, and the chance that it saves anything.
    Gain {
        /// Which family.
        family: Family,
        /// What it saves.
        gain: Estimate,
        /// Share of draws in which it saves anything.
        chance: f64,
    },
    /// The athlete throws the family: the answer is about another shape of that pitch.
    Owned {
        /// Name of the pitch.
        pitch: String,
    },
    /// It would be thrown in no state of the count: nowhere does it save anything.
    NeverThrown {
        /// Which family.
        family: Family,
    },
    /// It is much like a pitch the athlete throws.
    Alike {
        /// Name of that pitch.
        pitch: String,
        /// How alike, 0 to 1.
        likeness: f64,
        /// Difference in speed, mph.
        speed_mph: f64,
        /// Distance between the movements, in.
        movement_in: f64,
    },
    /// What it would save with the command of its first months.
    AtFirst {
        /// What it saves then.
        gain: Estimate,
        /// Once mastered.
        mastered: f64,
    },
    /// Why no more is said for it.
    Short(Shortfall),
    /// Why it is tried first whatever it saves.
    TryFirst(Hesitation),
    /// No other pitch would be tried either.
    NothingElse,
}

/// From this likeness on a new pitch is told to be much like an owned one.
const ALIKE: f64 = 0.3;

impl Reason {
    /// Every reason for `verdict`, weightiest first.
    pub(super) fn all_of(
        model: &Model,
        family: Family,
        verdict: Verdict,
        eligibility: &Eligibility,
        asked: Option<&Candidate>,
        better: Option<&Candidate>,
    ) -> Vec<Self> {
        if let Some(bar) = eligibility.bar() {
            return bar.reasons.iter().copied().map(Self::Forbidden).collect();
        }
        let better = better.map(|better| Self::better(better, asked));
        let nothing_else = (verdict == Verdict::NotNow).then_some(Self::NothingElse);
        let own =
            asked.map_or_else(|| vec![Self::Unknown { family }], |asked| Self::of_candidate(model, verdict, asked));
        let hesitations = eligibility.hesitations().iter().copied().map(Self::TryFirst);
        let hesitations = hesitations.filter(|_| verdict != Verdict::NotNow && verdict != Verdict::OtherPitch);
        better.into_iter().chain(own).chain(hesitations).chain(nothing_else).collect()
    }

    fn better(better: &Candidate, asked: Option<&Candidate>) -> Self {
        let chance = asked.map_or(better.worth.chance, |asked| better.worth.more_often_than(&asked.worth));
        Self::Better { family: better.target.family, gain: better.worth.overall, chance }
    }

    fn of_candidate(model: &Model, verdict: Verdict, asked: &Candidate) -> Vec<Self> {
        let (family, worth) = (asked.target.family, &asked.worth);
        let owned = match asked.target.work {
            Work::Reshape(pitch) => Some(Self::Owned { pitch: model.profile.pitches[pitch].name.clone() }),
            Work::Learn => None,
        };
        let gain = if asked.is_thrown() {
            Self::Gain { family, gain: worth.overall, chance: worth.chance }
        } else {
            Self::NeverThrown { family }
        };
        let first = asked.at_first.as_ref().filter(|_| verdict != Verdict::NotNow);
        let first = first.map(|first| Self::AtFirst { gain: first.overall, mastered: worth.overall.value });
        let short = match verdict {
            Verdict::Add | Verdict::OtherPitch => None,
            Verdict::Trial => worth.short_of_adding(),
            Verdict::NotNow => worth.short_of_trying().filter(|_| asked.is_thrown()),
        };
        let all = [owned, Some(gain), short.map(Self::Short), alike(model, asked), first];
        all.into_iter().flatten().collect()
    }
}

/// That the pitch is much like an owned one.
fn alike(model: &Model, asked: &Candidate) -> Option<Reason> {
    let twin = asked.target.twin()?;
    let owned = &model.profile.pitches[twin.pitch];
    (twin.likeness >= ALIKE).then(|| Reason::Alike {
        pitch: owned.name.clone(),
        likeness: twin.likeness,
        speed_mph: (owned.shape.speed_mph - asked.target.shape.speed_mph).abs(),
        movement_in: owned.shape.movement().distance(asked.target.shape.movement()),
    })
}

//! The decision: add the pitch, try it first, not now, or another pitch.
//!
//! Every verdict comes with the reasons that led to it and with cautions. All are values; their words are in the report.

mod cautions;
mod candidate;
mod reasons;

pub use candidate::{Candidate, work};
pub use cautions::Caution;
pub use reasons::Reason;

use crate::athlete::eligibility::Eligibility;
use crate::athlete::profile::{PerSide, Profile};
use crate::ball::Family;

use super::model::Model;
use super::new_pitch::Command;
use super::outlook::{SideOutlook, of_change, of_today};
use super::verdict::Verdict;

/// The families a coach would weigh.
pub const FAMILIES: [Family; 6] =
    [Family::Sweeper, Family::Slider, Family::Cutter, Family::Curveball, Family::Changeup, Family::Splitter];

/// The whole answer.
#[derive(Debug, Clone)]
pub struct Advice {
    /// The pitch asked about.
    pub family: Family,
    /// Whether the verdict counts the command of now or of once mastered.
    pub command: Command,
    /// The answer.
    pub verdict: Verdict,
    /// Why, weightiest first.
    pub reasons: Vec<Reason>,
    /// What to watch.
    pub cautions: Vec<Caution>,
    /// The pitch asked about; nothing when it may not be thrown or no arm is known to throw it.
    pub asked: Option<Candidate>,
    /// The other families that may be learnt and are not thrown yet, best first.
    pub others: Vec<Candidate>,
    /// What today's arsenal brings, used as today.
    pub without: PerSide<SideOutlook>,
    /// What the arsenal with the pitch to chase brings; nothing when there is none.
    pub with: Option<PerSide<SideOutlook>>,
}

impl Advice {
    /// Answers whether the athlete of `model` should learn `family`.
    pub fn of(model: &Model, family: Family, command: Command) -> Self {
        let profile = model.profile;
        let eligibility = Eligibility::of(profile, family);
        // What may not be thrown is not looked for: a number beside a bar would tempt.
        let asked_about = eligibility.bar().is_none().then_some(family);
        let families: Vec<Family> = asked_about.into_iter().chain(others(profile, family)).collect();
        let mut candidates = Candidate::all_of(model, &families, command);
        let place = candidates.iter().position(|candidate| Some(candidate.target.family) == asked_about);
        let asked = place.map(|place| candidates.remove(place));
        let asked = match command {
            Command::Mastered => asked.map(|asked| asked.with_first_months(model)),
            Command::Now => asked,
        };
        candidates.sort_by(|a, b| b.worth.overall.value.total_cmp(&a.worth.overall.value));
        Self::weighed(model, family, command, &eligibility, asked, candidates)
    }

    /// The pitch to chase: the one asked about, or the better one.
    pub fn to_chase(&self) -> Option<&Candidate> {
        match self.verdict {
            Verdict::OtherPitch => self.others.first(),
            Verdict::Add | Verdict::Trial | Verdict::NotNow => self.asked.as_ref(),
        }
    }

    fn weighed(
        model: &Model,
        family: Family,
        command: Command,
        eligibility: &Eligibility,
        asked: Option<Candidate>,
        others: Vec<Candidate>,
    ) -> Self {
        let better = others.first().filter(|best| {
            best.verdict(model.profile) != Verdict::NotNow
                && best.worth.is_clearly_better(asked.as_ref().map(|c| &c.worth))
        });
        let verdict = match (&asked, better) {
            _ if eligibility.bar().is_some() => Verdict::NotNow,
            (_, Some(_)) => Verdict::OtherPitch,
            (Some(asked), None) => asked.verdict(model.profile),
            (None, None) => Verdict::NotNow,
        };
        let reasons = Reason::all_of(model, family, verdict, eligibility, asked.as_ref(), better);
        let to_chase = if verdict == Verdict::OtherPitch { better } else { asked.as_ref() };
        let cautions = Caution::all_of(model.profile, to_chase);
        let with = to_chase.map(|candidate| of_change(model, &candidate.target.change_with(command)));
        let without = of_today(model, &model.shares);
        Self { family, command, verdict, reasons, cautions, asked, others, without, with }
    }
}

/// The families that are not thrown yet and may be learnt, other than the one asked about.
fn others(profile: &Profile, asked: Family) -> impl Iterator<Item = Family> {
    FAMILIES.into_iter().filter(move |&family| {
        let owned = profile.pitches.iter().any(|pitch| pitch.family == family);
        family != asked && !owned && Eligibility::of(profile, family).bar().is_none()
    })
}

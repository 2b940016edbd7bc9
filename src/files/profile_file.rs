//! The profile file as a whole: how its sections become a [`Profile`].
//!
//! Reading has two steps. First every section is read into a draft whose values remember their
//! places, and the drafts are checked against themselves and each other. Then gaps are filled,
//! left-handers mirrored, and the finished profile leaves. What each section holds is in
//! [`super::sections`] and [`super::pitch_table`].

use crate::athlete::profile::{PerSide, Pitch, Profile};
use crate::ball::flight::Air;

use super::arsenal_checks::check_arsenal;
use super::assumptions::Assumptions;
use super::defaults;
use super::error::Fault;
use super::fields::{At, Faults, Fields, outline_of, read_document};
use super::outline::Outline;
use super::pitch_checks::check_pitch;
use super::pitch_table::{Common, PitchDraft};
use super::sections::{AirDraft, AthleteDraft, HealthDraft, LimitsDraft, ReleaseDraft};

/// What is said when nobody tells what movement counts against.
const AGAINST_ASSUMED: &str = "movement counted against the same throw with no sideways force and the same drag (write \
    against = \"gravity\" if the unit counts against gravity alone)";
/// More pitches than anybody throws.
const MOST_PITCHES: usize = 12;

/// The profile written in `text`, or every fault of it in file order.
pub(super) fn read(text: &str) -> Result<Profile, Vec<Fault>> {
    read_document(text, |root| {
        let draft = Draft::read(root);
        draft.check(root.faults());
        draft.finish()
    })
}

/// Every key a profile may hold.
pub(super) fn outline() -> Outline {
    outline_of(Draft::read)
}

/// Everything as written; nothing filled in, nothing mirrored.
struct Draft {
    athlete: AthleteDraft,
    release: ReleaseDraft,
    air: AirDraft,
    pitches: Vec<PitchDraft>,
    opposite_share: Option<At<f64>>,
    limits: LimitsDraft,
    health: HealthDraft,
}

impl Draft {
    fn read(root: &mut Fields) -> Self {
        root.needs(&["athlete", "pitch"]);
        Self {
            athlete: root.section("athlete", AthleteDraft::read),
            release: root.section("release", ReleaseDraft::read),
            air: root.section("air", AirDraft::read),
            pitches: root.sections("pitch", MOST_PITCHES, PitchDraft::read),
            opposite_share: root.section("faces", |faces| faces.number("opposite_share", 0.0..=1.0)),
            limits: root.section("limits", LimitsDraft::read),
            health: root.section("health", HealthDraft::read),
        }
    }

    fn check(&self, faults: &Faults) {
        self.athlete.check(faults);
        self.air.check(faults);
        for pitch in &self.pitches {
            check_pitch(pitch, self.athlete.hand(), faults);
        }
        check_arsenal(&self.pitches, &self.limits, faults);
    }

    /// The profile; nothing if a required value is missing, which is then a recorded fault.
    fn finish(self) -> Option<Profile> {
        let mut told = Assumptions::default();
        let families: Vec<_> = self.pitches.iter().filter_map(PitchDraft::family).collect();
        let against = self.athlete.against();
        let is_told = against.is_some() || self.pitches.iter().all(|pitch| pitch.against.is_some());
        let athlete = told.about("athlete", |filler| {
            let athlete = self.athlete.fill(filler);
            if !is_told {
                filler.note(AGAINST_ASSUMED);
            }
            athlete
        })?;
        let release = told.about("release", |filler| self.release.fill(filler));
        let weather = told.about("air", |filler| self.air.fill(filler));
        let mut pitches = Vec::new();
        let common = Common { hand: athlete.throws, level: athlete.level, against, release, air: Air::of(weather) };
        for pitch in self.pitches {
            pitches.push(pitch.fill(&common, &mut told)?);
        }
        normalise_usage(&mut pitches);
        let opposite_share = told.about("faces", |filler| {
            filler.or(self.opposite_share, defaults::OPPOSITE_SHARE, "as many opposite-side as same-side hitters")
        });
        let limits = told.about("limits", |filler| self.limits.fill(&families, filler));
        let health = told.about("health", |filler| self.health.fill(filler));
        let assumptions = told.into_sentences();
        Some(Profile { athlete, release, weather, pitches, opposite_share, limits, health, assumptions })
    }
}

/// Makes shares that were checked to sum to about one sum to one.
fn normalise_usage(pitches: &mut [Pitch]) {
    let total = PerSide::from_fn(|side| pitches.iter().filter_map(|pitch| *pitch.usage.on(side)).sum::<f64>());
    for pitch in pitches {
        pitch.usage = PerSide::from_fn(|side| pitch.usage.on(side).map(|share| share / total.on(side)));
    }
}

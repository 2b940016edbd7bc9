//! Is it working: the new pitch against its window, and everything it must not cost.
//!
//! [`progress`] takes the outings in order, compares fastball, release and slot with the profile,
//! asks a detector with a known false-alarm rate whether anything moved, and turns the numbers
//! into findings. A finding is a reason to look, never a diagnosis: pain is for a licensed
//! professional, whatever the numbers say.

mod arrival;
mod caution;
mod findings;
mod outings;
mod state;
mod watch;

pub use arrival::{NewPitch, OutingShape, ShapeState};
pub use caution::Caution;
pub use findings::{Finding, Kind, Severity};
pub use outings::{Outing, outings};
pub use state::State;
pub use watch::{Change, Quantity, Watch};

use crate::athlete::profile::Profile;
use crate::ball::Release;
use crate::base::stats::Sample;
use crate::learn::target::Target;

/// What was found over the outings.
#[derive(Debug, Clone, PartialEq)]
pub struct Progress {
    /// The days, in order.
    pub days: Vec<String>,
    /// Everything watched against the profile.
    pub watches: Vec<Watch>,
    /// The new pitch.
    pub new_pitch: NewPitch,
    /// What it means, most serious first.
    pub findings: Vec<Finding>,
    /// What to keep in mind.
    pub cautions: Vec<Caution>,
}

/// No release moves this far between a profile and a first outing: one of them is measured
/// otherwise, or assumed.
const OTHER_RELEASE_FT: f64 = 0.5;
/// With fewer outings a change must be large to be seen.
const FEW_OUTINGS: usize = 4;

impl Progress {
    /// Whether any finding says stop.
    pub fn must_stop(&self) -> bool {
        self.findings.iter().any(|finding| finding.severity == Severity::Stop)
    }

    /// The watch over `quantity`, if it was measured.
    pub fn watch(&self, quantity: Quantity) -> Option<&Watch> {
        self.watches.iter().find(|watch| watch.quantity == quantity)
    }
}

/// Watches `outings`, which must be in date order, against `profile` and `target`.
pub fn progress(outings: &[Outing], profile: &Profile, target: &Target) -> Progress {
    let (usual, moved) = usual_release(outings, profile);
    let watches: Vec<Watch> =
        Quantity::ALL.into_iter().filter_map(|quantity| Watch::of(quantity, profile, usual, outings)).collect();
    let new_pitch = NewPitch::of(outings, target);
    let findings = findings::findings(&watches, &new_pitch, target);
    let cautions = moved.into_iter().chain(cautions(outings, profile, &watches)).collect();
    let days = outings.iter().map(|outing| outing.day.clone()).collect();
    Progress { days, watches, new_pitch, findings, cautions }
}

/// The release to compare with: the profile's, unless the first outing shows it to be another one.
fn usual_release(outings: &[Outing], profile: &Profile) -> (Release, Option<Caution>) {
    let usual = profile.release;
    let Some(first) = outings.iter().find_map(first_release) else { return (usual, None) };
    let apart_ft = (first.0 - usual.height_ft).hypot(first.1 - usual.side_ft);
    if apart_ft <= OTHER_RELEASE_FT {
        return (usual, None);
    }
    let replaced = Release { height_ft: first.0, side_ft: first.1, ..usual };
    (replaced, Some(Caution::ReleaseFromFirstOuting { apart_ft }))
}

/// Mean release height and side of an outing's fastballs, when five or more were measured.
fn first_release(outing: &Outing) -> Option<(f64, f64)> {
    let height = Sample::of(outing.fastballs.iter().filter_map(|throw| throw.release.height_ft));
    let side = Sample::of(outing.fastballs.iter().filter_map(|throw| throw.release.side_ft));
    (height.count >= 5 && side.count >= 5).then_some((height.mean, side.mean))
}

fn cautions(outings: &[Outing], profile: &Profile, watches: &[Watch]) -> Vec<Caution> {
    let fastball = outings::fastball(profile).is_none().then_some(Caution::NoFastball);
    let release = !watches.iter().any(|watch| watch.quantity == Quantity::Slot) && fastball.is_none();
    let few = outings.len() < FEW_OUTINGS;
    let said = [
        fastball,
        release.then_some(Caution::NoRelease),
        few.then_some(Caution::FewOutings { outings: outings.len() }),
    ];
    said.into_iter().flatten().collect()
}

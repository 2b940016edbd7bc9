//! What would help the athlete most: every single change, best first, in the same draws.

use crate::athlete::eligibility::{Bar, Eligibility};
use crate::athlete::profile::Profile;
use crate::ball::{FASTEST_MPH, Family};
use crate::base::Movement;

use super::advice::FAMILIES;
use super::chase::{Target, Work, target};
use super::facing::Placed;
use super::leaning::recommended;
use super::model::Model;
use super::worth::{Change, Source, Worth, owned};

/// One change and what it is worth.
#[derive(Debug, Clone)]
pub struct Lever {
    /// What changes.
    pub what: What,
    /// What it saves.
    pub worth: Worth,
}

/// A change of an arsenal.
#[derive(Debug, Clone)]
pub enum What {
    /// A new pitch.
    Learn(Target),
    /// Another shape of an owned pitch.
    Reshape(usize, Target),
    /// An owned pitch is thrown no more.
    Drop(usize),
    /// One mile an hour more on everything.
    Faster,
    /// One inch less scatter about the target, on everything.
    TighterCommand,
    /// The recommended use of today's pitches.
    UseAlone,
}

/// Every change, best first.
pub fn levers(model: &Model) -> Vec<Lever> {
    let mut changes = vec![
        (What::UseAlone, Change { pitches: owned(model), shares: recommended(model), novelty: 0.0 }),
        (What::Faster, with_all(model, faster)),
        (What::TighterCommand, with_all(model, tighter)),
    ];
    changes.extend(learned(model));
    changes.extend(reshaped(model));
    changes.extend(dropped(model));
    let (what, changes): (Vec<What>, Vec<Change>) = changes.into_iter().unzip();
    let worths = Worth::of_all(model, &changes);
    let mut levers: Vec<Lever> = what.into_iter().zip(worths).map(|(what, worth)| Lever { what, worth }).collect();
    levers.sort_by(|a, b| b.worth.overall.value.total_cmp(&a.worth.overall.value));
    levers
}

/// Every family that is not thrown and may be learnt.
fn learned(model: &Model) -> Vec<(What, Change)> {
    let throws = |family: Family| model.profile.pitches.iter().any(|pitch| pitch.family == family);
    let free = |family: &Family| !throws(*family) && Eligibility::of(model.profile, *family).bar().is_none();
    let targets = FAMILIES.into_iter().filter(free).filter_map(|family| target(model, family, Work::Learn));
    targets.map(|target| (What::Learn(target.clone()), target.change)).collect()
}

/// The families that may not be learnt now, each with what forbids it.
pub fn barred(profile: &Profile) -> Vec<(Family, Bar)> {
    let throws = |family: Family| profile.pitches.iter().any(|pitch| pitch.family == family);
    let bar = |family: Family| Eligibility::of(profile, family).bar().cloned().map(|bar| (family, bar));
    FAMILIES.into_iter().filter(|family| !throws(*family)).filter_map(bar).collect()
}

/// Every owned pitch in its best shape, where that is another one and the athlete may work on it.
fn reshaped(model: &Model) -> Vec<(What, Change)> {
    let reshape = |(index, pitch): (usize, &crate::athlete::profile::Pitch)| {
        let free = Eligibility::of(model.profile, pitch.family).bar().is_none();
        let target = free.then(|| target(model, pitch.family, Work::Reshape(index))).flatten()?;
        (target.shape != pitch.shape.rounded()).then(|| (What::Reshape(index, target.clone()), target.change))
    };
    model.profile.pitches.iter().enumerate().filter_map(reshape).collect()
}

/// Every owned pitch left out, where others are left.
fn dropped(model: &Model) -> Vec<(What, Change)> {
    let pitches = model.arsenal.len();
    let without = |dropped: usize| {
        let kept = (0..pitches).filter(|pitch| *pitch != dropped).map(Source::Owned).collect();
        (What::Drop(dropped), Change { pitches: kept, shares: model.shares.without(dropped), novelty: 0.0 })
    };
    if pitches > 1 { (0..pitches).map(without).collect() } else { Vec::new() }
}

fn with_all(model: &Model, changed: fn(&Placed, &Model) -> Placed) -> Change {
    let source = |(index, placed): (usize, &Placed)| Source::Changed(index, Box::new(changed(placed, model)));
    let pitches = model.arsenal.iter().enumerate().map(source).collect();
    Change { pitches, shares: model.shares.clone(), novelty: 0.0 }
}

fn faster(placed: &Placed, model: &Model) -> Placed {
    let shape = placed.offering.shape;
    placed.reshaped(shape.moved((FASTEST_MPH - shape.speed_mph).min(1.0), Movement::default()), &model.natural)
}

fn tighter(placed: &Placed, _: &Model) -> Placed {
    let command = placed.offering.command;
    let mean = f64::midpoint(command.side_in, command.height_in);
    placed.with_command(((mean - 1.0) / mean).max(0.5))
}

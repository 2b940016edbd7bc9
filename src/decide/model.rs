//! One athlete's model: the shared ground, today's arsenal with its customary use, and the draws of what is not known.
//! Every answer about the athlete asks this; it is made once.

use std::num::NonZeroUsize;

use crate::athlete::natural::NaturalShapes;
use crate::athlete::profile::{PerSide, Profile};
use crate::ball::flight::Air;
use crate::base::Movement;
use crate::base::geometry::Side;
use crate::hitter::{Chances, Hitter, Reading};

use super::aims::preferred;
use super::counts::Count;
use super::custom::{Custom, OwnUse, Owned};
use super::draws::Draw;
use super::facing::{Facing, Placed};
use super::new_pitch::NewPitch;
use super::offering::Offering;
use super::own_results::OwnResults;
use super::places::customary;
use super::shares::{Shares, on_average};

/// One athlete's model.
#[derive(Debug)]
pub struct Model<'p> {
    /// Whose.
    pub profile: &'p Profile,
    /// What such arms throw.
    pub natural: NaturalShapes,
    /// The air the athlete throws in.
    pub air: Air,
    /// The likeliest hitter under each reading.
    pub hitters: [Hitter; 2],
    /// Today's pitches where they are thrown to, in the profile's order.
    pub arsenal: Vec<Placed>,
    /// What is customary with such an arsenal.
    pub custom: Custom,
    /// How they are used: custom, with the athlete's own throws in it.
    pub shares: Shares,
    /// Today's arsenal against the likeliest hitters.
    pub today: [Facing; 2],
    /// What is not known.
    pub draws: Vec<Draw>,
}

impl<'p> Model<'p> {
    /// The model of `profile` with `draws` draws of what is not known; the same for the same seed.
    pub fn new(profile: &'p Profile, draws: NonZeroUsize, seed: u64) -> Self {
        let natural = NaturalShapes::of_profile(profile);
        let air = Air::of(profile.weather);
        let hitters = Reading::ALL.map(|reading| Hitter::best(profile.athlete.level, reading));
        let thrown = profile.pitches.iter().map(|pitch| customary(Offering::owned(pitch, profile, &natural)));
        let customary: Vec<Placed> = thrown.collect();
        let custom = Custom::of(customary.iter().map(|placed| owned(&placed.offering)).collect(), &OwnUse::of(profile));
        let shares = custom.shares().clone();
        let arsenal: Vec<Placed> =
            customary.iter().map(|placed| preferred(&hitters, placed, &customary, &shares, air)).collect();
        let today = hitters.map(|hitter| Facing::new(&hitter, &arsenal, air));
        let arsenal = with_own_results(profile, arsenal, &today, &shares);
        let draws = Draw::many(profile.athlete.level, arsenal.len(), draws.get(), seed);
        Self { profile, natural, air, hitters, arsenal, custom, shares, today, draws }
    }

    /// The customary share of a new pitch in each state of the count, within what the profile allows.
    pub fn customary_share_of(&self, new: &NewPitch) -> PerSide<[f64; 4]> {
        let shares = self.custom.shares_with(owned(&new.placed.offering));
        let cap = self.profile.limits.new_pitch_cap;
        let last = |side, count| shares.at(side, count).last().copied().unwrap_or(0.0);
        PerSide::from_fn(|side| Count::ALL.map(|count| last(side, count).min(cap)))
    }

    /// Today's arsenal and a new pitch against the likeliest hitters.
    pub fn with_new(&self, new: &NewPitch) -> [Facing; 2] {
        [0, 1].map(|reading: usize| self.today[reading].with(&self.hitters[reading], &new.placed, self.air))
    }

    /// Something of both sides, weighted by how often each is faced.
    pub fn over_sides(&self, mut on: impl FnMut(Side) -> f64) -> f64 {
        let opposite = self.profile.opposite_share;
        (1.0 - opposite) * on(Side::Same) + opposite * on(Side::Opposite)
    }

    /// `placed`, a form of the owned pitch `pitch`, as it is in `draw`: its measured mean and its command a little off.
    pub fn measured_in(&self, draw: &Draw, pitch: usize, placed: &Placed) -> Placed {
        let owned = &self.profile.pitches[pitch];
        let per_sd = 1.0 / f64::from(owned.throws).sqrt();
        let error = draw.errors[pitch];
        let shape = placed.offering.shape.moved(
            error.speed * per_sd * owned.spread.speed_mph,
            Movement {
                glove_side_in: error.movement.glove_side_in * per_sd * owned.spread.glove_side_break_in,
                up_in: error.movement.up_in * per_sd * owned.spread.vertical_break_in,
            },
        );
        placed.reshaped(shape, &self.natural).with_command(draw.command)
    }
}

/// The arsenal with what the athlete's own results say of each pitch.
fn with_own_results(profile: &Profile, arsenal: Vec<Placed>, today: &[Facing; 2], shares: &Shares) -> Vec<Placed> {
    let expected = PerSide::from_fn(|side| {
        let mix = shares.mix(side);
        today.each_ref().map(|facing| facing.chances(side, &mix))
    });
    let own = |pitch: usize, side: Side| {
        let results = (*profile.pitches[pitch].results.on(side))?;
        let by_reading = expected.on(side).each_ref().map(|all| on_average(&all[pitch], shares, side, pitch));
        Some(OwnResults::of(&Chances::mean(by_reading.iter().map(|chances| (0.5, chances))), &results))
    };
    let placed = |(pitch, placed): (usize, Placed)| Placed { own: PerSide::from_fn(|side| own(pitch, side)), ..placed };
    arsenal.into_iter().enumerate().map(placed).collect()
}

fn owned(offering: &Offering) -> Owned {
    Owned { shape: offering.shape, likeness: offering.likeness }
}

//! Each pitch in numbers: mean, spread, count and interval of everything measured.
//!
//! Spreads of few throws are held toward a practised pitch's. Means are not pulled anywhere, for
//! nothing honest is known of a pitch before it is thrown; their intervals grow instead. Movement
//! counts only from days on the common zero, with each day's small drift taken out.

use crate::athlete::natural::Unnamed;
use crate::athlete::profile::{PerSide, Results};
use crate::athlete::session::{Outcome, ReleaseReading, Session, Throw};
use crate::ball::flight::Air;
use crate::ball::flight::inverse::{Shares, release_point, restated, shares};
use crate::ball::spin::Spin;
use crate::ball::{Family, Shape};
use crate::base::geometry::{Clock, Side, Vec3};
use crate::base::stats::Estimate;

use super::findings::Observed;
use super::naming::{MeanRelease, Naming, name_groups, slot_deg};
use super::polish::Fit;
use super::tally::{ClockTally, DayToDay, Tally};
use super::{Assignment, Sorted, Treatment, corrected_look};

/// Throw-to-throw spread of a practised pitch, where few throws are held toward (common practice,
/// no published source): mph, in, in.
const USUAL_SD: [f64; 3] = [1.2, 2.2, 2.2];
/// The same for command (in), release (ft), spin (rpm) and active fraction.
const USUAL_COMMAND_IN: f64 = 9.0;
const USUAL_RELEASE_FT: f64 = 0.13;
const USUAL_SPIN_RPM: f64 = 100.0;
const USUAL_ACTIVE: f64 = 0.06;
/// Day-to-day spread of speed before it is seen, mph, and the days that belief is worth.
const USUAL_DAY_MPH: f64 = 0.5;
const PRIOR_DAYS: f64 = 4.0;

/// One pitch.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// What family it is.
    pub naming: Naming,
    /// The label most of its throws carry, when the file has labels.
    pub usual_label: Option<String>,
    /// Throws sorted into it.
    pub throws: usize,
    /// Throws whose movement counts.
    pub movement_throws: usize,
    /// Mean chance that its throws are in the right group.
    pub clearness: f64,
    /// Release speed.
    pub speed_mph: Estimate,
    /// Vertical break, full flight.
    pub vertical_break_in: Estimate,
    /// Glove-side break, full flight.
    pub glove_side_break_in: Estimate,
    /// Throw-to-throw standard deviations.
    pub spread: Spreads,
    /// Total spin, when measured.
    pub spin_rpm: Option<Estimate>,
    /// Active share of the spin, when measured.
    pub active_fraction: Option<Estimate>,
    /// Which way the spin pushes, **as a right-hander's**, when measured.
    pub spin_clock: Option<Clock>,
    /// Release height, when measured.
    pub release_height_ft: Option<Estimate>,
    /// Release distance to the arm side, when measured.
    pub release_side_ft: Option<Estimate>,
    /// Release distance in front of the rubber, when measured.
    pub extension_ft: Option<Estimate>,
    /// Arm angle that the release point suggests.
    pub slot_deg: Option<Estimate>,
    /// What the spin explains and what is left for the seams, when spin is measured in full.
    pub shares: Option<Shares>,
    /// The shape in standard air at sea level, when the session's weather is known.
    pub at_sea_level: Option<Shape>,
    /// Throws against each side.
    pub faced: PerSide<u32>,
    /// Results against each side, where outcomes are given.
    pub results: PerSide<Results>,
}

/// Throw-to-throw standard deviations of one pitch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spreads {
    /// Release speed.
    pub speed_mph: f64,
    /// Vertical break.
    pub vertical_break_in: f64,
    /// Glove-side break.
    pub glove_side_break_in: f64,
    /// Where it crosses the plate, sideways, when measured.
    pub plate_side_in: Option<f64>,
    /// Where it crosses the plate, up and down, when measured.
    pub plate_height_in: Option<f64>,
    /// Release point, the larger of height and side, when measured.
    pub release_in: Option<f64>,
}

impl Group {
    /// The mean shape.
    pub fn shape(&self) -> Shape {
        Shape {
            speed_mph: self.speed_mph.value,
            vertical_break_in: self.vertical_break_in.value,
            glove_side_break_in: self.glove_side_break_in.value,
        }
    }
}

#[derive(Debug, Clone, Default)]
struct Sums {
    look: [Tally; 3],
    rpm: Tally,
    active: Tally,
    clock: ClockTally,
    release: [Tally; 3],
    plate: [Tally; 2],
    chance: f64,
    labels: Vec<usize>,
    by_day: Vec<u32>,
    speed_by_day: Vec<Tally>,
    faced: PerSide<u32>,
    results: PerSide<Results>,
    knows_contact: bool,
}

impl Sums {
    fn new(session: &Session) -> Self {
        Self {
            labels: vec![0; session.labels.len()],
            by_day: vec![0; session.days.len()],
            speed_by_day: vec![Tally::default(); session.days.len()],
            results: PerSide::from_fn(|_| Results { weak: Some(0), ..Results::default() }),
            knows_contact: true,
            ..Self::default()
        }
    }

    fn add(&mut self, throw: &Throw, look: [f64; 3], chance: f64, movement_counts: bool) {
        self.look[0].add(look[0]);
        self.speed_by_day[usize::from(throw.day)].add(look[0]);
        if movement_counts {
            self.look[1].add(look[1]);
            self.look[2].add(look[2]);
            self.by_day[usize::from(throw.day)] += 1;
        }
        self.rpm.add_some(throw.spin.rpm);
        self.active.add_some(throw.spin.active_fraction);
        self.clock.add_some(throw.spin.clock);
        self.release[0].add_some(throw.release.height_ft);
        self.release[1].add_some(throw.release.side_ft);
        self.release[2].add_some(throw.release.extension_ft);
        self.plate[0].add_some(throw.plate.side_in);
        self.plate[1].add_some(throw.plate.height_in);
        self.chance += chance;
        if let Some(label) = throw.label {
            self.labels[usize::from(label)] += 1;
        }
        self.count_result(throw);
    }

    /// The results, without weak contact when some balls in play are of unknown quality.
    fn known_results(&self) -> PerSide<Results> {
        PerSide::from_fn(|side| {
            let results = *self.results.on(side);
            Results { weak: results.weak.filter(|_| self.knows_contact), ..results }
        })
    }

    fn count_result(&mut self, throw: &Throw) {
        let Some(side) = throw.batter_side else { return };
        let (faced, results) = match side {
            Side::Same => (&mut self.faced.same, &mut self.results.same),
            Side::Opposite => (&mut self.faced.opposite, &mut self.results.opposite),
        };
        *faced += 1;
        if let Some(outcome) = throw.outcome {
            results.pitches += 1;
            results.swings += u32::from(outcome.is_swing());
            results.misses += u32::from(outcome == Outcome::SwingAndMiss);
            // How hard a ball in play was hit must be known of every one, or the weak are not counted.
            let is_weak = matches!(outcome, Outcome::WeakContact | Outcome::Foul);
            self.knows_contact &= outcome != Outcome::InPlay;
            results.weak = results.weak.map(|weak| weak + u32::from(is_weak));
        }
    }
}

/// Every pitch in numbers, in the fit's order.
pub(super) fn summarise(session: &Session, fit: &Fit, assignments: &[Assignment], observed: &Observed) -> Vec<Group> {
    let mut sums = vec![Sums::new(session); fit.mixture.parts.len()];
    for (throw, assignment) in session.throws.iter().zip(assignments) {
        if let &Assignment::Group { index, chance } = assignment {
            sums[index].add(throw, corrected_look(throw, fit), chance, observed.movement_counts(throw.day));
        }
    }
    let means: Vec<[f64; 3]> = fit.mixture.parts.iter().map(|part| part.mean).collect();
    let unnamed: Vec<Unnamed> = means.iter().zip(&sums).map(|(mean, sums)| unnamed(mean, sums)).collect();
    let days = [speed_days(&sums, &means), fit.day_sd[0], fit.day_sd[1]];
    let names = name_groups(release_of(&sums), &unnamed);
    names.into_iter().zip(sums).zip(means).map(|((name, sums), mean)| group(session, name, &sums, mean, days)).collect()
}

fn unnamed(mean: &[f64; 3], sums: &Sums) -> Unnamed {
    let [speed_mph, vertical_break_in, glove_side_break_in] = *mean;
    Unnamed {
        shape: Shape { speed_mph, vertical_break_in, glove_side_break_in },
        spin_rpm: (sums.rpm.n >= 3.0).then_some(sums.rpm.mean),
        throws: u32::try_from(count(sums.look[0].n)).unwrap_or(u32::MAX),
    }
}

/// The mean release of all throws, where it was measured.
fn release_of(sums: &[Sums]) -> MeanRelease {
    let mean = |d: usize| {
        let throws: f64 = sums.iter().map(|sums| sums.release[d].n).sum();
        let total: f64 = sums.iter().map(|sums| sums.release[d].n * sums.release[d].mean).sum();
        (throws > 0.0).then(|| total / throws)
    };
    MeanRelease { height_ft: mean(0), side_ft: mean(1) }
}

/// Day-to-day standard deviation of speed, all pitches together, held toward the usual one.
fn speed_days(sums: &[Sums], means: &[[f64; 3]]) -> f64 {
    let days = sums.first().map_or(0, |sums| sums.speed_by_day.len());
    let mut squares = PRIOR_DAYS * USUAL_DAY_MPH * USUAL_DAY_MPH;
    for day in 0..days {
        let (n, total) = sums.iter().zip(means).fold((0.0, 0.0), |(n, total), (sums, mean)| {
            let tally = sums.speed_by_day[day];
            (n + tally.n, total + tally.n * (tally.mean - mean[0]))
        });
        squares += if n > 0.0 { (total / n).powi(2) } else { 0.0 };
    }
    (squares / (PRIOR_DAYS + days as f64)).sqrt()
}

fn group(session: &Session, naming: Naming, sums: &Sums, mean: [f64; 3], days: [f64; 3]) -> Group {
    let between = |sd: f64| day_to_day(sd, &sums.by_day);
    let look = |d: usize| {
        let nothing = Estimate { value: mean[d], low: f64::NEG_INFINITY, high: f64::INFINITY };
        sums.look[d].estimate(USUAL_SD[d], between(days[d])).unwrap_or(nothing)
    };
    let release = |d: usize| sums.release[d].estimate(USUAL_RELEASE_FT, between(0.1));
    let height_and_side = release(0).zip(release(1));
    let group = Group {
        naming,
        usual_label: usual_label(session, sums),
        throws: count(sums.look[0].n),
        movement_throws: count(sums.look[1].n),
        clearness: sums.chance / sums.look[0].n.max(1.0),
        speed_mph: look(0),
        vertical_break_in: look(1),
        glove_side_break_in: look(2),
        spread: spreads(sums),
        spin_rpm: sums.rpm.estimate(USUAL_SPIN_RPM, between(20.0)),
        active_fraction: sums.active.estimate(USUAL_ACTIVE, between(0.01)),
        spin_clock: sums.clock.mean(),
        release_height_ft: release(0),
        release_side_ft: release(1),
        extension_ft: release(2),
        slot_deg: height_and_side.map(|(height, side)| slot_deg(height.value, side.value)),
        shares: None,
        at_sea_level: None,
        faced: sums.faced,
        results: sums.known_results(),
    };
    with_physics(group, session)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count")]
fn count(n: f64) -> usize {
    n as usize
}

fn usual_label(session: &Session, sums: &Sums) -> Option<String> {
    let most = (0..sums.labels.len()).rev().max_by_key(|&label| sums.labels[label])?;
    (sums.labels[most] > 0).then(|| session.labels[most].clone())
}

fn day_to_day(sd: f64, by_day: &[u32]) -> DayToDay {
    let n: f64 = by_day.iter().map(|&n| f64::from(n)).sum();
    let squares: f64 = by_day.iter().map(|&n| f64::from(n) * f64::from(n)).sum();
    let used = by_day.iter().filter(|&&n| n > 0).count() as f64;
    DayToDay { sd, effective: if squares > 0.0 { n * n / squares } else { 1.0 }, freedom: used + PRIOR_DAYS - 1.0 }
}

fn spreads(sums: &Sums) -> Spreads {
    let measured = |tally: &Tally, usual: f64| (tally.n >= 2.0).then(|| tally.sd_toward(usual));
    let release = |d: usize| measured(&sums.release[d], USUAL_RELEASE_FT).map(|feet| feet * 12.0);
    Spreads {
        speed_mph: sums.look[0].sd_toward(USUAL_SD[0]),
        vertical_break_in: sums.look[1].sd_toward(USUAL_SD[1]),
        glove_side_break_in: sums.look[2].sd_toward(USUAL_SD[2]),
        plate_side_in: measured(&sums.plate[0], USUAL_COMMAND_IN),
        plate_height_in: measured(&sums.plate[1], USUAL_COMMAND_IN),
        release_in: release(0).zip(release(1)).map(|(height, side)| height.max(side)),
    }
}

/// Seams' share and shape at sea level, where what they need is known.
fn with_physics(group: Group, session: &Session) -> Group {
    let air = session.weather.map_or(Air::SEA_LEVEL, Air::of);
    let release = mean_release(&group);
    let spin = group.spin_rpm.zip(group.active_fraction).zip(group.spin_clock);
    let spin = spin.map(|((rpm, active), clock)| Spin { rpm: rpm.value, active_fraction: active.value, clock });
    Group {
        shares: spin.map(|spin| shares(group.shape(), spin, release, air)),
        at_sea_level: session.weather.map(|_| restated(group.shape(), release, air, Air::SEA_LEVEL)),
        ..group
    }
}

/// The measured release, or an ordinary one.
fn mean_release(group: &Group) -> Vec3 {
    let value = |estimate: Option<Estimate>| estimate.map(|e| e.value);
    let measured = ReleaseReading {
        height_ft: value(group.release_height_ft),
        side_ft: value(group.release_side_ft),
        extension_ft: value(group.extension_ft),
    };
    release_point(measured.or_ordinary())
}

/// A doubt about what was sorted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Caution {
    /// Fewer usable throws than can be sorted.
    TooFew,
    /// Two days on different zeros, of which one had to be believed.
    TwoZeros,
    /// A group that may be another pitch.
    UnsureName(Naming),
    /// A group whose shape rests on few throws.
    FewThrows {
        /// What it is called.
        family: Family,
        /// Throws whose movement counts.
        throws: usize,
    },
    /// More throws fit no pitch than a good sort leaves.
    ManyUnsorted {
        /// Throws that fit none.
        unsorted: usize,
        /// Throws used.
        used: usize,
    },
}

/// Throws whose movement makes a shape.
const FEW_THROWS: usize = 10;
/// More than one in so many that fits no pitch is told.
const FEW_UNSORTED: usize = 20;

/// Doubts about the whole.
pub(super) fn cautions(session: &Session, sorted: &Sorted) -> Vec<Caution> {
    let rezeroed = sorted.days.iter().any(|day| day.treatment == Treatment::Rezeroed);
    let too_few = sorted.groups.is_empty().then_some(Caution::TooFew);
    let zeros = (session.days.len() == 2 && rezeroed).then_some(Caution::TwoZeros);
    let used = sorted.assignments.iter().filter(|a| !matches!(a, Assignment::SetAside)).count();
    let unsorted = sorted.unsorted();
    let many = (unsorted * FEW_UNSORTED > used).then_some(Caution::ManyUnsorted { unsorted, used });
    [too_few, zeros].into_iter().flatten().chain(sorted.groups.iter().flat_map(of_group)).chain(many).collect()
}

fn of_group(group: &Group) -> impl Iterator<Item = Caution> + use<> {
    let (family, throws) = (group.naming.family, group.movement_throws);
    let unsure = (group.naming.confidence < super::SURE_NAME).then_some(Caution::UnsureName(group.naming));
    let few = (throws < FEW_THROWS).then_some(Caution::FewThrows { family, throws });
    [unsure, few].into_iter().flatten()
}

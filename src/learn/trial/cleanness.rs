//! How cleanly a grip spins the ball, and how far its dot is from where it should show.
//!
//! Clean means the same spin every time: little spread of the active fraction and of the clock,
//! and no wobble. The dot compares the average spin with the target's. What the dot's place says
//! about the hand is common practice, no published source.

use crate::athlete::session::SpinReading;
use crate::ball::spin::Spin;
use crate::base::geometry::Clock;
use crate::base::stats::{Count, Estimate, Sample, share_estimate};

/// How alike the spins of a grip are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cleanness {
    /// Standard deviation of the active fraction, when measured on three throws or more.
    pub active_fraction_spread: Option<Estimate>,
    /// Standard deviation of the spin clock in minutes of the clock face, likewise.
    pub clock_spread_minutes: Option<Estimate>,
    /// Share of throws that wobbled, when noted.
    pub wobble: Option<Estimate>,
}

/// How far the dot is from where the target spin shows it, to the thrower.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DotError {
    /// Farther from the middle than it should be (+) or nearer (-), in ball radii.
    pub radius: Estimate,
    /// Turned along the clock (+) or against it (-) from where it should be, hours, right-hander.
    pub turn_hours: Estimate,
}

/// What a dot error amounts to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DotFault {
    /// Too near the middle: too much bullet spin.
    TooCentral,
    /// Too far out: too little bullet spin.
    TooFarOut,
    /// On the wrong side along the clock.
    Turned,
}

/// Clean spin: throw-to-throw standard deviations of at most this, of the active fraction and of the
/// clock (minutes of the clock face). Common practice, no published source.
pub const CLEAN_FRACTION: f64 = 0.07;
/// See [`CLEAN_FRACTION`].
pub const CLEAN_MINUTES: f64 = 25.0;
/// A dot this near is where it should be: ball radii, hours. This project's choice.
const RADIUS_TOLERANCE: f64 = 0.08;
const TURN_TOLERANCE: f64 = 0.5;

impl Cleanness {
    /// The cleanness of some throws.
    pub(super) fn of(spins: &[SpinReading], wobbles: &[bool]) -> Self {
        let active = Sample::of(spins.iter().filter_map(|spin| spin.active_fraction));
        let clocks = clock_sample(spins).map(|(_, minutes)| minutes);
        let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        let wobbled = Count { hits: count(wobbles.iter().filter(|&&w| w).count()), tries: count(wobbles.len()) };
        Self {
            active_fraction_spread: active.sd_estimate(),
            clock_spread_minutes: clocks.and_then(|minutes| minutes.sd_estimate()),
            wobble: share_estimate(wobbled),
        }
    }

    /// Whether the spin differs from throw to throw by more than clean spin does.
    pub fn wanders(&self) -> bool {
        let beyond = |spread: Option<Estimate>, most: f64| spread.is_some_and(|spread| spread.value > most);
        beyond(self.active_fraction_spread, CLEAN_FRACTION) || beyond(self.clock_spread_minutes, CLEAN_MINUTES)
    }
}

/// The mean clock, and the minutes by which each throw is off it.
fn clock_sample(spins: &[SpinReading]) -> Option<(Clock, Sample)> {
    let clocks: Vec<Clock> = spins.iter().filter_map(|spin| spin.clock).collect();
    let (side, up) =
        clocks.iter().map(|clock| clock.push()).fold((0.0, 0.0), |sum, push| (sum.0 + push.0, sum.1 + push.1));
    let mean = Clock::from_push(side, up);
    let minutes = Sample::of(clocks.iter().map(|&clock| 60.0 * mean.hours_to(clock)));
    (!clocks.is_empty()).then_some((mean, minutes))
}

impl DotError {
    /// The dot of some throws against that of `wanted`; nothing when fewer than two were measured.
    pub(super) fn of(spins: &[SpinReading], wanted: Spin) -> Option<Self> {
        let active = Sample::of(spins.iter().filter_map(|spin| spin.active_fraction)).mean_estimate()?;
        let (clock, minutes) = clock_sample(spins)?;
        let reach = minutes.mean_estimate()?.half_width() / 60.0;
        let seen = Spin { active_fraction: active.value, clock, ..wanted }.dot().thrower;
        let should = wanted.dot().thrower;
        let turn = should.clock.hours_to(seen.clock);
        Some(Self {
            radius: active.map(|fraction| fraction - wanted.active_fraction),
            turn_hours: Estimate { value: turn, low: turn - reach, high: turn + reach },
        })
    }

    /// What is wrong with it, as far as the throws are enough to say so.
    pub fn faults(&self) -> Vec<DotFault> {
        let clear = |e: Estimate, tolerance: f64| e.value.abs() > tolerance && (e.low > 0.0 || e.high < 0.0);
        let radial = clear(self.radius, RADIUS_TOLERANCE).then_some(if self.radius.value < 0.0 {
            DotFault::TooCentral
        } else {
            DotFault::TooFarOut
        });
        let turned = clear(self.turn_hours, TURN_TOLERANCE).then_some(DotFault::Turned);
        radial.into_iter().chain(turned).collect()
    }
}

//! The five steps from a first spin to a pitch in games, and the gate at the end of each.
//!
//! Spin clean, shape in the window, shape at game effort, command, hitters. Gates are numbers that
//! can be measured; a step is done when its gate is met, not when its dates are over. Volumes,
//! efforts and gates are common practice, no published source, except where the daily limits cut
//! them down ([`super::limits`]).

use crate::athlete::profile::Profile;
use crate::base::stats::Estimate;
use crate::learn::progress::{Progress, Quantity};
use crate::learn::target::Target;
use crate::learn::trial::{CLEAN_FRACTION, CLEAN_MINUTES, Trial};

/// A step of learning a pitch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Step {
    /// The ball spins as it should, at easy effort.
    Spin,
    /// The shape lands in the window, at moderate effort.
    Shape,
    /// The shape and the arm hold at game effort.
    Effort,
    /// It goes where it is meant to.
    Command,
    /// It works against hitters.
    Hitters,
}

/// How a step is worked on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Work {
    /// Effort in percent of game effort.
    pub effort_percent: u32,
    /// Throws on a full day, all pitches together, before any limit.
    pub throws: u32,
    /// Of ten throws, how many are the new pitch.
    pub new_in_ten: u32,
}

impl Step {
    /// Every step, in order.
    pub const ALL: [Self; 5] = [Self::Spin, Self::Shape, Self::Effort, Self::Command, Self::Hitters];

    /// Fewest weeks worth giving it, and its share of the weeks beyond.
    pub(super) fn weeks(self) -> (usize, f64) {
        match self {
            Self::Spin => (1, 2.0),
            Self::Effort | Self::Hitters => (2, 3.0),
            Self::Shape | Self::Command => (2, 4.0),
        }
    }

    /// How it is worked on.
    pub fn work(self) -> Work {
        let of = |effort_percent, throws, new_in_ten| Work { effort_percent, throws, new_in_ten };
        match self {
            Self::Spin => of(60, 25, 6),
            Self::Shape => of(80, 30, 5),
            Self::Effort => of(95, 35, 4),
            Self::Command => of(95, 40, 4),
            Self::Hitters => of(100, 45, 3),
        }
    }
}

/// A measure that a gate looks at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measure {
    /// Throw-to-throw standard deviation of the active fraction.
    ActiveFractionSpread,
    /// Throw-to-throw standard deviation of the spin clock, minutes of the clock face.
    ClockSpreadMinutes,
    /// Share of the last twenty throws of the new pitch in the window.
    ShareInWindow,
    /// Speed of the new pitch, mph.
    SpeedMph,
    /// Loss of fastball speed against the profile, mph.
    FastballLossMph,
    /// Drop of the slot against the profile, degrees.
    SlotDropDeg,
    /// Scatter at the plate (root mean square of side and height), in.
    CommandIn,
    /// Swings at the new pitch seen, live.
    Swings,
}

/// What a measure has to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Need {
    /// This or less.
    AtMost(f64),
    /// This or more.
    AtLeast(f64),
}

/// One line of a gate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gate {
    /// What is measured.
    pub measure: Measure,
    /// What it has to be.
    pub need: Need,
    /// What it is now, when measured.
    pub now: Option<Estimate>,
}

impl Gate {
    /// Whether the value measured is good enough; nothing when it was not measured.
    pub fn is_met(&self) -> Option<bool> {
        let now = self.now?.value;
        Some(match self.need {
            Need::AtMost(most) => now <= most,
            Need::AtLeast(least) => now >= least,
        })
    }
}

/// What has been measured so far of the new pitch; nothing known is the default.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Measured {
    /// Standard deviation of the active fraction.
    pub active_fraction_spread: Option<Estimate>,
    /// Standard deviation of the spin clock, minutes of the clock face.
    pub clock_spread_minutes: Option<Estimate>,
    /// Share of throws in the window.
    pub share_in_window: Option<Estimate>,
    /// Speed, mph.
    pub speed_mph: Option<Estimate>,
    /// Loss of fastball speed, mph.
    pub fastball_loss_mph: Option<Estimate>,
    /// Drop of the slot, degrees.
    pub slot_drop_deg: Option<Estimate>,
    /// Scatter at the plate, in.
    pub command_in: Option<Estimate>,
}

impl Measured {
    /// What a trial says of its best grip.
    pub fn from_trial(trial: &Trial) -> Self {
        let Some(best) = trial.grips.first() else { return Self::default() };
        Self {
            active_fraction_spread: best.clean.active_fraction_spread,
            clock_spread_minutes: best.clean.clock_spread_minutes,
            share_in_window: Some(best.chance_next),
            speed_mph: Some(best.speed_mph),
            ..Self::default()
        }
    }

    /// What the last outings say.
    pub fn from_progress(progress: &Progress) -> Self {
        let loss = |quantity| {
            let now = progress.watch(quantity)?.now?;
            Some(Estimate { value: -now.value, low: -now.high, high: -now.low })
        };
        Self {
            share_in_window: progress.new_pitch.share_now,
            speed_mph: progress.new_pitch.shape_now.map(|[speed, ..]| speed),
            fastball_loss_mph: loss(Quantity::FastballSpeed),
            slot_drop_deg: loss(Quantity::Slot),
            command_in: progress.new_pitch.command.map(|(_, last)| last),
            ..Self::default()
        }
    }

    /// Both together; where both measured the same thing, `later` holds.
    #[must_use]
    pub fn and(self, later: Self) -> Self {
        Self {
            active_fraction_spread: later.active_fraction_spread.or(self.active_fraction_spread),
            clock_spread_minutes: later.clock_spread_minutes.or(self.clock_spread_minutes),
            share_in_window: later.share_in_window.or(self.share_in_window),
            speed_mph: later.speed_mph.or(self.speed_mph),
            fastball_loss_mph: later.fastball_loss_mph.or(self.fastball_loss_mph),
            slot_drop_deg: later.slot_drop_deg.or(self.slot_drop_deg),
            command_in: later.command_in.or(self.command_in),
        }
    }
}

/// Gates. Common practice, no published source.
const FASTBALL_LOSS_MPH: f64 = 1.0;
const SLOT_DROP_DEG: f64 = 3.0;
const SWINGS: f64 = 30.0;

/// The gate at the end of `step`; every line must be met.
pub fn gates(step: Step, target: &Target, measured: &Measured) -> Vec<Gate> {
    let gate = |measure, need, now| Gate { measure, need, now };
    let share = gate(Measure::ShareInWindow, Need::AtLeast(target.share_enough()), measured.share_in_window);
    let arm = [
        gate(Measure::FastballLossMph, Need::AtMost(FASTBALL_LOSS_MPH), measured.fastball_loss_mph),
        gate(Measure::SlotDropDeg, Need::AtMost(SLOT_DROP_DEG), measured.slot_drop_deg),
    ];
    match step {
        Step::Spin => vec![
            gate(Measure::ActiveFractionSpread, Need::AtMost(CLEAN_FRACTION), measured.active_fraction_spread),
            gate(Measure::ClockSpreadMinutes, Need::AtMost(CLEAN_MINUTES), measured.clock_spread_minutes),
        ],
        Step::Shape => vec![share],
        Step::Effort => {
            let speed = gate(Measure::SpeedMph, Need::AtLeast(target.window.ranges()[0].low), measured.speed_mph);
            [vec![speed, share], arm.to_vec()].concat()
        }
        Step::Command => {
            vec![gate(Measure::CommandIn, Need::AtMost(target.scatter_enough_in()), measured.command_in), share]
        }
        Step::Hitters => [vec![gate(Measure::Swings, Need::AtLeast(SWINGS), None)], arm.to_vec()].concat(),
    }
}

/// The first step whose gate is not known to be met.
pub fn first_step(target: &Target, measured: &Measured) -> Step {
    let met = |step: Step| gates(step, target, measured).iter().all(|gate| gate.is_met() == Some(true));
    Step::ALL.into_iter().find(|&step| !met(step)).unwrap_or(Step::Hitters)
}

/// Of `throws` on a day of `step`, how many are the new pitch.
pub(super) fn new_pitches(step: Step, throws: u32, profile: &Profile) -> u32 {
    let in_ten = f64::from(step.work().new_in_ten);
    let share = if step == Step::Hitters { (in_ten / 10.0).min(profile.limits.new_pitch_cap) } else { in_ten / 10.0 };
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of a small count")]
    let count = (f64::from(throws) * share).round() as u32;
    count.min(throws)
}

//! What happened from day to day: another zero, another arm, or one pitch on its own.
//!
//! A unit set up anew moves every pitch alike and leaves speed and release where they were; an arm
//! that has changed moves speed or release, or one pitch and not the others. That difference is
//! the whole of the verdict: the thresholds below are common practice, no published source.

use crate::athlete::session::Session;
use crate::base::stats::Estimate;

use super::mixture::MOST_GROUPS;
use super::polish::{DayZero, FAR_IN, Fit};
use super::tally::Tally;
use super::{Assignment, corrected_look};

/// A stretch of movement this far from 1 is told.
const STRETCHED: f64 = 0.2;
/// A change of the athlete himself: mph, and feet of release.
const SPEED_CHANGE_MPH: f64 = 2.0;
const RELEASE_CHANGE_FT: f64 = 0.4;
/// Throws of one pitch on one day that can bear a finding.
const ENOUGH: f64 = 8.0;
/// A pitch's own movement on one day that is worth telling (in), and how many standard errors.
const OWN_DRIFT_IN: f64 = 2.5;
const OWN_DRIFT_ERRORS: f64 = 4.0;
/// Movement gained or lost from a day's first throw to its last that is worth telling (in), and
/// how many standard errors.
const TREND_IN: f64 = 2.0;
const TREND_ERRORS: f64 = 4.0;

/// What was done about a day's zero.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Treatment {
    /// Measured like the others, but for a small drift.
    AsMeasured,
    /// Measured from another zero: brought to the common one to sort it. Its movement does not
    /// count in the shapes, for a corrected number cannot vouch for itself.
    Rezeroed,
    /// Not used.
    SetAside,
}

/// What probably changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cause {
    /// Every pitch moved alike, speed and release stayed: the unit.
    Sensor,
    /// Speed or release moved too: the athlete.
    Arm,
}

/// One day.
#[derive(Debug, Clone, PartialEq)]
pub struct DayFinding {
    /// As written in the file.
    pub day: String,
    /// Throws sorted into a pitch.
    pub throws: usize,
    /// What was done.
    pub treatment: Treatment,
    /// What probably changed; only for a day that was not left as measured.
    pub cause: Option<Cause>,
    /// Its zero against the common one, inches: vertical.
    pub vertical_offset_in: f64,
    /// Its zero against the common one, inches: glove side.
    pub glove_side_offset_in: f64,
    /// Measured inches per inch, vertical and glove side, when clearly not 1.
    pub stretch: Option<[f64; 2]>,
    /// Speed against the athlete's average of the same pitches.
    pub speed_change_mph: f64,
    /// Release height and side against the average, when measured.
    pub release_change_ft: Option<[f64; 2]>,
    /// Movement gained from the first throw to the last (vertical, glove side), when clear.
    pub trend_in: Option<[f64; 2]>,
}

/// One pitch that moved on one day when the others did not: the arm, not the unit.
#[derive(Debug, Clone, PartialEq)]
pub struct PitchDrift {
    /// Index into the session's days.
    pub day: usize,
    /// Index into the groups.
    pub group: usize,
    /// Against its own average with the day's zero taken out, inches.
    pub vertical_in: Estimate,
    /// The same toward the glove side.
    pub glove_side_in: Estimate,
}

/// Everything observed by day.
pub(super) struct Observed {
    pub(super) days: Vec<DayFinding>,
    pub(super) drifts: Vec<PitchDrift>,
}

impl Observed {
    /// Whether the day's movement counts in the shapes.
    pub(super) fn movement_counts(&self, day: u16) -> bool {
        self.days[usize::from(day)].treatment == Treatment::AsMeasured
    }
}

/// What one pitch did on one day, against its average.
#[derive(Debug, Clone, Copy, Default)]
struct Cell {
    movement: [Tally; 2],
}

/// What one day did, all pitches together, against their averages.
#[derive(Debug, Clone, Copy, Default)]
struct Day {
    speed: Tally,
    release: [Tally; 2],
    trend: [Trend; 2],
}

/// Looks at every day.
pub(super) fn observe(session: &Session, fit: &Fit, assignments: &[Assignment]) -> Observed {
    let usual_release = release_by_group(session, assignments);
    let mut days = vec![Day::default(); session.days.len()];
    let mut cells = vec![[Cell::default(); MOST_GROUPS]; session.days.len()];
    for (throw, assignment) in session.throws.iter().zip(assignments) {
        let &Assignment::Group { index, .. } = assignment else { continue };
        let (look, mean) = (corrected_look(throw, fit), fit.mixture.parts[index].mean);
        let (day, cell) = (&mut days[usize::from(throw.day)], &mut cells[usize::from(throw.day)][index]);
        day.speed.add(look[0] - mean[0]);
        for (axis, reading) in [throw.release.height_ft, throw.release.side_ft].into_iter().enumerate() {
            day.release[axis].add_some(reading.map(|feet| feet - usual_release[index][axis].mean));
        }
        for axis in 0..2 {
            cell.movement[axis].add(look[axis + 1] - mean[axis + 1]);
            day.trend[axis].add(look[axis + 1] - mean[axis + 1]);
        }
    }
    let findings =
        (0..days.len()).map(|d| finding(&session.days[d], &days[d], &fit.days[d], was_used(session, assignments, d)));
    Observed { drifts: drifts(&cells, &fit.days), days: findings.collect() }
}

fn was_used(session: &Session, assignments: &[Assignment], day: usize) -> bool {
    let mut of_day = session.throws.iter().zip(assignments).filter(|(throw, _)| usize::from(throw.day) == day);
    of_day.any(|(_, assignment)| !matches!(assignment, Assignment::SetAside))
}

fn release_by_group(session: &Session, assignments: &[Assignment]) -> [[Tally; 2]; MOST_GROUPS] {
    let mut usual = [[Tally::default(); 2]; MOST_GROUPS];
    for (throw, assignment) in session.throws.iter().zip(assignments) {
        if let &Assignment::Group { index, .. } = assignment {
            usual[index][0].add_some(throw.release.height_ft);
            usual[index][1].add_some(throw.release.side_ft);
        }
    }
    usual
}

fn finding(name: &str, day: &Day, zero: &DayZero, is_used: bool) -> DayFinding {
    let is_stretched = zero.stretch.iter().any(|b| (b - 1.0).abs() > STRETCHED);
    let is_far = zero.offset.iter().any(|a| a.abs() > FAR_IN) || is_stretched;
    let treatment = match (is_used, is_far) {
        (false, _) => Treatment::SetAside,
        (true, true) => Treatment::Rezeroed,
        (true, false) => Treatment::AsMeasured,
    };
    let release_change_ft = (day.release[0].n >= ENOUGH).then(|| day.release.map(|tally| tally.mean));
    let is_arm = day.speed.mean.abs() > SPEED_CHANGE_MPH
        || release_change_ft.is_some_and(|change| change.iter().any(|feet| feet.abs() > RELEASE_CHANGE_FT));
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count")]
    let throws = day.speed.n as usize;
    DayFinding {
        day: name.to_owned(),
        throws,
        treatment,
        cause: (treatment == Treatment::Rezeroed).then_some(if is_arm { Cause::Arm } else { Cause::Sensor }),
        vertical_offset_in: zero.offset[0],
        glove_side_offset_in: zero.offset[1],
        stretch: is_stretched.then_some(zero.stretch),
        speed_change_mph: day.speed.mean,
        release_change_ft,
        trend_in: clear_trend(&day.trend),
    }
}

fn drifts(cells: &[[Cell; MOST_GROUPS]], zeros: &[DayZero]) -> Vec<PitchDrift> {
    let mut found = Vec::new();
    for (day, groups) in cells.iter().enumerate().filter(|(day, _)| !zeros[*day].elsewhere) {
        for (group, cell) in groups.iter().enumerate() {
            let [vertical, glove_side] = cell.movement;
            let error = |tally: &Tally| tally.sd_toward(2.2) / tally.n.sqrt();
            let is_clear =
                |tally: &Tally| tally.mean.abs() > OWN_DRIFT_IN && tally.mean.abs() > OWN_DRIFT_ERRORS * error(tally);
            if vertical.n >= ENOUGH && (is_clear(&vertical) || is_clear(&glove_side)) {
                let estimate = |tally: &Tally| Estimate::from_sd(tally.mean, error(tally));
                found.push(PitchDrift {
                    day,
                    group,
                    vertical_in: estimate(&vertical),
                    glove_side_in: estimate(&glove_side),
                });
            }
        }
    }
    found
}

/// Sums of a straight line over the order of throws.
#[derive(Debug, Clone, Copy, Default)]
struct Trend {
    n: f64,
    value: Tally,
    product: f64,
}

impl Trend {
    fn add(&mut self, value: f64) {
        self.product += self.n * value;
        self.n += 1.0;
        self.value.add(value);
    }

    /// Change from first to last, and its standard error.
    fn rise(&self) -> (f64, f64) {
        let n = self.n;
        let scatter = n * (n * n - 1.0) / 12.0;
        let slope = (self.product - self.value.mean * n * (n - 1.0) / 2.0) / scatter;
        (slope * (n - 1.0), self.value.sd_toward(2.2) / scatter.sqrt() * (n - 1.0))
    }
}

fn clear_trend(trends: &[Trend; 2]) -> Option<[f64; 2]> {
    let rises = trends.map(|trend| trend.rise());
    let is_clear = |(rise, error): &(f64, f64)| rise.abs() > TREND_IN && rise.abs() > TREND_ERRORS * error;
    (trends[0].n >= 2.0 * ENOUGH && rises.iter().any(is_clear)).then(|| rises.map(|(rise, _)| rise))
}

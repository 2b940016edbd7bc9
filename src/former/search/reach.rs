//! What this athlete can be expected to reach in a family.
//!
//! Reach is a sector of spin pushes: a range of clocks his slot and hand allow, and a range of
//! active spin his arm's spin gives, at a range of speeds below his fastball. The seams may add a
//! bounded shift in any direction. A shape is reachable when the sector, shifted so, covers it;
//! the recipe is the nearest push of the sector, and the seams make up the rest.
//!
//! The numbers are common practice, no published source, unless a line says otherwise; each is an
//! assumption that a coach may know better.

use crate::athlete::profile::{Limits, Pitch, Spread};
use crate::ball::Supination;
use crate::ball::flight::inverse::{MIDDLE, break_of_spin, throw_of_shape};
use crate::ball::recipe::active_rpm_needed;
use crate::ball::spin::{BALL_RADIUS, LiftLaw, Spin};
use crate::ball::{Family, Ground, SLOWEST_MPH, SeamPush, Shape};
use crate::base::geometry::Clock;
use crate::base::units::RPM;
use crate::former::evaluate::{NewPitch, Stage, Thrown};

use super::optimizer::Bounds3;

/// A family's place relative to an athlete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Which family.
    pub family: Family,
    /// Speeds, mph.
    pub speed_mph: (f64, f64),
    /// Vertical breaks that still make it this family, in.
    pub vertical_in: (f64, f64),
    /// Glove-side breaks that still make it this family, in.
    pub glove_side_in: (f64, f64),
    /// Total spin per mph of its own speed.
    rpm_per_mph: f64,
    /// Active fraction he can give it.
    active: (f64, f64),
    /// Clocks he can give it, hours from 12:00 counter-clockwise negative.
    clock: (f64, f64),
    /// Most the seams are trusted to add, in.
    seam_in: f64,
}

/// How to throw a reachable shape.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Recipe {
    /// The shape.
    pub shape: Shape,
    /// The spin.
    pub spin: Spin,
    /// What the seams must add: glove side, up; in.
    pub seam_in: [f64; 2],
}

/// How a family sits relative to the athlete's fastball: speed as a share of it, spin per mph as a
/// multiple of it, active fraction, and the shapes that go by its name.
struct Custom {
    speed: (f64, f64),
    spin: f64,
    active: (f64, f64),
    vertical_in: (f64, f64),
    glove_side_in: (f64, f64),
}

/// Common practice, no published source.
fn custom(family: Family) -> Custom {
    let of =
        |speed, spin, active, vertical_in, glove_side_in| Custom { speed, spin, active, vertical_in, glove_side_in };
    match family {
        Family::FourSeam => of((0.99, 1.0), 1.0, (0.80, 1.0), (10.0, 24.0), (-12.0, 2.0)),
        Family::TwoSeam => of((0.98, 1.0), 0.97, (0.80, 1.0), (5.0, 14.0), (-20.0, -10.0)),
        Family::Sinker => of((0.97, 1.0), 0.95, (0.75, 1.0), (0.0, 10.0), (-20.0, -10.0)),
        Family::Cutter => of((0.94, 0.97), 1.03, (0.20, 0.60), (4.0, 11.0), (0.0, 7.0)),
        Family::Slider => of((0.89, 0.94), 1.15, (0.10, 0.45), (-6.0, 5.0), (1.0, 9.0)),
        Family::Sweeper => of((0.85, 0.91), 1.20, (0.40, 0.85), (-8.0, 5.0), (10.0, 22.0)),
        Family::Curveball => of((0.80, 0.88), 1.20, (0.55, 0.95), (-22.0, -8.0), (0.0, 14.0)),
        Family::Changeup => of((0.87, 0.92), 0.80, (0.75, 1.0), (0.0, 11.0), (-20.0, -9.0)),
        Family::Splitter => of((0.90, 0.94), 0.60, (0.50, 1.0), (-3.0, 7.0), (-14.0, -3.0)),
        Family::Knuckleball => of((0.75, 0.85), 0.05, (0.0, 1.0), (-4.0, 4.0), (-4.0, 4.0)),
    }
}

/// Breaks that go by a family's name, whoever throws it: vertical and glove side, in.
pub fn usual_breaks(family: Family) -> [(f64, f64); 2] {
    let custom = custom(family);
    [custom.vertical_in, custom.glove_side_in]
}

/// Degrees that the reachable push of a sweeping ball falls below horizontal per degree of slot
/// above [`LEVEL_SLOT_DEG`]: the higher the slot, the more a hand must come over the ball.
const FALL_PER_SLOT_DEG: f64 = 0.4;
/// Slot at which pure side spin is natural.
const LEVEL_SLOT_DEG: f64 = 25.0;

/// The most the seams may be asked to take back from the spin's push, in: help is sought from
/// them, not hindrance.
const SEAM_AGAINST_IN: f64 = 0.5;

/// What the seams are trusted with: the profile's bound, or else six inches.
pub fn trusted_seam_in(limits: Limits) -> f64 {
    limits.seam_shift_in.unwrap_or(6.0)
}

impl Reach {
    /// What the athlete of `stage` can reach in `family`.
    pub fn of(stage: &Stage, family: Family) -> Self {
        let custom = custom(family);
        let fastball = fastball(stage);
        let fastball_spin = fastball.map_or(USUAL_RPM_PER_MPH, rpm_per_mph);
        let hardest = stage.pitches.iter().map(|p| p.shape.speed_mph).fold(0.0, f64::max);
        let speed = fastball.map_or(hardest, |pitch| pitch.shape.speed_mph);
        let slow = |mph: f64| mph.max(SLOWEST_MPH);
        Self {
            family,
            speed_mph: (slow(custom.speed.0 * speed), slow((custom.speed.1 * speed).min(hardest))),
            vertical_in: custom.vertical_in,
            glove_side_in: custom.glove_side_in,
            rpm_per_mph: best_spin(stage, family, fastball_spin * custom.spin),
            active: custom.active,
            clock: clocks(stage, family),
            seam_in: trusted_seam_in(stage.profile.limits),
        }
    }

    /// What goes by the family's name: ranges of speed (mph), vertical and glove-side break (in).
    pub fn whole(&self) -> Bounds3 {
        [self.speed_mph, self.vertical_in, self.glove_side_in]
    }

    /// How to throw `shape`, or nothing when it is out of reach or not of this family.
    pub fn recipe(&self, stage: &Stage, shape: Shape) -> Option<Recipe> {
        let within = |value: f64, range: (f64, f64)| (range.0 - 1e-9..=range.1 + 1e-9).contains(&value);
        let named = within(shape.speed_mph, self.speed_mph)
            && within(shape.vertical_break_in, self.vertical_in)
            && within(shape.glove_side_break_in, self.glove_side_in);
        // An arm whose measured spin is none makes nothing by spin.
        if !named || self.rpm_per_mph <= 0.0 {
            return None;
        }
        let per_inch = coefficient_per_inch(stage, shape);
        let rpm = self.rpm_per_mph * shape.speed_mph;
        let push_in = |active: f64| lift_at(rpm * active, shape.speed()) / per_inch;
        let range = (push_in(self.active.0), push_in(self.active.1));
        let (clock, inches) = self.nearest_push(shape, range);
        let (side, up) = clock.push();
        let seam_in = [shape.glove_side_break_in - side * inches, shape.vertical_break_in - up * inches];
        let spin = Spin { rpm, active_fraction: active_for(stage, shape, clock, (inches, per_inch), rpm), clock };
        let against = -(seam_in[0] * side + seam_in[1] * up);
        let trusted = seam_in[0].hypot(seam_in[1]) <= self.seam_in && against <= SEAM_AGAINST_IN;
        trusted.then_some(Recipe { shape, spin, seam_in })
    }

    /// The push (clock, inches) of the sector that leaves the seams least to do.
    fn nearest_push(&self, shape: Shape, inches: (f64, f64)) -> (Clock, f64) {
        let wanted = Clock::from_push(shape.glove_side_break_in, shape.vertical_break_in);
        let clock = held_clock(wanted, self.clock);
        let (side, up) = clock.push();
        let along = side * shape.glove_side_break_in + up * shape.vertical_break_in;
        (clock, along.clamp(inches.0, inches.1))
    }
}

impl Recipe {
    /// The new pitch this recipe makes from the athlete's usual release, as an evaluation sees it.
    pub fn pitch(&self, stage: &Stage, family: Family, spread: Spread) -> NewPitch {
        let spin_break_in =
            [self.shape.glove_side_break_in - self.seam_in[0], self.shape.vertical_break_in - self.seam_in[1]];
        NewPitch {
            thrown: Thrown { family, shape: self.shape, release: stage.release, spread },
            spin_break_in,
            spin_parameter: self.spin.active_parameter(self.shape.speed()),
        }
    }

    /// Inches the seams must add.
    pub fn seam_total_in(&self) -> f64 {
        self.seam_in[0].hypot(self.seam_in[1])
    }
}

/// Spin per mph of an ordinary fastball: 2250 rpm at 92 mph. Common practice, no published source.
const USUAL_RPM_PER_MPH: f64 = 24.5;

/// The fastball that others are measured against: the fastest of the fastball families.
pub fn fastball<'s>(stage: &Stage<'s>) -> Option<&'s Pitch> {
    stage
        .profile
        .pitches
        .iter()
        .filter(|pitch| pitch.family.is_fastball())
        .max_by(|a, b| a.shape.speed_mph.total_cmp(&b.shape.speed_mph))
}

fn rpm_per_mph(pitch: &Pitch) -> f64 {
    pitch.spin_rpm.map_or(USUAL_RPM_PER_MPH, |rpm| rpm / pitch.shape.speed_mph)
}

/// Spin per mph for a new breaking ball: that of a breaking ball he already throws, when measured.
fn best_spin(stage: &Stage, family: Family, usual: f64) -> f64 {
    let measured = stage
        .profile
        .pitches
        .iter()
        .filter(|pitch| family.is_breaking() && pitch.family.is_breaking() && pitch.spin_rpm.is_some())
        .map(rpm_per_mph)
        .fold(f64::NAN, f64::max);
    if measured.is_nan() { usual } else { measured }
}

/// The active fraction whose push toward `clock`, flown, moves the ball by `inches`; `per_inch` is the
/// side-force coefficient of one inch.
///
/// From the lift law at release speed, then two corrections by what the flight says: lift falls a
/// little as spin parameter rises along the way. The bullet part, whose late side force is not the
/// recipe's matter, is left out.
fn active_for(stage: &Stage, shape: Shape, clock: Clock, (inches, per_inch): (f64, f64), rpm: f64) -> f64 {
    let mut active_rpm = LiftLaw::DEFAULT.spin_parameter(inches * per_inch) * shape.speed() / BALL_RADIUS / RPM;
    let (side, up) = clock.push();
    for _ in 0..2 {
        let spin = Spin { rpm: active_rpm, active_fraction: 1.0, clock };
        let flown = break_of_spin(spin, shape.speed(), stage.release, LiftLaw::DEFAULT, stage.air);
        let found = flown.glove_side_in * side + flown.up_in * up;
        if active_rpm.is_finite() && found > 0.1 {
            active_rpm *= inches / found;
        }
    }
    (active_rpm / rpm).clamp(0.0, 1.0)
}

/// Lift coefficient of `active_rpm` at `speed` (m/s), default law.
fn lift_at(active_rpm: f64, speed: f64) -> f64 {
    LiftLaw::DEFAULT.coefficient(BALL_RADIUS * active_rpm * RPM / speed)
}

/// Side-force coefficient that gives this pitch one inch of break.
fn coefficient_per_inch(stage: &Stage, shape: Shape) -> f64 {
    let total = shape.vertical_break_in.hypot(shape.glove_side_break_in);
    // A shape that hardly breaks says little about coefficients; a plain one stands in.
    let probe = if total > 2.0 { shape } else { Shape { vertical_break_in: 0.0, glove_side_break_in: 10.0, ..shape } };
    let side = throw_of_shape(probe, stage.release, MIDDLE, stage.air).forces.side;
    side[0].hypot(side[1]) / probe.vertical_break_in.hypot(probe.glove_side_break_in)
}

/// Clocks (hours, right-hander) a slot and a hand allow in a family.
///
/// Breaking balls and cutters are limited toward 9:00 and beyond by the slot; the others lie
/// relative to the fastball's own clock.
fn clocks(stage: &Stage, family: Family) -> (f64, f64) {
    let release = &stage.profile.release;
    let ease_deg = match release.supination {
        Supination::Easy => 5.0,
        Supination::Ordinary => 0.0,
        Supination::Hard => -10.0,
    };
    let side_limit = 9.0 + (ease_deg - FALL_PER_SLOT_DEG * (release.slot_deg - LEVEL_SLOT_DEG)) / 30.0;
    let own = fastball(stage).map_or_else(
        || (90.0 - release.slot_deg) / 30.0 * 0.6,
        |pitch| {
            Clock::from_hours(0.0)
                .hours_to(Clock::from_push(pitch.shape.glove_side_break_in, pitch.shape.vertical_break_in))
        },
    );
    match family {
        Family::Sweeper => (7.0, side_limit),
        Family::Slider => (6.5, side_limit + 2.0),
        Family::Curveball => (5.5, side_limit.min(8.2)),
        Family::Cutter => (own - 2.5 - ease_deg / 30.0, own),
        Family::FourSeam => (own - 0.3, own + 0.3),
        Family::TwoSeam => (own + 0.3, own + 1.5),
        Family::Sinker => (own + 0.5, own + 2.0),
        Family::Changeup => (own + 0.3, own + 2.2),
        Family::Splitter => (own, own + 2.0),
        Family::Knuckleball => (0.0, 11.99),
    }
}

/// `wanted` when it lies in the range of hours, else the nearer end.
fn held_clock(wanted: Clock, range: (f64, f64)) -> Clock {
    let (from, to) = (Clock::from_hours(range.0), Clock::from_hours(range.1));
    let width = range.1 - range.0;
    let place = (wanted.hours() - from.hours()).rem_euclid(12.0);
    if place <= width {
        wanted
    } else if wanted.hours_to(from).abs() < wanted.hours_to(to).abs() {
        from
    } else {
        to
    }
}

/// Spin of a pitch he throws: measured where the profile says so, otherwise what his shape needs
/// without help from the seams, at the spin per mph his fastball has.
pub fn spin_of(stage: &Stage, pitch: &Pitch) -> Spin {
    let shape = pitch.shape;
    let ground = Ground { release: stage.release, air: stage.air };
    let needed = active_rpm_needed(shape, SeamPush::NONE, ground).value;
    let usual = fastball(stage).map_or(USUAL_RPM_PER_MPH, rpm_per_mph) * custom(pitch.family).spin * shape.speed_mph;
    let rpm = pitch.spin_rpm.unwrap_or(usual).max(1.0);
    Spin {
        rpm,
        active_fraction: pitch.active_fraction.unwrap_or((needed / rpm).clamp(0.0, 1.0)),
        clock: pitch.spin_clock.unwrap_or_else(|| Clock::from_push(shape.glove_side_break_in, shape.vertical_break_in)),
    }
}

/// How far a recipe is from the nearest pitch he already throws: turning the axis three hours,
/// tipping it 45 degrees or changing speed by 10 mph is about one unit each; half a unit is leaning
/// on the seams as far as they are trusted, and another half asking a hand that will not turn for
/// a breaking ball. A yardstick of this project's, not a measurement.
pub fn effort(stage: &Stage, family: Family, recipe: &Recipe) -> f64 {
    let change = |pitch: &Pitch| {
        let own = spin_of(stage, pitch);
        let turn = own.clock.hours_to(recipe.spin.clock).abs() / 3.0;
        // A turn of the axis matters less the more of the spin is bullet spin.
        let turn = turn * own.active_fraction.min(recipe.spin.active_fraction).max(0.3);
        let tip = (own.gyro_deg() - recipe.spin.gyro_deg()).abs() / 45.0;
        let slower = (pitch.shape.speed_mph - recipe.shape.speed_mph).abs() / 10.0;
        turn + tip + slower
    };
    let nearest = stage.profile.pitches.iter().map(change).fold(f64::INFINITY, f64::min);
    let seams = 0.5 * recipe.seam_total_in() / trusted_seam_in(stage.profile.limits).max(1.0);
    let hand = if stage.profile.release.supination == Supination::Hard && family.is_breaking() { 0.5 } else { 0.0 };
    nearest + seams + hand
}

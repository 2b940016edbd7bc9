//! What one pitch cannot be: contradictions between its shape, its spin and physics.
//!
//! Bounds are deliberately generous. They catch wrong signs, wrong units and swapped columns, and
//! let every real arm pass; how believable a shape is, is left to the model.

use std::f64::consts::PI;

use crate::ball::Family;
use crate::base::geometry::{Clock, Hand};
use crate::base::units::{INCH, MPH, RPM};

use super::fields::Faults;
use super::pitch_table::PitchDraft;

/// Every check of one pitch by itself. A check whose values could not be read passes.
pub(super) fn check_pitch(pitch: &PitchDraft, hand: Option<Hand>, faults: &Faults) {
    check_fastball_signs(pitch, faults);
    check_spin_parts(pitch, faults);
    check_clock_against_breaks(pitch, hand, faults);
    check_break_against_spin(pitch, faults);
}

/// A fastball that would be called something else if it ran this far to the glove side, inches.
const MOST_GLOVE_SIDE_RUN_IN: f64 = 2.0;

fn check_fastball_signs(pitch: &PitchDraft, faults: &Faults) {
    let Some(family) = pitch.family() else {
        return;
    };
    if let Some(run) = &pitch.glove_side_break_in
        && family.is_fastball()
        && run.value > MOST_GLOVE_SIDE_RUN_IN
    {
        let fault = run.fault(run.value.to_string(), format!("at most {MOST_GLOVE_SIDE_RUN_IN} for a {family}"));
        faults.add(fault.with_hint(
            "positive is toward the pitcher's glove, for either hand; a value as the catcher sees it, \
             such as a left-hander's, may need its sign turned",
        ));
    }
    if let Some(ride) = &pitch.vertical_break_in
        && family == Family::FourSeam
        && ride.value < 0.0
    {
        let fault = ride.fault(ride.value.to_string(), format!("0 or more for a {family}"));
        faults.add(fault.with_hint(
            "vertical break is counted from the same throw without spin, gravity on; \
             a total drop is not meant",
        ));
    }
}

/// A ball without spin has no spin direction, and bullet spin pushes nowhere.
fn check_spin_parts(pitch: &PitchDraft, faults: &Faults) {
    if pitch.spin_rpm.as_ref().is_some_and(|spin| spin.value == 0.0) {
        let hint = "leave it out, or mend `spin_rpm`; leave `spin_rpm` out if it was not measured";
        if let Some(active) = &pitch.active_fraction {
            faults.add(active.fault("given with a `spin_rpm` of 0", "absent for a ball without spin").with_hint(hint));
        }
        if let Some(clock) = &pitch.spin_clock {
            faults.add(clock.fault("given with a `spin_rpm` of 0", "absent for a ball without spin").with_hint(hint));
        }
    } else if let (Some(active), Some(clock)) = (&pitch.active_fraction, &pitch.spin_clock)
        && active.value == 0.0
    {
        let fault = clock.fault("given with an `active_fraction` of 0", "absent for pure bullet spin");
        faults.add(
            fault.with_hint("bullet spin pushes the ball nowhere; leave the clock out, or mend `active_fraction`"),
        );
    }
}

/// The clock is compared with the breaks only when the break is at least this, inches...
const CLEAR_BREAK_IN: f64 = 6.0;
/// ...and at least this share of the spin is active; below, the seams may outweigh the spin.
const CLEAR_ACTIVE_FRACTION: f64 = 0.4;
/// Seams turn the push away from the spin's own direction, but never this far, hours.
const MOST_HOURS_APART: f64 = 4.0;

fn check_clock_against_breaks(pitch: &PitchDraft, hand: Option<Hand>, faults: &Faults) {
    let (Some(clock), Some(hand), Some(glove), Some(up)) =
        (&pitch.spin_clock, hand, &pitch.glove_side_break_in, &pitch.vertical_break_in)
    else {
        return;
    };
    let active = pitch.active_fraction.as_ref().map_or(1.0, |active| active.value);
    if glove.value.hypot(up.value) < CLEAR_BREAK_IN || active < CLEAR_ACTIVE_FRACTION {
        return;
    }
    let from_breaks = Clock::from_push(glove.value, up.value).for_hand(hand);
    let is_far = |written: Clock| written.hours_to(from_breaks).abs() > MOST_HOURS_APART;
    if is_far(clock.value) {
        let found = format!("\"{}\", against breaks that point to {from_breaks}", clock.value);
        let allowed = format!("within {MOST_HOURS_APART} hours of {from_breaks} for this {hand}-hander");
        let hint = if is_far(clock.value.mirrored()) {
            "the clock is the way the spin pushes the ball, 12:00 for backspin; or a break has the wrong sign".into()
        } else {
            format!(
                "the clock is as the pitcher sees it; if it was read by the catcher, write \"{}\"",
                clock.value.mirrored()
            )
        };
        faults.add(clock.fault(found, allowed).with_hint(hint));
    }
}

/// Side-force coefficient that moves the ball one inch: 0.01 gives 0.98 in over 55 ft, whatever
/// the speed (computed by integrating a flat throw, drag coefficient 0.35, air of 1.225 kg/m3).
const COEFFICIENT_PER_INCH: f64 = 0.01 / 0.98;
/// Above the largest published lift coefficients of a baseball, about 0.35 (Nathan, Am. J. Phys.
/// 76 (2008) 119, spin parameters to 0.6).
const MOST_LIFT: f64 = 0.36;
/// What seams may add: about 6 in, more than the mean push of any family but the sinker's (6.4 in, [`crate::ball::Usual`]).
const MOST_SEAM: f64 = 0.06;
/// Room above the lift laws for cold, dense air and for errors of measurement.
const LIFT_MARGIN: f64 = 1.15;
/// From a circumference of 9.125 in, the middle of the rule's range.
const BALL_RADIUS: f64 = 9.125 * INCH / (2.0 * PI);

/// The total break must be one that some spin could give, and that the spin measured could give.
/// A knuckleball is spared the second: its push is the seams' alone, and can be large.
fn check_break_against_spin(pitch: &PitchDraft, faults: &Faults) {
    let (Some(glove), Some(up), Some(speed)) = (&pitch.glove_side_break_in, &pitch.vertical_break_in, &pitch.speed_mph)
    else {
        return;
    };
    let total = glove.value.hypot(up.value);
    let most = (MOST_LIFT + MOST_SEAM) / COEFFICIENT_PER_INCH;
    if total > most {
        let larger = if glove.value.abs() > up.value.abs() { glove } else { up };
        let found = format!("{}, which makes a total break of {total:.1} in", larger.value);
        let fault =
            larger.fault(found, format!("small enough for a total of {most:.0} in, the most spin and seams can do"));
        faults
            .add(fault.with_hint("breaks are in inches from the same throw without spin, not from where it was aimed"));
    } else if let Some(spin) = &pitch.spin_rpm
        && pitch.family() != Some(Family::Knuckleball)
    {
        let least = least_spin_rpm(total, speed.value);
        if spin.value < least {
            let found = format!("{}, too little for a total break of {total:.1} in at {} mph", spin.value, speed.value);
            let fault = spin.fault(found, format!("at least {:.0} rpm at this speed", (least / 50.0).ceil() * 50.0));
            faults.add(
                fault.with_hint("check the spin, the speed and both breaks; leave the spin out if it was not measured"),
            );
        }
    }
}

/// The least spin, all of it active, that gives this break at this speed with the seams' help.
///
/// Inverts, for the spin parameter S = r w / v, whichever lift law is the more generous:
/// C = S / (0.4 + 2.32 S) (R. Cross, Physics of Baseball and Softball, 2011, from memory), or
/// C = 1.5 S up to S = 0.1, then 0.09 + 0.6 S (Sawicki, Hubbard, Stronge, Am. J. Phys. 71 (2003) 1152).
fn least_spin_rpm(break_in: f64, speed_mph: f64) -> f64 {
    let lift = (break_in * COEFFICIENT_PER_INCH - MOST_SEAM).max(0.0) / LIFT_MARGIN;
    let by_rational_law = 0.4 * lift / (1.0 - 2.32 * lift);
    let by_bilinear_law = if lift <= 0.15 { lift / 1.5 } else { (lift - 0.09) / 0.6 };
    by_rational_law.min(by_bilinear_law) * speed_mph * MPH / BALL_RADIUS / RPM
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn more_break_and_more_speed_need_more_spin() {
        assert!(least_spin_rpm(5.0, 90.0) < 1e-9, "seams alone give five inches");
        assert!(least_spin_rpm(20.0, 90.0) < least_spin_rpm(25.0, 90.0));
        assert!(least_spin_rpm(20.0, 80.0) < least_spin_rpm(20.0, 90.0));
    }

    #[test]
    fn flights_worked_out_for_published_lift_laws_pass() {
        // Inches of break from spin alone, the larger of the two laws; none may be refused.
        for (speed_mph, spin_rpm, break_in) in [
            (95.0, 2400.0, 24.0),
            (90.0, 2000.0, 22.6),
            (85.0, 1800.0, 22.2),
            (80.0, 2500.0, 26.2),
            (75.0, 2500.0, 26.9),
        ] {
            assert!(least_spin_rpm(break_in, speed_mph) < spin_rpm, "{break_in} in at {speed_mph} mph");
        }
    }
}

//! Throws that say nothing about a pitch: doubles, lobs, a stuck unit.
//!
//! Every throw set aside here keeps its row number and reason. Only what no athlete does is
//! screened; a throw that is merely odd stays and may end as unsorted. Numbers outside any
//! possible range were already refused on reading.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};

use crate::athlete::session::{Place, Reason, Session, Throw};

/// A throw slower than this share of the athlete's hard throws is a lob: the slowest pitch thrown
/// in earnest, a slow curveball, has about three quarters (common practice, no published source).
const LOB_SHARE: f64 = 0.68;
/// What counts as a hard throw: this quantile of speed.
const HARD_QUANTILE: f64 = 0.95;
/// Equal movement readings in a row, at changing speed, that no arm repeats.
const STUCK_RUN: usize = 4;
/// Measured numbers from which two equal rows of one day cannot be chance. Between neighbouring
/// rows, fewer will do.
const TELLING_NUMBERS: usize = 5;

/// Why each throw is not used; nothing for those that are.
pub(super) fn screen(session: &Session) -> Vec<Option<Box<Reason>>> {
    let mut reasons = vec![None; session.throws.len()];
    mark_duplicates(&session.throws, &mut reasons);
    mark_stuck(&session.throws, &mut reasons);
    mark_lobs(&session.throws, &mut reasons);
    reasons
}

fn mark_duplicates(throws: &[Throw], reasons: &mut [Option<Box<Reason>>]) {
    let mut seen: HashMap<u64, (Place, usize)> = HashMap::with_capacity(throws.len());
    for (index, throw) in throws.iter().enumerate() {
        let (fingerprint, numbers) = fingerprint(throw);
        match seen.get(&fingerprint) {
            Some(&(of, at)) if numbers >= TELLING_NUMBERS || at + 1 == index => {
                reasons[index] = Some(Box::new(Reason::Duplicate { of }));
            }
            _ => {}
        }
        seen.entry(fingerprint).or_insert((throw.place, index)).1 = index;
    }
}

/// One number for everything measured of a throw, and how many measurements that was.
fn fingerprint(throw: &Throw) -> (u64, usize) {
    let Throw { shape, spin, release, plate, .. } = throw;
    let optional = [
        spin.rpm,
        spin.active_fraction,
        spin.clock.map(crate::base::geometry::Clock::hours),
        release.height_ft,
        release.side_ft,
        release.extension_ft,
        plate.side_in,
        plate.height_in,
    ];
    let mut hasher = DefaultHasher::new();
    throw.day.hash(&mut hasher);
    for number in [shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in] {
        number.to_bits().hash(&mut hasher);
    }
    optional.map(|number| number.map(f64::to_bits)).hash(&mut hasher);
    (hasher.finish(), 3 + optional.iter().flatten().count())
}

fn mark_stuck(throws: &[Throw], reasons: &mut [Option<Box<Reason>>]) {
    let movement = |throw: &Throw| (throw.day, throw.shape.vertical_break_in, throw.shape.glove_side_break_in);
    let mut start = 0;
    for run in throws.chunk_by(|a, b| movement(a) == movement(b)) {
        let speed_changes = run.iter().any(|throw| throw.shape.speed_mph.to_bits() != run[0].shape.speed_mph.to_bits());
        if run.len() >= STUCK_RUN && speed_changes {
            for reason in &mut reasons[start..start + run.len()] {
                *reason = Some(Box::new(Reason::Stuck { run: run.len() }));
            }
        }
        start += run.len();
    }
}

fn mark_lobs(throws: &[Throw], reasons: &mut [Option<Box<Reason>>]) {
    let floor_mph = LOB_SHARE * hard_speed(throws);
    for (throw, reason) in throws.iter().zip(reasons) {
        let speed_mph = throw.shape.speed_mph;
        if speed_mph < floor_mph && reason.is_none() {
            *reason = Some(Box::new(Reason::Lob { speed_mph, floor_mph }));
        }
    }
}

fn hard_speed(throws: &[Throw]) -> f64 {
    let mut speeds: Vec<f64> = throws.iter().map(|throw| throw.shape.speed_mph).collect();
    if speeds.is_empty() {
        return 0.0;
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of a length")]
    let place = ((speeds.len() - 1) as f64 * HARD_QUANTILE) as usize;
    *speeds.select_nth_unstable_by(place, f64::total_cmp).1
}

//! Days measured from another zero, found before anything is known about the pitches.
//!
//! Idea: the same arm on two days fills the same places in (speed, vertical, glove side). Two days
//! *agree* when half of the throws of one lie near throws of the other; shares of pitches may
//! differ, and a new pitch may appear. Then
//!
//! 1. days that agree, directly or through others, form a block; the block with most throws holds
//!    the zero;
//! 2. every other day is slid over that block, up, down and sideways, and the slide that covers
//!    most of its throws is its first guess, if it covers clearly more than none does.
//!
//! The guess is good to the width of a cell; [`mod@super::polish`] makes it exact. A shift smaller
//! than a pitch's own spread is left to that step too. It is a bad method when no two days share a
//! zero: then the largest day is believed, and the caller is told.

use std::collections::HashSet;

use super::mixture::Look;

/// Throws looked at per day.
const PER_DAY: usize = 160;
/// A day with fewer throws is taken as it is.
const FEWEST: usize = 12;
/// Days each day is compared with at most.
const MOST_NEIGHBOURS: usize = 48;
/// Cell size: mph, in, in. A throw counts as near within one cell each way.
const CELL: Look = [1.5, 2.5, 2.5];
/// Share of one day's throws near the other's from which the two agree.
const AGREE: f64 = 0.5;
/// Share a slide must win over no slide.
const CLEAR_WIN: f64 = 0.2;
/// Longest slide, in cells.
const REACH: i32 = 18;

type Cell = [i32; 3];

/// First guess of each day's zero (vertical, glove side), inches, as found in its own numbers.
pub(super) fn first_guess(days: &[Vec<Look>]) -> Vec<[f64; 2]> {
    let sampled: Vec<Vec<Look>> = days.iter().map(|day| evenly(day, PER_DAY)).collect();
    let filled: Vec<HashSet<Cell>> = sampled.iter().map(|day| neighbourhood(day)).collect();
    let block = blocks(&sampled, &filled);
    let trusted = largest_block(days, &block);
    let zero: HashSet<Cell> =
        (0..days.len()).filter(|&d| block[d] == trusted).flat_map(|d| filled[d].iter().copied()).collect();
    (0..days.len())
        .map(|d| if block[d] == trusted || days[d].len() < FEWEST { [0.0; 2] } else { best_slide(&sampled[d], &zero) })
        .collect()
}

/// At most `most` of the throws, one from each of as many equal stretches. Where in its stretch
/// follows the golden ratio, so that no rhythm in the file (every third throw a slider) is caught.
pub(super) fn evenly<T: Copy>(all: &[T], most: usize) -> Vec<T> {
    const GOLDEN: f64 = 0.618_033_988_749_895;
    if all.len() <= most {
        return all.to_vec();
    }
    let stretch = all.len() as f64 / most as f64;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "an index within the slice")]
    let index = |i: usize| ((i as f64 + (i as f64 * GOLDEN).fract()) * stretch) as usize;
    (0..most).map(|i| all[index(i).min(all.len() - 1)]).collect()
}

#[expect(clippy::cast_possible_truncation, reason = "readings are in range, so cells are small numbers")]
fn cell(look: &Look) -> Cell {
    std::array::from_fn(|d| (look[d] / CELL[d]).floor() as i32)
}

/// The cells of the throws and all cells next to them.
fn neighbourhood(day: &[Look]) -> HashSet<Cell> {
    let mut cells = HashSet::new();
    for [s, v, g] in day.iter().map(cell) {
        for i in 0..27 {
            cells.insert([s + i % 3 - 1, v + i / 3 % 3 - 1, g + i / 9 - 1]);
        }
    }
    cells
}

/// Share of `day`, slid by whole cells, that falls on filled cells.
fn covered(day: &[Look], filled: &HashSet<Cell>, slide: [i32; 2]) -> f64 {
    let near = |look: &&Look| {
        let [s, v, g] = cell(look);
        filled.contains(&[s, v - slide[0], g - slide[1]])
    };
    day.iter().filter(near).count() as f64 / day.len().max(1) as f64
}

/// The block each day belongs to, named by one of its days.
fn blocks(days: &[Vec<Look>], filled: &[HashSet<Cell>]) -> Vec<usize> {
    let mut block: Vec<usize> = (0..days.len()).collect();
    for a in 0..days.len() {
        for b in (a + 1..days.len()).take(MOST_NEIGHBOURS) {
            let agree = || covered(&days[a], &filled[b], [0, 0]).max(covered(&days[b], &filled[a], [0, 0])) >= AGREE;
            if block[a] != block[b] && agree() {
                let (kept, gone) = (block[a], block[b]);
                block.iter_mut().filter(|name| **name == gone).for_each(|name| *name = kept);
            }
        }
    }
    block
}

fn largest_block(days: &[Vec<Look>], block: &[usize]) -> usize {
    let throws = |name: usize| (0..days.len()).filter(|&d| block[d] == name).map(|d| days[d].len()).sum::<usize>();
    (0..days.len()).rev().max_by_key(|&name| throws(name)).unwrap_or(0)
}

/// The slide (in) that covers most of the day, preferring short ones; none without a clear win.
fn best_slide(day: &[Look], zero: &HashSet<Cell>) -> [f64; 2] {
    let score = |slide: [i32; 2]| covered(day, zero, slide) - 0.002 * f64::from(slide[0].abs() + slide[1].abs());
    let still = covered(day, zero, [0, 0]);
    let slides = (-REACH..=REACH).flat_map(|v| (-REACH..=REACH).map(move |g| [v, g]));
    let (best, found) = slides
        .map(|slide| (slide, score(slide)))
        .fold(([0, 0], still), |best, next| if next.1 > best.1 { next } else { best });
    if found < still + CLEAR_WIN { [0.0; 2] } else { [f64::from(best[0]) * CELL[1], f64::from(best[1]) * CELL[2]] }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(offset: f64) -> Vec<Look> {
        let pitch = |i: i32, mean: Look| {
            let wave = |step: f64| (f64::from(i) * step).sin();
            [mean[0] + wave(1.0), mean[1] + 2.0 * wave(2.3) + offset, mean[2] + 2.0 * wave(3.1)]
        };
        (0..60).map(|i| pitch(i, if i % 3 == 0 { [82.0, 2.0, 6.0] } else { [92.0, 16.0, -7.0] })).collect()
    }

    #[test]
    fn the_day_with_another_zero_is_found_and_the_others_are_left_alone() {
        let found = first_guess(&[day(0.0), day(-14.0), day(1.0)]);
        assert!(found[0].iter().chain(&found[2]).all(|a| *a == 0.0), "{found:?}");
        assert!((found[1][0] + 14.0).abs() < 3.0 && found[1][1].abs() < 3.0, "{found:?}");
    }

    #[test]
    fn a_day_of_one_new_pitch_is_not_taken_for_a_shifted_one() {
        let changeups: Vec<Look> = day(0.0).iter().map(|l| [84.0 + l[0] / 50.0, 9.0, -14.0]).collect();
        let found = first_guess(&[day(0.0), day(0.5), changeups])[2];
        assert!(found.iter().all(|a| *a == 0.0), "{found:?}");
    }
}

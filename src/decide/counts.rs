//! The state of the count as pitchers use it, how often each comes up, and which of the hitter's groups of counts lie
//! in it. What a pitcher throws in each is in [`super::custom`], what a hitter does in [`crate::hitter`].

use std::sync::LazyLock;

use crate::hitter::CountGroup;

/// Pitches thrown at each count, by balls and by strikes, on one day of the top league: 4,418 pitches of 15 games (2023
/// day in the tests of the R package abdwr3edata, companion of *Analyzing Baseball Data with R*, 3rd edition; CC0).
const PITCHES_AT: [[u32; 3]; 4] = [[1140, 576, 277], [448, 449, 425], [162, 235, 351], [52, 88, 215]];

/// The state of the count, as a pitcher's use of the pitches follows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Count {
    /// Nothing and nothing.
    First,
    /// More balls than strikes, fewer than two strikes.
    Behind,
    /// No more balls than strikes, fewer than two strikes, and not the first pitch.
    Even,
    /// Two strikes.
    TwoStrikes,
}

/// How often a state comes up, and the hitter's groups of counts in it, each with its share.
type Table = [(f64, Vec<(CountGroup, f64)>); 4];

static TABLE: LazyLock<Table> = LazyLock::new(|| Count::ALL.map(|count| (frequency(count), groups(count))));

impl Count {
    /// Every state, in the order they are always shown.
    pub const ALL: [Self; 4] = [Self::First, Self::Behind, Self::Even, Self::TwoStrikes];

    /// The state of a count.
    pub fn of(balls: u32, strikes: u32) -> Self {
        match (balls, strikes) {
            (_, 2..) => Self::TwoStrikes,
            (0, 0) => Self::First,
            _ if balls > strikes => Self::Behind,
            _ => Self::Even,
        }
    }

    /// Share of a league's pitches that are thrown in this state.
    pub fn weight(self) -> f64 {
        TABLE[self as usize].0
    }

    /// The hitter's groups of counts in this state, each with its share of the pitches thrown in it.
    pub fn groups(self) -> &'static [(CountGroup, f64)] {
        &TABLE[self as usize].1
    }
}

fn frequency(count: Count) -> f64 {
    pitches(|state, _| state == count) / pitches(|_, _| true)
}

fn groups(count: Count) -> Vec<(CountGroup, f64)> {
    let all = pitches(|state, _| state == count);
    let share = |group: CountGroup| (group, pitches(|state, other| (state, other) == (count, group)) / all);
    CountGroup::ALL.into_iter().map(share).filter(|(_, share)| *share > 0.0).collect()
}

/// Pitches thrown at the counts that are wanted.
fn pitches(wanted: impl Fn(Count, CountGroup) -> bool) -> f64 {
    let counts = (0..).zip(PITCHES_AT).flat_map(|(balls, row)| (0..).zip(row).map(move |(s, n)| ((balls, s), n)));
    counts
        .filter(|((balls, strikes), _)| wanted(Count::of(*balls, *strikes), CountGroup::of(*balls, *strikes)))
        .map(|(_, pitches)| f64::from(pitches))
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn states_and_their_groups_share_out_all_pitches() {
        let all: f64 = Count::ALL.into_iter().map(Count::weight).sum();
        assert!((all - 1.0).abs() < 1e-12);
        for count in Count::ALL {
            let shares: f64 = count.groups().iter().map(|(_, share)| share).sum();
            assert!((shares - 1.0).abs() < 1e-12, "{count:?}");
        }
    }

    #[test]
    fn behind_holds_the_hitters_best_counts_and_even_only_plain_ones() {
        let groups = |count: Count| count.groups().iter().map(|(group, _)| *group).collect::<Vec<_>>();
        assert_eq!(groups(Count::First), [CountGroup::First]);
        assert_eq!(groups(Count::Behind), [CountGroup::Other, CountGroup::HitterAhead, CountGroup::ThreeNothing]);
        assert_eq!(groups(Count::Even), [CountGroup::Other]);
        assert_eq!(groups(Count::TwoStrikes), [CountGroup::TwoStrikes]);
        assert_eq!(Count::of(3, 2), Count::TwoStrikes);
    }
}

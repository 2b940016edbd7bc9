//! How the sort compares with the labels the file came with.
//!
//! Labels are never used to sort; they are somebody's or some machine's opinion. Agreement is the
//! adjusted Rand index (L. Hubert and P. Arabie, J. Classification 2 (1985) 193): 1 for the same
//! division into groups, about 0 for chance. Where the two disagree, both may be wrong.

use crate::athlete::session::{Place, Session};

use super::{Assignment, CLEAR};

/// The sort against the file's labels.
#[derive(Debug, Clone, PartialEq)]
pub struct Agreement {
    /// Adjusted Rand index over the throws that have a label and a group.
    pub adjusted_rand: f64,
    /// Throws that have both.
    pub throws: usize,
    /// The labels, as written: rows of the table.
    pub labels: Vec<String>,
    /// Throws of each label (row) in each group (column).
    pub table: Vec<Vec<usize>>,
    /// Throws whose label is not their group's usual one.
    pub disagreements: Vec<Disagreement>,
}

/// A throw whose label is not its group's usual one.
#[derive(Debug, Clone, PartialEq)]
pub struct Disagreement {
    /// Where it was written.
    pub place: Place,
    /// Index into [`Agreement::labels`].
    pub label: usize,
    /// The group it was sorted into.
    pub group: usize,
    /// Chance of that group.
    pub chance: f64,
    /// Whether the sort is sure, so that the label is probably wrong.
    pub looks_mislabelled: bool,
}

/// Compares; nothing when no throw has both a label and a group.
pub(super) fn compare(session: &Session, assignments: &[Assignment], groups: usize) -> Option<Agreement> {
    let mut table = vec![vec![0; groups]; session.labels.len()];
    let mut both = Vec::new();
    for (throw, assignment) in session.throws.iter().zip(assignments) {
        if let (Some(label), &Assignment::Group { index, chance, .. }) = (throw.label, assignment) {
            table[usize::from(label)][index] += 1;
            both.push((throw.place, usize::from(label), index, chance));
        }
    }
    if both.is_empty() {
        return None;
    }
    let usual: Vec<Option<usize>> = (0..groups).map(|group| usual_label(&table, group)).collect();
    let disagreements = both.iter().filter(|(_, label, group, _)| usual[*group] != Some(*label)).map(
        |&(place, label, group, chance)| Disagreement {
            place,
            label,
            group,
            chance,
            looks_mislabelled: chance >= CLEAR,
        },
    );
    Some(Agreement {
        adjusted_rand: adjusted_rand(&table),
        throws: both.len(),
        disagreements: disagreements.collect(),
        labels: session.labels.clone(),
        table,
    })
}

/// The commonest label of a group.
pub(super) fn usual_label(table: &[Vec<usize>], group: usize) -> Option<usize> {
    (0..table.len()).rev().max_by_key(|&label| table[label][group]).filter(|&label| table[label][group] > 0)
}

/// The adjusted Rand index of a contingency table.
pub fn adjusted_rand(table: &[Vec<usize>]) -> f64 {
    let pairs = |n: usize| n as f64 * (n as f64 - 1.0) / 2.0;
    let columns = table.first().map_or(0, Vec::len);
    let together: f64 = table.iter().flatten().map(|&n| pairs(n)).sum();
    let by_row: f64 = table.iter().map(|row| pairs(row.iter().sum())).sum();
    let by_column: f64 = (0..columns).map(|c| pairs(table.iter().map(|row| row[c]).sum())).sum();
    let all = pairs(table.iter().flatten().sum());
    let chance = by_row * by_column / all.max(1.0);
    let most = f64::midpoint(by_row, by_column);
    if (most - chance).abs() < f64::EPSILON { 1.0 } else { (together - chance) / (most - chance) }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reference: `sklearn.metrics.adjusted_rand_score([0,0,1,1], [0,0,1,2])` = 0.571428...
    #[test]
    fn the_adjusted_rand_index_has_its_reference_values() {
        assert!((adjusted_rand(&[vec![2, 0, 0], vec![0, 1, 1]]) - 0.571_428_571).abs() < 1e-9);
        assert!((adjusted_rand(&[vec![5, 0], vec![0, 7]]) - 1.0).abs() < 1e-12);
    }
}

//! A bounded search without derivatives: a coarse grid, then a shrinking compass.
//!
//! The compass tries a step each way along each axis, moves to the best improvement and halves the
//! steps when there is none. It is deterministic, needs no slopes and never leaves the box.
//! Reference: T. G. Kolda, R. M. Lewis and V. Torczon, SIAM Review 45 (2003) 385, from memory.

/// A box in three dimensions.
pub type Bounds3 = [(f64, f64); 3];

/// The grid of a box: `counts` points along each axis, ends included.
pub fn grid(bounds: &Bounds3, counts: [usize; 3]) -> Vec<[f64; 3]> {
    let along = |axis: usize| {
        let (low, high) = bounds[axis];
        let steps = (counts[axis] - 1).max(1) as f64;
        (0..counts[axis]).map(move |i| low + (high - low) * i as f64 / steps)
    };
    along(0).flat_map(|a| along(1).flat_map(move |b| along(2).map(move |c| [a, b, c]))).collect()
}

/// The best point the compass finds from `start`; higher scores are better. `score` gives nothing for
/// points that are not allowed, and so does the compass for a start that is not.
pub fn compass(
    start: [f64; 3],
    bounds: &Bounds3,
    first_steps: [f64; 3],
    halvings: usize,
    score: impl Fn([f64; 3]) -> Option<f64>,
) -> Option<[f64; 3]> {
    let (mut best, mut best_score) = (start, score(start)?);
    let mut steps = first_steps;
    let mut left = halvings;
    while left > 0 {
        let better = neighbours(best, bounds, steps)
            .into_iter()
            .filter_map(|point| score(point).map(|score| (point, score)))
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .filter(|(_, score)| *score > best_score);
        if let Some((point, score)) = better {
            (best, best_score) = (point, score);
        } else {
            steps = steps.map(|step| step / 2.0);
            left -= 1;
        }
    }
    Some(best)
}

fn neighbours(point: [f64; 3], bounds: &Bounds3, steps: [f64; 3]) -> Vec<[f64; 3]> {
    let mut all = Vec::with_capacity(6);
    for axis in 0..3 {
        for sign in [-1.0, 1.0] {
            let mut moved = point;
            moved[axis] = (point[axis] + sign * steps[axis]).clamp(bounds[axis].0, bounds[axis].1);
            all.push(moved);
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_compass_finds_the_top_of_a_hill_and_stays_in_its_box() {
        let bounds = [(0.0, 4.0), (0.0, 4.0), (0.0, 4.0)];
        let hill = |p: [f64; 3]| Some(-(p[0] - 1.3).powi(2) - (p[1] - 2.1).powi(2) - (p[2] - 9.0).powi(2));
        let best = compass([2.0; 3], &bounds, [1.0; 3], 8, hill).expect("the start is allowed");
        assert!((best[0] - 1.3).abs() < 0.02 && (best[1] - 2.1).abs() < 0.02 && best[2] > 3.99, "{best:?}");
    }

    #[test]
    fn a_grid_holds_its_corners() {
        let points = grid(&[(0.0, 1.0), (2.0, 4.0), (5.0, 6.0)], [2, 3, 2]);
        assert_eq!(points.len(), 12);
        assert!(points.contains(&[0.0, 2.0, 5.0]) && points.contains(&[1.0, 4.0, 6.0]));
    }
}

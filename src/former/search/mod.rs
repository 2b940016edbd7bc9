//! The target shape: which shape of a family an athlete should chase, and what it would be worth.
//!
//! Every reachable shape on a coarse grid is judged by what the best mix with it saves, less a small
//! price for effort; the best is polished; then the window around it that keeps 90 % of the gain
//! is measured along each axis, and what it is worth in every draw of the unknown.

pub mod optimizer;
pub mod reach;
mod worth;

pub use worth::{SideWorth, TRIFLE, Worth};

use rayon::prelude::*;

use crate::athlete::profile::{Aim, PerSide, Spread};
use crate::ball::{Family, Shape};
use crate::base::geometry::Side;
use crate::former::evaluate::{NewPitch, Stage, Today, World};
use crate::former::mix::Effort;

use optimizer::{Bounds3, compass, grid};
use reach::{Reach, Recipe, effort};

/// Whether a new pitch is judged with the command it will have at first or once mastered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// As thrown at first: a quarter more scatter of place and shape.
    Now,
    /// As thrown once mastered: like his other pitches.
    Mastered,
}

/// How much more a new pitch scatters at first. Start value, no published source.
const NEW_SCATTER: f64 = 1.25;

/// A family with the best shape found for it.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// Which family.
    pub family: Family,
    /// How to throw the shape.
    pub recipe: Recipe,
    /// Whether the shape lies at an end of what goes by the family's name: speed, vertical, glove-side break.
    pub at_edge: [bool; 3],
    /// How far from what he throws now; see [`reach::effort`].
    pub effort: f64,
    /// The command that its worth counts.
    pub command: Command,
    /// What it is worth.
    pub worth: Worth,
    /// The window that keeps 90 % of the gain.
    pub window: Window,
    /// Shapes that trade gain against effort, cheapest first.
    pub frontier: Vec<Trade>,
}

/// A shape on the gain-effort frontier.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trade {
    /// The shape.
    pub shape: Shape,
    /// Runs saved per 100 pitches, both sides weighted.
    pub gain: f64,
    /// Effort.
    pub effort: f64,
}

/// Ranges around the target within which 90 % of the gain is kept, one axis at a time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// mph.
    pub speed_mph: (f64, f64),
    /// in.
    pub vertical_break_in: (f64, f64),
    /// in.
    pub glove_side_break_in: (f64, f64),
}

/// Why a family has no candidate.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OutOfReach;

/// Runs per 100 pitches that a unit of effort must bring to be worth it: a tie-break between
/// shapes of nearly equal gain. This project's choice.
const EFFORT_PRICE: f64 = 0.02;
/// Points of the search grid along speed, vertical and glove-side break; and of the rough one.
const FINE: [usize; 3] = [3, 5, 5];
const COARSE: [usize; 3] = [2, 3, 3];
/// Share of the gain that the window keeps.
const WINDOW_SHARE: f64 = 0.9;

/// The best reachable shape of `family`, its window and its worth with the command of `command` over
/// `worlds`. The shape is chosen for the pitch once mastered: an off-season is spent on what it will be.
///
/// # Errors
/// [`OutOfReach`] when no shape that goes by the family's name can be made with the spin this
/// athlete has, from his slot, with the seams' help bounded as his profile says.
pub fn best_of_family(
    stage: &Stage,
    today: &Today,
    family: Family,
    command: Command,
    worlds: &[World],
) -> Result<Candidate, OutOfReach> {
    Ok(find(stage, today, family)?.judged(stage, command, worlds))
}

/// The best reachable shape of a family, before its window and its worth are looked into.
#[derive(Debug)]
pub struct Found<'h, 'p> {
    hunt: Hunt<'h, 'p>,
    tried: Vec<([f64; 3], f64)>,
    best: [f64; 3],
    footing: Footing,
    recipe: Recipe,
}

/// Looks for the best reachable shape of `family`.
///
/// # Errors
/// [`OutOfReach`] as for [`best_of_family`].
pub fn find<'h, 'p>(stage: &Stage<'p>, today: &'h Today, family: Family) -> Result<Found<'h, 'p>, OutOfReach> {
    let hunt = Hunt::new(stage, today, family);
    let tried = hunt.grid(FINE);
    let (start, _) = tried.iter().copied().max_by(|a, b| a.1.total_cmp(&b.1)).ok_or(OutOfReach)?;
    let footing = hunt.footing(start).ok_or(OutOfReach)?;
    let best =
        compass(start, &hunt.bounds, [2.0, 2.5, 2.5], 3, |point| hunt.score(point, &footing)).ok_or(OutOfReach)?;
    let footing = hunt.footing(best).ok_or(OutOfReach)?;
    let recipe = hunt.recipe(best).ok_or(OutOfReach)?;
    Ok(Found { hunt, tried, best, footing, recipe })
}

impl Found<'_, '_> {
    /// Runs saved per 100 pitches with the command of `command`, on the best guess alone.
    pub fn gain(&self, stage: &Stage, command: Command) -> f64 {
        let pitch = self.recipe.pitch(stage, self.hunt.reach.family, new_spread(stage, command));
        Worth::of(stage, self.hunt.today, &pitch, &[]).overall.value
    }

    /// The shape with its window, its effort and its worth over `worlds`.
    pub fn judged(&self, stage: &Stage, command: Command, worlds: &[World]) -> Candidate {
        let (family, recipe) = (self.hunt.reach.family, self.recipe);
        let pitch = recipe.pitch(stage, family, new_spread(stage, command));
        Candidate {
            family,
            recipe,
            at_edge: self.hunt.at_edge(self.best),
            effort: effort(stage, family, &recipe),
            command,
            worth: Worth::of(stage, self.hunt.today, &pitch, worlds),
            window: self.hunt.window(self.best, &self.footing),
            frontier: self.hunt.frontier(&self.tried),
        }
    }
}

/// About what the best shape of `family` would score, at a third of the price of [`best_of_family`]
/// and without its doubt: enough to tell which families deserve the full search. Nothing when no
/// point of a coarse grid is in reach.
pub fn promise(stage: &Stage, today: &Today, family: Family) -> Option<f64> {
    Hunt::new(stage, today, family).grid(COARSE).into_iter().map(|(_, score)| score).reduce(f64::max)
}

impl Candidate {
    /// The pitch itself, with the command its worth counts, as an evaluation on `stage` sees it.
    pub fn pitch(&self, stage: &Stage) -> NewPitch {
        self.recipe.pitch(stage, self.family, new_spread(stage, self.command))
    }

    /// What the same pitch is worth with the command of its first months.
    pub fn worth_at_first(&self, stage: &Stage, today: &Today, worlds: &[World]) -> Worth {
        Worth::of(stage, today, &self.recipe.pitch(stage, self.family, new_spread(stage, Command::Now)), worlds)
    }
}

/// What shapes near one another share: where the new pitch is aimed and about the best mix with it.
#[derive(Debug)]
struct Footing(PerSide<(Aim, Vec<f64>)>);

/// The hunt for one family's best shape. Points are (speed, vertical, glove side).
#[derive(Debug)]
struct Hunt<'h, 'p> {
    stage: Stage<'p>,
    today: &'h Today,
    reach: Reach,
    bounds: Bounds3,
    spread: Spread,
}

impl<'h, 'p> Hunt<'h, 'p> {
    fn new(stage: &Stage<'p>, today: &'h Today, family: Family) -> Self {
        let reach = Reach::of(stage, family);
        let whole = reach.whole();
        let bounds =
            stage.pitches.iter().find(|pitch| pitch.family == family).map_or(whole, |own| beside(own.shape, whole));
        Self { stage: stage.rough(), today, reach, bounds, spread: new_spread(stage, Command::Mastered) }
    }

    fn recipe(&self, point: [f64; 3]) -> Option<Recipe> {
        self.reach.recipe(&self.stage, shape(point))
    }

    /// Every reachable grid point with its score, on the footing of the middle one.
    fn grid(&self, cells: [usize; 3]) -> Vec<([f64; 3], f64)> {
        let points: Vec<[f64; 3]> =
            grid(&self.bounds, cells).into_iter().filter(|&point| self.recipe(point).is_some()).collect();
        let Some(footing) = points.get(points.len() / 2).and_then(|&middle| self.footing(middle)) else {
            return Vec::new();
        };
        points.par_iter().filter_map(|&point| self.score(point, &footing).map(|score| (point, score))).collect()
    }

    fn footing(&self, point: [f64; 3]) -> Option<Footing> {
        let thrown = self.recipe(point)?.pitch(&self.stage, self.reach.family, self.spread).thrown;
        Some(Footing(PerSide::from_fn(|side| {
            let plan = self.today.rough.on(side);
            let aim = plan.aim_for(&self.stage, &thrown);
            let start = plan.with_likely_share(&self.stage);
            (aim, plan.choose_from(&self.stage, &thrown, aim, &[start], Effort::FIRST_LOOK).mix.shares)
        })))
    }

    /// Runs saved per 100 pitches, both sides weighted.
    fn gain(&self, recipe: &Recipe, footing: &Footing) -> f64 {
        let thrown = recipe.pitch(&self.stage, self.reach.family, self.spread).thrown;
        let on_side = |side| {
            let plan = self.today.rough.on(side);
            let (aim, shares) = footing.0.on(side);
            let with = plan.choose_from(&self.stage, &thrown, *aim, std::slice::from_ref(shares), Effort::RANKING);
            self.stage.side_share(side) * (plan.mix.runs - with.mix.runs).max(0.0) * 100.0
        };
        Side::BOTH.into_iter().map(on_side).sum()
    }

    fn score(&self, point: [f64; 3], footing: &Footing) -> Option<f64> {
        let recipe = self.recipe(point)?;
        Some(self.gain(&recipe, footing) - EFFORT_PRICE * effort(&self.stage, self.reach.family, &recipe))
    }

    fn at_edge(&self, point: [f64; 3]) -> [bool; 3] {
        const TOUCHING: f64 = 1e-6;
        let whole = self.reach.whole();
        let touches = |axis: usize, end: f64| (point[axis] - end).abs() < TOUCHING;
        std::array::from_fn(|axis| touches(axis, whole[axis].0) || touches(axis, whole[axis].1))
    }

    /// From the best point outward along each axis while 90 % of the gain is kept.
    fn window(&self, best: [f64; 3], footing: &Footing) -> Window {
        let full = self.recipe(best).map_or(0.0, |recipe| self.gain(&recipe, footing));
        let kept = |point: [f64; 3]| {
            self.recipe(point).is_some_and(|recipe| self.gain(&recipe, footing) >= WINDOW_SHARE * full)
        };
        let reach = |axis: usize, step: f64| {
            const MOST_STEPS: usize = 6;
            let moved = |steps: usize| {
                let mut point = best;
                point[axis] += step * steps as f64;
                point
            };
            let steps = (1..=MOST_STEPS).take_while(|&steps| kept(moved(steps))).last().unwrap_or(0);
            moved(steps)[axis]
        };
        let both = |axis: usize, step: f64| (reach(axis, -step), reach(axis, step));
        Window { speed_mph: both(0, 1.0), vertical_break_in: both(1, 1.5), glove_side_break_in: both(2, 1.5) }
    }

    /// Grid points that no cheaper point beats.
    fn frontier(&self, tried: &[([f64; 3], f64)]) -> Vec<Trade> {
        let mut trades: Vec<Trade> = tried
            .iter()
            .filter_map(|&(point, score)| {
                let effort = effort(&self.stage, self.reach.family, &self.recipe(point)?);
                Some(Trade { shape: shape(point), gain: score + EFFORT_PRICE * effort, effort })
            })
            .collect();
        trades.sort_by(|a, b| a.effort.total_cmp(&b.effort));
        let mut best = f64::NEG_INFINITY;
        trades.retain(|trade| {
            let better = trade.gain > best + 0.01;
            if better {
                best = trade.gain;
            }
            better
        });
        trades
    }
}

/// A second pitch of a family he throws is looked for beside the first: the same hand makes it. What
/// lies farther off is another pitch by another name.
fn beside(own: Shape, whole: Bounds3) -> Bounds3 {
    const NEAR: [f64; 3] = [2.0, 4.0, 4.0];
    let centre = [own.speed_mph, own.vertical_break_in, own.glove_side_break_in];
    std::array::from_fn(|axis| {
        let (low, high) = whole[axis];
        ((centre[axis] - NEAR[axis]).clamp(low, high), (centre[axis] + NEAR[axis]).clamp(low, high))
    })
}

fn shape(point: [f64; 3]) -> Shape {
    Shape { speed_mph: point[0], vertical_break_in: point[1], glove_side_break_in: point[2] }
}

/// Scatter of a new pitch: like his others, and a quarter more at first.
fn new_spread(stage: &Stage, command: Command) -> Spread {
    let factor = if command == Command::Now { NEW_SCATTER } else { 1.0 };
    Spread::to_expect(stage.pitches.iter().map(|pitch| (pitch.family, &pitch.spread))).times(factor)
}

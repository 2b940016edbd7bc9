//! Which shape of a family an athlete should chase: natural for the arm, pulled by worth.
//!
//! A shape's score is the runs it saves per 100 pitches less a price for how far it lies from what such arms throw
//! naturally: PRICE x d² / 2, where d is the distance in standard deviations. So a target has a reason to stay where
//! arms can go, and needs no box around it. The search starts from the natural shape and moves by halves of a standard
//! deviation along each axis while that helps; the target is given to the mile and the inch, as finely as a coach can aim.

use crate::athlete::natural::NaturalShape;
use crate::ball::{Family, Recipe, Shape};
use crate::base::Movement;

use super::model::Model;
use super::new_pitch::{Command, NewPitch};
use super::recipe::recipe_of;
use super::share_choice::{Wanted, chosen};
use super::shares::Twin;
use super::worth::{Change, Source};

/// Runs per 100 pitches that a shape must save to be worth one standard deviation off what such arms throw is half of
/// this. Set so that targets found for real arms, whose own pitch was hidden, lie about as near to what they really
/// throw as a constant shape does; see DEVELOPERS.md.
pub const PRICE: f64 = 0.15;

/// What is done with a family.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Work {
    /// A pitch is added.
    Learn,
    /// An owned pitch changes its shape.
    Reshape(usize),
}

/// A shape to chase.
#[derive(Debug, Clone)]
pub struct Target {
    /// What was asked for.
    pub family: Family,
    /// What is done.
    pub work: Work,
    /// What such arms throw.
    pub natural: NaturalShape,
    /// The shape.
    pub shape: Shape,
    /// How it is thrown.
    pub recipe: Option<Recipe>,
    /// The arsenal with it.
    pub change: Change,
}

/// The shape of `family` to chase; nothing when no arm is known to throw it.
pub fn target(model: &Model, family: Family, work: Work) -> Option<Target> {
    let natural = *model.natural.family(family)?;
    let search = Search { model, natural: &natural, family, work };
    let start = search.start();
    let wanted = search.wanted_in_search(start);
    let best = search.best_from(start, &wanted);
    let shape = best.rounded();
    let change = search.change(shape, &search.wanted(shape));
    Some(Target { family, work, natural, shape, recipe: recipe_of(model, family, shape), change })
}

/// A given shape of `family` instead of the best one; nothing when no arm is known to throw the family.
pub fn given(model: &Model, family: Family, work: Work, shape: Shape) -> Option<Target> {
    let natural = *model.natural.family(family)?;
    let search = Search { model, natural: &natural, family, work };
    let change = search.change(shape, &search.wanted(shape));
    Some(Target { family, work, natural, shape, recipe: recipe_of(model, family, shape), change })
}

impl Target {
    /// The same change with the new pitch thrown with the command of `command`.
    pub fn change_with(&self, command: Command) -> Change {
        let factor = command.scatter();
        let pitches = self.change.pitches.iter().map(|source| match source {
            Source::New(new) => Source::New(Box::new(new.scattered(factor))),
            Source::Owned(_) | Source::Changed(..) => source.clone(),
        });
        Change { pitches: pitches.collect(), ..self.change.clone() }
    }

    /// The owned pitch that a new one is most like.
    pub fn twin(&self) -> Option<Twin> {
        self.new_pitch().map(|new| new.twin)
    }

    /// The pitch to be learnt, when one is.
    pub fn new_pitch(&self) -> Option<&NewPitch> {
        self.change.pitches.iter().find_map(|source| match source {
            Source::New(new) => Some(&**new),
            Source::Owned(_) | Source::Changed(..) => None,
        })
    }

    /// How much of the movement is expected from the seams, in.
    pub fn seams_in(&self) -> f64 {
        self.new_pitch().map_or(0.0, |new| (self.shape.movement() - new.spin_movement).length())
    }

    /// How far from what such arms throw, in standard deviations.
    pub fn effort(&self) -> f64 {
        self.natural.effort(self.shape)
    }
}

struct Search<'a, 'p> {
    model: &'a Model<'p>,
    natural: &'a NaturalShape,
    family: Family,
    work: Work,
}

impl Search<'_, '_> {
    /// Where the search starts: what such arms throw, or what the athlete throws already.
    fn start(&self) -> Shape {
        match self.work {
            Work::Learn => self.natural.shape(),
            Work::Reshape(pitch) => self.model.arsenal[pitch].offering.shape,
        }
    }

    /// The arsenal with `shape`.
    fn change(&self, shape: Shape, wanted: &Wanted) -> Change {
        match self.work {
            Work::Learn => {
                let new = NewPitch::of(self.model, self.family, shape, Command::Mastered);
                let shares = wanted.shares(self.model, new.twin);
                Change::adding(self.model, new, shares)
            }
            Work::Reshape(pitch) => Change::reshaping(self.model, pitch, shape),
        }
    }

    /// How often a new pitch of `shape` would be thrown; of an owned one, as today.
    fn wanted(&self, shape: Shape) -> Wanted {
        match self.work {
            Work::Learn => chosen(self.model, &NewPitch::of(self.model, self.family, shape, Command::Mastered)),
            Work::Reshape(_) => Wanted::NONE,
        }
    }

    /// How often it is thrown while shapes are compared.
    fn wanted_in_search(&self, shape: Shape) -> Wanted {
        match self.work {
            Work::Learn => {
                let new = NewPitch::of(self.model, self.family, shape, Command::Mastered);
                chosen(self.model, &new).or_least(self.model, &new)
            }
            Work::Reshape(_) => Wanted::NONE,
        }
    }

    /// Runs saved less the price.
    fn score(&self, shape: Shape, wanted: &Wanted) -> f64 {
        let gain = self.change(shape, wanted).best_guess(self.model);
        gain - PRICE * self.natural.effort(shape).powi(2) / 2.0
    }

    /// The best shape found from `start`, one axis at a time.
    fn best_from(&self, start: Shape, wanted: &Wanted) -> Shape {
        let mut best = (start, self.score(start, wanted));
        for step in STEPS_SD {
            let mut moved = true;
            while moved {
                moved = false;
                for shape in self.beside(best.0, step) {
                    let score = self.score(shape, wanted);
                    if score > best.1 {
                        (best, moved) = ((shape, score), true);
                    }
                }
            }
        }
        best.0
    }

    /// The six shapes a step away, in standard deviations of such arms.
    fn beside(&self, shape: Shape, step: f64) -> [Shape; 6] {
        let covariance = self.natural.shape_covariance();
        let sd = |axis: usize| covariance[axis][axis].sqrt();
        let along = |speed: f64, glove_side: f64, up: f64| {
            let movement = Movement { glove_side_in: glove_side * sd(2), up_in: up * sd(1) };
            shape.moved(speed * sd(0), movement)
        };
        [
            along(step, 0.0, 0.0),
            along(-step, 0.0, 0.0),
            along(0.0, step, 0.0),
            along(0.0, -step, 0.0),
            along(0.0, 0.0, step),
            along(0.0, 0.0, -step),
        ]
    }
}

/// Lengths of the steps of a search, in standard deviations of such arms.
const STEPS_SD: [f64; 2] = [0.5, 0.2];

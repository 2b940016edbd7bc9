//! What outcomes were worth on a day, by count group: means of the runs that stand in the file.

use arsenalfit::hitter::CountGroup;

use crate::day::{Day, Outcome, Throw};
use crate::losses::Said;

/// Mean change of the runs to be expected, for the hitting side.
#[derive(Debug, Clone, PartialEq)]
pub struct Values {
    groups: [Group; 5],
    /// A ball hit solidly, and otherwise, when it stays fair.
    fair: [f64; 2],
    /// Share of balls hit solidly, and otherwise, that go foul.
    foul_share: [f64; 2],
}

/// Balls, called strikes, misses and fouls in one group of counts.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Group {
    ball: f64,
    called: f64,
    miss: f64,
    foul: f64,
}

impl Values {
    /// Means over the throws of a day that tell their runs.
    pub fn of_day(day: &Day) -> Self {
        let mean = |keep: &dyn Fn(&Throw) -> bool| {
            let runs: Vec<f64> = day.throws.iter().filter(|throw| keep(throw)).filter_map(|throw| throw.runs).collect();
            if runs.is_empty() { 0.0 } else { runs.iter().sum::<f64>() / runs.len() as f64 }
        };
        let groups = CountGroup::ALL.map(|group| {
            let of = |outcome: Outcome| mean(&move |throw| throw.outcome == outcome && group_of(throw) == Some(group));
            Group {
                ball: of(Outcome::Ball),
                called: of(Outcome::CalledStrike),
                miss: of(Outcome::Miss),
                foul: of(Outcome::Foul),
            }
        });
        let hit = |solid: bool| move |throw: &Throw| throw.outcome.is_contact() && (throw.solid == Some(true)) == solid;
        let fair = |solid: bool| mean(&move |throw| throw.outcome == Outcome::InPlay && hit(solid)(throw));
        let foul_share = |solid: bool| {
            let hit: Vec<&Throw> = day.throws.iter().filter(|throw| hit(solid)(throw)).collect();
            hit.iter().filter(|throw| throw.outcome == Outcome::Foul).count() as f64 / (hit.len() as f64).max(1.0)
        };
        Self { groups, fair: [fair(true), fair(false)], foul_share: [foul_share(true), foul_share(false)] }
    }

    /// What the outcome of this throw is usually worth: the luck of where a hit ball falls is left out. Nothing
    /// where the throw says nothing of eyes and bat.
    pub fn usual(&self, throw: &Throw) -> Option<f64> {
        let group = self.groups[place(group_of(throw)?)];
        Some(match throw.outcome {
            Outcome::Ball => group.ball,
            Outcome::CalledStrike => group.called,
            Outcome::Miss => group.miss,
            Outcome::Foul => group.foul,
            Outcome::InPlay => self.fair[usize::from(throw.solid != Some(true))],
            Outcome::Other => return None,
        })
    }

    /// Runs to be expected of a throw with these chances.
    pub fn expected(&self, said: Said, group: CountGroup) -> f64 {
        let Group { ball, called, miss, foul } = self.groups[place(group)];
        let hit = |way: usize| self.foul_share[way] * foul + (1.0 - self.foul_share[way]) * self.fair[way];
        let taken = said.called * called + (1.0 - said.called) * ball;
        let contact = said.solid * hit(0) + (1.0 - said.solid) * hit(1);
        (1.0 - said.swing) * taken + said.swing * ((1.0 - said.contact) * miss + said.contact * contact)
    }
}

fn place(group: CountGroup) -> usize {
    CountGroup::ALL.iter().position(|known| *known == group).unwrap_or(0)
}

fn group_of(throw: &Throw) -> Option<CountGroup> {
    throw.count.map(|(balls, strikes)| CountGroup::of(balls, strikes))
}

//! Constants by pitch and side: what a chart of averages would say of a throw. The baseline of every
//! score, and the answer where a throw was not measured.

use std::collections::HashMap;

use arsenalfit::base::geometry::Side;

use crate::day::{Day, Throw};
use crate::losses::Said;
use crate::meetings::Seen;

/// The mean over all throws counts as so many throws of a pitch to a side.
const LEAGUE_ANSWERS: f64 = 2.0;

/// Shares seen, by label and side.
#[derive(Debug, Clone)]
pub struct Constants {
    by_cell: HashMap<(String, Option<Side>), Said>,
    all: Said,
}

/// What happened of what could have, in the order of swing, contact, solid, called.
#[derive(Debug, Clone, Copy, Default)]
struct Tally {
    happened: [f64; 4],
    answers: [f64; 4],
}

impl Constants {
    /// Counted on the throws of a day that `keep` says.
    pub fn of(day: &Day, keep: impl Fn(&Throw) -> bool) -> Self {
        let mut cells: HashMap<(String, Option<Side>), Tally> = HashMap::new();
        let mut all = Tally::default();
        for throw in day.throws.iter().filter(|throw| keep(throw)) {
            let seen = Seen::of(throw);
            all.add(seen);
            // A throw of which the side is not known is answered with both sides together.
            for side in [throw.side, None] {
                cells.entry((throw.label.clone(), side)).or_default().add(seen);
            }
        }
        let all = all.said(Said { swing: 0.5, contact: 0.5, solid: 0.5, called: 0.5 });
        Self { by_cell: cells.into_iter().map(|(cell, tally)| (cell, tally.said(all))).collect(), all }
    }

    /// The constants of a throw.
    pub fn said(&self, throw: &Throw) -> Said {
        self.by_cell.get(&(throw.label.clone(), throw.side)).copied().unwrap_or(self.all)
    }
}

impl Tally {
    fn add(&mut self, seen: Seen) {
        let contact = seen.miss.map(|miss| !miss);
        for (place, answer) in [seen.swing, contact, seen.solid_of_all(), seen.called].into_iter().enumerate() {
            if let Some(answer) = answer {
                self.happened[place] += f64::from(u8::from(answer));
                self.answers[place] += 1.0;
            }
        }
    }

    fn said(&self, league: Said) -> Said {
        let share = |place: usize, league: f64| {
            (self.happened[place] + LEAGUE_ANSWERS * league) / (self.answers[place] + LEAGUE_ANSWERS)
        };
        Said {
            swing: share(0, league.swing),
            contact: share(1, league.contact),
            solid: share(2, league.solid),
            called: share(3, league.called),
        }
    }
}

//! Log losses (nats, mean over the throws that answer; lower is better) of the four questions put to
//! a hitter model.

use crate::markdown;
use crate::meetings::Seen;

/// The four chances of one throw.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Said {
    /// That he swings.
    pub swing: f64,
    /// That he makes contact, given a swing.
    pub contact: f64,
    /// That he hits it solidly, given contact.
    pub solid: f64,
    /// That a strike is called, given a take.
    pub called: f64,
}

/// The questions, in the order they are shown.
pub const QUESTIONS: [&str; 4] = ["swing", "miss given swing", "called given take", "solid given contact"];

/// No chance is believed closer to nothing or certainty than this.
pub const LEAST_CHANCE: f64 = 1e-4;

/// Sums of losses by question.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Losses {
    sums: [f64; 4],
    throws: [f64; 4],
}

impl Losses {
    /// Over throws.
    pub fn of(throws: impl IntoIterator<Item = (Said, Seen)>) -> Self {
        let mut losses = Self::default();
        for (said, seen) in throws {
            losses.add(said, seen);
        }
        losses
    }

    /// One more throw.
    pub fn add(&mut self, said: Said, seen: Seen) {
        let answers = [seen.swing, seen.miss, seen.called, seen.solid_of_all()];
        for (question, (chance, answer)) in said.by_question().into_iter().zip(answers).enumerate() {
            if let Some(answer) = answer {
                self.sums[question] += loss(chance, answer);
                self.throws[question] += 1.0;
            }
        }
    }

    /// Mean losses in the order of [`QUESTIONS`]; nothing where no throw answers.
    pub fn means(&self) -> [Option<f64>; 4] {
        std::array::from_fn(|question| {
            (self.throws[question] > 0.0).then(|| self.sums[question] / self.throws[question])
        })
    }
}

impl Said {
    /// Chances in the order of [`QUESTIONS`].
    pub fn by_question(self) -> [f64; 4] {
        [self.swing, 1.0 - self.contact, self.called, self.solid]
    }
}

/// Minus the logarithm of the chance given to what happened.
pub fn loss(chance: f64, happened: bool) -> f64 {
    let chance = chance.clamp(LEAST_CHANCE, 1.0 - LEAST_CHANCE);
    -if happened { chance } else { 1.0 - chance }.ln()
}

/// The losses of several sets of chances.
pub fn table(rows: &[(&str, Losses)]) -> String {
    let header: Vec<&str> = std::iter::once("mean log loss, nats").chain(QUESTIONS).collect();
    let row = |(name, losses): &(&str, Losses)| {
        let means = losses.means().map(|mean| mean.map_or_else(|| "-".to_owned(), |mean| format!("{mean:.4}")));
        std::iter::once((*name).to_owned()).chain(means).collect()
    };
    markdown::table(&header, rows.iter().map(row))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEEN: Seen = Seen { swing: Some(true), miss: Some(false), solid: None, called: None };

    #[test]
    fn chances_cost_the_logarithm_of_what_they_gave_to_what_happened() {
        let losses = Losses::of([(Said { swing: 0.5, contact: 0.8, solid: 0.1, called: 0.1 }, SEEN)]);
        let [swing, miss, called, solid] = losses.means();
        assert!((swing.expect("a swing was seen") - 2.0_f64.ln()).abs() < 1e-15);
        assert!((miss.expect("contact was seen") + 0.8_f64.ln()).abs() < 1e-15);
        assert_eq!(called, None);
        assert!(
            (solid.expect("contact was seen") + 0.9_f64.ln()).abs() < 1e-15,
            "an unmeasured ball was not hit solidly"
        );
    }
}

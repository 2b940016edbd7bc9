//! What becomes of a pitch, in runs: the change of the runs to be expected, positive for the hitting side.
//!
//! Means over one day of the top league by the hitter's group of counts (4,418 pitches; R package abdwr3edata, CC0;
//! computed). Solid contact is a ball hit at 95 mph or more between -5 and 35 degrees.

use crate::hitter::{Chances, CountGroup};

/// Runs of what can become of a pitch in one group of counts.
struct Values {
    ball: f64,
    called: f64,
    miss: f64,
    foul: f64,
}

impl Values {
    /// Before two strikes a strike is a strike, called, missed or fouled.
    fn before_two_strikes(ball: f64, strike: f64) -> Self {
        Self { ball, called: strike, miss: strike, foul: strike }
    }
}

/// A ball hit hard on a good line, and one hit otherwise, whatever the count.
const SOLID: f64 = 0.370;
const OTHER_IN_PLAY: f64 = -0.069;
/// Share of balls hit hard on a good line, and of others, that go foul.
const SOLID_FOUL: f64 = 0.095;
const OTHER_FOUL: f64 = 0.569;

fn values(group: CountGroup) -> Values {
    match group {
        CountGroup::Other => Values::before_two_strikes(0.046, -0.065),
        CountGroup::First => Values::before_two_strikes(0.035, -0.044),
        CountGroup::HitterAhead | CountGroup::ThreeNothing => Values::before_two_strikes(0.081, -0.051),
        CountGroup::TwoStrikes => Values { ball: 0.067, called: -0.192, miss: -0.234, foul: 0.0 },
    }
}

/// Runs of a pitch of which so much becomes of it, thrown in this group of counts.
pub fn runs(chances: &Chances, group: CountGroup) -> f64 {
    let Values { ball, called, miss, foul } = values(group);
    let other = (chances.contact - chances.solid).max(0.0);
    let hit = |foul_share: f64, fair: f64| foul_share * foul + (1.0 - foul_share) * fair;
    ball * chances.ball()
        + called * chances.called_strike
        + miss * chances.miss()
        + chances.solid * hit(SOLID_FOUL, SOLID)
        + other * hit(OTHER_FOUL, OTHER_IN_PLAY)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_strike_saves_and_a_ball_costs_in_every_count_and_most_with_two_strikes() {
        for group in CountGroup::ALL {
            let called = runs(&Chances { called_strike: 1.0, ..Chances::default() }, group);
            assert!(called < 0.0 && runs(&Chances::default(), group) > 0.0, "{group:?}");
            let missed = runs(&Chances { swing: 1.0, ..Chances::default() }, group);
            assert!(
                missed <= called
                    && missed >= runs(&Chances { swing: 1.0, ..Chances::default() }, CountGroup::TwoStrikes)
            );
        }
    }
}

//! What becomes of a pitch, in runs: the change of the runs to be expected, positive for the hitting side.
//!
//! Means over one day of the top league by the hitter's group of counts (4,418 pitches; R package abdwr3edata, CC0;
//! computed). Solid contact is a ball in play at 95 mph or more between -5 and 35 degrees; all else that is hit is foul or
//! in play otherwise.

use crate::hitter::{Chances, CountGroup};

/// Runs of what can become of a pitch in one group of counts.
struct Values {
    ball: f64,
    called: f64,
    miss: f64,
    foul: f64,
}

/// A ball hit hard on a good line, and one hit otherwise, whatever the count.
const SOLID: f64 = 0.370;
const OTHER_IN_PLAY: f64 = -0.069;
/// Share of contact that goes foul.
const FOUL_SHARE: f64 = 0.484;

fn values(group: CountGroup) -> Values {
    match group {
        CountGroup::Other => Values { ball: 0.046, called: -0.056, miss: -0.061, foul: -0.060 },
        CountGroup::First => Values { ball: 0.035, called: -0.042, miss: -0.045, foul: -0.047 },
        CountGroup::HitterAhead | CountGroup::ThreeNothing => {
            Values { ball: 0.133, called: -0.064, miss: -0.074, foul: -0.064 }
        }
        CountGroup::TwoStrikes => Values { ball: 0.067, called: -0.192, miss: -0.234, foul: 0.0 },
    }
}

/// Runs of a pitch of which so much becomes of it, thrown in this group of counts.
pub fn runs(chances: &Chances, group: CountGroup) -> f64 {
    let Values { ball, called, miss, foul } = values(group);
    let fouls = FOUL_SHARE * chances.contact;
    let other = (chances.contact - fouls - chances.solid).max(0.0);
    ball * chances.ball()
        + called * chances.called_strike
        + miss * chances.miss()
        + foul * fouls
        + SOLID * chances.solid
        + OTHER_IN_PLAY * other
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

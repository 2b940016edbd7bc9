//! The command `shrinkage`: by how much differences between the pitches of a pitcher must shrink.
//!
//! For each pitcher and pitch, mean runs seen (once as they fell, once with every outcome at its usual worth, which
//! leaves out where hit balls fell) are set against mean runs said by hitters fitted to the
//! other games, both less the pitcher's own mean, and a line through nothing is drawn: its slope is
//! the share of a said difference that comes true. The standard error treats pitchers as independent.

use std::collections::BTreeMap;

use arsenalfit::hitter::Reading;

use crate::day::{Outcome, Throw};
use crate::evidence::{Evidence, said_with};
use crate::fit::{Joint, ProgramLaw};
use crate::fitting::held_out;
use crate::markdown;
use crate::meetings::Meeting;
use crate::values::Values;

/// Sums over throws of one pitch of one pitcher.
#[derive(Debug, Clone, Copy, Default)]
struct Pitch {
    throws: f64,
    seen: f64,
    said: f64,
}

/// The slope and its standard error, for several least numbers of throws, as a Markdown table.
pub fn shrinkage(evidence: &Evidence) -> String {
    let [shares, crowd] = Reading::ALL.map(|reading| held_out(&ProgramLaw::new(reading), &evidence.meetings));
    let values = Values::of_day(&evidence.day);
    let expected = |(meeting, (one, other)): (&Meeting, (Joint, Joint))| {
        values.expected(said_with(Joint::mean([one, other]), meeting), meeting.group)
    };
    let said: Vec<f64> = evidence.meetings.iter().zip(shares.into_iter().zip(crowd)).map(expected).collect();
    let as_fallen = by_pitcher(evidence, &said, |throw| throw.runs.filter(|_| throw.outcome != Outcome::Other));
    let usual = by_pitcher(evidence, &said, |throw| values.usual(throw));
    let kinds = [("as they fell", as_fallen), ("every outcome at its usual worth", usual)];
    let rows = kinds.iter().flat_map(|(name, pitchers)| {
        [1.0, 5.0, 10.0, 20.0].map(|least| {
            let (count, slope, error) = slope(pitchers, least);
            vec![(*name).to_owned(), least.to_string(), count.to_string(), format!("{slope:.2}"), format!("{error:.2}")]
        })
    });
    markdown::table(&["runs seen", "least throws of a pitch", "pitchers", "slope", "standard error"], rows)
}

/// Every pitcher's pitches; a throw of which no runs are seen is left out.
fn by_pitcher(evidence: &Evidence, said: &[f64], seen: impl Fn(&Throw) -> Option<f64>) -> Vec<Vec<Pitch>> {
    let mut pitchers: BTreeMap<&str, BTreeMap<&str, Pitch>> = BTreeMap::new();
    for (meeting, said) in evidence.meetings.iter().zip(said) {
        let throw = evidence.throw(meeting);
        let Some(seen) = seen(throw) else { continue };
        let pitch = pitchers.entry(&throw.pitcher).or_default().entry(&throw.label).or_default();
        pitch.throws += 1.0;
        pitch.seen += seen;
        pitch.said += said;
    }
    pitchers.into_values().map(|pitches| pitches.into_values().collect()).collect()
}

/// Pitchers with two pitches or more of at least so many throws, slope, standard error.
fn slope(pitchers: &[Vec<Pitch>], least: f64) -> (usize, f64, f64) {
    let centred: Vec<Vec<(f64, f64, f64)>> = pitchers
        .iter()
        .map(|pitches| centred(&pitches.iter().copied().filter(|pitch| pitch.throws >= least).collect::<Vec<_>>()))
        .filter(|pitches| pitches.len() > 1)
        .collect();
    let sum = |term: &dyn Fn(f64, f64) -> f64, pitches: &[(f64, f64, f64)]| -> f64 {
        pitches.iter().map(|(weight, seen, said)| weight * term(*seen, *said)).sum()
    };
    let of_all = |term: &dyn Fn(f64, f64) -> f64| centred.iter().map(|pitches| sum(term, pitches)).sum::<f64>();
    let spread = of_all(&|_, said| said * said);
    let slope = of_all(&|seen, said| seen * said) / spread;
    let left = centred.iter().map(|pitches| sum(&|seen, said| said * (seen - slope * said), pitches).powi(2));
    (centred.len(), slope, left.sum::<f64>().sqrt() / spread)
}

/// Throws, and means of runs seen and said less the pitcher's own.
fn centred(pitches: &[Pitch]) -> Vec<(f64, f64, f64)> {
    let throws: f64 = pitches.iter().map(|pitch| pitch.throws).sum();
    let seen = pitches.iter().map(|pitch| pitch.seen).sum::<f64>() / throws;
    let said = pitches.iter().map(|pitch| pitch.said).sum::<f64>() / throws;
    pitches
        .iter()
        .map(|pitch| (pitch.throws, pitch.seen / pitch.throws - seen, pitch.said / pitch.throws - said))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_comes_true_by_half_has_a_slope_of_a_half() {
        let pitch = |throws: f64, said: f64| Pitch { throws, said: throws * said, seen: throws * (0.3 + 0.5 * said) };
        let pitchers = [vec![pitch(30.0, 0.01), pitch(10.0, -0.02)], vec![pitch(12.0, 0.0), pitch(25.0, 0.03)]];
        let (count, slope, error) = slope(&pitchers, 5.0);
        assert_eq!(count, 2);
        assert!((slope - 0.5).abs() < 1e-12 && error < 1e-12, "{slope} +- {error}");
    }
}

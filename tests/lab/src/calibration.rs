//! The command `calibration`: what the program says beside what was seen, by kind of pitch, strikes
//! and side, on games that the fit did not see.

use arsenalfit::ball::Family;
use arsenalfit::base::geometry::Side;
use arsenalfit::hitter::{CountGroup, Reading};

use crate::evidence::{Evidence, said_with};
use crate::fit::{Joint, ProgramLaw};
use crate::fitting::held_out;
use crate::losses::Said;
use crate::markdown;
use crate::meetings::Meeting;
use crate::values::Values;

/// A kind of pitch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Four-seam, two-seam, sinker, cutter.
    Fast,
    /// Slider, sweeper, curveball.
    Breaking,
    /// Changeup, splitter, knuckleball.
    OffSpeed,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::Fast, Self::Breaking, Self::OffSpeed];

    /// The kind of a family.
    pub fn of(family: Family) -> Self {
        match family {
            Family::Slider | Family::Sweeper | Family::Curveball => Self::Breaking,
            Family::Changeup | Family::Splitter | Family::Knuckleball => Self::OffSpeed,
            _ => Self::Fast,
        }
    }

    /// As told.
    pub fn name(self) -> &'static str {
        match self {
            Self::Fast => "fast",
            Self::Breaking => "breaking",
            Self::OffSpeed => "off-speed",
        }
    }
}

/// Said against seen, of one question.
#[derive(Debug, Clone, Copy, Default)]
struct Balance {
    throws: f64,
    seen: f64,
    said: f64,
    variance: f64,
}

impl Balance {
    fn add(&mut self, said: f64, seen: f64, variance: f64) {
        self.throws += 1.0;
        self.said += said;
        self.seen += seen;
        self.variance += variance;
    }

    fn add_chance(&mut self, said: f64, seen: bool) {
        self.add(said, f64::from(u8::from(seen)), said * (1.0 - said));
    }

    /// Seen, said, and the difference in standard errors.
    fn told(&self) -> [String; 3] {
        let errors = (self.said - self.seen) / self.variance.max(f64::MIN_POSITIVE).sqrt();
        let share = |sum: f64| format!("{:.3}", sum / self.throws);
        [share(self.seen), share(self.said), format!("{errors:+.1}")]
    }
}

/// The tables, said by hitters fitted to the other games, both readings together.
pub fn calibration(evidence: &Evidence) -> String {
    let [shares, crowd] = Reading::ALL.map(|reading| held_out(&ProgramLaw::new(reading), &evidence.meetings));
    let said: Vec<Said> = evidence
        .meetings
        .iter()
        .zip(shares.into_iter().zip(crowd))
        .map(|(meeting, (one, other))| said_with(Joint::mean([one, other]), meeting))
        .collect();
    format!("{}\n{}", chances_table(evidence, &said), runs_table(evidence, &said))
}

/// Swings, and misses and solid contact per pitch: seen, said, difference in standard errors.
fn chances_table(evidence: &Evidence, said: &[Said]) -> String {
    let cells = Kind::ALL
        .into_iter()
        .flat_map(|kind| ["fewer", "two"].map(|strikes| (kind, strikes)))
        .flat_map(|(kind, strikes)| Side::BOTH.map(|side| (kind, strikes, side)));
    let row = |(kind, strikes, side): (Kind, &str, Side)| {
        let is_here = |meeting: &Meeting| {
            kind_of(evidence, meeting) == Some(kind) && strikes_of(meeting) == strikes && meeting.side == side
        };
        let mut balances = [Balance::default(); 3];
        for (meeting, said) in evidence.meetings.iter().zip(said).filter(|(meeting, _)| is_here(meeting)) {
            balances_of(&mut balances, meeting, *said);
        }
        let name = [kind.name().to_owned(), strikes.to_owned(), side.to_string(), balances[0].throws.to_string()];
        name.into_iter().chain(balances.iter().flat_map(Balance::told)).collect()
    };
    let header = [
        "kind",
        "strikes",
        "side",
        "pitches",
        "swings seen",
        "said",
        "errors",
        "misses per pitch seen",
        "said",
        "errors",
        "solid per pitch seen",
        "said",
        "errors",
    ];
    markdown::table(&header, cells.map(row))
}

fn balances_of(balances: &mut [Balance; 3], meeting: &Meeting, said: Said) {
    let Some(swing) = meeting.seen.swing else { return };
    let missed = meeting.seen.miss == Some(true);
    balances[0].add_chance(said.swing, swing);
    balances[1].add_chance(said.swing * (1.0 - said.contact), missed);
    balances[2].add_chance(said.swing * said.contact * said.solid, meeting.seen.solid == Some(true));
}

/// Runs per 100 pitches by kind, what happened counted as what it is usually worth: seen, said and what is left,
/// with its standard error.
fn runs_table(evidence: &Evidence, said: &[Said]) -> String {
    let values = Values::of_day(&evidence.day);
    let row = |kind: Kind| {
        let here = evidence.meetings.iter().zip(said).filter(|(meeting, _)| kind_of(evidence, meeting) == Some(kind));
        let pairs: Vec<(f64, f64)> = here
            .filter_map(|(meeting, said)| {
                Some((values.usual(evidence.throw(meeting))?, values.expected(*said, meeting.group)))
            })
            .collect();
        let throws = pairs.len() as f64;
        let mean = |of: &dyn Fn(&(f64, f64)) -> f64| 100.0 * pairs.iter().map(of).sum::<f64>() / throws;
        let (seen, expected) = (mean(&|pair| pair.0), mean(&|pair| pair.1));
        let error = 10.0 * (mean(&|pair| (pair.0 - pair.1).powi(2)) / throws).sqrt();
        let runs = [seen, expected, seen - expected].map(|runs| format!("{runs:+.2}"));
        let name = [kind.name().to_owned(), throws.to_string()];
        name.into_iter().chain(runs).chain([format!("{error:.2}")]).collect()
    };
    let header = ["kind", "pitches", "runs per 100 seen", "said", "left", "standard error"];
    markdown::table(&header, Kind::ALL.into_iter().map(row))
}

fn kind_of(evidence: &Evidence, meeting: &Meeting) -> Option<Kind> {
    evidence.throw(meeting).family().map(Kind::of)
}

fn strikes_of(meeting: &Meeting) -> &'static str {
    if meeting.group == CountGroup::TwoStrikes { "two" } else { "fewer" }
}

//! The program's own hitter, with its free parameters under one reading of shares.

use arsenalfit::hitter::{Hitter, Parameters, Reading, free, known, outcome};

use super::law::{Joint, Law, Prior};
use crate::meetings::Meeting;

/// The program's hitter as a law to be fitted.
#[derive(Debug, Clone, PartialEq)]
pub struct ProgramLaw {
    reading: Reading,
    priors: Vec<Prior>,
}

impl ProgramLaw {
    /// Under this reading; fits begin at the means of the priors.
    pub fn new(reading: Reading) -> Self {
        let prior = |place: usize| {
            let known = &known()[place];
            let mean = known.transform.forward(known.prior);
            Prior { name: known.name.to_owned(), mean, sd: known.prior_sd, start: mean }
        };
        Self { reading, priors: free(reading).map(prior).collect() }
    }
}

impl Law for ProgramLaw {
    type Hitter = Hitter;

    fn priors(&self) -> &[Prior] {
        &self.priors
    }

    fn hitter(&self, transformed: &[f64]) -> Hitter {
        Hitter::new(Parameters::from_transformed(self.reading, transformed), self.reading)
    }

    fn meet(&self, hitter: &Hitter, meeting: &Meeting) -> Joint {
        met(hitter, meeting)
    }
}

/// What this hitter does with a throw.
pub fn met(hitter: &Hitter, meeting: &Meeting) -> Joint {
    let hitter = hitter.with_zone(meeting.zone);
    let struck = outcome(&hitter, &meeting.ball, &meeting.beliefs, &meeting.mix, meeting.side, meeting.group);
    Joint { swing: struck.swing, contact: struck.contact, solid: struck.solid }
}

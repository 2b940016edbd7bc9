//! A hitter as a point in a box of ranges, and the ensemble of points that real pitches like about
//! equally.
//!
//! The ensemble is data (`ensemble.csv`), written by `arsenalfit calibrate` and compiled in; its
//! first row is the likeliest point. How it was made stands at its head and in DEVELOPERS.md.

use std::sync::LazyLock;

use crate::base::units::{INCH, MILLISECOND};
use crate::former::eyes::Eyes;

use super::{Bat, Hitter, RunValues, SwingChoice};

/// One fitted parameter and the range it may take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parameter {
    /// Column of the ensemble file; carries the unit.
    pub name: &'static str,
    /// Range, from published values where there are any (DEVELOPERS.md, Sources 5).
    pub range: (f64, f64),
    /// What is believed before the fit: mean and standard deviation. Published values where there
    /// are any, else the start values.
    pub prior: (f64, f64),
}

/// Every fitted parameter, in the order of the ensemble file.
pub const PARAMETERS: [Parameter; 10] = [
    // Direction in depth 0.14-0.22 degrees (Portfors-Yeomans and Regan 1997), a little wider.
    Parameter { name: "angular_deg", range: (0.12, 0.24), prior: (0.18, 0.02) },
    // Speed 0.06 after 100 ms (Snowden and Braddick 1991); time to contact 0.013-0.027 (Regan 2000).
    Parameter { name: "speed_weber", range: (0.02, 0.07), prior: (0.045, 0.01) },
    // A swing lasts about 150 ms (Adair 2000) and is started a little before.
    Parameter { name: "decision_lead_ms", range: (150.0, 200.0), prior: (165.0, 10.0) },
    Parameter { name: "swing_slope", range: (3.0, 14.0), prior: (6.0, 1.5) },
    Parameter { name: "swing_midpoint", range: (0.20, 0.60), prior: (0.32, 0.06) },
    Parameter { name: "swing_ceiling", range: (0.60, 0.95), prior: (0.76, 0.05) },
    Parameter { name: "comfort_in", range: (7.0, 16.0), prior: (9.0, 2.0) },
    // Bat control on a tee 1.5 in from the sweet centre (Higuchi et al. 2013) bounds these above.
    Parameter { name: "hands_in", range: (0.2, 1.5), prior: (0.5, 0.15) },
    // Timing about 7 ms (Brenner et al. 2014); professionals about 5 ms (Summers).
    Parameter { name: "timing_ms", range: (4.0, 10.0), prior: (7.0, 1.0) },
    Parameter { name: "same_side_factor", range: (1.0, 2.0), prior: (1.2, 0.25) },
];

/// Errors along the bat per error in height: the start values' ratio, kept.
const ALONG_PER_HEIGHT: f64 = 2.8;

/// A point of the box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FreeParameters(pub [f64; PARAMETERS.len()]);

impl FreeParameters {
    /// The start values.
    pub fn start() -> Self {
        let (eyes, choice, bat) = (Eyes::START, SwingChoice::START, Bat::START);
        Self([
            eyes.angular_deg,
            eyes.speed_weber,
            eyes.decision_lead / MILLISECOND,
            choice.slope,
            choice.midpoint,
            choice.ceiling,
            bat.comfort / INCH,
            bat.height_sd / INCH,
            bat.timing_sd / MILLISECOND,
            eyes.same_side_factor,
        ])
    }

    /// Logarithm of the prior density, up to a constant: independent normals.
    pub fn log_prior(&self) -> f64 {
        let term = |(value, parameter): (&f64, Parameter)| {
            let (mean, sd) = parameter.prior;
            -0.5 * ((value - mean) / sd).powi(2)
        };
        self.0.iter().zip(PARAMETERS).map(term).sum()
    }

    /// Whether every parameter is in its range.
    pub fn is_inside(&self) -> bool {
        self.0.iter().zip(PARAMETERS).all(|(value, parameter)| (parameter.range.0..=parameter.range.1).contains(value))
    }

    /// The hitter at this point; what is not fitted keeps its start value.
    pub fn hitter(&self) -> Hitter {
        let [angular_deg, weber, lead, slope, midpoint, ceiling, comfort, hands, timing, same_side_factor] = self.0;
        Hitter {
            eyes: Eyes {
                angular_deg,
                range_weber: weber,
                speed_weber: weber,
                decision_lead: lead * MILLISECOND,
                same_side_factor,
                ..Eyes::START
            },
            choice: SwingChoice { slope, midpoint, ceiling },
            bat: Bat {
                comfort: comfort * INCH,
                height_sd: hands * INCH,
                along_sd: ALONG_PER_HEIGHT * hands * INCH,
                timing_sd: timing * MILLISECOND,
                ..Bat::START
            },
            runs: RunValues::published(),
        }
    }
}

/// The ensemble as written.
const ENSEMBLE: &str = include_str!("ensemble.csv");

static MEMBERS: LazyLock<Vec<FreeParameters>> = LazyLock::new(|| {
    let members: Vec<FreeParameters> = ENSEMBLE.lines().filter_map(FreeParameters::from_line).collect();
    // A test holds the compiled-in file to be whole; the start values stand in for an empty one.
    if members.is_empty() { vec![FreeParameters::start()] } else { members }
});

impl FreeParameters {
    /// The middle of the ensemble: its mean.
    pub fn centre() -> Self {
        let members = Self::ensemble();
        Self(std::array::from_fn(|k| members.iter().map(|point| point.0[k]).sum::<f64>() / members.len() as f64))
    }

    /// The ensemble, at least one member, without the likeliest point when there are others.
    pub fn ensemble() -> &'static [Self] {
        if MEMBERS.len() > 1 { &MEMBERS[1..] } else { &MEMBERS }
    }

    /// The head of an ensemble file.
    pub fn header() -> String {
        PARAMETERS.map(|parameter| parameter.name).join(",")
    }

    /// One line of an ensemble file.
    pub fn to_line(&self) -> String {
        self.0.map(|value| format!("{value:.5}")).join(",")
    }

    /// Reads one line; nothing for comments, the head and lines outside the box.
    fn from_line(line: &str) -> Option<Self> {
        let numbers: Vec<f64> = line.split(',').map(|cell| cell.trim().parse().ok()).collect::<Option<_>>()?;
        let point = Self(numbers.try_into().ok()?);
        point.is_inside().then_some(point)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_of_the_shipped_ensemble_is_a_point_of_the_box() {
        let rows = ENSEMBLE.lines().filter(|line| !line.starts_with('#')).count() - 1;
        assert_eq!(MEMBERS.len(), rows);
        assert!(rows > 100, "{rows}");
        assert!(ENSEMBLE.contains(&FreeParameters::header()));
    }

    #[test]
    fn a_line_comes_back_as_the_point_it_was() {
        let point = FreeParameters::start();
        assert_eq!(FreeParameters::from_line(&point.to_line()).map(|p| p.to_line()), Some(point.to_line()));
        assert_eq!(FreeParameters::from_line("# a comment"), None);
    }
}

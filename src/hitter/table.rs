//! What is known of the parameters before any throw is read: scale, prior, and what is pinned.

use std::sync::LazyLock;

use super::parameters::PARAMETERS;
use super::{Parameters, Reading};

/// The scale on which a parameter is fitted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Transform {
    /// Natural logarithm: the parameter is positive.
    Log,
    /// Logarithm of the odds: the parameter is a share.
    Logit,
    /// The number itself.
    Linear,
}

impl Transform {
    /// From a value to the scale of the fit.
    pub fn forward(self, value: f64) -> f64 {
        match self {
            Self::Log => value.ln(),
            Self::Logit => (value / (1.0 - value)).ln(),
            Self::Linear => value,
        }
    }

    /// From the scale of the fit to a value.
    pub fn back(self, transformed: f64) -> f64 {
        match self {
            Self::Log => transformed.exp(),
            Self::Logit => 1.0 / (1.0 + (-transformed).exp()),
            Self::Linear => transformed,
        }
    }
}

/// What is known of one parameter before the fit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Known {
    /// Its name: a field of [`Parameters`].
    pub name: &'static str,
    /// Its short name in the research notes.
    pub symbol: &'static str,
    /// Its unit; 1 for a pure number.
    pub unit: &'static str,
    /// The scale on which it is fitted and its prior is normal.
    pub transform: Transform,
    /// Mean of the prior, in the parameter's unit.
    pub prior: f64,
    /// Standard deviation of the prior on the scale of the fit.
    pub prior_sd: f64,
    /// The value it is held at, where it is not fitted.
    pub pinned: Option<f64>,
}

/// What is known of every parameter, in the order of [`Parameters::NAMES`].
pub fn known() -> &'static [Known; PARAMETERS] {
    &KNOWN
}

/// The places in [`known`] of what is fitted under `reading`, in order.
pub fn free(reading: Reading) -> impl Iterator<Item = usize> {
    (0..PARAMETERS).filter(move |&place| {
        let known = &known()[place];
        known.pinned.is_none() && (reading == Reading::Crowd || known.name != SHARES_ONLY_IN_A_CROWD)
    })
}

/// The one parameter that only one reading has.
const SHARES_ONLY_IN_A_CROWD: &str = "share_at_half";

static KNOWN: LazyLock<[Known; PARAMETERS]> = LazyLock::new(|| {
    let rows: Vec<Known> = rows_of(include_str!("parameters.csv")).skip(1).map(|cells| known_of(&cells)).collect();
    assert!(rows.iter().map(|known| known.name).eq(Parameters::NAMES), "the table has the parameters in their order");
    rows.try_into().expect("a row for each parameter")
});

/// The rows of shipped data, cut at commas, without the notes at the head.
pub(super) fn rows_of(text: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    text.lines().filter(|line| !line.starts_with('#')).map(|line| line.split(',').collect())
}

/// A number of shipped data.
pub(super) fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|_| panic!("{cell} in the shipped data is not a number"))
}

fn known_of(cells: &[&'static str]) -> Known {
    let [symbol, name, unit, transform, prior, prior_sd, pinned] = cells else {
        panic!("{cells:?} is not a row of the table")
    };
    let transform = match *transform {
        "log" => Transform::Log,
        "logit" => Transform::Logit,
        _ => Transform::Linear,
    };
    let pinned = (!pinned.is_empty()).then(|| number(pinned));
    Known { name, symbol, unit, transform, prior: number(prior), prior_sd: number(prior_sd), pinned }
}

impl Parameters {
    /// From the transformed values of what is free under `reading`, in the order of [`free`]; the rest is pinned.
    pub fn from_transformed(reading: Reading, transformed: &[f64]) -> Self {
        let mut values = known().map(|known| known.pinned.unwrap_or(known.prior));
        for (place, value) in free(reading).zip(transformed) {
            values[place] = known()[place].transform.back(*value);
        }
        Self::from_values(values)
    }

    /// The transformed values of what is free under `reading`, in the order of [`free`].
    pub fn to_transformed(&self, reading: Reading) -> Vec<f64> {
        let values = self.values();
        free(reading).map(|place| known()[place].transform.forward(values[place])).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn transformed_values_lead_back_to_the_same_hitter() {
        for reading in Reading::ALL {
            let start: Vec<f64> =
                free(reading).map(|place| known()[place].transform.forward(known()[place].prior) + 0.1).collect();
            let again = Parameters::from_transformed(reading, &start).to_transformed(reading);
            assert_eq!(start.len(), again.len());
            assert!(start.iter().zip(&again).all(|(a, b)| (a - b).abs() < 1e-12), "{start:?} {again:?}");
        }
    }
}

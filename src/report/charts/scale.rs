//! From numbers to places along one axis.

/// A straight scale.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scale {
    from: (f64, f64),
    to: (f64, f64),
}

impl Scale {
    /// Takes the ends of `from` to the ends of `to`; an empty range is widened.
    pub(crate) fn new(from: (f64, f64), to: (f64, f64)) -> Self {
        let from = if (from.1 - from.0).abs() < 1e-9 { (from.0 - 0.5, from.1 + 0.5) } else { from };
        Self { from, to }
    }

    /// Where `value` stands; values beyond the ends stay at the ends.
    pub(crate) fn at(&self, value: f64) -> f64 {
        let share = ((value - self.from.0) / (self.from.1 - self.from.0)).clamp(0.0, 1.0);
        self.to.0 + share * (self.to.1 - self.to.0)
    }

    /// Round values inside the scale, three to six of them.
    pub(crate) fn ticks(&self) -> Vec<f64> {
        let (low, high) = (self.from.0.min(self.from.1), self.from.0.max(self.from.1));
        let step = round_step((high - low) / 4.0);
        let mut ticks = Vec::new();
        let mut tick = (low / step).ceil() * step;
        while tick <= high + 1e-9 {
            ticks.push(if tick.abs() < step * 1e-6 { 0.0 } else { tick });
            tick += step;
        }
        ticks
    }
}

/// The round number (1, 2 or 5 times a power of ten) nearest above two thirds of `rough`.
fn round_step(rough: f64) -> f64 {
    let power = 10_f64.powf(rough.max(1e-9).log10().floor());
    let lead = rough / power;
    let round = if lead < 1.5 {
        1.0
    } else if lead < 3.5 {
        2.0
    } else if lead < 7.5 {
        5.0
    } else {
        10.0
    };
    round * power
}

/// The smallest range that holds every value.
pub(crate) fn range_of(values: impl IntoIterator<Item = f64>) -> (f64, f64) {
    values.into_iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| (low.min(value), high.max(value)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_few_and_round() {
        let ticks = |low, high| Scale::new((low, high), (0.0, 100.0)).ticks();
        let shown = |ticks: Vec<f64>| ticks.iter().map(|tick| format!("{tick:.1}")).collect::<Vec<String>>().join(" ");
        assert_eq!(shown(ticks(0.0, 1.0)), "0.0 0.2 0.4 0.6 0.8 1.0");
        assert_eq!(shown(ticks(-3.0, 21.0)), "0.0 5.0 10.0 15.0 20.0");
    }

    #[test]
    fn a_single_value_stands_in_the_middle_and_a_wild_one_at_the_end() {
        let scale = Scale::new((2.0, 2.0), (0.0, 100.0));
        assert!((scale.at(2.0) - 50.0).abs() < 1e-9 && (scale.at(1e9) - 100.0).abs() < 1e-9);
    }
}

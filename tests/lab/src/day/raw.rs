//! The rows of the file as they stand there; nothing is understood yet.

use arsenalfit::base::Range;
use arsenalfit::base::geometry::{Side, Vec3};
use csv::invalid_option;
use serde::Deserialize;

/// Where anybody's zone begins and ends, in: anything beyond is a fault of the file (common sense, no source).
const BOTTOM_IN: Range = Range { low: 8.0, high: 28.0 };
const TOP_IN: Range = Range { low: 30.0, high: 56.0 };

/// One row. A number that cannot be read is missing.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct Raw {
    pub(super) game: String,
    pub(super) pitcher: String,
    pub(super) pitch: String,
    pub(super) outcome: String,
    batter_side: String,
    #[serde(default, deserialize_with = "invalid_option")]
    pub(super) balls: Option<u32>,
    #[serde(default, deserialize_with = "invalid_option")]
    pub(super) strikes: Option<u32>,
    #[serde(default, deserialize_with = "invalid_option")]
    vx0_50ft: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    vy0_50ft: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    vz0_50ft: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    ax_50ft: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    ay_50ft: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    az_50ft: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    zone_top_in: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    zone_bottom_in: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    pub(super) exit_speed_mph: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    pub(super) launch_deg: Option<f64>,
    #[serde(default, deserialize_with = "invalid_option")]
    pub(super) runs: Option<f64>,
}

/// The rows of a file.
pub(super) fn rows(text: &str) -> Result<impl Iterator<Item = Result<Raw, csv::Error>>, csv::Error> {
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).flexible(true).from_reader(text.as_bytes());
    let header = reader.headers()?.clone();
    Ok(reader.into_records().map(move |record| record?.deserialize(Some(&header))))
}

impl Raw {
    pub(super) fn side(&self) -> Option<Side> {
        match self.batter_side.as_str() {
            "same" => Some(Side::Same),
            "opposite" => Some(Side::Opposite),
            _ => None,
        }
    }

    /// At 50 ft, ft/s.
    pub(super) fn velocity(&self) -> Option<Vec3> {
        vector(self.vx0_50ft, self.vy0_50ft, self.vz0_50ft)
    }

    /// At 50 ft, ft/s².
    pub(super) fn acceleration(&self) -> Option<Vec3> {
        vector(self.ax_50ft, self.ay_50ft, self.az_50ft)
    }

    /// Nothing when it is nobody's.
    pub(super) fn zone_in(&self) -> Option<Range> {
        let (low, high) = self.zone_bottom_in.zip(self.zone_top_in)?;
        (BOTTOM_IN.holds(low) && TOP_IN.holds(high)).then(|| Range::new(low, high))
    }
}

fn vector(x: Option<f64>, y: Option<f64>, z: Option<f64>) -> Option<Vec3> {
    Some(Vec3::new(x?, y?, z?))
}

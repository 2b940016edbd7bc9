//! The air a throw was measured in, as written down; what it does to the ball is in [`crate::ball::flight`].

/// The air of the measurements. Pressure wins over elevation when both are known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weather {
    /// Height above sea level.
    pub elevation_ft: f64,
    /// Air temperature; `None` means the standard atmosphere at that elevation, dry.
    pub temperature_f: Option<f64>,
    /// Station pressure (not reduced to sea level).
    pub pressure_inhg: Option<f64>,
    /// Relative humidity.
    pub humidity_percent: f64,
}

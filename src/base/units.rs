//! What one customary unit is in SI, and nothing else.
//!
//! Inside the model everything is SI; names that carry a unit (`speed_mph`) are customary.
//! Crossing the border is one multiplication or division that reads as what it does:
//! `profile.speed_mph * MPH` goes in, `speed / MPH` comes out.

/// Metres in an inch (exact by definition, international yard and pound agreement, 1959).
pub const INCH: f64 = 0.0254;
/// Metres in a foot (exact).
pub const FOOT: f64 = 12.0 * INCH;
/// Kilograms in an avoirdupois ounce (exact).
pub const OUNCE: f64 = 0.453_592_37 / 16.0;
/// Metres per second in a mile per hour (exact).
pub const MPH: f64 = 5280.0 * FOOT / 3600.0;
/// Radians per second in a revolution per minute.
pub const RPM: f64 = std::f64::consts::TAU / 60.0;
/// Radians in a degree.
pub const DEGREE: f64 = std::f64::consts::PI / 180.0;
/// Seconds in a millisecond.
pub const MILLISECOND: f64 = 1e-3;
/// Pascals in an inch of mercury at 0 degrees C (conventional value, NIST SP 811, table B.8).
pub const INCH_OF_MERCURY: f64 = 3386.389;

/// Kelvin from degrees Fahrenheit.
pub fn kelvin_from_fahrenheit(degrees: f64) -> f64 {
    kelvin_from_celsius((degrees - 32.0) / 1.8)
}

/// Kelvin from degrees Celsius.
pub fn kelvin_from_celsius(degrees: f64) -> f64 {
    degrees + 273.15
}

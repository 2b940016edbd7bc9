//! Air density from what a coach can know: elevation, or pressure, temperature and humidity.

use crate::ball::Weather;
use crate::base::units::{FOOT, INCH_OF_MERCURY, kelvin_from_fahrenheit};

/// Specific gas constant of dry air, J/(kg K). ASHRAE Fundamentals 2017, chapter 1.
const DRY_GAS_CONSTANT: f64 = 287.05;
/// Specific gas constant of water vapour, J/(kg K). ASHRAE Fundamentals 2017, chapter 1.
const VAPOUR_GAS_CONSTANT: f64 = 461.495;

/// The air a ball flies through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// kg/m³.
    pub density: f64,
}

impl Air {
    /// Standard air at sea level (US Standard Atmosphere 1976).
    pub const SEA_LEVEL: Self = Self { density: 1.225 };

    /// US Standard Atmosphere 1976 at `metres` above sea level.
    pub fn standard(metres: f64) -> Self {
        Self { density: 1.225 * (1.0 - metres / 44_329.0).powf(4.255_876) }
    }

    /// Moist air as a mixture of two ideal gases: `pressure` in Pa, `kelvin`, `humidity` 0 to 1.
    /// ρ = (p - e) / (287.05 T) + e / (461.495 T), e = humidity × saturation pressure.
    pub fn moist(pressure: f64, kelvin: f64, humidity: f64) -> Self {
        let vapour = humidity * saturation_pressure(kelvin);
        Self { density: ((pressure - vapour) / DRY_GAS_CONSTANT + vapour / VAPOUR_GAS_CONSTANT) / kelvin }
    }

    /// The air of a profile. Without a temperature: the standard atmosphere at that elevation,
    /// scaled to the station pressure when that is known.
    pub fn of(weather: Weather) -> Self {
        let metres = weather.elevation_ft * FOOT;
        let pressure = weather.pressure_inhg.map(|inches| inches * INCH_OF_MERCURY);
        match (weather.temperature_f, pressure) {
            (None, None) => Self::standard(metres),
            (None, Some(pressure)) => {
                Self { density: Self::standard(metres).density * pressure / standard_pressure(metres) }
            }
            (Some(fahrenheit), pressure) => Self::moist(
                pressure.unwrap_or_else(|| standard_pressure(metres)),
                kelvin_from_fahrenheit(fahrenheit),
                weather.humidity_percent / 100.0,
            ),
        }
    }
}

/// US Standard Atmosphere 1976 pressure, Pa.
fn standard_pressure(metres: f64) -> f64 {
    101_325.0 * (1.0 - metres / 44_329.0).powf(5.255_876)
}

/// Saturation pressure of water vapour, Pa, over water above 0 degrees C:
/// 611.21 exp((18.678 - t / 234.5) t / (257.14 + t)), A. L. Buck (1996 revision), from memory;
/// within 0.1 % of ASHRAE 2017 chapter 1 table 3 from 5 to 50 degrees C (test).
pub fn saturation_pressure(kelvin: f64) -> f64 {
    let celsius = kelvin - 273.15;
    611.21 * ((18.678 - celsius / 234.5) * celsius / (257.14 + celsius)).exp()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::units::kelvin_from_celsius;

    fn close(found: f64, expected: f64, relative: f64) {
        assert!((found / expected - 1.0).abs() < relative, "{found} against {expected}");
    }

    /// US Standard Atmosphere 1976; pressures from ASHRAE Fundamentals 2017 chapter 1 table 1.
    #[test]
    fn the_standard_atmosphere_has_its_published_values() {
        for (metres, density) in [(0.0, 1.2250), (500.0, 1.1673), (1000.0, 1.1116), (1500.0, 1.0581), (2000.0, 1.0065)]
        {
            close(Air::standard(metres).density, density, 1e-4);
        }
        close(Air::standard(1524.0).density / 1.225, 0.8617, 1e-4);
        close(standard_pressure(500.0), 95_461.0, 1e-4);
        close(standard_pressure(1000.0), 89_875.0, 1e-4);
    }

    /// ASHRAE Fundamentals 2017 chapter 1 table 3.
    #[test]
    fn saturation_pressure_agrees_with_the_handbook() {
        for (celsius, pascal) in [(5.0, 872.6), (25.0, 3169.7), (50.0, 12_351.3)] {
            close(saturation_pressure(kelvin_from_celsius(celsius)), pascal, 1e-3);
        }
    }

    /// NIST mass metrology SOP 2, appendix B examples 1 and 3; CIPM-2007 worked values (Picard et
    /// al., Metrologia 45 (2008) 149); ASHRAE 2017 chapter 1 table 2. Tolerance 5e-4.
    #[test]
    fn moist_air_agrees_with_the_standards() {
        const TORR: f64 = 101_325.0 / 760.0;
        for (celsius, pressure, humidity, density) in [
            (22.3, 748.1 * TORR, 0.37, 1.171_94),
            (23.4, 612.3 * TORR, 0.23, 0.956_32),
            (10.0, 730.0 * TORR, 0.40, 1.195_69),
            (25.0, 760.0 * TORR, 0.40, 1.178_7),
            (25.0, 101_325.0, 0.0, 1.184_4),
        ] {
            close(Air::moist(pressure, kelvin_from_celsius(celsius), humidity).density, density, 5e-4);
        }
    }

    #[test]
    fn humid_air_is_lighter() {
        let at = |humidity| Air::moist(101_325.0, 303.15, humidity).density;
        assert!(at(1.0) < at(0.0));
    }
}

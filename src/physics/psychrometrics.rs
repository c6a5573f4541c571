//! Moist air: vapour pressure, dew point and frost point.
//!
//! Temperatures in degrees Celsius, as the formulas of Magnus's form are fitted; pressures in Pa; relative humidity as a
//! share, 0 to 1, over liquid water, as weather services give it also below freezing.

/// Magnus coefficients over water: pressure at 0 °C in Pa, slope, temperature in °C. Alduchov and Eskridge, 1996.
const OVER_WATER: (f64, f64, f64) = (610.94, 17.625, 243.04);
/// Magnus coefficients over ice. WMO No. 8, annex 4.B; from memory.
const OVER_ICE: (f64, f64, f64) = (611.2, 22.46, 272.62);

/// Saturation pressure of water vapour over liquid water in Pa, at an air temperature in °C.
///
/// Fitted for -40 to 50 °C; below freezing over supercooled water. Source: Alduchov and Eskridge, 1996.
/// Worked number: 23 °C, 2803.8 Pa.
pub fn saturation_pressure(celsius: f64) -> f64 {
    let (at_zero, slope, offset) = OVER_WATER;
    at_zero * (slope * celsius / (celsius + offset)).exp()
}

/// Pressure of water vapour in Pa, at an air temperature in °C and a relative humidity as a share over water.
///
/// Worked number: 23 °C and 0.5, 1401.9 Pa.
pub fn vapour_pressure(celsius: f64, humidity: f64) -> f64 {
    humidity * saturation_pressure(celsius)
}

/// Dew point over water in °C of a vapour pressure in Pa: the inverse of [`saturation_pressure`].
///
/// Worked number: air of 20 °C at 50 %, 9.26 °C.
pub fn dew_point(vapour_pressure: f64) -> f64 {
    inverse(vapour_pressure, OVER_WATER)
}

/// Frost point over ice in °C of a vapour pressure in Pa; it has a meaning below 0 °C only.
///
/// Source: WMO No. 8, from memory. Worked number: air of -5 °C at 70 % over water, -8.55 °C.
pub fn frost_point(vapour_pressure: f64) -> f64 {
    inverse(vapour_pressure, OVER_ICE)
}

fn inverse(pressure: f64, (at_zero, slope, offset): (f64, f64, f64)) -> f64 {
    let logarithm = (pressure / at_zero).ln();
    offset * logarithm / (slope - logarithm)
}

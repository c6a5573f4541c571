//! The service's unit codes, and the texts of a request.
//!
//! Codes are names of the WMO's register of units with a prefix, as `wmoUnit:degC` (from memory); the prefix has changed in the
//! past and is ignored.

use crate::calculation::input::WeatherTemperature;
use crate::quantity::QuantityField;
use crate::quantity::output::round;

/// 0 °C on the kelvin scale, exact by definition.
const ICE_POINT: f64 = 273.15;

/// A temperature in the form of a request, in the service's own unit, to 0.01 degree.
///
/// # Errors
/// A unit that is no temperature, or a value that a request does not accept.
pub fn temperature(value: f64, unit: &str) -> Result<WeatherTemperature, String> {
    let (value, symbol) = match name(unit) {
        "degC" | "C" => (value, "°C"),
        "degF" | "F" => (value, "°F"),
        "K" => (value - ICE_POINT, "°C"),
        _ => return Err(format!("a temperature in {}", shortened(unit))),
    };
    let temperature = WeatherTemperature::from_text(format!("{} {symbol}", round(value, 2)));
    temperature.read().map_err(|_| "a temperature that no air has".to_owned())?;
    Ok(temperature)
}

/// A share in percent.
///
/// # Errors
/// A unit that is not percent, or a value outside `least` to 100.
pub fn percent(value: f64, unit: &str, least: f64) -> Result<f64, String> {
    if name(unit) != "percent" {
        return Err(format!("a share in {}", shortened(unit)));
    }
    if (least..=100.0).contains(&value) { Ok(value) } else { Err("a share outside its range".to_owned()) }
}

/// A code without its prefix.
fn name(unit: &str) -> &str {
    unit.rsplit_once(':').map_or(unit, |(_, name)| name)
}

/// A foreign text, cut to a length that is safe for a log line.
fn shortened(text: &str) -> String {
    text.chars().take(40).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_keep_their_system_and_two_decimals() {
        let text = |value, unit| temperature(value, unit).unwrap().text().to_owned();
        assert_eq!(text(-3.2, "wmoUnit:degC"), "-3.2 °C");
        assert_eq!(text(-2.777_777_777_777_777_7, "unit:degC"), "-2.78 °C");
        assert_eq!(text(-0.001, "wmoUnit:degC"), "0 °C");
        assert_eq!(text(26.0, "F"), "26 °F");
        assert_eq!(text(273.15, "wmoUnit:K"), "0 °C");
    }

    #[test]
    fn other_units_and_impossible_values_are_refused() {
        for (value, unit) in [(3.0, "wmoUnit:km_h-1"), (3.0, ""), (3.0, "wmoUnit:degc"), (999.0, "F"), (-61.0, "C")] {
            assert!(temperature(value, unit).is_err(), "{value} {unit}");
        }
        for (value, unit) in [(50.0, "wmoUnit:degC"), (0.5, ""), (101.0, "wmoUnit:percent"), (0.0, "wmoUnit:percent")] {
            assert!(percent(value, unit, 0.5).is_err(), "{value} {unit}");
        }
        assert_eq!(percent(0.0, "wmoUnit:percent", 0.0), Ok(0.0));
    }
}

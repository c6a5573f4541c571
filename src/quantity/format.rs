//! Quantities as text: for a person to read (`format_…`), and as a request would hold them (`format_…_input`).

use uom::si::{f64 as si, length, temperature_interval, thermodynamic_temperature as temperature, time, volume};

use super::dimension::UnitSystem;
use super::output::round;

/// A plan length in words, in the system of the reader: `12.8 ft`, `3.9 m`.
pub fn format_length(length: si::Length, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} ft", round(length.get::<length::foot>(), 1)),
        UnitSystem::Metric => format!("{} m", round(length.get::<length::meter>(), 2)),
    }
}

/// A length as a request would hold it, close enough that sending it changes no figure: `3.0157 ft`, `0.9192 m`.
pub fn format_length_input(length: si::Length, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} ft", round(length.get::<length::foot>(), 4)),
        UnitSystem::Metric => format!("{} m", round(length.get::<length::meter>(), 4)),
    }
}

/// Which mark of a tape a length is read at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TapeReading {
    /// The nearest.
    Nearest,
    /// The next above, for what must not be less.
    AtLeast,
    /// The next below, for what must not be more.
    AtMost,
}

/// A small length in words, in the system of the reader: `1-3/8 in`, `35.3 mm`.
pub fn format_detail_length(length: si::Length, mark: TapeReading, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} in", format_tape_inches(length.get::<length::inch>(), mark)),
        UnitSystem::Metric => format!("{} mm", round(length.get::<length::millimeter>(), 1)),
    }
}

/// From this length on, fractions of an inch are quarters; below it, sixteenths.
const QUARTERS_FROM_INCHES: f64 = 4.0;

/// From this length on, fractions are said even of what is no sixteenth; a thinner thing is measured with a calliper.
const FRACTIONS_FROM_INCHES: f64 = 0.5;

/// Inches as a tape reads them, without the sign: `3/16`, `1-1/2`, `11-3/4`; `0.13` of what is thin and no sixteenth.
pub fn format_tape_inches(inches: f64, mark: TapeReading) -> String {
    let sixteenths = inches * 16.0;
    if inches < FRACTIONS_FROM_INCHES && (sixteenths - sixteenths.round()).abs() > 0.01 {
        return round(inches, 3).to_string();
    }
    format_inch_fraction(inches, mark)
}

/// Inches in whole ones and a reduced fraction, without the sign: `3/16`, `1-1/2`, `11-3/4`.
pub fn format_inch_fraction(inches: f64, mark: TapeReading) -> String {
    let parts = if inches < QUARTERS_FROM_INCHES { 16 } else { 4 };
    let marks = inches * f64::from(parts);
    let all = match mark {
        TapeReading::Nearest => round(marks, 0),
        // What is off by less than a hundredth of the division is at the mark.
        TapeReading::AtLeast => (marks - 0.01).ceil(),
        TapeReading::AtMost => (marks + 0.01).floor(),
    } as u32;
    let (whole, mut part, mut of) = (all / parts, all % parts, parts);
    while part > 0 && part % 2 == 0 {
        (part, of) = (part / 2, of / 2);
    }
    match (whole, part) {
        (whole, 0) => whole.to_string(),
        (0, part) => format!("{part}/{of}"),
        (whole, part) => format!("{whole}-{part}/{of}"),
    }
}

/// A small length as a request would hold it, close enough that sending it changes no figure: `1.39 in`, `35.306 mm`.
pub fn format_detail_length_input(length: si::Length, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} in", round(length.get::<length::inch>(), 4)),
        UnitSystem::Metric => format!("{} mm", round(length.get::<length::millimeter>(), 4)),
    }
}

/// A volume as a request would hold it: `29 fl oz`, `850 ml`.
pub fn format_volume_input(value: si::Volume, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} fl oz", round(value.get::<volume::fluid_ounce>(), 2)),
        UnitSystem::Metric => format!("{} ml", round(value.get::<volume::milliliter>(), 1)),
    }
}

/// So many of a thing: `1 loop`, `3 loops`.
pub fn format_count(count: f64, thing: &str) -> String {
    format!("{count} {thing}{}", if count == 1.0 { "" } else { "s" })
}

/// A temperature in words, on the scale of the reader, to a tenth of a degree: `40 °F`, `-3.5 °C`.
pub fn format_temperature(value: si::ThermodynamicTemperature, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} °F", round(value.get::<temperature::degree_fahrenheit>(), 1)),
        UnitSystem::Metric => format!("{} °C", round(value.get::<temperature::degree_celsius>(), 1)),
    }
}

/// A temperature as a request would hold it, to a hundredth of a degree: `39.43 °F`, `4.13 °C`.
pub fn format_temperature_input(value: si::ThermodynamicTemperature, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} °F", round(value.get::<temperature::degree_fahrenheit>(), 2)),
        UnitSystem::Metric => format!("{} °C", round(value.get::<temperature::degree_celsius>(), 2)),
    }
}

/// A difference of temperatures in words, on the scale of the reader: `5.4 °F`, `3 °C`.
pub fn format_temperature_difference(value: si::TemperatureInterval, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format!("{} °F", round(value.get::<temperature_interval::degree_fahrenheit>(), 1)),
        UnitSystem::Metric => format!("{} °C", round(value.get::<temperature_interval::degree_celsius>(), 1)),
    }
}

/// A duration in words: `45 min`, `3.5 h`, `4.2 days`.
pub fn format_duration(value: si::Time) -> String {
    let (minutes, hours, days) = (value.get::<time::minute>(), value.get::<time::hour>(), value.get::<time::day>());
    match hours {
        hours if hours < 1.995 => format!("{} min", round(minutes, 0)),
        hours if hours < 48.0 => format!("{} h", round(hours, 1)),
        _ => format!("{} days", round(days, 1)),
    }
}

//! Dimensions and temperatures as text: the caller's system first, the other in brackets.
//!
//! People hold a tape to a drawing: feet come with whole inches, metres with whole centimetres, small dimensions in fractions of
//! an inch and whole millimetres. A choice made here; the report holds the exact figures. A number and its unit stay on one line.

use crate::quantity::UnitSystem;
use crate::quantity::output::{DetailLength, PlanLength, TemperatureDifferenceValue, TemperatureValue, round};

/// The space between a number and its unit, at which no line breaks.
const NBSP: char = '\u{a0}';
/// From this length on, fractions of an inch are quarters; below it, sixteenths.
const QUARTERS_FROM_INCHES: f64 = 4.0;
/// From this length on, feet come without inches.
const NO_INCHES_FROM_FEET: f64 = 1000.0;

/// The number of a plan length in the caller's system.
pub fn length_number(length: PlanLength, system: UnitSystem) -> f64 {
    match system {
        UnitSystem::UsCustomary => length.ft(),
        UnitSystem::Metric => length.m(),
    }
}

/// The other system.
pub fn other_system(system: UnitSystem) -> UnitSystem {
    match system {
        UnitSystem::UsCustomary => UnitSystem::Metric,
        UnitSystem::Metric => UnitSystem::UsCustomary,
    }
}

/// A plan length in one system: `13 ft 5 in`, `4.1 m`.
pub fn format_plan(length: PlanLength, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format_feet(length.ft()),
        UnitSystem::Metric => format_metres(length.m()),
    }
}

/// A plan length in both systems: `20 ft [6.1 m]`.
pub fn format_plan_both(length: PlanLength, system: UnitSystem) -> String {
    format!("{} [{}]", format_plan(length, system), format_plan(length, other_system(system)))
}

/// A plan length in both systems, each on a line of its own.
pub fn format_plan_lines(length: PlanLength, system: UnitSystem) -> [String; 2] {
    PrintedLength::from(length).format_lines(system)
}

/// Two plan lengths in both systems: `6 ft × 20 ft [1.83 m × 6.1 m]`.
pub fn format_area_both(along: PlanLength, across: PlanLength, system: UnitSystem) -> String {
    let one = |system| format!("{} × {}", format_plan(along, system), format_plan(across, system));
    format!("{} [{}]", one(system), one(other_system(system)))
}

/// A small dimension in both systems: `1-1/2 in [38 mm]`.
pub fn format_detail_both(length: DetailLength, system: UnitSystem) -> String {
    format!("{} [{}]", format_detail(length, system), format_detail(length, other_system(system)))
}

/// A small dimension in one system: `1-1/2 in`, `38 mm`.
pub fn format_detail(length: DetailLength, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => format_inches(length.inch()),
        UnitSystem::Metric => format!("{}{NBSP}mm", round(length.mm(), 0)),
    }
}

/// A small dimension for which tenths of a millimetre matter, in both systems: `3/16 in [4.8 mm]`, `0.13 in [3.3 mm]`.
pub fn format_fine_both(length: DetailLength, system: UnitSystem) -> String {
    let [own, other] = format_fine_lines(length, system);
    format!("{own} {other}")
}

/// The same as [`format_fine_both`], each system on a line of its own.
pub fn format_fine_lines(length: DetailLength, system: UnitSystem) -> [String; 2] {
    let sixteenths = 16.0 * length.inch();
    let us = if (sixteenths - sixteenths.round()).abs() < 0.01 && length.inch() >= 0.0 {
        format_inches(length.inch())
    } else {
        format!("{}{NBSP}in", round(length.inch(), 2))
    };
    let metric = format!("{}{NBSP}mm", round(length.mm(), 1));
    match system {
        UnitSystem::UsCustomary => [us, format!("[{metric}]")],
        UnitSystem::Metric => [metric, format!("[{us}]")],
    }
}

/// A plan length as it is printed, rounded in each system: what is computed from it agrees with the figures beside it.
#[derive(Clone, Copy)]
pub struct PrintedLength {
    ft: f64,
    m: f64,
}

impl From<PlanLength> for PrintedLength {
    fn from(length: PlanLength) -> Self {
        Self { ft: length.ft(), m: length.m() }
    }
}

impl PrintedLength {
    /// The sum of both.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self { ft: self.ft + other.ft, m: self.m + other.m }
    }

    /// In both systems, each on a line of its own.
    pub fn format_lines(self, system: UnitSystem) -> [String; 2] {
        let format = |system| match system {
            UnitSystem::UsCustomary => format_feet(self.ft),
            UnitSystem::Metric => format_metres(self.m),
        };
        [format(system), format!("[{}]", format(other_system(system)))]
    }
}

fn format_metres(metres: f64) -> String {
    format!("{}{NBSP}m", round(metres, 2))
}

/// The number of a temperature in the caller's system.
pub fn temperature_number(value: TemperatureValue, system: UnitSystem) -> f64 {
    match system {
        UnitSystem::UsCustomary => value.f(),
        UnitSystem::Metric => value.c(),
    }
}

/// A temperature in both systems, to 0.1 degree: `40 °F [4.4 °C]`.
pub fn format_temperature_both(value: TemperatureValue, system: UnitSystem) -> String {
    format_degrees_both(value.f(), value.c(), system)
}

/// A temperature difference in both systems, to 0.1 degree.
pub fn format_difference_both(value: TemperatureDifferenceValue, system: UnitSystem) -> String {
    format_degrees_both(value.f(), value.c(), system)
}

fn format_degrees_both(f: f64, c: f64, system: UnitSystem) -> String {
    let degrees = |value: f64, unit: &str| format!("{}{NBSP}{unit}", format_signed(round(value, 1)));
    let (us, metric) = (degrees(f, "°F"), degrees(c, "°C"));
    match system {
        UnitSystem::UsCustomary => format!("{us} [{metric}]"),
        UnitSystem::Metric => format!("{metric} [{us}]"),
    }
}

/// A number with a true minus sign.
pub fn format_signed(value: f64) -> String {
    value.to_string().replace('-', "−")
}

fn format_feet(feet: f64) -> String {
    let all = if feet.abs() < NO_INCHES_FROM_FEET { round(feet.abs() * 12.0, 0) } else { 12.0 * round(feet.abs(), 0) };
    let (whole, inches) = ((all / 12.0).floor(), all % 12.0);
    let sign = if feet < 0.0 && all > 0.0 { "−" } else { "" };
    match (whole == 0.0, inches == 0.0) {
        (false, false) => format!("{sign}{whole}{NBSP}ft{NBSP}{inches}{NBSP}in"),
        (true, false) => format!("{sign}{inches}{NBSP}in"),
        (_, true) => format!("{sign}{whole}{NBSP}ft"),
    }
}

fn format_inches(inches: f64) -> String {
    let parts = if inches < QUARTERS_FROM_INCHES { 16 } else { 4 };
    let all = round(inches * f64::from(parts), 0) as u32;
    let (whole, mut part, mut of) = (all / parts, all % parts, parts);
    while part > 0 && part % 2 == 0 {
        (part, of) = (part / 2, of / 2);
    }
    match (whole, part) {
        (whole, 0) => format!("{whole}{NBSP}in"),
        (0, part) => format!("{part}/{of}{NBSP}in"),
        (whole, part) => format!("{whole}-{part}/{of}{NBSP}in"),
    }
}

#[cfg(test)]
mod tests {
    use uom::si::f64::Length;
    use uom::si::length::{foot, inch};

    use super::{NBSP, format_detail_both, format_feet, format_inches, format_plan_both};
    use crate::quantity::UnitSystem;
    use crate::quantity::output::{DetailLength, PlanLength};

    #[test]
    fn feet_come_with_whole_inches() {
        for (number, text) in [
            (24.0, "24 ft"),
            (13.45, "13 ft 5 in"),
            (11.99, "12 ft"),
            (0.5, "6 in"),
            (0.0, "0 ft"),
            (-1.25, "−1 ft 3 in"),
        ] {
            assert_eq!(format_feet(number).replace(NBSP, " "), text);
        }
    }

    #[test]
    fn inches_come_in_reduced_fractions() {
        for (number, text) in [
            (1.5, "1-1/2 in"),
            (0.1875, "3/16 in"),
            (2.0, "2 in"),
            (1.378, "1-3/8 in"),
            (0.0, "0 in"),
            (11.811, "11-3/4 in"),
        ] {
            assert_eq!(format_inches(number).replace(NBSP, " "), text);
        }
    }

    #[test]
    fn the_callers_system_stands_first() {
        let length = PlanLength(Length::new::<foot>(20.0));
        let plain = |text: String| text.replace(NBSP, " ");
        assert_eq!(plain(format_plan_both(length, UnitSystem::UsCustomary)), "20 ft [6.1 m]");
        assert_eq!(plain(format_plan_both(length, UnitSystem::Metric)), "6.1 m [20 ft]");
        assert_eq!(
            plain(format_detail_both(DetailLength(Length::new::<inch>(1.5)), UnitSystem::Metric)),
            "38 mm [1-1/2 in]"
        );
    }
}

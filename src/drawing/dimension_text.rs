//! Dimensions and temperatures as text: the reader's system first, the other in brackets; numbers and units as the language has them.
//!
//! People hold a tape to a drawing: feet come with whole inches, metres with whole centimetres, small dimensions in fractions of
//! an inch and whole millimetres. A choice made here; the report holds the exact figures. A number and its unit stay on one line.

use uom::si::f64::Time;
use uom::si::time::{day, hour, minute};

use crate::quantity::UnitSystem;
use crate::quantity::format::{TapeReading, format_inch_fraction};
use crate::quantity::output::{DetailLength, PlanLength, TemperatureDifferenceValue, TemperatureValue, round};
use crate::wording::{NO_BREAK_SPACE, Reader};

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

/// The same reader with the other system.
fn other(reader: Reader) -> Reader {
    Reader::new(other_system(reader.system), reader.language)
}

/// A plan length in one system: `13 ft 5 in`, `4.1 m`.
pub fn format_plan(length: PlanLength, reader: Reader) -> String {
    PrintedLength::from(length).format(reader)
}

/// A plan length in both systems: `20 ft [6.1 m]`.
pub fn format_plan_both(length: PlanLength, reader: Reader) -> String {
    format!("{} [{}]", format_plan(length, reader), format_plan(length, other(reader)))
}

/// A plan length in both systems, each on a line of its own.
pub fn format_plan_lines(length: PlanLength, reader: Reader) -> [String; 2] {
    PrintedLength::from(length).format_lines(reader)
}

/// Two plan lengths in both systems: `6 ft × 20 ft [1.83 m × 6.1 m]`.
pub fn format_area_both(along: PlanLength, across: PlanLength, reader: Reader) -> String {
    let one = |reader| format!("{} × {}", format_plan(along, reader), format_plan(across, reader));
    format!("{} [{}]", one(reader), one(other(reader)))
}

/// A small dimension in both systems: `1-1/2 in [38 mm]`.
pub fn format_detail_both(length: DetailLength, reader: Reader) -> String {
    format!("{} [{}]", format_detail(length, reader), format_detail(length, other(reader)))
}

/// A small dimension in one system: `1-1/2 in`, `38 mm`.
pub fn format_detail(length: DetailLength, reader: Reader) -> String {
    match reader.system {
        UnitSystem::UsCustomary => format_inches(length.inch(), reader),
        UnitSystem::Metric => number_and_unit(round(length.mm(), 0), "mm", reader),
    }
}

/// A small dimension for which tenths of a millimetre matter, in one system: `3/16 in`, `0.13 in`, `4.8 mm`.
pub fn format_fine(length: DetailLength, reader: Reader) -> String {
    let sixteenths = 16.0 * length.inch();
    match reader.system {
        UnitSystem::UsCustomary if (sixteenths - sixteenths.round()).abs() < 0.01 && length.inch() >= 0.0 => {
            format_inches(length.inch(), reader)
        }
        UnitSystem::UsCustomary => number_and_unit(round(length.inch(), 2), "in", reader),
        UnitSystem::Metric => number_and_unit(round(length.mm(), 1), "mm", reader),
    }
}

/// The same in both systems: `3/16 in [4.8 mm]`, `0.13 in [3.3 mm]`.
pub fn format_fine_both(length: DetailLength, reader: Reader) -> String {
    format_fine_lines(length, reader).join(" ")
}

/// The same as [`format_fine_both`], each system on a line of its own.
pub fn format_fine_lines(length: DetailLength, reader: Reader) -> [String; 2] {
    [format_fine(length, reader), format!("[{}]", format_fine(length, other(reader)))]
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

    fn format(self, reader: Reader) -> String {
        match reader.system {
            UnitSystem::UsCustomary => format_feet(self.ft, reader),
            UnitSystem::Metric => number_and_unit(round(self.m, 2), "m", reader),
        }
    }

    /// In both systems, each on a line of its own.
    pub fn format_lines(self, reader: Reader) -> [String; 2] {
        [self.format(reader), format!("[{}]", self.format(other(reader)))]
    }
}

/// The number of a temperature in the caller's system.
pub fn temperature_number(value: TemperatureValue, system: UnitSystem) -> f64 {
    match system {
        UnitSystem::UsCustomary => value.f(),
        UnitSystem::Metric => value.c(),
    }
}

/// A temperature in one system, to 0.1 degree: `40 °F`.
pub fn format_temperature(value: TemperatureValue, reader: Reader) -> String {
    format_degrees(value.f(), value.c(), reader)
}

/// A temperature in both systems: `40 °F [4.4 °C]`.
pub fn format_temperature_both(value: TemperatureValue, reader: Reader) -> String {
    format!("{} [{}]", format_temperature(value, reader), format_temperature(value, other(reader)))
}

/// A temperature difference in both systems, to 0.1 degree.
pub fn format_difference_both(value: TemperatureDifferenceValue, reader: Reader) -> String {
    let one = |reader| format_degrees(value.f(), value.c(), reader);
    format!("{} [{}]", one(reader), one(other(reader)))
}

fn format_degrees(f: f64, c: f64, reader: Reader) -> String {
    let (value, unit) = match reader.system {
        UnitSystem::UsCustomary => (f, "fahrenheit"),
        UnitSystem::Metric => (c, "celsius"),
    };
    reader.with_unit(&true_minus(round(value, 1)), unit)
}

/// A duration: `45 min`, `3.5 h`, `4.2 days`.
pub fn format_duration(value: Time, reader: Reader) -> String {
    match value.get::<hour>() {
        hours if hours < 1.995 => number_and_unit(round(value.get::<minute>(), 0), "min", reader),
        hours if hours < 48.0 => number_and_unit(round(hours, 1), "h", reader),
        _ => number_and_unit(round(value.get::<day>(), 1), "days", reader),
    }
}

/// A number with a true minus sign, as the language writes it.
pub fn format_signed(value: f64, reader: Reader) -> String {
    reader.decimal(&true_minus(value))
}

/// A share in percent.
pub fn format_percent(value: f64, reader: Reader) -> String {
    number_and_unit(value, "percent", reader)
}

fn number_and_unit(value: f64, unit: &str, reader: Reader) -> String {
    reader.with_unit(&value.to_string(), unit)
}

fn true_minus(value: f64) -> String {
    value.to_string().replace('-', "−")
}

fn format_feet(feet: f64, reader: Reader) -> String {
    let all = if feet.abs() < NO_INCHES_FROM_FEET { round(feet.abs() * 12.0, 0) } else { 12.0 * round(feet.abs(), 0) };
    let (whole, inches) = ((all / 12.0).floor(), all % 12.0);
    let sign = if feet < 0.0 && all > 0.0 { "−" } else { "" };
    let (feet, inches_words) = (number_and_unit(whole, "ft", reader), number_and_unit(inches, "in", reader));
    match (whole == 0.0, inches == 0.0) {
        (false, false) => format!("{sign}{feet}{NO_BREAK_SPACE}{inches_words}"),
        (true, false) => format!("{sign}{inches_words}"),
        (_, true) => format!("{sign}{feet}"),
    }
}

fn format_inches(inches: f64, reader: Reader) -> String {
    reader.with_unit(&format_inch_fraction(inches, TapeReading::Nearest), "in")
}

#[cfg(test)]
mod tests {
    use uom::si::f64::{Length, Time};
    use uom::si::length::{foot, inch};
    use uom::si::thermodynamic_temperature::degree_celsius;
    use uom::si::time::hour;

    use super::{
        format_detail_both, format_duration, format_feet, format_fine, format_inches, format_percent, format_plan_both,
        format_temperature,
    };
    use crate::quantity::UnitSystem::{Metric, UsCustomary};
    use crate::quantity::output::{DetailLength, PlanLength, TemperatureValue};
    use crate::wording::{Language, Reader};

    const ENGLISH: Reader = Reader::new(UsCustomary, Language::English);

    fn plain(text: &str) -> String {
        text.replace(['\u{a0}', '\u{202f}'], " ")
    }

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
            assert_eq!(plain(&format_feet(number, ENGLISH)), text);
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
            assert_eq!(plain(&format_inches(number, ENGLISH)), text);
        }
    }

    #[test]
    fn the_readers_system_stands_first() {
        let length = PlanLength(Length::new::<foot>(20.0));
        let reader = |system| Reader::new(system, Language::English);
        assert_eq!(plain(&format_plan_both(length, reader(UsCustomary))), "20 ft [6.1 m]");
        assert_eq!(plain(&format_plan_both(length, reader(Metric))), "6.1 m [20 ft]");
        assert_eq!(
            plain(&format_detail_both(DetailLength(Length::new::<inch>(1.5)), reader(Metric))),
            "38 mm [1-1/2 in]"
        );
    }

    #[test]
    fn units_and_decimal_marks_are_those_of_the_language() {
        let length = PlanLength(Length::new::<foot>(13.45));
        let wire = DetailLength(Length::new::<inch>(0.13));
        let air = TemperatureValue(uom::si::f64::ThermodynamicTemperature::new::<degree_celsius>(-3.5));
        let words = |system, language| {
            let reader = Reader::new(system, language);
            let texts = [
                format_plan_both(length, reader),
                format_fine(wire, reader),
                format_temperature(air, reader),
                format_percent(12.5, reader),
                format_duration(Time::new::<hour>(60.0), reader),
            ];
            texts.map(|text| plain(&text)).join("; ")
        };
        assert_eq!(words(UsCustomary, Language::Spanish), "13 ft 5 in [4.1 m]; 0.13 in; 25.7 °F; 12.5 %; 2.5 días");
        assert_eq!(words(Metric, Language::French), "4,1 m [13 ft 5 in]; 3,3 mm; −3,5 °C; 12,5 %; 2,5 jours");
    }
}

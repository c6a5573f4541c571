//! Dimensions in words: the caller's system first, the other in brackets.
//!
//! A drawing is read with a tape in hand: feet come with whole inches, metres with whole centimetres, small dimensions in
//! fractions of an inch and whole millimetres. A choice made here; the report holds the exact figures. A number and its unit stay
//! on one line.

use crate::quantity::UnitSystem;
use crate::quantity::output::{DetailLength, PlanLength, round};

/// The space between a number and its unit, at which no line breaks.
const TIED: char = '\u{a0}';
/// From this on fractions of an inch are quarters, below it sixteenths.
const COARSE_FROM_INCHES: f64 = 4.0;
/// From this on feet come without inches.
const WHOLE_FROM_FEET: f64 = 1000.0;

/// The number of a plan length in the caller's system.
pub fn number(length: PlanLength, system: UnitSystem) -> f64 {
    match system {
        UnitSystem::UsCustomary => length.ft,
        UnitSystem::Metric => length.m,
    }
}

/// The other system.
pub fn other(system: UnitSystem) -> UnitSystem {
    match system {
        UnitSystem::UsCustomary => UnitSystem::Metric,
        UnitSystem::Metric => UnitSystem::UsCustomary,
    }
}

/// A plan length in one system: `13 ft 5 in`, `4.1 m`.
pub fn plan(length: PlanLength, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => feet(length.ft),
        UnitSystem::Metric => format!("{}{TIED}m", round(length.m, 2)),
    }
}

/// A plan length in both: `20 ft [6.1 m]`.
pub fn both(length: PlanLength, system: UnitSystem) -> String {
    format!("{} [{}]", plan(length, system), plan(length, other(system)))
}

/// A plan length in both, the other system on a line of its own.
pub fn two_lines(length: PlanLength, system: UnitSystem) -> [String; 2] {
    [plan(length, system), format!("[{}]", plan(length, other(system)))]
}

/// Two plan lengths in both: `6 ft × 20 ft [1.83 m × 6.1 m]`.
pub fn area(along: PlanLength, across: PlanLength, system: UnitSystem) -> String {
    let one = |system| format!("{} × {}", plan(along, system), plan(across, system));
    format!("{} [{}]", one(system), one(other(system)))
}

/// A small dimension in both: `1-1/2 in [38 mm]`.
pub fn detail(length: DetailLength, system: UnitSystem) -> String {
    format!("{} [{}]", small(length, system), small(length, other(system)))
}

/// A small dimension in one system: `1-1/2 in`, `38 mm`.
pub fn small(length: DetailLength, system: UnitSystem) -> String {
    match system {
        UnitSystem::UsCustomary => inches(length.inch),
        UnitSystem::Metric => format!("{}{TIED}mm", round(length.mm, 0)),
    }
}

/// A small dimension of which tenths of a millimetre count, in both: `3/16 in [4.8 mm]`, `0.13 in [3.3 mm]`.
pub fn fine(length: DetailLength, system: UnitSystem) -> String {
    let [own, other] = fine_lines(length, system);
    format!("{own} {other}")
}

/// The same, the other system on a line of its own.
pub fn fine_lines(length: DetailLength, system: UnitSystem) -> [String; 2] {
    let sixteenths = 16.0 * length.inch;
    let us = if (sixteenths - sixteenths.round()).abs() < 0.01 && length.inch >= 0.0 {
        inches(length.inch)
    } else {
        format!("{}{TIED}in", round(length.inch, 2))
    };
    let metric = format!("{}{TIED}mm", round(length.mm, 1));
    match system {
        UnitSystem::UsCustomary => [us, format!("[{metric}]")],
        UnitSystem::Metric => [metric, format!("[{us}]")],
    }
}

/// The sum of two plan lengths, each system for itself.
pub fn sum(a: PlanLength, b: PlanLength) -> PlanLength {
    PlanLength { ft: a.ft + b.ft, m: a.m + b.m }
}

fn feet(feet: f64) -> String {
    let all = if feet.abs() < WHOLE_FROM_FEET { round(feet.abs() * 12.0, 0) } else { 12.0 * round(feet.abs(), 0) };
    let (whole, inches) = ((all / 12.0).floor(), all % 12.0);
    let sign = if feet < 0.0 && all > 0.0 { "−" } else { "" };
    match (whole == 0.0, inches == 0.0) {
        (false, false) => format!("{sign}{whole}{TIED}ft{TIED}{inches}{TIED}in"),
        (true, false) => format!("{sign}{inches}{TIED}in"),
        (_, true) => format!("{sign}{whole}{TIED}ft"),
    }
}

fn inches(inches: f64) -> String {
    let parts = if inches < COARSE_FROM_INCHES { 16 } else { 4 };
    let all = round(inches * f64::from(parts), 0) as u32;
    let (whole, mut part, mut of) = (all / parts, all % parts, parts);
    while part > 0 && part % 2 == 0 {
        (part, of) = (part / 2, of / 2);
    }
    match (whole, part) {
        (whole, 0) => format!("{whole}{TIED}in"),
        (0, part) => format!("{part}/{of}{TIED}in"),
        (whole, part) => format!("{whole}-{part}/{of}{TIED}in"),
    }
}

#[cfg(test)]
mod tests {
    use super::{TIED, both, detail, feet, inches};
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
            assert_eq!(feet(number).replace(TIED, " "), text);
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
            assert_eq!(inches(number).replace(TIED, " "), text);
        }
    }

    #[test]
    fn the_callers_system_stands_first() {
        let length = PlanLength { ft: 20.0, m: 6.096 };
        let plain = |text: String| text.replace(TIED, " ");
        assert_eq!(plain(both(length, UnitSystem::UsCustomary)), "20 ft [6.1 m]");
        assert_eq!(plain(both(length, UnitSystem::Metric)), "6.1 m [20 ft]");
        assert_eq!(plain(detail(DetailLength { inch: 1.5, mm: 38.1 }, UnitSystem::Metric)), "38 mm [1-1/2 in]");
    }
}

//! Values as a request holds them, in words and in the units of the reader: `1-1/2 in`, `0.13 in wide, 0.39 in high`, `hand_wound`.

use uom::si::length::meter;

use super::dimension_text::{format_detail, format_fine, format_plan, format_temperature};
use crate::calculation::input::Shape;
use crate::calculation::report::Statement;
use crate::practice::detectors::{DetectorEnvelope, Wiring};
use crate::practice::materials::{Corner, RodForm};
use crate::practice::roles::Role;
use crate::practice::sealants::SealantKind;
use crate::practice::sealing::SurfaceCondition;
use crate::practice::site::{Construction, LeafOpen, Surface, UnitSide};
use crate::practice::vehicles::VehicleClass;
use crate::quantity::dimension::{Length, Temperature, Volume};
use crate::quantity::output::VolumeValue;
use crate::quantity::{UnitSystem, parse};
use crate::vocabulary::Vocabulary;
use crate::wording::{Reader, unit_sign};

/// Lengths from here on are shown in feet or metres, shorter ones in inches or millimetres. A choice made here.
const PLAN_FROM_METRES: f64 = 0.4;
/// Below this, tenths of a millimetre matter. A choice made here.
const FINE_BELOW_METRES: f64 = 0.01;

/// A value of a field, or several with what stands between them. `field` is the last part of its pointer.
pub fn format_value(field: &str, text: &str, reader: Reader) -> String {
    if field == "corner" && text.contains(' ') {
        return reader.say(&Statement::new("drawings-value-corners")).into_owned();
    }
    let one_of = |texts: &str| {
        let texts: Vec<_> = texts.split(" or ").map(|text| format_dimension(field, text, reader)).collect();
        texts.into_iter().reduce(|first, last| either(first, last, reader)).unwrap_or_default()
    };
    let values: Vec<_> = text.split(", ").map(one_of).collect();
    // Names that hold a comma need another mark between them.
    let is_plain = values.len() < 2 || !values.iter().any(|value| value.contains(", "));
    values.join(if is_plain { ", " } else { "; " })
}

fn either(first: String, last: String, reader: Reader) -> String {
    reader.say(&Statement::new("drawings-value-or").text("first", first).text("last", last)).into_owned()
}

/// A value with what it is a dimension of, or what it holds for: `0.13 in wide`, `1/4 in (hand_wound)`, `6 ft x 20 ft`, `3 turns`.
fn format_dimension(field: &str, text: &str, reader: Reader) -> String {
    if let Some((one, other)) = text.split_once(" x ") {
        return format!("{} × {}", format_one(field, one, reader), format_one(field, other, reader));
    }
    let said = |statement: Statement, value: &str| {
        reader.say(&statement.text("value", format_one(field, value, reader))).into_owned()
    };
    if let Some(value) = text.strip_suffix(" wide") {
        return said(Statement::new("drawings-value-wide"), value);
    }
    if let Some(value) = text.strip_suffix(" high") {
        return said(Statement::new("drawings-value-high"), value);
    }
    if let Some(Ok(turns)) = text.strip_suffix(" turns").map(str::parse) {
        return reader.say(&Statement::new("drawings-value-turns").count("turns", turns)).into_owned();
    }
    match text.strip_suffix(')').and_then(|text| text.split_once(" (")) {
        Some((value, of)) => {
            let of = member("construction", of, reader).unwrap_or_default();
            format!("{} ({of})", format_one(field, value, reader))
        }
        None => format_one(field, text, reader),
    }
}

/// A quantity, a member of a closed list, or a number.
fn format_one(field: &str, text: &str, reader: Reader) -> String {
    if let Ok(length) = parse::<Length>(text) {
        return match length.si.get::<meter>().abs() {
            fine if fine < FINE_BELOW_METRES && fine > 0.0 => format_fine(length.si.into(), reader),
            small if small < PLAN_FROM_METRES => format_detail(length.si.into(), reader),
            _ => format_plan(length.si.into(), reader),
        };
    }
    if let Ok(temperature) = parse::<Temperature>(text) {
        return format_temperature(temperature.si.into(), reader);
    }
    if let Ok(volume) = parse::<Volume>(text) {
        let volume = VolumeValue::from(volume.si);
        return match reader.system {
            UnitSystem::UsCustomary => reader.with_unit(&volume.fl_oz().to_string(), "fl oz"),
            UnitSystem::Metric => reader.with_unit(&volume.ml().to_string(), "ml"),
        };
    }
    if let Some(label) = member(field, text, reader) {
        return label;
    }
    match text.split_once(' ') {
        Some((number, unit)) if number.parse::<f64>().is_ok() => {
            let signs: Vec<_> = unit.split('/').map(|unit| unit_sign(unit, reader.language)).collect();
            reader.with_unit(number, if unit == "%" { "percent".to_owned() } else { signs.join("/") }.as_str())
        }
        _ => reader.decimal(text),
    }
}

/// The name of the member that a field holds, as it stands in a sentence.
fn member(field: &str, code: &str, reader: Reader) -> Option<String> {
    fn find<V: Vocabulary>(code: &str, reader: Reader) -> Option<String> {
        let found = V::ALL.iter().find(|member| member.code() == code)?;
        Some(reader.label(*found).to_lowercase())
    }
    match field {
        "construction" => find::<Construction>(code, reader),
        "corner" => find::<Corner>(code, reader),
        "damp_slot_allowed" => {
            let is_allowed = if code == "true" { "yes" } else { "no" };
            Some(reader.say(&Statement::new("drawings-value-allowed").code("allowed", is_allowed)).into_owned())
        }
        "envelope" => find::<DetectorEnvelope>(code, reader),
        "form" => find::<RodForm>(code, reader),
        "kind" => find::<SealantKind>(code, reader),
        "leaf_open" => find::<LeafOpen>(code, reader),
        "roles" => find::<Role>(code, reader),
        "shape" => find::<Shape>(code, reader),
        "surface" => find::<Surface>(code, reader),
        "surface_condition" => find::<SurfaceCondition>(code, reader),
        "unit_side" => find::<UnitSide>(code, reader),
        "vehicles" => find::<VehicleClass>(code, reader),
        "wiring" => find::<Wiring>(code, reader),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::format_value;
    use crate::quantity::UnitSystem::{Metric, UsCustomary};
    use crate::wording::{Language, Reader};

    fn plain(field: &str, text: &str, reader: Reader) -> String {
        format_value(field, text, reader).replace(['\u{a0}', '\u{202f}'], " ")
    }

    #[test]
    fn values_are_shown_in_the_system_of_the_crew() {
        for (field, text, system, expected) in [
            ("along_travel", "6 ft", Metric, "1.83 m"),
            ("along_travel", "6 ft", UsCustomary, "6 ft"),
            ("depth", "1-1/2 in", Metric, "38 mm"),
            ("blade_diameter", "14 in", Metric, "356 mm"),
            ("size", "0.1875 in x 14 in", UsCustomary, "3/16 in × 14 in"),
            ("width", "4.7625 mm", UsCustomary, "3/16 in"),
            ("width", "0.3125 in", UsCustomary, "5/16 in"),
            ("surface", "40 °F", Metric, "4.4 °C"),
            ("cartridge", "29 fl oz", Metric, "858 ml"),
            ("gauge", "14 AWG", Metric, "14 AWG"),
            ("inductance", "0.22 uH/ft", Metric, "0.22 µH/ft"),
            ("envelope", "standard_minimum", UsCustomary, "standard minimum"),
            ("over_jacket", "0.13 in wide, 0.39 in high", UsCustomary, "0.13 in wide, 0.39 in high"),
            ("diameter", "6.35 mm or 9.525 mm", UsCustomary, "1/4 in or 3/8 in"),
            ("size", "4 ft x 8 ft, 3 turns, 43 ft", Metric, "1.22 m × 2.44 m, 3 turns, 13.11 m"),
            ("roles", "exit, obstruction_inside", Metric, "exit; obstruction, inside"),
        ] {
            assert_eq!(plain(field, text, Reader::new(system, Language::English)), expected);
        }
    }

    #[test]
    fn values_are_written_as_the_language_writes_them() {
        for (field, text, spanish, french) in [
            ("over_jacket", "0.13 in wide", "0.13 in de ancho", "0,13 in de largeur"),
            ("diameter", "1/4 in or 3/8 in", "1/4 in o 3/8 in", "1/4 in ou 3/8 in"),
            ("inductance", "0.22 uH/ft", "0.22 µH/ft", "0,22 µH/ft"),
            ("size", "4 ft x 8 ft, 1 turns", "4 ft × 8 ft, 1 vuelta", "4 ft × 8 ft, 1 tour"),
        ] {
            let words = |language| plain(field, text, Reader::new(UsCustomary, language));
            assert_eq!((words(Language::Spanish), words(Language::French)), (spanish.to_owned(), french.to_owned()));
        }
    }
}

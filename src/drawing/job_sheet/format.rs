//! The wording of the page: times, quantities and messages.

use maud::{Markup, html};
use uom::si::length::meter;

use crate::calculation::report::{Finding, Subject};
use crate::drawing::codes::format_code;
use crate::drawing::dimension_text::{format_detail, format_plan};
use crate::drawing::report_text::group_by_message;
use crate::practice::finding_codes::Level;
use crate::quantity::dimension::{Length, Temperature, Volume};
use crate::quantity::format::{format_count, format_temperature};
use crate::quantity::output::VolumeValue;
use crate::quantity::{UnitSystem, parse};
use crate::vocabulary::Vocabulary;

/// Lengths from here on are shown in feet or metres, shorter ones in inches or millimetres. A choice made here.
const PLAN_FROM_METRES: f64 = 0.3;

/// The name of the loop that a finding is about.
fn format_subject(subject: &Subject) -> String {
    match subject {
        Subject::Role(role) => role.label().to_owned(),
        Subject::Label(label) => label.clone(),
    }
}

/// A time of a report to the minute, without its offset: `2026-01-20 14:04`.
pub fn format_time(rfc3339: &str) -> String {
    rfc3339.chars().take(16).map(|letter| if letter == 'T' { ' ' } else { letter }).collect()
}

/// A quantity of a material in its unit: `24 cartridges`, `203 m`, `6`.
pub fn format_amount(quantity: u64, unit: &str) -> String {
    match unit {
        "each" => quantity.to_string(),
        "cartridge" | "spool" | "lot" => format_count(quantity as f64, unit),
        _ => format!("{quantity}\u{a0}{unit}"),
    }
}

/// A value as a request holds it, in words and in the unit system of the crew.
pub fn format_value(text: &str, system: UnitSystem) -> String {
    if let Ok(length) = parse::<Length>(text) {
        return match length.system == system {
            true => text.to_owned(),
            false if length.si.get::<meter>() < PLAN_FROM_METRES => format_detail(length.si.into(), system),
            false => format_plan(length.si.into(), system),
        };
    }
    if let Ok(temperature) = parse::<Temperature>(text) {
        return format_temperature(temperature.si, system);
    }
    match (parse::<Volume>(text).map(|volume| VolumeValue::from(volume.si)), system) {
        (Ok(volume), UnitSystem::UsCustomary) => format!("{} fl oz", volume.fl_oz()),
        (Ok(volume), UnitSystem::Metric) => format!("{} ml", volume.ml()),
        (Err(_), _) => format_code(text),
    }
}

/// The messages of the findings of a level that pass, each once, with the loops that it is about.
pub fn findings_of(all: &[Finding], level: Level, passes: impl Fn(&Finding) -> bool) -> Vec<(Vec<String>, &str)> {
    group_by_message(all.iter().filter(|finding| finding.level == level && passes(finding)), |finding| {
        finding.subject.as_ref().map(format_subject)
    })
}

/// Messages as a list, each after the loops that it is about.
pub fn message_list(messages: &[(Vec<String>, &str)]) -> Markup {
    html! {
        ul {
            @for (subjects, message) in messages {
                li { @if !subjects.is_empty() { b { (subjects.join(", ")) ": " } } (message) }
            }
        }
    }
}

/// A box to tick by hand.
pub fn tick_box() -> Markup {
    html! { span.box { } }
}

#[cfg(test)]
mod tests {
    use super::{format_amount, format_time, format_value};
    use crate::quantity::UnitSystem;

    #[test]
    fn assumed_values_are_shown_in_the_system_of_the_crew() {
        for (text, system, expected) in [
            ("6 ft", UnitSystem::Metric, "1.83 m"),
            ("6 ft", UnitSystem::UsCustomary, "6 ft"),
            ("1-1/2 in", UnitSystem::Metric, "38 mm"),
            ("40 °F", UnitSystem::Metric, "4.4 °C"),
            ("29 fl oz", UnitSystem::Metric, "858 ml"),
            ("14 AWG", UnitSystem::Metric, "14 AWG"),
            ("standard_minimum", UnitSystem::UsCustomary, "standard minimum"),
        ] {
            assert_eq!(format_value(text, system).replace('\u{a0}', " "), expected);
        }
    }

    #[test]
    fn times_and_amounts_are_shown_in_words() {
        assert_eq!(format_time("2026-01-20T14:04:00-05:00"), "2026-01-20 14:04");
        assert_eq!(
            (format_amount(24, "cartridge"), format_amount(6, "each")),
            ("24 cartridges".to_owned(), "6".to_owned())
        );
    }
}

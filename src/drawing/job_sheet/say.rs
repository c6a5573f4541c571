//! The words of the sheet: names for codes, times as a clock shows them, quantities as the crew says them.

use maud::{Markup, html};
use uom::si::length::meter;

use crate::calculation::report::Finding;
use crate::drawing::units;
use crate::practice::findings::Level;
use crate::practice::roles::Role;
use crate::quantity::dimension::{Length, Temperature, Volume};
use crate::quantity::format::{format_count, format_temperature};
use crate::quantity::output::VolumeValue;
use crate::quantity::{UnitSystem, parse};
use crate::vocabulary::Vocabulary;

/// Lengths from here on are said in feet or metres, shorter ones in inches or millimetres. A choice made here.
const PLAN_FROM_METRES: f64 = 0.3;

/// The label of a code; a code that the list does not hold, in words.
pub fn label<V: Vocabulary>(code: &str) -> String {
    V::ALL.iter().find(|member| member.code() == code).map_or_else(|| words(code), |member| member.label().to_owned())
}

/// The name of a loop: of its role, and its place in a row.
pub fn role(code: &str) -> String {
    match code.rsplit_once(' ') {
        Some((role, place)) => format!("{} {place}", label::<Role>(role)),
        None => label::<Role>(code),
    }
}

/// The loops of a channel: labels joined by ` + `.
pub fn channel(labels: &str) -> String {
    labels.split(" + ").map(role).collect::<Vec<_>>().join(" + ")
}

/// A code in words.
pub fn words(code: &str) -> String {
    code.replace('_', " ")
}

/// A time of a report to the minute, without its offset: `2026-01-20 14:04`.
pub fn time(rfc3339: &str) -> String {
    rfc3339.chars().take(16).map(|letter| if letter == 'T' { ' ' } else { letter }).collect()
}

/// So much of a unit of materials: `24 cartridges`, `203 m`, `6`.
pub fn amount(quantity: u64, unit: &str) -> String {
    match unit {
        "each" => quantity.to_string(),
        "cartridge" | "spool" | "lot" => format_count(quantity as f64, unit),
        _ => format!("{quantity}\u{a0}{unit}"),
    }
}

/// A value as a request holds it, in words and in the system of the crew.
pub fn value(text: &str, system: UnitSystem) -> String {
    if let Ok(length) = parse::<Length>(text) {
        return match length.system == system {
            true => text.to_owned(),
            false if length.si.get::<meter>() < PLAN_FROM_METRES => units::small(length.si.into(), system),
            false => units::plan(length.si.into(), system),
        };
    }
    if let Ok(temperature) = parse::<Temperature>(text) {
        return format_temperature(temperature.si, system);
    }
    match (parse::<Volume>(text).map(|volume| VolumeValue::from(volume.si)), system) {
        (Ok(volume), UnitSystem::UsCustomary) => format!("{} fl oz", volume.fl_oz),
        (Ok(volume), UnitSystem::Metric) => format!("{} ml", volume.ml),
        (Err(_), _) => words(text),
    }
}

/// The findings of a level that pass, each message once, with the loops that it is about.
pub fn findings(all: &[Finding], level: Level, passes: impl Fn(&Finding) -> bool) -> Vec<(Vec<String>, &str)> {
    let mut said: Vec<(Vec<String>, &str)> = Vec::new();
    for finding in all.iter().filter(|finding| finding.level == level && passes(finding)) {
        let about = finding.subject.as_deref().map(role);
        match said.iter_mut().find(|(_, message)| *message == finding.message) {
            Some((others, _)) => others.extend(about),
            None => said.push((about.into_iter().collect(), &finding.message)),
        }
    }
    said
}

/// Findings as a list.
pub fn list(said: &[(Vec<String>, &str)]) -> Markup {
    html! {
        ul {
            @for (about, message) in said {
                li { @if !about.is_empty() { b { (about.join(", ")) ": " } } (message) }
            }
        }
    }
}

/// A box to be ticked by hand.
pub fn tick() -> Markup {
    html! { span.box { } }
}

#[cfg(test)]
mod tests {
    use super::{amount, channel, role, time, value};
    use crate::quantity::UnitSystem;

    #[test]
    fn assumed_values_speak_the_system_of_the_crew() {
        for (text, system, said) in [
            ("6 ft", UnitSystem::Metric, "1.83 m"),
            ("6 ft", UnitSystem::UsCustomary, "6 ft"),
            ("1-1/2 in", UnitSystem::Metric, "38 mm"),
            ("40 °F", UnitSystem::Metric, "4.4 °C"),
            ("29 fl oz", UnitSystem::Metric, "858 ml"),
            ("14 AWG", UnitSystem::Metric, "14 AWG"),
            ("standard_minimum", UnitSystem::UsCustomary, "standard minimum"),
        ] {
            assert_eq!(value(text, system).replace('\u{a0}', " "), said);
        }
    }

    #[test]
    fn loops_and_times_are_said_as_people_say_them() {
        assert_eq!(role("exit 2"), "Exit 2");
        assert_eq!(channel("exit + presence 1"), "Exit + Presence 1");
        assert_eq!(time("2026-01-20T14:04:00-05:00"), "2026-01-20 14:04");
        assert_eq!((amount(24, "cartridge"), amount(6, "each")), ("24 cartridges".to_owned(), "6".to_owned()));
    }
}

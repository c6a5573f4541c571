//! Facts as they stand in a sentence.

use std::borrow::Cow;

use fluent_bundle::FluentValue;
use uom::si::volume::{fluid_ounce, milliliter};

use super::catalog::FactForm;
use super::language::Language;
use super::members::{description_of, label_of};
use super::numbers::{self, decimal, with_unit};
use crate::calculation::report::{Decimals, FactValue, ListJoin, MemberFact};
use crate::quantity::UnitSystem;
use crate::quantity::format::{
    format_detail_length, format_duration, format_length, format_temperature, format_temperature_difference,
};
use crate::quantity::output::round;

/// A fact in one of its forms; `None` where it has no such form, and for phrases, which are sentences of their own. A count stays a
/// number, for plurals depend on it.
pub fn argument(fact: &FactValue, form: FactForm, language: Language) -> Option<FluentValue<'_>> {
    let of_member = |member: &MemberFact| match form {
        FactForm::Words => Some(in_a_sentence(member, language).into()),
        FactForm::Code => Some(member.code.into()),
        FactForm::Label => Some(label_of(member, language).into()),
        FactForm::Description => Some(description_of(member, language).into()),
        FactForm::Number => None,
    };
    match fact {
        FactValue::Member(member) => of_member(member),
        FactValue::Code(code) => (form == FactForm::Words).then(|| (*code).into()),
        FactValue::Text(text) => (form == FactForm::Words).then(|| text.as_ref().into()),
        FactValue::Members(members) => match form {
            FactForm::Words => Some(join(members.iter().map(|member| in_a_sentence(member, language))).into()),
            FactForm::Code => Some(join(members.iter().map(|member| member.code.to_owned())).into()),
            FactForm::Label => Some(join(members.iter().map(|member| label_of(member, language).to_owned())).into()),
            FactForm::Number | FactForm::Description => None,
        },
        FactValue::Phrases(..) => None,
        FactValue::Count(count) => (form == FactForm::Words).then(|| (*count).into()),
        quantity => match form {
            FactForm::Words => Some(quantity_words(quantity, language).into()),
            FactForm::Number => {
                let words = quantity_words(quantity, Language::English);
                // A number has no space in English.
                let number = words.split_once(' ').map_or(words.as_str(), |(number, _)| number);
                Some(decimal(number, language).into_owned().into())
            }
            FactForm::Code | FactForm::Label | FactForm::Description => None,
        },
    }
}

/// The name of a member within a sentence.
fn in_a_sentence(member: &MemberFact, language: Language) -> String {
    label_of(member, language).to_lowercase()
}

/// Phrases in a row.
pub fn join_phrases(phrases: &[Cow<'static, str>], join: ListJoin, language: Language) -> String {
    phrases.join(match (join, language) {
        (ListJoin::Comma, _) => ", ",
        (ListJoin::Semicolon, _) => "; ",
        (ListJoin::And, Language::English) => " and ",
        (ListJoin::And, Language::Spanish) => " y ",
        (ListJoin::And, Language::French) => " et ",
        (ListJoin::Or, Language::English) => " or ",
        (ListJoin::Or, Language::Spanish) => " o ",
        (ListJoin::Or, Language::French) => " ou ",
    })
}

fn join(items: impl Iterator<Item = String>) -> String {
    items.collect::<Vec<_>>().join(", ")
}

fn quantity_words(quantity: &FactValue, language: Language) -> String {
    let words = match quantity {
        FactValue::Number { value, decimals, unit } => return number_words(*value, *decimals, *unit, language),
        FactValue::Length(value, system) => format_length(*value, *system),
        FactValue::DetailLength(value, mark, system) => format_detail_length(*value, *mark, *system),
        FactValue::Temperature(value, system) => format_temperature(*value, *system),
        FactValue::TemperatureDifference(value, system) => format_temperature_difference(*value, *system),
        FactValue::Duration(value) => format_duration(*value),
        FactValue::Volume(value, UnitSystem::UsCustomary) => {
            return number_words(value.get::<fluid_ounce>(), Decimals::AtMost(1), Some("fl oz"), language);
        }
        FactValue::Volume(value, UnitSystem::Metric) => {
            return number_words(value.get::<milliliter>(), Decimals::AtMost(0), Some("ml"), language);
        }
        FactValue::Phrases(..)
        | FactValue::Count(_)
        | FactValue::Code(_)
        | FactValue::Member(_)
        | FactValue::Members(_)
        | FactValue::Text(_) => String::new(),
    };
    numbers::quantity(words, language)
}

fn number_words(value: f64, decimals: Decimals, unit: Option<&str>, language: Language) -> String {
    let number = match decimals {
        Decimals::Fixed(decimals) => format!("{value:.decimals$}"),
        Decimals::AtMost(decimals) => round(value, decimals).to_string(),
        Decimals::All => value.to_string(),
    };
    match unit {
        Some(unit) => with_unit(&number, unit, language),
        None => decimal(&number, language).into_owned(),
    }
}

#[cfg(test)]
mod tests {
    use uom::si::f64::{Length, TemperatureInterval, ThermodynamicTemperature, Time, Volume};
    use uom::si::length::meter;
    use uom::si::temperature_interval::kelvin;
    use uom::si::thermodynamic_temperature::degree_celsius;
    use uom::si::time::hour;
    use uom::si::volume::liter;

    use super::*;
    use crate::calculation::report::{Param, Statement};
    use crate::practice::sealants::SealantKind;
    use crate::practice::vehicles::VehicleClass;
    use crate::quantity::UnitSystem::{Metric, UsCustomary};

    fn words(statement: &Statement, form: FactForm) -> Vec<Option<String>> {
        let text = |value| match value {
            FluentValue::String(text) => text.into_owned(),
            FluentValue::Number(number) => number.as_string().into_owned(),
            other => panic!("{other:?}"),
        };
        let facts = statement.facts().iter();
        facts.map(|fact| argument(&fact.value, form, Language::English).map(text)).collect()
    }

    fn quantities() -> Statement {
        Statement::new("errors-null")
            .number("plain", 2.0, 2)
            .number("trimmed", 2.0, Decimals::AtMost(2))
            .number("all", 0.125, Decimals::All)
            .quantity("inductance", 97.26, 1, "uH")
            .percent("share", 12.34, 0)
            .length("width", Length::new::<meter>(3.9), Metric)
            .length("width", Length::new::<meter>(3.9), UsCustomary)
            .detail_length("cover", Length::new::<meter>(0.0353), UsCustomary)
            .temperature("air", ThermodynamicTemperature::new::<degree_celsius>(-3.5), UsCustomary)
            .temperature_difference("rise", TemperatureInterval::new::<kelvin>(3.0), UsCustomary)
            .duration("cure", Time::new::<hour>(3.5))
            .volume("cartridge", Volume::new::<liter>(0.8576), UsCustomary)
            .volume("cartridge", Volume::new::<liter>(0.8576), Metric)
    }

    #[test]
    fn a_quantity_has_its_unit_and_can_do_without() {
        let said = [
            "2.00", "2", "0.125", "97.3 µH", "12 %", "3.9 m", "12.8 ft", "1-3/8 in", "25.7 °F", "5.4 °F", "3.5 h",
            "29 fl oz", "858 ml",
        ];
        assert_eq!(words(&quantities(), FactForm::Words), said.map(|text| Some(text.to_owned())));
        let numbers = said.map(|text| text.split(' ').next().map(str::to_owned));
        assert_eq!(words(&quantities(), FactForm::Number), numbers);
        assert!(words(&quantities(), FactForm::Code).iter().all(Option::is_none));
    }

    #[test]
    fn a_quantity_is_published_in_the_unit_of_the_reader() {
        let published: Vec<_> =
            Param::of(&[&quantities()]).into_iter().map(|param| (param.number.unwrap(), param.unit.unwrap())).collect();
        let expected = [
            (2.0, "ratio"),
            (2.0, "ratio"),
            (0.125, "ratio"),
            (97.26, "uH"),
            (12.34, "percent"),
            (3.9, "m"),
            (12.795, "ft"),
            (1.39, "in"),
            (25.7, "fahrenheit"),
            (5.4, "fahrenheit"),
            (3.5, "h"),
            (28.999, "fl oz"),
            (857.6, "ml"),
        ];
        assert_eq!(published, expected);
    }

    #[test]
    fn members_have_words_a_code_and_a_label() {
        let statement = Statement::new("errors-null")
            .member("class", VehicleClass::PassengerCar)
            .members("classes", &[VehicleClass::PassengerCar, VehicleClass::LargeMotorcycle])
            .code("outcome", "doubtful")
            .text("sku", "A-1")
            .count("days", 3);
        let said = |form| words(&statement, form).into_iter().map(Option::unwrap_or_default).collect::<Vec<_>>();
        assert_eq!(said(FactForm::Words), ["passenger car", "passenger car, large motorcycle", "doubtful", "A-1", "3"]);
        assert_eq!(said(FactForm::Code), ["passenger_car", "passenger_car, large_motorcycle", "", "", ""]);
        assert_eq!(said(FactForm::Label), ["Passenger car", "Passenger car, Large motorcycle", "", "", ""]);
        let codes: Vec<_> = Param::of(&[&statement]).into_iter().filter_map(|param| param.code).collect();
        assert_eq!(codes, ["passenger_car", "passenger_car", "large_motorcycle", "doubtful"]);
        assert_ne!(statement, statement.clone().member("kind", SealantKind::DEFAULT));
    }

    #[test]
    fn what_reads_alike_is_one_statement() {
        let with = |value| {
            Statement::new("errors-null").percent("share", value, 0).length(
                "width",
                Length::new::<meter>(value),
                Metric,
            )
        };
        assert_eq!(with(1.0), with(1.0 + 1e-9));
        assert_ne!(with(1.0), with(1.01));
    }
}

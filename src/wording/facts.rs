//! Facts as they stand in a sentence. What another language writes in another way (the decimal mark, the sign of percent) changes
//! here.

use std::borrow::Cow;

use fluent_bundle::FluentValue;
use uom::si::volume::{fluid_ounce, milliliter};

use super::language::Language;
use crate::calculation::report::{Decimals, FactValue, ListJoin, MemberFact};
use crate::quantity::UnitSystem;
use crate::quantity::format::{
    format_detail_length, format_duration, format_length, format_temperature, format_temperature_difference,
};
use crate::quantity::output::round;

/// How a variable shows its fact.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FactForm {
    /// `$low`: in words, a number with its unit.
    Words,
    /// `$low-number`: a number without its unit.
    Number,
    /// `$class-code`: the code of a member, to choose between alternatives.
    Code,
    /// `$class-label`: the name of a member as in a menu.
    Label,
    /// `$step-description`: what a member means, in a sentence.
    Description,
}

impl FactForm {
    /// The form of a suffix.
    pub fn of_suffix(suffix: &str) -> Option<Self> {
        match suffix {
            "number" => Some(Self::Number),
            "code" => Some(Self::Code),
            "label" => Some(Self::Label),
            "description" => Some(Self::Description),
            _ => None,
        }
    }
}

/// A fact in one of its forms; `None` where it has no such form, and for phrases, which are sentences of their own. A count stays a number, for plurals depend on it.
pub fn argument(fact: &FactValue, form: FactForm, language: Language) -> Option<FluentValue<'_>> {
    let Language::English = language;
    let of_member = |member: &MemberFact| match form {
        FactForm::Words => Some(member.label.to_lowercase().into()),
        FactForm::Code => Some(member.code.into()),
        FactForm::Label => Some(member.label.into()),
        FactForm::Description => Some(member.description.into()),
        FactForm::Number => None,
    };
    match fact {
        FactValue::Member(member) => of_member(member),
        FactValue::Code(code) => (form == FactForm::Words).then(|| (*code).into()),
        FactValue::Text(text) => (form == FactForm::Words).then(|| text.as_ref().into()),
        FactValue::Members(members) => match form {
            FactForm::Words => Some(join(members.iter().map(|member| member.label.to_lowercase())).into()),
            FactForm::Code => Some(join(members.iter().map(|member| member.code.to_owned())).into()),
            FactForm::Label => Some(join(members.iter().map(|member| member.label.to_owned())).into()),
            FactForm::Number | FactForm::Description => None,
        },
        FactValue::Phrases(..) => None,
        FactValue::Count(count) => (form == FactForm::Words).then(|| (*count).into()),
        quantity => {
            let words = quantity_words(quantity);
            match form {
                FactForm::Words => Some(words.into()),
                // A number has no space in English.
                FactForm::Number => {
                    Some(words.split_once(' ').map_or(words.as_str(), |(number, _)| number).to_owned().into())
                }
                FactForm::Code | FactForm::Label | FactForm::Description => None,
            }
        }
    }
}

/// Phrases in a row.
pub fn join_phrases(phrases: &[Cow<'static, str>], join: ListJoin, language: Language) -> String {
    let Language::English = language;
    phrases.join(match join {
        ListJoin::Comma => ", ",
        ListJoin::Semicolon => "; ",
        ListJoin::And => " and ",
        ListJoin::Or => " or ",
    })
}

fn join(items: impl Iterator<Item = String>) -> String {
    items.collect::<Vec<_>>().join(", ")
}

fn quantity_words(quantity: &FactValue) -> String {
    match quantity {
        FactValue::Number { value, decimals, unit } => number_words(*value, *decimals, *unit),
        FactValue::Length(value, system) => format_length(*value, *system),
        FactValue::DetailLength(value, system) => format_detail_length(*value, *system),
        FactValue::Temperature(value, system) => format_temperature(*value, *system),
        FactValue::TemperatureDifference(value, system) => format_temperature_difference(*value, *system),
        FactValue::Duration(value) => format_duration(*value),
        FactValue::Volume(value, UnitSystem::UsCustomary) => {
            number_words(value.get::<fluid_ounce>(), Decimals::AtMost(1), Some("fl oz"))
        }
        FactValue::Volume(value, UnitSystem::Metric) => {
            number_words(value.get::<milliliter>(), Decimals::AtMost(0), Some("ml"))
        }
        FactValue::Phrases(..)
        | FactValue::Count(_)
        | FactValue::Code(_)
        | FactValue::Member(_)
        | FactValue::Members(_)
        | FactValue::Text(_) => String::new(),
    }
}

fn number_words(value: f64, decimals: Decimals, unit: Option<&str>) -> String {
    let number = match decimals {
        Decimals::Fixed(decimals) => format!("{value:.decimals$}"),
        Decimals::AtMost(decimals) => round(value, decimals).to_string(),
        Decimals::All => value.to_string(),
    };
    unit.map_or_else(|| number.clone(), |unit| format!("{number} {}", unit_words(unit)))
}

/// The sign of a unit that `figures` name in plain letters.
fn unit_words(unit: &str) -> &str {
    match unit {
        "percent" => "%",
        "uH" => "µH",
        "celsius" => "°C",
        "fahrenheit" => "°F",
        "inch" => "in",
        other => other,
    }
}

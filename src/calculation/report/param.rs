//! The facts of a sentence as they are published, for programs that make sentences of their own.

use std::borrow::Cow;

use serde::Serialize;
use uom::si::{
    length::{foot, inch, meter, millimeter},
    temperature_interval, thermodynamic_temperature as temperature,
    time::hour,
    volume::{fluid_ounce, milliliter},
};
use utoipa::ToSchema;

use super::statement::{Fact, FactValue, Statement};
use crate::quantity::UnitSystem;
use crate::quantity::output::round;

/// One thing that the words of a statement hold: `number` with `unit`, `code`, or `text`. A list has an entry for each member.
#[derive(Clone, Debug, Default, PartialEq, Serialize, ToSchema)]
pub struct Param {
    /// What it is.
    #[schema(pattern = "^[a-z0-9_]+$")]
    pub name: &'static str,
    /// The number, in its unit, 3 decimals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<f64>,
    /// The unit of the number, `ratio` where there is none. A length or a temperature has that of the reader.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_length = 1)]
    pub unit: Option<&'static str>,
    /// A member of a closed list, or which of several wordings was taken.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_length = 1)]
    pub code: Option<&'static str>,
    /// Text of the request, or a name or a value as it stands in requests.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub text: Option<Cow<'static, str>>,
}

impl Param {
    /// The facts of statements that are published together, each name once.
    pub fn of(statements: &[&Statement]) -> Vec<Self> {
        let mut params = Vec::new();
        for statement in statements {
            let mut own = Vec::new();
            statement.facts().iter().for_each(|fact| Self::extend(&mut own, fact));
            statement.more().iter().for_each(|next| own.extend(Self::of(&[next])));
            own.retain(|param| params.iter().all(|known: &Self| known.name != param.name));
            params.append(&mut own);
        }
        params
    }

    fn extend(params: &mut Vec<Self>, fact: &Fact) {
        let name = fact.name;
        let number =
            |value: f64, unit| Self { name, number: Some(round(value, 3)), unit: Some(unit), ..Self::default() };
        let in_system = |system: &UnitSystem, us: (f64, &'static str), metric: (f64, &'static str)| {
            let (value, unit) = match system {
                UnitSystem::UsCustomary => us,
                UnitSystem::Metric => metric,
            };
            number(value, unit)
        };
        let code = |code| Self { name, code: Some(code), ..Self::default() };
        params.push(match &fact.value {
            FactValue::Number { value, unit, .. } => number(*value, unit.unwrap_or("ratio")),
            FactValue::Count(count) => number(*count as f64, "count"),
            FactValue::Length(value, system) => {
                in_system(system, (value.get::<foot>(), "ft"), (value.get::<meter>(), "m"))
            }
            FactValue::DetailLength(value, _, system) => {
                in_system(system, (value.get::<inch>(), "in"), (value.get::<millimeter>(), "mm"))
            }
            FactValue::Temperature(value, system) => in_system(
                system,
                (value.get::<temperature::degree_fahrenheit>(), "fahrenheit"),
                (value.get::<temperature::degree_celsius>(), "celsius"),
            ),
            FactValue::TemperatureDifference(value, system) => in_system(
                system,
                (value.get::<temperature_interval::degree_fahrenheit>(), "fahrenheit"),
                (value.get::<temperature_interval::degree_celsius>(), "celsius"),
            ),
            FactValue::Duration(value) => number(value.get::<hour>(), "h"),
            FactValue::Volume(value, system) => {
                in_system(system, (value.get::<fluid_ounce>(), "fl oz"), (value.get::<milliliter>(), "ml"))
            }
            FactValue::Code(of) => code(of),
            FactValue::Member(member) => code(member.code),
            FactValue::Members(members) => return params.extend(members.iter().map(|member| code(member.code))),
            FactValue::Phrases(phrases, _) => {
                return phrases.iter().for_each(|phrase| params.extend(Self::of(&[phrase])));
            }
            FactValue::Text(text) => Self { name, text: Some(text.clone()), ..Self::default() },
        });
    }
}

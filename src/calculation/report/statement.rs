//! What is said, apart from the words: the id of a sentence and the facts that it holds. [`crate::wording`] has the sentences.

use std::borrow::Cow;

use uom::si::f64 as si;

use crate::quantity::UnitSystem;
use crate::quantity::format::TapeReading;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A sentence without its words.
///
/// ```
/// use loopwright::calculation::report::Statement;
///
/// let statement = Statement::new("characteristics-high-resistance")
///     .quantity("dc_resistance", 5.21, 1, "ohm")
///     .quantity("limit", 4.0, 0, "ohm");
/// assert_eq!(statement.facts().len(), 2);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Statement {
    id: &'static str,
    facts: Vec<Fact>,
    more: Vec<Statement>,
}

/// One thing that a sentence holds.
#[derive(Clone, Debug, PartialEq)]
pub struct Fact {
    /// What it is, in `snake_case`: the variable of the sentence, and the name in `params`.
    pub name: &'static str,
    /// The thing.
    pub value: FactValue,
}

/// How many decimals of a number are said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Decimals {
    /// So many, with zeros at the end.
    Fixed(usize),
    /// At most so many, without zeros at the end.
    AtMost(i32),
    /// As many as it has.
    All,
}

/// A member of a closed list: a code, and the short name and the sentence that go with it in English.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MemberFact {
    /// The name of the list.
    pub list: &'static str,
    /// The value in requests and reports.
    pub code: &'static str,
    /// The name in a menu.
    pub label: &'static str,
    /// What it means, in a sentence.
    pub description: &'static str,
}

/// What a sentence can hold: unrounded, in typed quantities, each with the system of its reader.
#[derive(Clone, Debug)]
pub enum FactValue {
    /// A number, and its unit as `figures` name it.
    Number {
        /// The number, in its unit.
        value: f64,
        /// How it is said.
        decimals: Decimals,
        /// The unit; none for a plain number.
        unit: Option<&'static str>,
    },
    /// How many there are: what plurals depend on.
    Count(u64),
    /// A plan length.
    Length(si::Length, UnitSystem),
    /// A small length, and the mark of a tape that it is read at.
    DetailLength(si::Length, TapeReading, UnitSystem),
    /// A temperature.
    Temperature(si::ThermodynamicTemperature, UnitSystem),
    /// A difference of temperatures.
    TemperatureDifference(si::TemperatureInterval, UnitSystem),
    /// A duration.
    Duration(si::Time),
    /// A volume.
    Volume(si::Volume, UnitSystem),
    /// A code that chooses between alternatives of the sentence.
    Code(&'static str),
    /// A member of a closed list.
    Member(MemberFact),
    /// Members of a closed list.
    Members(Vec<MemberFact>),
    /// Phrases, each with an id and facts of its own, in a row.
    Phrases(Vec<Statement>, ListJoin),
    /// The caller's own text, or a field's name or value as it stands in requests.
    Text(Cow<'static, str>),
}

/// What stands between the phrases of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListJoin {
    /// A comma.
    Comma,
    /// A semicolon, for phrases that hold commas.
    Semicolon,
    /// The word "and".
    And,
    /// The word "or".
    Or,
}

impl Statement {
    /// The sentence of an id, which stands here as a literal so that a test can find it.
    pub const fn new(id: &'static str) -> Self {
        Self { id, facts: Vec::new(), more: Vec::new() }
    }

    /// The id of the sentence; empty where the words are given.
    pub fn id(&self) -> &'static str {
        self.id
    }

    /// What it holds.
    pub fn facts(&self) -> &[Fact] {
        &self.facts
    }

    /// The fact of a name.
    pub fn fact(&self, name: &str) -> Option<&FactValue> {
        self.facts.iter().find(|fact| fact.name == name).map(|fact| &fact.value)
    }

    /// The whole sentences that follow it.
    pub fn more(&self) -> &[Self] {
        &self.more
    }

    /// Adds a whole sentence behind it. What is only a part of a sentence is a [`Statement::phrase`].
    #[must_use]
    pub fn followed_by(mut self, next: Self) -> Self {
        self.more.push(next);
        self
    }

    /// Adds a fact of any kind.
    #[must_use]
    pub fn with(mut self, name: &'static str, value: FactValue) -> Self {
        self.facts.push(Fact { name, value });
        self
    }

    /// Adds a number without a unit.
    #[must_use]
    pub fn number(self, name: &'static str, value: f64, decimals: impl Into<Decimals>) -> Self {
        self.with(name, FactValue::Number { value, decimals: decimals.into(), unit: None })
    }

    /// Adds a number with a unit, as `figures` name it: `uH`, `ohm`, `kHz`.
    #[must_use]
    pub fn quantity(self, name: &'static str, value: f64, decimals: impl Into<Decimals>, unit: &'static str) -> Self {
        self.with(name, FactValue::Number { value, decimals: decimals.into(), unit: Some(unit) })
    }

    /// Adds a share, in percent.
    #[must_use]
    pub fn percent(self, name: &'static str, value: f64, decimals: impl Into<Decimals>) -> Self {
        self.quantity(name, value, decimals, "percent")
    }

    /// Adds how many there are.
    #[must_use]
    pub fn count(self, name: &'static str, count: u64) -> Self {
        self.with(name, FactValue::Count(count))
    }

    /// Adds a plan length: feet or metres.
    #[must_use]
    pub fn length(self, name: &'static str, length: si::Length, system: UnitSystem) -> Self {
        self.with(name, FactValue::Length(length, system))
    }

    /// Adds a small length: inches or millimetres.
    #[must_use]
    pub fn detail_length(self, name: &'static str, length: si::Length, system: UnitSystem) -> Self {
        self.with(name, FactValue::DetailLength(length, TapeReading::Nearest, system))
    }

    /// Adds a small length that must not be less.
    #[must_use]
    pub fn detail_length_at_least(self, name: &'static str, length: si::Length, system: UnitSystem) -> Self {
        self.with(name, FactValue::DetailLength(length, TapeReading::AtLeast, system))
    }

    /// Adds a small length that must not be more.
    #[must_use]
    pub fn detail_length_at_most(self, name: &'static str, length: si::Length, system: UnitSystem) -> Self {
        self.with(name, FactValue::DetailLength(length, TapeReading::AtMost, system))
    }

    /// Adds a temperature.
    #[must_use]
    pub fn temperature(self, name: &'static str, value: si::ThermodynamicTemperature, system: UnitSystem) -> Self {
        self.with(name, FactValue::Temperature(value, system))
    }

    /// Adds a difference of temperatures.
    #[must_use]
    pub fn temperature_difference(
        self,
        name: &'static str,
        value: si::TemperatureInterval,
        system: UnitSystem,
    ) -> Self {
        self.with(name, FactValue::TemperatureDifference(value, system))
    }

    /// Adds a duration.
    #[must_use]
    pub fn duration(self, name: &'static str, value: si::Time) -> Self {
        self.with(name, FactValue::Duration(value))
    }

    /// Adds a volume: fluid ounces or millilitres.
    #[must_use]
    pub fn volume(self, name: &'static str, value: si::Volume, system: UnitSystem) -> Self {
        self.with(name, FactValue::Volume(value, system))
    }

    /// Adds a code that chooses between alternatives of the sentence.
    #[must_use]
    pub fn code(self, name: &'static str, code: &'static str) -> Self {
        self.with(name, FactValue::Code(code))
    }

    /// Adds a member of a closed list.
    #[must_use]
    pub fn member(self, name: &'static str, member: impl Vocabulary) -> Self {
        self.with(name, FactValue::Member(MemberFact::of(member)))
    }

    /// Adds members of a closed list.
    #[must_use]
    pub fn members<V: Vocabulary>(self, name: &'static str, members: &[V]) -> Self {
        self.with(name, FactValue::Members(members.iter().copied().map(MemberFact::of).collect()))
    }

    /// Adds a phrase that stands in the sentence.
    #[must_use]
    pub fn phrase(self, name: &'static str, phrase: Self) -> Self {
        self.phrases(name, vec![phrase], ListJoin::Comma)
    }

    /// Adds phrases that stand in the sentence in a row.
    #[must_use]
    pub fn phrases(self, name: &'static str, phrases: Vec<Self>, join: ListJoin) -> Self {
        self.with(name, FactValue::Phrases(phrases, join))
    }

    /// Adds the caller's own text, or a name or a value as it stands in requests.
    #[must_use]
    pub fn text(self, name: &'static str, text: impl Into<Cow<'static, str>>) -> Self {
        self.with(name, FactValue::Text(text.into()))
    }
}

impl MemberFact {
    /// What is said of a member.
    pub fn of<V: Vocabulary>(member: V) -> Self {
        Self { list: V::NAME, code: member.code(), label: member.label(), description: member.description() }
    }
}

impl From<i32> for Decimals {
    fn from(decimals: i32) -> Self {
        Self::Fixed(decimals.unsigned_abs() as usize)
    }
}

impl PartialEq for FactValue {
    /// As the reader sees them: two parts of a plan that find the same by ways that round differently say it once.
    fn eq(&self, other: &Self) -> bool {
        let near = |one: f64, two: f64| round(one, 3) == round(two, 3);
        match (self, other) {
            (Self::Number { value, decimals, unit }, Self::Number { value: v, decimals: d, unit: u }) => {
                near(*value, *v) && decimals == d && unit == u
            }
            (Self::Count(one), Self::Count(two)) => one == two,
            (Self::Length(one, system), Self::Length(two, s)) => near(1e3 * one.value, 1e3 * two.value) && system == s,
            (Self::DetailLength(one, mark, system), Self::DetailLength(two, m, s)) => {
                near(1e3 * one.value, 1e3 * two.value) && mark == m && system == s
            }
            (Self::Temperature(one, system), Self::Temperature(two, s)) => near(one.value, two.value) && system == s,
            (Self::TemperatureDifference(one, system), Self::TemperatureDifference(two, s)) => {
                near(one.value, two.value) && system == s
            }
            (Self::Duration(one), Self::Duration(two)) => near(one.value, two.value),
            (Self::Volume(one, system), Self::Volume(two, s)) => near(1e6 * one.value, 1e6 * two.value) && system == s,
            (Self::Code(one), Self::Code(two)) => one == two,
            (Self::Member(one), Self::Member(two)) => one == two,
            (Self::Members(one), Self::Members(two)) => one == two,
            (Self::Phrases(one, join), Self::Phrases(two, j)) => one == two && join == j,
            (Self::Text(one), Self::Text(two)) => one == two,
            _ => false,
        }
    }
}

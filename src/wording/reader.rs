//! Whom a page or a drawing is written for.

use std::borrow::Cow;

use super::language::Language;
use super::members::MemberIn;
use super::numbers::{colon, decimal, with_unit};
use super::say::say;
use crate::calculation::report::Statement;
use crate::quantity::UnitSystem;
use crate::vocabulary::Vocabulary;

/// The units and the language of a reader.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reader {
    /// The units.
    pub system: UnitSystem,
    /// The language.
    pub language: Language,
}

impl Reader {
    /// A reader.
    pub const fn new(system: UnitSystem, language: Language) -> Self {
        Self { system, language }
    }

    /// The words of a statement.
    pub fn say(self, statement: &Statement) -> Cow<'static, str> {
        say(statement, self.language)
    }

    /// What stands between a name and what is said of it.
    pub fn colon(self) -> &'static str {
        colon(self.language)
    }

    /// The name of a member of a closed list.
    pub fn label(self, member: impl Vocabulary) -> &'static str {
        member.label_in(self.language)
    }

    /// What a member of a closed list means.
    pub fn description(self, member: impl Vocabulary) -> &'static str {
        member.description_in(self.language)
    }

    /// A number as the language writes it.
    pub fn number(self, number: f64) -> String {
        self.decimal(&number.to_string())
    }

    /// A number, which is written with a decimal point, as the language writes it.
    pub fn decimal(self, number: &str) -> String {
        decimal(number, self.language).into_owned()
    }

    /// A number with its unit, on one line.
    pub fn with_unit(self, number: &str, unit: &str) -> String {
        with_unit(number, unit, self.language).replace(' ', "\u{a0}")
    }
}

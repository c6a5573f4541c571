//! The statements that every report carries in the same shape.

use std::borrow::Cow;
use std::fmt;

use serde::{Serialize, Serializer};
use uom::si::f64::Length;
use uom::si::length::{foot, meter};
use utoipa::ToSchema;

use super::FieldPath;
use super::message::{Message, has_messages};
use super::param::Param;
use crate::practice::Sourced;
use crate::practice::cautions::CautionCode;
use crate::practice::finding_codes::{FindingCode, Level};
use crate::practice::roles::Role;
use crate::practice::sources::Source;
use crate::quantity::UnitSystem;
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A number that a finding rests on.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct Figure {
    /// What the number is.
    pub name: &'static str,
    /// The number, in its unit.
    pub value: f64,
    /// The unit, or `ratio` where there is none.
    pub unit: &'static str,
}

/// The loop that a statement is about.
#[derive(Clone, Debug, PartialEq)]
pub enum Subject {
    /// The loop of a role.
    Role(Role),
    /// A loop by the caller's own name.
    Label(String),
}

impl From<Role> for Subject {
    fn from(role: Role) -> Self {
        Self::Role(role)
    }
}

impl fmt::Display for Subject {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            Self::Role(role) => role.code(),
            Self::Label(label) => label,
        })
    }
}

impl Serialize for Subject {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

/// One statement about the job.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct Finding {
    /// The statement, for a program; a `code` of `reference/findings`.
    #[schema(value_type = String)]
    pub code: FindingCode,
    /// How much it weighs: `note`, `warning` or `stop`.
    #[schema(value_type = String)]
    pub level: Level,
    /// The field of the request that it is about, as a JSON Pointer in a URI fragment.
    pub about: String,
    /// The role or label of the loop that it is about; absent when it is about the whole job.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub subject: Option<Subject>,
    /// The statement, for a person, with what to do next.
    #[schema(value_type = String)]
    pub message: Message,
    /// What the message holds, for programs that have their own words.
    pub params: Vec<Param>,
    /// The numbers that it rests on.
    pub figures: Vec<Figure>,
    /// Fields that could be sent to learn more or to have it otherwise, as JSON Pointers in URI fragments; absent when there are none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub send: Vec<String>,
    /// Where the rule and the figures come from.
    #[schema(value_type = Vec<String>)]
    pub source_ids: Vec<Source>,
}

impl Finding {
    /// A statement without figures, about the whole job.
    pub fn new(code: FindingCode, level: Level, at: &FieldPath<'_>, message: impl Into<Message>) -> Self {
        Self::at(code, level, at.pointer(), message)
    }

    /// The same, at a pointer that is written already.
    pub fn at(code: FindingCode, level: Level, about: String, message: impl Into<Message>) -> Self {
        let message = message.into();
        Self {
            code,
            level,
            about,
            subject: None,
            params: message.params(),
            message,
            figures: Vec::new(),
            send: Vec::new(),
            source_ids: code.sources().to_vec(),
        }
    }

    /// Makes it a statement about one loop.
    #[must_use]
    pub fn on(mut self, subject: Option<impl Into<Subject>>) -> Self {
        self.subject = subject.map(Into::into);
        self
    }

    /// Names a field that could be sent to learn more, or to have it otherwise.
    #[must_use]
    pub fn send(mut self, at: &FieldPath<'_>) -> Self {
        self.send.push(at.pointer());
        self
    }

    /// Adds a length that it rests on, in the system of the reader.
    #[must_use]
    pub fn length(self, name: &'static str, length: Length, system: UnitSystem) -> Self {
        match system {
            UnitSystem::UsCustomary => self.figure(name, length.get::<foot>(), "ft"),
            UnitSystem::Metric => self.figure(name, length.get::<meter>(), "m"),
        }
    }

    /// Adds a number that it rests on, rounded to three decimals.
    #[must_use]
    pub fn figure(mut self, name: &'static str, value: f64, unit: &'static str) -> Self {
        self.figures.push(Figure { name, value: round(value, 3), unit });
        self
    }
}

has_messages! {
    Finding: message;
    Assumed: reason;
    Caution: message;
    Basis: sources;
    SourceEntry: label, description;
}

/// A default that stood in for a field that was not sent.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct Assumed {
    /// The field, as a JSON Pointer in a URI fragment.
    pub about: String,
    /// The value that was used, as it would be written in a request.
    pub value: Cow<'static, str>,
    /// Why this value.
    #[schema(value_type = String)]
    pub reason: Message,
    /// Where it comes from.
    #[schema(value_type = Vec<String>)]
    pub source_ids: Vec<Source>,
}

/// What can hurt someone on this job.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct Caution {
    /// The caution, for a program.
    #[schema(value_type = String)]
    pub code: CautionCode,
    /// The caution, for a person.
    #[schema(value_type = String)]
    pub message: Message,
    /// Where it comes from.
    #[schema(value_type = Vec<String>)]
    pub source_ids: &'static [Source],
}

/// An entry of the register of sources.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct SourceEntry {
    /// The id that `source_ids` name.
    #[schema(value_type = String)]
    pub id: Source,
    /// A short name.
    #[schema(value_type = String)]
    pub label: Message,
    /// The document, law or practice.
    #[schema(value_type = String)]
    pub description: Message,
}

/// What the figures of a report rest on.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
pub struct Basis {
    /// The release that computed the figures.
    pub engine: &'static str,
    /// The sources that this report used.
    pub sources: Vec<SourceEntry>,
}

//! What can be wrong with the structure of a body, and what is said of it.

use serde::de::{Expected, Unexpected};

use crate::api::json_limits::JsonLimits;
use crate::calculation::report::{FieldError, FieldErrorCode, ListJoin, MAX_NAME_CHARS, Statement};

/// One fault of structure: a value that is not what the request has at that place.
pub enum StructureFault<'a> {
    /// A name that the object does not have.
    UnknownField {
        /// As it was sent.
        name: &'a str,
        /// The names that the object has.
        known: &'a [&'static str],
    },
    /// A required field that was not sent.
    MissingField(&'a str),
    /// A name that stands in its object already.
    DuplicateField(&'a str),
    /// A text that is no member of a closed list.
    UnknownValue {
        /// As it was sent.
        value: &'a str,
        /// The members.
        known: &'a [&'static str],
    },
    /// A text that no id can begin with.
    NoIdPrefix {
        /// As it was sent.
        value: &'a str,
        /// How long one may be.
        max_characters: usize,
    },
    /// A `null` where a value belongs.
    Null,
    /// A list longer than any may be.
    TooManyItems(JsonLimits),
    /// A number that is none of those that count.
    NoSuchInteger(Unexpected<'a>),
    /// A value of another JSON type.
    WrongType {
        /// The code of the type that was sent.
        sent: &'static str,
        /// The type that the field has.
        expected: &'a dyn Expected,
    },
}

impl StructureFault<'_> {
    /// The fault as it is answered, at the pointer of what it is about.
    pub fn at(&self, pointer: String) -> FieldError {
        let (code, detail, hint) = self.statements();
        FieldError::at(pointer, code, detail, hint).suggesting(self.suggestion())
    }

    /// The member of a closed list that was meant, if it is one alone.
    fn suggestion(&self) -> Option<String> {
        let Self::UnknownValue { value, known } = self else { return None };
        match members_meant(cut(value).trim(), known).as_deref() {
            Some([name]) => Some((*name).to_owned()),
            _ => None,
        }
    }

    fn statements(&self) -> (FieldErrorCode, Statement, Statement) {
        match self {
            Self::UnknownField { name, known } => {
                let hint = match nearest(name, known) {
                    Some(name) => Statement::new("errors-did-you-mean").text("meant", name),
                    None => Statement::new("errors-known-fields").text("known", known.join(", ")),
                };
                let detail = Statement::new("errors-field-unknown").text("field", cut(name));
                (FieldErrorCode::FieldUnknown, detail, hint)
            }
            Self::MissingField(name) => {
                let of_field = |statement: Statement| statement.text("field", cut(name));
                let detail = of_field(Statement::new("errors-field-missing"));
                (FieldErrorCode::FieldMissing, detail, of_field(Statement::new("errors-add-field")))
            }
            Self::DuplicateField(name) => {
                let detail = Statement::new("errors-field-twice").text("field", cut(name));
                (FieldErrorCode::FieldDuplicate, detail, Statement::new("errors-send-once"))
            }
            Self::UnknownValue { value, known } => {
                let value = cut(value).trim().to_owned();
                let hint = listed_values(&value, known);
                let detail = Statement::new("errors-value-unknown").text("value", value);
                (FieldErrorCode::ValueUnknown, detail, hint)
            }
            Self::NoIdPrefix { value, max_characters } => {
                let detail = Statement::new("errors-id-prefix").text("value", cut(value));
                let hint = Statement::new("errors-send-id-prefix").count("max_characters", *max_characters as u64);
                (FieldErrorCode::TextForm, detail, hint)
            }
            Self::Null => {
                let detail = Statement::new("errors-null");
                (FieldErrorCode::NullNotAllowed, detail, Statement::new("errors-send-value"))
            }
            Self::TooManyItems(limits) => {
                let of_limit = |statement: Statement| statement.count("max_items", limits.items as u64);
                let detail = of_limit(Statement::new("errors-list-too-long"));
                (FieldErrorCode::ListSize, detail, of_limit(Statement::new("errors-send-fewer-items")))
            }
            Self::NoSuchInteger(sent) => {
                let detail = Statement::new("errors-value-not-taken").text("value", number_in(*sent));
                (FieldErrorCode::OutOfRange, detail, Statement::new("errors-send-whole-number"))
            }
            Self::WrongType { sent, expected } => {
                let expected = || expected_type(&expected.to_string());
                let detail = Statement::new("errors-type-wrong").code("sent", sent).phrase("expected", expected());
                let hint = Statement::new("errors-send-type").phrase("expected", expected());
                (FieldErrorCode::TypeWrong, detail, hint)
            }
        }
    }
}

/// The members of a closed list, with those that may have been meant.
fn listed_values(value: &str, known: &[&'static str]) -> Statement {
    let list = Statement::new("errors-known-values").text("known", known.join(", "));
    let Some(names) = members_meant(value, known) else { return list };
    let name = |name: &'static str| Statement::new("errors-meant").text("meant", name);
    let names = names.into_iter().map(name).collect();
    Statement::new("errors-did-you-mean").phrases("meant", names, ListJoin::Or).followed_by(list)
}

/// The members of a closed list that a value may stand for.
fn members_meant(value: &str, known: &[&'static str]) -> Option<Vec<&'static str>> {
    // A name out of a menu is written otherwise: "Slide gate".
    let code: String =
        value.to_lowercase().chars().map(|letter| if letter.is_alphanumeric() { letter } else { '_' }).collect();
    // All members with that word are named: a guess between them could be dangerous.
    match names_containing(&code, known) {
        words if words.is_empty() => nearest(&code, known).map(|name| vec![name]),
        words => Some(words),
    }
}

/// A number as it stands between the backticks of serde's words for it.
fn number_in(sent: Unexpected<'_>) -> String {
    let words = sent.to_string();
    words.split('`').nth(1).unwrap_or(&words).to_owned()
}

/// What serde expects, without the names of Rust types.
fn expected_type(expected: &str) -> Statement {
    let of = |code| Statement::new("errors-type").code("type", code);
    match expected {
        "a string" | "string" => of("text"),
        "f64" => of("number"),
        "u32" | "u64" | "usize" => of("whole_number"),
        "a boolean" => of("truth_value"),
        "a sequence" => of("array"),
        "" => of("other"),
        expected if expected.starts_with("struct ") || expected == "a map" => of("object"),
        expected if expected.starts_with("enum ") || expected == "string or map" => of("listed_text"),
        // As our own types of text say it.
        expected => match expected.split_once(" as text, such as ") {
            Some((kind, example)) => Statement::new("errors-type-of-text")
                .text("dimension", kind.to_owned())
                .text("example", example.trim_matches('"').to_owned()),
            None => Statement::new("errors-type-other").text("type", expected.to_owned()),
        },
    }
}

/// A name as it is shown, at most [`MAX_NAME_CHARS`] long.
fn cut(name: &str) -> String {
    name.chars().take(MAX_NAME_CHARS).collect()
}

/// A member of the object at a pointer, its name cut and escaped (RFC 6901).
pub fn child(pointer: &str, name: &str) -> String {
    format!("{pointer}/{}", cut(name).replace('~', "~0").replace('/', "~1"))
}

/// Names that contain the text as one of their words: `car` for `passenger_car`.
fn names_containing(name: &str, known: &[&'static str]) -> Vec<&'static str> {
    let is_word = |other: &&&str| !name.is_empty() && format!("_{other}_").contains(&format!("_{name}_"));
    known.iter().filter(is_word).copied().collect()
}

/// The known name that a wrong one resembles most, if it is near enough.
pub fn nearest(name: &str, known: &[&'static str]) -> Option<&'static str> {
    let name = cut(name);
    let most = |other: &str| 1 + other.len() / 4;
    // The distance is at least the difference in length, so most are never measured.
    let may_be_near = |other: &&&str| name.chars().count().abs_diff(other.chars().count()) <= most(other);
    let measured = |other: &&'static str| (strsim::damerau_levenshtein(&name, other), *other);
    let near = known.iter().filter(may_be_near).map(measured);
    near.min_by_key(|(distance, _)| *distance)
        .filter(|(distance, other)| *distance <= most(other))
        .map(|(_, name)| name)
}

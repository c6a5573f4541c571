//! Why a request cannot be computed: every fault, each with its place and what to send instead.

use std::collections::BTreeMap;

use serde::Serialize;
use utoipa::ToSchema;
use validator::{ValidationError, ValidationErrors, ValidationErrorsKind};

use super::FieldPath;
use super::message::{Message, has_messages};
use super::param::Param;
use super::statement::Statement;
use crate::quantity::text::MAX_CHARS;
use crate::quantity::{CommaMeaning, QuantityError, QuantityErrorCode, QuantityFault};
use crate::vocabulary::{Vocabulary, vocabulary};

vocabulary! {
    /// What can be wrong with one field.
    FieldErrorCode {
        UnitMissing "unit_missing" "Unit missing" "The quantity has no unit. Send text with a number and a unit.";
        UnitUnknown "unit_unknown" "Unit unknown" "The unit is not one that is read here. The field's description lists those that are.";
        UnitWrongDimension "unit_wrong_dimension" "Unit of another dimension" "The unit measures something else than this field holds.";
        DecimalComma "decimal_comma" "Decimal comma" "The comma in the number may stand for thousands: three digits follow it, or there are several marks. Send a point for decimals and no thousands separator.";
        NumberInvalid "number_invalid" "Number invalid" "No number can be read: a number may be 7; 7.2; 7,2; 3/16 or 1-1/4, in at most 40 characters, without exponent.";
        OutOfRange "out_of_range" "Out of range" "The value lies outside what the field allows, where the models hold.";
        ListSize "list_size" "List size" "The list has too few or too many items.";
        TextSize "text_size" "Text size" "The text is empty or too long.";
        TextForm "text_form" "Text form" "The text has a form that the field does not take. The hint says what it takes.";
        TimeInvalid "time_invalid" "Time invalid" "The text is no time in the form of RFC 3339 with an offset, or no date, from 1970 to 2200.";
        TimeOrder "time_order" "Times out of order" "Times of a list must rise from row to row; the same instant may stand once.";
        TimeGap "time_gap" "Gap between times" "The row is too far from the one before: weather is not guessed across a gap.";
        FieldMissing "field_missing" "Field missing" "A field that is needed was not sent.";
        FieldUnknown "field_unknown" "Field unknown" "The field does not exist here. Correct its name or leave it out.";
        FieldDuplicate "field_duplicate" "Field sent twice" "The same field stands twice in one object. Send it once.";
        ValueUnknown "value_unknown" "Value unknown" "The value is not one of the closed list. The hint gives the list.";
        NullNotAllowed "null_not_allowed" "Null" "A required field, an item of a list or an entry of a map is null. An optional field may be null, and counts as absent.";
        TypeWrong "type_wrong" "Wrong JSON type" "The field takes another JSON type.";
        Contradiction "contradiction" "Contradiction" "Two fields cannot both hold.";
        ForecastOff "forecast_off" "Forecasts are off" "A place was sent for its forecast, but the operator of this instance has set no weather service. Send the weather hour by hour instead.";
        ForecastNotCovered "forecast_not_covered" "No forecast for the place" "The weather service has no hourly forecast for the place. Check the signs of latitude and longitude, or send the weather hour by hour instead.";
    }
}

/// One field that cannot be used.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
#[schema(as = Fault)]
pub struct FieldError {
    /// The field, as a JSON Pointer (RFC 6901) in a URI fragment: `#/opening/width`.
    #[schema(pattern = "^#(/|$)")]
    pub pointer: String,
    /// The parameter of the query that it is about, where a link was asked; the pointer then leads into the body that it stands for.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_length = 1)]
    pub parameter: Option<String>,
    /// The reason, for a program; a `code` of `reference/problems`.
    #[schema(pattern = "^[a-z_]+$")]
    pub code: &'static str,
    /// The reason, for a person.
    #[schema(value_type = String, min_length = 1)]
    pub detail: Message,
    /// What to send instead.
    #[schema(value_type = String, min_length = 1)]
    pub hint: Message,
    /// Text that would pass in this field and was likely meant: show it as a choice, and send it only when a person has taken it.
    /// Absent where it cannot be told what was meant.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(min_length = 1)]
    pub suggestion: Option<String>,
    /// What detail and hint hold, for programs that have their own words.
    pub params: Vec<Param>,
}

impl FieldError {
    /// A fault at a place.
    pub fn new(at: &FieldPath<'_>, code: FieldErrorCode, detail: Statement, hint: Statement) -> Self {
        Self::at(at.pointer(), code, detail, hint)
    }

    /// The same, at a pointer that is written already.
    pub fn at(pointer: String, code: FieldErrorCode, detail: Statement, hint: Statement) -> Self {
        let params = Param::of(&[&detail, &hint]);
        let (code, detail, hint) = (code.code(), detail.into(), hint.into());
        Self { pointer, parameter: None, code, detail, hint, suggestion: None, params }
    }

    /// The same, with a text that would pass instead.
    #[must_use]
    pub fn suggesting(self, suggestion: Option<String>) -> Self {
        Self { suggestion, ..self }
    }

    /// A quantity text that could not be read.
    pub fn of_text(at: &FieldPath<'_>, error: QuantityError) -> Self {
        let code = match error.code {
            QuantityErrorCode::UnitMissing => FieldErrorCode::UnitMissing,
            QuantityErrorCode::UnitUnknown => FieldErrorCode::UnitUnknown,
            QuantityErrorCode::UnitWrongDimension => FieldErrorCode::UnitWrongDimension,
            QuantityErrorCode::DecimalComma => FieldErrorCode::DecimalComma,
            QuantityErrorCode::NumberInvalid => FieldErrorCode::NumberInvalid,
            QuantityErrorCode::OutOfRange => FieldErrorCode::OutOfRange,
        };
        let suggestion = error.suggestion.clone();
        let (detail, hint) = statements_of(error);
        Self::new(at, code, detail, hint).suggesting(suggestion)
    }

    /// Whether the fault is one of its field alone, whatever the others hold.
    pub fn concerns_one_field(&self) -> bool {
        let depends_on_others = [
            FieldErrorCode::TimeOrder,
            FieldErrorCode::TimeGap,
            FieldErrorCode::FieldMissing,
            FieldErrorCode::Contradiction,
            FieldErrorCode::ForecastOff,
            FieldErrorCode::ForecastNotCovered,
        ];
        depends_on_others.iter().all(|code| code.code() != self.code)
    }
}

/// What is said of a quantity text, and what to send instead.
fn statements_of(error: QuantityError) -> (Statement, Statement) {
    let QuantityError { fault, text, dimension, examples: &[us, metric], suggestion, .. } = error;
    let like =
        |hint: Statement| hint.code("dimension", dimension).text("us_example", us).text("metric_example", metric);
    let meant = suggestion.map(|meant| like(Statement::new("errors-meant-quantity").text("suggestion", meant)));
    let of_number = || meant.clone().unwrap_or_else(|| like(Statement::new("errors-write-number")));
    let of_unit = || meant.clone().unwrap_or_else(|| like(Statement::new("errors-write-quantity")));
    let about = |detail: Statement| detail.code("dimension", dimension);
    match fault {
        QuantityFault::TooLong => {
            (Statement::new("errors-text-too-long").count("max_characters", MAX_CHARS as u64), of_number())
        }
        QuantityFault::NotWhole => (Statement::new("errors-unit-counts-whole"), of_number()),
        QuantityFault::NoNumber => (about(Statement::new("errors-no-number")).text("text", text), of_number()),
        QuantityFault::BadForm(plain) => (Statement::new("errors-number-form").text("text", plain), of_number()),
        QuantityFault::Comma(meaning) => {
            let hint = match meaning {
                CommaMeaning::Decimals(point) => Statement::new("errors-write-point").text("with_point", point),
                CommaMeaning::Thousands(joined) => {
                    Statement::new("errors-write-joined").text("without_separator", joined)
                }
                CommaMeaning::Either(readings) => {
                    let [joined, point] = *readings;
                    Statement::new("errors-write-joined-or-point")
                        .text("without_separator", joined)
                        .text("with_point", point)
                }
                CommaMeaning::Unclear => like(Statement::new("errors-write-without-comma")),
            };
            (Statement::new("errors-comma").text("text", text), hint)
        }
        QuantityFault::UnitMissing => (about(Statement::new("errors-no-unit")).text("text", text), of_unit()),
        QuantityFault::UnitUnknown(unit) => (Statement::new("errors-unit-unknown").text("unit", unit), of_unit()),
        QuantityFault::Parts => (Statement::new("errors-parts").text("text", text), of_unit()),
        QuantityFault::UnitWrongDimension(unit) => {
            (about(Statement::new("errors-unit-wrong-dimension")).text("unit", unit), of_unit())
        }
        QuantityFault::OutOfRange([least, greatest]) => {
            let in_range = |statement: Statement| statement.text("least", least).text("greatest", greatest);
            (
                in_range(Statement::new("errors-out-of-range").text("text", text)),
                in_range(like(Statement::new("errors-send-in-range"))),
            )
        }
    }
}

has_messages! {
    FieldError: detail, hint;
    InvalidRequest: errors;
}

/// All that is wrong with a request.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InvalidRequest {
    /// The faults, in the order in which they were found; not empty.
    pub errors: Vec<FieldError>,
}

/// Flattens the tree of the validation library into faults with pointers.
pub fn errors_of_validation(validation: &ValidationErrors, base: &str, errors: &mut Vec<FieldError>) {
    // The library keeps fields in no order; by name, the same request always gets the same answer.
    let sorted: BTreeMap<_, _> = validation.errors().iter().collect();
    for (field, kind) in sorted {
        // A field whose name is a keyword of Rust comes as a raw identifier.
        let pointer = format!("{base}/{}", field.trim_start_matches("r#"));
        match kind {
            ValidationErrorsKind::Field(list) => {
                errors.extend(list.iter().map(|error| error_of_validation(error, pointer.clone())));
            }
            ValidationErrorsKind::Struct(inner) => errors_of_validation(inner, &pointer, errors),
            ValidationErrorsKind::List(items) => {
                for (index, inner) in items {
                    errors_of_validation(inner, &format!("{pointer}/{index}"), errors);
                }
            }
        }
    }
}

fn error_of_validation(error: &ValidationError, pointer: String) -> FieldError {
    let bound = |name: &str| error.params.get(name).map(ToString::to_string);
    let is_list = error.params.get("value").is_some_and(serde_json::Value::is_array);
    let (code, things) = match (error.code.as_ref(), is_list) {
        ("length", true) => (FieldErrorCode::ListSize, "items"),
        ("length", false) => (FieldErrorCode::TextSize, "characters"),
        _ => (FieldErrorCode::OutOfRange, "none"),
    };
    let (least, greatest) = (bound("min"), bound("max"));
    let bounds = match (&least, &greatest) {
        (Some(_), Some(_)) => "both",
        (Some(_), None) => "least",
        (None, Some(_)) => "greatest",
        (None, None) => "none",
    };
    let with_bounds = |statement: Statement| {
        let statement = statement.code("bounds", bounds).code("things", things);
        let bounds = [("least", &least), ("greatest", &greatest)];
        bounds.into_iter().fold(statement, |statement, (name, bound)| match bound {
            Some(bound) => statement.text(name, bound.clone()),
            None => statement,
        })
    };
    FieldError::at(
        pointer,
        code,
        with_bounds(Statement::new("errors-not-allowed")),
        with_bounds(Statement::new("errors-send-allowed")),
    )
}

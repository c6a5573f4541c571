//! Why a request cannot be computed: every fault, each with its place and what to send instead.

use std::collections::BTreeMap;

use serde::Serialize;
use utoipa::ToSchema;
use validator::{ValidationError, ValidationErrors, ValidationErrorsKind};

use super::FieldPath;
use crate::quantity::{QuantityError, QuantityErrorCode};
use crate::vocabulary::{Vocabulary, vocabulary};

vocabulary! {
    /// What can be wrong with one field.
    FieldErrorCode {
        UnitMissing "unit_missing" "Unit missing" "The quantity has no unit. Send text with a number and a unit.";
        UnitUnknown "unit_unknown" "Unit unknown" "The unit is not one that is read here. The field's description lists those that are.";
        UnitWrongDimension "unit_wrong_dimension" "Unit of another dimension" "The unit measures something else than this field holds.";
        DecimalComma "decimal_comma" "Decimal comma" "The number has a comma. Send a point for decimals and no thousands separator.";
        NumberInvalid "number_invalid" "Number invalid" "No number can be read: a number may be 7, 7.2, 3/16 or 1-1/4, in at most 40 characters, without exponent.";
        OutOfRange "out_of_range" "Out of range" "The value lies outside what the field allows, where the models hold.";
        ListSize "list_size" "List size" "The list has too few or too many items.";
        TextSize "text_size" "Text size" "The text is empty or too long.";
        TimeInvalid "time_invalid" "Time invalid" "The text is no time in the form of RFC 3339 with an offset, or no date, from 1970 to 2200.";
        TimeOrder "time_order" "Times out of order" "Times of a list must rise from row to row; the same instant may stand once.";
        TimeGap "time_gap" "Gap between times" "The row is too far from the one before: weather is not guessed across a gap.";
        FieldMissing "field_missing" "Field missing" "A field that is needed was not sent.";
        FieldUnknown "field_unknown" "Field unknown" "The field does not exist here. Correct its name or leave it out.";
        FieldDuplicate "field_duplicate" "Field sent twice" "The same field stands twice in one object. Send it once.";
        ValueUnknown "value_unknown" "Value unknown" "The value is not one of the closed list. The hint gives the list.";
        NullNotAllowed "null_not_allowed" "Null" "No field takes null. Leave the field out instead.";
        TypeWrong "type_wrong" "Wrong JSON type" "The field takes another JSON type.";
        Contradiction "contradiction" "Contradiction" "Two fields cannot both hold.";
        ForecastOff "forecast_off" "Forecasts are off" "A place was sent for its forecast, but the operator of this instance has set no weather service. Send weather.conditions instead.";
        ForecastNotCovered "forecast_not_covered" "No forecast for the place" "The weather service has no hourly forecast for the place. Check the signs of latitude and longitude, or send weather.conditions instead.";
    }
}

/// One field that cannot be used.
#[derive(Clone, Debug, PartialEq, Serialize, ToSchema)]
#[schema(as = Fault)]
pub struct FieldError {
    /// The field, as a JSON Pointer (RFC 6901) in a URI fragment: `#/opening/width`.
    #[schema(pattern = "^#(/|$)")]
    pub pointer: String,
    /// The reason, for a program; a `code` of `reference/problems`.
    #[schema(pattern = "^[a-z_]+$")]
    pub code: &'static str,
    /// The reason, for a person.
    #[schema(min_length = 1)]
    pub detail: String,
    /// What to send instead.
    #[schema(min_length = 1)]
    pub hint: String,
}

impl FieldError {
    /// A fault at a place.
    pub fn new(at: &FieldPath<'_>, code: FieldErrorCode, detail: impl Into<String>, hint: impl Into<String>) -> Self {
        Self { pointer: at.pointer(), code: code.code(), detail: detail.into(), hint: hint.into() }
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
        Self::new(at, code, error.detail, error.hint)
    }
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
        ("length", true) => (FieldErrorCode::ListSize, " items"),
        ("length", false) => (FieldErrorCode::TextSize, " characters"),
        _ => (FieldErrorCode::OutOfRange, ""),
    };
    let allowed = match (bound("min"), bound("max")) {
        (Some(min), Some(max)) => format!("from {min} to {max}{things}"),
        (Some(min), None) => format!("at least {min}{things}"),
        (None, Some(max)) => format!("at most {max}{things}"),
        (None, None) => "another value".to_owned(),
    };
    FieldError {
        pointer,
        code: code.code(),
        detail: format!("The value lies outside what this field allows: {allowed}."),
        hint: format!("Send {allowed}."),
    }
}

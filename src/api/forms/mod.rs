//! Forms: all that a page needs to draw one for a request, as one document in the language of its caller.
//!
//! - `row`: what is written by hand of a field: section, audience, label, help, default
//! - `sizing`, `plan`: the fields of each form, in order
//! - `request_schema`: what is derived from the request: kinds, menus, bounds, what is required
//! - `usual_sizes`: sizes that defaults are said with
//! - `quantities`: units, ranges and defaults in both systems
//! - `menus`: options in a language
//! - `shape`: the document

mod menus;
mod plan;
mod quantities;
mod request_schema;
mod row;
pub mod shape;
mod sizing;
mod usual_sizes;

use std::collections::BTreeMap;

use actix_web::{HttpRequest, HttpResponse};
use serde_json::Number;
use tokio::sync::OnceCell;

use super::compute::for_request;
use super::content_language::{self, PerLanguage};
use super::problem::Problem;
use super::respond::{cached_document, json_text};
use super::response_body::CachedDocument;
use crate::calculation::Calculation;
use crate::calculation::installation_plan::InstallationPlanRequest;
use crate::calculation::loop_sizing::LoopSizingRequest;
use crate::calculation::report::Statement;
use crate::wording::{Language, say};
use request_schema::{RequestValue, ValueKind, values_of};
use row::{FieldDefault, Row, Section};
use shape::{FormField, FormSection, OptionDefault, RequestForm};

/// The capacity reserved for the text of a form, bytes.
const CAPACITY: usize = 64 * 1024;

/// How many fields the description shows.
const EXAMPLE_FIELDS: usize = 3;

/// A request that has a form.
pub trait HasForm: Calculation {
    /// The name of the operation in generated clients.
    const FORM_OPERATION_ID: &'static str;
    /// What the form is for, in a phrase.
    const FORM_SUMMARY: &'static str;

    /// The fields, in order.
    fn rows() -> Vec<Row>;

    /// The documents, each written for the first who asks.
    fn documents() -> &'static PerLanguage<OnceCell<CachedDocument>>;
}

impl HasForm for LoopSizingRequest {
    const FORM_OPERATION_ID: &'static str = "get_loop_sizing_form";
    const FORM_SUMMARY: &'static str = "A form for the loops of an opening";

    fn rows() -> Vec<Row> {
        sizing::rows()
    }

    fn documents() -> &'static PerLanguage<OnceCell<CachedDocument>> {
        static DOCUMENTS: PerLanguage<OnceCell<CachedDocument>> = PerLanguage::new();
        &DOCUMENTS
    }
}

impl HasForm for InstallationPlanRequest {
    const FORM_OPERATION_ID: &'static str = "get_installation_plan_form";
    const FORM_SUMMARY: &'static str = "A form for a whole job";

    fn rows() -> Vec<Row> {
        plan::rows()
    }

    fn documents() -> &'static PerLanguage<OnceCell<CachedDocument>> {
        static DOCUMENTS: PerLanguage<OnceCell<CachedDocument>> = PerLanguage::new();
        &DOCUMENTS
    }
}

/// Something to do for each form: add a route, describe an operation.
pub trait FormVisitor {
    /// Called once for each form, in order.
    fn visit<C: HasForm>(&mut self);
}

/// The list of all forms.
pub fn visit_all(visitor: &mut impl FormVisitor) {
    visitor.visit::<LoopSizingRequest>();
    visitor.visit::<InstallationPlanRequest>();
}

/// The path of the form of a request.
pub fn path<C: HasForm>() -> String {
    format!("/v1/forms/{}", C::NAME)
}

/// Answers with a form, written and packed for the first who asks in a language, on the pool.
///
/// # Errors
/// 503 when the pool has no place.
pub async fn show<C: HasForm>(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let language = content_language::of_request(&request);
    let render = move |_| -> Result<CachedDocument, Problem> {
        let text = json_text(&form::<C>(language), CAPACITY)?;
        Ok(CachedDocument::new(text, "application/json").in_language(language).packed())
    };
    let document = C::documents().get_or_init(language, OnceCell::new);
    let document = document.get_or_try_init(|| async { for_request::run(&request, render).await? }).await?;
    Ok(cached_document(document, &request))
}

/// The form of a request in a language.
pub fn form<C: HasForm>(language: Language) -> RequestForm {
    let (rows, values) = (C::rows(), values_of::<C>());
    let is_used = |section: &&Section| rows.iter().any(|row| row.section == **section);
    let section = |section: &Section| FormSection { code: section.code(), label: named(&section.label(), language) };
    RequestForm {
        calculation: C::NAME,
        path: format!("/v1/{}", C::NAME),
        language: language.tag(),
        sections: Section::ALL.iter().filter(is_used).map(section).collect(),
        fields: rows.iter().filter_map(|row| field(row, &values, language)).collect(),
    }
}

/// The first fields alone, in English: what the description shows.
pub fn example<C: HasForm>() -> RequestForm {
    let mut form = form::<C>(Language::English);
    form.fields.truncate(EXAMPLE_FIELDS);
    form
}

/// A field; `None` where the request has no such value, which a test rules out.
fn field(row: &Row, values: &BTreeMap<String, RequestValue>, language: Language) -> Option<FormField> {
    let value = values.get(row.pointer)?;
    let mut field = FormField {
        pointer: row.pointer,
        section: row.section.code(),
        label: named(&row.label, language),
        help: say(&row.help, language).into_owned(),
        kind: value.kind.code(),
        is_required: value.is_required,
        audience: row.audience.code(),
        required_within: value.required_within.clone(),
        default_words: row.default_words.as_ref().map(|words| say(words, language).into_owned()),
        defaults_by_option: row.defaults_by_option.iter().map(option_default).collect(),
        ..FormField::default()
    };
    fill_kind(&mut field, &value.kind, row, language);
    fill_default(&mut field, row.default.as_ref());
    Some(field)
}

fn option_default(by: &row::DefaultByOption) -> OptionDefault {
    OptionDefault { pointer: by.pointer, code: by.code, default_codes: by.default_codes.clone() }
}

/// What follows from the kind of a field.
fn fill_kind(field: &mut FormField, kind: &ValueKind, row: &Row, language: Language) {
    match kind {
        ValueKind::Quantity(schema) => {
            let default = match row.default {
                Some(FieldDefault::Quantity(text)) => Some(text),
                _ => None,
            };
            if let Some(texts) = quantities::texts_of(schema, row.example, default) {
                field.units = texts.units;
                field.usual_unit = Some(texts.usual_unit);
                field.example = Some(texts.example);
                field.least = Some(texts.least);
                field.greatest = Some(texts.greatest);
                field.default_quantity = texts.default;
            }
        }
        ValueKind::Choice(list) => field.options = menus::options_of(list, language),
        ValueKind::List { list, min_items, max_items } => {
            field.options = menus::options_of(list, language);
            (field.min_items, field.max_items) = (*min_items, *max_items);
        }
        ValueKind::Number { minimum, maximum } | ValueKind::Count { minimum, maximum } => {
            (field.minimum, field.maximum) = (minimum.clone(), maximum.clone());
        }
        ValueKind::Numbers { minimum, maximum, min_items, max_items } => {
            (field.minimum, field.maximum) = (minimum.clone(), maximum.clone());
            (field.min_items, field.max_items) = (*min_items, *max_items);
        }
        ValueKind::Text { min_length, max_length } => (field.min_length, field.max_length) = (*min_length, *max_length),
        ValueKind::Flag | ValueKind::Time | ValueKind::Date | ValueKind::Money => {}
    }
}

/// What is taken where a field is left out. That of a quantity goes with its units.
fn fill_default(field: &mut FormField, default: Option<&FieldDefault>) {
    match default {
        Some(FieldDefault::Code(code)) => field.default_code = Some(code),
        Some(FieldDefault::Codes(codes)) => field.default_codes = Some(codes.clone()),
        Some(FieldDefault::Number(number)) => field.default_number = plain_number(*number),
        Some(FieldDefault::Count(count)) => field.default_number = Some((*count).into()),
        Some(FieldDefault::Flag(flag)) => field.default_flag = Some(*flag),
        Some(FieldDefault::Quantity(_)) | None => {}
    }
}

/// A number as people write it: 5, not 5.0.
fn plain_number(number: f64) -> Option<Number> {
    serde_json::from_str(&number.to_string()).ok()
}

/// A name with a capital letter.
fn named(label: &Statement, language: Language) -> String {
    let words = say(label, language);
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

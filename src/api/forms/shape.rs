//! A form as it is published.

use serde::Serialize;
use serde_json::Number;
use utoipa::ToSchema;

/// A form for the request of a calculation.
#[derive(Serialize, ToSchema)]
pub struct RequestForm {
    /// The calculation: `loop-sizing`.
    #[schema(min_length = 1)]
    pub calculation: &'static str,
    /// The path that takes the request.
    #[schema(min_length = 1)]
    pub path: String,
    /// The language of labels and help (BCP 47).
    #[schema(min_length = 2)]
    pub language: &'static str,
    /// The sections, in order.
    pub sections: Vec<FormSection>,
    /// The fields in the order in which a person is asked: those of the audience `usual`, then the others by section. Lists of objects
    /// and maps of a request, and its weather, are data of the calling program and no fields. What the
    /// calculation takes but does not need, and so lists in `unused`, is left out as well.
    pub fields: Vec<FormField>,
}

/// A section of a form.
#[derive(Clone, Serialize, ToSchema)]
pub struct FormSection {
    /// Its code, as in `fields[].section`.
    #[schema(min_length = 1)]
    pub code: &'static str,
    /// Its heading.
    #[schema(min_length = 1)]
    pub label: String,
}

/// A field of a form: where its value stands in the request, what a person reads, and what is taken. Members that do not fit its kind
/// are absent.
#[derive(Default, Serialize, ToSchema)]
pub struct FormField {
    /// Where the value stands in the request, as `errors[].pointer` of a refusal names it: `#/opening/width`.
    #[schema(pattern = "^#/")]
    pub pointer: &'static str,
    /// The code of its section.
    #[schema(min_length = 1)]
    pub section: &'static str,
    /// Its name.
    #[schema(min_length = 1)]
    pub label: String,
    /// What to measure or to choose, in one or two sentences.
    #[schema(min_length = 1)]
    pub help: String,
    /// What it holds: `quantity` (text with a unit), `choice` (one code of `options`), `list` (a list of codes), `number`, `numbers`
    /// (a list of numbers), `count` (a whole number), `flag` (true or false), `time` (RFC 3339 with offset), `date` (`2026-01-31`),
    /// `money` (decimal text: `24.50`) or `text`.
    #[schema(min_length = 1)]
    pub kind: &'static str,
    /// Whether every request must have it.
    pub is_required: bool,
    /// Whom it is for: `usual` (what most callers know and set) or `specialist`.
    #[schema(min_length = 1)]
    pub audience: &'static str,
    /// The object of the request that must have it where that has anything else: `#/prices`. Absent where it may always be left out, and
    /// where it is required.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(pattern = "^#/")]
    pub required_within: Option<String>,
    /// Units that a quantity is taken in, the usual one of each system first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub units: Vec<&'static str>,
    /// The usual unit of each system.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub usual_unit: Option<TextBySystem>,
    /// A text that is taken, for each system: a placeholder.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub example: Option<TextBySystem>,
    /// The least quantity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Option<TextBySystem>,
    /// The greatest quantity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub greatest: Option<TextBySystem>,
    /// The least number, of `numbers` the least of each.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<f64>)]
    pub minimum: Option<Number>,
    /// The greatest number, of `numbers` the greatest of each.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<f64>)]
    pub maximum: Option<Number>,
    /// How many a list that is sent holds at the least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub min_items: Option<u64>,
    /// How many a list holds at the most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_items: Option<u64>,
    /// How many characters a text has at the least.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub min_length: Option<u64>,
    /// How many characters a text has at the most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_length: Option<u64>,
    /// The quantity that is taken where the field is left out. The one of the system that it is not stated in is rounded as people say it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub default_quantity: Option<TextBySystem>,
    /// The code that is taken where the field is left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub default_code: Option<&'static str>,
    /// The codes that are taken where the field is left out; an empty list says that nothing is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub default_codes: Option<Vec<&'static str>>,
    /// The number that is taken where the field is left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<f64>)]
    pub default_number: Option<Number>,
    /// What is taken of a flag where the field is left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub default_flag: Option<bool>,
    /// What is taken where the field is left out, in a sentence: it depends on other fields. Beside a fixed default, when another is taken.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub default_words: Option<String>,
    /// What is taken by an option that is chosen elsewhere.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub defaults_by_option: Vec<OptionDefault>,
    /// The menu of a choice or a list, in order.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub options: Vec<FormOption>,
}

/// A text for each system of units.
#[derive(Clone, Serialize, ToSchema)]
pub struct TextBySystem {
    /// For US customary units.
    #[schema(min_length = 1)]
    pub us: String,
    /// For metric units.
    #[schema(min_length = 1)]
    pub metric: String,
}

/// What is taken of a list where an option is chosen elsewhere.
#[derive(Serialize, ToSchema)]
pub struct OptionDefault {
    /// The field of that option: `#/opening/barrier`.
    #[schema(pattern = "^#/")]
    pub pointer: &'static str,
    /// Its code.
    #[schema(min_length = 1)]
    pub code: &'static str,
    /// The codes that are then taken.
    pub default_codes: Vec<&'static str>,
}

/// An option of a menu.
#[derive(Clone, Serialize, ToSchema)]
pub struct FormOption {
    /// The value in the request.
    #[schema(min_length = 1)]
    pub code: &'static str,
    /// A short name.
    #[schema(min_length = 1)]
    pub label: &'static str,
    /// One or two sentences.
    #[schema(min_length = 1)]
    pub description: &'static str,
}

//! Why a text could not be used, and what the writer of it needs to know. The words are not made here.

use serde::Serialize;

use super::dimension::Dimension;

/// Why a text could not be used, as a program tells it apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum QuantityErrorCode {
    /// A number without a unit.
    UnitMissing,
    /// A unit that no dimension here has.
    UnitUnknown,
    /// A unit of another dimension, such as a speed for a length.
    UnitWrongDimension,
    /// A comma inside the number that may stand for thousands.
    DecimalComma,
    /// No number where one belongs, or one in a form that is not read.
    NumberInvalid,
    /// A sound quantity outside the range of its field.
    OutOfRange,
}

/// What exactly is wrong with a text.
#[derive(Clone, Debug, PartialEq)]
pub enum QuantityFault {
    /// It has more than [`super::text::MAX_CHARS`] characters.
    TooLong,
    /// Its unit counts in whole numbers.
    NotWhole,
    /// It starts with no number.
    NoNumber,
    /// The number has a form that is not read; the text in plain letters.
    BadForm(String),
    /// The number has a comma that may stand for thousands.
    Comma(CommaMeaning),
    /// It has no unit.
    UnitMissing,
    /// No dimension has this unit.
    UnitUnknown(String),
    /// Another dimension has this unit.
    UnitWrongDimension(String),
    /// It has a number and a unit and more, which together are no quantity: `6 ft 6 m`.
    Parts,
    /// It lies outside the least and the greatest value of its field.
    OutOfRange([&'static str; 2]),
}

/// What a comma in a number can mean.
#[derive(Clone, Debug, PartialEq)]
pub enum CommaMeaning {
    /// Decimals; the text with a point.
    Decimals(String),
    /// Thousands; the text without the comma.
    Thousands(String),
    /// Thousands or decimals; the text without the comma, and with a point.
    Either(Box<[String; 2]>),
    /// It cannot be told.
    Unclear,
}

/// Why a text could not be used.
#[derive(Clone, Debug, PartialEq)]
pub struct QuantityError {
    /// The reason, for a program.
    pub code: QuantityErrorCode,
    /// What exactly is wrong.
    pub fault: QuantityFault,
    /// The text as it was sent.
    pub text: String,
    /// The dimension that it should have: [`Dimension::CODE`].
    pub dimension: &'static str,
    /// Two texts that are right, US customary first.
    pub examples: &'static [&'static str; 2],
    /// A text that the field takes and that was likely meant. Only a field knows, so a dimension alone suggests nothing.
    pub suggestion: Option<String>,
}

impl QuantityError {
    /// What is wrong with a text of this dimension.
    pub(super) fn of<D: Dimension>(text: &str, fault: QuantityFault, examples: &'static [&'static str; 2]) -> Self {
        Self { code: fault.code(), fault, text: text.to_owned(), dimension: D::CODE, examples, suggestion: None }
    }
}

impl QuantityFault {
    fn code(&self) -> QuantityErrorCode {
        match self {
            Self::TooLong | Self::NotWhole | Self::NoNumber | Self::BadForm(_) => QuantityErrorCode::NumberInvalid,
            Self::Comma(_) => QuantityErrorCode::DecimalComma,
            Self::UnitMissing => QuantityErrorCode::UnitMissing,
            Self::UnitUnknown(_) | Self::Parts => QuantityErrorCode::UnitUnknown,
            Self::UnitWrongDimension(_) => QuantityErrorCode::UnitWrongDimension,
            Self::OutOfRange(_) => QuantityErrorCode::OutOfRange,
        }
    }
}

//! A dimension with the range that a field allows: the string types that request fields have.

use std::fmt;
use std::marker::PhantomData;
use std::sync::OnceLock;

use serde::de::{self, Deserializer, Visitor};
use utoipa::openapi::extensions::Extensions;
use utoipa::openapi::schema::{ObjectBuilder, Type};
use utoipa::openapi::{RefOr, Schema};

use super::dimension::{Dimension, Magnitude};
use super::fault::{CommaMeaning, QuantityError, QuantityFault};
use super::suggest::{candidates, with_each_unit};
use super::text::{MAX_CHARS, ParsedQuantity, parse_like};

/// What a field holds, as text: a dimension, and the range that the models are valid in. Each implementation is one named schema.
///
/// The text is kept as it came and read by [`QuantityField::read`], so that one pass finds all errors of a request.
pub trait QuantityField: Sized + 'static {
    /// The dimension of the texts.
    type Dimension: Dimension;
    /// The name of the schema in the description.
    const NAME: &'static str;
    /// What the quantity is, in a sentence.
    const DESCRIPTION: &'static str;
    /// The least and the greatest value, as texts.
    const RANGE: [&'static str; 2];
    /// Two texts that are right, US customary first.
    const EXAMPLES: [&'static str; 2];

    /// Keeps a text.
    fn from_text(text: String) -> Self;
    /// The text as it came.
    fn text(&self) -> &str;
    /// The range, read once.
    fn range() -> &'static QuantityRange<<Self::Dimension as Dimension>::Si>;

    /// Reads the text and checks its range.
    ///
    /// # Errors
    /// A [`QuantityError`]: the text cannot be read, or lies outside the range of the field. It suggests a text that the field
    /// takes where one was likely meant.
    fn read(&self) -> Result<ParsedQuantity<'_, <Self::Dimension as Dimension>::Si>, QuantityError> {
        read_in_range::<Self>(self.text()).map_err(with_suggestion::<Self>)
    }
}

fn read_in_range<F: QuantityField>(
    text: &str,
) -> Result<ParsedQuantity<'_, <F::Dimension as Dimension>::Si>, QuantityError> {
    let parsed = parse_like::<F::Dimension>(text, &F::EXAMPLES)?;
    let range = F::range().get_or_init(|| {
        let [least, greatest] = F::RANGE.map(|bound| parse_like::<F::Dimension>(bound, &F::EXAMPLES).ok());
        least.zip(greatest).map(|(least, greatest)| (least.si, greatest.si))
    });
    match range {
        Some((least, greatest)) if within(parsed.si, *least, *greatest) => Ok(parsed),
        _ => Err(QuantityError::of::<F::Dimension>(text.trim(), QuantityFault::OutOfRange(F::RANGE), &F::EXAMPLES)),
    }
}

/// Adds the text that was likely meant, if the field takes it. What a comma can mean is what the range leaves of it.
fn with_suggestion<F: QuantityField>(mut error: QuantityError) -> QuantityError {
    let passes = |text: &String| read_in_range::<F>(text).is_ok();
    let likeliest =
        |error: &QuantityError| candidates::<F::Dimension>(&error.text, &error.fault).into_iter().find(passes);
    let (meaning, suggestion) = match &error.fault {
        QuantityFault::Comma(CommaMeaning::Either(readings)) => {
            let [joined, point] = &**readings;
            match (passes(joined), passes(point)) {
                (true, true) => (None, Some(joined.clone())),
                (true, false) => (Some(CommaMeaning::Thousands(joined.clone())), Some(joined.clone())),
                (false, true) => (Some(CommaMeaning::Decimals(point.clone())), Some(point.clone())),
                (false, false) => (Some(CommaMeaning::Unclear), None),
            }
        }
        QuantityFault::Comma(CommaMeaning::Decimals(point)) if passes(point) => (None, Some(point.clone())),
        QuantityFault::Comma(CommaMeaning::Decimals(_)) => (Some(CommaMeaning::Unclear), None),
        QuantityFault::Comma(_) => {
            let suggestion = likeliest(&error);
            (suggestion.clone().map(CommaMeaning::Thousands), suggestion)
        }
        QuantityFault::UnitMissing => {
            // Where two units would pass, either could be meant.
            let mut passing = with_each_unit::<F::Dimension>(&error.text).filter(passes);
            (None, passing.next().filter(|_| passing.next().is_none()))
        }
        _ => (None, likeliest(&error)),
    };
    if let Some(meaning) = meaning {
        error.fault = QuantityFault::Comma(meaning);
    }
    QuantityError { suggestion, ..error }
}

/// A closed range of typed quantities, read once. `None` stands for a bound whose own text cannot be read, which a test
/// rules out.
pub type QuantityRange<Si> = OnceLock<Option<(Si, Si)>>;

/// Between two bounds, both included. The tolerance is for binary fractions: 12 in comes out slightly below 1 ft.
fn within<Si: Magnitude>(value: Si, least: Si, greatest: Si) -> bool {
    let (value, least, greatest) = (value.magnitude(), least.magnitude(), greatest.magnitude());
    let tolerance = 1e-12 * (least.abs() + greatest.abs());
    (least - tolerance..=greatest + tolerance).contains(&value)
}

/// Declares quantity fields, one line of range and examples each.
#[macro_export]
macro_rules! quantity_fields {
    ($($(#[doc = $doc:literal])+ $name:ident: $dimension:ident, $least:literal to $greatest:literal, as $us:literal or $metric:literal;)+) => {
        $(
            $(#[doc = $doc])+
            #[derive(Clone, Debug)]
            pub struct $name(String);

            impl $crate::quantity::QuantityField for $name {
                type Dimension = $crate::quantity::dimension::$dimension;
                const NAME: &'static str = stringify!($name);
                const DESCRIPTION: &'static str = concat!($($doc),+);
                const RANGE: [&'static str; 2] = [$least, $greatest];
                const EXAMPLES: [&'static str; 2] = [$us, $metric];
                fn from_text(text: String) -> Self {
                    Self(text)
                }
                fn text(&self) -> &str {
                    &self.0
                }
                fn range() -> &'static $crate::quantity::field::QuantityRange<<Self::Dimension as $crate::quantity::Dimension>::Si> {
                    static RANGE: $crate::quantity::field::QuantityRange<
                        <$crate::quantity::dimension::$dimension as $crate::quantity::Dimension>::Si,
                    > = std::sync::OnceLock::new();
                    &RANGE
                }
            }

            impl<'de> serde::Deserialize<'de> for $name {
                fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                    $crate::quantity::field::deserialize(deserializer)
                }
            }

            impl serde::Serialize for $name {
                fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                    serializer.serialize_str(&self.0)
                }
            }

            impl utoipa::PartialSchema for $name {
                fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::Schema> {
                    $crate::quantity::field::schema::<Self>()
                }
            }

            impl utoipa::ToSchema for $name {
                fn name() -> std::borrow::Cow<'static, str> {
                    std::borrow::Cow::Borrowed(stringify!($name))
                }
            }
        )+
    };
}

/// Takes a text of any content, and a bare JSON number too, so that [`QuantityField::read`] refuses it for its missing unit,
/// together with all other errors.
///
/// # Errors
/// The deserializer's, for anything but text and numbers.
pub fn deserialize<'de, F: QuantityField, D: Deserializer<'de>>(deserializer: D) -> Result<F, D::Error> {
    deserializer.deserialize_any(TextVisitor(PhantomData))
}

struct TextVisitor<F>(PhantomData<F>);

impl<F: QuantityField> Visitor<'_> for TextVisitor<F> {
    type Value = F;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} as text, such as \"{}\"", F::Dimension::CODE, F::EXAMPLES[0])
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<F, E> {
        Ok(F::from_text(text.to_owned()))
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<F, E> {
        Ok(F::from_text(number.to_string()))
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<F, E> {
        Ok(F::from_text(number.to_string()))
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<F, E> {
        Ok(F::from_text(number.to_string()))
    }
}

/// The published schema of a field: text with a pattern, its units, its range and examples. What a schema of text cannot say stands
/// in extensions, for forms that are made of the description.
pub fn schema<F: QuantityField>() -> RefOr<Schema> {
    let units: Vec<_> = F::Dimension::UNITS.iter().map(|unit| unit.spellings[0]).collect();
    let [least, greatest] = F::RANGE;
    let description = format!("{} From {least} to {greatest}. Units: {}.", F::DESCRIPTION.trim(), units.join(", "));
    ObjectBuilder::new()
        .schema_type(Type::String)
        .description(Some(description))
        .max_length(Some(MAX_CHARS))
        .pattern(Some(pattern(least, units[0])))
        .examples(F::EXAMPLES)
        .extensions(Some(Extensions::from_iter([
            ("x-minimum", least.into()),
            ("x-maximum", greatest.into()),
            ("x-units", serde_json::Value::from(units)),
        ])))
        .into()
}

/// A pattern that every valid text of one line meets: a number, then a unit. The sign shows only where the range reaches below zero,
/// the degree sign and the percent sign only where units have one.
fn pattern(least: &str, unit: &str) -> &'static str {
    macro_rules! number_then {
        ($sign:literal, $unit:literal) => {
            concat!(r"^\s*", $sign, r"?\s*[0-9.,¼-¾⅐-⅞][0-9\s.,/⁄∕¼-¾⅐-⅞‐‑‒–−-]*[", $unit, "].*$")
        };
    }
    if unit == "%" {
        return number_then!(r"\+", "a-zA-Z%");
    }
    match (least.starts_with('-'), unit.starts_with('°')) {
        (true, _) => number_then!("[-+−‐‑‒–]", r#"a-zA-Z°º˚℃℉'"‘’′´“”″ʹʺ"#),
        (false, true) => number_then!(r"\+", "a-zA-Z°º˚℃℉"),
        (false, false) => number_then!(r"\+", r#"a-zA-Zµμ'"‘’′´“”″ʹʺ"#),
    }
}

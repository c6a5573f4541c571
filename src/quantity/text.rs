//! The reader of quantity texts; the grammar is on the page of [`crate::quantity`].

use std::borrow::Cow;

use serde::Serialize;

use super::dimension::{Dimension, Unit, UnitSystem, is_known_unit};

/// The longest quantity text that is read, in characters.
pub const MAX_CHARS: usize = 40;

/// A quantity as it was written: the value, the system that the writer works in, and the text itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ParsedQuantity<'a, Si> {
    /// The typed value.
    pub si: Si,
    /// The system of the unit; of the larger one in a compound text.
    pub system: UnitSystem,
    /// The text, without the space around it.
    pub text: &'a str,
}

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
    /// A comma inside the number.
    DecimalComma,
    /// No number where one belongs, or one in a form that is not read.
    NumberInvalid,
    /// A sound quantity outside the range of its field.
    OutOfRange,
}

/// What exactly is wrong with a text.
#[derive(Clone, Debug, PartialEq)]
pub enum QuantityFault {
    /// It has more than [`MAX_CHARS`] characters.
    TooLong,
    /// Its unit counts in whole numbers.
    NotWhole,
    /// It starts with no number.
    NoNumber,
    /// The number has a form that is not read; the text in plain letters.
    BadForm(String),
    /// The number has a comma.
    Comma(CommaMeaning),
    /// It has no unit.
    UnitMissing,
    /// No dimension has this unit.
    UnitUnknown(String),
    /// Another dimension has this unit.
    UnitWrongDimension(String),
    /// It lies outside the least and the greatest value of its field.
    OutOfRange([&'static str; 2]),
}

/// What a comma in a number can mean.
#[derive(Clone, Debug, PartialEq)]
pub enum CommaMeaning {
    /// Decimals; the text with a point.
    Decimals(String),
    /// Thousands or decimals; the text without the comma, and with a point.
    Either([String; 2]),
    /// It cannot be told.
    Unclear,
}

/// Why a text could not be used, and what the writer of it needs to know. The words are not made here.
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
}

impl QuantityError {
    /// What is wrong with a text of this dimension.
    pub(super) fn of<D: Dimension>(text: &str, fault: QuantityFault, examples: &'static [&'static str; 2]) -> Self {
        Self { code: fault.code(), fault, text: text.to_owned(), dimension: D::CODE, examples }
    }
}

impl QuantityFault {
    fn code(&self) -> QuantityErrorCode {
        match self {
            Self::TooLong | Self::NotWhole | Self::NoNumber | Self::BadForm(_) => QuantityErrorCode::NumberInvalid,
            Self::Comma(_) => QuantityErrorCode::DecimalComma,
            Self::UnitMissing => QuantityErrorCode::UnitMissing,
            Self::UnitUnknown(_) => QuantityErrorCode::UnitUnknown,
            Self::UnitWrongDimension(_) => QuantityErrorCode::UnitWrongDimension,
            Self::OutOfRange(_) => QuantityErrorCode::OutOfRange,
        }
    }
}

/// Reads a quantity of the dimension `D`.
///
/// # Errors
/// A [`QuantityError`] that names what is wrong; the range is checked by [`super::QuantityField`], not here.
pub fn parse<D: Dimension>(text: &str) -> Result<ParsedQuantity<'_, D::Si>, QuantityError> {
    parse_like::<D>(text, &D::EXAMPLES)
}

/// Reads a quantity of the dimension `D`; an error shows `examples`, which fit the field better than those of the dimension.
///
/// # Errors
/// As [`parse`].
pub fn parse_like<'a, D: Dimension>(
    text: &'a str,
    examples: &'static [&'static str; 2],
) -> Result<ParsedQuantity<'a, D::Si>, QuantityError> {
    read::<D>(text).map_err(|fault| QuantityError::of::<D>(text, fault, examples))
}

fn read<D: Dimension>(text: &str) -> Result<ParsedQuantity<'_, D::Si>, QuantityFault> {
    if text.len() > MAX_CHARS && text.chars().count() > MAX_CHARS {
        return Err(QuantityFault::TooLong);
    }
    let plain = plain(text);
    let (first, rest) = read_number(&plain).ok_or_else(|| no_number(text, &plain))?;
    reject_bad_tail(text, &plain, rest)?;
    let (si, unit) = match find::<D>(rest) {
        Some(unit) => (convert(unit, first)?, unit),
        None => read_compound::<D>(first, rest).ok_or_else(|| no_unit(rest))?,
    };
    Ok(ParsedQuantity { si, system: unit.system, text: text.trim() })
}

/// Lower case, typographic signs as their plain forms, no space around.
fn plain(text: &str) -> Cow<'_, str> {
    let text = text.trim();
    if text.bytes().all(|byte| matches!(byte, b' '..=b'@' | b'['..=b'~')) {
        return text.into();
    }
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            ' '..='~' => plain.push(c.to_ascii_lowercase()),
            // In most temperatures, and no letter.
            '°' => plain.push(c),
            _ if c.is_whitespace() => plain.push(' '),
            _ => plain.extend(c.to_lowercase().map(sign)),
        }
    }
    plain.into()
}

/// The plain form of a typographic sign.
fn sign(c: char) -> char {
    match c {
        '\u{2212}' => '-',
        '\u{2018}' | '\u{2019}' | '\u{2032}' => '\'',
        '\u{201c}' | '\u{201d}' | '\u{2033}' => '"',
        '\u{b5}' | '\u{3bc}' => 'u',
        _ => c,
    }
}

fn find<D: Dimension>(spelling: &str) -> Option<&'static Unit<D::Si>> {
    D::UNITS.iter().find(|unit| unit.spellings.contains(&spelling))
}

fn convert<Si>(unit: &Unit<Si>, number: f64) -> Result<Si, QuantityFault> {
    if unit.whole && number.fract() != 0.0 {
        return Err(QuantityFault::NotWhole);
    }
    Ok((unit.to_si)(number))
}

/// The second half of `6 ft 6 in`, where `first` was 6 and `rest` is `ft 6 in`.
fn read_compound<D: Dimension>(first: f64, rest: &str) -> Option<(D::Si, &'static Unit<D::Si>)> {
    let (larger, smaller) = D::COMPOUND?;
    let split = rest.find(|c: char| c.is_ascii_digit())?;
    let head = find::<D>(rest[..split].trim_end_matches([' ', '-']))?;
    let (second, tail) = read_number(&rest[split..])?;
    let tail = find::<D>(tail)?;
    let fits = head.spellings[0] == larger && tail.spellings[0] == smaller && first.fract() == 0.0 && first >= 0.0;
    fits.then(|| (D::sum((head.to_si)(first), (tail.to_si)(second)), head))
}

/// Reads `[sign] number` at the start; gives the number and what follows it, without space between.
///
/// A fraction is one division of whole numbers, so that 3/16 is exactly 0.1875.
fn read_number(text: &str) -> Option<(f64, &str)> {
    let (sign, unsigned) = match text.as_bytes().first()? {
        b'-' => (-1.0, text[1..].trim_start()),
        b'+' => (1.0, text[1..].trim_start()),
        _ => (1.0, text),
    };
    let (value, rest) = read_decimal(unsigned)?;
    let (value, rest) = match read_fraction(rest) {
        Some((denominator, rest)) => (checked_ratio(value, denominator)?, rest),
        None => match read_mixed(rest) {
            Some(_) if value.fract() != 0.0 => return None,
            Some((numerator, denominator, rest)) => {
                (checked_ratio(value.mul_add(denominator, numerator), denominator)?, rest)
            }
            None => (value, rest),
        },
    };
    Some((sign * value, rest.trim_start()))
}

fn checked_ratio(numerator: f64, denominator: f64) -> Option<f64> {
    (denominator != 0.0 && numerator.fract() == 0.0).then_some(numerator / denominator)
}

/// `7`, `7.2` or `.5`.
fn read_decimal(text: &str) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    // The library refuses a second point; it would accept a point at the end.
    let number = text[..end].parse().ok().filter(|_| !text[..end].ends_with('.'))?;
    Some((number, &text[end..]))
}

fn read_whole(text: &str) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    Some((text[..end].parse().ok()?, &text[end..]))
}

/// `/16`, after a numerator.
fn read_fraction(text: &str) -> Option<(f64, &str)> {
    read_whole(text.trim_start().strip_prefix('/')?.trim_start())
}

/// `-1/4` or ` 1/4`, after a whole number.
fn read_mixed(text: &str) -> Option<(f64, f64, &str)> {
    let (numerator, rest) = read_whole(text.strip_prefix(['-', ' '])?.trim_start())?;
    let (denominator, rest) = read_fraction(rest)?;
    Some((numerator, denominator, rest))
}

fn no_number(text: &str, plain: &str) -> QuantityFault {
    if plain.starts_with(',') { comma(text) } else { QuantityFault::NoNumber }
}

/// Refuses what may not follow a number: a comma, a second point, an exponent, a second fraction.
fn reject_bad_tail(text: &str, plain: &str, rest: &str) -> Result<(), QuantityFault> {
    let mut after = rest.chars();
    match (after.next(), after.next()) {
        (Some(','), _) => Err(comma(text)),
        (Some('.' | '/'), _) | (Some('e'), Some('0'..='9' | '-' | '+')) => {
            Err(QuantityFault::BadForm(plain.to_owned()))
        }
        _ => Ok(()),
    }
}

fn comma(text: &str) -> QuantityFault {
    let point = text.trim().replace(',', ".");
    QuantityFault::Comma(match text.split_once(',') {
        _ if text.contains('.') || text.matches(',').count() > 1 => CommaMeaning::Unclear,
        Some((_, tail)) if tail.bytes().take_while(u8::is_ascii_digit).count() == 3 => {
            CommaMeaning::Either([text.trim().replace(',', ""), point])
        }
        _ => CommaMeaning::Decimals(point),
    })
}

fn no_unit(unit: &str) -> QuantityFault {
    if unit.is_empty() {
        QuantityFault::UnitMissing
    } else if is_known_unit(unit) {
        QuantityFault::UnitWrongDimension(unit.to_owned())
    } else {
        QuantityFault::UnitUnknown(unit.to_owned())
    }
}

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

/// Why a text could not be used, and what to write instead.
#[derive(Clone, Debug, PartialEq)]
pub struct QuantityError {
    /// The reason, for a program.
    pub code: QuantityErrorCode,
    /// The reason, for a person.
    pub detail: String,
    /// What to write instead.
    pub hint: String,
}

impl QuantityError {
    fn new(code: QuantityErrorCode, detail: String, hint: String) -> Self {
        Self { code, detail, hint }
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
    examples: &[&str; 2],
) -> Result<ParsedQuantity<'a, D::Si>, QuantityError> {
    let context = ErrorContext { text, noun: D::NOUN, examples };
    if text.len() > MAX_CHARS && text.chars().count() > MAX_CHARS {
        return Err(context.number(format!("The text is longer than {MAX_CHARS} characters.")));
    }
    let plain = plain(text);
    let (first, rest) = read_number(&plain).ok_or_else(|| context.no_number(&plain))?;
    context.reject_bad_tail(&plain, rest)?;
    let (si, unit) = match find::<D>(rest) {
        Some(unit) => (convert(unit, first, &context)?, unit),
        None => read_compound::<D>(first, rest).ok_or_else(|| context.no_unit(rest))?,
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

fn convert<Si>(unit: &Unit<Si>, number: f64, context: &ErrorContext<'_>) -> Result<Si, QuantityError> {
    if unit.whole && number.fract() != 0.0 {
        return Err(context.number("This unit counts in whole numbers.".to_owned()));
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

/// What the errors of one text have in common: the text, what it should be, and two examples of it.
struct ErrorContext<'a> {
    text: &'a str,
    noun: &'static str,
    examples: &'a [&'a str; 2],
}

impl ErrorContext<'_> {
    fn number(&self, detail: String) -> QuantityError {
        let [us, metric] = self.examples;
        QuantityError::new(QuantityErrorCode::NumberInvalid, detail, format!("Write \"{us}\" or \"{metric}\"."))
    }

    fn no_number(&self, plain: &str) -> QuantityError {
        if plain.starts_with(',') {
            return self.comma();
        }
        self.number(format!(
            "{} starts with a number; \"{}\" has none that can be read.",
            capital(self.noun),
            self.text
        ))
    }

    /// Refuses what may not follow a number: a comma, a second point, an exponent, a second fraction.
    fn reject_bad_tail(&self, plain: &str, rest: &str) -> Result<(), QuantityError> {
        let mut after = rest.chars();
        match (after.next(), after.next()) {
            (Some(','), _) => Err(self.comma()),
            (Some('.' | '/'), _) | (Some('e'), Some('0'..='9' | '-' | '+')) => {
                Err(self.number(format!("The number in \"{plain}\" has a form that is not read.")))
            }
            _ => Ok(()),
        }
    }

    fn comma(&self) -> QuantityError {
        let point = self.text.trim().replace(',', ".");
        let [us, metric] = self.examples;
        let hint = match self.text.split_once(',') {
            _ if self.text.contains('.') || self.text.matches(',').count() > 1 => {
                format!("Write the number without a comma, with a point for decimals, as \"{us}\" or \"{metric}\".")
            }
            Some((_, tail)) if tail.bytes().take_while(u8::is_ascii_digit).count() == 3 => {
                let joined = self.text.trim().replace(',', "");
                format!("Write \"{joined}\", without a separator, or \"{point}\", with a point.")
            }
            _ => format!("Write \"{point}\", with a point."),
        };
        QuantityError::new(
            QuantityErrorCode::DecimalComma,
            format!("\"{}\" has a comma in its number.", self.text),
            hint,
        )
    }

    fn no_unit(&self, unit: &str) -> QuantityError {
        let [us, metric] = self.examples;
        let hint = format!("Write {} as \"{us}\" or \"{metric}\".", self.noun);
        if unit.is_empty() {
            let detail = format!("{} needs a unit; \"{}\" has none.", capital(self.noun), self.text);
            QuantityError::new(QuantityErrorCode::UnitMissing, detail, hint)
        } else if is_known_unit(unit) {
            let detail = format!(
                "\"{unit}\" is not a unit of {}.",
                self.noun.trim_start_matches("an ").trim_start_matches("a ")
            );
            QuantityError::new(QuantityErrorCode::UnitWrongDimension, detail, hint)
        } else {
            QuantityError::new(
                QuantityErrorCode::UnitUnknown,
                format!("\"{unit}\" is not a unit that is known here."),
                hint,
            )
        }
    }
}

fn capital(noun: &str) -> String {
    let mut letters = noun.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

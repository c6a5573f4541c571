//! The reader of quantity texts; the grammar is on the page of [`crate::quantity`].

use super::dimension::{BareSmaller, Compound, Dimension, Unit, UnitSystem, find_unit, is_known_unit};
use super::fault::{CommaMeaning, QuantityError, QuantityFault};
use super::number::read_number;
use super::plain::plain;
use super::words::shortened;

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
    let (si, unit) = match find_unit::<D>(rest) {
        Some(unit) => (convert(unit, first)?, unit),
        None => read_rarer::<D>(text, &plain, first, rest)?,
    };
    Ok(ParsedQuantity { si, system: unit.system, text: text.trim() })
}

/// What follows a number and is no unit as it stands: a unit in words, two parts, or a fault.
fn read_rarer<D: Dimension>(
    text: &str,
    plain: &str,
    first: f64,
    rest: &str,
) -> Result<(D::Si, &'static Unit<D::Si>), QuantityFault> {
    reject_bad_tail(text, plain, rest)?;
    if let Some(read) = read_compound::<D>(first, rest) {
        return Ok(read);
    }
    let unit = read_unit::<D>(rest).ok_or_else(|| no_unit::<D>(rest))?;
    Ok((convert(unit, first)?, unit))
}

fn convert<Si>(unit: &Unit<Si>, number: f64) -> Result<Si, QuantityFault> {
    if unit.whole && number.fract() != 0.0 {
        return Err(QuantityFault::NotWhole);
    }
    Ok((unit.to_si)(number))
}

/// A unit with the hyphen before it and the full stop behind it that people write, short or in words.
pub(super) fn read_unit<D: Dimension>(text: &str) -> Option<&'static Unit<D::Si>> {
    let joined = text.strip_prefix('-').filter(|unit| unit.starts_with(|c: char| c.is_ascii_lowercase()));
    let text = without_stop(if D::MAY_BE_HYPHENATED { joined.unwrap_or(text) } else { text });
    find_unit::<D>(text).or_else(|| find_unit::<D>(&shortened(text)?))
}

/// A unit without the full stop that ends a sentence, or an abbreviation.
fn without_stop(unit: &str) -> &str {
    unit.strip_suffix('.').filter(|unit| !unit.ends_with(['.', ' '])).unwrap_or(unit)
}

/// The second half of `6 ft 6 in`, where `first` was 6 and `rest` is `ft 6 in`. A sign would say not which way the second part
/// goes, so there is none.
fn read_compound<D: Dimension>(first: f64, rest: &str) -> Option<(D::Si, &'static Unit<D::Si>)> {
    if D::COMPOUNDS.is_empty() || first.fract() != 0.0 || first.is_sign_negative() {
        return None;
    }
    let (before, after) = rest.split_at(rest.find(|c: char| c.is_ascii_digit())?);
    let head_text = before.trim_end_matches([' ', '-']);
    // A point that touches the second number may be its own.
    let is_apart = !before.ends_with('.');
    let head = find_unit::<D>(head_text).or_else(|| read_unit::<D>(head_text).filter(|_| is_apart))?;
    let (second, tail_text) = read_number(after)?;
    let of_head = |compound: &&Compound| compound.larger == head.spellings[0];
    let compound = if tail_text.is_empty() {
        let joint = &before[head_text.len()..];
        let is_joint = is_apart && (joint == "-" || joint.bytes().all(|byte| byte == b' '));
        let may_be_bare = |bare| match bare {
            BareSmaller::Never => false,
            BareSmaller::AnyNumber => true,
            BareSmaller::TwoDigits => after.len() == 2 && after.bytes().all(|byte| byte.is_ascii_digit()),
        };
        let compound = D::COMPOUNDS.iter().filter(of_head).find(|compound| may_be_bare(compound.bare))?;
        // `5 ft 1/2` may be five feet and a half.
        let is_clear = second == 0.0 || second >= 1.0;
        (is_joint && is_clear && second < compound.ratio).then_some(compound)?
    } else {
        let tail = read_unit::<D>(tail_text)?.spellings[0];
        let compound = D::COMPOUNDS.iter().filter(of_head).find(|compound| compound.smaller == tail)?;
        (compound.may_exceed || second < compound.ratio).then_some(compound)?
    };
    let smaller = find_unit::<D>(compound.smaller)?;
    Some((D::sum((head.to_si)(first), (smaller.to_si)(second)), head))
}

/// The leading sign and what a number could be made of.
fn number_run(plain: &str) -> &str {
    let unsigned = plain.trim_start_matches(['-', '+', ' ']);
    let end = unsigned.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(unsigned.len());
    &unsigned[..end]
}

fn no_number(text: &str, plain: &str) -> QuantityFault {
    let run = number_run(plain);
    if run.contains(',') {
        comma(text, run)
    } else if run.bytes().any(|byte| byte.is_ascii_digit()) {
        QuantityFault::BadForm(plain.to_owned())
    } else {
        QuantityFault::NoNumber
    }
}

/// Refuses what may not follow a number: a comma, a second point, an exponent, a second fraction.
fn reject_bad_tail(text: &str, plain: &str, rest: &str) -> Result<(), QuantityFault> {
    let mut after = rest.chars();
    match (after.next(), after.next()) {
        (Some(','), _) => Err(comma(text, number_run(plain))),
        (Some('.' | '/'), _) | (Some('e'), Some('0'..='9' | '-' | '+')) => {
            Err(QuantityFault::BadForm(plain.to_owned()))
        }
        _ => Ok(()),
    }
}

/// What the comma of a number can mean, where it cannot be told.
fn comma(text: &str, run: &str) -> QuantityFault {
    let text = text.trim();
    QuantityFault::Comma(match run.split_once(',') {
        Some((whole, decimals)) if decimals.len() == 3 && decimals.bytes().all(|byte| byte.is_ascii_digit()) => {
            let (joined, point) = (text.replacen(',', "", 1), text.replacen(',', ".", 1));
            match whole {
                _ if whole.contains('.') => CommaMeaning::Unclear,
                "" => CommaMeaning::Decimals(text.replacen(',', "0.", 1)),
                // No one writes thousands so.
                _ if whole.starts_with('0') || whole.len() > 3 => CommaMeaning::Decimals(point),
                _ => CommaMeaning::Either(Box::new([joined, point])),
            }
        }
        _ => CommaMeaning::Unclear,
    })
}

fn no_unit<D: Dimension>(unit: &str) -> QuantityFault {
    let is_known = |unit: &str| is_known_unit(unit) || shortened(unit).is_some_and(|short| is_known_unit(&short));
    let first = unit.split(|c: char| c == ' ' || c == '-' || c == ',' || c.is_ascii_digit()).next();
    if unit.is_empty() {
        QuantityFault::UnitMissing
    } else if is_known(without_stop(unit)) {
        QuantityFault::UnitWrongDimension(unit.to_owned())
    } else if unit.starts_with(|c: char| c.is_ascii_digit()) || first.is_some_and(|f| read_unit::<D>(f).is_some()) {
        QuantityFault::Parts
    } else {
        QuantityFault::UnitUnknown(unit.to_owned())
    }
}

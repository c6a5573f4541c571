//! What may have been meant by a text that is refused. Nothing here is read as a quantity: a person is asked.

use super::dimension::{BareSmaller, Dimension, Unit, UnitSystem, shown};
use super::fault::QuantityFault;
use super::number::read_number;
use super::plain::plain;
use super::text::read_unit;
use super::words::{all_words, shortened};

/// Texts that may have been meant, the likeliest first. Whether a field takes one of them only the field knows.
pub fn candidates<D: Dimension>(text: &str, fault: &QuantityFault) -> Vec<String> {
    let plain = plain(text);
    match fault {
        QuantityFault::TooLong | QuantityFault::NotWhole | QuantityFault::UnitMissing => Vec::new(),
        QuantityFault::OutOfRange(_) => metric_thousands::<D>(text).into_iter().collect(),
        QuantityFault::Comma(_) => joined_thousands(text).into_iter().collect(),
        QuantityFault::BadForm(_) => joined_thousands(text).or_else(|| without_exponent(&plain)).into_iter().collect(),
        QuantityFault::NoNumber => without_words_before::<D>(&plain).into_iter().collect(),
        QuantityFault::UnitUnknown(_) | QuantityFault::UnitWrongDimension(_) | QuantityFault::Parts => {
            let Some((first, rest)) = read_number(&plain) else { return Vec::new() };
            let number = plain[..plain.len() - rest.len()].trim_end();
            let unit = likely_unit::<D>(rest)
                .or_else(|| read_unit::<D>(rest.trim_end_matches(['.', ',', ';', ' '])))
                .or_else(|| read_unit::<D>(rest.strip_prefix("- ").filter(|_| D::MAY_BE_HYPHENATED)?.trim_start()))
                .or_else(|| misspelt_unit::<D>(rest));
            let candidates =
                [unit.map(|unit| with_unit(number, unit)), joined_thousands(text), in_parts::<D>(number, first, rest)];
            candidates.into_iter().flatten().collect()
        }
    }
}

/// A bare number with each unit that people give this dimension in.
pub fn with_each_unit<D: Dimension>(text: &str) -> impl Iterator<Item = String> {
    let number = plain(text).into_owned();
    // Kelvin are for physicists: 300 without a unit is not 27 °C.
    let units = D::UNITS.iter().filter(|unit| unit.spellings[0] != "k");
    units.map(move |unit| with_unit(&number, unit))
}

fn with_unit<Si>(number: &str, unit: &Unit<Si>) -> String {
    format!("{number} {}", shown(unit.spellings[0]))
}

/// `1 200 mm`, `1,200.5 m`, `1.200,5 m`, `1.200.000 mm` and `6. m` with nothing but a decimal point. The digits say which marks
/// are for thousands: there are several, or another one follows.
fn joined_thousands(text: &str) -> Option<String> {
    let text = text.trim();
    let start = text.find(|c: char| c.is_ascii_digit())?;
    let (sign, rest) = text.split_at(start);
    if !matches!(sign.trim(), "" | "+" | "-" | "\u{2212}") {
        return None;
    }
    let (parts, marks, tail) = parts_of_number(rest);
    let is_thousands = |parts: &[&str]| {
        (1..=3).contains(&parts[0].len()) && !parts[0].starts_with('0') && parts[1..].iter().all(|p| p.len() == 3)
    };
    let (last_mark, last) = (*marks.last()?, *parts.last()?);
    let others = &marks[..marks.len() - 1];
    let number = if last.is_empty() {
        // A point that nothing follows.
        (others.is_empty() && last_mark == '.').then(|| parts[0].to_owned())?
    } else if others.is_empty() {
        (last_mark == ' ' && is_thousands(&parts)).then(|| parts.concat())?
    } else if others.iter().any(|mark| *mark != others[0]) {
        return None;
    } else if last_mark == others[0] {
        is_thousands(&parts).then(|| parts.concat())?
    } else {
        let whole = &parts[..parts.len() - 1];
        (last_mark != ' ' && is_thousands(whole)).then(|| format!("{}.{last}", whole.concat()))?
    };
    Some(format!("{sign}{number}{tail}"))
}

/// `7.200 mm` as `7200 mm`, where the first is out of range: some who use metric units write thousands so.
fn metric_thousands<D: Dimension>(text: &str) -> Option<String> {
    let text = text.trim();
    let (parts, marks, tail) = parts_of_number(text);
    let is_thousands = (1..=3).contains(&parts[0].len()) && !parts[0].starts_with('0') && parts.get(1)?.len() == 3;
    let is_metric = read_unit::<D>(&plain(tail)).is_some_and(|unit| unit.system == UnitSystem::Metric);
    (marks == ['.'] && is_thousands && is_metric).then(|| format!("{}{tail}", parts.concat()))
}

/// The digits of a number between its points, commas and the spaces before three digits; the marks; and what follows.
fn parts_of_number(text: &str) -> (Vec<&str>, Vec<char>, &str) {
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let (mut parts, mut marks, mut rest) = (Vec::new(), Vec::new(), text);
    loop {
        let (part, after) = rest.split_at(digits(rest));
        parts.push(part);
        rest = after;
        let Some(mark) = rest.chars().next() else { break };
        let behind = &rest[mark.len_utf8()..];
        match mark {
            '.' | ',' => marks.push(mark),
            _ if mark.is_whitespace() && digits(behind) == 3 => marks.push(' '),
            _ => break,
        }
        rest = behind;
    }
    (parts, marks, rest)
}

/// `1e3 m` as `1000 m`.
fn without_exponent(plain: &str) -> Option<String> {
    let (mantissa, rest) = plain.split_once('e')?;
    let end = rest.find(|c: char| !(c.is_ascii_digit() || c == '-' || c == '+')).unwrap_or(rest.len());
    let value: f64 = format!("{mantissa}e{}", &rest[..end]).parse().ok()?;
    let number = value.to_string();
    (value.is_finite() && number.len() <= 12).then(|| format!("{number}{}", &rest[end..]))
}

/// `~24 ft` as `24 ft`, `AWG 14` as `14 AWG`. Other words may say that more or less is meant.
fn without_words_before<D: Dimension>(plain: &str) -> Option<String> {
    const ABOUT: [&str; 10] = ["~", "≈", "ca.", "ca ", "approx.", "approx ", "about ", "aprox.", "env.", "etwa "];
    const GAUGE: [&str; 3] = ["awg", "#", "no."];
    let number_with_unit = ABOUT.iter().find_map(|about| plain.strip_prefix(about));
    if let Some(text) = number_with_unit {
        let (_, rest) = read_number(text.trim_start())?;
        return Some(with_unit(text[..text.len() - rest.len()].trim(), read_unit::<D>(rest)?));
    }
    let gauge = GAUGE.iter().find_map(|word| plain.strip_prefix(word)).filter(|_| D::CODE == "wire_size")?;
    let (_, rest) = read_number(gauge.trim_start())?;
    matches!(rest, "" | "awg").then(|| format!("{} AWG", gauge[..gauge.len() - rest.len()].trim()))
}

/// The unit that a spelling most likely stands for in this dimension, though it has other meanings.
fn likely_unit<D: Dimension>(spelling: &str) -> Option<&'static Unit<D::Si>> {
    let of = |spelling: &str| D::LIKELY.iter().find(|(likely, _)| *likely == spelling).map(|(_, unit)| *unit);
    let unit = of(spelling).or_else(|| of(&shortened(spelling)?))?;
    read_unit::<D>(unit)
}

/// The unit whose word is a letter away, if all such words are of one unit.
fn misspelt_unit<D: Dimension>(word: &str) -> Option<&'static Unit<D::Si>> {
    let is_word = |word: &str| word.len() >= 4 && word.bytes().all(|byte| byte.is_ascii_lowercase());
    if !is_word(word) {
        return None;
    }
    let is_near = |other: &&str| {
        other.as_bytes()[0] == word.as_bytes()[0]
            && other.len().abs_diff(word.len()) <= 1
            && strsim::damerau_levenshtein(other, word) == 1
    };
    let own = D::UNITS.iter().flat_map(|unit| unit.spellings.iter().copied());
    let near = own.chain(all_words()).filter(|other| is_word(other)).filter(is_near);
    let mut units = near.filter_map(read_unit::<D>);
    let first = units.next()?;
    units.all(|unit| std::ptr::eq(unit, first)).then_some(first)
}

/// A compound text with both of its units, in one of the forms that are read.
fn in_parts<D: Dimension>(number: &str, first: f64, rest: &str) -> Option<String> {
    let unit_of = |text: &str| read_unit::<D>(text).or_else(|| likely_unit::<D>(text)).map(|unit| unit.spellings[0]);
    let (before, after) = rest.split_at(rest.find(|c: char| c.is_ascii_digit())?);
    let joined = before.trim_end_matches([' ', '-', ',', '&']);
    let joiner = [" and", " y", " et", " und"].iter().find_map(|joiner| joined.strip_suffix(joiner));
    let head = unit_of(joiner.unwrap_or(joined).trim_end())?;
    let (second, tail) = read_number(after)?;
    let raw = after[..after.len() - tail.len()].trim_end();
    let mut of_head = D::COMPOUNDS.iter().filter(|compound| compound.larger == head);
    let compound = match tail {
        "" => of_head.next()?,
        tail => of_head.find(|compound| unit_of(tail) == Some(compound.smaller))?,
    };
    if first.fract() != 0.0 {
        return None;
    }
    let is_bare = tail.is_empty() && raw.bytes().all(|byte| byte.is_ascii_digit());
    match (compound.bare, raw.len()) {
        // Where a hundred make one, fewer or more digits are decimals of the larger.
        (BareSmaller::TwoDigits, 1 | 3) if is_bare && compound.ratio == 100.0 => Some(format!("{number}.{raw} {head}")),
        (BareSmaller::Never, digits) if is_bare && digits != 2 => None,
        _ if second >= compound.ratio => None,
        _ if first.is_sign_negative() => {
            let total = (first.abs() * compound.ratio + second).to_string();
            (total.len() <= 10).then(|| format!("-{total} {}", compound.smaller))
        }
        _ => Some(format!("{number} {head} {raw} {}", compound.smaller)),
    }
}

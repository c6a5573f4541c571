//! The number at the start of a plain text.

/// Reads `[sign] number` at the start; gives the number and what follows it, without space between. A minus stays in the sign of
/// zero, too.
///
/// A fraction is one division of whole numbers, so that 3/16 is exactly 0.1875.
pub fn read_number(text: &str) -> Option<(f64, &str)> {
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

/// `7`, `7.2`, `.5` or `7,2`.
fn read_decimal(text: &str) -> Option<(f64, &str)> {
    let end = length_of(text, |byte| byte.is_ascii_digit() || byte == b'.');
    let number = &text[..end];
    let after_comma = text[end..].strip_prefix(',').filter(|_| !number.contains('.'));
    if let Some(read) = after_comma.and_then(|rest| read_decimal_comma(number, rest)) {
        return Some(read);
    }
    // The library refuses a second point; it would accept a point at the end.
    let number = number.parse().ok().filter(|_| !number.ends_with('.'))?;
    Some((number, &text[end..]))
}

/// `7,2`, where `whole` was `7`. Three digits after a comma may be thousands, so they are none of its decimals.
fn read_decimal_comma<'a>(whole: &str, rest: &'a str) -> Option<(f64, &'a str)> {
    let end = length_of(rest, |byte| byte.is_ascii_digit());
    let (decimals, rest) = rest.split_at(end);
    if decimals.is_empty() || decimals.len() == 3 || rest.starts_with(['.', ',']) {
        return None;
    }
    Some((format!("{whole}.{decimals}").parse().ok()?, rest))
}

/// How many bytes at the start are of a kind, which is one of ASCII.
fn length_of(text: &str, is_of_kind: impl Fn(u8) -> bool) -> usize {
    text.bytes().position(|byte| !is_of_kind(byte)).unwrap_or(text.len())
}

fn read_whole(text: &str) -> Option<(f64, &str)> {
    let end = length_of(text, |byte| byte.is_ascii_digit());
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

//! Quantity texts in plain letters: what people and their keyboards write in several ways, in one.

use std::borrow::Cow;

/// Lower case, typographic signs as their plain forms, `½` as `1/2`, vowels without accents, no space around.
///
/// Most texts are plain already and are lent.
pub fn plain(text: &str) -> Cow<'_, str> {
    let text = text.trim();
    if text.bytes().all(|byte| matches!(byte, b' '..=b'@' | b'['..=b'~')) {
        return text.into();
    }
    if text.bytes().all(|byte| matches!(byte, b' '..=b'~')) {
        return text.to_ascii_lowercase().into();
    }
    let mut plain = String::with_capacity(text.len());
    // A digit beside a fraction is no further digit of it: `1½` is not 11/2, and `½2` is not 1/22.
    let mut is_after_fraction = false;
    for c in text.chars() {
        match c {
            ' '..='~' => {
                if is_after_fraction && c.is_ascii_digit() {
                    plain.push(' ');
                }
                plain.push(c.to_ascii_lowercase());
            }
            // In most temperatures, and no letter.
            '°' => plain.push(c),
            _ if c.is_whitespace() => plain.push(' '),
            _ => {
                if let Some(fraction) = vulgar_fraction(c) {
                    if plain.ends_with(|last: char| last.is_ascii_digit()) {
                        plain.push(' ');
                    }
                    plain.push_str(fraction);
                    is_after_fraction = true;
                    continue;
                }
                c.to_lowercase().for_each(|c| push_plain(&mut plain, c));
            }
        }
        is_after_fraction = false;
    }
    plain.into()
}

/// Adds the plain form of a letter or a sign.
fn push_plain(plain: &mut String, c: char) {
    match c {
        '\u{2212}' | '\u{2010}'..='\u{2013}' => plain.push('-'),
        '\u{2018}' | '\u{2019}' | '\u{2032}' | '\u{b4}' | '\u{2b9}' => plain.push('\''),
        '\u{201c}' | '\u{201d}' | '\u{2033}' | '\u{2ba}' => plain.push('"'),
        '\u{2044}' | '\u{2215}' => plain.push('/'),
        // The ordinal sign of Spanish keyboards and the ring serve as a degree sign.
        '\u{ba}' | '\u{2da}' => plain.push('°'),
        '\u{2103}' => plain.push_str("°c"),
        '\u{2109}' => plain.push_str("°f"),
        'á' | 'à' | 'â' | 'ä' => plain.push('a'),
        'é' | 'è' | 'ê' | 'ë' => plain.push('e'),
        'í' | 'ì' | 'î' | 'ï' => plain.push('i'),
        'ó' | 'ò' | 'ô' | 'ö' => plain.push('o'),
        // The signs of micro, too.
        'ú' | 'ù' | 'û' | 'ü' | '\u{b5}' | '\u{3bc}' => plain.push('u'),
        'ß' => plain.push_str("ss"),
        // The same accents as signs of their own, after their vowel.
        '\u{300}' | '\u{301}' | '\u{302}' | '\u{308}' if plain.ends_with(['a', 'e', 'i', 'o', 'u']) => {}
        _ => plain.push(c),
    }
}

/// The fractions that have a sign of their own.
fn vulgar_fraction(c: char) -> Option<&'static str> {
    Some(match c {
        '½' => "1/2",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅐' => "1/7",
        '⅑' => "1/9",
        '⅒' => "1/10",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '⅕' => "1/5",
        '⅖' => "2/5",
        '⅗' => "3/5",
        '⅘' => "4/5",
        '⅙' => "1/6",
        '⅚' => "5/6",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        _ => return None,
    })
}

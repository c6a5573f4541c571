//! Numbers and signs of units as a language writes them. Feet and inches have the same signs in all: that is what a tape says.

use std::borrow::Cow;

use super::language::Language;

/// The space between a number and its unit, at which no line breaks.
pub const NO_BREAK_SPACE: char = '\u{a0}';
/// The narrow one, which stands before `%` in French.
pub const NARROW_NO_BREAK_SPACE: char = '\u{202f}';

/// A number that was written with a decimal point, with the mark of the language: `7,2` in French.
pub fn decimal(number: &str, language: Language) -> Cow<'_, str> {
    match language {
        Language::French if number.contains('.') => Cow::Owned(number.replace('.', ",")),
        Language::English | Language::Spanish | Language::French => Cow::Borrowed(number),
    }
}

/// The sign of a unit that `figures` and formatted quantities name in plain letters.
pub fn unit_sign(unit: &str, language: Language) -> &str {
    match (unit, language) {
        ("percent", _) => "%",
        ("uH", _) => "µH",
        ("uH/ft", _) => "µH/ft",
        ("uH/m", _) => "µH/m",
        ("celsius", _) => "°C",
        ("fahrenheit", _) => "°F",
        ("inch", _) => "in",
        ("days", Language::Spanish) => "días",
        ("days", Language::French) => "jours",
        ("fl oz", Language::Spanish) => "oz líq",
        ("fl oz", Language::French) => "oz liq",
        ("megohm", Language::Spanish | Language::French) => "MΩ",
        ("ohm", Language::Spanish | Language::French) => "Ω",
        (other, _) => other,
    }
}

/// What stands between a number and the sign of its unit.
fn gap(sign: &str, language: Language) -> &'static str {
    match (sign, language) {
        ("%", Language::French) => "\u{202f}",
        (_, Language::English) => " ",
        (_, Language::Spanish | Language::French) => "\u{a0}",
    }
}

/// A quantity that was written in English, such as `12.8 ft`, as the language writes it.
pub fn quantity(english: String, language: Language) -> String {
    if language == Language::English {
        return english;
    }
    match english.split_once(' ') {
        Some((number, unit)) => with_unit(number, unit, language),
        None => decimal(&english, language).into_owned(),
    }
}

/// A number with the sign of its unit.
pub fn with_unit(number: &str, unit: &str, language: Language) -> String {
    let sign = unit_sign(unit, language);
    format!("{}{}{sign}", decimal(number, language), gap(sign, language))
}

/// What stands between a name and what is said of it.
pub fn colon(language: Language) -> &'static str {
    match language {
        Language::English | Language::Spanish => ": ",
        Language::French => "\u{a0}: ",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_follow_the_language() {
        let said = |text: &str, language| quantity(text.to_owned(), language);
        assert_eq!(said("7.2 m", Language::English), "7.2 m");
        assert_eq!(said("7.2 m", Language::Spanish), "7.2\u{a0}m");
        assert_eq!(said("7.2 m", Language::French), "7,2\u{a0}m");
        assert_eq!(said("29 fl oz", Language::French), "29\u{a0}oz liq");
        assert_eq!(said("1-1/2 in", Language::French), "1-1/2\u{a0}in");
        assert_eq!(with_unit("12.5", "percent", Language::French), "12,5\u{202f}%");
        assert_eq!(with_unit("12.5", "percent", Language::English), "12.5 %");
    }
}

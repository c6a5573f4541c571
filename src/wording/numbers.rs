//! Numbers and units as a language writes them: the decimal mark, the signs of units, and the space between the two.

use std::borrow::Cow;

use super::language::Language;

/// The space between a number and its unit, at which no line breaks.
pub const NO_BREAK_SPACE: char = '\u{a0}';
/// The narrow one, which stands before `%` in French.
pub const NARROW_NO_BREAK_SPACE: char = '\u{202f}';

/// A number that was written with a decimal point, with the decimal mark of a language: `7.2`, `7,2`.
///
/// ```
/// use loopwright::wording::{Language, decimal};
///
/// assert_eq!(decimal("7.2", Language::Spanish), "7.2");
/// assert_eq!(decimal("7.2", Language::French), "7,2");
/// ```
pub fn decimal(text: &str, language: Language) -> Cow<'_, str> {
    match language {
        Language::English | Language::Spanish => Cow::Borrowed(text),
        Language::French if text.contains('.') => Cow::Owned(text.replace('.', ",")),
        Language::French => Cow::Borrowed(text),
    }
}

/// The sign of a unit that `figures` and the grammar name in plain letters: `percent`, `uH`, `celsius`, `ft`, `in`. What has no sign of
/// its own stays.
///
/// ```
/// use loopwright::wording::{Language, unit_sign};
///
/// assert_eq!(unit_sign("ft", Language::Spanish), "pies");
/// assert_eq!(unit_sign("ft", Language::French), "pi");
/// assert_eq!(unit_sign("uH", Language::French), "µH");
/// ```
pub fn unit_sign(unit: &str, language: Language) -> &str {
    use Language::{English, French, Spanish};
    match (unit, language) {
        ("percent", _) => "%",
        ("uH", _) => "µH",
        ("celsius", _) => "°C",
        ("fahrenheit", _) => "°F",
        ("inch" | "in", English) => "in",
        ("inch" | "in", Spanish) => "pulg",
        ("inch" | "in", French) => "po",
        ("ft", Spanish) => "pies",
        ("ft", French) => "pi",
        ("fl oz", Spanish) => "oz líq",
        ("fl oz", French) => "oz liq",
        ("mph", Spanish | French) => "mi/h",
        ("days", Spanish) => "días",
        ("days", French) => "jours",
        (other, _) => other,
    }
}

/// What stands between a name and what is said of it.
pub fn colon(language: Language) -> &'static str {
    match language {
        Language::English | Language::Spanish => ": ",
        Language::French => "\u{a0}: ",
    }
}

/// A number with its unit on one line: `7,2 m`, `1 pie`, `12 %`. The number is written with a decimal point.
///
/// ```
/// use loopwright::wording::{Language, with_unit};
///
/// assert_eq!(with_unit("1", "ft", Language::Spanish), "1\u{a0}pie");
/// assert_eq!(with_unit("0.5", "percent", Language::French), "0,5\u{202f}%");
/// ```
pub fn with_unit(number: &str, unit: &str, language: Language) -> String {
    let sign = unit_sign(unit, language);
    let sign = match (sign, number) {
        ("pies", "1") => "pie",
        ("días", "1") => "día",
        ("jours", "0" | "1") => "jour",
        _ => sign,
    };
    let space = match (sign, language) {
        ("%", Language::French) => NARROW_NO_BREAK_SPACE,
        _ => NO_BREAK_SPACE,
    };
    format!("{}{space}{sign}", decimal(number, language))
}

#[cfg(test)]
mod tests {
    use super::{decimal, with_unit};
    use crate::wording::Language::{English, French, Spanish};

    #[test]
    fn only_french_has_a_decimal_comma() {
        let written = |text| [English, Spanish, French].map(|language| decimal(text, language).into_owned());
        assert_eq!(written("-3.25"), ["-3.25", "-3.25", "-3,25"]);
        assert_eq!(written("3/16"), ["3/16", "3/16", "3/16"]);
    }

    #[test]
    fn a_unit_is_that_of_the_language_and_never_begins_a_line() {
        let written = |number, unit| [English, Spanish, French].map(|language| with_unit(number, unit, language));
        assert_eq!(written("2", "ft"), ["2\u{a0}ft", "2\u{a0}pies", "2\u{a0}pi"]);
        assert_eq!(written("1", "ft"), ["1\u{a0}ft", "1\u{a0}pie", "1\u{a0}pi"]);
        assert_eq!(written("3/16", "in"), ["3/16\u{a0}in", "3/16\u{a0}pulg", "3/16\u{a0}po"]);
        assert_eq!(written("97.3", "uH"), ["97.3\u{a0}µH", "97.3\u{a0}µH", "97,3\u{a0}µH"]);
        assert_eq!(written("12.5", "percent"), ["12.5\u{a0}%", "12.5\u{a0}%", "12,5\u{202f}%"]);
    }
}

//! Codes of reports in words. A report holds members of closed lists by their codes.

use crate::vocabulary::Vocabulary;

/// The member of a closed list that has a code.
pub fn find_member<V: Vocabulary>(code: &str) -> Option<V> {
    V::ALL.iter().copied().find(|member| member.code() == code)
}

/// The label of a code; the code itself where the list does not hold it.
pub fn label<V: Vocabulary>(code: &'static str) -> &'static str {
    find_member::<V>(code).map_or(code, Vocabulary::label)
}

/// The label of a code; the code in words where the list does not hold it.
pub fn format_label<V: Vocabulary>(code: &str) -> String {
    find_member::<V>(code).map_or_else(|| format_code(code), |member| member.label().to_owned())
}

/// A code in words: `too narrow`.
pub fn format_code(code: &str) -> String {
    code.replace('_', " ")
}

/// A code in words that begin a sentence: `Too narrow`.
pub fn format_code_capitalized(code: &str) -> String {
    let mut words = format_code(code);
    if let Some(first) = words.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    words
}

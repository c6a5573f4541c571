//! Codes in words, where a report holds a code or a label of the caller and not a member of a closed list.

use crate::vocabulary::Vocabulary;

/// The label of a code; the code in words where the list does not hold it.
pub fn format_label<V: Vocabulary>(code: &str) -> String {
    let member = V::ALL.iter().find(|member| member.code() == code);
    member.map_or_else(|| format_code(code), |member| member.label().to_owned())
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

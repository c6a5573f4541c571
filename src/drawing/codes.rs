//! Codes in words, where a report holds a code and not a member of a closed list.

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

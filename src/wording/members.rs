//! The names of members of closed lists.

use super::language::Language;
use crate::vocabulary::Vocabulary;

/// The name of a member in a menu, in a language.
pub fn label(member: impl Vocabulary, language: Language) -> &'static str {
    let _ = language;
    member.label()
}

/// What a member means, in a language.
pub fn description(member: impl Vocabulary, language: Language) -> &'static str {
    let _ = language;
    member.description()
}

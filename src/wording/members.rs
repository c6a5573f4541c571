//! The words of closed lists: English ones stand where the list is declared, others in the files of their language.

use super::catalog::{Catalog, MemberWords};
use super::language::Language;
use crate::calculation::report::MemberFact;
use crate::vocabulary::Vocabulary;

/// The short name of a member that a sentence holds.
pub fn label_of(member: &MemberFact, language: Language) -> &'static str {
    words(member, language).map_or(member.label, |words| words.label)
}

/// What a member means that a sentence holds.
pub fn description_of(member: &MemberFact, language: Language) -> &'static str {
    words(member, language).map_or(member.description, |words| words.description)
}

/// A member of a closed list, in words.
pub trait MemberIn {
    /// The short name, as in a menu.
    fn label_in(self, language: Language) -> &'static str;
    /// What it means, in one or two sentences.
    fn description_in(self, language: Language) -> &'static str;
}

impl<V: Vocabulary> MemberIn for V {
    fn label_in(self, language: Language) -> &'static str {
        label_of(&MemberFact::of(self), language)
    }

    fn description_in(self, language: Language) -> &'static str {
        description_of(&MemberFact::of(self), language)
    }
}

fn words(member: &MemberFact, language: Language) -> Option<MemberWords> {
    if language == Language::English {
        return None;
    }
    Catalog::of(language).member(member.list, member.code)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::vehicles::VehicleClass;
    use crate::practice::wires::WireGauge;

    #[test]
    fn english_stands_where_the_list_is_declared() {
        let car = VehicleClass::PassengerCar;
        assert_eq!(car.label_in(Language::English), car.label());
        assert_eq!(car.description_in(Language::English), car.description());
    }

    #[test]
    fn a_code_that_is_no_id_has_its_words_too() {
        let wire = WireGauge::ALL[0];
        assert_ne!(wire.description_in(Language::French), wire.description());
    }
}

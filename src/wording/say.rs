//! The sentence of a statement.

use std::borrow::Cow;

use fluent_bundle::FluentArgs;

use super::catalog::{Catalog, Sentence};
use super::facts::{argument, join_phrases};
use super::language::Language;
use crate::calculation::report::{FactValue, Statement};

/// The capacity that most sentences need, bytes.
const USUAL_LENGTH: usize = 256;

/// The words of a statement. One without variables is borrowed.
///
/// An id without a sentence, or a variable without its fact, is a mistake of ours that shows as itself.
pub fn say(statement: &Statement, language: Language) -> Cow<'static, str> {
    let words = say_one(statement, language);
    if statement.more().is_empty() {
        return words;
    }
    let sentences = std::iter::once(words).chain(statement.more().iter().map(|next| say(next, language)));
    Cow::Owned(sentences.collect::<Vec<_>>().join(" "))
}

fn say_one(statement: &Statement, language: Language) -> Cow<'static, str> {
    let catalog = Catalog::of(language);
    let id = statement.id();
    match catalog.sentence(id) {
        Some(Sentence::Fixed(words)) => Cow::Borrowed(words),
        Some(Sentence::Variable(pattern, variables)) => {
            let mut arguments = FluentArgs::with_capacity(variables.len());
            for variable in variables {
                let value = match statement.fact(variable.fact) {
                    Some(FactValue::Phrases(phrases, join)) => {
                        let said: Vec<_> = phrases.iter().map(|phrase| say(phrase, language)).collect();
                        Some(join_phrases(&said, *join, language).into())
                    }
                    fact => fact.and_then(|fact| argument(fact, variable.form, language)),
                };
                if let Some(value) = value {
                    arguments.set(variable.name, value);
                }
            }
            let mut words = String::with_capacity(USUAL_LENGTH);
            let mut errors = Vec::new();
            let written = catalog.bundle.write_pattern(&mut words, pattern, Some(&arguments), &mut errors);
            debug_assert!(written.is_ok() && errors.is_empty(), "{id}: {errors:?}");
            Cow::Owned(words)
        }
        None => {
            debug_assert!(false, "{} has no sentence {id}", language.tag());
            Cow::Borrowed(id)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calculation::report::{ListJoin, Param};

    #[test]
    fn a_sentence_without_variables_is_borrowed() {
        assert!(matches!(say(&Statement::new("errors-null"), Language::English), Cow::Borrowed(_)));
    }

    #[test]
    fn phrases_stand_in_a_sentence_and_sentences_behind_it() {
        let meant = |name: &'static str| Statement::new("errors-meant").text("meant", name);
        let statement = Statement::new("errors-did-you-mean")
            .phrases("meant", vec![meant("car"), meant("van")], ListJoin::Or)
            .followed_by(Statement::new("errors-known-values").text("known", "car, van, bus"));
        assert_eq!(say(&statement, Language::English), "Did you mean car or van? One of: car, van, bus.");
        let texts: Vec<_> = Param::of(&[&statement]).into_iter().filter_map(|param| param.text).collect();
        assert_eq!(texts, ["car", "van", "car, van, bus"]);
    }

    #[test]
    fn alternatives_are_chosen_by_a_code_and_messages_hold_messages() {
        let send = |bounds| {
            let statement = Statement::new("errors-send-allowed").code("bounds", bounds).code("things", "items");
            say(&statement.text("least", "1").text("greatest", "20"), Language::English)
        };
        assert_eq!(send("both"), "Send from 1 to 20 items.");
        assert_eq!(send("greatest"), "Send at most 20 items.");
    }
}

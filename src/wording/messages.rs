//! The sentences of a language as they are published, for programs that have their own words.

use fluent_bundle::FluentResource;
use fluent_syntax::ast::{Entry, Message, Resource};
use fluent_syntax::serializer::serialize;
use serde::Serialize;
use utoipa::ToSchema;

use super::catalog::{Catalog, Sentence, Variable};
use super::facts::FactForm;
use super::language::Language;

/// The sentences of a language.
#[derive(Serialize, ToSchema)]
pub struct MessagesTable {
    /// The language (BCP 47).
    #[schema(min_length = 2)]
    language: &'static str,
    /// The sentences, theme by theme.
    messages: Vec<MessageRow>,
}

/// One sentence.
#[derive(Serialize, ToSchema)]
struct MessageRow {
    /// Its id, the same in every language. It begins with its theme.
    #[schema(pattern = "^[a-z0-9-]+$")]
    id: &'static str,
    /// The sentence in the syntax of Project Fluent: facts stand in braces, and a fact may choose between alternatives.
    #[schema(min_length = 1)]
    text: String,
    /// What it holds.
    facts: Vec<MessageFact>,
}

/// A fact that a sentence holds.
#[derive(Serialize, ToSchema)]
struct MessageFact {
    /// The name, as in `params`.
    #[schema(pattern = "^[a-z0-9_]+$")]
    name: &'static str,
    /// How it is said: `words` (a number comes with its unit, a member in lower case), `number` (without its unit), `code` (chooses
    /// between alternatives), `label` (as in a menu) or `description` (in a sentence).
    form: &'static str,
}

/// The sentences of a language, in the order of its files.
pub fn messages(language: Language) -> MessagesTable {
    let catalog = Catalog::of(language);
    let resources = language.resources().iter().filter_map(|text| FluentResource::try_new((*text).to_owned()).ok());
    let mut messages = Vec::new();
    for resource in resources {
        for entry in resource.entries() {
            let Entry::Message(message) = entry else { continue };
            // The ids of the catalogue live as long as the process.
            let Some((id, sentence)) = catalog.entry(message.id.name) else { continue };
            messages.push(MessageRow { id, text: text_of(message), facts: facts_of(sentence) });
        }
    }
    MessagesTable { language: language.tag(), messages }
}

/// A sentence as it stands in its file, without its id and the indent of its lines.
fn text_of(message: &Message<&str>) -> String {
    let alone = Message { comment: None, ..message.clone() };
    let text = serialize(&Resource { body: vec![Entry::Message(alone)] });
    text.split_once('=').map_or("", |(_, text)| text).trim().to_owned()
}

fn facts_of(sentence: &Sentence) -> Vec<MessageFact> {
    match sentence {
        Sentence::Fixed(_) => Vec::new(),
        Sentence::Variable(_, variables) => variables.iter().map(MessageFact::of).collect(),
    }
}

impl MessageFact {
    fn of(variable: &Variable) -> Self {
        let form = match variable.form {
            FactForm::Words => "words",
            FactForm::Number => "number",
            FactForm::Code => "code",
            FactForm::Label => "label",
            FactForm::Description => "description",
        };
        Self { name: variable.fact, form }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sentence_is_published_with_its_facts() {
        for language in Language::ALL {
            let table = messages(*language);
            assert!(table.messages.len() > 300, "{} has {}", language.tag(), table.messages.len());
            let null = table.messages.iter().find(|row| row.id == "errors-null").unwrap();
            assert!(null.facts.is_empty() && !null.text.contains('='), "{}", null.text);
            let near = table.messages.iter().find(|row| row.id == "sizing-near-least-inductance").unwrap();
            let names: Vec<_> = near.facts.iter().map(|fact| (fact.name, fact.form)).collect();
            assert_eq!(names, [("as_built_low", "words"), ("inductance_min", "words")]);
            assert!(near.text.contains("{ $as_built_low }"), "{}", near.text);
        }
    }
}

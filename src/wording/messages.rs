//! The sentences of a language as they are published, for programs that have their own words.

use super::catalog::{Catalog, Sentence, Variable};
use super::language::Language;
use fluent_bundle::FluentResource;
use fluent_syntax::ast::{Entry, Message, Resource};
use fluent_syntax::serializer::serialize;

/// One sentence.
pub struct PublishedMessage {
    /// Its id, the same in every language. It begins with its theme.
    pub id: &'static str,
    /// The sentence in the syntax of Project Fluent.
    pub text: String,
    /// What it holds.
    pub facts: &'static [Variable],
}

/// The sentences of a language, in the order of its files.
pub fn messages(language: Language) -> Vec<PublishedMessage> {
    let catalog = Catalog::of(language);
    let resources = language.resources().iter().filter_map(|text| FluentResource::try_new((*text).to_owned()).ok());
    let mut messages = Vec::new();
    for resource in resources {
        for entry in resource.entries() {
            let Entry::Message(message) = entry else { continue };
            // The ids of the catalogue live as long as the process.
            let Some((id, sentence)) = catalog.entry(message.id.name) else { continue };
            messages.push(PublishedMessage { id, text: text_of(message), facts: facts_of(sentence) });
        }
    }
    messages
}

/// A sentence as it stands in its file, without its id and the indent of its lines.
fn text_of(message: &Message<&str>) -> String {
    let alone = Message { comment: None, ..message.clone() };
    let text = serialize(&Resource { body: vec![Entry::Message(alone)] });
    text.split_once('=').map_or("", |(_, text)| text).trim().to_owned()
}

fn facts_of(sentence: &'static Sentence) -> &'static [Variable] {
    match sentence {
        Sentence::Fixed(_) => &[],
        Sentence::Variable(_, variables) => variables,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::wording::catalog::FactForm;

    #[test]
    fn every_sentence_is_published_with_its_facts() {
        for language in Language::ALL {
            let messages = messages(*language);
            assert!(messages.len() > 300, "{} has {}", language.tag(), messages.len());
            let null = messages.iter().find(|message| message.id == "errors-null").unwrap();
            assert!(null.facts.is_empty() && !null.text.contains('='), "{}", null.text);
            let near = messages.iter().find(|message| message.id == "sizing-near-least-inductance").unwrap();
            let facts: Vec<_> = near.facts.iter().map(|variable| (variable.fact, variable.form)).collect();
            assert_eq!(facts, [("as_built_low", FactForm::Words), ("inductance_min", FactForm::Words)]);
            assert!(near.text.contains("{ $as_built_low }"), "{}", near.text);
        }
    }
}

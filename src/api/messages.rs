//! The sentences that reports are made of, for programs that have their own words.

use actix_web::{HttpRequest, HttpResponse};
use serde::Serialize;
use tokio::sync::OnceCell;
use utoipa::ToSchema;

use super::compute::for_request;
use super::content_language::{self, PerLanguage};
use super::problem::Problem;
use super::respond::{cached_document, json_text};
use super::response_body::CachedDocument;
use crate::wording::{self, FactForm, Language, PublishedMessage};

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
pub struct MessageRow {
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
pub struct MessageFact {
    /// The name, as in `params`.
    #[schema(pattern = "^[a-z0-9_]+$")]
    name: &'static str,
    /// How it is said: `words` (a number comes with its unit, a member in lower case), `number` (without its unit), `code` (chooses
    /// between alternatives), `label` (as in a menu) or `description` (in a sentence).
    form: &'static str,
}

impl MessagesTable {
    /// The first sentences alone, in English: what the description shows.
    pub fn example() -> Self {
        let mut table = Self::of(Language::English);
        table.messages.truncate(2);
        table
    }

    /// The sentences of a language.
    pub fn of(language: Language) -> Self {
        let messages = wording::messages(language).into_iter().map(MessageRow::from).collect();
        Self { language: language.tag(), messages }
    }
}

impl From<PublishedMessage> for MessageRow {
    fn from(message: PublishedMessage) -> Self {
        let facts = message.facts.iter().map(|variable| MessageFact {
            name: variable.fact,
            form: match variable.form {
                FactForm::Words => "words",
                FactForm::Number => "number",
                FactForm::Code => "code",
                FactForm::Label => "label",
                FactForm::Description => "description",
            },
        });
        Self { id: message.id, text: message.text, facts: facts.collect() }
    }
}

/// The capacity reserved for the text, bytes.
const CAPACITY: usize = 256 * 1024;

/// Answers with the sentences of a language, written and packed for the first who asks, on the pool.
///
/// # Errors
/// 503 when the pool has no place.
pub async fn list(request: HttpRequest) -> Result<HttpResponse, Problem> {
    static DOCUMENTS: PerLanguage<OnceCell<CachedDocument>> = PerLanguage::new();
    let language = content_language::of_request(&request);
    let render = move |_| -> Result<CachedDocument, Problem> {
        let text = json_text(&MessagesTable::of(language), CAPACITY)?;
        Ok(CachedDocument::new(text, "application/json").in_language(language).packed())
    };
    let document = DOCUMENTS.get_or_init(language, OnceCell::new);
    let document = document.get_or_try_init(|| async { for_request::run(&request, render).await? }).await?;
    Ok(cached_document(document, &request))
}

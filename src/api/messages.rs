//! The sentences that reports are made of, for programs that have their own words.

use actix_web::{HttpRequest, HttpResponse};
use tokio::sync::OnceCell;

use super::compute::for_request;
use super::content_language::{self, PerLanguage};
use super::problem::Problem;
use super::respond::{cached_document, json_text};
use super::response_body::CachedDocument;
use crate::wording;

/// The path of the sentences.
pub const PATH: &str = "/v1/reference/messages";

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
        let text = json_text(&wording::messages(language), CAPACITY)?;
        Ok(CachedDocument::new(text, "application/json").in_language(language).packed())
    };
    let document = DOCUMENTS.get_or_init(language, OnceCell::new);
    let document = document.get_or_try_init(|| async { for_request::run(&request, render).await? }).await?;
    Ok(cached_document(document, &request))
}

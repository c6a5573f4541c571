//! The documentation for people: a light page that lists all operations, a page for each, and a viewer that sends requests.
//!
//! - `content`: the operations, taken from the description.
//! - `example_files`: answers to examples that are no JSON.
//! - `fields`: tables of fields.
//! - `markup`: the pages as HTML, in a language.
//! - `assets`: style sheet, script and icon; the files of the viewer.

mod assets;
mod content;
mod example_files;
mod fields;
mod markup;

use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse};
use tokio::sync::OnceCell;

use self::content::Content;
use self::markup::HTML;
use super::compute::for_request;
use super::content_language;
use super::problem::{Problem, ProblemCode};
use super::respond::{OWN_STYLE, cached_page};
use super::response_body::CachedDocument;
use crate::wording::Language;

/// What is shown, and its pages: for each language the list and a page for each operation, rendered for the first who asks.
struct Documentation {
    content: Content,
    pages: Vec<OnceCell<CachedDocument>>,
}

impl Documentation {
    /// All of it, without a page that is rendered.
    fn read() -> Self {
        let content = Content::read();
        let count = Language::ALL.len() * (content.operations.len() + 1);
        Self { content, pages: (0..count).map(|_| OnceCell::const_new()).collect() }
    }

    /// Reads the description for the first who asks, on the pool.
    async fn of(request: &HttpRequest) -> Result<&'static Self, Problem> {
        static DOCUMENTATION: OnceCell<Documentation> = OnceCell::const_new();
        DOCUMENTATION.get_or_try_init(|| for_request::run(request, |_| Self::read())).await
    }

    /// A page: the list where no operation is given.
    async fn page(
        &'static self,
        operation: Option<usize>,
        language: Language,
        request: &HttpRequest,
    ) -> Result<&'static CachedDocument, Problem> {
        let before = Language::ALL.iter().position(|other| *other == language).unwrap_or_default();
        let page = before * (self.content.operations.len() + 1) + operation.map_or(0, |at| at + 1);
        let render = move |_| {
            let text = match operation {
                None => markup::list(&self.content, language),
                Some(at) => markup::operation(&self.content, &self.content.operations[at], language),
            };
            CachedDocument::new(text, HTML).in_language(language).packed()
        };
        self.pages[page].get_or_try_init(|| for_request::run(request, render)).await
    }
}

/// Redirects from a folder to the address with the slash, where the relative links of its page hold.
///
/// # Errors
/// None.
pub fn add_slash(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    let folder = request.path().rsplit('/').next().unwrap_or_default();
    Ok(moved(&format!("{folder}/")))
}

/// A page of the documentation, or a file of it.
///
/// # Errors
/// 404 for what it does not have; 503 when the pool has no place.
pub async fn page(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let name = request.match_info().query("file");
    if let Some(asset) = assets::of_pages(name) {
        return asset.respond(&request).await;
    }
    if assets::has_moved(name) {
        return Ok(moved(&format!("try/{name}")));
    }
    let documentation = Documentation::of(&request).await?;
    let content = &documentation.content;
    if let Some(file) = content.file(name) {
        return Ok(cached_page(&file.document, OWN_STYLE, &request));
    }
    let operation = match name {
        "" | "index.html" => None,
        name => {
            let at = content.operations.iter().position(|operation| operation.anchor == name);
            Some(at.ok_or_else(|| Problem::new(ProblemCode::NotFound))?)
        }
    };
    let page = documentation.page(operation, content_language::of_request(&request), &request).await?;
    Ok(cached_page(page, assets::SOURCES, &request))
}

/// The viewer that sends requests, or a file of it.
///
/// # Errors
/// 404 for a file that it does not have; 503 when the pool has no place.
pub async fn viewer(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let asset = assets::of_viewer(request.match_info().query("file"));
    asset.ok_or_else(|| Problem::new(ProblemCode::NotFound))?.respond(&request).await
}

fn moved(to: &str) -> HttpResponse {
    HttpResponse::PermanentRedirect().insert_header((header::LOCATION, to)).finish()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn every_operation_has_an_address_of_its_own_that_is_no_file() {
        let content = Content::read();
        let names: BTreeSet<_> = content.operations.iter().map(|operation| operation.anchor.as_str()).collect();
        assert_eq!(names.len(), content.operations.len());
        for name in &names {
            let is_plain = name.bytes().all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-');
            assert!(is_plain && !["guide", "try"].contains(name), "{name}");
        }
        for name in ["loop-sizing", "drawings-plan", "drawings-plan-by-link", "reference-roles", "problems-slug"] {
            assert!(names.contains(name), "{name} was an address");
        }
    }

    #[test]
    fn every_page_is_written_in_every_language() {
        let content = Content::read();
        for language in Language::ALL {
            let list = markup::list(&content, *language);
            assert!(list.contains(&format!("<html lang=\"{}\">", language.tag())));
            let sizing = content.operations.iter().find(|operation| operation.anchor == "loop-sizing").unwrap();
            let page = markup::operation(&content, sizing, *language);
            for text in [&list, &page] {
                assert!(!text.contains("docs-") && !text.contains("style="), "{text}");
            }
        }
    }
}

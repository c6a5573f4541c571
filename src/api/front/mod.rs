//! The front page: what the service does, the helper alive, the request and the answer behind what it shows, and the way to everything
//! else. It needs nothing from elsewhere.

mod snippets;

use std::sync::OnceLock;

use actix_web::{HttpRequest, HttpResponse};
use maud::{Markup, PreEscaped, html};

use self::snippets::Place;
use super::app_state::AppState;
use super::compute::for_request;
use super::content_language::of_request;
use super::embed::VERSION;
use super::problem::{Problem, ProblemCode};
use super::respond::{cached_document, cached_page, for_a_year};
use super::response_body::CachedDocument;
use crate::calculation::Calculation;
use crate::calculation::loop_sizing::LoopSizingRequest;
use crate::calculation::report::Statement;
use crate::calculation::summary::Summarized;
use crate::wording::{Language, Worded, say};

/// What the page loads: files of this service, and calls to it.
const SOURCES: &str =
    "script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; require-trusted-types-for 'script'";

/// The question that the page begins with.
const FIRST_QUESTION: &str = r#"{ "opening": { "width": "24 ft", "barrier": "slide_gate" } }"#;

/// The page, in a language.
///
/// # Errors
/// 503 when the pool has no place to render it.
pub async fn page(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let language = of_request(&request);
    let state = AppState::of(&request);
    let settings = &state.settings;
    let key = settings.front_page_key.clone().filter(|_| settings.keys.is_some());
    // Without a public address the page's script puts in the one that the reader's browser has.
    let has_address = !settings.public_url.is_empty();
    let address = if has_address { settings.public_url.clone() } else { format!("http://{}", settings.listen) };
    let place = Place { address, is_public: has_address, needs_key: settings.keys.is_some() };
    let render = move |_| {
        let text = front_page(&place, key.as_deref(), language).into_string();
        CachedDocument::new(text, "text/html; charset=utf-8").in_language(language).packed()
    };
    let pages = &state.front_pages;
    let page = pages[language as usize].get_or_try_init(|| for_request::run(&request, render)).await?;
    Ok(cached_page(page, SOURCES, &request))
}

/// The style sheet or the script of the page.
///
/// # Errors
/// 404 for a file that it does not have.
pub fn file(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    static SHEET: OnceLock<CachedDocument> = OnceLock::new();
    static SCRIPT: OnceLock<CachedDocument> = OnceLock::new();
    let (version, name) = (request.match_info().query("version"), request.match_info().query("file"));
    let document = match name {
        "front.css" => SHEET.get_or_init(|| CachedDocument::new(include_str!("front.css"), "text/css").packed()),
        "front.js" => SCRIPT.get_or_init(|| CachedDocument::new(include_str!("front.js"), "text/javascript").packed()),
        _ => return Err(Problem::new(ProblemCode::NotFound)),
    };
    if version != VERSION {
        return Err(Problem::new(ProblemCode::NotFound));
    }
    let mut response = cached_document(document, request);
    for_a_year(&mut response);
    Ok(response)
}

/// The answer to the first question, as the page shows it.
fn first_answer(language: Language) -> Option<String> {
    let asked: LoopSizingRequest = serde_json::from_str(FIRST_QUESTION).ok()?;
    let report = asked.answer().ok()?.worded(language);
    serde_json::to_string_pretty(report.summary()).ok()
}

fn front_page(place: &Place, key: Option<&str>, language: Language) -> Markup {
    let words = |statement: Statement| say(&statement, language).into_owned();
    let title = words(Statement::new("front-title"));
    html! {
        (PreEscaped("<!doctype html>"))
        html lang=(language.tag()) data-address=[(!place.is_public).then_some(&place.address)] {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width";
                meta name="color-scheme" content="light dark";
                meta name="description" content=(words(Statement::new("front-lead")));
                title { "Loopwright · " (title) }
                link rel="icon" href="docs/icon.svg";
                link rel="stylesheet" href=(format!("front/{VERSION}/front.css"));
                script type="module" src=(format!("embed/{VERSION}/helper.js")) {}
                script type="module" src=(format!("front/{VERSION}/front.js")) {}
            }
            body {
                a.skip href="#main" { (words(Statement::new("front-skip"))) }
                header {
                    b { "Loopwright" }
                    nav aria-label=(words(Statement::new("front-pages"))) {
                        a href="docs/" { (words(Statement::new("front-requests"))) }
                        a href="docs/guide" { (words(Statement::new("front-guide"))) }
                        a href="changes" { (words(Statement::new("front-changes"))) }
                        a href="openapi.json" { (words(Statement::new("front-description"))) }
                    }
                    nav aria-label=(words(Statement::new("front-languages"))) {
                        @for other in Language::ALL {
                            a href=(format!("?lang={}", other.tag())) lang=(other.tag()) hreflang=(other.tag())
                                aria-current=[(*other == language).then_some("true")] { (say(&Statement::new("front-language"), *other)) }
                        }
                    }
                }
                main id="main" tabindex="-1" {
                    h1 { (title) }
                    p.lead { (words(Statement::new("front-lead"))) }
                    section.helper aria-label=(words(Statement::new("front-try"))) {
                        loopwright-helper opening-width="24 ft" barrier="slide_gate" publishable-key=[key] {}
                        noscript { p { (words(Statement::new("front-no-script"))) } }
                    }
                    h2 { (words(Statement::new("front-behind"))) }
                    p { (words(Statement::new("front-behind-lead"))) }
                    @for snippet in place.questions(FIRST_QUESTION, language) {
                        h3 { (snippet.title) }
                        pre tabindex="0" { code data-snippet=(snippet.name) {
                            (snippet.before) span data-request=(snippet.name) { (snippet.request) } (snippet.after)
                        } }
                    }
                    h3 { (words(Statement::new("front-answer"))) }
                    pre tabindex="0" { code id="answer" { (first_answer(language).unwrap_or_default()) } }
                    h2 { (words(Statement::new("front-embed"))) }
                    p { (words(Statement::new("front-embed-lead"))) }
                    pre tabindex="0" { code data-snippet="html" { (place.embedding(language)) } }
                }
            }
        }
    }
}

//! The pages for people: what problem types point to, the guide for integrators, and the changes of the contract.

use actix_web::{HttpRequest, HttpResponse};
use maud::{Markup, PreEscaped, html};
use tokio::sync::OnceCell;

use super::compute::for_request;
use super::content_language::{self, PerLanguage};
use super::markdown;
use super::problem::{Problem, ProblemCode};
use super::respond::{OWN_STYLE, cached_page};
use super::response_body::CachedDocument;
use crate::calculation::report::{FieldErrorCode, Statement};
use crate::vocabulary::Vocabulary;
use crate::wording::{Language, MemberIn, say};

const STYLE: &str = "body{font:1rem/1.5 system-ui,sans-serif;max-width:42rem;margin:2rem auto;padding:0 1rem;color:#1c2733;\
    background:#fff}code{background:#eef1f4;padding:.1em .3em;border-radius:.2em}dt{margin-top:.8rem;font-weight:600}\
    pre{overflow:auto;background:#eef1f4;padding:.6rem;border-radius:.3em}pre code{padding:0;background:none}\
    body.wide{max-width:60rem}table{display:block;overflow:auto;border-collapse:collapse}\
    td,th{border:1px solid #9aa5b1;padding:.2em .5em;text-align:left;vertical-align:top}\
    @media(prefers-color-scheme:dark){body{color:#dfe6ec;background:#141a20}code,pre{background:#26303a}a{color:#8ab4f8}}";

const HTML: &str = "text/html; charset=utf-8";

/// The page of a kind of problem.
///
/// # Errors
/// 404 for a kind that does not exist.
pub fn problem(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    static PAGES: PerLanguage<Vec<CachedDocument>> = PerLanguage::new();
    let language = content_language::of_request(request);
    let slug = request.match_info().query("slug");
    let index = ProblemCode::ALL
        .iter()
        .position(|code| code.slug() == slug)
        .ok_or_else(|| Problem::new(ProblemCode::NotFound).detail(Statement::new("problems-no-such-kind")))?;
    let render = |code: &ProblemCode| {
        CachedDocument::new(problem_page(*code, language).into_string(), HTML).in_language(language)
    };
    let pages = PAGES.get_or_init(language, || ProblemCode::ALL.iter().map(render).collect());
    Ok(cached_page(&pages[index], OWN_STYLE, request))
}

/// The guide for integrators.
///
/// # Errors
/// 503 when the pool has no place to render it.
pub async fn guide(request: HttpRequest) -> Result<HttpResponse, Problem> {
    static PAGE: OnceCell<CachedDocument> = OnceCell::const_new();
    let address_of = |file: &str| (file == "CHANGELOG.md").then_some("../changes");
    of_markdown(&PAGE, "Guide for integrators", include_str!("../../openapi/GUIDE.md"), address_of, request).await
}

/// The changes of the contract.
///
/// # Errors
/// 503 when the pool has no place to render it.
pub async fn changes(request: HttpRequest) -> Result<HttpResponse, Problem> {
    static PAGE: OnceCell<CachedDocument> = OnceCell::const_new();
    let address_of = |file: &str| (file == "GUIDE.md").then_some("docs/guide");
    of_markdown(&PAGE, "Changes of the contract", include_str!("../../openapi/CHANGELOG.md"), address_of, request).await
}

/// A page that is rendered for the first who asks.
async fn of_markdown(
    page: &'static OnceCell<CachedDocument>,
    title: &'static str,
    text: &'static str,
    address_of: fn(&str) -> Option<&'static str>,
    request: HttpRequest,
) -> Result<HttpResponse, Problem> {
    let render = move |_| {
        let content = PreEscaped(markdown::to_html(text, address_of));
        CachedDocument::new(page_of(title, "wide", Language::English, &content).into_string(), HTML).packed()
    };
    let page = page.get_or_try_init(|| for_request::run(&request, render)).await?;
    Ok(cached_page(page, OWN_STYLE, &request))
}

fn problem_page(code: ProblemCode, language: Language) -> Markup {
    let status = Statement::new("problems-page-status").text("status", code.status().as_str().to_owned());
    let content = html! {
        h1 { (code.label_in(language)) }
        p { (say(&status, language)) " " code { (code.code()) } }
        p { (code.description_in(language)) }
        @if code == ProblemCode::ValidationFailed { (field_errors(language)) }
    };
    page_of(code.label_in(language), "narrow", language, &content)
}

fn page_of(title: &str, class: &str, language: Language, content: &Markup) -> Markup {
    html! {
        (PreEscaped("<!doctype html>"))
        html lang=(language.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width";
                title { (title) }
                style { (PreEscaped(STYLE)) }
            }
            body class=(class) { (content) }
        }
    }
}

/// What can be wrong with one field.
fn field_errors(language: Language) -> Markup {
    html! {
        h2 { (say(&Statement::new("problems-page-fields"), language)) }
        dl {
            @for error in FieldErrorCode::ALL {
                dt id=(error.code()) { code { (error.code()) } }
                dd { (error.description_in(language)) }
            }
        }
    }
}

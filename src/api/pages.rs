//! The pages that problem types point to.

use actix_web::{HttpRequest, HttpResponse};
use maud::{Markup, PreEscaped, html};

use super::problem::{Problem, ProblemCode};
use super::respond::{OWN_STYLE, cache_control, content_policy};
use crate::calculation::report::FieldErrorCode;
use crate::vocabulary::Vocabulary;

const STYLE: &str = "body{font:1rem/1.5 system-ui,sans-serif;max-width:42rem;margin:2rem auto;padding:0 1rem;color:#1c2733;\
    background:#fff}code{background:#eef1f4;padding:.1em .3em;border-radius:.2em}dt{margin-top:.8rem;font-weight:600}\
    @media(prefers-color-scheme:dark){body{color:#dfe6ec;background:#141a20}code{background:#26303a}}";

/// The page of a kind of problem.
///
/// # Errors
/// 404 for a kind that does not exist.
pub fn problem(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    let slug = request.match_info().query("slug");
    let code = ProblemCode::ALL.iter().find(|code| code.slug() == slug).ok_or_else(|| {
        Problem::new(ProblemCode::NotFound)
            .detail("There is no such kind of problem; /v1/reference/problems lists them.")
    })?;
    Ok(HttpResponse::Ok()
        .content_type("text/html; charset=utf-8")
        .insert_header(content_policy(OWN_STYLE))
        .insert_header(cache_control(request))
        .body(page(*code).into_string()))
}

fn page(code: ProblemCode) -> Markup {
    html! {
        (PreEscaped("<!doctype html>"))
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width";
                title { (code.label()) }
                style { (PreEscaped(STYLE)) }
            }
            body {
                h1 { (code.label()) }
                p { "Status " (code.status().as_u16()) ", code " code { (code.code()) } "." }
                p { (code.description()) }
                @if code == ProblemCode::ValidationFailed { (field_errors()) }
            }
        }
    }
}

/// What can be wrong with one field.
fn field_errors() -> Markup {
    html! {
        h2 { "Codes of single fields" }
        dl {
            @for error in FieldErrorCode::ALL {
                dt id=(error.code()) { code { (error.code()) } }
                dd { (error.description()) }
            }
        }
    }
}

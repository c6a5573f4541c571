//! The pages that problem types point to.

use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse};

use super::problem::{Problem, ProblemCode};
use crate::calculation::report::FieldErrorCode;
use crate::vocabulary::Vocabulary;

/// What a page of ours may load: nothing but its own style.
const POLICY: &str =
    "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

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
    let faults = if *code == ProblemCode::ValidationFailed { faults() } else { String::new() };
    let html = format!(
        "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">\
         <title>{title}</title><style>{STYLE}</style></head><body><h1>{title}</h1><p>Status {status}, code <code>{code}</code>.\
         </p><p>{text}</p>{faults}</body></html>",
        title = code.label(),
        status = code.status().as_u16(),
        code = code.code(),
        text = code.description(),
    );
    Ok(HttpResponse::Ok()
        .content_type("text/html; charset=utf-8")
        .insert_header((header::CONTENT_SECURITY_POLICY, POLICY))
        .insert_header((header::CACHE_CONTROL, "public, max-age=3600"))
        .body(html))
}

/// What can be wrong with one field. The texts are ours and hold no markup.
fn faults() -> String {
    let row = |fault: &FieldErrorCode| {
        format!(
            "<dt id=\"{code}\"><code>{code}</code></dt><dd>{text}</dd>",
            code = fault.code(),
            text = fault.description()
        )
    };
    let rows: Vec<_> = FieldErrorCode::ALL.iter().map(row).collect();
    format!("<h2>Codes of single fields</h2><dl>{}</dl>", rows.concat())
}

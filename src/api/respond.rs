//! How answers are made: reports, documents, problems, and what becomes of a handler that fails.

use std::future::poll_fn;
use std::panic::AssertUnwindSafe;
use std::pin::pin;
use std::task::Poll;

use actix_web::body::MessageBody;
use actix_web::http::header::{self, HeaderValue};
use actix_web::{HttpRequest, HttpResponse, HttpResponseBuilder};
use futures_util::FutureExt;
use serde::Serialize;

use super::admission::is_public;
use super::app_state::AppState;
use super::connection;
use super::content_coding::{CodedText, Coding};
use super::content_language::{self, VARY_BY_CODING_AND_LANGUAGE};
use super::problem::{MEDIA_TYPE, Problem, ProblemBody, ProblemCode};
use super::request_context::RequestContext;
use super::response_body::CachedDocument;
use super::wake_count::WakeCount;
use crate::drawing;
use crate::vocabulary::Vocabulary;

/// What a document may load that needs nothing but its own style sheet.
pub const OWN_STYLE: &str = "style-src 'unsafe-inline'";

/// Runs a handler: its problem and a panic both become answers. A connection with too many requests before their answers is cut.
///
/// This is not a middleware because an error that leaves a handler passes by the layers that add headers to answers.
pub async fn handle(
    request: HttpRequest,
    handler: impl Future<Output = Result<HttpResponse, Problem>>,
) -> HttpResponse {
    let (state, context) = (AppState::of(&request).clone(), RequestContext::of(&request));
    let mut handler = pin!(AssertUnwindSafe(handler).catch_unwind());
    let mut wakes = WakeCount::default();
    let outcome = poll_fn(|task| {
        // Each part of a body that is arriving wakes its handler, too.
        let is_flooded = context.body_read_at.get().is_some() && wakes.is_flooded();
        if is_flooded { Poll::Ready(None) } else { handler.as_mut().poll(task).map(Some) }
    });
    let problem = match outcome.await {
        Some(Ok(Ok(response))) => return response,
        Some(Ok(Err(problem))) => problem,
        Some(Err(_panic)) => state.count_panic(),
        None => {
            connection::cut(&request);
            Problem::new(ProblemCode::Overloaded)
        }
    };
    problem_response(problem, &request)
}

/// The text of a report; `capacity` is reserved for it, bytes.
///
/// # Errors
/// 500 when the report cannot be serialized.
pub fn json_text(report: &impl Serialize, capacity: usize) -> Result<Vec<u8>, Problem> {
    let mut json = Vec::with_capacity(capacity);
    serde_json::to_writer(&mut json, report).map_err(|_| Problem::new(ProblemCode::InternalError))?;
    Ok(json)
}

/// The answer that contains a report.
pub fn json(report: CodedText, request: &HttpRequest) -> HttpResponse {
    json_body(report.coding, report.bytes, request)
}

/// The answer whose body, in this coding, is a report.
pub fn json_body<B: MessageBody + 'static>(coding: Coding, body: B, request: &HttpRequest) -> HttpResponse {
    computed(coding, request).content_type(HeaderValue::from_static("application/json")).body(body)
}

/// The answer that is a drawing or a page.
pub fn document(media_type: String, document: CodedText, request: &HttpRequest) -> HttpResponse {
    computed(document.coding, request)
        .insert_header(content_policy(OWN_STYLE))
        .content_type(media_type)
        .body(document.bytes)
}

/// An answer that was computed for its caller, and is kept by none.
fn computed(coding: Coding, request: &HttpRequest) -> HttpResponseBuilder {
    let mut response = HttpResponse::Ok();
    response
        .insert_header((header::CACHE_CONTROL, HeaderValue::from_static("no-store")))
        .insert_header(VARY_BY_CODING_AND_LANGUAGE)
        .insert_header(content_language::content_language(content_language::of_request(request)));
    if let Some(coding) = coding.header() {
        response.insert_header((header::CONTENT_ENCODING, coding));
    }
    response
}

/// The policy of every document that browsers show: it loads what `sources` allows and nothing else, sends no form, and is shown in no
/// frame of another page.
pub fn content_policy(sources: &str) -> (header::HeaderName, String) {
    framed_policy(sources, &[])
}

/// The same for a document that pages of these origins may show in a frame.
pub fn framed_policy(sources: &str, pages: &[String]) -> (header::HeaderName, String) {
    let pages = if pages.is_empty() { "'none'".to_owned() } else { pages.join(" ") };
    let policy = format!("default-src 'none'; {sources}; base-uri 'none'; form-action 'none'; frame-ancestors {pages}");
    (header::CONTENT_SECURITY_POLICY, policy)
}

/// How long callers may keep what does not change. Where keys are on, no cache that several callers share may, but for what is open.
pub fn cache_control(request: &HttpRequest) -> (header::HeaderName, &'static str) {
    let settings = &AppState::of(request).settings;
    let is_open = is_public(request.path()) || settings.open_drawings && request.path() == drawing::plan::PATH;
    let needs_key = settings.keys.is_some() && !is_open;
    (header::CACHE_CONTROL, if needs_key { "private, max-age=3600" } else { "public, max-age=3600" })
}

/// The answer that is a document which does not change while the instance runs.
pub fn cached_document(document: &CachedDocument, request: &HttpRequest) -> HttpResponse {
    document.respond(request, cache_control(request))
}

/// The same, where browsers show it: it loads what `sources` allows.
pub fn cached_page(page: &CachedDocument, sources: &str, request: &HttpRequest) -> HttpResponse {
    let mut response = cached_document(page, request);
    let (name, policy) = content_policy(sources);
    if let Ok(policy) = HeaderValue::from_str(&policy) {
        response.headers_mut().insert(name, policy);
    }
    response
}

/// Lets callers keep an answer for a year without asking again, each of them and whoever kept it before: its address names its release.
pub fn for_a_year(response: &mut HttpResponse) {
    let current =
        response.headers().get(header::CACHE_CONTROL).and_then(|value| value.to_str().ok()).unwrap_or_default();
    let kept = if current.starts_with("private") {
        "private, max-age=31536000, immutable"
    } else {
        "public, max-age=31536000, immutable"
    };
    response.headers_mut().insert(header::CACHE_CONTROL, HeaderValue::from_static(kept));
}

/// A problem in the form in which it is sent.
pub fn problem_body(problem: Problem, request: &HttpRequest) -> ProblemBody {
    let public_url = &AppState::of(request).settings.public_url;
    let language = content_language::of_request(request);
    problem.into_body(public_url, RequestContext::of(request).id.to_string(), language)
}

/// The answer that is a problem; counts it.
pub fn problem_response(problem: Problem, request: &HttpRequest) -> HttpResponse {
    let mut response = HttpResponse::build(problem.code.status());
    response
        .insert_header((header::CACHE_CONTROL, HeaderValue::from_static("no-store")))
        .insert_header((header::VARY, "accept-language"))
        .insert_header(content_language::content_language(content_language::of_request(request)));
    if let Some(allow) = problem.allow {
        response.insert_header((header::ALLOW, allow));
    }
    if let Some(seconds) = problem.retry_after {
        response.insert_header((header::RETRY_AFTER, seconds));
    }
    if let Some(challenge) = problem.challenge {
        response.insert_header((header::WWW_AUTHENTICATE, challenge));
    }
    AppState::of(request).metrics.count_problem(problem.code.code());
    let body = problem_body(problem, request);
    response.content_type(MEDIA_TYPE).body(serde_json::to_string(&body).unwrap_or_default())
}

//! How answers are made: reports, documents, problems, and what becomes of a handler that fails.

use std::panic::AssertUnwindSafe;

use actix_web::body::MessageBody;
use actix_web::http::header::{self, HeaderValue};
use actix_web::{HttpRequest, HttpResponse};
use futures_util::FutureExt;
use serde::Serialize;

use super::app_state::AppState;
use super::problem::{MEDIA_TYPE, Problem, ProblemBody, ProblemCode};
use super::request_context::RequestContext;
use crate::vocabulary::Vocabulary;

/// What a drawing or a job sheet may load as a document of its own: its own style sheet, nothing else.
const DOCUMENT_POLICY: &str = "default-src 'none'; style-src 'unsafe-inline'";

/// Runs a handler: its problem and a panic both become answers.
///
/// This is not a middleware because an error that leaves a handler passes by the layers that add headers to answers.
pub async fn handle(
    request: HttpRequest,
    handler: impl Future<Output = Result<HttpResponse, Problem>>,
) -> HttpResponse {
    let state = AppState::of(&request).clone();
    let problem = match AssertUnwindSafe(handler).catch_unwind().await {
        Ok(Ok(response)) => return response,
        Ok(Err(problem)) => problem,
        Err(_panic) => state.count_panic(),
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
pub fn json<B: MessageBody + 'static>(body: B) -> HttpResponse {
    HttpResponse::Ok().insert_header((header::CACHE_CONTROL, "no-store")).content_type("application/json").body(body)
}

/// The answer that is a drawing or a page.
pub fn document(media_type: String, document: String) -> HttpResponse {
    HttpResponse::Ok()
        .insert_header((header::CACHE_CONTROL, "no-store"))
        .insert_header((header::CONTENT_SECURITY_POLICY, DOCUMENT_POLICY))
        .content_type(media_type)
        .body(document)
}

/// A problem in the form in which it is sent.
pub fn problem_body(problem: Problem, request: &HttpRequest) -> ProblemBody {
    let public_url = &AppState::of(request).settings.public_url;
    problem.into_body(public_url, RequestContext::of(request).id.to_string())
}

/// The answer that is a problem; counts it.
pub fn problem_response(problem: Problem, request: &HttpRequest) -> HttpResponse {
    let mut response = HttpResponse::build(problem.code.status());
    response.insert_header((header::CACHE_CONTROL, HeaderValue::from_static("no-store")));
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

//! The description as it is served.

use actix_web::{HttpRequest, HttpResponse};
use serde_json::Value;
use tokio::sync::OnceCell;

use super::app_state::AppState;
use super::compute::for_request;
use super::description;
use super::problem::Problem;
use super::respond::cached_document;
use super::response_body::CachedDocument;

const JSON: &str = "application/json";

/// The description. It is rendered for the first who asks, on the pool, for its examples are computed.
///
/// # Errors
/// 503 when the pool has no place.
pub async fn openapi(request: HttpRequest) -> Result<HttpResponse, Problem> {
    describe(&request, &AppState::of(&request).description, description::build).await
}

/// The description without the examples of answers, which are nine tenths of it.
///
/// # Errors
/// 503 when the pool has no place.
pub async fn compact_openapi(request: HttpRequest) -> Result<HttpResponse, Problem> {
    describe(&request, &AppState::of(&request).compact_description, description::build_compact).await
}

async fn describe(
    request: &HttpRequest,
    kept: &OnceCell<CachedDocument>,
    build: fn(&str) -> Value,
) -> Result<HttpResponse, Problem> {
    let public_url = AppState::of(request).settings.public_url.clone();
    let render = move |_| CachedDocument::new(build(&public_url).to_string(), JSON).packed();
    let description = kept.get_or_try_init(|| for_request::run(request, render)).await?;
    Ok(cached_document(description, request))
}

/// The description as it is committed and printed.
pub fn pretty(public_url: &str) -> String {
    let mut text = serde_json::to_string_pretty(&description::build(public_url)).unwrap_or_default();
    text.push('\n');
    text
}

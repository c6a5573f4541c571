//! The description as it is served, and the page that shows it, without anything from another host.

use std::borrow::Cow;
use std::sync::{Arc, OnceLock};

use actix_web::http::header;
use actix_web::web::Bytes;
use actix_web::{HttpRequest, HttpResponse};
use utoipa_swagger_ui::Config;

use super::app_state::AppState;
use super::compute::for_request;
use super::description;
use super::problem::{Problem, ProblemCode};
use super::respond::{cache_control, cached_document, content_policy};
use super::response_body::CachedDocument;
use super::sliced_body::shared;

/// The description. It is rendered for the first who asks, on the pool, for its examples are computed.
///
/// # Errors
/// 503 when the pool has no place.
pub async fn openapi(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let state = AppState::of(&request);
    let public_url = state.settings.public_url.clone();
    let render = move |_| CachedDocument::new(pretty(&public_url), "application/json");
    let description = state.description.get_or_try_init(|| for_request::run(&request, render)).await?;
    Ok(cached_document(description, &request))
}

/// The description as it is served, committed and printed.
pub fn pretty(public_url: &str) -> String {
    let mut text = serde_json::to_string_pretty(&description::build(public_url)).unwrap_or_default();
    text.push('\n');
    text
}

/// Redirects from `/docs` to `/docs/`, where the page's relative links hold.
///
/// # Errors
/// None.
pub fn redirect_to_docs(_: &HttpRequest) -> Result<HttpResponse, Problem> {
    Ok(HttpResponse::PermanentRedirect().insert_header((header::LOCATION, "docs/")).finish())
}

/// What the documentation page may load: its own files, and calls to this service. Its style sheets need inline styles.
const SOURCES: &str = "script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'";

/// A file of the documentation page.
///
/// # Errors
/// 404 for a file that it does not have.
pub fn docs(request: &HttpRequest) -> Result<HttpResponse, Problem> {
    static CONFIG: OnceLock<Arc<Config<'static>>> = OnceLock::new();
    let config = CONFIG.get_or_init(|| {
        Arc::new(Config::new(["../openapi.json"]).validator_url("none").try_it_out_enabled(true).deep_linking(true))
    });
    let name = request.match_info().query("file");
    let name = if name.is_empty() { "index.html" } else { name };
    let file = utoipa_swagger_ui::serve(name, config.clone())
        .ok()
        .flatten()
        .ok_or_else(|| Problem::new(ProblemCode::NotFound))?;
    let response = HttpResponse::Ok()
        .content_type(file.content_type)
        .insert_header(cache_control(request))
        .insert_header(content_policy(SOURCES))
        .body(match file.bytes {
            Cow::Borrowed(bytes) => Bytes::from_static(bytes),
            Cow::Owned(bytes) => bytes.into(),
        });
    Ok(shared(response))
}

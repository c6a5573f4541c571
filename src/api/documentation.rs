//! The description as it is served, and the page that shows it, without anything from another host.

use std::borrow::Cow;
use std::sync::Arc;

use actix_web::http::header;
use actix_web::{HttpRequest, HttpResponse};
use serde_json::Value;
use tokio::sync::OnceCell;
use utoipa_swagger_ui::Config;

use super::app_state::AppState;
use super::compute::for_request;
use super::description;
use super::problem::{Problem, ProblemCode};
use super::respond::{cached_document, cached_page, for_a_year};
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

/// Redirects from `/docs` to `/docs/`, where the page's relative links hold.
///
/// # Errors
/// None.
pub fn redirect_to_docs(_: &HttpRequest) -> Result<HttpResponse, Problem> {
    Ok(HttpResponse::PermanentRedirect().insert_header((header::LOCATION, "docs/")).finish())
}

/// What the documentation page may load: its own files, and calls to this service. Its style sheets need inline styles.
const SOURCES: &str = "script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; connect-src 'self'";

/// The query of an address that names this release: what it leads to never changes.
const RELEASE: &str = concat!("v=", env!("CARGO_PKG_VERSION"));

/// A file of the documentation page: written here, or of the library that the page is made with.
struct DocsFile {
    name: &'static str,
    media_type: &'static str,
    /// Its text; of the library where there is none.
    own: Option<&'static str>,
    document: OnceCell<CachedDocument>,
}

impl DocsFile {
    const fn new(name: &'static str, media_type: &'static str, own: Option<&'static str>) -> Self {
        Self { name, media_type, own, document: OnceCell::const_new() }
    }

    fn render(&self) -> CachedDocument {
        let text = match self.own {
            Some(own) => Cow::Owned(own.replace("{version}", env!("CARGO_PKG_VERSION")).into_bytes()),
            None => utoipa_swagger_ui::serve(self.name, Arc::new(Config::default()))
                .ok()
                .flatten()
                .map(|file| file.bytes)
                .unwrap_or_default(),
        };
        CachedDocument::new(text, self.media_type).packed()
    }
}

static FILES: [DocsFile; 7] = [
    DocsFile::new("index.html", "text/html; charset=utf-8", Some(include_str!("docs/index.html"))),
    DocsFile::new("index.css", "text/css", Some(include_str!("docs/index.css"))),
    DocsFile::new("swagger-initializer.js", "text/javascript", Some(include_str!("docs/swagger-initializer.js"))),
    DocsFile::new("swagger-ui-bundle.js", "text/javascript", None),
    DocsFile::new("swagger-ui.css", "text/css", None),
    DocsFile::new("favicon-16x16.png", "image/png", None),
    DocsFile::new("favicon-32x32.png", "image/png", None),
];

/// A file of the documentation page, packed for the first who asks, on the pool.
///
/// # Errors
/// 404 for a file that it does not have; 503 when the pool has no place.
pub async fn docs(request: HttpRequest) -> Result<HttpResponse, Problem> {
    let name = match request.match_info().query("file") {
        "" => "index.html",
        name => name,
    };
    let file = FILES.iter().find(|file| file.name == name).ok_or_else(|| Problem::new(ProblemCode::NotFound))?;
    let document = file.document.get_or_try_init(|| for_request::run(&request, |_| file.render())).await?;
    let mut response = cached_page(document, SOURCES, &request);
    if request.query_string() == RELEASE {
        for_a_year(&mut response);
    }
    Ok(response)
}

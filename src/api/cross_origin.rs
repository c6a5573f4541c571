//! Calls from pages of other sites: which may call, what they may send, and what a refusal names.

use actix_cors::Cors;
use actix_web::HttpRequest;
use actix_web::http::header::{self, HeaderName};

use super::request_id::RequestId;
use crate::calculation::report::{MAX_NAME_CHARS, Statement};
use crate::settings::Settings;

/// What a page of another site may send: what the service reads, and what tracing and client libraries add by themselves.
const PAGE_HEADERS: [&str; 8] = [
    "authorization",
    "content-type",
    "idempotency-key",
    "if-none-match",
    "traceparent",
    "tracestate",
    RequestId::HEADER,
    "x-requested-with",
];
/// What a page of another site may read.
const READ_HEADERS: [&str; 8] = [
    RequestId::HEADER,
    "deprecation",
    "etag",
    "ratelimit",
    "ratelimit-policy",
    "retry-after",
    "sunset",
    "www-authenticate",
];
/// How a page of another site may call.
pub const PAGE_METHODS: [&str; 3] = ["GET", "HEAD", "POST"];

/// Permits pages of the configured origins, and of the origins that have a key, to call and to read the request id.
pub fn cors(settings: &Settings, has_key: impl Fn(&[u8]) -> bool + 'static) -> Cors {
    let cors = Cors::default()
        .allowed_methods(PAGE_METHODS)
        .allowed_headers(PAGE_HEADERS)
        .expose_headers(READ_HEADERS)
        .max_age(3600);
    if settings.cors_origins.iter().any(|origin| origin == "*") {
        cors.send_wildcard().allow_any_origin()
    } else {
        // A preflight carries no key, so the origin of any key passes. They may change while the instance runs.
        let cors = cors.allowed_origin_fn(move |origin, _| has_key(origin.as_bytes()));
        settings.cors_origins.iter().fold(cors, |cors, origin| cors.allowed_origin(origin))
    }
}

/// What of a preflight is not taken from pages of other sites, by name.
pub fn refused_preflight(request: &HttpRequest) -> Statement {
    let asked =
        |name: HeaderName| request.headers().get(name).and_then(|value| value.to_str().ok()).unwrap_or_default();
    let method = asked(header::ACCESS_CONTROL_REQUEST_METHOD);
    if !PAGE_METHODS.contains(&method) {
        return Statement::new("problems-page-method").text("methods", PAGE_METHODS.join(", "));
    }
    let headers =
        asked(header::ACCESS_CONTROL_REQUEST_HEADERS).split(',').map(str::trim).filter(|name| !name.is_empty());
    let refused: Vec<_> = headers
        .filter(|name| !PAGE_HEADERS.iter().any(|taken| taken.eq_ignore_ascii_case(name)))
        .map(|name| name.chars().take(MAX_NAME_CHARS).collect::<String>())
        .collect();
    if refused.is_empty() {
        Statement::new("problems-page-origin")
    } else {
        let statement = Statement::new("problems-page-headers").text("refused", refused.join(", "));
        statement.text("taken", PAGE_HEADERS.join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The names in backquotes of a part of the guide, from one phrase to the next.
    fn named<'a>(part: &'a str, from: &str, to: &str) -> Vec<&'a str> {
        let text = part.split(from).nth(1).and_then(|rest| rest.split(to).next()).expect("the guide has these words");
        text.split('`').skip(1).step_by(2).collect()
    }

    #[test]
    fn the_guide_names_what_pages_send_and_read() {
        let guide = include_str!("../../openapi/GUIDE.md");
        let part = guide.split("\n## Browsers\n").nth(1).and_then(|rest| rest.split("\n## ").next()).unwrap();
        assert_eq!(named(part, "It may then send", "with the"), PAGE_METHODS);
        assert_eq!(named(part, "headers", "and read"), PAGE_HEADERS);
        assert_eq!(named(part, "and read", "also on problems"), READ_HEADERS);
    }
}

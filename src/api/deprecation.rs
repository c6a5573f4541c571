//! What is to go: a table of operations, from which their answers get `Deprecation` (RFC 9745) and `Sunset` (RFC 8594), and the
//! description its `deprecated`.

use std::time::{Duration, SystemTime};

use actix_web::body::MessageBody;
use actix_web::dev::ServiceResponse;
use actix_web::http::Method;
use actix_web::http::header::{HeaderName, HeaderValue};
use jiff::civil::Date;
use jiff::tz::TimeZone;
use serde_json::Value;

/// The header that says since when something is deprecated.
pub const DEPRECATION: HeaderName = HeaderName::from_static("deprecation");
/// The header that says when it goes.
pub const SUNSET: HeaderName = HeaderName::from_static("sunset");

/// The operations that are deprecated. Nothing is today.
pub const DEPRECATED: &[DeprecatedOperation] = &[];

/// An operation that is to go.
pub struct DeprecatedOperation {
    /// Its method as the description writes it, `get` or `post`.
    pub method: &'static str,
    /// Its path as the description writes it: `/v1/loop-sizing`, `/problems/{slug}`.
    pub path: &'static str,
    /// The day from which it is deprecated.
    pub since: Date,
    /// The day on which it goes, where one is set: a year after `since` at the earliest.
    pub sunset: Option<Date>,
}

impl DeprecatedOperation {
    /// Whether this is the operation of a method and a route. A HEAD asks for what a GET would.
    fn is(&self, method: &Method, route: &str) -> bool {
        let method = if method == Method::HEAD { &Method::GET } else { method };
        self.path == route && self.method.eq_ignore_ascii_case(method.as_str())
    }

    /// Its headers.
    fn headers(&self) -> impl Iterator<Item = (HeaderName, HeaderValue)> {
        // A date of structured fields (RFC 9651), and one of HTTP.
        let deprecation = begin_of(self.since).map(|second| (DEPRECATION, format!("@{second}")));
        let sunset = self.sunset.and_then(begin_of).and_then(|second| {
            let day = SystemTime::UNIX_EPOCH.checked_add(Duration::from_secs(second))?;
            Some((SUNSET, httpdate::fmt_http_date(day)))
        });
        let headers = deprecation.into_iter().chain(sunset);
        headers.filter_map(|(name, value)| Some((name, HeaderValue::from_str(&value).ok()?)))
    }
}

/// The second at which a day begins, in UTC.
fn begin_of(day: Date) -> Option<u64> {
    let begin = TimeZone::UTC.to_timestamp(day.at(0, 0, 0, 0)).ok()?;
    u64::try_from(begin.as_second()).ok()
}

/// Adds the headers of a deprecated operation to its answer, whatever the answer is.
pub fn add_headers(response: &mut ServiceResponse<impl MessageBody>, deprecated: &[DeprecatedOperation]) {
    if deprecated.is_empty() {
        return;
    }
    let (method, route) = (response.request().method().clone(), response.request().match_pattern());
    let found = route.and_then(|route| deprecated.iter().find(|operation| operation.is(&method, &route)));
    for (name, value) in found.into_iter().flat_map(DeprecatedOperation::headers) {
        response.headers_mut().insert(name, value);
    }
}

/// Marks the deprecated operations of a description.
pub fn mark(description: &mut Value, deprecated: &[DeprecatedOperation]) {
    for operation in deprecated {
        let place =
            description.get_mut("paths").and_then(|paths| paths.get_mut(operation.path)?.get_mut(operation.method));
        if let Some(place) = place {
            place["deprecated"] = true.into();
        }
    }
}

#[cfg(test)]
mod tests {
    use actix_web::dev::Service;
    use actix_web::test::{TestRequest, call_service, init_service};
    use actix_web::{App, HttpResponse, web};
    use jiff::ToSpan;
    use jiff::civil::date;

    use super::*;
    use crate::api::description;

    const SOME: &[DeprecatedOperation] = &[
        DeprecatedOperation {
            method: "post",
            path: "/v1/loop-sizing",
            since: date(2027, 1, 31),
            sunset: Some(date(2028, 6, 1)),
        },
        DeprecatedOperation { method: "get", path: "/problems/{slug}", since: date(2027, 3, 1), sunset: None },
    ];

    /// What is wrong with a table: entries that name no operation, or that go within a year.
    fn faults(table: &[DeprecatedOperation]) -> Vec<String> {
        let description = description::build_compact("");
        let is_fault = |operation: &&DeprecatedOperation| {
            let earliest = operation.since.saturating_add(1.year());
            description["paths"][operation.path].get(operation.method).is_none()
                || operation.sunset.is_some_and(|sunset| sunset < earliest)
        };
        table.iter().filter(is_fault).map(|operation| format!("{} {}", operation.method, operation.path)).collect()
    }

    #[test]
    fn every_entry_is_an_operation_that_stays_for_a_year() {
        assert_eq!(faults(DEPRECATED), [""; 0]);
        assert_eq!(faults(SOME), [""; 0]);
        let soon = Some(date(2028, 1, 30));
        let wrong = [
            DeprecatedOperation { method: "get", path: "/v1/loop-sizing", since: date(2027, 1, 31), sunset: None },
            DeprecatedOperation { method: "post", path: "/v1/loop-sizing", since: date(2027, 1, 31), sunset: soon },
        ];
        assert_eq!(faults(&wrong), ["get /v1/loop-sizing", "post /v1/loop-sizing"]);
    }

    #[test]
    fn the_description_marks_what_is_deprecated_and_nothing_else() {
        let mut description = description::build_compact("");
        mark(&mut description, SOME);
        let paths = description["paths"].as_object().unwrap();
        let operations = paths.iter().flat_map(|(path, item)| {
            item.as_object().unwrap().iter().map(move |(method, operation)| (format!("{method} {path}"), operation))
        });
        let marked: Vec<_> =
            operations.filter(|(_, operation)| operation["deprecated"] == true).map(|(name, _)| name).collect();
        assert_eq!(marked, ["post /v1/loop-sizing", "get /problems/{slug}"]);
    }

    #[actix_web::test]
    async fn answers_of_what_is_deprecated_say_since_when_and_when_it_goes() {
        let ok = || async { HttpResponse::Ok().finish() };
        let refused = || async { HttpResponse::UnprocessableEntity().finish() };
        let app = App::new()
            .wrap_fn(|request, inner| {
                let answer = inner.call(request);
                async {
                    let mut response = answer.await?;
                    add_headers(&mut response, SOME);
                    Ok(response)
                }
            })
            .service(web::resource("/v1/loop-sizing").route(web::post().to(refused)).route(web::get().to(ok)))
            .service(web::resource("/problems/{slug}").route(web::get().to(ok)).route(web::head().to(ok)))
            .service(web::resource("/changes").route(web::get().to(ok)));
        let app = init_service(app).await;
        for (method, path, deprecation, sunset) in [
            (Method::POST, "/v1/loop-sizing", "@1801353600", "Thu, 01 Jun 2028 00:00:00 GMT"),
            (Method::GET, "/v1/loop-sizing", "", ""),
            (Method::GET, "/problems/not-found", "@1803859200", ""),
            (Method::HEAD, "/problems/not-found", "@1803859200", ""),
            (Method::GET, "/changes", "", ""),
        ] {
            let request = TestRequest::default().method(method.clone()).uri(path).to_request();
            let answer = call_service(&app, request).await;
            let header = |name| answer.headers().get(name).map_or("", |value| value.to_str().unwrap());
            assert_eq!((header(DEPRECATION), header(SUNSET)), (deprecation, sunset), "{method} {path}");
        }
    }
}

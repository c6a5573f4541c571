//! Round every handler: a net for panics inside, an id, a log line and the counters outside.

use std::panic::AssertUnwindSafe;
use std::sync::atomic::AtomicI64;
use std::time::Instant;

use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::header::{self, HeaderName, HeaderValue};
use actix_web::http::{ConnectionType, Method, StatusCode};
use actix_web::middleware::Next;
use actix_web::{Error, HttpMessage, HttpRequest, HttpResponse};
use futures_util::FutureExt;
use prometheus_client::metrics::gauge::Gauge;

use super::edge::{Edge, RequestId};
use super::problem::{self, Problem, ProblemCode};

/// Runs the work of a handler: its problem and a panic both become answers.
///
/// This is no middleware on purpose: an error that leaves a handler passes the layers that add headers to answers.
pub async fn guarded(request: HttpRequest, work: impl Future<Output = Result<HttpResponse, Problem>>) -> HttpResponse {
    let edge = Edge::of(&request).clone();
    let problem = match AssertUnwindSafe(work).catch_unwind().await {
        Ok(Ok(response)) => return response,
        Ok(Err(problem)) => problem,
        Err(_panic) => {
            edge.metrics.panics.inc();
            Problem::new(ProblemCode::InternalError)
        }
    };
    problem.respond(&request)
}

/// A request in work; it leaves the gauge whatever ends it, a broken connection included.
struct InFlight(Gauge<i64, AtomicI64>);

impl InFlight {
    fn enter(gauge: &Gauge<i64, AtomicI64>) -> Self {
        gauge.inc();
        Self(gauge.clone())
    }
}

impl Drop for InFlight {
    fn drop(&mut self) {
        self.0.dec();
    }
}

/// Gives each request an id, then logs and counts its answer: one event, without body or query.
///
/// # Errors
/// Passes on what the service inside returns.
pub async fn observed(
    request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let started = Instant::now();
    let id = RequestId::take(&request);
    request.extensions_mut().insert(id.clone());
    let edge = Edge::of(request.request()).clone();
    let in_flight = InFlight::enter(&edge.metrics.in_flight);
    let outcome = next.call(request).await;
    drop(in_flight);
    let mut response = as_problem(outcome?.map_into_boxed_body());
    let took = started.elapsed();

    if let Ok(value) = HeaderValue::from_str(id.as_str()) {
        response.headers_mut().insert(HeaderName::from_static(RequestId::HEADER), value);
    }
    response.headers_mut().insert(header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    if !edge.is_ready() {
        // While the instance stops, each connection ends behind an answer, so that none is closed before a request comes.
        response.response_mut().head_mut().set_connection_type(ConnectionType::Close);
    }
    let status = response.status().as_u16();
    let route = response.request().match_pattern().unwrap_or_else(|| "other".to_owned());
    edge.metrics.answered(&route, status, took);
    tracing::info!(
        method = response.request().method().as_str(),
        route,
        status,
        micros = u64::try_from(took.as_micros()).unwrap_or(u64::MAX),
        request_id = id.as_str(),
        "request"
    );
    Ok(response)
}

/// Answers of the framework that are no problem yet, such as a refused preflight, become one.
fn as_problem(response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
    let status = response.status();
    let is_problem = response
        .headers()
        .get(header::CONTENT_TYPE)
        .is_some_and(|kind| kind.as_bytes() == problem::MEDIA_TYPE.as_bytes());
    if !(status.is_client_error() || status.is_server_error()) || is_problem {
        return response;
    }
    let (request, plain) = response.into_parts();
    let is_preflight = request.method() == Method::OPTIONS && status == StatusCode::BAD_REQUEST;
    let code = if is_preflight { ProblemCode::PreflightRefused } else { ProblemCode::of_status(status) };
    let mut answer = Problem::new(code).respond(&request);
    for (name, value) in plain.headers() {
        if name != header::CONTENT_TYPE && name != header::CONTENT_LENGTH {
            answer.headers_mut().insert(name.clone(), value.clone());
        }
    }
    ServiceResponse::new(request, answer)
}

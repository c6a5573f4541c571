//! The middleware: [`observe`] gives each request its id, its log line and its counters, [`admit`] refuses requests beyond the keys
//! and limits.

use std::sync::atomic::AtomicI64;
use std::time::{Duration, Instant};

use actix_web::body::{BoxBody, MessageBody};
use actix_web::dev::{ServiceRequest, ServiceResponse};
use actix_web::http::header::{self, HeaderName, HeaderValue};
use actix_web::http::{ConnectionType, Method, StatusCode};
use actix_web::middleware::Next;
use actix_web::{Error, web};
use prometheus_client::metrics::gauge::Gauge;
use tracing::Instrument;

use super::admission::Caller;
use super::app_state::AppState;
use super::connection::ActiveRequest;
use super::cross_origin::refused_preflight;
use super::deprecation::{self, DEPRECATED};
use super::problem::{self, Problem, ProblemCode};
use super::request_context::RequestContext;
use super::request_id::RequestId;
use super::respond::problem_response;
use super::{drain, telemetry};

/// Counts a request in the gauge of requests in work until it is dropped, also by a broken connection.
struct InFlight(Gauge<i64, AtomicI64>);

impl InFlight {
    fn count(gauge: &Gauge<i64, AtomicI64>) -> Self {
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
pub async fn observe(
    request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let started = Instant::now();
    let context = RequestContext::begin(&request);
    let state = AppState::of(request.request()).clone();
    let in_flight = InFlight::count(&state.metrics.in_flight);
    let active = ActiveRequest::begin(request.request());
    let method = telemetry::known_method(request.method());
    let span = telemetry::begin_span(&request, method, context.id.as_str());
    let outcome = next.call(request).instrument(span.clone()).await;
    drop(in_flight);
    let mut response = into_problem(outcome?.map_into_boxed_body());
    let took = started.elapsed();

    if let Ok(value) = HeaderValue::from_str(context.id.as_str()) {
        response.headers_mut().insert(HeaderName::from_static(RequestId::HEADER), value);
    }
    if let Some(allowance) = context.allowance.get() {
        for (name, value) in [("ratelimit-policy", allowance.policy()), ("ratelimit", allowance.state())] {
            if let Ok(value) = HeaderValue::try_from(value) {
                response.headers_mut().insert(HeaderName::from_static(name), value);
            }
        }
    }
    response.headers_mut().insert(header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    deprecation::add_headers(&mut response, DEPRECATED);
    if state.is_stopping() {
        // Otherwise the caller's next request could find the connection closed.
        response.response_mut().head_mut().set_connection_type(ConnectionType::Close);
    }
    let status = response.status().as_u16();
    telemetry::end_span(&span, status);
    let route = response.request().match_pattern().unwrap_or_else(|| "other".to_owned());
    state.metrics.count_answer(&route, status, took);
    tracing::info!(
        method,
        route,
        status,
        micros = micros(took),
        computed_micros = micros(context.computed()),
        request_id = context.id.as_str(),
        client = context.caller.get().and_then(Caller::name),
        "request"
    );
    Ok(active.until_written(context.caller_id(), response))
}

/// Rounded to whole µs.
fn micros(time: Duration) -> u64 {
    u64::try_from((time.as_nanos() + 500) / 1000).unwrap_or(u64::MAX)
}

/// Turns a failure of the framework, such as a refused preflight, into a problem.
fn into_problem(response: ServiceResponse<BoxBody>) -> ServiceResponse<BoxBody> {
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
    let problem = Problem::new(code);
    let problem = if is_preflight { problem.detail(refused_preflight(&request)) } else { problem };
    let mut answer = problem_response(problem, &request);
    for (name, value) in plain.headers() {
        if name != header::CONTENT_TYPE && name != header::CONTENT_LENGTH {
            answer.headers_mut().insert(name.clone(), value.clone());
        }
    }
    ServiceResponse::new(request, answer)
}

/// Passes a request on to its handler, or refuses it.
///
/// # Errors
/// Passes on what the service inside returns.
pub async fn admit(
    mut request: ServiceRequest,
    next: Next<impl MessageBody + 'static>,
) -> Result<ServiceResponse<BoxBody>, Error> {
    let state = AppState::of(request.request()).clone();
    let problem = match state.admission.admit(&request) {
        Ok(()) => return next.call(request).await.map(ServiceResponse::map_into_boxed_body),
        Err(problem) => problem,
    };
    let rest = request.extract::<web::Payload>().await?;
    // Apart, for a request that is admitted should not carry the room for it.
    let response = Box::pin(drain::refuse(request.request(), rest, problem)).await;
    Ok(request.into_response(response))
}

#[cfg(test)]
mod tests {
    use actix_web::middleware::from_fn;
    use actix_web::test::{TestRequest, call_service, init_service, read_body_json};
    use actix_web::{App, HttpRequest, web};
    use serde_json::Value;

    use super::observe;
    use crate::api::app_state::AppState;
    use crate::api::cross_origin;
    use crate::api::respond::handle;
    use crate::settings::Settings;

    #[actix_web::test]
    async fn a_panic_is_a_problem_that_a_page_can_read_and_is_counted() {
        let origins = |name| (name == "LOOPWRIGHT_CORS_ORIGINS").then(|| "https://shop.tern-island.example".to_owned());
        let state = web::Data::new(AppState::new(Settings::read(origins).unwrap()).unwrap());
        let panics = |request: HttpRequest| handle(request, async { panic!("a mistake that this test makes") });
        let app = App::new()
            .app_data(state.clone())
            .wrap(cross_origin::cors(&state.settings, |_| false))
            .wrap(from_fn(observe));
        let app = init_service(app.route("/", web::get().to(panics))).await;
        let asked = TestRequest::get().insert_header(("origin", "https://shop.tern-island.example"));
        let answer = call_service(&app, asked.insert_header(("x-request-id", "job-17")).to_request()).await;
        assert_eq!(answer.status(), 500);
        let header = |name: &str| answer.headers().get(name).map(|value| value.to_str().unwrap().to_owned());
        assert_eq!(header("access-control-allow-origin").unwrap(), "https://shop.tern-island.example");
        assert_eq!(header("cache-control").unwrap(), "no-store");
        assert_eq!(header("x-request-id").unwrap(), "job-17");
        let problem: Value = read_body_json(answer).await;
        assert_eq!((&problem["code"], &problem["request_id"]), (&"internal_error".into(), &"job-17".into()));
        assert!(!problem.to_string().contains("mistake"), "{problem}");
        let counted = state.metrics.render();
        for line in ["loopwright_panics_total 1", "refused_total{reason=\"internal_error\"} 1", "requests_in_flight 0"]
        {
            assert!(counted.contains(line), "{line} is not in\n{counted}");
        }
    }
}

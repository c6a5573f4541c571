//! Traces: one span per request, sent in batches to a collector by OTLP over HTTP (OpenTelemetry, HTTP semantic conventions).
//!
//! A `traceparent` that the caller sent (W3C Trace Context) makes the span a part of the caller's trace. No span holds a body, a
//! query, an address or a key.

use std::time::Duration;

use actix_web::dev::ServiceRequest;
use opentelemetry::propagation::{Extractor, TextMapPropagator};
use opentelemetry::trace::TracerProvider;
use opentelemetry_otlp::{Protocol, SpanExporter, WithExportConfig};
use opentelemetry_sdk::Resource;
use opentelemetry_sdk::propagation::TraceContextPropagator;
use opentelemetry_sdk::trace::{SdkTracerProvider, Tracer};
use tracing::Span;
use tracing_opentelemetry::{OpenTelemetryLayer, OpenTelemetrySpanExt};
use tracing_subscriber::filter::{FilterFn, Filtered, LevelFilter, filter_fn};
use tracing_subscriber::{Layer, Registry};

/// What tells our spans from those of libraries.
const TARGET: &str = "loopwright::request";

/// How long one delivery may take.
const PATIENCE: Duration = Duration::from_secs(5);

/// The sender of traces, if there is a collector; what it still holds is sent when it ends.
pub struct Traces(Option<SdkTracerProvider>);

impl Traces {
    /// Sends to this collector, such as `http://127.0.0.1:4318`.
    ///
    /// # Errors
    /// When the sender cannot be built.
    pub fn new(url: Option<&str>) -> Result<Self, String> {
        let Some(url) = url else { return Ok(Self(None)) };
        let exporter = SpanExporter::builder()
            .with_http()
            .with_protocol(Protocol::HttpBinary)
            .with_endpoint(format!("{}/v1/traces", url.trim_end_matches('/')))
            .with_timeout(PATIENCE)
            .build()
            .map_err(|error| format!("LOOPWRIGHT_OTLP_URL: {error}"))?;
        let resource = Resource::builder_empty()
            .with_attributes([
                opentelemetry::KeyValue::new("service.name", "loopwright"),
                opentelemetry::KeyValue::new("service.version", env!("CARGO_PKG_VERSION")),
            ])
            .build();
        Ok(Self(Some(SdkTracerProvider::builder().with_resource(resource).with_batch_exporter(exporter).build())))
    }

    /// The layer that makes spans of requests into traces.
    pub fn layer(&self) -> Option<Filtered<OpenTelemetryLayer<Registry, Tracer>, FilterFn, Registry>> {
        let tracer = self.0.as_ref()?.tracer("loopwright");
        let is_ours: FilterFn = filter_fn(|metadata| metadata.is_span() && metadata.target() == TARGET);
        Some(OpenTelemetryLayer::new(tracer).with_filter(is_ours.with_max_level_hint(LevelFilter::INFO)))
    }
}

impl Drop for Traces {
    fn drop(&mut self) {
        if let Some(Err(error)) = self.0.take().map(|provider| provider.shutdown()) {
            tracing::warn!("the last traces were not sent: {error}");
        }
    }
}

/// The headers of a request, where its trace stands.
struct Headers<'a>(&'a ServiceRequest);

impl Extractor for Headers<'_> {
    fn get(&self, key: &str) -> Option<&str> {
        self.0.headers().get(key)?.to_str().ok()
    }

    fn keys(&self) -> Vec<&str> {
        self.0.headers().keys().map(actix_web::http::header::HeaderName::as_str).collect()
    }
}

/// Begins the span of a request.
pub fn begun(request: &ServiceRequest, request_id: &str) -> Span {
    let (method, route) =
        (super::method(request.method()), request.match_pattern().unwrap_or_else(|| "other".to_owned()));
    let span = tracing::info_span!(
        target: "loopwright::request",
        "request",
        otel.name = format!("{method} {route}"),
        otel.kind = "server",
        otel.status_code = tracing::field::Empty,
        http.request.method = method,
        http.route = route,
        http.response.status_code = tracing::field::Empty,
        request_id,
    );
    let parent = TraceContextPropagator::new().extract(&Headers(request));
    // Refused only where no layer takes spans, and then there is nothing to be a part of.
    let _ = span.set_parent(parent);
    span
}

/// Ends the span of a request with its status.
pub fn answered(span: &Span, status: u16) {
    span.record("http.response.status_code", status);
    if status >= 500 {
        span.record("otel.status_code", "ERROR");
    }
}

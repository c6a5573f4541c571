//! Traces: one span per request, sent in batches to a collector by OTLP over HTTP (OpenTelemetry, HTTP semantic conventions).
//!
//! A `traceparent` that the caller sent (W3C Trace Context) makes the span a part of the caller's trace. No span contains a body, a
//! query, an address or a key. A build without the feature `otlp` has no traces and no cost for them.

use actix_web::dev::ServiceRequest;
use tracing::Span;
#[cfg(not(feature = "otlp"))]
use tracing_subscriber::layer::Identity;
#[cfg(feature = "otlp")]
use {
    opentelemetry::propagation::{Extractor, TextMapPropagator},
    opentelemetry::trace::TracerProvider,
    opentelemetry_otlp::{Protocol, SpanExporter, WithExportConfig},
    opentelemetry_sdk::Resource,
    opentelemetry_sdk::propagation::TraceContextPropagator,
    opentelemetry_sdk::trace::{SdkTracerProvider, Tracer},
    std::time::Duration,
    tracing_opentelemetry::{OpenTelemetryLayer, OpenTelemetrySpanExt},
    tracing_subscriber::filter::{FilterFn, Filtered, LevelFilter, filter_fn},
    tracing_subscriber::{Layer, Registry},
};

/// The target of the spans of this service, apart from those of libraries.
#[cfg(feature = "otlp")]
const TARGET: &str = "loopwright::request";

/// How long the collector may take for one delivery.
#[cfg(feature = "otlp")]
const EXPORT_TIMEOUT: Duration = Duration::from_secs(5);

/// Sends traces, if there is a collector. Spans that were not sent yet are sent when it is dropped.
pub struct TraceExporter {
    #[cfg(feature = "otlp")]
    provider: Option<SdkTracerProvider>,
}

#[cfg(not(feature = "otlp"))]
impl TraceExporter {
    /// Sends nothing.
    ///
    /// # Errors
    /// When the settings name a collector.
    pub fn new(url: Option<&str>) -> Result<Self, String> {
        let refused =
            "LOOPWRIGHT_OTLP_URL is set, and this program was built without traces; build it with --features otlp";
        if url.is_some() { Err(refused.to_owned()) } else { Ok(Self {}) }
    }

    /// No layer: one that does nothing would receive every event.
    #[expect(clippy::unused_self, reason = "the build with traces needs it")]
    pub fn layer(&self) -> Option<Identity> {
        None
    }
}

#[cfg(feature = "otlp")]
impl TraceExporter {
    /// Sends to this collector, such as `http://127.0.0.1:4318`.
    ///
    /// # Errors
    /// When the exporter cannot be built.
    pub fn new(url: Option<&str>) -> Result<Self, String> {
        let Some(url) = url else { return Ok(Self { provider: None }) };
        let exporter = SpanExporter::builder()
            .with_http()
            .with_protocol(Protocol::HttpBinary)
            .with_endpoint(format!("{}/v1/traces", url.trim_end_matches('/')))
            .with_timeout(EXPORT_TIMEOUT)
            .build()
            .map_err(|error| format!("LOOPWRIGHT_OTLP_URL: {error}"))?;
        let resource = Resource::builder_empty()
            .with_attributes([
                opentelemetry::KeyValue::new("service.name", "loopwright"),
                opentelemetry::KeyValue::new("service.version", env!("CARGO_PKG_VERSION")),
            ])
            .build();
        let provider = SdkTracerProvider::builder().with_resource(resource).with_batch_exporter(exporter).build();
        Ok(Self { provider: Some(provider) })
    }

    /// The layer that makes spans of requests into traces.
    pub fn layer(&self) -> Option<Filtered<OpenTelemetryLayer<Registry, Tracer>, FilterFn, Registry>> {
        let tracer = self.provider.as_ref()?.tracer("loopwright");
        let is_ours: FilterFn = filter_fn(|metadata| metadata.is_span() && metadata.target() == TARGET);
        Some(OpenTelemetryLayer::new(tracer).with_filter(is_ours.with_max_level_hint(LevelFilter::INFO)))
    }
}

#[cfg(feature = "otlp")]
impl Drop for TraceExporter {
    fn drop(&mut self) {
        if let Some(Err(error)) = self.provider.take().map(|provider| provider.shutdown()) {
            tracing::warn!("the last traces were not sent: {error}");
        }
    }
}

/// The headers of a request, which may name its trace.
#[cfg(feature = "otlp")]
struct TraceHeaders<'a>(&'a ServiceRequest);

#[cfg(feature = "otlp")]
impl Extractor for TraceHeaders<'_> {
    fn get(&self, key: &str) -> Option<&str> {
        self.0.headers().get(key)?.to_str().ok()
    }

    fn keys(&self) -> Vec<&str> {
        self.0.headers().keys().map(actix_web::http::header::HeaderName::as_str).collect()
    }
}

/// No span.
#[cfg(not(feature = "otlp"))]
pub fn begin_span(_request: &ServiceRequest, _method: &'static str, _request_id: &str) -> Span {
    Span::none()
}

/// Begins the span of a request.
#[cfg(feature = "otlp")]
pub fn begin_span(request: &ServiceRequest, method: &'static str, request_id: &str) -> Span {
    let route = request.match_pattern().unwrap_or_else(|| "other".to_owned());
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
    let parent = TraceContextPropagator::new().extract(&TraceHeaders(request));
    // Fails only where no layer receives spans, and then there is no trace.
    let _ = span.set_parent(parent);
    span
}

/// Records the status of an answer in the span of its request.
pub fn end_span(span: &Span, status: u16) {
    span.record("http.response.status_code", status);
    if status >= 500 {
        span.record("otel.status_code", "ERROR");
    }
}

//! The counters of an instance, in the text format of Prometheus.

use std::sync::atomic::{AtomicI64, AtomicU64};
use std::time::Duration;

use prometheus_client::encoding::EncodeLabelSet;
use prometheus_client::encoding::text::encode;
use prometheus_client::metrics::counter::Counter;
use prometheus_client::metrics::family::Family;
use prometheus_client::metrics::gauge::Gauge;
use prometheus_client::metrics::histogram::{Histogram, exponential_buckets};
use prometheus_client::registry::Registry;

use super::telemetry::{DROPPED_LINES, MALFORMED_REQUESTS};

/// The labels of a request. The route is a pattern, so that callers cannot add series.
#[derive(Clone, Debug, PartialEq, Eq, Hash, EncodeLabelSet)]
pub struct RequestLabels {
    /// The pattern of the path, or `other`.
    pub route: String,
    /// The status of the answer.
    pub status: u16,
}

/// The counters of an instance.
pub struct Metrics {
    registry: Registry,
    requests: Family<RequestLabels, Counter>,
    seconds: Family<RouteLabel, Histogram>,
    forecasts: Family<OutcomeLabel, Counter>,
    refused: Family<ReasonLabel, Counter>,
    items: Family<StatusLabel, Counter>,
    /// Requests in work now.
    pub in_flight: Gauge<i64, AtomicI64>,
    /// Panics that became a 500.
    pub panics: Counter,
    /// Calculations that wait, as of the last look.
    pub waiting: Gauge<u64, AtomicU64>,
    /// Bytes of answers that are not written yet, as of the last look.
    pub unwritten: Gauge<u64, AtomicU64>,
    /// Answers that were cut because they were not read.
    pub answers_cut: Counter,
    /// Connections that were closed because their address has too many.
    pub connections_refused: Counter,
    /// Requests whose caller left before they were answered.
    pub abandoned: Counter,
}

/// How a request for a forecast ended.
#[derive(Clone, Debug, PartialEq, Eq, Hash, EncodeLabelSet)]
struct OutcomeLabel {
    outcome: &'static str,
}

/// Why a request was answered with a problem: its code.
#[derive(Clone, Debug, PartialEq, Eq, Hash, EncodeLabelSet)]
struct ReasonLabel {
    reason: &'static str,
}

/// How an item of a batch ended.
#[derive(Clone, Debug, PartialEq, Eq, Hash, EncodeLabelSet)]
struct StatusLabel {
    status: u16,
}

/// The route alone, for durations.
#[derive(Clone, Debug, PartialEq, Eq, Hash, EncodeLabelSet)]
struct RouteLabel {
    route: String,
}

impl Default for Metrics {
    fn default() -> Self {
        let mut registry = Registry::with_prefix("loopwright");
        let requests = Family::<RequestLabels, Counter>::default();
        // From 50 µs, a small calculation, to 1.6 s, far past anything healthy.
        let seconds = Family::<RouteLabel, Histogram>::new_with_constructor(|| {
            Histogram::new(exponential_buckets(50e-6, 2.0, 16))
        });
        let in_flight = Gauge::default();
        let [waiting, unwritten] = std::array::from_fn(|_| Gauge::default());
        let panics = Counter::default();
        let forecasts = Family::<OutcomeLabel, Counter>::default();
        let refused = Family::<ReasonLabel, Counter>::default();
        let items = Family::<StatusLabel, Counter>::default();
        let [answers_cut, connections_refused, abandoned] = std::array::from_fn(|_| Counter::default());
        registry.register("http_requests", "Requests answered", requests.clone());
        registry.register(
            "http_request_duration_seconds",
            "Time from the head of a request to its answer",
            seconds.clone(),
        );
        registry.register("http_requests_in_flight", "Requests in work", in_flight.clone());
        registry.register("panics", "Panics that became a 500", panics.clone());
        registry.register("forecasts", "Forecasts asked for, by how the question ended", forecasts.clone());
        registry.register("http_requests_refused", "Requests answered with a problem, by its code", refused.clone());
        registry.register("batch_items", "Items of batches, by the status of each", items.clone());
        registry.register("computations_waiting", "Calculations that wait for a thread", waiting.clone());
        registry.register("answers_unwritten_bytes", "What answers that are not written hold", unwritten.clone());
        registry.register("answers_cut", "Answers cut because they were not read", answers_cut.clone());
        registry.register(
            "connections_refused",
            "Connections closed because their address has too many",
            connections_refused.clone(),
        );
        registry.register(
            "computations_abandoned",
            "Calculations whose caller left before they ended",
            abandoned.clone(),
        );
        registry.register("log_lines_dropped", "Lines of the log that found no room", DROPPED_LINES.clone());
        registry.register("http_requests_malformed", "Requests that were no HTTP", MALFORMED_REQUESTS.clone());
        Self {
            registry,
            requests,
            seconds,
            forecasts,
            refused,
            items,
            in_flight,
            panics,
            waiting,
            unwritten,
            answers_cut,
            connections_refused,
            abandoned,
        }
    }
}

impl Metrics {
    /// Counts an answered request.
    pub fn count_answer(&self, route: &str, status: u16, took: Duration) {
        self.requests.get_or_create(&RequestLabels { route: route.to_owned(), status }).inc();
        self.seconds.get_or_create(&RouteLabel { route: route.to_owned() }).observe(took.as_secs_f64());
    }

    /// Counts a request for a forecast by its outcome.
    pub fn count_forecast(&self, outcome: &'static str) {
        self.forecasts.get_or_create(&OutcomeLabel { outcome }).inc();
    }

    /// Counts a request that was answered with a problem.
    pub fn count_problem(&self, reason: &'static str) {
        self.refused.get_or_create(&ReasonLabel { reason }).inc();
    }

    /// Counts an item of a batch.
    pub fn count_item(&self, status: u16) {
        self.items.get_or_create(&StatusLabel { status }).inc();
    }

    /// All counters as text.
    pub fn render(&self) -> String {
        let mut text = String::new();
        match encode(&mut text, &self.registry) {
            Ok(()) => text,
            Err(std::fmt::Error) => String::new(),
        }
    }
}

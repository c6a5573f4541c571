//! What is no HTTP: a broken head, a broken chunk of a body. The HTTP library has an error of the log for each, which anybody could
//! write to the log as fast as bytes can be sent. Here it becomes a counter, and an event for who debugs.

use std::fmt::{Debug, Write};
use std::sync::LazyLock;

use prometheus_client::metrics::counter::Counter;
use tokio::runtime::Handle;
use tracing::field::{Field, Visit};
use tracing::subscriber::Interest;
use tracing::{Event, Level, Metadata, Subscriber};
use tracing_subscriber::Layer;
use tracing_subscriber::filter::{FilterExt, LevelFilter, filter_fn};
use tracing_subscriber::layer::{Context, Filter};
use tracing_subscriber::registry::LookupSpan;

/// Requests that are no HTTP.
pub static MALFORMED_REQUESTS: LazyLock<Counter> = LazyLock::new(Counter::default);

/// Where the HTTP library reads requests, and what its message begins with when it cannot.
const TARGET: &str = "actix_http::h1::dispatcher";
const PREFIX: &str = "stream error: ";

/// Whether an event comes from where requests are read. Only then is its message looked at.
fn is_of_reader(metadata: &Metadata<'_>) -> bool {
    metadata.is_event() && *metadata.level() == Level::ERROR && metadata.target() == TARGET
}

/// Why a request is no HTTP, if that is what an event says. The library's words hold nothing of what was sent.
fn reason(event: &Event<'_>) -> Option<String> {
    if !is_of_reader(event.metadata()) {
        return None;
    }
    let mut message = EventMessage::default();
    event.record(&mut message);
    message.0.strip_prefix(PREFIX).map(str::to_owned)
}

/// The message of an event.
#[derive(Default)]
struct EventMessage(String);

impl Visit for EventMessage {
    fn record_debug(&mut self, field: &Field, value: &dyn Debug) {
        if field.name() == "message" {
            // Writing to memory cannot fail.
            let _ = write!(self.0, "{value:?}");
        }
    }
}

/// The layer that counts them.
pub struct MalformedRequestLayer;

impl MalformedRequestLayer {
    /// The layer, which is given no other event.
    pub fn filtered<S: Subscriber + for<'a> LookupSpan<'a>>() -> impl Layer<S> {
        Self.with_filter(filter_fn(is_of_reader).with_max_level_hint(LevelFilter::ERROR))
    }
}

impl<S: Subscriber> Layer<S> for MalformedRequestLayer {
    fn on_event(&self, event: &Event<'_>, _: Context<'_, S>) {
        if let Some(reason) = reason(event) {
            MALFORMED_REQUESTS.inc();
            // Layers cannot be given an event while they are given another. Requests are read on a worker, which has a runtime.
            let runtime = Handle::try_current().ok().filter(|_| LevelFilter::current() >= LevelFilter::DEBUG);
            if let Some(runtime) = runtime {
                runtime.spawn(async move { tracing::debug!(reason, "a request is no HTTP") });
            }
        }
    }
}

/// Keeps the library's own events about them from the log.
pub fn without_malformed<S: Subscriber>(filter: impl Filter<S>) -> impl Filter<S> {
    filter.and(NotMalformed)
}

struct NotMalformed;

impl<S> Filter<S> for NotMalformed {
    fn enabled(&self, _: &Metadata<'_>, _: &Context<'_, S>) -> bool {
        true
    }

    fn callsite_enabled(&self, metadata: &'static Metadata<'static>) -> Interest {
        // An event that is always of interest may not be refused any more when its message is known.
        if is_of_reader(metadata) { Interest::sometimes() } else { Interest::always() }
    }

    fn max_level_hint(&self) -> Option<LevelFilter> {
        Some(LevelFilter::TRACE)
    }

    fn event_enabled(&self, event: &Event<'_>, _: &Context<'_, S>) -> bool {
        reason(event).is_none()
    }
}

//! The log: one event per line, readable on a terminal and JSON elsewhere. With the feature `otlp` also traces.
//!
//! No request waits for the log: events are put into a queue, which a thread of its own writes to standard error.

mod json_log;
mod log_queue;
mod malformed;
mod traces;

use std::io::IsTerminal;

use actix_web::http::Method;
use tracing_subscriber::filter::{FilterExt, LevelFilter, filter_fn};
use tracing_subscriber::layer::SubscriberExt;
use tracing_subscriber::registry::Registry;
use tracing_subscriber::util::SubscriberInitExt;
use tracing_subscriber::{EnvFilter, Layer};

use json_log::JsonLogLayer;
pub use log_queue::DROPPED_LINES;
use log_queue::{FlushGuard, LogQueue};
pub use malformed::MALFORMED_REQUESTS;
use malformed::{MalformedRequestLayer, without_malformed};
use traces::TraceExporter;
pub use traces::{begin_span, end_span};

use crate::settings::{LogFormat, Settings};

/// The log and the traces of a program. What they have not sent yet is sent when this is dropped, at the end of the program.
pub struct Telemetry {
    // Dropped first: it may write to the log.
    _traces: TraceExporter,
    _log: FlushGuard,
}

/// Starts the log and, where they are asked for, traces.
///
/// # Errors
/// A message when the filter cannot be read, a log was started before, or traces cannot be sent.
pub fn start(settings: &Settings) -> Result<Telemetry, String> {
    let filter = EnvFilter::try_new(&settings.log)
        .map_err(|error| format!("LOOPWRIGHT_LOG is \"{}\"; {error}", settings.log))?;
    let traces = TraceExporter::new(settings.otlp_url.as_deref())?;
    let format =
        settings.log_format.unwrap_or(if std::io::stderr().is_terminal() { LogFormat::Human } else { LogFormat::Json });
    let (queue, flush_guard) =
        LogQueue::start(std::io::stderr()).map_err(|error| format!("the log cannot begin: {error}"))?;
    let log: Box<dyn Layer<_> + Send + Sync> = match format {
        LogFormat::Human => tracing_subscriber::fmt::layer().with_writer(queue).with_target(false).boxed(),
        LogFormat::Json => JsonLogLayer(queue).boxed(),
    };
    // Only events: the event of a request contains what its span contains. Without the hint every event of every library would be
    // filtered anew each time.
    let events = filter_fn(|metadata| !metadata.is_span()).with_max_level_hint(LevelFilter::TRACE);
    let filter = without_malformed(filter.and(events));
    let registry = Registry::default().with(traces.layer()).with(log.with_filter(filter));
    let registry = registry.with(MalformedRequestLayer::filtered());
    registry.try_init().map_err(|error| error.to_string())?;
    for warning in settings.warnings() {
        tracing::warn!("{warning}");
    }
    Ok(Telemetry { _traces: traces, _log: flush_guard })
}

/// Lets a panic be an event of the log that says where it was. Its message is left out, for it may hold what a caller has sent. The
/// standard hook would write to standard error itself, and wait there for who reads it.
pub fn log_panics() {
    std::panic::set_hook(Box::new(|panic| {
        let location = panic.location().map(ToString::to_string);
        tracing::error!(location, thread = std::thread::current().name(), "a panic");
    }));
}

/// A method as it is logged; `other` for what a caller has invented.
pub fn known_method(method: &Method) -> &'static str {
    const KNOWN: [&str; 9] = ["CONNECT", "DELETE", "GET", "HEAD", "OPTIONS", "PATCH", "POST", "PUT", "TRACE"];
    KNOWN.into_iter().find(|known| *known == method.as_str()).unwrap_or("other")
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use tracing::level_filters::LevelFilter;
    use tracing_subscriber::layer::SubscriberExt;
    use tracing_subscriber::registry::Registry;

    use super::json_log::JsonLogLayer;
    use super::log_queue::LogQueue;
    use super::{log_panics, start};
    use crate::settings::Settings;

    #[test]
    fn a_panic_is_an_event_with_its_place_and_without_its_message() {
        let (mut read, target) = std::io::pipe().unwrap();
        let (queue, guard) = LogQueue::start(target).unwrap();
        let usual = std::panic::take_hook();
        log_panics();
        let panicked = tracing::subscriber::with_default(Registry::default().with(JsonLogLayer(queue)), || {
            std::panic::catch_unwind(|| panic!("what a caller has sent"))
        });
        std::panic::set_hook(usual);
        drop(guard);
        let mut log = String::new();
        read.read_to_string(&mut log).unwrap();
        assert!(panicked.is_err() && log.contains("\"ERROR\"") && log.contains("src/api/telemetry/mod.rs:"), "{log}");
        assert!(!log.contains("what a caller has sent"), "{log}");
    }

    #[test]
    fn an_event_below_the_level_of_the_log_is_not_filtered_each_time() {
        let level = |name| (name == "LOOPWRIGHT_LOG").then(|| "warn".to_owned());
        let _telemetry = start(&Settings::read(level).unwrap()).unwrap();
        assert_eq!(LevelFilter::current(), LevelFilter::WARN);
    }
}

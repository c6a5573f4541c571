//! The log: one event per line, readable on a terminal and JSON elsewhere. With the feature `otlp` also traces.

mod json_log;
mod traces;

use std::io::IsTerminal;

use actix_web::http::Method;
use tracing_subscriber::filter::{FilterExt, LevelFilter, filter_fn};
use tracing_subscriber::layer::SubscriberExt;
use tracing_subscriber::registry::Registry;
use tracing_subscriber::util::SubscriberInitExt;
use tracing_subscriber::{EnvFilter, Layer};

use json_log::{FlushGuard, JsonLogLayer};
use traces::TraceExporter;
pub use traces::{begin_span, end_span};

use crate::settings::{LogFormat, Settings};

/// The log and the traces of a program. What they have not sent yet is sent when this is dropped, at the end of the program.
pub struct Telemetry {
    // Dropped first: it may write to the log.
    _traces: TraceExporter,
    _log: Option<FlushGuard>,
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
    let human = tracing_subscriber::fmt::layer().with_writer(std::io::stderr).with_target(false);
    let (log, flush_guard): (Box<dyn Layer<_> + Send + Sync>, _) = match format {
        LogFormat::Human => (human.boxed(), None),
        LogFormat::Json => {
            let (layer, guard) = JsonLogLayer::start().map_err(|error| format!("the log cannot begin: {error}"))?;
            (layer.boxed(), Some(guard))
        }
    };
    // Only events: the event of a request contains what its span contains. Without the hint every event of every library would be
    // filtered anew each time.
    let events = filter_fn(|metadata| !metadata.is_span()).with_max_level_hint(LevelFilter::TRACE);
    let filter = filter.and(events);
    let registry = Registry::default().with(traces.layer()).with(log.with_filter(filter));
    registry.try_init().map_err(|error| error.to_string())?;
    Ok(Telemetry { _traces: traces, _log: flush_guard })
}

/// A method as it is logged; `other` for what a caller has invented.
pub fn known_method(method: &Method) -> &'static str {
    const KNOWN: [&str; 9] = ["CONNECT", "DELETE", "GET", "HEAD", "OPTIONS", "PATCH", "POST", "PUT", "TRACE"];
    KNOWN.into_iter().find(|known| *known == method.as_str()).unwrap_or("other")
}

#[cfg(test)]
mod tests {
    use tracing::level_filters::LevelFilter;

    use super::start;
    use crate::settings::Settings;

    #[test]
    fn an_event_below_the_level_of_the_log_is_not_filtered_each_time() {
        let level = |name| (name == "LOOPWRIGHT_LOG").then(|| "warn".to_owned());
        let _telemetry = start(&Settings::read(level).unwrap()).unwrap();
        assert_eq!(LevelFilter::current(), LevelFilter::WARN);
    }
}

//! The log: one event per line, for eyes on a terminal and for machines elsewhere. With the feature `otlp` also traces.

mod lines;
#[cfg(feature = "otlp")]
mod traces;
#[cfg(not(feature = "otlp"))]
#[path = "untraced.rs"]
mod traces;

use std::io::IsTerminal;

use actix_web::http::Method;
use tracing_subscriber::filter::{FilterExt, LevelFilter, filter_fn};
use tracing_subscriber::layer::SubscriberExt;
use tracing_subscriber::registry::Registry;
use tracing_subscriber::util::SubscriberInitExt;
use tracing_subscriber::{EnvFilter, Layer};

use lines::{Lines, Rest};
use traces::Traces;
pub use traces::{answered, begun};

use crate::settings::{LogFormat, Settings};

/// The log and the traces of a program; what they still hold is sent when this is dropped, which is at its end.
pub struct Telemetry {
    // Dropped first: their sender may have something to say.
    _traces: Traces,
    _rest: Option<Rest>,
}

/// Starts the log and, where they are asked for, traces.
///
/// # Errors
/// A message when the filter cannot be read, a log was started before, or traces cannot be sent.
pub fn start(settings: &Settings) -> Result<Telemetry, String> {
    let filter = EnvFilter::try_new(&settings.log)
        .map_err(|error| format!("LOOPWRIGHT_LOG is \"{}\"; {error}", settings.log))?;
    let traces = Traces::new(settings.otlp_url.as_deref())?;
    let format =
        settings.log_format.unwrap_or(if std::io::stderr().is_terminal() { LogFormat::Human } else { LogFormat::Json });
    let human = tracing_subscriber::fmt::layer().with_writer(std::io::stderr).with_target(false);
    let (log, rest): (Box<dyn Layer<_> + Send + Sync>, _) = match format {
        LogFormat::Human => (human.boxed(), None),
        LogFormat::Json => {
            let (lines, rest) = Lines::begin().map_err(|error| format!("the log cannot begin: {error}"))?;
            (lines.boxed(), Some(rest))
        }
    };
    // Events alone: what a request's span holds, its event says in a line. Without the hint every event of every library would be
    // judged anew each time.
    let events = filter_fn(|metadata| !metadata.is_span()).with_max_level_hint(LevelFilter::TRACE);
    let filter = filter.and(events);
    let registry = Registry::default().with(traces.layer()).with(log.with_filter(filter));
    registry.try_init().map_err(|error| error.to_string())?;
    Ok(Telemetry { _traces: traces, _rest: rest })
}

/// A method as it is logged: what else a caller may have written for one is its own.
pub fn method(method: &Method) -> &'static str {
    const KNOWN: [&str; 9] = ["CONNECT", "DELETE", "GET", "HEAD", "OPTIONS", "PATCH", "POST", "PUT", "TRACE"];
    KNOWN.into_iter().find(|known| *known == method.as_str()).unwrap_or("other")
}

#[cfg(test)]
mod tests {
    use tracing::level_filters::LevelFilter;

    use super::start;
    use crate::settings::Settings;

    #[test]
    fn what_no_log_takes_is_not_even_judged() {
        let level = |name| (name == "LOOPWRIGHT_LOG").then(|| "warn".to_owned());
        let _telemetry = start(&Settings::read(level).unwrap()).unwrap();
        assert_eq!(LevelFilter::current(), LevelFilter::WARN);
    }
}

//! The log: one event per line, for eyes on a terminal and for machines elsewhere. With the feature `otlp` also traces.

#[cfg(feature = "otlp")]
mod traces;
#[cfg(not(feature = "otlp"))]
#[path = "untraced.rs"]
mod traces;

use std::io::IsTerminal;

use actix_web::http::Method;
use tracing::Subscriber;
use tracing_subscriber::filter::{FilterExt, filter_fn};
use tracing_subscriber::layer::SubscriberExt;
use tracing_subscriber::registry::{LookupSpan, Registry};
use tracing_subscriber::util::SubscriberInitExt;
use tracing_subscriber::{EnvFilter, Layer};

pub use traces::{Traces, answered, begun};

use crate::settings::{LogFormat, Settings};

/// Starts the log and, where they are asked for, traces. What it gives must live as long as the program, and sends the last of
/// them when it ends.
///
/// # Errors
/// A message when the filter cannot be read, a log was started before, or traces cannot be sent.
pub fn start(settings: &Settings) -> Result<Traces, String> {
    let filter = EnvFilter::try_new(&settings.log)
        .map_err(|error| format!("LOOPWRIGHT_LOG is \"{}\"; {error}", settings.log))?;
    let traces = Traces::new(settings.otlp_url.as_deref())?;
    // Events alone: what a request's span holds, its event says in a line.
    let filter = filter.and(filter_fn(|metadata| !metadata.is_span()));
    let registry = Registry::default().with(traces.layer()).with(log(settings).with_filter(filter));
    registry.try_init().map_err(|error| error.to_string())?;
    Ok(traces)
}

fn log<S>(settings: &Settings) -> Box<dyn Layer<S> + Send + Sync>
where
    S: Subscriber + for<'span> LookupSpan<'span>,
{
    let format =
        settings.log_format.unwrap_or(if std::io::stderr().is_terminal() { LogFormat::Human } else { LogFormat::Json });
    let log = tracing_subscriber::fmt::layer().with_writer(std::io::stderr).with_target(false);
    match format {
        LogFormat::Human => log.boxed(),
        LogFormat::Json => log.json().flatten_event(true).with_current_span(false).with_span_list(false).boxed(),
    }
}

/// A method as it is logged: what else a caller may have written for one is its own.
pub fn method(method: &Method) -> &'static str {
    const KNOWN: [&str; 9] = ["CONNECT", "DELETE", "GET", "HEAD", "OPTIONS", "PATCH", "POST", "PUT", "TRACE"];
    KNOWN.into_iter().find(|known| *known == method.as_str()).unwrap_or("other")
}

//! The log: one event per line, for eyes on a terminal and for machines elsewhere.

use std::io::IsTerminal;

use tracing_subscriber::EnvFilter;

use crate::settings::{LogFormat, Settings};

/// Starts the log.
///
/// # Errors
/// A message when the filter cannot be read or a log was started before.
pub fn start(settings: &Settings) -> Result<(), String> {
    let filter = EnvFilter::try_new(&settings.log)
        .map_err(|error| format!("LOOPWRIGHT_LOG is \"{}\"; {error}", settings.log))?;
    let format =
        settings.log_format.unwrap_or(if std::io::stderr().is_terminal() { LogFormat::Human } else { LogFormat::Json });
    let log = tracing_subscriber::fmt().with_env_filter(filter).with_writer(std::io::stderr).with_target(false);
    match format {
        LogFormat::Human => log.try_init(),
        LogFormat::Json => log.json().flatten_event(true).with_current_span(false).with_span_list(false).try_init(),
    }
    .map_err(|error| error.to_string())
}

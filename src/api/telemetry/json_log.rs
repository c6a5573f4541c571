//! The log for machines: each event is a line of JSON.

use std::cell::Cell;
use std::io::Write;
use std::sync::Arc;

use jiff::Timestamp;
use serde::Serializer;
use serde::ser::SerializeMap;
use tracing::{Event, Subscriber};
use tracing_serde::SerdeMapVisitor;
use tracing_subscriber::Layer;
use tracing_subscriber::layer::Context;

use super::log_queue::LogQueue;

thread_local! {
    /// The memory of the last line of a thread, used again for the next.
    static LINE_BUFFER: Cell<Vec<u8>> = const { Cell::new(Vec::new()) };
}

/// The layer that puts events as JSON into a queue.
pub struct JsonLogLayer(pub Arc<LogQueue>);

impl<S: Subscriber> Layer<S> for JsonLogLayer {
    fn on_event(&self, event: &Event<'_>, _: Context<'_, S>) {
        let mut line = LINE_BUFFER.take();
        line.clear();
        if write_event(event, &mut line).is_ok() {
            line.push(b'\n');
            self.0.put(&line);
        }
        LINE_BUFFER.set(line);
    }
}

/// Writes a line to memory. It is a type of its own so that the compiler generates code for it apart from that for reports: shared
/// code made writing a plan a fifth slower (Rust 1.95, `tests/load`).
struct LineWriter<'a>(&'a mut Vec<u8>);

impl Write for LineWriter<'_> {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

/// Writes an event: its time, level, message and fields.
fn write_event(event: &Event<'_>, line: &mut Vec<u8>) -> serde_json::Result<()> {
    let mut json = serde_json::Serializer::new(LineWriter(line));
    let mut members = json.serialize_map(None)?;
    members.serialize_entry("timestamp", &format_args!("{:.6}", Timestamp::now()))?;
    members.serialize_entry("level", event.metadata().level().as_str())?;
    let mut fields = SerdeMapVisitor::new(members);
    event.record(&mut fields);
    fields.finish()
}

#[cfg(test)]
mod tests {
    use serde_json::Value;
    use tracing_subscriber::layer::SubscriberExt;
    use tracing_subscriber::registry::Registry;

    use super::*;

    #[test]
    fn an_event_is_one_object_whatever_its_words_hold() {
        let (mut written, target) = std::io::pipe().unwrap();
        let (queue, guard) = LogQueue::start(target).unwrap();
        tracing::subscriber::with_default(Registry::default().with(JsonLogLayer(queue)), || {
            let nothing: Option<&str> = None;
            tracing::info!(status = 200, route = "/v1/\"x\"", nothing, "a \"word\"\n\u{7}");
        });
        drop(guard);
        let mut line = String::new();
        std::io::Read::read_to_string(&mut written, &mut line).unwrap();
        let event: Value = serde_json::from_str(&line).unwrap();
        let names: Vec<_> = event.as_object().unwrap().keys().map(String::as_str).collect();
        assert_eq!(names, ["timestamp", "level", "message", "status", "route"]);
        assert_eq!(
            (&event["level"], &event["status"], &event["route"]),
            (&"INFO".into(), &200.into(), &"/v1/\"x\"".into())
        );
        assert_eq!(event["message"], "a \"word\"\n\u{7}");
        let time = event["timestamp"].as_str().unwrap();
        assert!(time.parse::<Timestamp>().is_ok() && time.len() == "2026-11-25T19:59:13.312550Z".len(), "{time}");
    }
}

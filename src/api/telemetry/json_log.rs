//! The log for machines: each event is a line of JSON. Lines are written together, at most [`MAX_DELAY`] after the first of them: a
//! `write` for each costs a small request more than its calculation does. A warning or an error is written at once, with the lines
//! before it.

use std::cell::Cell;
use std::io::{BufWriter, Stderr, Write, stderr};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread::{self, Thread};
use std::time::Duration;

use jiff::Timestamp;
use serde::Serializer;
use serde::ser::SerializeMap;
use tracing::{Event, Level, Subscriber};
use tracing_serde::SerdeMapVisitor;
use tracing_subscriber::Layer;
use tracing_subscriber::layer::Context;

/// How long a line may wait for others. A crash of the process loses the lines that wait.
const MAX_DELAY: Duration = Duration::from_millis(50);

/// The pause before lines that could not be written are tried again.
const RETRY_DELAY: Duration = Duration::from_secs(1);

/// The capacity for lines that wait, bytes. A line that does not fit is written after those before it.
const BUFFER_CAPACITY: usize = 64 * 1024;

thread_local! {
    /// The memory of the last line of a thread, used again for the next.
    static LINE_BUFFER: Cell<Vec<u8>> = const { Cell::new(Vec::new()) };
}

/// Lines that wait to be written, and whether lines are now written at once.
struct PendingLines<W: Write> {
    lines: BufWriter<W>,
    is_closing: bool,
}

type SharedLines<W> = Arc<Mutex<PendingLines<W>>>;

fn lock<W: Write>(waiting: &Mutex<PendingLines<W>>) -> MutexGuard<'_, PendingLines<W>> {
    waiting.lock().unwrap_or_else(PoisonError::into_inner)
}

/// The layer that writes events as JSON.
pub struct JsonLogLayer<W: Write = Stderr> {
    waiting: SharedLines<W>,
    sender: Thread,
}

/// Dropped at the end of the program: the lines that wait are written, and later lines are written at once.
pub struct FlushGuard<W: Write = Stderr>(SharedLines<W>);

impl<W: Write> Drop for FlushGuard<W> {
    fn drop(&mut self) {
        let mut waiting = lock(&self.0);
        waiting.is_closing = true;
        // An error cannot be reported any more.
        let _ = waiting.lines.flush();
    }
}

impl JsonLogLayer {
    /// Starts the log on standard error.
    ///
    /// # Errors
    /// When the thread that writes the lines cannot be started.
    pub fn start() -> std::io::Result<(Self, FlushGuard)> {
        Self::to(stderr())
    }
}

impl<W: Write + Send + 'static> JsonLogLayer<W> {
    fn to(target: W) -> std::io::Result<(Self, FlushGuard<W>)> {
        let waiting = PendingLines { lines: BufWriter::with_capacity(BUFFER_CAPACITY, target), is_closing: false };
        let waiting = Arc::new(Mutex::new(waiting));
        let (sent, flush_guard) = (waiting.clone(), FlushGuard(waiting.clone()));
        let sender = thread::Builder::new().name("log".to_owned()).spawn(move || {
            loop {
                thread::park();
                thread::sleep(MAX_DELAY);
                while lock(&sent).lines.flush().is_err() {
                    thread::sleep(RETRY_DELAY);
                }
            }
        })?;
        Ok((Self { waiting, sender: sender.thread().clone() }, flush_guard))
    }

    fn put(&self, line: &[u8], at_once: bool) {
        let mut waiting = lock(&self.waiting);
        let is_first = waiting.lines.buffer().is_empty();
        // A failure of the log must not fail a request; the sender tries again.
        let _ = waiting.lines.write_all(line);
        if at_once || waiting.is_closing {
            let _ = waiting.lines.flush();
        }
        drop(waiting);
        if is_first {
            self.sender.unpark();
        }
    }
}

impl<S: Subscriber, W: Write + Send + 'static> Layer<S> for JsonLogLayer<W> {
    fn on_event(&self, event: &Event<'_>, _: Context<'_, S>) {
        let mut line = LINE_BUFFER.take();
        line.clear();
        if write_event(event, &mut line).is_ok() {
            line.push(b'\n');
            self.put(&line, *event.metadata().level() <= Level::WARN);
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
    use std::time::Instant;

    use serde_json::Value;
    use tracing_subscriber::layer::SubscriberExt;
    use tracing_subscriber::registry::Registry;

    use super::*;

    /// What was written, and how often writing will still fail.
    #[derive(Clone, Default)]
    struct TestTarget(Arc<Mutex<(Vec<u8>, usize)>>);

    impl TestTarget {
        fn text(&self) -> String {
            String::from_utf8(self.0.lock().unwrap().0.clone()).unwrap()
        }

        /// Waits until so many lines were sent.
        fn lines(&self, count: usize) -> Vec<String> {
            let started = Instant::now();
            loop {
                let lines: Vec<_> = self.text().lines().map(str::to_owned).collect();
                if lines.len() >= count {
                    return lines;
                }
                assert!(started.elapsed() < Duration::from_secs(10), "{} of {count} lines were sent", lines.len());
                thread::sleep(Duration::from_millis(5));
            }
        }
    }

    impl Write for TestTarget {
        fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
            let mut target = self.0.lock().unwrap();
            if target.1 > 0 {
                target.1 -= 1;
                return Err(std::io::ErrorKind::StorageFull.into());
            }
            target.0.extend_from_slice(bytes);
            Ok(bytes.len())
        }

        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    fn begin() -> (TestTarget, JsonLogLayer<TestTarget>, FlushGuard<TestTarget>) {
        let target = TestTarget::default();
        let (lines, rest) = JsonLogLayer::to(target.clone()).unwrap();
        (target, lines, rest)
    }

    #[test]
    fn more_lines_than_can_wait_arrive_whole_and_those_of_a_thread_in_order() {
        const EACH: usize = 1000;
        let (target, lines, _rest) = begin();
        thread::scope(|scope| {
            for name in ["a", "b", "c", "d"] {
                let lines = &lines;
                scope.spawn(move || {
                    for index in 0..EACH {
                        lines.put(format!("{name} {index} {}\n", "x".repeat(200)).as_bytes(), false);
                    }
                });
            }
        });
        let sent = target.lines(4 * EACH);
        for name in ["a", "b", "c", "d"] {
            let of_thread = sent.iter().filter_map(|line| line.strip_prefix(name)?.trim().split_once(' '));
            let (indices, rests): (Vec<_>, Vec<_>) = of_thread.unzip();
            assert_eq!(indices, (0..EACH).map(|index| index.to_string()).collect::<Vec<_>>());
            assert!(rests.iter().all(|rest| *rest == "x".repeat(200)));
        }
    }

    #[test]
    fn lines_that_could_not_be_sent_are_sent_later() {
        let (target, lines, _rest) = begin();
        target.0.lock().unwrap().1 = 1;
        lines.put(b"one\n", false);
        thread::sleep(2 * MAX_DELAY);
        lines.put(b"two\n", false);
        assert_eq!(target.lines(2), ["one", "two"]);
    }

    #[test]
    fn a_line_larger_than_the_buffer_arrives() {
        let (target, lines, _rest) = begin();
        let long = "x".repeat(BUFFER_CAPACITY + 1);
        lines.put(b"short\n", false);
        lines.put(format!("{long}\n").as_bytes(), false);
        assert_eq!(target.lines(2), ["short", long.as_str()]);
    }

    #[test]
    fn nothing_waits_behind_a_warning_or_after_the_end() {
        let (target, lines, rest) = begin();
        let (before, after) = (target.clone(), target.clone());
        tracing::subscriber::with_default(Registry::default().with(lines), || {
            tracing::info!("news");
            tracing::warn!("graver");
            assert_eq!(before.text().lines().count(), 2);
            tracing::info!("the last");
            drop(rest);
            tracing::info!("behind it");
            assert_eq!(after.text().lines().count(), 4);
        });
    }

    #[test]
    fn an_event_is_one_object_whatever_its_words_hold() {
        let (target, lines, _rest) = begin();
        tracing::subscriber::with_default(Registry::default().with(lines), || {
            let nothing: Option<&str> = None;
            tracing::info!(status = 200, route = "/v1/\"x\"", nothing, "a \"word\"\n\u{7}");
        });
        let line = target.lines(1).remove(0);
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

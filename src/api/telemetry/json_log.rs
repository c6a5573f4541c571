//! The log for machines: each event a line of JSON. Lines leave together, [`AT_LATEST`] after the first of them: a `write` for each
//! costs a small request more than its calculation does. What is graver than news leaves at once, and takes along what waits.

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

/// How long a line may wait for others. What ends the program at once takes with it those that wait.
const AT_LATEST: Duration = Duration::from_millis(50);

/// How long to wait before lines that could not be sent are tried again.
const AGAIN: Duration = Duration::from_secs(1);

/// Room for the lines that wait, bytes. A line that does not fit sends those before it.
const ROOM: usize = 64 * 1024;

thread_local! {
    /// The line that a thread wrote last; its room is used again for the next.
    static LINE: Cell<Vec<u8>> = const { Cell::new(Vec::new()) };
}

/// Lines that wait for others, and whether none may wait any more.
struct Waiting<W: Write> {
    lines: BufWriter<W>,
    is_closing: bool,
}

type Shared<W> = Arc<Mutex<Waiting<W>>>;

fn lock<W: Write>(waiting: &Mutex<Waiting<W>>) -> MutexGuard<'_, Waiting<W>> {
    waiting.lock().unwrap_or_else(PoisonError::into_inner)
}

/// The layer that writes events.
pub struct Lines<W: Write = Stderr> {
    waiting: Shared<W>,
    sender: Thread,
}

/// The end of the log: when this is dropped, what waits is sent, and lines that still come wait no more.
pub struct Rest<W: Write = Stderr>(Shared<W>);

impl<W: Write> Drop for Rest<W> {
    fn drop(&mut self) {
        let mut waiting = lock(&self.0);
        waiting.is_closing = true;
        // There is nobody left to tell.
        let _ = waiting.lines.flush();
    }
}

impl Lines {
    /// Begins the log, on standard error.
    ///
    /// # Errors
    /// When there can be no thread that sends the lines.
    pub fn begin() -> std::io::Result<(Self, Rest)> {
        Self::to(stderr())
    }
}

impl<W: Write + Send + 'static> Lines<W> {
    fn to(target: W) -> std::io::Result<(Self, Rest<W>)> {
        let waiting = Waiting { lines: BufWriter::with_capacity(ROOM, target), is_closing: false };
        let waiting = Arc::new(Mutex::new(waiting));
        let (sent, rest) = (waiting.clone(), Rest(waiting.clone()));
        let sender = thread::Builder::new().name("log".to_owned()).spawn(move || {
            loop {
                thread::park();
                thread::sleep(AT_LATEST);
                while lock(&sent).lines.flush().is_err() {
                    thread::sleep(AGAIN);
                }
            }
        })?;
        Ok((Self { waiting, sender: sender.thread().clone() }, rest))
    }

    fn put(&self, line: &[u8], at_once: bool) {
        let mut waiting = lock(&self.waiting);
        let is_first = waiting.lines.buffer().is_empty();
        // A log that nobody takes is no reason to fail a request; the sender tries again.
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

impl<S: Subscriber, W: Write + Send + 'static> Layer<S> for Lines<W> {
    fn on_event(&self, event: &Event<'_>, _: Context<'_, S>) {
        let mut line = LINE.take();
        line.clear();
        if write(event, &mut line).is_ok() {
            line.push(b'\n');
            self.put(&line, *event.metadata().level() <= Level::WARN);
        }
        LINE.set(line);
    }
}

/// A line that is being written. The type is its own so that the compiler does not share the code that writes reports with it:
/// sharing made writing a plan a fifth slower (Rust 1.95, `tests/load`).
struct Line<'a>(&'a mut Vec<u8>);

impl Write for Line<'_> {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

/// Writes an event: when, how grave, its message and its fields.
fn write(event: &Event<'_>, line: &mut Vec<u8>) -> serde_json::Result<()> {
    let mut json = serde_json::Serializer::new(Line(line));
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

    /// What was sent, and how often sending is yet to fail.
    #[derive(Clone, Default)]
    struct Target(Arc<Mutex<(Vec<u8>, usize)>>);

    impl Target {
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

    impl Write for Target {
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

    fn begin() -> (Target, Lines<Target>, Rest<Target>) {
        let target = Target::default();
        let (lines, rest) = Lines::to(target.clone()).unwrap();
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
        thread::sleep(2 * AT_LATEST);
        lines.put(b"two\n", false);
        assert_eq!(target.lines(2), ["one", "two"]);
    }

    #[test]
    fn a_line_larger_than_the_room_arrives() {
        let (target, lines, _rest) = begin();
        let long = "x".repeat(ROOM + 1);
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
